//! What the help says to write is what was meant, and is itself accepted.

use bedplate::diagnostic::Code;

use super::{only, with};

/// Message and first help of the only problem of the good build with one text replaced.
fn told(old: &str, new: &str) -> (String, String) {
    let (problem, _) = only(old, new);
    (
        problem.message,
        problem.help.first().cloned().unwrap_or_default(),
    )
}

#[test]
fn a_number_in_a_word_is_no_slip_of_the_pen() {
    let (_, help) = told("cycle = \"four-stroke\"", "cycle = \"4-stroke\"");
    assert_eq!(
        help,
        "known: `four-stroke`, `two-stroke`, `rotary-piston`, `electric`"
    );
}

#[test]
fn names_that_differ_in_their_numbers_are_not_taken_for_each_other() {
    use bedplate::diagnostic::did_you_mean;
    assert_eq!(did_you_mean("front 1", ["front 2"]), None);
    assert_eq!(did_you_mean("front", ["front 2"]), None);
    assert_eq!(did_you_mean("2nd gear", ["gear 2nd"]), None);
    assert_eq!(did_you_mean("frnt 2", ["front 2"]), Some("front 2"));
}

#[test]
fn a_comma_before_three_digits_may_stand_between_thousands() {
    for (written, cure) in [
        (
            "1,950 kg",
            "write `1950`, or `1.95` if the comma is a decimal point",
        ),
        ("0,250 kg", "use a point for decimals, for example `0.250`"),
        ("1,95 kg", "use a point for decimals, for example `1.95`"),
    ] {
        let (_, help) = told("\"232 kg\"", &format!("\"{written}\""));
        assert_eq!(help, cure);
    }
}
