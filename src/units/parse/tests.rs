//! Texts and what is read from them or said about them.

use super::{ABSOLUTE_ZERO, parse, parse_vector};
use crate::units::{Quantity, UnitError};

/// The offending text, the message and the cure.
fn told(text: &str, error: &UnitError) -> (String, String, String) {
    (
        text[error.span.clone()].to_owned(),
        error.to_string(),
        error.help(),
    )
}

fn refused(text: &str, quantity: Quantity) -> (String, String, String) {
    told(text, &parse(text, quantity).unwrap_err())
}

fn refused3(text: &str) -> (String, String, String) {
    told(
        text,
        &parse_vector::<3>(text, Quantity::Length).unwrap_err(),
    )
}

#[test]
fn a_spelling_with_two_meanings_follows_the_quantity() {
    for (text, quantity, expected) in [
        ("3 g", Quantity::Mass, 0.003_f64),
        ("2 g", Quantity::Acceleration, 19.6133),
        ("1 lb", Quantity::Mass, 0.453_592_37),
        ("1 kg/mm", Quantity::LinearRate, 9806.65),
        ("5 %", Quantity::Ratio, 0.05),
        ("0.05", Quantity::Ratio, 0.05),
        ("0 mm", Quantity::Length, 0.0),
    ] {
        assert_eq!(
            parse(text, quantity).unwrap().to_bits(),
            expected.to_bits(),
            "{text}"
        );
    }
}

#[test]
fn a_metric_value_is_the_nearest_float() {
    for i in 1..=2000_u16 {
        let expected: f64 = format!("{i}e-3").parse().unwrap();
        let value = parse(&format!("{i} mm"), Quantity::Length).unwrap();
        assert_eq!(value.to_bits(), expected.to_bits(), "{i} mm");
    }
}

#[test]
fn the_offending_part_is_pointed_at() {
    for (text, quantity, part, message) in [
        (
            " ",
            Quantity::Length,
            " ",
            "no value where a value of length is expected",
        ),
        ("NaN mm", Quantity::Length, "NaN", "`NaN` is not a number"),
        ("mm 5", Quantity::Length, "mm", "`mm` is not a number"),
        (
            "1 500 mm",
            Quantity::Length,
            "1 500",
            "`1 500` is not a number",
        ),
        (
            " 12,5 mm",
            Quantity::Length,
            "12,5",
            "`12,5` has a comma instead of a decimal point",
        ),
        (" 12 ", Quantity::Length, "12", "`12` has no unit of length"),
        (
            "5 furlong",
            Quantity::Length,
            "furlong",
            "`furlong` is not a known unit of length",
        ),
        (
            "5 N·m ",
            Quantity::Force,
            "N·m",
            "`N·m` is a unit of torque, not of force",
        ),
        (
            "1, 2 mm",
            Quantity::Length,
            "1, 2 mm",
            "expected 1 number of length, found 2",
        ),
        (
            "5 ft 3 in",
            Quantity::Length,
            "ft",
            "`ft` stands in front of a further number",
        ),
        (
            "1e300 m",
            Quantity::Length,
            "1e300",
            "`1e300` is beyond any length of a build",
        ),
        (
            "-2e-16 m",
            Quantity::Length,
            "-2e-16",
            "`-2e-16` is beyond any length of a build",
        ),
        (
            "1e16",
            Quantity::Ratio,
            "1e16",
            "`1e16` is beyond any ratio of a build",
        ),
        (
            "-274 °C",
            Quantity::Temperature,
            "-274",
            "`-274` is beyond any temperature of a build",
        ),
    ] {
        let (found, told, _) = refused(text, quantity);
        assert_eq!((found.as_str(), told.as_str()), (part, message), "{text}");
    }
}

#[test]
fn the_cure_names_what_was_probably_meant() {
    for (text, quantity, cure) in [
        (
            "12,5 mm",
            Quantity::Length,
            "use a point for decimals, for example `12.5`",
        ),
        ("5 Mm", Quantity::Length, "did you mean `mm`?"),
        ("5 mPa", Quantity::Pressure, "did you mean `MPa`?"),
        ("5 kg", Quantity::Force, "did you mean `5 kgf`?"),
        ("5 lbs", Quantity::Force, "did you mean `5 lbf`?"),
        ("5 kg m", Quantity::Torque, "did you mean `kgf m`?"),
        ("5 mil", Quantity::Length, "use one of mm, cm, m, "),
        (
            "5",
            Quantity::Mass,
            "add one of kg, g, t, lb, for example `85 kg`",
        ),
        (
            "-460 °F",
            Quantity::Temperature,
            "a temperature from -273.15 to 1e15 in °C",
        ),
        (
            "1e300 m",
            Quantity::Length,
            "zero, or a size from 1e-15 to 1e15 in m",
        ),
    ] {
        let (_, _, help) = refused(text, quantity);
        assert!(help.starts_with(cure), "{text}: {help}");
    }
}

#[test]
fn a_vector_has_one_unit_at_the_end() {
    let place: [f64; 3] = parse_vector("−150,5 , 1 1/2 in", Quantity::Length).unwrap();
    assert_eq!(
        place.map(f64::to_bits),
        [-3.81_f64, 0.127, 0.0381].map(f64::to_bits)
    );
    let share: [f64; 2] = parse_vector("0.5, 0.25", Quantity::Ratio).unwrap();
    assert_eq!(share.map(f64::to_bits), [0.5_f64, 0.25].map(f64::to_bits));
    for (text, part, message) in [
        (
            "1 mm, 2, 3",
            "mm",
            "`mm` stands in front of a further number",
        ),
        (
            "1, 2 mm",
            "1, 2 mm",
            "expected 3 numbers of length, found 2",
        ),
        (
            "12,5 mm",
            "12,5 mm",
            "expected 3 numbers of length, found 2",
        ),
        ("1, 2, 3", "3", "`3` has no unit of length"),
        ("1, , 3 mm", "", "a number is missing"),
        (
            "1, -2.5,5, 3 mm",
            "2.5,5",
            "`2.5,5` has a comma instead of a decimal point",
        ),
        (
            "1, 2e300, 3 mm",
            "2e300",
            "`2e300` is beyond any length of a build",
        ),
        ("[1, 2, 3] mm", "[1", "`[1` is not a number"),
    ] {
        let (found, told, _) = refused3(text);
        assert_eq!((found.as_str(), told.as_str()), (part, message), "{text}");
    }
    let (_, _, help) = refused3("1 mm");
    assert!(help.ends_with("for example `-150, 5, 180 mm`"), "{help}");
}

#[test]
fn temperatures_reach_down_to_absolute_zero_in_either_scale() {
    for text in ["-273.15 °C", "-459.67 °F"] {
        let value = parse(text, Quantity::Temperature).unwrap();
        assert!((value - ABSOLUTE_ZERO).abs() < 1e-12, "{text}: {value}");
    }
    let freezing = parse("32 °F", Quantity::Temperature).unwrap();
    assert_eq!(freezing.to_bits(), 0.0_f64.to_bits());
}

#[test]
fn a_message_stays_on_one_short_line() {
    let text = format!("5 {}", "x\ny".repeat(50));
    let (_, told, help) = refused(&text, Quantity::Mass);
    assert!(
        told.len() < 90 && !told.contains('\n') && !help.contains('\n'),
        "{told}"
    );
}

#[test]
fn every_example_is_accepted() {
    for quantity in Quantity::ALL {
        assert!(parse(quantity.example(), quantity).is_ok(), "{quantity:?}");
    }
}
