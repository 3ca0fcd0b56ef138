//! The arguments: the one definition behind parsing, help, completions and the manual page.

use std::ffi::OsString;
use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum, ValueHint};
use clap_complete::Shell;

use super::exit;

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
    /// Tell more about the code of a problem
    Explain(Explain),
    /// List the units that values may be written in
    Units(Units),
    /// Print the completions of a shell
    Completions(Completions),
    /// Print a manual page
    Man(Man),
}

#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  bedplate new pickup.toml
  bedplate new - | less")]
pub(crate) struct New {
    /// File to write, or - for standard output
    #[arg(value_name = "FILE", value_hint = ValueHint::FilePath)]
    pub(crate) file: PathBuf,
    /// Replace the file when it is there already
    #[arg(long)]
    pub(crate) force: bool,
}

#[derive(Debug, Args)]
#[command(after_long_help = "\
The problems are what this command is for, so they go to standard output. A file with errors ends
it with 2, a file with warnings alone with 0.

Examples:
  bedplate check pickup.toml
  bedplate check pickup.toml --message-format json")]
pub(crate) struct Check {
    #[command(flatten)]
    pub(crate) input: Input,
}

#[derive(Debug, Args)]
#[command(after_long_help = format!("\
Examples:
  bedplate report pickup.toml
  bedplate report pickup.toml -o build/pickup.html --exit-zero

{}", exit::IN_WORDS))]
pub(crate) struct Report {
    #[command(flatten)]
    pub(crate) input: Input,
    /// Report file, or - for standard output [default: NAME-report.html]
    ///
    /// Without it the report of NAME.toml becomes NAME-report.html in the
    /// current directory. On standard output the report takes the place of the
    /// summary.
    #[arg(long, short, value_name = "FILE", value_hint = ValueHint::FilePath)]
    pub(crate) output: Option<PathBuf>,
    #[command(flatten)]
    pub(crate) verdict: VerdictOptions,
}

#[derive(Debug, Args)]
#[command(after_long_help = format!("\
Examples:
  bedplate solve pickup.toml --only checks
  bedplate solve pickup.toml --format json -o pickup.json

{}", exit::IN_WORDS))]
pub(crate) struct Solve {
    #[command(flatten)]
    pub(crate) input: Input,
    /// Write text, json, csv or html
    ///
    /// text: tables for people.
    /// json: one object, in SI, with the units in the names of its keys.
    /// csv: one value a line, with its unit.
    /// html: the page that `report` writes.
    #[arg(long, value_name = "FORM", default_value = "text")]
    #[arg(hide_possible_values = true, verbatim_doc_comment)]
    pub(crate) format: ResultFormat,
    /// Print only statics, modes, checks or mass, several with commas between
    ///
    /// statics: positions, mount forces, deflections and gaps under each load case.
    /// modes: natural frequencies, their shapes, and the axes.
    /// checks: the verdicts, the worst first.
    /// mass: parts, mounts and the mass properties of the whole.
    /// For text alone: the other forms are always whole.
    #[arg(long, value_name = "WHAT", value_delimiter = ',')]
    #[arg(hide_possible_values = true, verbatim_doc_comment)]
    pub(crate) only: Vec<Subject>,
    /// File for the results, or - for standard output
    #[arg(long, short, value_name = "FILE", default_value = "-", value_hint = ValueHint::FilePath)]
    pub(crate) output: PathBuf,
    #[command(flatten)]
    pub(crate) verdict: VerdictOptions,
}

/// The model file.
#[derive(Debug, Args)]
pub(crate) struct Input {
    /// Model file, or - for standard input
    #[arg(value_name = "FILE", value_hint = ValueHint::FilePath)]
    pub(crate) file: PathBuf,
}

#[derive(Debug, Args)]
pub(crate) struct VerdictOptions {
    /// End with 0 even when checks fail
    #[arg(long)]
    pub(crate) exit_zero: bool,
}

