//! Problems of every shape are shown without a panic.

use std::ops::Range;

use bedplate::diagnostic::{Code, Diagnostic};

use super::{Message, Problems, Style};
use crate::cli::arguments::MessageFormat;

const PLAIN: Style = Style {
    format: MessageFormat::Full,
    colour: false,
};

fn full(source: &str, span: Option<Range<usize>>) -> String {
    let problem = Diagnostic::error(
        Code::UnknownIsolatorKind,
        "unknown isolator kind `rubbr`",
        span,
    )
    .label("not a kind")
    .help("did you mean `rubber`?");
    Problems::of_file("a.toml", source.as_bytes(), [problem]).render(PLAIN)
}

#[test]
fn shows_the_place_marks_it_and_says_what_to_write() {
    let shown = full("title = \"x\"\nkind = \"rubbr\"\n", Some(19..26));
    assert_eq!(
        shown,
        "\
error[M014]: unknown isolator kind `rubbr`
 --> a.toml:2:8
  |
2 | kind = \"rubbr\"
  |        ^^^^^^^ not a kind
  |
  = help: did you mean `rubber`?

1 error in a.toml; `bedplate explain M014` tells more
"
    );
}

#[test]
fn concise_is_one_line_a_problem() {
    let of = |text: &str| Diagnostic::error(Code::MissingKey, text, Some(3..4));
    let whole = Diagnostic::warning(Code::TooLarge, "two\nlines", None);
    let concise = Style {
        format: MessageFormat::Concise,
        ..PLAIN
    };
    let text = Problems::of_file("a b.toml", b"x\ny z", [of("first"), whole]).render(concise);
    assert_eq!(
        text,
        "a b.toml:2:2: M005 first\na b.toml:1:1: M002 two\u{FFFD}lines\n"
    );
    let outside = Problems::plain(Message::error("no file")).render(concise);
    assert_eq!(outside, "error: no file\n");
}

/// Whatever the bytes and the span, something is shown and nothing panics.
#[test]
fn any_span_of_any_text_is_shown() {
    let sources = [
        "",
        "\n",
        "\r\n",
        "\t\tkey = 1\r\n\tother = 2\r\n",
        "ключ = \"ü\u{301}漢字🚗\"",
        "a\u{202E}b\u{7}c\u{1b}[31m",
        "\u{feff}title = 1",
        "last line without an end",
        "a\n\n\n",
    ];
    for source in sources {
        for start in 0..source.len() + 3 {
            for end in [
                start,
                start + 1,
                start + 5,
                source.len(),
                source.len() + 9,
                0,
            ] {
                let shown = full(source, Some(Range { start, end }));
                let has_place =
                    shown.contains("a.toml:") || source.is_empty() || (start, end) == (0, 0);
                assert!(
                    has_place && shown.contains("M014"),
                    "{source:?} {start}..{end}: {shown}"
                );
                assert!(
                    !shown.contains(['\u{202E}', '\u{7}', '\u{1b}']),
                    "{source:?}: {shown:?}"
                );
            }
        }
        for whole in [full(source, None), full(source, Some(0..0))] {
            assert!(whole.contains("--> a.toml\n"), "{whole}");
        }
    }
}

#[test]
fn a_very_long_line_is_cut_around_the_marked_part() {
    let source = format!("{}WRONG{}", "é".repeat(50_000), "z".repeat(50_000));
    let shown = full(&source, Some(100_000..100_005));
    assert!(shown.contains("a.toml:1:50001"), "{shown}");
    assert!(shown.contains("éWRONGz"), "{shown}");
    assert!(shown.contains("^^^^^ not a kind"), "{shown}");
    assert!(
        shown.lines().all(|line| line.chars().count() < 150),
        "{shown}"
    );
    let all_marked = full(&source, Some(0..source.len()));
    assert!(
        all_marked.lines().all(|line| line.chars().count() < 150),
        "{all_marked}"
    );
}

#[test]
fn a_long_message_is_cut_and_stays_on_its_line() {
    let problem = Diagnostic::error(
        Code::UnknownKey,
        format!("a\nb\t{}", "n".repeat(9_000)),
        None,
    );
    let shown = Problems::of_file("a.toml", b"x", [problem]).render(PLAIN);
    assert_eq!(shown.lines().count(), 4, "{shown}");
    assert!(shown.len() < 600, "{}", shown.len());
}

#[test]
fn many_problems_are_counted_and_the_first_shown() {
    let many = (0..1_000).map(|_| Diagnostic::error(Code::UnknownKey, "unknown key", Some(0..1)));
    let problems = Problems::of_file("a.toml", b"x = 1", many);
    let text = problems.render(PLAIN);
    assert_eq!(text.matches("error[M004]").count(), 20);
    assert!(text.ends_with(
        "1000 errors in a.toml, the first 20 shown; `bedplate explain M004` tells more\n"
    ));
    let json = problems.render(Style {
        format: MessageFormat::Json,
        ..PLAIN
    });
    let json: serde_json::Value = serde_json::from_str(&json).unwrap();
    assert_eq!(json["errors"], 1000);
    assert_eq!(json["not_shown"], 800);
    assert_eq!(json["problems"].as_array().unwrap().len(), 200);
}

#[test]
fn the_closing_line_explains_the_first_error_before_any_warning() {
    let warning = Diagnostic::warning(Code::Unused, "unused", Some(0..1));
    let error = Diagnostic::error(Code::UnknownKey, "unknown key", Some(2..3));
    let ends = |list: Vec<Diagnostic>, end: &str| {
        let shown = Problems::of_file("a.toml", b"x = 1", list).render(PLAIN);
        assert!(shown.ends_with(end), "{shown}");
    };
    ends(
        vec![warning.clone(), error],
        "1 error and 1 warning in a.toml; `bedplate explain M004` tells more\n",
    );
    ends(
        vec![warning],
        "1 warning in a.toml; `bedplate explain M102` tells more\n",
    );
}

#[test]
fn colour_is_there_only_when_asked_for_and_changes_no_word() {
    let problems = Problems::of_file(
        "a.toml",
        b"x = 1",
        [Diagnostic::error(Code::UnknownKey, "unknown key `x`", Some(0..1)).help("take it out")],
    );
    let coloured = problems.render(Style {
        colour: true,
        ..PLAIN
    });
    assert!(coloured.contains("\u{1b}["));
    let mut plain = String::new();
    let mut inside = false;
    for character in coloured.chars() {
        match character {
            '\u{1b}' => inside = true,
            'm' if inside => inside = false,
            _ if inside => {}
            other => plain.push(other),
        }
    }
    assert_eq!(plain, problems.render(PLAIN));
}
