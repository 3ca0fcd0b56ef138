//! The arguments: the one definition behind parsing, help, completions and the manual page.

mod about;
mod build;
#[cfg(test)]
mod tests;

use std::ffi::OsString;

use clap::{Args, Parser, Subcommand, ValueEnum};

use super::exit;

pub(crate) use about::{Completions, Explain, Man, Units};
pub(crate) use build::{Check, Isolator, Joint, New, Report, ResultFormat, Solve, Subject};

const EXAMPLES: &str = "\
Examples:
  bedplate new pickup.toml       start a model, with every line explained
  bedplate report pickup.toml    judge it, and write pickup-report.html";

/// Decide where and on what to mount an engine, gearbox or electric drive
///
/// Describe the build in a model file: what is supported, what drives it, what
/// it rests on. `report` then says where it comes to rest, how far it moves
/// under load, how it vibrates, and what to change first.
#[derive(Debug, Parser)]
#[command(
    name = "bedplate",
    version,
    max_term_width = 100,
    subcommand_required = true
)]
#[command(arg_required_else_help = true, disable_help_subcommand = true)]
#[command(after_long_help = format!("{EXAMPLES}\n\n{}", exit::IN_WORDS))]
pub(crate) struct Arguments {
    #[command(subcommand)]
    pub(crate) command: Command,
    #[command(flatten)]
    pub(crate) messages: MessageOptions,
}

/// Options that every command takes.
#[derive(Debug, Args)]
#[command(next_help_heading = "Messages")]
pub(crate) struct MessageOptions {
    /// Write problems as full, concise or json
    ///
    /// full: the place in the file, and what to write instead.
    /// concise: one line a problem, path:line:column: code message.
    /// json: one object with all problems.
    #[arg(long, global = true, value_name = "FORM", default_value = "full")]
    #[arg(hide_possible_values = true, verbatim_doc_comment)]
    pub(crate) message_format: MessageFormat,
    /// Use colour: auto, always or never
    ///
    /// auto: on a terminal that can show it, unless NO_COLOR is set.
    /// Colour only repeats what the words say.
    #[arg(long, global = true, value_name = "WHEN", default_value = "auto")]
    #[arg(hide_possible_values = true, verbatim_doc_comment)]
    pub(crate) color: Colour,
    /// Leave out notes and warnings
    #[arg(long, short, global = true)]
    pub(crate) quiet: bool,
}

/// How problems are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum MessageFormat {
    /// The place in the file, and what to write instead
    Full,
    /// One line a problem: path:line:column: code message
    Concise,
    /// One JSON object with all problems
    Json,
}

/// When to use colour.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum Colour {
    /// On a terminal that can show it
    Auto,
    /// Into files and pipes too
    Always,
    /// Nowhere
    Never,
}

#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// Write a model to start from, with every line explained
    New(New),
    /// Read a model and list its problems
    Check(Check),
    /// Judge a build: a summary here, everything in a report file
    Report(Report),
    /// Print results for people or for programs
    Solve(Solve),
    /// Print the curve and rates of one isolator
    Isolator(Isolator),
    /// Judge one joint: torque, clamp force, all that is required of it
    Joint(Joint),
    /// Tell more about the code of a problem
    Explain(Explain),
    /// List the units that values may be written in
    Units(Units),
    /// Print the completions of a shell
    Completions(Completions),
    /// Print a manual page
    Man(Man),
}
/// Form of a list of equal rows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum ListFormat {
    /// Tables for people
    Text,
    /// One JSON object
    Json,
    /// One entry a line, separated by commas
    Csv,
}

/// What `--color` says, looked up by hand: when the arguments are wrong there is no other way to know.
pub(crate) fn colour_asked_for(words: &[OsString]) -> Colour {
    let words: Vec<_> = words.iter().map(|word| word.to_string_lossy()).collect();
    let by_equals = words.iter().find_map(|word| word.strip_prefix("--color="));
    let by_space = words
        .windows(2)
        .find_map(|pair| (pair[0] == "--color").then_some(pair[1].as_ref()));
    by_equals
        .or(by_space)
        .and_then(|word| Colour::from_str(word, true).ok())
        .unwrap_or(Colour::Auto)
}
