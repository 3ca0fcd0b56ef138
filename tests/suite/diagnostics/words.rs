//! Words of the trade that are not the words of the file are told what to write.

use bedplate::diagnostic::{Code, Diagnostic};

use super::{GOOD, only, problems};

/// The solid isolator of the good build, in whose place others are put.
const SOLID: &str = "kind = \"solid\"\npuck = { diameter = \"60 mm\", bore = \"13 mm\", height = \"40 mm\", youngs_modulus = \"3 GPa\" }\ntension = \"avoid\"";

/// The only problem of the good build with another isolator in it.
fn told(keys: &str) -> Diagnostic {
    only(SOLID, keys).0
}

fn assert_told(keys: &str, code: Code, words: &str) {
    let problem = told(keys);
    let lines = format!("{}\n{}", problem.message, problem.help.join("\n"));
    assert_eq!(problem.code, code, "{keys}: {lines}");
    assert!(lines.contains(words), "{keys}: {lines}");
}

const RATES: &str = "kind = \"rates\"\nrates = \"90, 90, 300 N/mm\"";

#[test]
fn another_word_for_a_kind() {
    for (word, kind) in [
        ("rubber", "block"),
        ("cylinder", "block"),
        ("puck", "block"),
        ("pad", "block"),
        ("torque rod", "rod"),
        ("link", "rod"),
        ("Bushing", "bush"),
        ("PU", "polyurethane"),
        ("urethane", "polyurethane"),
        ("spring", "rates"),
        ("hydro", "hydraulic"),
        ("metal", "solid"),
    ] {
        let keys = format!("kind = \"{word}\"");
        let meant = format!("did you mean `{kind}`?");
        assert_told(&keys, Code::UnknownIsolatorKind, &meant);
    }
    // Whatever was written, every kind is listed with what it is.
    for word in ["banana", "bushing"] {
        let help = told(&format!("kind = \"{word}\"")).help.join("\n");
        for kind in [
            "`rates` (three known rates)",
            "`block` (",
            "`bush` (",
            "`curve` (",
            "`rod` (",
            "`hydraulic` (",
            "`polyurethane` (",
            "`solid` (",
        ] {
            assert!(help.contains(kind), "{kind}: {help}");
        }
    }
}

#[test]
fn another_word_for_a_rubber() {
    for (word, rubber) in [
        ("NR", "natural"),
        ("natural rubber", "natural"),
        ("NBR", "nitrile"),
        ("SBR", "styrene-butadiene"),
        ("CR", "chloroprene"),
        ("neoprene", "chloroprene"),
        ("EPDM", "epdm"),
    ] {
        let keys = format!("{RATES}\nrubber = \"{word}\"");
        let meant = format!("did you mean `{rubber}`?");
        assert_told(&keys, Code::UnknownWord, &meant);
    }
    let keys = format!("{RATES}\nrubber = \"urethane\"");
    assert_told(&keys, Code::UnknownWord, "`kind = \"polyurethane\"`");
}

#[test]
fn a_scale_cut_short() {
    for scale in ["A", "ShA", "Shore"] {
        let keys =
            format!("kind = \"block\"\nblock = \"80, 60, 30 mm\"\nhardness = \"60 {scale}\"");
        assert_told(&keys, Code::UnknownUnit, "write `\"60 Shore A\"`");
    }
}

#[test]
fn whether_it_may_be_pulled() {
    for (written, code) in [
        ("\"yes\"", Code::UnknownWord),
        ("\"no\"", Code::UnknownWord),
        ("false", Code::WrongKind),
        ("\"None\"", Code::UnknownWord),
    ] {
        let keys = format!("{RATES}\ntension = {written}");
        assert_told(&keys, code, "`\"none\"` where it lifts off");
    }
}

#[test]
fn a_word_without_quotes() {
    for (key, word) in [("tension", "none"), ("rubber", "NR"), ("rubber", "ibr")] {
        let text = GOOD.replacen(SOLID, &format!("{RATES}\n{key} = {word}"), 1);
        let all = problems(&text);
        assert_eq!(all.len(), 1, "{all:#?}");
        assert_eq!(all[0].code, Code::Syntax);
        assert_eq!(all[0].message, format!("a word without quotes: `{word}`"));
        assert_eq!(all[0].help, [format!("put it in quotes: `\"{word}\"`")]);
    }
}

#[test]
fn the_word_for_no_stop_is_taken_in_any_case() {
    for word in ["none", "None", "NONE"] {
        let keys = format!("{RATES}\nstops = {{ w = [\"{word}\", \"8 mm\"] }}");
        assert_eq!(problems(&GOOD.replacen(SOLID, &keys, 1)), [], "{word}");
    }
}

