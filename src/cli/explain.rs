//! `explain`: the manual of one code, or the list of all.

use bedplate::diagnostic::{Code, did_you_mean};

use super::arguments::Explain;
use super::console::Console;
use super::exit::Exit;
use super::failure::Failure;

pub(crate) fn run(console: &Console, asked: &Explain) -> Result<Exit, Failure> {
    let text = match &asked.code {
        None => list(),
        Some(id) => manual(Code::from_id(id).ok_or_else(|| unknown(id))?),
    };
    console.print(&text)?;
    Ok(Exit::Success)
}

fn list() -> String {
    Code::ALL
        .iter()
        .map(|code| format!("{}  {}\n", code.id(), code.title()))
        .collect()
}

fn manual(code: Code) -> String {
    let lines: String = code
        .manual()
        .lines()
        .map(|line| format!("{}\n", line.trim()))
        .collect();
    format!("{}: {}\n\n{lines}", code.id(), code.title())
}

fn unknown(id: &str) -> Failure {
    let failure = Failure::plain(format!("unknown code `{id}`"));
    let failure = match did_you_mean(id, Code::ALL.iter().map(|code| code.id())) {
        Some(near) => failure.help(format!("did you mean `{near}`?")),
        None => failure,
    };
    failure.help("`bedplate explain` lists all codes")
}
