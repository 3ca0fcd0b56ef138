//! Unit factors against published tables, and text to SI and back.

use std::f64::consts::TAU;

use approx::assert_relative_eq;
use bedplate::units::{Digits, Quantity, Shown, parse, parse_vector, show};
use proptest::prelude::*;

/// Values in SI that follow from the definitions (inch and pound of 1959, standard free fall of 1901,
/// the turn as 2π rad, the bar as 1e5 Pa). Computed independently, in decimal arithmetic of 40 digits.
#[test]
fn exact_factors_are_met_to_the_last_digits() {
    for (text, quantity, expected) in [
        ("1 in", Quantity::Length, 0.0254),
        ("1 ft", Quantity::Length, 0.3048),
        ("1 thou", Quantity::Length, 2.54e-5),
        ("1 in²", Quantity::Area, 6.4516e-4),
        ("1 lb", Quantity::Mass, 0.453_592_37),
        ("1 lbf", Quantity::Force, 4.448_221_615_260_5),
        ("1 kgf", Quantity::Force, 9.80665),
        ("1 lb-ft", Quantity::Torque, 1.355_817_948_331_400_4),
        ("1 kgf m", Quantity::Torque, 9.80665),
        ("1 kgf/mm", Quantity::LinearRate, 9806.65),
        ("1 ft/s2", Quantity::Acceleration, 0.3048),
        ("1 mph", Quantity::Speed, 0.447_04),
        ("1 bar", Quantity::Pressure, 1e5),
        ("60 rpm", Quantity::Frequency, TAU),
        ("1 Hz", Quantity::Frequency, TAU),
        ("180 deg", Quantity::Angle, TAU / 2.0),
        ("212 °F", Quantity::Temperature, 100.0),
        ("2 min", Quantity::Time, 120.0),
        ("1 g/cm3", Quantity::Density, 1000.0),
        ("1 lb/in3", Quantity::Density, 27_679.904_710_203_125),
        ("12 um/m/K", Quantity::Expansion, 12e-6),
        ("1 uin/in/°F", Quantity::Expansion, 1.8e-6),
    ] {
        assert_relative_eq!(
            parse(text, quantity).unwrap(),
            expected,
            max_relative = 1e-15
        );
    }
}

/// NIST SP 811 (2008), appendix B.8, seven digits as printed there; values from memory of that
/// table. Half a unit of the last digit is at most 5e-7 of the value.
#[test]
fn published_factors_are_met_to_their_seven_digits() {
    for (text, quantity, expected) in [
        ("1 lbf", Quantity::Force, 4.448_222),
        ("1 lbf ft", Quantity::Torque, 1.355_818),
        ("1 lbf in", Quantity::Torque, 0.112_984_8),
        ("1 lbf/in", Quantity::LinearRate, 175.126_8),
        ("1 psi", Quantity::Pressure, 6894.757),
        ("1 ksi", Quantity::Pressure, 6_894_757.0),
        ("1 lb ft2", Quantity::Inertia, 0.042_140_11),
        ("1 lb in2", Quantity::Inertia, 2.926_397e-4),
        ("1 ft2", Quantity::Area, 0.092_903_04),
        ("1 mph", Quantity::Speed, 0.447_04),
        ("1 km/h", Quantity::Speed, 0.277_777_8),
        ("1 rpm", Quantity::Frequency, 0.104_719_8),
        ("1 deg", Quantity::Angle, 0.017_453_29),
    ] {
        assert_relative_eq!(
            parse(text, quantity).unwrap(),
            expected,
            max_relative = 5e-7
        );
    }
}

/// Relations between units that hold by definition, with both sides as people write them.
#[test]
fn one_value_in_two_units_is_one_value() {
    for (one, other, quantity) in [
        ("1-1/2 in", "38.1 mm", Quantity::Length),
        ("12 lb in", "1 FT-LB", Quantity::Torque),
        ("1 kg·m²", "1e6 kg mm^2", Quantity::Inertia),
        ("1 slug ft2", "12 lbf in s2", Quantity::Inertia),
        (
            "1 N m/deg",
            "57.29577951308232 N*m/rad",
            Quantity::AngularRate,
        ),
        ("1 lb ft/deg", "12 in-lbf/deg", Quantity::AngularRate),
        ("250 N/mm", "250\u{a0}kN / m", Quantity::LinearRate),
        ("1 kg/mm", "9.80665 N/mm", Quantity::LinearRate),
        ("1 N·s/mm", "1000 N s/m", Quantity::Damping),
        (
            "1 LBF-S/IN",
            "0.17512683524647634 kN s/m",
            Quantity::Damping,
        ),
        ("1 MPa", "1 N/mm²", Quantity::Pressure),
        ("−3000 min⁻¹", "-50 Hz", Quantity::Frequency),
        ("3000 1/min", "50 Hz", Quantity::Frequency),
        ("36 km/h", "10 m/s", Quantity::Speed),
        ("7.85 g/cm³", "7850 kg/m^3", Quantity::Density),
        ("23e-6 1/K", "23 µm/m·K", Quantity::Expansion),
        ("1 g", "9.80665 m/s²", Quantity::Acceleration),
        ("5 %", "0.05", Quantity::Ratio),
    ] {
        let one = parse(one, quantity).unwrap();
        assert_relative_eq!(one, parse(other, quantity).unwrap(), max_relative = 1e-15);
    }
}

