//! Broken model files: the whole list of problems, where each is marked, and what is said.
//!
//! A fixture in `diagnostics/` holds its complete list as comments
//! `# expect: M012 at 7:9` (code, line, column).

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
            wrong += &format!("{name}\n  expected {expected:?}\n  found    {found:?}\n  {told:#?}\n");
        }
    }
    assert!(wrong.is_empty(), "{wrong}");
}
