//! Why a command stopped before its end.

use std::io;

use bedplate::diagnostic::did_you_mean;

use super::console::Console;
use super::exit::Exit;
use super::messages::{Message, Problems};

/// Why a command stopped.
pub(crate) enum Failure {
    /// One problem outside a model file: an argument, a file that cannot be opened.
    Plain(Message),
    /// Problems of a model file, or of the build that it describes.
    Model(Problems),
    /// They were the answer of the command and are written already.
    Told,
    /// Whoever read the output has seen enough.
    ClosedPipe,
}

impl Failure {
    /// A problem outside a model file.
    pub(crate) fn plain(text: impl Into<String>) -> Self {
        Self::Plain(Message::error(text))
    }

    /// With what to do about it.
    pub(crate) fn help(self, help: impl Into<String>) -> Self {
        match self {
            Self::Plain(message) => Self::Plain(message.help(help)),
            other => other,
        }
    }

    /// A name that stands nowhere in a model file among those of its kind; `section` is where one would stand.
    pub(crate) fn no_such(
        kind: &str,
        section: &str,
        file: &str,
        name: &str,
        known: &[&str],
    ) -> Self {
        let failure = Self::plain(format!("there is no {kind} `{name}` in {file}"));
        let failure = match did_you_mean(name, known.iter().copied()) {
            Some(near) => failure.help(format!("did you mean `{near}`?")),
            None => failure,
        };
        let list: Vec<String> = known.iter().map(|name| format!("`{name}`")).collect();
        failure.help(if list.is_empty() {
            format!("the file has no {kind}; a `{section}` adds one")
        } else {
            format!("the file has {}", list.join(", "))
        })
    }

    /// A failed write to standard output.
    pub(crate) fn of_stdout(error: &io::Error) -> Self {
        if error.kind() == io::ErrorKind::BrokenPipe {
            Self::ClosedPipe
        } else {
            Self::plain(format!("standard output takes no more: {error}"))
        }
    }

    /// Says it on standard error, and how the run ended.
    pub(crate) fn tell(self, console: &Console) -> Exit {
        match self {
            Self::ClosedPipe => return Exit::Success,
            Self::Told => {}
            Self::Plain(message) => console.complain(&Problems::plain(message)),
            Self::Model(problems) => console.complain(&problems),
        }
        Exit::CouldNotRun
    }
}
