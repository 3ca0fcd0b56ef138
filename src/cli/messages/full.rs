//! Problems with the line they are on, the wrong part marked, and what to write instead.

use annotate_snippets::{AnnotationKind, Group, Level, Origin, Renderer, Snippet};
use bedplate::diagnostic::Severity;

use super::excerpt::Excerpt;
use super::{Message, Problems, counted, one_line};

pub(super) fn render(problems: &Problems, colour: bool) -> String {
    let renderer = if colour {
        Renderer::styled()
    } else {
        Renderer::plain()
    };
    let mut text = String::new();
    for message in problems.shown() {
        text.push_str(&one(problems, message, &renderer));
        // A problem of a file is a block with air below it, any other a line or two.
        text.push_str(if problems.file.is_some() {
            "\n\n"
        } else {
            "\n"
        });
    }
    text.push_str(&closing(problems));
    text
}

fn one(problems: &Problems, message: &Message, renderer: &Renderer) -> String {
    let level = match message.severity {
        Severity::Error => Level::ERROR,
        Severity::Warning => Level::WARNING,
    };
    let mut title = level.primary_title(one_line(&message.text));
    if let Some(id) = message.id {
        title = title.id(id);
    }
    let mut group = Group::with_title(title);
    let excerpt = message
        .span
        .as_ref()
        .and_then(|span| Excerpt::around(&problems.source, span));
    let file = problems.file.as_deref().map(one_line);
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
    } else if let Some(file) = file {
        group = group.element(Origin::path(file));
    }
    for help in &message.help {
        group = group.element(Level::HELP.message(one_line(help)));
    }
    renderer.render(&[group])
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
    let shown = match problems.not_shown() {
        0 => String::new(),
        _ => format!(", the first {} shown", problems.shown().len()),
    };
    let more = first.id.map_or_else(String::new, |id| {
        format!("; `bedplate explain {id}` tells more")
    });
    format!("{counts} in {}{shown}{more}\n", one_line(file))
}
