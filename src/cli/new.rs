//! `new`: writes a model to start from.

use super::arguments::New;
use super::console::Console;
use super::exit::Exit;
use super::failure::Failure;
use super::files::target::{Existing, Target};

/// An invented build with every line explained; it reads without problems.
const STARTER: &str = include_str!("starter.toml");

pub(crate) fn run(console: &Console, asked: &New) -> Result<Exit, Failure> {
    let existing = if asked.force {
        Existing::Replace
    } else {
        Existing::Keep
    };
    if Target::open(&asked.file, None, existing)?.fill(console, STARTER.as_bytes())? {
        let file = asked.file.display();
        console.note(&format!(
            "wrote {file}; judge it with `bedplate report {file}`"
        ));
    }
    Ok(Exit::Success)
}
