//! The definition of the arguments holds together and its help lines are fit to read.

use clap::CommandFactory;

use super::{Arguments, Colour, colour_asked_for};

#[test]
fn the_definition_holds_together() {
    Arguments::command().debug_assert();
}

#[test]
fn first_help_lines_are_short_and_have_no_full_stop() {
    let mut all = Arguments::command();
    all.build();
    let mut queue = vec![all];
    while let Some(command) = queue.pop() {
        let own = command.get_about().map(ToString::to_string);
        let arguments = command
            .get_arguments()
            .filter(|argument| !matches!(argument.get_id().as_str(), "help" | "version"))
            .map(|argument| argument.get_help().map(ToString::to_string));
        for line in std::iter::once(own).chain(arguments) {
            let line = line.unwrap_or_default();
            assert!(
                !line.is_empty(),
                "a help line of `{}` is missing",
                command.get_name()
            );
            assert!(line.chars().count() <= 90, "too long: {line}");
            assert!(!line.ends_with('.'), "full stop: {line}");
            assert!(line.starts_with(char::is_uppercase), "first letter: {line}");
        }
        queue.extend(command.get_subcommands().cloned());
    }
}

/// The values stand in the help line, so that every flag takes one line.
#[test]
fn help_lines_name_every_value() {
    let mut all = Arguments::command();
    all.build();
    for command in all.get_subcommands() {
        for argument in command
            .get_arguments()
            .filter(|a| a.is_hide_possible_values_set())
        {
            let help = argument
                .get_help()
                .map(ToString::to_string)
                .unwrap_or_default();
            for value in argument.get_possible_values() {
                let name = value.get_name();
                assert!(help.contains(name), "`{name}` is not in: {help}");
            }
        }
    }
}

#[test]
fn colour_is_found_among_wrong_arguments() {
    let asked =
        |words: &[&str]| colour_asked_for(&words.iter().map(Into::into).collect::<Vec<_>>());
    assert_eq!(
        asked(&["bedplate", "--nonsense", "--color", "never"]),
        Colour::Never
    );
    assert_eq!(
        asked(&["bedplate", "--color=always", "--nonsense"]),
        Colour::Always
    );
    assert_eq!(asked(&["bedplate", "--color"]), Colour::Auto);
}
