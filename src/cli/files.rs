//! Files in and out: reads are bounded, writes appear whole or not at all.

pub(crate) mod input;
pub(crate) mod target;

use std::io;
use std::path::Path;

/// Stands for standard input or standard output.
pub(crate) const STREAM: &str = "-";

pub(crate) fn is_stream(path: &Path) -> bool {
    path.as_os_str() == STREAM
}

fn directory_of(path: &Path) -> &Path {
    match path.parent() {
        Some(parent) if !parent.as_os_str().is_empty() => parent,
        _ => Path::new("."),
    }
}

/// A path as the user knows it, in backticks.
fn quoted(path: &Path) -> String {
    format!("`{}`", path.display())
}

/// Why the system refuses, without its error number.
fn reason(error: &io::Error) -> String {
    let text = error.to_string();
    let words = text.split(" (os error").next().unwrap_or_default();
    words.to_lowercase()
}
