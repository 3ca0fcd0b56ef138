//! SI to text for people.

use super::factor::{
    CENTI, DEGREE, FREE_FALL, Factor, GIGA, KILO, KILOMETRE_PER_HOUR, MEGA, MILLI, ONE, TURN,
    TURN_PER_MINUTE,
};

/// The unit in which a value is shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Shown {
    /// A length, from m.
    Millimetre,
    /// A length, from m.
    Metre,
    /// An area, from m².
    SquareMillimetre,
    /// A mass, from kg.
    Kilogram,
    /// A force, from N.
    Newton,
    /// A force, from N.
    Kilonewton,
    /// A torque, from N m.
    NewtonMetre,
    /// A linear rate, from N/m.
    NewtonPerMillimetre,
    /// A linear rate, from N/m.
    KilonewtonPerMillimetre,
    /// An angular rate, from N m/rad.
    NewtonMetrePerDegree,
    /// An angular rate, from N m/rad.
    NewtonMetrePerRadian,
    /// An angle, from rad.
    Degree,
    /// A frequency, from Hz: natural frequencies are results in cycles and not kept in rad/s.
    Hertz,
    /// A frequency, from rad/s, in which [`Quantity::Frequency`](super::Quantity::Frequency) is
    /// kept.
    HertzFromAngular,
    /// A rotational speed, from rad/s.
    RevPerMinute,
    /// A moment or product of inertia, from kg m².
    KilogramSquareMetre,
    /// A stress or a pressure, from Pa.
    Megapascal,
    /// A modulus, from Pa.
    Gigapascal,
    /// An acceleration in multiples of standard free fall, from m/s².
    Gee,
    /// An acceleration, from m/s².
    MetrePerSecondSquared,
    /// A share in hundredths, from the plain number.
    Percent,
    /// A temperature, from °C.
    Celsius,
    /// A speed of travel, from m/s.
    KilometrePerHour,
    /// A duration, from s.
    Second,
    /// A duration, from s.
    Millisecond,
    /// A plain number.
    Number,
}

impl Shown {
    /// The symbol after the number, which [`parse`](super::parse) accepts; empty for a plain number.
    #[must_use]
    pub fn symbol(self) -> &'static str {
        self.unit().0
    }

    /// A kept value in this unit.
    #[must_use]
    pub fn from_si(self, value: f64) -> f64 {
        self.unit().1.in_unit(value)
    }

    fn unit(self) -> (&'static str, Factor) {
        match self {
            Self::Millimetre => ("mm", MILLI),
            Self::Metre => ("m", ONE),
            Self::SquareMillimetre => ("mm2", MILLI.squared()),
            Self::Kilogram => ("kg", ONE),
            Self::Newton => ("N", ONE),
            Self::Kilonewton => ("kN", KILO),
            Self::NewtonMetre => ("N m", ONE),
            Self::NewtonPerMillimetre => ("N/mm", KILO),
            Self::KilonewtonPerMillimetre => ("kN/mm", MEGA),
            Self::NewtonMetrePerDegree => ("N m/deg", ONE.per(DEGREE)),
            Self::NewtonMetrePerRadian => ("N m/rad", ONE),
            Self::Degree => ("deg", DEGREE),
            Self::Hertz => ("Hz", ONE),
            Self::HertzFromAngular => ("Hz", TURN),
            Self::RevPerMinute => ("rpm", TURN_PER_MINUTE),
            Self::KilogramSquareMetre => ("kg m2", ONE),
            Self::Megapascal => ("MPa", MEGA),
            Self::Gigapascal => ("GPa", GIGA),
            Self::Gee => ("g", FREE_FALL),
            Self::MetrePerSecondSquared => ("m/s2", ONE),
            Self::Percent => ("%", CENTI),
            Self::Celsius => ("°C", ONE),
            Self::KilometrePerHour => ("km/h", KILOMETRE_PER_HOUR),
            Self::Second => ("s", ONE),
            Self::Millisecond => ("ms", MILLI),
            Self::Number => ("", ONE),
        }
    }
}

/// How many digits a number is shown with.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Digits {
    /// So many after the decimal point, at most 15.
    Decimals(u8),
    /// So many from the first that is not zero, from 1 to 17; digits in front of the point beyond
    /// them are shown as zeros.
    Significant(u8),
}

const NOT_FINITE: &str = "not finite";

/// From here on a float no longer tells one whole number from the next, and a long row of digits
/// would pretend that it does.
const POSITIONAL_BELOW: f64 = 1e15;

/// Below this a number with significant digits is a row of zeros, and an exponent is easier read.
const POSITIONAL_FROM: f64 = 1e-4;

