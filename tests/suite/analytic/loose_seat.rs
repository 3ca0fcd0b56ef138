//! Supports that lift off their seat.

use bedplate::model::isolator::{Isolator, Law};
use bedplate::spatial::Vec3;
use bedplate::study::evaluate::evaluate;

use crate::kit::law::{assert_elastic, described};
use crate::kit::{assert_close, four_mounts_and, model};

const BOUND: &str = "kind = \"rates\"\nrates = \"90, 100, 400 N/mm\"\n\
    stiffening = { w = [\"-3 mm\", \"4 mm\"], rate = \"500 N/mm\" }\n";

fn loose() -> Isolator {
    described(&format!("{BOUND}tension = \"none\""))
}

/// Derived: the equation of the law. Pushed it is what it would be without the key, to the last digit,
/// 0.05 mm lower for its bedding in.
#[test]
fn pushed_by_a_tenth_of_a_millimetre_it_is_the_law_itself() {
    let (loose, bound) = (loose(), described(BOUND));
    for w in [-0.101e-3, -0.2e-3, -3.3e-3, -8e-3] {
        for (u, v) in [(0.0, 0.0), (2e-3, -3e-3)] {
            let found = loose.law.at(&Vec3::new(u, v, w));
            let expected = bound.law.at(&Vec3::new(u, v, w + 0.05e-3));
            assert_eq!(found.force, expected.force, "{w}");
            assert_eq!(found.tangent, expected.tangent, "{w}");
        }
    }
}

/// Derived: nothing along w, the rates of the law across it; and nothing at all at the free position.
#[test]
fn pulled_it_gives_nothing_along_w() {
    let law = loose().law;
    for w in [0.0, 0.1e-3, 0.5e-3, 6e-3] {
        let point = law.at(&Vec3::new(1e-3, -2e-3, w));
        assert_eq!(point.force.as_slice(), [90.0, -200.0, 0.0], "{w}");
        assert!(point.tangent.column(2).amax() <= 0.0, "{w}");
        assert!(point.tangent.row(2).amax() <= 0.0, "{w}");
        assert_close(w, &[point.energy], &[0.245], 1e-12, 0.0);
    }
    let free = law.at(&Vec3::zeros());
    let found = [free.force.amax(), free.energy];
    assert_close("free", &found, &[0.0; 2], 0.0, 0.0);
}

/// Derived by hand for a constant rate k, 0.1 mm of contact h: force k w²/(2 h), tangent k w/h, energy
/// k w³/(6 h) in size. At −0.05 mm: 400 · 0.0025/0.2 = 5 N and half of the rate.
#[test]
fn between_the_two_its_rate_rises_evenly() {
    let (k, h) = (400e3, 0.1e-3);
    let law = loose().law;
    for w in [-0.099e-3, -0.07e-3, -0.02e-3, -0.001e-3_f64] {
        let point = law.at(&Vec3::new(0.0, 0.0, w));
        let found = [point.force.z, point.tangent[(2, 2)], point.energy];
        let expected = [
            -k * w * w / (2.0 * h),
            -k * w / h,
            -k * w.powi(3) / (6.0 * h),
        ];
        assert_close(w, &found, &expected, 1e-10, 1e-12);
    }
    let half = law.at(&Vec3::new(0.0, 0.0, -0.05e-3)).force.z;
    assert_close("half", &[half], &[-5.0], 1e-12, 0.0);
}

/// Force, tangent and energy have no jump where the contact begins and where it is bedded in.
#[test]
fn the_force_is_smooth_at_both_ends_of_the_contact() {
    let law = loose().law;
    for end in [-0.1e-3, 0.0] {
        let at = |w: f64| {
            let point = law.at(&Vec3::new(1e-3, 2e-3, w));
            [point.force.z, point.tangent[(2, 2)], point.energy]
        };
        let (before, after) = (at(end - 1e-10), at(end + 1e-10));
        // Over 0.2 nm: a force of 1e-4 N, and 0.8 N/m of the rate that rises by 4e5 N/m in 0.1 mm.
        assert_close(end, &before[..1], &after[..1], 0.0, 1e-4);
        assert_close(end, &before[1..2], &after[1..2], 0.0, 1.0);
        assert_close(end, &before[2..], &after[2..], 0.0, 1e-8);
    }
}

#[test]
fn a_loose_support_is_elastic() {
    assert_elastic(
        loose().law.as_ref(),
        &[
            [1e-3, -2e-3, -4e-3],
            [0.0, 1e-3, -0.06e-3],
            [-1e-3, 0.5e-3, -0.03e-3],
            [2e-3, 0.0, 0.2e-3],
            [0.0, -1e-3, 5e-3],
            [1e-3, 0.0, -0.099e-3],
        ],
    );
}

/// Derived: a rebound stop in parallel keeps it captive: 4 kN/mm over 1 mm less half a blend of 0.5 mm.
#[test]
fn a_rebound_stop_keeps_it_captive() {
    let isolator = described(&format!(
        "{BOUND}tension = \"none\"\nstops = {{ w = [\"none\", \"6 mm\"] }}"
    ));
    let force = |w| isolator.at(&Vec3::new(0.0, 0.0, w)).point.force.z;
    assert_close("lifted", &[force(5e-3)], &[0.0], 0.0, 0.0);
    assert_close("caught", &[force(7e-3)], &[3000.0], 1e-12, 0.0);
    assert_close("seated", &[force(-2.05e-3)], &[-800.0], 1e-12, 0.0);
}

