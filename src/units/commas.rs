//! Commas separate numbers; where one was meant as a decimal point, that is told apart.

use std::ops::Range;

/// What is wrong with the commas of a text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Slip {
    /// They separate so many parts, not as many as expected.
    Count(usize),
    /// The number at these bytes has a comma for a decimal point.
    Decimal(Range<usize>),
}

/// Whether commas divide the text into as many parts as expected.
pub(super) fn check(text: &str, expected: usize) -> Result<(), Slip> {
    let bytes = text.as_bytes();
    let commas = || text.match_indices(',').map(|(at, _)| at);
    let found = 1 + commas().count();
    if found == expected {
        return Ok(());
    }
    let digit = |at: usize| bytes.get(at).is_some_and(u8::is_ascii_digit);
    let tight = |at: &usize| at.checked_sub(1).is_some_and(digit) && digit(at + 1);
    // In a vector with all commas alike nothing tells a point from a separator.
    let meant = if expected == 1 {
        found == 2
    } else {
        !commas().all(|at| tight(&at))
    };
    match commas().find(tight).filter(|_| meant) {
        Some(comma) => Err(Slip::Decimal(number_around(bytes, comma))),
        None => Err(Slip::Count(found)),
    }
}

/// The digits and points on both sides of a comma.
fn number_around(bytes: &[u8], comma: usize) -> Range<usize> {
    let inside = |b: &&u8| b.is_ascii_digit() || **b == b'.';
    let before = bytes.iter().take(comma).rev().take_while(inside).count();
    let after = bytes.iter().skip(comma + 1).take_while(inside).count();
    comma - before..comma + 1 + after
}

#[cfg(test)]
mod tests {
    use super::{Slip, check};

    #[test]
    fn a_comma_between_digits_is_a_point_only_where_that_explains_the_count() {
        for (text, expected, result) in [
            ("12,5 mm", 1, Err(Slip::Decimal(0..4))),
            ("12, 5 mm", 1, Err(Slip::Count(2))),
            ("1,234,567 mm", 1, Err(Slip::Count(3))),
            ("1,2,3 mm", 3, Ok(())),
            ("1, 2,5, 3 mm", 3, Err(Slip::Decimal(3..6))),
            ("1,2,5,3 mm", 3, Err(Slip::Count(4))),
            ("12,5 mm", 3, Err(Slip::Count(2))),
            ("−2,5 mm", 1, Err(Slip::Decimal(3..6))),
        ] {
            assert_eq!(check(text, expected), result, "{text}");
        }
    }
}