/// Form of the results.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum ResultFormat {
    /// Tables for people
    Text,
    /// One JSON object, in SI
    Json,
    /// One value a line, separated by commas
    Csv,
    /// The page that `report` writes
    Html,
}

/// A group of results.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum Subject {
    /// Positions, mount forces, deflections and gaps under each load case
    Statics,
    /// Natural frequencies, their shapes, and the axes
    Modes,
    /// Verdicts
    Checks,
    /// Parts, mounts and the mass properties of the whole
    Mass,
}

#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  bedplate explain M014
  bedplate explain")]
pub(crate) struct Explain {
    /// Code such as M014, in either case; without it all codes are listed
    #[arg(value_name = "CODE")]
    pub(crate) code: Option<String>,
}

#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  bedplate units
  bedplate units --format csv > units.csv")]
pub(crate) struct Units {
    /// Write text, json or csv
    #[arg(
        long,
        value_name = "FORM",
        default_value = "text",
        hide_possible_values = true
    )]
    pub(crate) format: ListFormat,
}

/// Form of a list.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum ListFormat {
    /// Tables for people
    Text,
    /// One JSON object
    Json,
    /// One entry a line, separated by commas
    Csv,
}

#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  bedplate completions bash > ~/.local/share/bash-completion/completions/bedplate
  bedplate completions fish > ~/.config/fish/completions/bedplate.fish")]
pub(crate) struct Completions {
    /// Shell to print them for
    #[arg(value_name = "SHELL")]
    pub(crate) shell: Shell,
}

#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  bedplate man > bedplate.1
  bedplate man solve > bedplate-solve.1")]
pub(crate) struct Man {
    /// Command to describe; without it the program as a whole
    #[arg(value_name = "COMMAND")]
    pub(crate) command: Option<String>,
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

#[cfg(test)]
mod tests {
    use clap::CommandFactory;

    use super::{Arguments, Colour, colour_asked_for};

    #[test]
    fn the_definition_holds_together() {
        Arguments::command().debug_assert();
    }

    #[test]
    fn first_help_lines_are_short_and_have_no_full_stop() {
        let mut all = Arguments::command();
        all.build();
        let mut queue = vec![all];
        while let Some(command) = queue.pop() {
            let own = command.get_about().map(ToString::to_string);
            let arguments = command
                .get_arguments()
                .filter(|argument| !matches!(argument.get_id().as_str(), "help" | "version"))
                .map(|argument| argument.get_help().map(ToString::to_string));
            for line in std::iter::once(own).chain(arguments) {
                let line = line.unwrap_or_default();
                assert!(
                    !line.is_empty(),
                    "a help line of `{}` is missing",
                    command.get_name()
                );
                assert!(line.chars().count() <= 90, "too long: {line}");
                assert!(!line.ends_with('.'), "full stop: {line}");
                assert!(line.starts_with(char::is_uppercase), "first letter: {line}");
            }
            queue.extend(command.get_subcommands().cloned());
        }
    }

    /// The values stand in the help line, so that every flag takes one line.
    #[test]
    fn help_lines_name_every_value() {
        let mut all = Arguments::command();
        all.build();
        for command in all.get_subcommands() {
            for argument in command
                .get_arguments()
                .filter(|a| a.is_hide_possible_values_set())
            {
                let help = argument
                    .get_help()
                    .map(ToString::to_string)
                    .unwrap_or_default();
                for value in argument.get_possible_values() {
                    let name = value.get_name();
                    assert!(help.contains(name), "`{name}` is not in: {help}");
                }
            }
        }
    }

    #[test]
    fn colour_is_found_among_wrong_arguments() {
        let asked =
            |words: &[&str]| colour_asked_for(&words.iter().map(Into::into).collect::<Vec<_>>());
        assert_eq!(
            asked(&["bedplate", "--nonsense", "--color", "never"]),
            Colour::Never
        );
        assert_eq!(
            asked(&["bedplate", "--color=always", "--nonsense"]),
            Colour::Always
        );
        assert_eq!(asked(&["bedplate", "--color"]), Colour::Auto);
    }
}
