//! Heat, age and time on an isolator; rates in vibration as the file gives them.

use bedplate::model::isolator::{Amplitude, Vibration};
use bedplate::spatial::Vec3;
use bedplate::study::evaluate::evaluate;

use crate::kit::law::{assumed, described, refused};
use crate::kit::{assert_close, four_mounts_and, model};

const RATES: &str = "kind = \"rates\"\nrates = \"90, 100, 200 N/mm\"\n";

fn told(keys: &str, key: &str) -> Option<String> {
    let all = assumed(keys).into_iter();
    let mut texts = all.filter(|(of, _)| of == key).map(|(_, text)| text);
    let text = texts.next();
    assert_eq!(texts.next(), None, "{key} is told twice");
    text
}

/// Derived: a straight line between the entries of the table, nothing outside of it.
#[test]
fn the_rate_at_a_temperature_is_interpolated_and_never_guessed() {
    let compound = described(RATES).compound.unwrap();
    let table = compound.rate_at;
    assert!(table.len() >= 3, "{table:?}");
    for pair in table.windows(2) {
        let [(cold, stiff), (warm, soft)] = [pair[0], pair[1]];
        for (share, expected) in [
            (0.0, stiff),
            (0.25, 0.75 * stiff + 0.25 * soft),
            (1.0, soft),
        ] {
            let found = compound.rate_at(cold + share * (warm - cold)).unwrap();
            assert_close((cold, share), &[found], &[expected], 1e-12, 0.0);
        }
        assert!(stiff > soft, "rubber softens as it warms");
    }
    let (coldest, hottest) = (table[0].0, table[table.len() - 1].0);
    for beyond in [coldest - 0.1, hottest + 0.1, f64::NAN] {
        assert_eq!(compound.rate_at(beyond), None, "{beyond}");
    }
    assert_close(
        "20 °C",
        &[compound.rate_at(20.0).unwrap()],
        &[1.0],
        0.0,
        0.0,
    );
    let keys = |degrees: f64| format!("{RATES}temperature = \"{degrees} °C\"");
    assert_eq!(refused(&keys(hottest)), Vec::<&str>::new());
    assert_eq!(refused(&keys(hottest + 1.0)), ["M020"]);
}

/// Derived: factors of heat and age multiply every rate of the rubber, about its axes too, and no stop.
#[test]
fn heat_and_age_multiply_the_rates_of_the_rubber() {
    let x = Vec3::new(1e-3, -1e-3, -5e-3);
    let factor = described(RATES).compound.unwrap().rate_at(-10.0).unwrap();
    assert!(factor > 1.0);
    for (keys, expected) in [
        ("temperature_factor = 0.8", 0.8),
        ("age_factor = 1.2", 1.2),
        ("temperature_factor = 0.8\nage_factor = 1.2", 0.96),
        ("temperature = \"-10 °C\"\nage_factor = 1.5", 1.5 * factor),
    ] {
        let stop = "stops = { w = [\"-4 mm\", \"4 mm\"], blend = \"0.2 mm\" }";
        let isolator = described(&format!("{RATES}{stop}\n{keys}"));
        let point = isolator.at(&x).point;
        let found = point.force;
        let of_stop = -4e6 * 0.9e-3;
        let of_rubber = [90.0, -100.0, -1000.0].map(|force| force * expected);
        let forces = [of_rubber[0], of_rubber[1], of_rubber[2] + of_stop];
        assert_close(keys, found.as_slice(), &forces, 1e-12, 0.0);
        let of_law = isolator.law.at(&x).energy;
        assert_close(keys, &[of_law], &[2.595 * expected], 1e-12, 0.0);
    }
    let told = told(
        &format!("{RATES}temperature = \"-10 °C\""),
        "temperature_factor",
    )
    .unwrap();
    assert!(
        told.starts_with(&format!("{factor:.2}: usual for ")),
        "{told}"
    );
}

#[test]
fn creep_and_heat_limit_are_those_of_the_file_or_said() {
    let stated = described(&format!("{RATES}creep = 0.4\nheat_limit = \"110 °C\""));
    assert_eq!((stated.creep, stated.heat_limit), (0.4, Some(110.0)));
    let silent = described(RATES);
    assert_eq!(silent.heat_limit, Some(silent.compound.unwrap().heat_limit));
    assert!(silent.creep > 0.0);
    let percent = format!("{:.0} % of the deflection at rest", silent.creep * 100.0);
    assert!(told(RATES, "creep").unwrap().starts_with(&percent));
    assert!(told(RATES, "heat_limit").unwrap().contains("°C"));
    // Metal does not creep, and nothing is said of it.
    let metal = "kind = \"solid\"\nrates = \"200 kN/mm\"";
    assert_eq!(described(metal).heat_limit, None);
    assert_eq!(
        (told(metal, "creep"), told(metal, "heat_limit")),
        (None, None)
    );
}

