//! One line a problem: `path:line:column: M014 message`.

use super::{Message, Problems, one_line};

pub(super) fn render(problems: &Problems) -> String {
    let mut text = String::new();
    for message in problems.shown() {
        text.push_str(&line(problems, message));
        text.push('\n');
    }
    if problems.not_shown() > 0 {
        text.push_str(&format!("and {} more\n", problems.not_shown()));
    }
    text
}

fn line(problems: &Problems, message: &Message) -> String {
    let file = problems.file.as_deref().map(one_line);
    let place = match (file, problems.place(message)) {
        (Some(file), Some(at)) => format!("{file}:{}:{}: ", at.line, at.column),
        (Some(file), None) => format!("{file}: "),
        (None, _) => String::new(),
    };
    // Without a code the word says what the line is.
    let kind = message.id.unwrap_or(message.severity_word());
    let colon = if message.id.is_some() { "" } else { ":" };
    format!("{place}{kind}{colon} {}", one_line(&message.text))
}
