//! Arguments of the commands that tell about the program itself.

use clap::Args;
use clap_complete::Shell;

use super::ListFormat;

#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  bedplate explain M014
  bedplate explain")]
pub(crate) struct Explain {
    /// Code such as M014, in either case; without it all codes are listed
    #[arg(value_name = "CODE")]
    pub(crate) code: Option<String>,
}

#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  bedplate units
  bedplate units --format csv > units.csv")]
pub(crate) struct Units {
    /// Write text, json or csv
    #[arg(
        long,
        value_name = "FORM",
        default_value = "text",
        hide_possible_values = true
    )]
    pub(crate) format: ListFormat,
}

#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  bedplate completions bash > ~/.local/share/bash-completion/completions/bedplate
  bedplate completions fish > ~/.config/fish/completions/bedplate.fish")]
pub(crate) struct Completions {
    /// Shell to print them for
    #[arg(value_name = "SHELL")]
    pub(crate) shell: Shell,
}

#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  bedplate man > bedplate.1
  bedplate man solve > bedplate-solve.1")]
pub(crate) struct Man {
    /// Command to describe; without it the program as a whole
    #[arg(value_name = "COMMAND")]
    pub(crate) command: Option<String>,
}
