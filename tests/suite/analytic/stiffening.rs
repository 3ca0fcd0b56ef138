//! Rubber that grows stiffer, and stops with an open end.

use bedplate::model::isolator::{Isolator, Vibration};
use bedplate::spatial::Vec3;

use crate::kit::assert_close;
use crate::kit::law::{assert_elastic, assumed, described, refused};

const RATES: &str = "kind = \"rates\"\nrates = \"90, 100, 200 N/mm\"\n";

const FIVE_PIECES: &str = "kind = \"rates\"\nrates = \"90, 100, 200 N/mm\"\n\
    stiffening = { w = [\"-4 mm\", \"5 mm\"], rate = \"600 N/mm\", blend = \"2 mm\" }\n\
    stops = { w = [\"-9 mm\", \"11 mm\"], rate = \"4 kN/mm\", blend = \"0.4 mm\" }\n\
    dynamic_ratio = 1.4\nloss_factor = 0.1";

fn along_w(isolator: &Isolator, w: f64) -> [f64; 2] {
    let point = isolator.at(&Vec3::new(0.0, 0.0, w)).point;
    [point.force.z, point.tangent[(2, 2)]]
}

/// Published form (abstract: Proc. IMechE D, doi:10.1243/09544070JAUTO188): a soft centre and two
/// harder ranges each way. Derived by hand: 200 N/mm, then 200 + 600 from half a blend beyond
/// −4 and 5 mm, then 4800 from half a blend beyond −9 and 11 mm:
/// −7 mm: −1400 − 600 · (3 − 1) = −2600 N;   −10 mm: −2000 − 600 · 5 − 4000 · (1 − 0.2) = −8200 N;
/// 8 mm: 1600 + 600 · (3 − 1) = 2800 N;   12 mm: 2400 + 600 · 6 + 4000 · (1 − 0.2) = 9200 N.
#[test]
fn stiffening_and_stops_make_five_straight_pieces() {
    let isolator = described(FIVE_PIECES);
    for (w, force, rate) in [
        (-10e-3, -8200.0, 4.8e6),
        (-9.4e-3, -5320.0, 4.8e6),
        (-9e-3, -4200.0, 0.8e6),
        (-7e-3, -2600.0, 0.8e6),
        (-4e-3, -800.0, 0.2e6),
        (0.0, 0.0, 0.2e6),
        (5e-3, 1000.0, 0.2e6),
        (8e-3, 2800.0, 0.8e6),
        (11e-3, 5200.0, 0.8e6),
        (12e-3, 9200.0, 4.8e6),
    ] {
        assert_close(w, &along_w(&isolator, w), &[force, rate], 1e-12, 1e-9);
    }
    // Across nothing changes.
    let across = isolator.at(&Vec3::new(8e-3, -12e-3, 0.0)).point.force;
    assert_close(
        "across",
        across.as_slice(),
        &[720.0, -1200.0, 0.0],
        1e-12,
        0.0,
    );
}

/// Derived: what stiffens is rubber, with its dynamic ratio and loss factor; a touched stop has neither.
/// At −10 mm: 1.4 · 800 + 4000 = 5120 N/mm, and a loss of 0.1 · 1.4 · 800 = 112 N/mm.
#[test]
fn what_stiffens_is_rubber_and_no_stop() {
    let isolator = described(FIVE_PIECES);
    for (w, storage, loss, on_stop) in
        [(-7e-3, 1.12e6, 112e3, false), (-10e-3, 5.12e6, 112e3, true)]
    {
        let state = isolator.at(&Vec3::new(0.0, 0.0, w));
        assert_eq!(state.on_stop, [false, false, on_stop]);
        let found = isolator.dynamic_rate(&state, &Vibration::OF_MODES);
        let found = [found.0[(2, 2)], found.1[(2, 2)]];
        assert_close(w, &found, &[storage, loss], 1e-12, 0.0);
    }
    // It ages and scatters with the rubber: 1.5 · (1400 + 1200) N.
    let harder = isolator.scaled(1.5);
    assert_close(
        "harder",
        &along_w(&harder, -7e-3),
        &[-3900.0, 1.2e6],
        1e-12,
        0.0,
    );
}

#[test]
fn a_stiffening_law_is_elastic() {
    let isolator = described(&format!(
        "{RATES}stiffening = {{ w = [\"-4 mm\", \"none\"], u = [\"-3 mm\", \"2 mm\"], rate = \"300, 1, 600 N/mm\" }}"
    ));
    assert_elastic(
        isolator.law.as_ref(),
        &[
            [2.4e-3, 1e-3, -4.3e-3],
            [-3.2e-3, 0.0, -6e-3],
            [5e-3, -2e-3, 3e-3],
            [-6e-3, 2e-3, -4.8e-3],
        ],
    );
}

