//! `isolator`: one isolator by itself, to judge a part by before it is bought.

use bedplate::diagnostic::Code;

use super::arguments::Isolator;
use super::build::Build;
use super::console::Console;
use super::exit::Exit;
use super::failure::Failure;
use super::files::is_stream;
use super::files::target::{Existing, Target};
use super::output;

pub(crate) fn run(console: &Console, asked: &Isolator) -> Result<Exit, Failure> {
    let build = Build::read(&asked.input.file)?;
    let found = build
        .model
        .isolators
        .iter()
        .find(|isolator| isolator.name == asked.name)
        .ok_or_else(|| {
            let names = build.model.isolators.iter().map(|one| one.name.as_str());
            let known: Vec<&str> = names.collect();
            let file = &build.input.name;
            Failure::no_such("isolator", "[isolator.NAME]", file, &asked.name, &known)
        })?;
    let target = Target::open(
        &asked.answer.output,
        build.input.path.as_deref(),
        Existing::Replace,
    )?;
    // That another one is not used is nothing to someone who asks for this one.
    let named = format!("`{}`", found.name);
    let warnings = build
        .warnings
        .clone()
        .without(Code::Unused, |text| !text.contains(&named));
    console.warn(&warnings);
    let colour = is_stream(&asked.answer.output) && console.has_colour_out();
    let text = output::isolator(&build.model, found, asked.format, colour)?;
    if target.fill(console, text.as_bytes())? {
        console.note(&format!("results: {}", asked.answer.output.display()));
    }
    Ok(Exit::Success)
}
