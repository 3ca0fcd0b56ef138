//! Small files that nobody means well: no panic, no endless work, never neither a model nor an error.

use std::time::{Duration, Instant};

use bedplate::diagnostic::Severity;
use bedplate::model::file::read;
use bedplate::study::evaluate::evaluate;
use proptest::prelude::*;
use proptest::test_runner::Config;

use super::{GOOD, ISOLATORS};

/// Time in which any file is answered, in a build without optimisation on a slow and busy machine.
const PATIENCE: Duration = Duration::from_secs(6);

/// Time in which any small model is evaluated likewise.
const PATIENCE_TO_EVALUATE: Duration = Duration::from_secs(10);

/// Reads, and evaluates what could be read; whether it could.
pub(super) fn survive(bytes: &[u8]) -> bool {
    let started = Instant::now();
    let answer = read(bytes);
    let taken = started.elapsed();
    let shown = String::from_utf8_lossy(&bytes[..bytes.len().min(4000)]);
    assert!(
        taken < PATIENCE,
        "{taken:?} for {} bytes: {shown:.100}",
        bytes.len()
    );
    match answer {
        Ok(checked) => {
            let started = Instant::now();
            let evaluation = evaluate(&checked.model);
            let taken = started.elapsed();
            assert!(taken < PATIENCE_TO_EVALUATE, "{taken:?}: {shown}");
            if let Ok(evaluation) = evaluation {
                for result in &evaluation.loads {
                    let finite = result
                        .outcome
                        .as_ref()
                        .is_ok_and(|found| found.displacement.iter().all(|x| x.is_finite()));
                    assert!(finite || result.outcome.is_err(), "{shown}");
                }
            }
            assert!(
                checked
                    .warnings
                    .iter()
                    .all(|w| w.severity == Severity::Warning)
            );
            true
        }
        Err(problems) => {
            assert!(
                problems.iter().any(|p| p.severity == Severity::Error),
                "{shown}"
            );
            assert!(problems.len() <= 402, "{}", problems.len());
            for problem in &problems {
                let all = [&problem.message, &problem.label]
                    .into_iter()
                    .chain(&problem.help);
                for line in all {
                    assert!(
                        line.chars().count() < 1000 && !line.contains('\n'),
                        "{line}"
                    );
                }
                if let Some(span) = &problem.span {
                    let text = std::str::from_utf8(bytes).unwrap();
                    assert!(text.get(span.clone()).is_some(), "{problem:?}");
                }
            }
            false
        }
    }
}

/// Values that a key does not expect.
const STRANGE: &[&str] = &[
    "nan",
    "inf",
    "-inf",
    "1e300",
    "-0.0",
    "0",
    "-1",
    "99999999999999999999",
    "0xffff",
    "\"\"",
    "\" \"",
    "\"nan kg\"",
    "\"inf mm\"",
    "\"1e300 N/mm\"",
    "\"1e15 kg\"",
    "\"1e-15 kg\"",
    "\"-0, 0, -0 mm\"",
    "\"1e15, 1e15, 1e15 mm\"",
    "\"1e-12, 0, 0\"",
    "\"1e12 N/mm\"",
    "\"0, 0, 1e9 N/mm\"",
    "\"1e-3 mm\"",
    "\"99 m\"",
    "\"99, 99, -99 m\"",
    "\"1 g\"",
    "\"1 N/m\"",
    "\"1e12 N/m\"",
    "\"1e-9 kg m2\"",
    "\"\\u0000\"",
    "\"½ mm\"",
    "\"１２ mm\"",
    "\"12 mm mm\"",
    "\"12,5 mm\"",
    "\"🛠\"",
    "\"e\\u0301\"",
    "'''\n'''",
    "true",
    "[]",
    "[[]]",
    "[[\"0 mm\", \"0 N\"], [\"1e-2 mm\", \"9e7 N\"], [\"1 m\", \"1e8 N\"]]",
    "{ w = [[\"0 mm\", \"0 N\"], [\"1e-9 mm\", \"1e8 N\"]] }",
    "{ w = [[\"-1 mm\", \"0 N\"], [\"0 mm\", \"0 N\"], [\"1 mm\", \"1e-5 N\"]] }",
    "[\"none\", \"none\"]",
    "{}",
    "{ a = 1 }",
    "1979-05-27T07:32:00Z",
    "[\"1 mm\", \"2 mm\"]",
    "[\"-1 mm\", \"1e-2 mm\"]",
    "\"wedge\"",
    "\"electric\"",
    "\"settled\"",
    "\"axle-shafts\"",
    "\"rates\"",
    "\"none\"",
    "\"curve\"",
    "\"hydraulic\"",
    "[\"engine\"]",
    "\"S355\"",
    "\"width\"",
    "[\"0, 0 mm\", \"50, 50 mm\"]",
    "[0.1, 0.2]",
    "{ thickness = \"6 mm\", material = \"S355\" }",
];