/// What each shown unit is read back as, and how much of the kept unit a result has: results in Hz
/// are kept in Hz, and text in Hz is read into rad/s.
const SHOWN: [(Shown, Quantity, f64); 25] = [
    (Shown::Millimetre, Quantity::Length, 1.0),
    (Shown::Metre, Quantity::Length, 1.0),
    (Shown::SquareMillimetre, Quantity::Area, 1.0),
    (Shown::Kilogram, Quantity::Mass, 1.0),
    (Shown::Newton, Quantity::Force, 1.0),
    (Shown::Kilonewton, Quantity::Force, 1.0),
    (Shown::NewtonMetre, Quantity::Torque, 1.0),
    (Shown::NewtonPerMillimetre, Quantity::LinearRate, 1.0),
    (Shown::KilonewtonPerMillimetre, Quantity::LinearRate, 1.0),
    (Shown::NewtonMetrePerDegree, Quantity::AngularRate, 1.0),
    (Shown::NewtonMetrePerRadian, Quantity::AngularRate, 1.0),
    (Shown::Degree, Quantity::Angle, 1.0),
    (Shown::Hertz, Quantity::Frequency, 1.0 / TAU),
    (Shown::HertzFromAngular, Quantity::Frequency, 1.0),
    (Shown::RevPerMinute, Quantity::Frequency, 1.0),
    (Shown::KilogramSquareMetre, Quantity::Inertia, 1.0),
    (Shown::Megapascal, Quantity::Pressure, 1.0),
    (Shown::Gigapascal, Quantity::Pressure, 1.0),
    (Shown::Gee, Quantity::Acceleration, 1.0),
    (Shown::MetrePerSecondSquared, Quantity::Acceleration, 1.0),
    (Shown::Percent, Quantity::Ratio, 1.0),
    (Shown::KilometrePerHour, Quantity::Speed, 1.0),
    (Shown::Second, Quantity::Time, 1.0),
    (Shown::Millisecond, Quantity::Time, 1.0),
    (Shown::Number, Quantity::Ratio, 1.0),
];

/// Text of the characters that values are made of, which finds more than arbitrary text.
const LIKE_A_VALUE: &str = "[-+0-9.,/eE mNkglbftinprHzs%\"·²°−\u{a0}⁻^*\n]{0,28}";

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn shown_values_are_read_back_within_the_digits_shown(
        (unit, quantity, kept) in prop::sample::select(&SHOWN[..]),
        value in -1e5..1e5_f64,
        digits in 0..10_u8,
    ) {
        let back = |digits| {
            let text = show(value, unit, digits);
            let read = parse(&text, quantity).map_err(|e| TestCaseError::fail(format!("{text}: {e}")))?;
            Ok::<f64, TestCaseError>(unit.from_si(read * kept))
        };
        let exact = unit.from_si(value);
        let rounding = exact.abs() * 1e-14;
        let fixed = back(Digits::Decimals(digits))?;
        prop_assert!((fixed - exact).abs() <= 0.5 * 0.1_f64.powi(digits.into()) + rounding);
        let leading = back(Digits::Significant(digits + 1))?;
        prop_assert!((leading - exact).abs() <= 0.5 * 0.1_f64.powi(digits.into()) * exact.abs() + rounding);
    }

    #[test]
    fn a_value_is_the_same_in_every_unit_and_spelling(
        quantity in prop::sample::select(&Quantity::ALL[..]),
        number in 1e-3..1e3_f64,
        pick in any::<prop::sample::Index>(),
    ) {
        let spelled: Vec<_> = quantity
            .units()
            .flat_map(|unit| unit.spellings.iter().map(move |spelling| (unit, spelling)))
            .collect();
        let (unit, spelling) = spelled[pick.index(spelled.len())];
        let first = quantity.units().next().unwrap();
        let kept = parse(&format!("{number} {}", first.symbol()), quantity).unwrap();
        // Only a unit that starts with a digit, `1/min`, must stand apart from the number.
        let gap = if spelling.starts_with('1') { " " } else { "" };
        let text = format!("{}{gap}{spelling}", kept / unit.factor() + unit.zero());
        // The reading in °F has the rounding of its zero in it.
        let tolerance = 1e-14 * (kept.abs() + unit.zero());
        prop_assert!((parse(&text, quantity).unwrap() - kept).abs() <= tolerance, "{text}");
    }

    #[test]
    fn any_text_gives_a_finite_value_or_a_usable_message(
        text in prop_oneof![LIKE_A_VALUE, any::<String>()],
        quantity in prop::sample::select(&Quantity::ALL[..]),
    ) {
        let one = parse(&text, quantity).map(|value| [value; 3]);
        for result in [one, parse_vector(&text, quantity)] {
            match result {
                Ok(values) => prop_assert!(values.iter().all(|value| value.is_finite())),
                Err(error) => {
                    prop_assert!(text.get(error.span.clone()).is_some(), "{:?}", error.span);
                    for line in [error.to_string(), error.help()] {
                        prop_assert!(!line.is_empty() && !line.contains('\n'), "{line}");
                        prop_assert!(!line.ends_with('.'), "{line}");
                    }
                }
            }
        }
    }
}
