//! Problems as text: with the place in the file, one a line, or as JSON.

mod concise;
mod excerpt;
mod full;
mod json;

use std::ops::Range;

use bedplate::diagnostic::{Code, Diagnostic, Place, Severity, place};

use super::arguments::MessageFormat;

/// Most problems that are written for people; a file with more has one cause, and the first ones show it.
const MOST_FOR_PEOPLE: usize = 20;

/// Most problems that are written for programs.
const MOST_FOR_PROGRAMS: usize = 200;

/// Longest text of a message that is shown [characters]: names in it come from the file.
const LONGEST_TEXT: usize = 400;

/// How problems are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Style {
    pub(crate) format: MessageFormat,
    pub(crate) colour: bool,
}

/// One problem.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Message {
    /// Code that `explain` knows; `None` for what is outside a model file.
    id: Option<&'static str>,
    severity: Severity,
    text: String,
    span: Option<Range<usize>>,
    label: String,
    help: Vec<String>,
}

impl Message {
    /// An error outside a model file.
    pub(crate) fn error(text: impl Into<String>) -> Self {
        Self {
            id: None,
            severity: Severity::Error,
            text: text.into(),
            span: None,
            label: String::new(),
            help: Vec::new(),
        }
    }

    /// With one more hint.
    pub(crate) fn help(mut self, help: impl Into<String>) -> Self {
        self.help.push(help.into());
        self
    }

    fn severity_word(&self) -> &'static str {
        match self.severity {
            Severity::Error => "error",
            Severity::Warning => "warning",
        }
    }
}

impl From<Diagnostic> for Message {
    fn from(diagnostic: Diagnostic) -> Self {
        Self {
            id: Some(diagnostic.code.id()),
            severity: diagnostic.severity,
            text: diagnostic.message,
            // Nothing at the very beginning stands for the file as a whole.
            span: diagnostic.span.filter(|span| *span != (0..0)),
            label: diagnostic.label,
            help: diagnostic.help,
        }
    }
}

/// Problems of one file, or of none.
#[derive(Debug, Clone)]
pub(crate) struct Problems {
    /// The file as the user named it.
    file: Option<String>,
    source: String,
    list: Vec<Message>,
}

impl Problems {
    /// One problem outside a model file.
    pub(crate) fn plain(message: Message) -> Self {
        Self {
            file: None,
            source: String::new(),
            list: vec![message],
        }
    }

    /// Problems of a model file. Bytes that are not text are only ever shown as such.
    pub(crate) fn of_file(
        file: &str,
        bytes: &[u8],
        list: impl IntoIterator<Item = Diagnostic>,
    ) -> Self {
        Self {
            file: Some(file.to_owned()),
            source: String::from_utf8_lossy(bytes).into_owned(),
            list: list.into_iter().map(Message::from).collect(),
        }
    }

    pub(crate) fn is_empty(&self) -> bool {
        self.list.is_empty()
    }

    /// One more, about the build as a whole.
    pub(crate) fn push(&mut self, diagnostic: Diagnostic) {
        self.list.push(diagnostic.into());
    }

    /// Without the warnings.
    pub(crate) fn errors_only(mut self) -> Self {
        self.list.retain(|m| m.severity == Severity::Error);
        self
    }

    /// Without those of a code whose text is `unwanted`.
    pub(crate) fn without(mut self, code: Code, unwanted: impl Fn(&str) -> bool) -> Self {
        self.list
            .retain(|m| m.id != Some(code.id()) || !unwanted(&m.text));
        self
    }

    /// The problems as text that ends with a line end; empty text for no problems, but in JSON an object.
    pub(crate) fn render(&self, style: Style) -> String {
        match style.format {
            MessageFormat::Full => full::render(self, style.colour),
            MessageFormat::Concise => concise::render(self),
            MessageFormat::Json => json::render(self),
        }
    }

    fn count(&self, severity: Severity) -> usize {
        self.list.iter().filter(|m| m.severity == severity).count()
    }

    /// The first `most` problems, and how many more there are.
    fn first(&self, most: usize) -> (&[Message], usize) {
        let (shown, left) = self.list.split_at(most.min(self.list.len()));
        (shown, left.len())
    }

    fn place(&self, message: &Message) -> Option<Place> {
        let span = message.span.as_ref()?;
        Some(place(&self.source, span.start))
    }
}

/// Text of the user on one line of a terminal: no control characters, no change of direction, not endless.
fn one_line(text: &str) -> String {
    let mut line: String = text
        .chars()
        .take(LONGEST_TEXT)
        .map(|character| {
            if is_unprintable(character) {
                '\u{FFFD}'
            } else {
                character
            }
        })
        .collect();
    if text.chars().nth(LONGEST_TEXT).is_some() {
        line.push('…');
    }
    line
}

/// Control characters, and those that make text read in another order than it is stored.
fn is_unprintable(character: char) -> bool {
    character.is_control()
        || matches!(character, '\u{200E}' | '\u{200F}' | '\u{2028}'..='\u{202E}' | '\u{2066}'..='\u{2069}')
}

/// `1 error`, `2 errors`.
pub(crate) fn counted(number: usize, noun: &str) -> String {
    let ending = if number == 1 { "" } else { "s" };
    format!("{number} {noun}{ending}")
}

#[cfg(test)]
mod tests;
