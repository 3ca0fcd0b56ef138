//! Numbers for people: the unit and the digits that are meant.
//!
//! Rubber is known to about 15 %. Forces get three digits and no decimals,
//! deflections a tenth of a millimetre, frequencies a tenth of a hertz, shares
//! a whole percent: one digit more than is known, so that two results of the
//! same build can be told apart.

use crate::spatial::Vec3;
use crate::units::{self, Digits, Shown};

/// Below this a force in newtons has fewer than three digits before the point and is shown whole.
const WHOLE_BELOW: f64 = 100.0;

/// Below this a plain number is a ratio, which shows two decimals like its scatter.
const RATIO_BELOW: f64 = 10.0;

/// Number in a unit, without the symbol.
#[must_use]
pub fn number(value_si: f64, unit: Shown) -> String {
    number_with(value_si, unit, usual_digits(value_si, unit))
}

/// Number in a unit with given digits, without the symbol.
#[must_use]
pub fn number_with(value_si: f64, unit: Shown, digits: Digits) -> String {
    if value_si.is_finite() {
        units::number(unit.from_si(value_si), digits)
    } else {
        "unknown".to_owned()
    }
}

/// Number with its symbol.
#[must_use]
pub fn with_unit(value_si: f64, unit: Shown) -> String {
    with_digits(value_si, unit, usual_digits(value_si, unit))
}

/// Number with its symbol and given digits.
#[must_use]
pub fn with_digits(value_si: f64, unit: Shown, digits: Digits) -> String {
    if value_si.is_finite() {
        units::show(value_si, unit, digits)
    } else {
        "unknown".to_owned()
    }
}

/// A value and its limit with their symbol, with as many digits as it takes to tell them apart.
#[must_use]
pub fn pair(value_si: f64, limit_si: f64, unit: Shown) -> (String, String) {
    let usual = (with_unit(value_si, unit), with_unit(limit_si, unit));
    if usual.0 != usual.1 || !(value_si - limit_si).is_normal() {
        return usual;
    }
    (2..=6)
        .map(|n| {
            (
                with_digits(value_si, unit, Digits::Decimals(n)),
                with_digits(limit_si, unit, Digits::Decimals(n)),
            )
        })
        .find(|(value, limit)| value != limit)
        .unwrap_or(usual)
}

/// A place \[m\] in vehicle axes, in whole millimetres.
#[must_use]
pub fn place(at: &Vec3) -> String {
    let [x, y, z] =
        [at.x, at.y, at.z].map(|c| number_with(c, Shown::Millimetre, Digits::Decimals(0)));
    format!("x {x}, y {y}, z {z} mm")
}

/// A share of a whole.
#[must_use]
pub fn share(value: f64) -> String {
    with_unit(value, Shown::Percent)
}

fn usual_digits(value_si: f64, unit: Shown) -> Digits {
    let size = unit.from_si(value_si).abs();
    match unit {
        Shown::Newton | Shown::NewtonMetre | Shown::Kilogram if size < WHOLE_BELOW => {
            Digits::Decimals(0)
        }
        Shown::Millimetre | Shown::Hertz | Shown::HertzFromAngular | Shown::Degree => {
            Digits::Decimals(1)
        }
        Shown::Metre | Shown::Gee => Digits::Decimals(2),
        Shown::Number if size < RATIO_BELOW => Digits::Decimals(2),
        Shown::Percent | Shown::RevPerMinute => Digits::Decimals(0),
        _ => Digits::Significant(3),
    }
}

/// Symbol of the SI unit in which a value shown in `unit` is kept; `1` for plain numbers.
#[must_use]
pub fn si_symbol(unit: Shown) -> &'static str {
    match unit {
        Shown::Millimetre | Shown::Metre => "m",
        Shown::SquareMillimetre => "m2",
        Shown::Kilogram => "kg",
        Shown::Newton | Shown::Kilonewton => "N",
        Shown::NewtonMetre => "N m",
        Shown::NewtonPerMillimetre | Shown::KilonewtonPerMillimetre => "N/m",
        Shown::NewtonMetrePerDegree | Shown::NewtonMetrePerRadian => "N m/rad",
        Shown::Degree => "rad",
        Shown::Hertz => "Hz",
        Shown::HertzFromAngular | Shown::RevPerMinute => "rad/s",
        Shown::KilogramSquareMetre => "kg m2",
        Shown::Megapascal | Shown::Gigapascal => "Pa",
        Shown::Gee | Shown::MetrePerSecondSquared => "m/s2",
        Shown::Celsius => "degC",
        Shown::KilometrePerHour => "m/s",
        Shown::Second | Shown::Millisecond => "s",
        Shown::Percent | Shown::Number => "1",
    }
}

/// The next of 1, 2, 5 times a power of ten.
pub(crate) fn round_step(least: f64) -> f64 {
    if !(least.is_finite() && least > 0.0) {
        return 0.0;
    }
    let power = 10f64.powf(least.log10().floor());
    let lead = least / power;
    let round = [1.0, 2.0, 5.0]
        .into_iter()
        .find(|&r| lead <= r * (1.0 + 1e-9))
        .unwrap_or(10.0);
    round * power
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    #[test]
    fn forces_have_no_decimals_and_deflections_one() {
        assert_eq!(with_unit(938.4, Shown::Newton), "938 N");
        assert_eq!(with_unit(93.84, Shown::Newton), "94 N");
        assert_eq!(with_unit(-3.14e-3, Shown::Millimetre), "-3.1 mm");
        assert_eq!(share(0.434), "43 %");
    }

    #[test]
    fn what_is_not_finite_is_said_in_words() {
        assert_eq!(with_unit(f64::NAN, Shown::Newton), "unknown");
        assert_eq!(number(f64::INFINITY, Shown::Hertz), "unknown");
    }

    #[test]
    fn a_value_just_past_its_limit_does_not_read_like_the_limit() {
        let (value, limit) = pair(12.03e-3, 12.0e-3, Shown::Millimetre);
        assert_eq!((value.as_str(), limit.as_str()), ("12.03 mm", "12.00 mm"));
        let (value, limit) = pair(12.0e-3, 12.0e-3, Shown::Millimetre);
        assert_eq!(value, limit);
    }

    #[test]
    fn steps_are_one_two_five() {
        assert_relative_eq!(round_step(0.0013), 0.002);
        assert_relative_eq!(round_step(3.0), 5.0);
        assert_relative_eq!(round_step(7.0), 10.0);
        assert_relative_eq!(round_step(0.0), 0.0);
    }
}
