//! `man`: made from the definition of the arguments when asked for.

use bedplate::diagnostic::did_you_mean;
use clap::CommandFactory;

use super::arguments::{Arguments, Man};
use super::console::Console;
use super::exit::Exit;
use super::failure::Failure;

pub(crate) fn run(console: &Console, asked: &Man) -> Result<Exit, Failure> {
    let mut whole = Arguments::command();
    whole.build();
    let described = match &asked.command {
        None => whole,
        Some(name) => whole
            .find_subcommand(name)
            .cloned()
            .ok_or_else(|| unknown(&whole, name))?,
    };
    let mut page = Vec::new();
    clap_mangen::Man::new(described)
        .render(&mut page)
        .map_err(|error| Failure::plain(format!("the page cannot be written: {error}")))?;
    console.print_bytes(&page)?;
    Ok(Exit::Success)
}

fn unknown(whole: &clap::Command, name: &str) -> Failure {
    let known: Vec<&str> = whole
        .get_subcommands()
        .map(clap::Command::get_name)
        .collect();
    let failure = Failure::plain(format!("unknown command `{name}`"));
    match did_you_mean(name, known.iter().copied()) {
        Some(near) => failure.help(format!("did you mean `{near}`?")),
        None => failure.help(format!("the commands are {}", known.join(", "))),
    }
}
