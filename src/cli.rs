//! The command line: arguments in, text and an exit code out.
//!
//! One file a command. Streams, colour and the wording of problems are decided
//! once, in [`console`] and [`messages`]; the library knows of none of them.

mod arguments;
mod build;
mod check;
mod completions;
mod console;
pub(crate) mod crash;
mod exit;
mod explain;
mod failure;
mod files;
mod isolator;
mod joint;
mod man;
mod messages;
mod new;
mod output;
mod report;
mod solve;
mod units;

use std::ffi::OsString;

use clap::Parser;

use arguments::{Arguments, Command};
use console::Console;
use exit::Exit;
use failure::Failure;

/// Runs one command as its arguments say.
pub(crate) fn run(arguments: impl IntoIterator<Item = OsString>) -> Exit {
    let words: Vec<OsString> = arguments.into_iter().collect();
    match Arguments::try_parse_from(&words) {
        Ok(arguments) => {
            let console = Console::new(&arguments.messages);
            command(&console, &arguments.command).unwrap_or_else(|failure| failure.tell(&console))
        }
        Err(answer) => console::answer_instead(&answer, arguments::colour_asked_for(&words)),
    }
}

fn command(console: &Console, command: &Command) -> Result<Exit, Failure> {
    match command {
        Command::New(asked) => new::run(console, asked),
        Command::Check(asked) => check::run(console, asked),
        Command::Report(asked) => report::run(console, asked),
        Command::Solve(asked) => solve::run(console, asked),
        Command::Isolator(asked) => isolator::run(console, asked),
        Command::Joint(asked) => joint::run(console, asked),
        Command::Explain(asked) => explain::run(console, asked),
        Command::Units(asked) => units::run(console, asked),
        Command::Completions(asked) => completions::run(console, asked),
        Command::Man(asked) => man::run(console, asked),
    }
}