#[test]
fn numbers_and_lists_are_counted() {
    for (keys, code, words) in [
        (
            "kind = \"rates\"\nrates = \"100, 100 N/mm\"",
            Code::NotAQuantity,
            "write one number for all three axes, such as \"250 N/mm\", or three for u, v, w",
        ),
        (
            "kind = \"rates\"\nrates = \"9, 9, 9 N/mm\"\nstops = { w = [\"-8 mm\", \"8 mm\", \"9 mm\"] }",
            Code::WrongKind,
            "found a list of 3",
        ),
        (
            "kind = \"rates\"\nrates = \"9, 9, 9 N/mm\"\nstops = { w = [] }",
            Code::WrongKind,
            "found an empty list",
        ),
        (
            "kind = \"bush\"\nhardness = \"55 IRHD\"\nbush = { inner = \"16 mm\", outer = \"16.7999 mm\", length = \"4 mm\" }",
            Code::OutOfRange,
            "1.04999 times",
        ),
        (
            "kind = \"curve\"\nrates = \"9, 9, 0 N/mm\"\ncurve = { w = [[\"0 mm\", \"0 N\"], [\"1 mm\", \"1 N\"], [\"1.0009 mm\", \"2 N\"]] }",
            Code::ImpossibleCurve,
            "two points nearer than 0.001 mm at 1.00 mm",
        ),
    ] {
        assert_told(keys, code, words);
    }
    // A ratio that is at the bound but for rounding is taken.
    let keys = "kind = \"bush\"\nhardness = \"55 IRHD\"\nbush = { inner = \"16 mm\", outer = \"16.8 mm\", length = \"4 mm\" }";
    assert_eq!(problems(&GOOD.replacen(SOLID, keys, 1)), []);
}

#[test]
fn sizes_outside_of_their_braces_or_by_another_name() {
    for (keys, words) in [
        (
            "kind = \"bush\"\nhardness = \"55 IRHD\"\ninner = \"16 mm\"\nouter = \"32 mm\"\nlength = \"40 mm\"",
            "write the sizes together: `bush = { inner = ",
        ),
        (
            "kind = \"block\"\nhardness = \"55 IRHD\"\ndiameter = \"50 mm\"\nheight = \"30 mm\"",
            "write the sizes together: `cylinder = { diameter = ",
        ),
        (
            "kind = \"block\"\nhardness = \"55 IRHD\"\ncylinder = { radius = \"25 mm\", height = \"30 mm\" }",
            "did you mean `diameter`, twice the radius?",
        ),
        (
            "kind = \"bush\"\nhardness = \"55 IRHD\"\nbush = { id = \"16 mm\", outer = \"32 mm\", length = \"40 mm\" }",
            "did you mean `inner`?",
        ),
        (
            "kind = \"bush\"\nhardness = \"55 IRHD\"\nbush = { inner = \"16 mm\", od = \"32 mm\", length = \"40 mm\" }",
            "did you mean `outer`?",
        ),
    ] {
        assert_told(keys, Code::UnknownKey, words);
    }
    assert_told(
        "kind = \"bush\"\nhardness = \"55 IRHD\"\nbush = { inner = \"16 mm\", length = \"40 mm\" }",
        Code::MissingKey,
        "outer diameter of the rubber",
    );
    assert_told(
        "kind = \"bush\"\nhardness = \"55 IRHD\"\nbush = \"16 mm\"",
        Code::WrongKind,
        "in braces: `{ inner = ",
    );
}

#[test]
fn the_far_eye_of_a_rod_stands_in_braces() {
    let (problem, _) = only("w = \"0, 1, 1\"", "rod = \"-1400, 0, 20 mm\"");
    assert_eq!(problem.code, Code::WrongKind);
    let help = "write names and values in braces: `{ to = \"-1400, 0, 20 mm\" }`";
    assert_eq!(problem.help, [help.to_owned()]);
}

/// What a kind does not take is refused with a reason, not offered to whoever slips at another key.
#[test]
fn what_is_refused_is_not_offered() {
    let known = |keys: &str| {
        let help = told(&format!("zzzzzzz = 1\n{keys}")).help.join("\n");
        let (_, list) = help.split_once("known keys here: ").unwrap();
        list.split(", ").map(str::to_owned).collect::<Vec<_>>()
    };
    let of_rates = known(RATES);
    assert!(of_rates.contains(&"tension".to_owned()));
    assert!(!of_rates.contains(&"measured_rates".to_owned()));
    let block = "kind = \"block\"\nblock = \"80, 60, 30 mm\"\nhardness = \"55 IRHD\"";
    assert!(known(block).contains(&"measured_rates".to_owned()));
    let bush = "kind = \"bush\"\nhardness = \"55 IRHD\"\nbush = { inner = \"16 mm\", outer = \"32 mm\", length = \"40 mm\" }";
    assert!(!known(bush).contains(&"tension".to_owned()));
}
