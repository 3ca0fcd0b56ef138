//! What is said when the program meets a bug of its own.

use std::ffi::OsString;
use std::panic;

use super::console::to_stderr;

/// Replaces the message of a panic. The process then ends with 101.
pub(crate) fn install() {
    panic::set_hook(Box::new(|info| {
        let payload = info.payload();
        let what = payload
            .downcast_ref::<&str>()
            .copied()
            .or_else(|| payload.downcast_ref::<String>().map(String::as_str))
            .unwrap_or("no reason given");
        let place = info
            .location()
            .map_or_else(|| "unknown".to_owned(), ToString::to_string);
        to_stderr(&words(what, &place, std::env::args_os()));
    }));
}

fn words(what: &str, place: &str, arguments: impl Iterator<Item = OsString>) -> String {
    let arguments: Vec<String> = arguments
        .skip(1)
        .map(|word| word.to_string_lossy().into_owned())
        .collect();
    format!(
        "error: this is a bug in bedplate, not in your model\n  \
           what: {what}\n  \
           where: {place}\n  \
           version: {version}\n  \
           arguments: {arguments}\n  \
           = help: report it with these lines and the model file\n",
        version = env!("CARGO_PKG_VERSION"),
        arguments = arguments.join(" "),
    )
}

#[cfg(test)]
mod tests {
    use super::words;

    #[test]
    fn says_that_it_is_a_bug_and_what_a_maintainer_needs() {
        let arguments = ["bedplate", "report", "my model.toml"].map(Into::into);
        let said = words(
            "index out of range",
            "src/study.rs:1:2",
            arguments.into_iter(),
        );
        for part in [
            "a bug in bedplate",
            "index out of range",
            "where: src/study.rs:1:2\n",
            env!("CARGO_PKG_VERSION"),
            "arguments: report my model.toml\n",
            "the model file",
        ] {
            assert!(said.contains(part), "no `{part}` in:\n{said}");
        }
    }
}
