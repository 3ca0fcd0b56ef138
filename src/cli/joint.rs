//! `joint`: one joint by itself, with everything that is required of it.

use super::arguments::Joint;
use super::build::Build;
use super::console::Console;
use super::exit::Exit;
use super::failure::Failure;
use super::files::is_stream;
use super::files::target::{Existing, Target};
use super::output;

pub(crate) fn run(console: &Console, asked: &Joint) -> Result<Exit, Failure> {
    let mut build = Build::read(&asked.input.file)?;
    let names = build.model.joints.iter().map(|one| one.name.as_str());
    let known: Vec<&str> = names.collect();
    let place = known
        .iter()
        .position(|name| *name == asked.name)
        .ok_or_else(|| {
            let file = &build.input.name;
            Failure::no_such("joint", "[[joint]]", file, &asked.name, &known)
        })?;
    // Who asks for one joint wants to know what would hold as well.
    if let Some(joint) = build.model.joints.get_mut(place) {
        joint.ask_for_sizes();
    }
    let target = Target::open(
        &asked.answer.output,
        build.input.path.as_deref(),
        Existing::Replace,
    )?;
    let evaluation = build.evaluate(console)?;
    let colour = is_stream(&asked.answer.output) && console.has_colour_out();
    let answer = output::joint(&build.model, &evaluation, place, asked.format, colour)?;
    if target.fill(console, answer.text.as_bytes())? {
        console.note(&format!("results: {}", asked.answer.output.display()));
    }
    Ok(Exit::of_verdicts([answer.verdict], asked.verdict.exit_zero))
}
