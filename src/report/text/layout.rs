//! Lines of a given width.
//!
//! Names come from a file: what would move the cursor of a terminal is replaced by a space here.

/// Breaks text into lines of at most `width` characters, at spaces, and inside a word that is longer than a line.
pub(super) fn wrap(text: &str, width: usize) -> Vec<String> {
    let width = width.max(1);
    let mut lines = Vec::new();
    let mut line = String::new();
    let mut used = 0;
    for word in visible(text).split_whitespace() {
        let mut rest: Vec<char> = word.chars().collect();
        if used > 0 && used + 1 + rest.len() > width {
            lines.push(std::mem::take(&mut line));
            used = 0;
        }
        while rest.len() > width {
            let tail = rest.split_off(width);
            lines.push(rest.into_iter().collect());
            rest = tail;
        }
        if used > 0 {
            line.push(' ');
            used += 1;
        }
        used += rest.len();
        line.extend(rest);
    }
    if !line.is_empty() || lines.is_empty() {
        lines.push(line);
    }
    lines
}

/// Wraps text after `head`; further lines start with `indent` spaces.
pub(super) fn indented(head: &str, indent: usize, text: &str, width: usize) -> Vec<String> {
    let room = width.saturating_sub(head.chars().count().max(indent));
    wrap(text, room)
        .into_iter()
        .enumerate()
        .map(|(place, line)| {
            if place == 0 {
                format!("{head}{line}")
            } else {
                format!("{}{line}", " ".repeat(indent))
            }
        })
        .collect()
}

/// Text without control characters and without the marks that turn the direction of writing.
pub(super) fn visible(text: &str) -> String {
    text.chars()
        .map(|c| {
            let turns = matches!(c, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}');
            if c.is_control() || turns { ' ' } else { c }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_break_at_spaces_and_inside_words_that_are_too_long() {
        assert_eq!(wrap("one two three", 7), ["one two", "three"]);
        assert_eq!(wrap("a abcdefgh b", 3), ["a", "abc", "def", "gh", "b"]);
        assert_eq!(wrap("", 5), [""]);
    }

    #[test]
    fn a_name_cannot_move_the_cursor() {
        assert_eq!(wrap("a\u{1b}[2Jb\r\nc\u{202e}d", 80), ["a [2Jb c d"]);
    }
}
