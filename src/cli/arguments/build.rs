//! Arguments of the commands that write or read a model.

use std::path::PathBuf;

use clap::{Args, ValueEnum, ValueHint};

use super::ListFormat;
use crate::cli::exit;

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
    /// Print only statics, modes, checks, mass, isolators or joints, commas between
    ///
    /// statics: positions, mount forces, deflections and gaps under each load case.
    /// modes: natural frequencies, their shapes, and the axes.
    /// checks: the verdicts, the worst first.
    /// mass: parts, mounts and the mass properties of the whole.
    /// isolators: their rates at rest and in vibration, and what belongs to them.
    /// joints: torque to set, bolts, rails, sleeves and what is required of them.
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

#[derive(Debug, Args)]
#[command(after_long_help = "\
What the file says of the build around it plays no part, but for its weight, which ends the curve
where nothing else does. An isolator that no mount uses can be printed too.

Examples:
  bedplate isolator pickup.toml wedge
  bedplate isolator pickup.toml wedge --format csv -o wedge.csv")]
pub(crate) struct Isolator {
    #[command(flatten)]
    pub(crate) input: Input,
    /// Name of the isolator in the file
    #[arg(value_name = "NAME")]
    pub(crate) name: String,
    /// Write text, json or csv
    ///
    /// text: rates, limits, the curve as tables, and what was assumed.
    /// json: the same as one object, in SI, with the units in the names of its keys.
    /// csv: the curve alone, one point a line, in SI.
    #[arg(long, value_name = "FORM", default_value = "text")]
    #[arg(hide_possible_values = true, verbatim_doc_comment)]
    pub(crate) format: ListFormat,
    #[command(flatten)]
    pub(crate) answer: Answer,
}

#[derive(Debug, Args)]
#[command(after_long_help = format!("\
Examples:
  bedplate joint pickup.toml \"front left to rail\"
  bedplate joint pickup.toml \"front left to rail\" --format json -o joint.json

{}", exit::IN_WORDS))]
pub(crate) struct Joint {
    #[command(flatten)]
    pub(crate) input: Input,
    /// Name of the joint in the file
    #[arg(value_name = "NAME")]
    pub(crate) name: String,
    /// Write text, json or csv
    ///
    /// text: torque, requirements, what is clamped, the bolts under each load case, how to put it together.
    /// json: the same as one object, in SI, with the units in the names of its keys.
    /// csv: one value a line, with its unit.
    #[arg(long, value_name = "FORM", default_value = "text")]
    #[arg(hide_possible_values = true, verbatim_doc_comment)]
    pub(crate) format: ListFormat,
    #[command(flatten)]
    pub(crate) answer: Answer,
    #[command(flatten)]
    pub(crate) verdict: VerdictOptions,
}

#[derive(Debug, Args)]
pub(crate) struct Input {
    /// Model file, or - for standard input
    #[arg(value_name = "FILE", value_hint = ValueHint::FilePath)]
    pub(crate) file: PathBuf,
}

/// Where the answer about one thing of the file goes.
#[derive(Debug, Args)]
pub(crate) struct Answer {
    /// File for the answer, or - for standard output
    #[arg(long, short, value_name = "FILE", default_value = "-", value_hint = ValueHint::FilePath)]
    pub(crate) output: PathBuf,
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
    /// Rates of the isolators, and what belongs to them
    Isolators,
    /// What holds each mount to the chassis
    Joints,
}
