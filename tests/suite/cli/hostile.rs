//! Input that no one means: it is refused in words, quickly, and never ends in a panic.

use std::fs;
use std::io::Write;
use std::process::Stdio;
use std::time::{Duration, Instant};

use bedplate::model::file::LARGEST_FILE;

use super::{Answer, GOOD, Run, project};

/// A good model with one piece replaced.
fn with(from: &str, to: &str) -> String {
    let text = fs::read_to_string(project(GOOD)).unwrap();
    assert!(text.contains(from), "{from}");
    text.replacen(from, to, 1)
}

#[test]
fn a_huge_file_is_refused_at_once() {
    let run = Run::new();
    let file = fs::File::create(run.path("huge.toml")).unwrap();
    file.set_len(200_000_000).unwrap();
    let begin = Instant::now();
    run.run(&["solve", "huge.toml"])
        .refuses(&["error[M002]", "huge.toml"]);
    assert!(
        begin.elapsed() < Duration::from_secs(1),
        "{:?}",
        begin.elapsed()
    );
}

/// Were it read to its end, the program would wait for it for ever.
#[test]
fn a_stream_is_read_no_further_than_any_model_is_long() {
    let mut child = std::process::Command::new(env!("CARGO_BIN_EXE_bedplate"))
        .args(["solve", "-"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let mut open_end = child.stdin.take().unwrap();
    open_end.write_all(&vec![b'#'; LARGEST_FILE + 1]).unwrap();
    let begin = Instant::now();
    while child.try_wait().unwrap().is_none() {
        if begin.elapsed() > Duration::from_secs(10) {
            child.kill().unwrap();
            panic!("still reading");
        }
        std::thread::sleep(Duration::from_millis(5));
    }
    Answer::of(child.wait_with_output().unwrap()).refuses(&["error[M002]"]);
}

#[cfg(target_os = "linux")]
#[test]
fn a_stream_without_an_end_is_refused() {
    Run::new()
        .run(&["solve", "/dev/zero"])
        .refuses(&["error[M002]"]);
}

#[test]
fn bytes_that_are_no_text_are_refused() {
    let run = Run::new();
    for bytes in [
        &b"title = \"\xff\xfe\""[..],
        b"\x00\x01\x02",
        b"\xef\xbb",
        b"PK\x03\x04\x9f",
    ] {
        run.write("a.toml", bytes);
        run.run(&["solve", "a.toml"])
            .refuses(&["error[M0", "a.toml"]);
    }
}

#[test]
fn odd_but_harmless_bytes_are_no_problem() {
    let run = Run::new();
    let text = fs::read_to_string(project(GOOD)).unwrap();
    run.write("crlf.toml", text.replace('\n', "\r\n"));
    run.run(&["solve", "crlf.toml"]).ends_with(0);
    run.write("mark.toml", format!("\u{feff}{text}"));
    run.run(&["solve", "mark.toml"]).ends_with(0);
    run.write("empty.toml", "");
    run.run(&["solve", "empty.toml"])
        .refuses(&["error[M005]: `title` is missing"]);
    run.write("blank.toml", "\r\n\r\n\t\n");
    run.run(&["solve", "blank.toml"]).refuses(&["error[M005]"]);
}

#[test]
fn impossible_numbers_are_refused_with_their_place() {
    let run = Run::new();
    let mass = "mass = \"232 kg\"";
    for number in [
        "nan kg",
        "inf kg",
        "-inf kg",
        "1e300 kg",
        "1e999 kg",
        "-1 kg",
        "0 kg",
        "1e-300 kg",
        "",
        "kg",
        "9".repeat(5_000).as_str(),
    ] {
        run.write("a.toml", with(mass, &format!("mass = \"{number}\"")));
        let answer = run
            .run(&["solve", "a.toml"])
            .refuses(&["error[M0", " --> a.toml:32:"]);
        assert!(!answer.err.contains("panicked"), "{}", answer.err);
    }
    for bare in [
        "nan",
        "inf",
        "1e300",
        "-0.0",
        "99999999999999999999999",
        "[]",
        "{}",
        "true",
        "1979-05-27",
    ] {
        run.write("a.toml", with(mass, &format!("mass = {bare}")));
        run.run(&["solve", "a.toml"])
            .refuses(&["error[M0", " --> a.toml:32:"]);
    }
}

#[test]
fn deep_nesting_ends_in_words() {
    let run = Run::new();
    for deep in [
        format!("a = {}", "[".repeat(10_000)),
        format!("a = {}{}", "[".repeat(10_000), "]".repeat(10_000)),
        format!("a = {}", "{a=".repeat(10_000)),
        format!("[{}a]", "a.".repeat(10_000)),
        format!("{}a = 1", "a.".repeat(10_000)),
    ] {
        run.write("a.toml", deep);
        run.run(&["check", "a.toml"]).ends_with(2);
    }
}

#[test]
fn a_file_full_of_problems_is_answered_in_time() {
    let run = Run::new();
    let many: String = (0..20_000)
        .map(|number| format!("key_{number} = 1\n"))
        .collect();
    run.write("a.toml", many);
    let begin = Instant::now();
    run.run(&["solve", "a.toml"])
        .refuses(&["the first 20 shown"]);
    assert!(
        begin.elapsed() < Duration::from_secs(10),
        "{:?}",
        begin.elapsed()
    );
}

#[test]
fn one_endless_line_is_shown_in_part() {
    let run = Run::new();
    run.write(
        "a.toml",
        format!("title = \"{}\" nonsense", "long ".repeat(20_000)),
    );
    let answer = run.run(&["solve", "a.toml"]).refuses(&["error[M003]"]);
    assert!(answer.err.len() < 5_000, "{}", answer.err.len());
    run.write("a.toml", format!("{} = 1", "k".repeat(100_000)));
    let answer = run.run(&["solve", "a.toml"]).refuses(&["error[M004]"]);
    assert!(answer.err.len() < 8_000, "{}", answer.err.len());
}

#[test]
fn names_cannot_speak_to_the_terminal() {
    let run = Run::new();
    run.write("a.toml", "\"\\u001b[31mred\\u0007\" = 1\n\"a\\nb\" = 2\n");
    for form in ["full", "concise"] {
        let answer = run
            .run(&["solve", "a.toml", "--message-format", form])
            .refuses(&["M004"]);
        assert!(
            !answer.err.contains(['\u{1b}', '\u{7}']),
            "{:?}",
            answer.err
        );
    }
}
