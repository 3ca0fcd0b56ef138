//! The number at the start of a text.

use std::ops::Range;

use super::normal::plain;

/// A number and where in the text it ends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Number {
    pub(super) value: f64,
    pub(super) end: usize,
}

/// Why no number could be read, with the offending bytes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum NumberError {
    NotANumber(Range<usize>),
    OutOfRange(Range<usize>),
}

/// Reads the number with which `text` starts; what follows it is left to the caller unless it shows
/// that the number itself is malformed.
pub(super) fn read(text: &str) -> Result<Number, NumberError> {
    let (sign, start) = match text.chars().next() {
        Some(c) if plain(c) == '-' => (-1.0, c.len_utf8()),
        Some('+') => (1.0, 1),
        _ => (1.0, 0),
    };
    let body = from(text, start);
    let (magnitude, len) = match mixed(body).or_else(|| fraction(body)) {
        Some((num, den, len)) => (num / den, len),
        None => {
            let len = decimal(body).ok_or(NumberError::NotANumber(0..token(text)))?;
            let digits = to(body, len);
            let magnitude = float(digits).ok_or(NumberError::NotANumber(0..start + len))?;
            // A value too small for a float reads as zero although its digits say otherwise.
            let mantissa = digits.split(['e', 'E']).next().unwrap_or_default();
            if magnitude == 0.0 && mantissa.bytes().any(|b| matches!(b, b'1'..=b'9')) {
                return Err(NumberError::OutOfRange(0..start + len));
            }
            (magnitude, len)
        }
    };
    let end = start + len;
    if let Some(more) = malformed(from(text, end)) {
        return Err(NumberError::NotANumber(0..end + more));
    }
    // Infinite for more digits than a float holds, NaN or infinite for a denominator of zero.
    if magnitude.is_nan() {
        return Err(NumberError::NotANumber(0..end));
    }
    if magnitude.is_infinite() {
        return Err(NumberError::OutOfRange(0..end));
    }
    // Zero has no sign.
    let value = if magnitude == 0.0 {
        0.0
    } else {
        sign * magnitude
    };
    Ok(Number { value, end })
}

fn from(text: &str, at: usize) -> &str {
    text.get(at..).unwrap_or_default()
}

fn to(text: &str, at: usize) -> &str {
    text.get(..at).unwrap_or_default()
}

/// Bytes up to the first space or comma.
fn token(text: &str) -> usize {
    text.find(|c: char| c.is_whitespace() || c == ',')
        .unwrap_or(text.len())
}

/// Bytes of digits at the start.
fn digits(text: &str) -> usize {
    text.bytes().take_while(u8::is_ascii_digit).count()
}

/// Bytes of a decimal number with optional exponent, if one is there.
fn decimal(text: &str) -> Option<usize> {
    let whole = digits(text);
    let mut len = whole;
    let mut part = 0;
    if from(text, len).starts_with('.') {
        part = digits(from(text, len + 1));
        len += 1 + part;
    }
    if whole + part == 0 {
        return None;
    }
    if from(text, len).starts_with(['e', 'E']) {
        let sign = match from(text, len + 1).chars().next() {
            Some(c) if c == '+' || plain(c) == '-' => c.len_utf8(),
            _ => 0,
        };
        let power = digits(from(text, len + 1 + sign));
        if power > 0 {
            len += 1 + sign + power;
        }
    }
    Some(len)
}

fn float(text: &str) -> Option<f64> {
    if text.is_ascii() {
        text.parse().ok()
    } else {
        text.chars().map(plain).collect::<String>().parse().ok()
    }
}

/// `3/8`: numerator, denominator and length in bytes.
fn fraction(text: &str) -> Option<(f64, f64, usize)> {
    let top = digits(text);
    let slash = from(text, top)
        .chars()
        .next()
        .filter(|&c| plain(c) == '/')?
        .len_utf8();
    let bottom = digits(from(text, top + slash));
    let num = float(to(text, top))?;
    let den = float(to(from(text, top + slash), bottom))?;
    Some((num, den, top + slash + bottom))
}

