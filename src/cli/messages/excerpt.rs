//! The part of a file that is shown with a problem: one line, cut to what fits.

use std::ops::Range;

use bedplate::diagnostic::place;

/// Characters that are shown before the marked part, at least.
const BEFORE: usize = 40;

/// Most characters of a line that are shown.
const WIDEST: usize = 120;

/// One line, or a part of it, and which bytes of it are marked.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct Excerpt {
    pub(super) text: String,
    pub(super) marked: Range<usize>,
    /// Of the whole line, from 1.
    pub(super) line: usize,
    /// Of the first marked character in the whole line, from 1.
    pub(super) column: usize,
}

impl Excerpt {
    /// The line on which a span begins; `None` for an empty text. Marks what of the span is on that line.
    pub(super) fn around(source: &str, span: &Range<usize>) -> Option<Self> {
        if source.is_empty() {
            return None;
        }
        let start = boundary(source, span.start);
        let end = boundary(source, span.end).max(start);
        let line_start = source.get(..start)?.rfind('\n').map_or(0, |at| at + 1);
        let rest = source.get(line_start..)?;
        let line = rest.lines().next().unwrap_or_default();
        let at = place(source, start);

        // A place behind the end of the line, as its line end has, is the end of it.
        let from = (start - line_start).min(line.len());
        let to = (end - line_start).min(line.len());
        let first = line.get(..from)?.chars().count().saturating_sub(BEFORE);
        let shown_from = byte_of(line, if is_short(line) { 0 } else { first });
        let shown = line.get(shown_from..)?;
        let shown = shown.get(..byte_of(shown, WIDEST))?;

        let lead = if shown_from > 0 { "…" } else { "" };
        let tail = if shown_from + shown.len() < line.len() { "…" } else { "" };
        let of_text = |byte: usize| (byte.min(shown_from + shown.len()) - shown_from) + lead.len();
        Some(Self {
            marked: of_text(from)..of_text(to),
            text: format!("{lead}{shown}{tail}"),
            line: at.line,
            column: at.column,
        })
    }
}

fn is_short(line: &str) -> bool {
    line.chars().nth(WIDEST).is_none()
}

/// Byte at which a character begins; the end for one behind it.
fn byte_of(text: &str, character: usize) -> usize {
    text.char_indices()
        .nth(character)
        .map_or(text.len(), |(byte, _)| byte)
}

/// The nearest start of a character at or before a byte.
fn boundary(text: &str, byte: usize) -> usize {
    let mut at = byte.min(text.len());
    while !text.is_char_boundary(at) {
        at -= 1;
    }
    at
}
