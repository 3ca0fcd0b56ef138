//! `isolator`: one isolator by itself, to judge a part by before it is bought.

use bedplate::diagnostic::{Code, did_you_mean};
use bedplate::model::Model;

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
        .ok_or_else(|| unknown(&build.model, &build.input.name, &asked.name))?;
    let target = Target::open(
        &asked.output,
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
    let colour = is_stream(&asked.output) && console.has_colour_out();
    let text = output::isolator(&build.model, found, asked.format, colour)?;
    if target.fill(console, text.as_bytes())? {
        console.note(&format!("results: {}", asked.output.display()));
    }
    Ok(Exit::Success)
}

fn unknown(model: &Model, file: &str, name: &str) -> Failure {
    let known = || {
        model
            .isolators
            .iter()
            .map(|isolator| isolator.name.as_str())
    };
    let failure = Failure::plain(format!("there is no isolator `{name}` in {file}"));
    let failure = match did_you_mean(name, known()) {
        Some(near) => failure.help(format!("did you mean `{near}`?")),
        None => failure,
    };
    let list: Vec<String> = known().map(|name| format!("`{name}`")).collect();
    failure.help(format!("the file has {}", list.join(", ")))
}
