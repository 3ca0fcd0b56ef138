//! The command `bedplate`. Everything it can do is in the library; this reads arguments and files, and writes.

mod cli;

use std::process::ExitCode;

fn main() -> ExitCode {
    cli::crash::install();
    cli::run(std::env::args_os()).into()
}
