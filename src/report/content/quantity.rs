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

/// All of a limit, in percent.
const WHOLE: f64 = 100.0;

/// More decimals than this are never needed to tell a value from its limit.
const MOST_DECIMALS: u8 = 6;

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
        not_finite(value_si, unit).to_owned()
    }
}

/// A share without end is one of a limit that leaves nothing.
fn not_finite(value_si: f64, unit: Shown) -> &'static str {
    if unit == Shown::Percent && value_si == f64::INFINITY {
        "none left"
    } else {
        "unknown"
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
        not_finite(value_si, unit).to_owned()
    }
}

/// A value and its limit with their symbol, with the digits of [`compared`].
#[must_use]
pub fn pair(value_si: f64, limit_si: f64, unit: Shown) -> (String, String) {
    let [of_value, of_limit] = compared(value_si, limit_si, unit);
    (
        with_digits(value_si, unit, of_value),
        with_digits(limit_si, unit, of_limit),
    )
}

/// Digits of a value and of the limit it is held against.
///
/// The usual ones where they tell enough. Else both get the fewest decimals
/// with which the larger has three digits, what is at least a thousandth of it
/// is not shown as nothing, and two that differ do not read alike. Shares stay
/// whole percents. Where only one of the two is a number, its own digits.
#[must_use]
pub fn compared(value_si: f64, limit_si: f64, unit: Shown) -> [Digits; 2] {
    let known = |one: f64, other: f64| if one.is_finite() { one } else { other };
    let (value_si, limit_si) = (known(value_si, limit_si), known(limit_si, value_si));
    let usual = [value_si, limit_si].map(|si| usual_digits(si, unit));
    let [value, limit] = [value_si, limit_si].map(|si| unit.from_si(si).abs());
    let larger = value.max(limit);
    if unit == Shown::Percent || !larger.is_finite() {
        return usual;
    }
    let differ = (value_si - limit_si).is_normal();
    let tells = |[of_value, of_limit]: &[Digits; 2]| {
        let value_shown = number_with(value_si, unit, *of_value);
        let limit_shown = number_with(limit_si, unit, *of_limit);
        let three = significant(&value_shown).max(significant(&limit_shown)) >= 3;
        let vanishes =
            |size: f64, shown: &str| size > 0.0 && size >= larger / 1e3 && significant(shown) == 0;
        decimals(&value_shown) == decimals(&limit_shown)
            && (three || is_known_to_usual(larger, unit))
            && !vanishes(value, &value_shown)
            && !vanishes(limit, &limit_shown)
            && (!differ || value_shown != limit_shown)
    };
    let more = (0..=MOST_DECIMALS).map(|n| [Digits::Decimals(n); 2]);
    let mut choices = std::iter::once(usual).chain(more);
    choices.find(tells).unwrap_or(usual)
}

/// What is not known to more than its usual digits, however few these are: forces of rubber, lengths of what moves on it, frequencies.
fn is_known_to_usual(size: f64, unit: Shown) -> bool {
    match unit {
        Shown::Newton | Shown::Hertz | Shown::HertzFromAngular | Shown::Degree => true,
        Shown::Millimetre => size >= 1.0,
        _ => size == 0.0,
    }
}

fn decimals(shown: &str) -> usize {
    shown.split_once('.').map_or(0, |(_, after)| after.len())
}

/// Digits from the first that is not zero.
fn significant(shown: &str) -> usize {
    let digits = shown.chars().filter(char::is_ascii_digit);
    digits.skip_while(|digit| *digit == '0').count()
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
        Shown::Percent if size > WHOLE && size.round() <= WHOLE => just_over(size),
        Shown::Percent | Shown::RevPerMinute => Digits::Decimals(0),
        _ => Digits::Significant(3),
    }
}

/// Fewest decimals with which what is above 100 % by less than half of one does not read as 100 %.
fn just_over(percent: f64) -> Digits {
    let mut more = (1..=MOST_DECIMALS).map(Digits::Decimals);
    let tells = |digits: &Digits| {
        let shown = units::number(percent, *digits);
        shown.parse::<f64>().is_ok_and(|read| read > WHOLE)
    };
    more.find(tells).unwrap_or(Digits::Decimals(0))
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
    fn a_share_just_over_the_whole_does_not_read_as_the_whole() {
        let shown = [1.0, 1.0 - 1e-9, 1.004, 1.0004, 1.006].map(share);
        assert_eq!(shown, ["100 %", "100 %", "100.4 %", "100.04 %", "101 %"]);
    }

    #[test]
    fn what_is_not_finite_is_said_in_words() {
        assert_eq!(with_unit(f64::NAN, Shown::Newton), "unknown");
        assert_eq!(number(f64::INFINITY, Shown::Hertz), "unknown");
        assert_eq!(share(f64::INFINITY), "none left");
        assert_eq!(share(f64::NAN), "unknown");
    }

    #[test]
    fn a_value_just_past_its_limit_does_not_read_like_the_limit() {
        let (value, limit) = pair(12.03e-3, 12.0e-3, Shown::Millimetre);
        assert_eq!((value.as_str(), limit.as_str()), ("12.03 mm", "12.00 mm"));
        let (value, limit) = pair(12.0e-3, 12.0e-3, Shown::Millimetre);
        assert_eq!(value, limit);
    }

    /// Derived: three digits of the larger, and no more where the usual ones are all that is known.
    #[test]
    fn a_value_and_its_limit_are_told_to_the_same_decimals() {
        for (value, limit, unit, expected) in [
            (
                0.01e-3,
                0.0115e-3,
                Shown::Millimetre,
                ["0.0100 mm", "0.0115 mm"],
            ),
            (0.0, 0.5e-3, Shown::Millimetre, ["0.000 mm", "0.500 mm"]),
            (0.03e-3, 12e-3, Shown::Millimetre, ["0.03 mm", "12.00 mm"]),
            (0.003e-3, 12e-3, Shown::Millimetre, ["0.0 mm", "12.0 mm"]),
            (0.0, 0.0, Shown::Millimetre, ["0.0 mm", "0.0 mm"]),
            (21.7e-3, 5e-3, Shown::Millimetre, ["21.7 mm", "5.0 mm"]),
            (0.0, 0.15, Shown::Number, ["0.000", "0.150"]),
            (2.49e6, 42.5e6, Shown::Megapascal, ["2.5 MPa", "42.5 MPa"]),
            (2.49e6, 640e6, Shown::Megapascal, ["2 MPa", "640 MPa"]),
            (12_603.0, 12_598.0, Shown::Newton, ["12603 N", "12598 N"]),
            (723.2, 12_612.0, Shown::Newton, ["723 N", "12600 N"]),
            (0.214, 0.5, Shown::Hertz, ["0.2 Hz", "0.5 Hz"]),
            (0.0158, 1.0, Shown::Percent, ["2 %", "100 %"]),
        ] {
            let (value, limit) = pair(value, limit, unit);
            assert_eq!([value.as_str(), limit.as_str()], expected);
        }
    }

    #[test]
    fn steps_are_one_two_five() {
        assert_relative_eq!(round_step(0.0013), 0.002);
        assert_relative_eq!(round_step(3.0), 5.0);
        assert_relative_eq!(round_step(7.0), 10.0);
        assert_relative_eq!(round_step(0.0), 0.0);
    }
}
