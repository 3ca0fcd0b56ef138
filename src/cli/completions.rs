//! `completions`: made from the definition of the arguments when asked for.

use clap::CommandFactory;

use super::arguments::{Arguments, Completions};
use super::console::Console;
use super::exit::Exit;
use super::failure::Failure;

pub(crate) fn run(console: &Console, asked: &Completions) -> Result<Exit, Failure> {
    let mut command = Arguments::command();
    let name = command.get_name().to_owned();
    let mut script = Vec::new();
    clap_complete::generate(asked.shell, &mut command, name, &mut script);
    console.print_bytes(&script)?;
    Ok(Exit::Success)
}
