//! Problems for programs: one JSON object.
//!
//! Lines and columns count from 1, columns in characters; `span` counts bytes
//! from 0, its end not included. `null` is a problem of the file as a whole.

use bedplate::diagnostic::Severity;
use serde::Serialize;

use super::{MOST_FOR_PROGRAMS, Message, Problems};

/// Version of the layout.
const FORMAT: u32 = 1;

#[derive(Serialize)]
struct Document<'a> {
    format: u32,
    tool: &'static str,
    file: Option<&'a str>,
    errors: usize,
    warnings: usize,
    not_shown: usize,
    problems: Vec<Entry<'a>>,
}

#[derive(Serialize)]
struct Entry<'a> {
    code: Option<&'static str>,
    severity: &'static str,
    message: &'a str,
    line: Option<usize>,
    column: Option<usize>,
    span: Option<[usize; 2]>,
    label: &'a str,
    help: &'a [String],
}

pub(super) fn render(problems: &Problems) -> String {
    let (shown, not_shown) = problems.first(MOST_FOR_PROGRAMS);
    let document = Document {
        format: FORMAT,
        tool: concat!("bedplate ", env!("CARGO_PKG_VERSION")),
        file: problems.file.as_deref(),
        errors: problems.count(Severity::Error),
        warnings: problems.count(Severity::Warning),
        not_shown,
        problems: shown.iter().map(|m| entry(problems, m)).collect(),
    };
    // Numbers and text alone: there is nothing in it that JSON cannot hold.
    let mut text = serde_json::to_string_pretty(&document).unwrap_or_default();
    text.push('\n');
    text
}

fn entry<'a>(problems: &Problems, message: &'a Message) -> Entry<'a> {
    let place = problems.place(message);
    Entry {
        code: message.id,
        severity: message.severity_word(),
        message: &message.text,
        line: place.map(|at| at.line),
        column: place.map(|at| at.column),
        span: message.span.as_ref().map(|span| [span.start, span.end]),
        label: &message.label,
        help: &message.help,
    }
}