/// One change of a text made of lines.
#[derive(Debug, Clone)]
enum Change {
    Delete(usize),
    Repeat(usize),
    Swap(usize, usize),
    Replace(usize, usize),
    Cut(usize),
    Insert(usize, char),
}

fn change() -> impl Strategy<Value = Change> {
    let at = 0_usize..100_000;
    prop_oneof![
        1 => at.clone().prop_map(Change::Delete),
        1 => at.clone().prop_map(Change::Repeat),
        1 => (at.clone(), at.clone()).prop_map(|(a, b)| Change::Swap(a, b)),
        6 => (at.clone(), 0..STRANGE.len()).prop_map(|(a, b)| Change::Replace(a, b)),
        1 => at.clone().prop_map(Change::Cut),
        1 => (at, any::<char>()).prop_map(|(a, c)| Change::Insert(a, c)),
    ]
}

fn changed(text: &str, changes: &[Change]) -> String {
    let mut lines: Vec<String> = text.lines().map(str::to_owned).collect();
    for change in changes {
        let count = lines.len().max(1);
        match *change {
            _ if lines.is_empty() => break,
            Change::Delete(at) => drop(lines.remove(at % count)),
            Change::Repeat(at) => lines.insert(at % count, lines[at % count].clone()),
            Change::Swap(a, b) => lines.swap(a % count, b % count),
            Change::Replace(at, with) => {
                // Only lines with a key take a value.
                let keyed: Vec<usize> = (0..count).filter(|&i| lines[i].contains(" = ")).collect();
                if let Some(&line) = keyed.get(at % keyed.len().max(1)) {
                    let key = lines[line]
                        .split(" = ")
                        .next()
                        .unwrap_or_default()
                        .to_owned();
                    lines[line] = format!("{key} = {}", STRANGE[with]);
                }
            }
            Change::Cut(at) => lines.truncate(at % count + 1),
            Change::Insert(at, c) => {
                let line = &mut lines[at % count];
                let place = (0..=at % (line.len() + 1))
                    .rev()
                    .find(|&p| line.is_char_boundary(p));
                line.insert(place.unwrap_or(0), c);
            }
        }
    }
    lines.join("\n")
}

proptest! {
    #![proptest_config(Config { cases: 200, ..Config::default() })]

    #[test]
    fn arbitrary_bytes_are_answered(bytes in prop::collection::vec(any::<u8>(), 0..300)) {
        survive(&bytes);
    }

    #[test]
    fn arbitrary_text_of_the_letters_of_toml_is_answered(
        text in "([a-z\\[\\]{}=\"'#,. \n\\\\0-9-]|\\[\\[part\\]\\]\n|name = |\"\"\"){0,80}"
    ) {
        survive(text.as_bytes());
    }

    #[test]
    fn a_spoiled_build_is_answered(
        build in prop::sample::select(&[GOOD, ISOLATORS][..]),
        changes in prop::collection::vec(change(), 1..6),
    ) {
        survive(changed(build, &changes).as_bytes());
    }
}