/// Derived: 126/90, 150/100 and 260/200; across the three the loss factor is one.
#[test]
fn measured_dynamic_rates_give_a_ratio_along_each_axis() {
    let isolator = described(&format!(
        "{RATES}dynamic_rates = \"126, 150, 260 N/mm\"\nloss_factor = 0.12\ndynamic_ratio_large = 1.1"
    ));
    let state = isolator.at(&Vec3::new(0.0, 0.0, -1e-3));
    let omega = 60.0;
    for (amplitude, rates) in [
        (Amplitude::Small, [126e3, 150e3, 260e3]),
        (Amplitude::Large, [99e3, 110e3, 220e3]),
    ] {
        let (storage, loss) = isolator.dynamic_rate(&state, &Vibration { omega, amplitude });
        let found = storage.diagonal();
        assert_close(amplitude, found.as_slice(), &rates, 1e-12, 0.0);
        let found = loss.diagonal();
        assert_close(
            amplitude,
            found.as_slice(),
            &rates.map(|k| 0.12 * k),
            1e-12,
            0.0,
        );
    }
}

/// Common practice: large motion breaks up what stiffens small motion, so it is never the stiffer
/// unless the file says so.
#[test]
fn large_motion_is_not_stiffer_than_small_motion() {
    for (keys, large) in [
        ("dynamic_ratio = 1.05", Some(1.05)),
        ("dynamic_ratio = 0.9", Some(0.9)),
        ("dynamic_ratio = 1.05\ndynamic_ratio_large = 1.2", Some(1.2)),
        ("dynamic_ratio = 3\nloss_factor = 0.3", None),
    ] {
        let dynamics = described(&format!("{RATES}{keys}")).dynamics;
        let found = dynamics.ratio_large;
        match large {
            Some(large) => assert_close(keys, found.as_slice(), &[large; 3], 1e-12, 0.0),
            None => assert!(found.max() < 3.0, "{found}"),
        }
    }
}

/// Derived: f = √(R g/δ)/(2π) of a mass on its mounts, R the dynamic ratio and δ the sag; that is
/// 15.76 √(R/δ) with δ in mm. Sags for a frequency, computed by hand from it:
/// 5 Hz 9.94 and 13.91 mm (R 1 and 1.4), 8 Hz 3.88 and 5.43, 12 Hz 1.72 and 2.42.
#[test]
fn the_frequency_follows_from_the_sag_and_the_dynamic_ratio() {
    for (hz, ratio, sag) in [
        (5.0, 1.0, 9.936e-3),
        (5.0, 1.4, 13.910e-3),
        (8.0, 1.0, 3.881e-3),
        (8.0, 1.4, 5.434e-3),
        (12.0, 1.0, 1.725e-3),
        (12.0, 1.4, 2.415e-3),
    ] {
        let rate = 150.0 * 9.80665 / 4.0 / sag * 1e-3;
        let text = four_mounts_and("").replace(
            "rates = \"200, 200, 400 N/mm\"",
            &format!(
                "rates = \"300, 300, {rate} N/mm\"\ndynamic_ratio = {ratio}\nloss_factor = 0.1"
            ),
        );
        let model = model(&text);
        let evaluation = evaluate(&model).unwrap();
        let rest = evaluation.loads[0].outcome.as_ref().unwrap();
        let found = rest.mounts[0].isolator_deflection.z;
        assert_close("sag", &[found], &[-sag], 1e-9, 0.0);
        let modes = &evaluation.modes[0].solution.modes;
        let bounce = modes
            .iter()
            .max_by(|a, b| a.energy_share[2].total_cmp(&b.energy_share[2]));
        let found = bounce.unwrap().frequency_hz;
        assert_close("frequency", &[found], &[hz], 2e-4, 0.0);
    }
}

/// Derived: k ~ f^m over three decades. 1.4 times: m = lg 1.4/3 = 0.0487, tan(π m/2) = 0.0767, so a
/// loss factor below a third of that, 0.0256, is doubted. Twice: 0.1589, a third 0.0530.
#[test]
fn a_loss_far_below_what_the_stiffening_implies_is_doubted() {
    for (ratio, loss, doubted) in [
        (1.4, 0.026, false),
        (1.4, 0.025, true),
        (2.0, 0.054, false),
        (2.0, 0.052, true),
        (1.0, 0.0, false),
        (0.8, 0.0, false),
    ] {
        let keys = format!("{RATES}dynamic_ratio = {ratio}\nloss_factor = {loss}");
        let text = four_mounts_and("").replace(
            "kind = \"rates\"\nrates = \"200, 200, 400 N/mm\"\n",
            &format!("{keys}\n"),
        );
        let checked = bedplate::model::file::read(text.as_bytes()).unwrap();
        let codes: Vec<&str> = checked.warnings.iter().map(|one| one.code.id()).collect();
        assert_eq!(
            codes,
            if doubted { vec!["M106"] } else { vec![] },
            "{ratio} {loss}"
        );
        if doubted && ratio > 1.5 {
            let message = &checked.warnings[0].message;
            assert!(message.contains("near 0.16, not 0.05"), "{message}");
        }
    }
}
