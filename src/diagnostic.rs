//! A problem of a model file as data: code, severity, place, words and cure.
//!
//! Rendering is elsewhere; nothing here prints.

pub mod code;

use std::ops::Range;

pub use code::Code;

/// How serious a problem is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// The file is read; the reader should know.
    Warning,
    /// The file cannot be used as it is.
    Error,
}

/// One problem of a model file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Diagnostic {
    /// Which kind of problem; `bedplate explain` tells more.
    pub code: Code,
    /// How serious it is.
    pub severity: Severity,
    /// One line, lower case, no full stop.
    pub message: String,
    /// Bytes of the file that are wrong; `None` when the problem is the file as a whole.
    pub span: Option<Range<usize>>,
    /// A few words beside the marked text; may be empty.
    pub label: String,
    /// What to write instead, one hint a line.
    pub help: Vec<String>,
}

impl Diagnostic {
    /// An error at a place.
    #[must_use]
    pub fn error(code: Code, message: impl Into<String>, span: Option<Range<usize>>) -> Self {
        Self {
            code,
            severity: Severity::Error,
            message: message.into(),
            span,
            label: String::new(),
            help: Vec::new(),
        }
    }

    /// A warning at a place.
    #[must_use]
    pub fn warning(code: Code, message: impl Into<String>, span: Option<Range<usize>>) -> Self {
        Self {
            severity: Severity::Warning,
            ..Self::error(code, message, span)
        }
    }

    /// With a few words beside the marked text.
    #[must_use]
    pub fn label(mut self, label: impl Into<String>) -> Self {
        self.label = label.into();
        self
    }

    /// With one more hint.
    #[must_use]
    pub fn help(mut self, help: impl Into<String>) -> Self {
        self.help.push(help.into());
        self
    }
}

/// Line and column, both counted from 1; the column counts characters.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Place {
    /// Line, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
}

/// Line and column of a byte of a text; past its end, the end.
#[must_use]
pub fn place(text: &str, byte: usize) -> Place {
    let mut end = byte.min(text.len());
    while !text.is_char_boundary(end) {
        end -= 1;
    }
    let before = text.get(..end).unwrap_or_default();
    let line_start = before.rfind('\n').map_or(0, |newline| newline + 1);
    Place {
        line: before.matches('\n').count() + 1,
        column: before.get(line_start..).unwrap_or_default().chars().count() + 1,
    }
}

/// Longest name for which a nearest one is looked for: the search takes time with the square of the length.
const LONGEST_GUESS: usize = 100;

/// The known name nearest to what was written, when it is near enough to be meant.
///
/// Near enough is one slip, and one more for every four letters, as long as some letter is left in common.
/// Another number is never a slip: it is another gear, mount or number of strokes.
#[must_use]
pub fn did_you_mean<'a>(
    written: &str,
    known: impl IntoIterator<Item = &'a str>,
) -> Option<&'a str> {
    let lower = written.to_lowercase();
    let length = lower.chars().count();
    if length > LONGEST_GUESS {
        return None;
    }
    known
        .into_iter()
        .filter_map(|name| {
            if !same_numbers(&lower, name) {
                return None;
            }
            let other = name.chars().count();
            let slips = 1 + other / 4;
            if length.abs_diff(other) > slips {
                return None;
            }
            let distance = strsim::damerau_levenshtein(&lower, &name.to_lowercase());
            (distance <= slips && distance < length.max(other)).then_some((distance, name))
        })
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, name)| name)
}

/// Whether two names hold the same numbers, and both or neither of them begin with one.
fn same_numbers(one: &str, other: &str) -> bool {
    fn numbers(name: &str) -> impl Iterator<Item = &str> {
        name.split(|c: char| !c.is_ascii_digit())
            .filter(|run| !run.is_empty())
            // A zero in front is no other number.
            .map(|run| run.trim_start_matches('0'))
    }
    let leads = |name: &str| name.starts_with(|c: char| c.is_ascii_digit());
    leads(one) == leads(other) && numbers(one).eq(numbers(other))
}