/// Common practice: the blend of rubber is 1 mm, no more than half of the smallest free travel.
#[test]
fn the_blend_of_rubber_follows_its_travel() {
    for (travel, blend) in [
        ("[\"-4 mm\", \"5 mm\"]", "1.00 mm (common practice)"),
        ("[\"-1.2 mm\", \"5 mm\"]", "0.60 mm (common practice)"),
        ("[\"none\", \"0.8 mm\"]", "0.40 mm (common practice)"),
    ] {
        let told = assumed(&format!(
            "{RATES}stiffening = {{ w = {travel}, rate = \"600 N/mm\" }}"
        ));
        let of_blend = told.iter().find(|(key, _)| key == "stiffening.blend");
        assert_eq!(of_blend.unwrap().1, blend);
    }
    // Between the free travel and the full rate: half of the blend, 0.3 mm, is lost.
    let isolator = described(&format!(
        "{RATES}stiffening = {{ w = [\"-1.2 mm\", \"5 mm\"], rate = \"600 N/mm\" }}"
    ));
    // −400 − 600 · (0.8 − 0.3)
    assert_close(
        "full",
        &along_w(&isolator, -2e-3),
        &[-700.0, 0.8e6],
        1e-12,
        0.0,
    );
}

/// Derived: an end that is open never touches; the blend goes by the ends that are there.
#[test]
fn a_stop_may_be_open_at_one_end() {
    let rebound = format!("{RATES}stops = {{ w = [\"none\", \"6 mm\"], rate = \"2 kN/mm\" }}");
    let bump = format!("{RATES}stops = {{ w = [\"-6 mm\", \"none\"], rate = \"2 kN/mm\" }}");
    for (keys, sign) in [(&rebound, 1.0), (&bump, -1.0)] {
        let isolator = described(keys);
        // 10 mm beyond: 200 · 16 + 2000 · (10 − 0.25) N; the other way the rubber alone.
        let [hit, free] = [16e-3 * sign, -16e-3 * sign].map(|w| along_w(&isolator, w));
        assert_close("hit", &hit, &[22_700.0 * sign, 2.2e6], 1e-12, 0.0);
        assert_close("free", &free, &[-3200.0 * sign, 0.2e6], 1e-12, 0.0);
        assert!(isolator.at(&Vec3::new(0.0, 0.0, 7e-3 * sign)).on_stop[2]);
        assert!(!isolator.at(&Vec3::new(0.0, 0.0, -0.9 * sign)).on_stop[2]);
        let told = assumed(keys);
        assert!(told.contains(&(
            "stops.blend".to_owned(),
            "0.50 mm (common practice)".to_owned()
        )));
    }
    // A tenth of 6 mm is taken as a blend, a little more is not.
    let with = |blend| {
        refused(&format!(
            "{RATES}stops = {{ w = [\"none\", \"6 mm\"], blend = \"{blend} mm\" }}"
        ))
    };
    assert_eq!(with("0.6"), Vec::<&str>::new());
    assert_eq!(with("0.61"), ["M011"]);
}

/// Derived: each axis has the rate that stands for it: 1 mm beyond a blend of 0.2 mm, k · 0.9 mm.
#[test]
fn a_stop_may_have_its_own_rate_along_each_axis() {
    let isolator = described(&format!(
        "{RATES}stops = {{ u = [\"-2 mm\", \"2 mm\"], v = [\"-3 mm\", \"3 mm\"], w = [\"-4 mm\", \"4 mm\"], \
         rate = \"1, 2, 3 kN/mm\", blend = \"0.2 mm\" }}"
    ));
    let x = Vec3::new(3e-3, -4e-3, 5e-3);
    let state = isolator.at(&x);
    let expected = [270.0 + 900.0, -400.0 - 1800.0, 1000.0 + 2700.0];
    let force = state.point.force;
    assert_close("force", force.as_slice(), &expected, 1e-12, 0.0);
    let rates = state.stop_tangent;
    assert_close("rates", rates.as_slice(), &[1e6, 2e6, 3e6], 1e-12, 0.0);
    // The axis of a rate without a stop stays free.
    let isolator = described(&format!(
        "{RATES}stops = {{ w = [\"-4 mm\", \"4 mm\"], rate = \"1, 2, 3 kN/mm\" }}"
    ));
    assert_eq!(
        isolator.at(&Vec3::new(0.5, 0.5, 0.0)).on_stop,
        [false; 3],
        "u and v are free"
    );
}
