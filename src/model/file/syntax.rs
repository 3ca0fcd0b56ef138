//! Text that is not TOML: each place once, in words that help.

use std::collections::HashSet;

use crate::diagnostic::{Code, Diagnostic};
use crate::model::reader::{MOST_PROBLEMS, Sink, quoted};

/// Sections of which a file may hold several.
const LISTS: [&str; 5] = ["part", "mount", "load", "point", "clearance"];

/// What the text has against TOML. A section that stands there twice is said once, not again for each of its keys.
pub(super) fn problems(text: &str, errors: &[toml::de::Error]) -> Vec<Diagnostic> {
    let sink = Sink::new(text);
    let mut headers_told = HashSet::new();
    for error in errors.iter().take(MOST_PROBLEMS) {
        if let Some(span) = error.span().filter(|_| is_duplicate(error)) {
            let before = text.get(..span.start).unwrap_or_default();
            let header = before.rfind("\n[");
            let in_header = header.is_some_and(|at| !before[at + 1..].contains('\n'));
            if in_header {
                headers_told.insert(header);
            } else if headers_told.contains(&header) {
                continue;
            }
        }
        sink.push(problem(text, error));
    }
    for _ in errors.iter().skip(MOST_PROBLEMS) {
        sink.count_error();
    }
    sink.into_parts().0
}

fn is_duplicate(error: &toml::de::Error) -> bool {
    error.message().starts_with("duplicate key")
}

fn problem(text: &str, error: &toml::de::Error) -> Diagnostic {
    let mut message = error
        .message()
        .lines()
        .next()
        .unwrap_or_default()
        .to_owned();
    let written = error
        .span()
        .and_then(|span| text.get(span))
        .unwrap_or_default();
    let is_word = written.starts_with(char::is_alphabetic)
        && written
            .chars()
            .all(|c| c.is_alphanumeric() || "-_".contains(c));
    let help = if is_word && message.starts_with("invalid") {
        message = format!("a word without quotes: {}", quoted(written));
        format!("put it in quotes: `\"{written}\"`")
    } else if message.contains("must be quoted") {
        "put text and values with a unit in quotes: `mass = \"180 kg\"`".to_owned()
    } else if is_duplicate(error) {
        message = format!("{} stands twice", quoted(written));
        if LISTS.contains(&written) {
            format!("each of several is headed with two brackets: `[[{written}]]`")
        } else {
            "take one of them out, or give it another name".to_owned()
        }
    } else if message.contains("recurs") {
        "a model file needs no more than a few levels of brackets".to_owned()
    } else {
        "the file is TOML: `key = \"text\"`, sections headed `[name]` or `[[name]]`".to_owned()
    };
    Diagnostic::error(Code::Syntax, message, error.span())
        .label("not understood")
        .help(help)
}