/// Writes a kept value in a unit: `12.0 mm`. The minus is the ASCII hyphen, so that a search for
/// `-12.0` finds it; a number that rounds to zero has no sign; what is not finite says so.
#[must_use]
pub fn show(value_si: f64, unit: Shown, digits: Digits) -> String {
    let value = unit.from_si(value_si);
    let mut text = number(value, digits);
    if value.is_finite() && !unit.symbol().is_empty() {
        text.push(' ');
        text.push_str(unit.symbol());
    }
    text
}

/// Writes a number alone, for tables with the unit in the head. Numbers of 1e15 and more, and with
/// significant digits those below 1e-4, have an exponent.
#[must_use]
pub fn number(value: f64, digits: Digits) -> String {
    if !value.is_finite() {
        return NOT_FINITE.to_owned();
    }
    let size = value.abs();
    let text = match digits {
        Digits::Decimals(decimals) if size < POSITIONAL_BELOW => {
            format!("{value:.*}", usize::from(decimals.min(15)))
        }
        Digits::Decimals(decimals) => format!("{value:.*e}", usize::from(decimals.min(15))),
        Digits::Significant(count) => significant(value, usize::from(count.clamp(1, 17))),
    };
    match text.strip_prefix('-') {
        Some(zero) if zero.bytes().all(|b| matches!(b, b'0' | b'.')) => zero.to_owned(),
        _ => text,
    }
}

fn significant(value: f64, count: usize) -> String {
    let rounded = format!("{value:.*e}", count - 1);
    let size = value.abs();
    if value != 0.0 && !(POSITIONAL_FROM..POSITIONAL_BELOW).contains(&size) {
        return rounded;
    }
    // The exponent after rounding: 9.99 with two digits is 1.0e1, shown as 10.
    let exponent = rounded
        .split_once('e')
        .and_then(|(_, e)| e.parse::<i32>().ok())
        .unwrap_or(0);
    let last = i32::try_from(count).unwrap_or(i32::MAX) - 1 - exponent;
    match usize::try_from(last) {
        Ok(decimals) => format!("{value:.decimals$}"),
        // Rounded in front of the point, where the format has no precision: through the float.
        Err(_) => format!("{:.0}", rounded.parse().unwrap_or(value)),
    }
}

#[cfg(test)]
mod tests {
    use super::{Digits, Shown, number, show};

    #[test]
    fn decimals_are_fixed_and_zero_has_no_sign() {
        assert_eq!(number(12.0, Digits::Decimals(1)), "12.0");
        assert_eq!(number(-0.04, Digits::Decimals(1)), "0.0");
        assert_eq!(number(-0.0, Digits::Decimals(0)), "0");
        assert_eq!(number(-0.06, Digits::Decimals(1)), "-0.1");
        assert_eq!(number(1e300, Digits::Decimals(2)), "1.00e300");
    }

    #[test]
    fn significant_digits_survive_every_size() {
        for (value, count, expected) in [
            (12345.0, 3, "12300"),
            (9.99, 2, "10"),
            (999.6, 3, "1000"),
            (0.012345, 3, "0.0123"),
            (-1.5, 4, "-1.500"),
            (0.0, 3, "0.00"),
            (-0.0, 3, "0.00"),
            (1.234e-7, 2, "1.2e-7"),
            (0.000123, 2, "0.00012"),
            (4.2e20, 2, "4.2e20"),
            (5.0, 0, "5"),
        ] {
            assert_eq!(number(value, Digits::Significant(count)), expected);
        }
    }

    #[test]
    fn what_is_not_finite_says_so_without_a_unit() {
        for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert_eq!(
                show(value, Shown::Newton, Digits::Decimals(1)),
                "not finite"
            );
        }
        assert_eq!(
            show(f64::MAX, Shown::Millimetre, Digits::Decimals(1)),
            "not finite"
        );
    }

    #[test]
    fn hertz_is_taken_as_hertz() {
        assert_eq!(show(12.5, Shown::Hertz, Digits::Decimals(1)), "12.5 Hz");
        let angular = 12.5 * std::f64::consts::TAU;
        assert_eq!(
            show(angular, Shown::HertzFromAngular, Digits::Decimals(1)),
            "12.5 Hz"
        );
        assert_eq!(
            show(angular, Shown::RevPerMinute, Digits::Decimals(0)),
            "750 rpm"
        );
    }

    #[test]
    fn numbers_and_shares() {
        assert_eq!(show(0.125, Shown::Percent, Digits::Decimals(1)), "12.5 %");
        assert_eq!(show(0.125, Shown::Number, Digits::Decimals(3)), "0.125");
    }
}
