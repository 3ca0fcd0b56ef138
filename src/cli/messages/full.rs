//! Problems with the line they are on, the wrong part marked, and what to write instead.

use annotate_snippets::{AnnotationKind, Group, Level, Origin, Renderer, Snippet, Title};
use bedplate::diagnostic::Severity;

use super::excerpt::Excerpt;
use super::{MOST_FOR_PEOPLE, Message, Problems, counted, one_line};

pub(super) fn render(problems: &Problems, colour: bool) -> String {
    let renderer = if colour {
        Renderer::styled()
    } else {
        Renderer::plain()
    };
    let mut text = String::new();
    let (shown, _) = problems.first(MOST_FOR_PEOPLE);
    for message in shown {
        text.push_str(&match &problems.file {
            Some(file) => block(problems, &one_line(file), message, &renderer) + "\n\n",
            None => lines(message, &renderer),
        });
    }
    text.push_str(&closing(problems));
    text
}

/// A problem of a file: where, the marked line, what to write instead.
fn block(problems: &Problems, file: &str, message: &Message, renderer: &Renderer) -> String {
    let mut group = Group::with_title(title(message));
    let excerpt = message
        .span
        .as_ref()
        .and_then(|span| Excerpt::around(&problems.source, span));
    if let Some(excerpt) = excerpt {
        let mut mark = AnnotationKind::Primary.span(excerpt.marked);
        if !message.label.is_empty() {
            mark = mark.label(one_line(&message.label));
        }
        group = group.element(
            Snippet::source(excerpt.text)
                .line_start(excerpt.line)
                .path(file)
                .annotation(mark),
        );
    } else {
        group = group.element(Origin::path(file));
    }
    for help in &message.help {
        group = group.element(Level::HELP.message(one_line(help)));
    }
    renderer.render(&[group])
}

/// Any other problem: a line, and one for each hint.
fn lines(message: &Message, renderer: &Renderer) -> String {
    let mut text = renderer.render(&[Group::with_title(title(message))]) + "\n";
    for help in &message.help {
        let hint = Group::with_title(Level::HELP.primary_title(one_line(help)));
        text.push_str(&renderer.render(&[hint]));
        text.push('\n');
    }
    text
}

fn title(message: &Message) -> Title<'_> {
    let level = match message.severity {
        Severity::Error => Level::ERROR,
        Severity::Warning => Level::WARNING,
    };
    let title = level.primary_title(one_line(&message.text));
    match message.id {
        Some(id) => title.id(id),
        None => title,
    }
}

/// How many there are, and where more is said.
fn closing(problems: &Problems) -> String {
    let (Some(file), Some(first)) = (&problems.file, problems.list.first()) else {
        return String::new();
    };
    let errors = problems.count(Severity::Error);
    let warnings = problems.count(Severity::Warning);
    let counts = match (errors, warnings) {
        (errors, 0) => counted(errors, "error"),
        (0, warnings) => counted(warnings, "warning"),
        (errors, warnings) => {
            format!(
                "{} and {}",
                counted(errors, "error"),
                counted(warnings, "warning")
            )
        }
    };
    let shown = match problems.first(MOST_FOR_PEOPLE) {
        (_, 0) => String::new(),
        (shown, _) => format!(", the first {} shown", shown.len()),
    };
    // What keeps the file from being used is looked up before what is only worth knowing.
    let errors_first = problems
        .list
        .iter()
        .find(|message| message.severity == Severity::Error)
        .unwrap_or(first);
    let more = errors_first.id.map_or_else(String::new, |id| {
        format!("; `bedplate explain {id}` tells more")
    });
    format!("{counts} in {}{shown}{more}\n", one_line(file))
}
