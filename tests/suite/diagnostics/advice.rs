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

#[test]
fn travels_to_a_stop_are_shown_with_their_signs() {
    for wrong in [
        "[\"12 mm\", \"10 mm\"]",
        "[\"10 mm\", \"12 mm\"]",
        "[\"12 mm\", \"-10 mm\"]",
    ] {
        let (_, help) = told("[\"-9 mm\", \"11 mm\"]", wrong);
        assert_eq!(
            help,
            "write how far it may be pushed, with a minus, then how far it may be pulled: \
             `[\"-12 mm\", \"10 mm\"]`, at least 0.01 mm each; where it is free for good, `\"none\"`"
        );
    }
    for (old, new, example) in [
        (
            "[\"-9 mm\", \"11 mm\"]",
            "\"9 mm\"",
            "[\"-12 mm\", \"10 mm\"]",
        ),
        (
            "[\"9 Hz\", \"14 Hz\"]",
            "\"9 Hz\"",
            "[\"10 Hz\", \"15 Hz\"]",
        ),
    ] {
        let (_, help) = told(old, new);
        assert_eq!(help, format!("write a list of two texts such as {example}"));
        // What is shown is taken.
        assert_eq!(super::problems(&with(old, example)), []);
    }
}

#[test]
fn a_section_that_there_is_once_has_single_brackets() {
    for (old, new, cure) in [
        (
            "[isolator.wedge]",
            "[[isolator.wedge]]",
            "single brackets: `[isolator.wedge]`",
        ),
        ("[datum]", "[[datum]]", "single brackets: `[datum]`"),
    ] {
        let all = super::problems(&with(old, new));
        assert!(
            all.iter().any(|problem| problem.code == Code::WrongKind
                && problem.help == [cure.to_owned()]),
            "{all:#?}"
        );
    }
}

#[test]
fn another_word_for_a_key_is_told_its_name_and_nothing_is_missing() {
    for (old, new, cure) in [
        ("mass = \"232 kg\"", "weight = \"232 kg\"", "mass"),
        (
            "at = \"-1050, 0, -60 mm\"",
            "position = \"-1050, 0, -60 mm\"",
            "at",
        ),
        ("at = \"260, 0, 330 mm\"", "pos = \"260, 0, 330 mm\"", "at"),
        ("at = \"-150, 5, 180 mm\"", "cg = \"-150, 5, 180 mm\"", "at"),
        (
            "centre_of_gravity =",
            "center_of_gravity =",
            "centre_of_gravity",
        ),
        ("centre_of_gravity =", "cg =", "centre_of_gravity"),
        ("rates = \"95", "stiffness = \"95", "rates"),
        ("gears = {", "ratios = {", "gears"),
        ("gears = {", "ratio = {", "gears"),
    ] {
        let (_, help) = told(old, new);
        assert_eq!(help, format!("did you mean `{cure}`?"), "{new}");
    }
    // Where the key stands as well, or is none of the section, its other name is only unknown.
    for (old, new) in [
        ("mass = \"232 kg\"", "mass = \"232 kg\"\nweight = \"1 kg\""),
        ("w = \"0, 1, 1\"", "w = \"0, 1, 1\"\nweight = \"1 kg\""),
    ] {
        let (_, help) = told(old, new);
        assert!(help.starts_with("known keys here: "), "{help}");
    }
}

#[test]
fn a_direction_takes_plain_numbers() {
    let (message, _) = told("w = \"0, 1, 1\"", "w = \"forward\"");
    assert_eq!(
        message,
        "`w` of mount `front right`: expected 3 plain numbers, found 1"
    );
    let (message, _) = told("w = \"0, 1, 1\"", "w = \"0, 1, 1 mm\"");
    assert_eq!(
        message,
        "`w` of mount `front right`: `mm` is a unit of length; a direction takes plain numbers"
    );
    let (message, _) = told("mount_share = \"65 %\"", "mount_share = \"65 mm\"");
    assert_eq!(
        message,
        "`targets.mount_share`: `mm` is a unit of length where a plain number or a share is expected"
    );
}

#[test]
fn a_vector_of_lengths_is_shown_as_a_place() {
    let old = "at = \"-150, 5, 180 mm\"";
    let (_, help) = told(old, "at = \"-150, 180 mm\"");
    assert!(help.ends_with("for example `-150, 5, 180 mm`"), "{help}");
    let (_, help) = told(old, "at = 5");
    assert_eq!(help, "write text such as \"-150, 5, 180 mm\"");
    let (_, help) = told(old, "at = \"5 in, -7 in, 5 in\"");
    assert_eq!(help, "write the unit once, at the end: `5, -7, 5 in`");
    let (_, help) = told(old, "at = \"5 in, -7 mm, 5 in\"");
    assert_eq!(
        help,
        "write one unit, at the end, for example `-150, 5, 180 mm`"
    );
}

#[test]
fn a_force_for_a_mass_is_shown_as_the_mass() {
    for (written, cure) in [
        ("240 lbf", "did you mean `240 lb`? "),
        ("-2.5 kgf", "did you mean `-2.5 kg`? "),
    ] {
        let (_, help) = told("\"232 kg\"", &format!("\"{written}\""));
        assert!(help.starts_with(cure), "{help}");
    }
}
