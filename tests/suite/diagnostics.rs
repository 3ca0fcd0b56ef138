//! Broken model files: the whole list of problems, where each is marked, and what is said.
//!
//! A fixture in `diagnostics/` holds its complete list as comments
//! `# expect: M012 at 7:9` (code, line, column).
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

mod advice;
mod documented;
mod hostile;
mod oversized;
mod words;

use std::collections::BTreeSet;
use std::path::Path;

use bedplate::diagnostic::{Code, Diagnostic, Severity, place};
use bedplate::model::file::{LARGEST_FILE, read};

/// All problems of a file, warnings of a usable one included.
pub(crate) fn problems(text: &str) -> Vec<Diagnostic> {
    match read(text.as_bytes()) {
        Ok(checked) => checked.warnings,
        Err(diagnostics) => diagnostics,
    }
}

fn fixtures() -> Vec<(String, String)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/suite/diagnostics");
    let mut found: Vec<_> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|end| end == "toml"))
        .map(|path| {
            let name = path.file_stem().unwrap().to_string_lossy().into_owned();
            (name, std::fs::read_to_string(path).unwrap())
        })
        .collect();
    found.sort();
    found
}

fn expected(text: &str) -> Vec<String> {
    let mut lines: Vec<String> = text
        .lines()
        .filter_map(|line| line.strip_prefix("# expect: "))
        .map(str::to_owned)
        .collect();
    lines.sort();
    lines
}

fn found(text: &str) -> Vec<String> {
    let mut lines: Vec<String> = problems(text)
        .iter()
        .map(|problem| {
            let at = place(text, problem.span.as_ref().map_or(0, |span| span.start));
            format!("{} at {}:{}", problem.code.id(), at.line, at.column)
        })
        .collect();
    lines.sort();
    lines
}

#[test]
fn every_fixture_has_exactly_the_problems_it_lists() {
    let mut wrong = String::new();
    for (name, text) in fixtures() {
        let (expected, found) = (expected(&text), found(&text));
        assert!(!expected.is_empty(), "{name} expects nothing");
        if expected != found {
            let told: Vec<_> = problems(&text).into_iter().map(|p| p.message).collect();
            wrong +=
                &format!("{name}\n  expected {expected:?}\n  found    {found:?}\n  {told:#?}\n");
        }
    }
    assert!(wrong.is_empty(), "{wrong}");
}

/// A usable build to break.
pub(crate) const GOOD: &str = include_str!("diagnostics/good/whole.toml");

/// A usable build with more ways to describe an isolator.
const ISOLATORS: &str = include_str!("diagnostics/good/isolators.toml");

/// The good build with one text in it replaced.
fn with(old: &str, new: &str) -> String {
    assert_eq!(GOOD.matches(old).count(), 1, "{old} must stand there once");
    GOOD.replace(old, new)
}

/// The only problem of the good build with one text in it replaced, and the text that it marks.
fn only(old: &str, new: &str) -> (Diagnostic, String) {
    let text = with(old, new);
    let mut all = problems(&text);
    assert_eq!(all.len(), 1, "{new}: {all:#?}");
    let problem = all.remove(0);
    let marked = text[problem.span.clone().unwrap()].to_owned();
    (problem, marked)
}

#[test]
fn the_good_builds_have_no_problem() {
    assert_eq!(problems(GOOD), []);
    assert_eq!(problems(ISOLATORS), []);
}

#[test]
fn every_code_has_a_fixture() {
    let seen: BTreeSet<String> = fixtures()
        .iter()
        .flat_map(|(_, text)| expected(text))
        .filter_map(|line| line.split(' ').next().map(str::to_owned))
        .collect();
    // These need bytes or sizes that no fixture should hold; they have tests below.
    let elsewhere = [Code::NotText, Code::TooLarge, Code::TooManyProblems];
    // The solver's codes, S, are not problems of a file: the command line's tests trigger them.
    for code in Code::ALL.iter().filter(|code| code.id().starts_with('M')) {
        assert_eq!(
            seen.contains(code.id()),
            !elsewhere.contains(code),
            "{}",
            code.id()
        );
    }
}

