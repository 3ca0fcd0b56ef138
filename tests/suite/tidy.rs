//! The shape of the code: imports point one way, files stay readable.

use std::fs;
use std::path::{Path, PathBuf};

/// Modules of the library with their ranks; a module may use those of smaller rank and, within a rank below 3, its equals.
const RANKS: [(&str, u8); 12] = [
    ("units", 1),
    ("spatial", 1),
    ("numeric", 1),
    ("diagnostic", 1),
    ("model", 2),
    ("rigid", 3),
    ("drive", 3),
    ("strength", 3),
    ("road", 3),
    ("history", 3),
    ("study", 4),
    ("report", 5),
];

/// Lines from which on a file is to be looked at, with some slack for tables and tests.
const LONG_FILE: usize = 450;

fn rust_files(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            found.extend(rust_files(&path));
        } else if path.extension().is_some_and(|extension| extension == "rs") {
            found.push(path);
        }
    }
    found.sort();
    found
}

fn source() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("src")
}

fn rank(module: &str) -> Option<u8> {
    RANKS
        .iter()
        .find(|(name, _)| *name == module)
        .map(|(_, rank)| *rank)
}

/// First part of a path below `src/`: the module a file belongs to.
fn module_of(path: &Path) -> String {
    let inside = path.strip_prefix(source()).unwrap();
    let first = inside
        .components()
        .next()
        .unwrap()
        .as_os_str()
        .to_string_lossy();
    first.trim_end_matches(".rs").to_owned()
}

#[test]
fn imports_point_to_a_smaller_rank() {
    for path in rust_files(&source()) {
        let module = module_of(&path);
        let Some(own) = rank(&module) else {
            continue;
        };
        let text = fs::read_to_string(&path).unwrap();
        for used in text.split("crate::").skip(1) {
            let used: String = used
                .chars()
                .take_while(|c| c.is_alphanumeric() || *c == '_')
                .collect();
            let Some(other) = rank(&used) else {
                continue;
            };
            let allowed = used == module || other < own || (other == own && own < 3);
            assert!(
                allowed,
                "{}: `{module}` (rank {own}) uses `{used}` (rank {other})",
                path.display()
            );
        }
    }
}

#[test]
fn every_module_of_the_library_has_a_rank() {
    let library = fs::read_to_string(source().join("lib.rs")).unwrap();
    let declared = library
        .lines()
        .filter_map(|line| line.strip_prefix("pub mod ")?.strip_suffix(';'));
    for module in declared {
        assert!(rank(module).is_some(), "`{module}` has no rank");
    }
}

#[test]
fn files_stay_readable_and_say_what_they_are() {
    for path in rust_files(&source()) {
        let text = fs::read_to_string(&path).unwrap();
        assert!(
            text.starts_with("//!"),
            "{} has no first doc line",
            path.display()
        );
        let lines = text.lines().count();
        assert!(lines <= LONG_FILE, "{} has {lines} lines", path.display());
    }
}

/// A formula in a public doc without its source is a rumour.
#[test]
fn every_equation_has_a_source() {
    for path in rust_files(&source()) {
        let text = fs::read_to_string(&path).unwrap();
        let mut doc = String::new();
        for (number, line) in text.lines().enumerate() {
            let line = line.trim_start();
            if let Some(words) = line.strip_prefix("///") {
                doc.push_str(words);
                doc.push('\n');
                continue;
            }
            let lacks_source = doc.contains("# Equation") && !doc.contains("# Source");
            assert!(
                !lacks_source,
                "{}:{}: an equation without a source",
                path.display(),
                number + 1
            );
            doc.clear();
        }
    }
}
