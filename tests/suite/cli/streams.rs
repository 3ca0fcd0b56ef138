//! Standard output carries what was asked for, standard error the rest, and a closed pipe is no error.

use std::fs;
use std::process::Stdio;

use super::{Answer, FAILING, GOOD, Run, project};

#[test]
fn standard_input_is_a_model_file() {
    let run = Run::new();
    let text = fs::read(project(GOOD)).unwrap();
    let from_file = run.run(&["solve", &project(GOOD)]).ends_with(0);
    let from_stdin = run
        .run_with_stdin(&["solve", "-"], text.clone())
        .ends_with(0);
    assert_eq!(from_file.out, from_stdin.out);
    run.run_with_stdin(&["report", "-"], text).ends_with(0);
    assert_eq!(run.files(), ["model-report.html"]);
    let wrong = run
        .run_with_stdin(&["check", "-"], "title = 1\n")
        .ends_with(2);
    assert!(wrong.out.contains(" --> <stdin>:1:9"), "{}", wrong.out);
}

#[test]
fn a_closed_pipe_ends_quietly_with_success() {
    let model = project(FAILING);
    let cases: [&[&str]; 10] = [
        &["solve", &model, "--format", "json"],
        &["solve", &model],
        &["report", &model, "-o", "-"],
        &["report", &model],
        &["check", &model],
        &["units"],
        &["explain"],
        &["new", "-"],
        &["man"],
        &["--help"],
    ];
    for arguments in cases {
        let run = Run::new();
        let mut child = std::process::Command::new(env!("CARGO_BIN_EXE_bedplate"))
            .args(arguments)
            .arg("--quiet")
            .current_dir(run.directory.path())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        drop(child.stdout.take());
        let answer = Answer::of(child.wait_with_output().unwrap()).ends_with(0);
        assert_eq!(answer.err, "", "{arguments:?}");
        if arguments == ["report", &model] {
            assert_eq!(run.files(), ["hillclimb-single-seater-report.html"]);
        }
    }
}

#[cfg(target_os = "linux")]
#[test]
fn a_full_disk_behind_standard_output_is_an_error() {
    let run = Run::new();
    let full = fs::File::options().write(true).open("/dev/full").unwrap();
    let output = std::process::Command::new(env!("CARGO_BIN_EXE_bedplate"))
        .args(["solve", &project(GOOD)])
        .current_dir(run.directory.path())
        .stdout(full)
        .output()
        .unwrap();
    Answer::of(output).refuses(&["error: standard output takes no more"]);
}

#[test]
fn colour_is_for_terminals_or_on_demand() {
    let run = Run::new();
    run.write("a.toml", "title = 1\n");
    let coloured = |answer: &Answer| answer.out.contains('\u{1b}') || answer.err.contains('\u{1b}');
    for arguments in [
        &["check", "a.toml"][..],
        &["solve", "a.toml"],
        &["solve", "missing.toml"],
        &["explain", "--nonsense"],
        &["--help"],
        &["solve", &project(FAILING)],
        &["report", &project(FAILING)],
    ] {
        assert!(!coloured(&run.run(arguments)), "{arguments:?} in a pipe");
        let always = [arguments, &["--color", "always"]].concat();
        assert!(coloured(&run.run(&always)), "{always:?}");
        let never = [arguments, &["--color=never"]].concat();
        assert!(!coloured(&run.run(&never)), "{never:?}");
    }
    run.run(&[
        "solve",
        &project(FAILING),
        "-o",
        "r.txt",
        "--color",
        "always",
    ]);
    run.run(&[
        "report",
        &project(FAILING),
        "-o",
        "r.html",
        "--color",
        "always",
    ]);
    for file in ["r.txt", "r.html"] {
        assert!(
            !fs::read_to_string(run.path(file))
                .unwrap()
                .contains('\u{1b}'),
            "{file}"
        );
    }
}

#[test]
fn messages_have_three_forms() {
    let run = Run::new();
    run.write("a.toml", "title = 1\nnonsense = 2\n");
    let concise = run.run(&["solve", "a.toml", "--message-format", "concise"]);
    let concise = concise.refuses(&["a.toml:1:9: M006 ", "a.toml:2:1: M004 "]);
    assert!(
        concise.err.lines().all(|line| line.starts_with("a.toml:")),
        "{}",
        concise.err
    );
    let full = run
        .run(&["solve", "a.toml"])
        .refuses(&["error[M004]: unknown key in the file: `nonsense`"]);
    let json = run
        .run(&["solve", "a.toml", "--message-format", "json"])
        .refuses(&[]);
    let json: serde_json::Value = serde_json::from_str(&json.err).unwrap();
    let keys = [
        "format",
        "tool",
        "file",
        "errors",
        "warnings",
        "not_shown",
        "problems",
    ];
    assert_eq!(json.as_object().unwrap().len(), keys.len());
    assert!(keys.iter().all(|key| json.get(key).is_some()), "{json}");
    let problems = json["problems"].as_array().unwrap();
    assert_eq!(problems.len(), concise.err.lines().count());
    assert_eq!(json["errors"], problems.len());
    let unknown = problems.iter().find(|p| p["code"] == "M004").unwrap();
    assert_eq!(
        (&unknown["line"], &unknown["column"]),
        (&2.into(), &1.into())
    );
    assert_eq!(unknown["span"], serde_json::json!([10, 18]));
    assert_eq!(full.err.matches("error[").count(), problems.len());
}

#[test]
fn programs_get_json_whatever_happens() {
    let run = Run::new();
    let json = ["--message-format", "json"];
    let good = run
        .run(&[&["check", &project(GOOD)][..], &json].concat())
        .ends_with(0);
    assert_eq!(good.json()["problems"], serde_json::json!([]));
    let missing = run
        .run(&[&["report", "none.toml"][..], &json].concat())
        .refuses(&[]);
    let missing: serde_json::Value = serde_json::from_str(&missing.err).unwrap();
    assert_eq!(missing["problems"][0]["code"], serde_json::Value::Null);
    assert_eq!(
        missing["problems"][0]["message"],
        "there is no file `none.toml`"
    );
    let report = run
        .run(&[&["report", &project(GOOD)][..], &json].concat())
        .ends_with(0);
    assert_eq!(report.err, "", "notes are no JSON");
}

#[test]
fn quiet_leaves_errors_alone() {
    let run = Run::new();
    let quiet = run.run(&["report", &project(GOOD), "--quiet"]).ends_with(0);
    assert_eq!(quiet.err, "");
    assert!(quiet.out.starts_with("Forestry pickup"));
    run.run(&["report", "none.toml", "--quiet"])
        .refuses(&["there is no file"]);
}
