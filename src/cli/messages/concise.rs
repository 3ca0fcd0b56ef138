//! One line a problem: `path:line:column: M014 message`.

use bedplate::diagnostic::Place;

use super::{MOST_FOR_PROGRAMS, Message, Problems, one_line};

pub(super) fn render(problems: &Problems) -> String {
    let mut text = String::new();
    let (shown, left) = problems.first(MOST_FOR_PROGRAMS);
    for message in shown {
        text.push_str(&line(problems, message));
        text.push('\n');
    }
    if left > 0 {
        text.push_str(&format!("and {left} more\n"));
    }
    text
}

fn line(problems: &Problems, message: &Message) -> String {
    let place = problems.file.as_deref().map_or_else(String::new, |file| {
        // Editors want a line to jump to, so a problem of the whole file is at its beginning.
        let at = problems
            .place(message)
            .unwrap_or(Place { line: 1, column: 1 });
        format!("{}:{}:{}: ", one_line(file), at.line, at.column)
    });
    // Without a code the word says what the line is.
    let kind = message.id.unwrap_or(message.severity_word());
    let colon = if message.id.is_some() { "" } else { ":" };
    format!("{place}{kind}{colon} {}", one_line(&message.text))
}
