//! `isolator`: one part by itself.

use std::fs;

use super::{FAILING, GOOD, Run, project};

/// Derived: 430 N/mm times 10.5 mm; at -14 mm the stop at -12 mm adds 4 kN/mm times (2 - 0.25) mm.
#[test]
fn an_isolator_is_written_in_each_form() {
    let run = Run::new();
    let model = project(GOOD);
    let with = |form: &str| {
        let arguments = ["isolator", &model, "wedge", "--format", form];
        let answer = run.run(&arguments).ends_with(0);
        assert_eq!(answer.err, "");
        answer
    };
    let text = with("text").out;
    assert_eq!(text, run.run(&["isolator", &model, "wedge"]).out);
    for words in [
        "wedge: isolator of kind rates\n",
        "used by: front left and front right\n",
        "static                 165     140     430\n",
        "w          -10.5   -4520     430  limit\n",
        "isolator.wedge.creep",
    ] {
        assert!(text.contains(words), "no `{words}` in {text}");
    }
    assert!(text.lines().all(|line| line.chars().count() <= 80));
    let json = with("json").json();
    assert_eq!(json["format"], 1);
    assert_eq!(json["name"], "wedge");
    let deepest = &json["curve"]["w"][0];
    assert!((deepest["deflection_m"].as_f64().unwrap() + 14e-3).abs() < 1e-12);
    assert!((deepest["force_n"].as_f64().unwrap() + 13_020.0).abs() < 1e-6);
    let csv = with("csv").out;
    let mut rows = csv::Reader::from_reader(csv.as_bytes());
    assert_eq!(rows.headers().unwrap().get(0), Some("axis"));
    let forces = rows.records().map(Result::unwrap);
    assert_eq!(forces.filter(|row| &row[7] == "free").count(), 3);
}

/// A failing build is no matter of a part by itself.
#[test]
fn the_verdicts_of_the_build_play_no_part() {
    let run = Run::new();
    let answer = run.run(&["isolator", &project(FAILING), "buffer", "-o", "part.txt"]);
    let answer = answer.ends_with(0);
    assert_eq!(
        (answer.out.as_str(), answer.err.as_str()),
        ("", "results: part.txt\n")
    );
    let text = fs::read_to_string(run.path("part.txt")).unwrap();
    assert!(
        text.starts_with("buffer: isolator of kind curve\n"),
        "{text}"
    );
}

#[test]
fn an_unknown_name_gets_a_near_one_and_the_list() {
    let run = Run::new();
    let model = project(GOOD);
    let near = run
        .run(&["isolator", &model, "wegde", "-o", "part.txt"])
        .refuses(&[
            "error: there is no isolator `wegde` in ",
            "did you mean `wedge`?",
            "the file has `wedge`, `saddle`",
        ]);
    assert_eq!(near.err.matches("error").count(), 1);
    let far = run
        .run(&["isolator", &model, "nothing like it"])
        .refuses(&["the file has"]);
    assert!(!far.err.contains("did you mean"), "{}", far.err);
    assert!(run.files().is_empty());
    run.run(&["isolator", &model]).refuses(&["NAME"]);
}

/// Warnings of the file go where they go for every command.
#[test]
fn an_isolator_without_a_mount_is_shown_with_the_warning() {
    let run = Run::new();
    let text = fs::read_to_string(project(GOOD)).unwrap();
    let spare = "\n[isolator.spare]\nkind = \"rates\"\nrates = \"0, 0, 10 N/mm\"\n";
    run.write("a.toml", text + spare);
    let answer = run.run(&["isolator", "a.toml", "spare"]).ends_with(0);
    assert!(answer.err.contains("warning[M102]"), "{}", answer.err);
    for words in ["used by: no mount", "nothing tells how far it may go"] {
        let flat = answer.out.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(flat.contains(words), "no `{words}` in {}", answer.out);
    }
    // Derived: three times 2942 N at 10 N/mm is far beyond 20 mm, which ends it.
    assert!(
        answer.out.contains("w          -20.0   -200    10.0  -\n"),
        "{}",
        answer.out
    );
    assert!(!answer.out.contains("Along u"));
    // Of no matter to someone who asks for another one.
    let answer = run.run(&["isolator", "a.toml", "wedge"]).ends_with(0);
    assert_eq!(answer.err, "");
}