/// Derived: its rate is that of the seated support, and what a stiffer one adds lifts off as well.
#[test]
fn a_stiffer_loose_support_still_lifts_off() {
    let isolator = loose();
    assert_close("rate", &[isolator.free_rate(2)], &[400e3], 1e-12, 0.0);
    for (factor, seated) in [(1.5, -1200.0), (0.5, -400.0)] {
        let law = isolator.stiffened(2, factor).law;
        let force = |w: f64| law.at(&Vec3::new(0.0, 0.0, w)).force.z;
        let found = [force(-2.05e-3), force(-0.05e-3), force(0.0), force(3e-3)];
        // Half way into the contact k h/8: 7.5 N and 2.5 N.
        let expected = [seated, seated / 160.0, 0.0, 0.0];
        assert_close(factor, &found, &expected, 1e-12, 0.0);
        assert_elastic(
            law.as_ref() as &dyn Law,
            &[[0.0, 1e-3, -2e-3], [1e-3, 0.0, -0.02e-3], [0.0, 0.0, 2e-3]],
        );
    }
    let across = isolator.stiffened(0, 2.0);
    assert_close("across", &[across.free_rate(0)], &[180e3], 1e-12, 0.0);
}

/// Derived: four loose pads carry the weight as bound ones do, 0.05 mm lower; lifted by more than its weight the powertrain leaves them and is held by the rebound stops alone:
/// 3 · 150 kg · 9.80665/4 = 1103.248 N each, at 4 kN/mm 0.275812 mm beyond half a blend and the travel.
#[test]
fn a_powertrain_on_loose_pads_rests_as_on_bound_ones_and_is_caught_when_thrown_up() {
    let thrown = "[[load]]\nname = \"dropped\"\nvehicle = \"0, 0, -4 g\"\nclass = \"extreme\"\n";
    let plain = "rates = \"200, 200, 400 N/mm\"\n";
    let outcome = |more: &str, beside: &str| {
        let text = four_mounts_and(thrown)
            .replace(plain, &format!("{plain}{more}"))
            .replace(
                "isolator = \"pad\"\n",
                &format!("isolator = \"pad\"\n{beside}"),
            );
        let evaluation = evaluate(&model(&text)).unwrap();
        let heights: Vec<f64> = evaluation
            .loads
            .iter()
            .map(|load| {
                let rest = load.outcome.as_ref().unwrap();
                rest.mounts[0].isolator_deflection.z
            })
            .collect();
        (heights[0], *heights.last().unwrap())
    };
    let bound = outcome("", "");
    // What stands behind a pad gives way with it and changes nothing of it.
    for beside in ["", "chassis = \"20 kN/mm\"\n"] {
        let loose = outcome(
            "tension = \"none\"\nstops = { w = [\"none\", \"6 mm\"] }\n",
            beside,
        );
        assert_close("rest", &[loose.0], &[bound.0 - 0.05e-3], 1e-9, 0.0);
        assert_close("rest", &[loose.0], &[-0.969_373_4e-3], 1e-6, 0.0);
        assert_close("thrown up", &[loose.1], &[6.525_812_03e-3], 1e-7, 0.0);
    }
}

/// Derived: 20 mm of rubber. Pushed by 2 mm a tenth is lost; pulled by 2 mm it has lifted off and only
/// the 3 mm across strain it, as far as bolted rubber. Of bonded rubber a tenth is gained.
#[test]
fn what_lifts_off_is_not_strained_by_pulling() {
    let keys = |tension: &str| {
        format!(
            "kind = \"block\"\nblock = \"60, 50, 20 mm\"\nhardness = \"55 IRHD\"\ntension = \"{tension}\""
        )
    };
    let (loose, bonded) = (described(&keys("none")), described(&keys("avoid")));
    for (part, w, [compression, tension]) in [
        (&loose, -2e-3, [0.1, 0.0]),
        (&loose, 2e-3, [0.0, 0.0]),
        (&bonded, -2e-3, [0.1, 0.0]),
        (&bonded, 2e-3, [0.0, 0.1]),
    ] {
        let found = part.strain.unwrap().at(&Vec3::new(0.0, 3e-3, w));
        let found = [found.compression, found.tension, found.shear];
        assert_close(w, &found, &[compression, tension, 0.15], 1e-12, 0.0);
    }
    let says = |part: &Isolator, words: &str| part.remarks.iter().any(|line| line.contains(words));
    assert!(says(&loose, "located by a bolt or a spigot") && !says(&loose, "across the bond"));
    assert!(says(&bonded, "across the bond") && !says(&bonded, "lifts off"));
    let urethane = |tension: &str| {
        described(&format!(
            "kind = \"polyurethane\"\nblock = \"60, 50, 20 mm\"\nhardness = \"80 Shore A\"\n{tension}"
        ))
    };
    let (loose, bonded) = (urethane(""), urethane("tension = \"allowed\""));
    assert!(says(&loose, "squeak") && !says(&loose, "little tension"));
    assert!(says(&bonded, "little tension") && !says(&bonded, "squeak"));
}
