//! The part of a file that is shown with a problem: one line, cut behind what is marked.

use std::ops::Range;

use bedplate::diagnostic::place;

/// Most characters that are marked or follow the marked part. What comes before it the renderer cuts,
/// since it counts the column from there.
const MOST_BEHIND: usize = 100;

/// One line, or the beginning of it, and which bytes of it are marked.
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
        let line = source.get(line_start..)?.lines().next().unwrap_or_default();

        // A place behind the end of the line, as its line end has, is the end of it.
        let from = (start - line_start).min(line.len());
        let behind = line.get(from..)?;
        let cut = from + byte_of(behind, MOST_BEHIND);
        Some(Self {
            text: line.get(..cut)?,
            marked: from..(end - line_start).min(cut),
            line: place(source, start).line,
        })
    }
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
