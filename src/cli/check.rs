//! `check`: reads a model and lists its problems, computes nothing.

use bedplate::model::Model;

use super::arguments::{Check, MessageFormat};
use super::build::Build;
use super::console::Console;
use super::exit::Exit;
use super::failure::Failure;
use super::messages::{Problems, counted};

pub(crate) fn run(console: &Console, asked: &Check) -> Result<Exit, Failure> {
    let build = match Build::read(&asked.input.file) {
        Ok(build) => build,
        Err(Failure::Model(problems)) => {
            tell(console, problems)?;
            return Err(Failure::Told);
        }
        Err(other) => return Err(other),
    };
    let line = format!(
        "no problems in {}: {}\n",
        build.input.name,
        read_in_words(&build.model)
    );
    let silent = !build.warnings.is_empty() || console.is_quiet();
    tell(console, build.warnings)?;
    if !silent && console.message_format() == MessageFormat::Full {
        console.print(&line)?;
    }
    Ok(Exit::Success)
}

/// The problems are what was asked for.
fn tell(console: &Console, problems: Problems) -> Result<(), Failure> {
    let wanted = if console.is_quiet() {
        problems.errors_only()
    } else {
        problems
    };
    console.print_problems(&wanted)
}

/// What a model holds, so that a section that was forgotten is noticed.
fn read_in_words(model: &Model) -> String {
    [
        counted(model.parts.len(), "part"),
        counted(model.isolators.len(), "isolator"),
        counted(model.mounts.len(), "mount"),
        counted(model.loads.len(), "load case"),
        counted(model.points.len(), "point"),
        counted(model.clearances.len(), "clearance"),
        counted(model.assumptions.len(), "assumption"),
    ]
    .join(", ")
}