/// `1-1/2` and `1 1/2`, as one fraction so that only one rounding is made. The part after the whole
/// number must be less than one: `1 5/4` is more likely a slip than a size.
fn mixed(text: &str) -> Option<(f64, f64, usize)> {
    let whole = digits(text);
    let value = float(to(text, whole))?;
    let rest = from(text, whole);
    let gap = match rest.chars().next()? {
        '-' => 1,
        c if c.is_whitespace() => rest.len() - rest.trim_start().len(),
        _ => return None,
    };
    let (num, den, len) = fraction(from(rest, gap))?;
    (num < den).then_some((value * den + num, den, whole + gap + len))
}

/// Whether what follows a number belongs to it and spoils it: `1.2.3`, `1_000`, `3-5`, `1.5/2`,
/// `1 500`. Returns how many bytes of it do.
fn malformed(rest: &str) -> Option<usize> {
    let spaced = rest.trim_start();
    let gap = rest.len() - spaced.len();
    let mut chars = spaced.chars();
    let first = chars.next()?;
    let digit_next = chars.next().is_some_and(|c| c.is_ascii_digit());
    let spoils = if gap > 0 {
        // `3000 1/min` is a number and a unit.
        let unit = spaced
            .strip_prefix("1/")
            .is_some_and(|rest| !rest.starts_with(|c: char| c.is_ascii_digit()));
        first.is_ascii_digit() && !unit
    } else {
        matches!(first, '.' | '_') || (matches!(plain(first), '-' | '/') && digit_next)
    };
    spoils.then(|| gap + token(spaced))
}

#[cfg(test)]
mod tests {
    use super::{Number, NumberError, read};

    fn value(text: &str) -> f64 {
        read(text).unwrap().value
    }

    #[test]
    fn decimals_and_exponents() {
        for (text, expected) in [
            ("12", 12.0_f64),
            ("+.5", 0.5),
            ("5.", 5.0),
            ("−1.25e−2", -0.0125),
            ("2E3", 2000.0),
            ("-0", 0.0),
        ] {
            assert_eq!(value(text).to_bits(), expected.to_bits(), "{text}");
        }
    }

    #[test]
    fn fractions_are_rounded_once() {
        for (text, expected) in [
            ("1/3", 1.0_f64 / 3.0),
            ("1-1/2", 1.5),
            ("1 1/2", 1.5),
            ("-2\u{a0}3/8", -2.375),
            ("1⁄4", 0.25),
        ] {
            assert_eq!(value(text).to_bits(), expected.to_bits(), "{text}");
        }
    }

    #[test]
    fn a_unit_is_left_alone() {
        assert_eq!(
            read("3000 1/min"),
            Ok(Number {
                value: 3000.0,
                end: 4
            })
        );
        assert_eq!(read("5 mm"), Ok(Number { value: 5.0, end: 1 }));
        assert_eq!(read("5e mm"), Ok(Number { value: 5.0, end: 1 }));
    }

    #[test]
    fn malformed_numbers_are_refused_whole() {
        for (text, len) in [
            ("1.2.3 mm", 5),
            ("1_000 mm", 5),
            ("3-5 mm", 3),
            ("1.5/2 in", 5),
            ("1 500 mm", 5),
            ("1 5/4 in", 5),
            ("NaN", 3),
            ("inf mm", 3),
            ("0/0 mm", 3),
            ("-", 1),
            ("", 0),
        ] {
            assert_eq!(read(text), Err(NumberError::NotANumber(0..len)), "{text}");
        }
    }

    #[test]
    fn what_a_float_cannot_hold_is_out_of_range() {
        assert_eq!(read("1e400 m"), Err(NumberError::OutOfRange(0..5)));
        assert_eq!(read("-1e-400 m"), Err(NumberError::OutOfRange(0..7)));
        assert_eq!(read("1/0 in"), Err(NumberError::OutOfRange(0..3)));
        assert_eq!(read("0e-400").map(|n| n.end), Ok(6));
    }
}
