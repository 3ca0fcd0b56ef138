//! The two streams of a run, and whether they get colour.
//!
//! Standard output carries what was asked for, standard error everything else.

use std::ffi::OsStr;
use std::io::{self, IsTerminal, Write};

use clap::error::ErrorKind;

use super::arguments::{Colour, MessageFormat, MessageOptions};
use super::exit::Exit;
use super::failure::Failure;
use super::messages::{Problems, Style};

/// The streams of a run.
pub(crate) struct Console {
    quiet: bool,
    format: MessageFormat,
    colour: Colour,
}

impl Console {
    pub(crate) fn new(options: &MessageOptions) -> Self {
        Self {
            quiet: options.quiet,
            format: options.message_format,
            colour: options.color,
        }
    }

    /// How problems are to be written.
    pub(crate) fn message_format(&self) -> MessageFormat {
        self.format
    }

    /// Writes what was asked for.
    pub(crate) fn print(&self, text: &str) -> Result<(), Failure> {
        self.print_bytes(text.as_bytes())
    }

    /// Writes what was asked for.
    pub(crate) fn print_bytes(&self, bytes: &[u8]) -> Result<(), Failure> {
        write_whole(&mut io::stdout().lock(), bytes).map_err(|error| Failure::of_stdout(&error))
    }

    /// Writes problems as what was asked for.
    pub(crate) fn print_problems(&self, problems: &Problems) -> Result<(), Failure> {
        let style = Style {
            format: self.format,
            colour: self.has_colour_out(),
        };
        self.print(&problems.render(style))
    }

    /// Writes a line that is good to know. Programs that read the problems as JSON do not get it.
    pub(crate) fn note(&self, line: &str) {
        if !self.quiet && self.format != MessageFormat::Json {
            to_stderr(&format!("{line}\n"));
        }
    }

    /// Writes problems beside what was asked for.
    pub(crate) fn complain(&self, problems: &Problems) {
        to_stderr(&problems.render(Style {
            format: self.format,
            colour: has_colour(self.colour, io::stderr().is_terminal()),
        }));
    }

    /// Writes warnings beside what was asked for.
    pub(crate) fn warn(&self, problems: &Problems) {
        if !self.quiet && !problems.is_empty() {
            self.complain(problems);
        }
    }

    /// Whether standard output gets colour.
    pub(crate) fn has_colour_out(&self) -> bool {
        has_colour(self.colour, io::stdout().is_terminal())
    }

    /// Whether lines that are not errors are unwanted.
    pub(crate) fn is_quiet(&self) -> bool {
        self.quiet
    }
}

/// Writes help, version, or what is wrong with the arguments.
pub(crate) fn answer_instead(answer: &clap::Error, colour: Colour) -> Exit {
    let asked_for = matches!(
        answer.kind(),
        ErrorKind::DisplayHelp | ErrorKind::DisplayVersion
    );
    let is_terminal = if asked_for {
        io::stdout().is_terminal()
    } else {
        io::stderr().is_terminal()
    };
    let text = if has_colour(colour, is_terminal) {
        answer.render().ansi().to_string()
    } else {
        answer.render().to_string()
    };
    if !asked_for {
        to_stderr(&text);
        return Exit::CouldNotRun;
    }
    match write_whole(&mut io::stdout().lock(), text.as_bytes()) {
        Err(error) if error.kind() != io::ErrorKind::BrokenPipe => Exit::CouldNotRun,
        _ => Exit::Success,
    }
}

/// One write, so that lines of two processes on one terminal do not mix within a message.
///
/// Errors have nowhere left to go.
pub(crate) fn to_stderr(text: &str) {
    let _ = write_whole(&mut io::stderr().lock(), text.as_bytes());
}

fn write_whole(stream: &mut impl Write, bytes: &[u8]) -> io::Result<()> {
    stream.write_all(bytes)?;
    stream.flush()
}

fn has_colour(wanted: Colour, is_terminal: bool) -> bool {
    match wanted {
        Colour::Always => true,
        Colour::Never => false,
        Colour::Auto => {
            let is_set = |name: &str| std::env::var_os(name).is_some_and(|value| !value.is_empty());
            is_terminal && !is_set("NO_COLOR") && terminal_knows_colour(is_set)
        }
    }
}

/// By the variables that terminals set; an old console of Windows sets none and shows the codes as they are.
fn terminal_knows_colour(is_set: impl Fn(&str) -> bool) -> bool {
    let is_dumb = std::env::var_os("TERM").is_some_and(|term| term == OsStr::new("dumb"));
    !is_dumb && (is_set("TERM") || (cfg!(windows) && is_set("WT_SESSION")))
}