#[test]
fn every_problem_is_one_plain_line_with_a_cure_and_stands_in_the_order_of_the_file() {
    for (name, text) in fixtures() {
        let all = problems(&text);
        assert!(
            all.windows(2).all(|two| start(&two[0]) <= start(&two[1])),
            "{name}"
        );
        for problem in all {
            let message = &problem.message;
            let lines = [message, &problem.label].into_iter().chain(&problem.help);
            for line in lines {
                assert!(!line.contains('\n'), "{name}: {line}");
                assert!(!line.ends_with('.'), "{name}: {line}");
                assert!(!line.starts_with(char::is_uppercase), "{name}: {line}");
            }
            assert!(
                !message.is_empty() && message.len() < 300,
                "{name}: {message}"
            );
            assert!(!problem.help.is_empty(), "{name}: {message}");
            assert!(
                problem.help.iter().all(|help| !help.is_empty()),
                "{name}: {message}"
            );
            let span = problem.span.clone().unwrap();
            assert!(text.get(span).is_some(), "{name}: {message}");
            let warns = problem.code.id().starts_with("M1");
            assert_eq!(
                problem.severity == Severity::Warning,
                warns,
                "{name}: {message}"
            );
        }
    }
}

fn start(problem: &Diagnostic) -> usize {
    problem.span.as_ref().map_or(0, |span| span.start)
}

#[test]
fn bytes_that_are_no_model_file_are_refused_with_one_problem() {
    let one = |bytes: &[u8]| {
        let mut all = read(bytes).unwrap_err();
        assert_eq!(all.len(), 1);
        all.remove(0)
    };
    let latin = one(b"title = \"Tr\xe4ger\"");
    assert_eq!(latin.code, Code::NotText);
    assert_eq!(latin.message, "the file is not UTF-8 text from byte 12 on");
    let large = one(&vec![b' '; LARGEST_FILE + 1]);
    assert_eq!(large.code, Code::TooLarge);
    // At the limit itself it is read: what is wrong is that it is empty.
    let full = read(&vec![b' '; LARGEST_FILE]).unwrap_err();
    assert!(full.iter().all(|problem| problem.code == Code::MissingKey));
    let wide = one(&GOOD
        .encode_utf16()
        .flat_map(u16::to_le_bytes)
        .collect::<Vec<_>>());
    assert_eq!(wide.code, Code::NotText);
}

#[test]
fn a_long_list_is_cut_and_says_how_much_is_left_out() {
    let text: String = (0..350).map(|i| format!("strange{i} = 1\n")).collect();
    let all = problems(&(text + GOOD));
    assert_eq!(all.len(), 201);
    let last = all.last().unwrap();
    assert_eq!(last.code, Code::TooManyProblems);
    assert_eq!(last.severity, Severity::Error);
    assert_eq!(last.message, "errors that are not listed: 150");

    let unused: String = (0..250)
        .map(|i| format!("[isolator.z{i}]\nkind = \"rates\"\nrates = \"1 N/mm\"\n"))
        .collect();
    let checked = read((GOOD.to_owned() + &unused).as_bytes()).unwrap();
    let last = checked.warnings.last().unwrap();
    assert_eq!(last.severity, Severity::Warning);
    assert_eq!(last.message, "warnings that are not listed: 50");
    assert_eq!(checked.warnings.len(), 201);
}

#[test]
fn the_end_of_lines_and_a_byte_order_mark_of_other_systems_change_nothing() {
    assert_eq!(problems(&GOOD.replace('\n', "\r\n")), []);
    assert_eq!(problems(&format!("\u{feff}{GOOD}")), []);
    let broken = with("mass = \"232 kg\"", "mass = \"232 kilo\"");
    let marked = |text: &str| text[problems(text)[0].span.clone().unwrap()].to_owned();
    assert_eq!(marked(&broken.replace('\n', "\r\n")), "kilo");
    assert_eq!(marked(&format!("\u{feff}{broken}")), "kilo");
}

