//! `solve`: results on standard output or in a file, in a form of choice.

use super::arguments::{ResultFormat, Solve};
use super::build::Build;
use super::console::Console;
use super::exit::Exit;
use super::failure::Failure;
use super::files::is_stream;
use super::files::target::{Existing, Target};
use super::output::{self, Wanted};

pub(crate) fn run(console: &Console, asked: &Solve) -> Result<Exit, Failure> {
    if !asked.only.is_empty() && asked.format != ResultFormat::Text {
        return Err(Failure::plain("`--only` chooses among the tables of the text form")
            .help("the other forms are always whole, so that a program finds every key in its place; leave `--only` out"));
    }
    let build = Build::read(&asked.input.file)?;
    let target = Target::open(
        &asked.output,
        build.input.path.as_deref(),
        Existing::Replace,
    )?;
    let evaluation = build.evaluate(console)?;
    let wanted = Wanted {
        format: asked.format,
        only: &asked.only,
        colour: is_stream(&asked.output) && console.has_colour_out(),
    };
    let text = output::results(&build.model, &evaluation, &wanted)?;
    if target.fill(console, text.as_bytes())? {
        console.note(&format!("results: {}", asked.output.display()));
    }
    Ok(Exit::of_checks(&evaluation.checks, asked.verdict.exit_zero))
}