/// A build with some of its numbers, those inside texts too, multiplied by powers of ten.
fn scaled(build: &str, powers: &[i32]) -> String {
    let mut out = String::new();
    let mut number = String::new();
    let mut next = powers.iter().cycle();
    for c in build.chars().chain(['\n']) {
        if c.is_ascii_digit() || (c == '.' && !number.is_empty()) {
            number.push(c);
            continue;
        }
        match number.parse::<f64>() {
            // A name such as "1", a count or the 2 of `m2` stays, and most numbers do.
            Ok(value) if value > 4.0 => {
                let power = next.next().copied().unwrap_or(0);
                out += &format!("{}", value * 10_f64.powi(power));
            }
            _ => out += &number,
        }
        number.clear();
        out.push(c);
    }
    out
}

proptest! {
    #![proptest_config(Config { cases: 150, ..Config::default() })]

    #[test]
    fn a_build_with_numbers_of_any_size_is_answered(
        build in prop::sample::select(&[GOOD, ISOLATORS][..]),
        powers in prop::collection::vec(prop_oneof![40 => Just(0), 1 => -5..6], 60..120)
    ) {
        survive(scaled(build, &powers).as_bytes());
    }
}

/// Each key of the good builds with each strange value, one at a time: what is read evaluates.
#[test]
fn every_key_with_every_strange_value_is_answered() {
    for build in [GOOD, ISOLATORS] {
        let mut read = 0;
        for line in 0..build.lines().filter(|line| line.contains(" = ")).count() {
            for with in 0..STRANGE.len() {
                let spoiled = changed(build, &[Change::Replace(line, with)]);
                read += usize::from(survive(spoiled.as_bytes()));
            }
        }
        // Some are honest values of the key, such as 1 N/m for a bracket.
        assert!(read > 50, "{read}");
    }
}

/// Blocks from a sheet to a thread, as soft and as hard as a file may say: all are read and evaluated.
#[test]
fn blocks_of_any_size_are_answered() {
    let shapes = [
        "block = \"0.1, 100000, 0.1 mm\"",
        "block = \"100, 100, 0.0001 m\"",
        "block = \"0.1, 0.1, 100000 mm\"",
        "cylinder = { diameter = \"100 m\", height = \"0.1 mm\" }",
        "cylinder = { diameter = \"0.1 mm\", height = \"100 m\" }",
        "hollow = { outer = \"100 m\", inner = \"99999.999999999 mm\", height = \"100 m\" }",
        "hollow = { outer = \"100 m\", inner = \"0.1 mm\", height = \"0.1 mm\" }",
        "strip = { length = \"100 m\", width = \"0.1 mm\", height = \"0.1 mm\" }",
    ];
    let materials = [
        "hardness = \"30 IRHD\"",
        "hardness = \"90 Shore A\"\nrelation = \"indentation\"",
        "modulus = { youngs = \"10 GPa\", shear = \"0.01 MPa\", shape = 2, bulk = \"100 GPa\" }",
        "modulus = { youngs = \"0.01 MPa\", shear = \"10 GPa\", shape = 0.2, bulk = \"10 MPa\" }",
    ];
    let pieces = ["", "layers = 100", "count = 100\ninclined = \"80 deg\""];
    let solid = GOOD
        .lines()
        .find(|line| line.starts_with("puck = "))
        .unwrap();
    for shape in shapes {
        for material in materials {
            for pieces in pieces {
                let text = GOOD
                    .replace(solid, &format!("{shape}\n{material}\n{pieces}"))
                    .replace("kind = \"solid\"", "kind = \"block\"");
                assert!(survive(text.as_bytes()), "{shape} {material} {pieces}");
            }
        }
    }
}