#[test]
fn the_marked_text_is_what_is_wrong() {
    for (old, new, code, marked) in [
        ("\"232 kg\"", "\"232,5 kg\"", Code::NotAQuantity, "232,5"),
        ("\"232 kg\"", "\"232 kg kg\"", Code::UnknownUnit, "kg kg"),
        ("\"232 kg\"", "\" 232 \"", Code::BareNumber, "232"),
        ("\"232 kg\"", "232", Code::BareNumber, "232"),
        ("\"232 kg\"", "\"232 mm\"", Code::WrongUnit, "mm"),
        ("\"232 kg\"", "\"2e99 kg\"", Code::OutOfRange, "2e99"),
        ("\"232 kg\"", "\"NaN kg\"", Code::NotAQuantity, "NaN"),
        ("\"232 kg\"", "\"inf kg\"", Code::NotAQuantity, "inf"),
        ("\"232 kg\"", "\"-0 kg\"", Code::OutOfRange, "\"-0 kg\""),
        ("\"232 kg\"", "'232 kilo'", Code::UnknownUnit, "kilo"),
        (
            "\"232 kg\"",
            "\"\"\"232 kilo\"\"\"",
            Code::UnknownUnit,
            "\"\"\"232 kilo\"\"\"",
        ),
        (
            "\"232 kg\"",
            "\"232\\u0020kilo\"",
            Code::UnknownUnit,
            "\"232\\u0020kilo\"",
        ),
        ("\"232 kg\"", "\"2½ kg\"", Code::UnknownUnit, "½ kg"),
        ("\"320 N m\"", "\"55 lb/ft\"", Code::UnknownUnit, "lb/ft"),
        ("\"320 N m\"", "\"55 lb\"", Code::WrongUnit, "lb"),
        (
            "\"-150, 5, 180 mm\"",
            "\"-150 mm, 5, 180 mm\"",
            Code::NotAQuantity,
            "mm",
        ),
        (
            "\"-150, 5, 180 mm\"",
            "\"-150; 5; 180 mm\"",
            Code::NotAQuantity,
            "-150; 5; 180 mm",
        ),
        (
            "\"-150, 5, 180 mm\"",
            "\"-150, 5,5, 180 mm\"",
            Code::NotAQuantity,
            "5,5",
        ),
        (
            "\"-150, 5, 180 mm\"",
            "[-150, 5, 180]",
            Code::WrongKind,
            "[-150, 5, 180]",
        ),
        (
            "\"95, 95, 330 N/mm\"",
            "\"95, 330 N/mm\"",
            Code::NotAQuantity,
            "95, 330 N/mm",
        ),
        (
            "\"95, 95, 330 N/mm\"",
            "\"1,2,3,4 N/mm\"",
            Code::NotAQuantity,
            "1,2,3,4 N/mm",
        ),
        ("cylinders = 4", "cylinders = 4.5", Code::WrongKind, "4.5"),
        ("cylinders = 4", "cylinders = -4", Code::OutOfRange, "-4"),
        (
            "cylinders = 4",
            "cylindres = 4",
            Code::UnknownKey,
            "cylindres",
        ),
        (
            "fitted = \"free\"",
            "fitted = \"settle\"",
            Code::UnknownWord,
            "\"settle\"",
        ),
        ("throttle = 0.8", "throttle = 80", Code::OutOfRange, "80"),
        ("throttle = 0.8", "throttle = -0.0000", Code::OutOfRange, ""),
    ] {
        if marked.is_empty() {
            assert_eq!(problems(&with(old, new)), [], "{new}");
            continue;
        }
        let (problem, text) = only(old, new);
        assert_eq!((problem.code, text.as_str()), (code, marked), "{problem:?}");
    }
}

