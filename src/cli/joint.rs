//! `joint`: one joint by itself, with everything that is required of it.

use bedplate::diagnostic::did_you_mean;
use bedplate::model::Model;

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
    let joints = build.model.joints.iter_mut().enumerate();
    let Some((place, joint)) = joints
        .into_iter()
        .find(|(_, joint)| joint.name == asked.name)
    else {
        return Err(unknown(&build.model, &build.input.name, &asked.name));
    };
    // Who asks for one joint wants to know what would hold as well.
    joint.ask_for_sizes();
    let target = Target::open(
        &asked.output,
        build.input.path.as_deref(),
        Existing::Replace,
    )?;
    let evaluation = build.evaluate(console)?;
    let colour = is_stream(&asked.output) && console.has_colour_out();
    let answer = output::joint(&build.model, &evaluation, place, asked.format, colour)?;
    if target.fill(console, answer.text.as_bytes())? {
        console.note(&format!("results: {}", asked.output.display()));
    }
    Ok(Exit::of_verdicts([answer.verdict], asked.verdict.exit_zero))
}

fn unknown(model: &Model, file: &str, name: &str) -> Failure {
    let known = || model.joints.iter().map(|joint| joint.name.as_str());
    let failure = Failure::plain(format!("there is no joint `{name}` in {file}"));
    let failure = match did_you_mean(name, known()) {
        Some(near) => failure.help(format!("did you mean `{near}`?")),
        None => failure,
    };
    let list: Vec<String> = known().map(|name| format!("`{name}`")).collect();
    if list.is_empty() {
        return failure.help("the file has no joint; a `[[joint]]` adds one");
    }
    failure.help(format!("the file has {}", list.join(", ")))
}
