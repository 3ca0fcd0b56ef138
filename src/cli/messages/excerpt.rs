//! The line of a file that is shown with a problem. What of it fits is for the renderer to choose.

use std::ops::Range;

use bedplate::diagnostic::place;

/// One line, and which bytes of it are marked.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct Excerpt<'a> {
    pub(super) text: &'a str,
    pub(super) marked: Range<usize>,
    /// From 1.
    pub(super) line: usize,
}

impl<'a> Excerpt<'a> {
    /// The line on which a span begins; `None` for an empty text. Marks what of the span is on that line.
    pub(super) fn around(source: &'a str, span: &Range<usize>) -> Option<Self> {
        if source.is_empty() {
            return None;
        }
        let start = boundary(source, span.start);
        let end = boundary(source, span.end).max(start);
        let line_start = source.get(..start)?.rfind('\n').map_or(0, |at| at + 1);
        let text = source.get(line_start..)?.lines().next().unwrap_or_default();
        // A place behind the end of the line, as its line end has, is the end of it.
        let of_line = |byte: usize| (byte - line_start).min(text.len());
        Some(Self {
            text,
            marked: of_line(start)..of_line(end),
            line: place(source, start).line,
        })
    }
}

/// The nearest start of a character at or before a byte.
fn boundary(text: &str, byte: usize) -> usize {
    let mut at = byte.min(text.len());
    while !text.is_char_boundary(at) {
        at -= 1;
    }
    at
}