#[test]
fn a_near_miss_is_told_what_was_probably_meant() {
    for (old, new, help) in [
        (
            "mass = \"232 kg\"",
            "mas = \"232 kg\"",
            "did you mean `mass`?",
        ),
        (
            "crank_direction",
            "crank-direction",
            "did you mean `crank_direction`?",
        ),
        ("[driveline]", "[drive_line]", "did you mean `driveline`?"),
        (
            "isolator = \"saddle\"",
            "isolator = \"Saddle\"",
            "did you mean `saddle`?",
        ),
        (
            "isolator = \"saddle\"",
            "isolator = \"sadle\"",
            "did you mean `saddle`?",
        ),
        (
            "isolator = \"saddle\"",
            "isolator = \"bobbin\"",
            "known: `wedge`, `saddle`",
        ),
        ("gear = \"1\"", "gear = \"6\"", "known: `1`, `2`, `reverse`"),
        (
            "kind = \"solid\"",
            "kind = \"sold\"",
            "did you mean `solid`?",
        ),
        (
            "point = \"fan tip\"",
            "point = \"fan-tip\"",
            "did you mean `fan tip`?",
        ),
    ] {
        let text = with(old, new);
        let all = problems(&text);
        assert!(
            all.iter()
                .any(|problem| problem.help.contains(&help.to_owned())),
            "{new}: {all:#?}"
        );
    }
}

#[test]
fn one_cause_gives_one_message() {
    for (old, new) in [
        // A misspelt key is not missing as well.
        ("mass = \"232 kg\"", "mas = \"232 kg\""),
        // Any one of several keys would do, and one is there under a misspelt name.
        (
            "box = \"720, 340, 360 mm\"\nfill = 0.75",
            "boxx = \"720, 340, 360 mm\"",
        ),
        ("puck = {", "pukc = {"),
        (
            "force = \"0, 0, 2.8 kN\", moment = \"0, 5, 0 N m\"",
            "forse = \"0, 0, 2.8 kN\"",
        ),
        // Load cases and the driveline lean on the engine.
        ("torque = \"320 N m\"", "torque = \"320\""),
        ("torque = \"320 N m\"", "torgue = \"320 N m\""),
        (
            "crank_direction = \"-1, 0, 0\"",
            "crank_direction = \"0, 0, 0\"",
        ),
        // Load cases lean on the driveline and the vehicle.
        ("\"1\" = 4.12", "\"1\" = 0"),
        ("output = \"propshaft\"", "output = \"shaft\""),
        ("tyre_radius = \"356 mm\"", "tyre_radius = \"356\""),
        // Mounts lean on isolators, modes on load cases, clearances on points.
        ("kind = \"solid\"", "kind = \"metal\""),
        ("class = \"service\"", "class = \"everyday\""),
        ("at = \"260, 0, 330 mm\"", "at = \"260, 0 mm\""),
        ("name = \"fan tip\"", "name = \"fan tip\"\ncolour = 1"),
    ] {
        only(old, new);
    }
    let torqueless = with("torque = \"320 N m\"\n", "");
    let all = problems(&torqueless);
    assert_eq!(all.len(), 1, "{all:#?}");
    assert_eq!(all[0].code, Code::NeedsOther);
}

#[test]
fn numbers_of_other_bases_mean_what_they_say() {
    // 0x10 is 16: as a share it is refused, and is not read as 10 or 1.
    let (problem, _) = only("throttle = 0.8", "throttle = 0x10");
    assert_eq!(problem.code, Code::OutOfRange);
    let model = read(with("final_drive = 3.73", "final_drive = 0x10").as_bytes())
        .unwrap()
        .model;
    assert_eq!(
        model.driveline.unwrap().final_drive.to_bits(),
        16.0_f64.to_bits()
    );
}
