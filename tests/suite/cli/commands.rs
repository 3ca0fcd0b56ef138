//! Each command does what its help says.

use std::fs;

use bedplate::diagnostic::Code;
use bedplate::model::file;
use bedplate::study::check::Verdict;
use bedplate::study::evaluate::evaluate;
use bedplate::units::{self, Quantity};

use super::{FAILING, GOOD, Run, project};

#[test]
fn check_says_what_it_read() {
    let answer = Run::new().run(&["check", &project(GOOD)]).ends_with(0);
    assert!(answer.out.starts_with("no problems in "), "{}", answer.out);
    assert!(
        answer.out.contains("2 parts, 2 isolators, 3 mounts, "),
        "{}",
        answer.out
    );
    assert_eq!(answer.out.lines().count(), 1);
    assert_eq!(answer.err, "");
}

#[test]
fn check_lists_problems_on_standard_output() {
    let run = Run::new();
    let text = fs::read_to_string(project(GOOD)).unwrap();
    run.write(
        "a.toml",
        text.replacen("kind = \"rates\"", "kind = \"rats\"", 1),
    );
    let answer = run.run(&["check", "a.toml"]).ends_with(2);
    for part in [
        "error[M014]: unknown kind of isolator `wedge`: `rats`",
        " --> a.toml:66:8",
        "did you mean `rates`?",
        "in a.toml; `bedplate explain M014` tells more",
    ] {
        assert!(answer.out.contains(part), "no `{part}` in {}", answer.out);
    }
    assert_eq!(answer.err, "");
}

#[test]
fn a_warning_alone_is_no_reason_to_stop() {
    let run = Run::new();
    let text = fs::read_to_string(project(GOOD)).unwrap();
    let unused = "\n[isolator.spare]\nkind = \"rates\"\nrates = \"1, 1, 1 N/mm\"\n";
    run.write("a.toml", text + unused);
    let checked = run.run(&["check", "a.toml"]).ends_with(0);
    assert!(
        checked
            .out
            .contains("warning[M102]: no mount uses the isolator `spare`")
    );
    assert!(!checked.out.contains("no problems"));
    let solved = run.run(&["solve", "a.toml"]).ends_with(0);
    assert!(solved.err.contains("warning[M102]"), "{}", solved.err);
    assert!(!solved.out.contains("M102"));
    let quiet = run.run(&["solve", "a.toml", "--quiet"]).ends_with(0);
    assert_eq!(quiet.err, "");
    assert_eq!(run.run(&["check", "a.toml", "-q"]).ends_with(0).out, "");
}

#[test]
fn report_writes_the_page_and_a_summary() {
    let run = Run::new();
    let answer = run.run(&["report", &project(GOOD)]).ends_with(0);
    assert!(
        answer.out.starts_with("Forestry pickup\n"),
        "{}",
        answer.out
    );
    assert_eq!(answer.err, "report: forestry-pickup-report.html\n");
    assert_eq!(run.files(), ["forestry-pickup-report.html"]);
    let page = fs::read_to_string(run.path("forestry-pickup-report.html")).unwrap();
    assert!(page.starts_with("<!DOCTYPE html>") && page.trim_end().ends_with("</html>"));
}

#[test]
fn report_to_standard_output_is_the_page_alone() {
    let run = Run::new();
    let answer = run.run(&["report", &project(GOOD), "-o", "-"]).ends_with(0);
    assert!(answer.out.starts_with("<!DOCTYPE html>"));
    assert!(answer.out.trim_end().ends_with("</html>"));
    assert_eq!((answer.err.as_str(), run.files().len()), ("", 0));
}

#[test]
fn a_failed_check_ends_with_1_unless_forgiven() {
    let run = Run::new();
    let model = project(FAILING);
    let report = run.run(&["report", &model, "-o", "r.html"]).ends_with(1);
    assert!(report.out.contains("FAILS"), "{}", report.out);
    assert!(run.path("r.html").exists());
    run.run(&["solve", &model]).ends_with(1);
    run.run(&["solve", &model, "--exit-zero"]).ends_with(0);
    run.run(&["report", &model, "-o", "r.html", "--exit-zero"])
        .ends_with(0);
    run.run(&["check", &model]).ends_with(0);
}

#[test]
fn solve_writes_each_form() {
    let run = Run::new();
    let model = project(GOOD);
    let text = run.run(&["solve", &model]).ends_with(0);
    assert!(text.out.contains("All checks\n"), "{}", text.out);
    let json = run
        .run(&["solve", &model, "--format", "json"])
        .ends_with(0)
        .json();
    assert_eq!(json["format"], 1);
    assert_eq!(json["title"], "Forestry pickup");
    assert!((json["mass"]["total_kg"].as_f64().unwrap() - 300.0).abs() < 1e-9);
    let csv = run
        .run(&["solve", &model, "--format", "csv"])
        .ends_with(0)
        .out;
    let mut rows = csv::Reader::from_reader(csv.as_bytes());
    assert_eq!(rows.headers().unwrap().len(), 6);
    assert!(rows.records().map(Result::unwrap).count() > 100);
    let html = run
        .run(&["solve", &model, "--format", "html"])
        .ends_with(0)
        .out;
    assert!(html.starts_with("<!DOCTYPE html>"));
}

#[test]
fn solve_only_leaves_out_the_rest() {
    let run = Run::new();
    let model = project(GOOD);
    let only = |what: &str| run.run(&["solve", &model, "--only", what]).ends_with(0).out;
    let whole = run.run(&["solve", &model]).ends_with(0).out;
    let (checks, mass) = (only("checks"), only("mass"));
    assert!(checks.contains("All checks") && !mass.contains("All checks"));
    assert_ne!(checks, mass);
    assert!(only("checks,mass").len() > checks.len().max(mass.len()));
    assert_eq!(only("statics,modes,checks,mass,isolators,joints"), whole);
    assert!(only("isolators").contains("saddle    block"));
    run.run(&["solve", &model, "--only", "mass", "--format", "json"])
        .refuses(&["`--only`", "text"]);
    run.run(&["solve", &model, "--only", "weight"])
        .refuses(&["weight", "mass"]);
}

#[test]
fn results_are_the_same_every_run() {
    let run = Run::new();
    for form in ["text", "json", "csv", "html"] {
        let once = || run.run(&["solve", &project(FAILING), "--format", form]).out;
        assert_eq!(once(), once(), "{form}");
    }
}

/// The starter is what a newcomer judges the program by.
#[test]
fn the_starter_is_a_believable_build() {
    let run = Run::new();
    let answer = run.run(&["new", "pickup.toml"]).ends_with(0);
    assert_eq!(answer.out, "");
    assert!(
        answer.err.contains("bedplate report pickup.toml"),
        "{}",
        answer.err
    );
    let bytes = fs::read(run.path("pickup.toml")).unwrap();
    let checked = file::read(&bytes).unwrap();
    assert_eq!(checked.warnings, []);
    let model = checked.model;
    assert_eq!((model.parts.len(), model.mounts.len()), (2, 3));
    let evaluation = evaluate(&model).unwrap();
    for check in &evaluation.checks {
        assert_eq!(check.verdict, Verdict::Ok, "{check:?}");
    }
    assert!(evaluation.loads.iter().all(|load| load.outcome.is_ok()));
    let rest = evaluation.loads[0].outcome.as_ref().unwrap();
    // Common practice: some millimetres of sag, rigid-body modes between 5 and 25 Hz.
    let sag = -rest.displacement_of(model.mass.centre()).z;
    assert!((1e-3..8e-3).contains(&sag), "{sag}");
    for mode in &evaluation.modes[0].solution.modes {
        assert!(
            (5.0..25.0).contains(&mode.frequency_hz),
            "{}",
            mode.frequency_hz
        );
    }
    run.run(&["report", "pickup.toml"]).ends_with(0);
}

#[test]
fn every_line_of_the_starter_with_a_value_is_explained() {
    let starter = Run::new().run(&["new", "-"]).ends_with(0).out;
    assert!(starter.lines().all(|line| line.chars().count() <= 120));
    // A key is explained where it first stands.
    let mut seen = Vec::new();
    for line in starter.lines().filter(|line| !line.starts_with('#')) {
        let Some((key, rest)) = line.split_once(" = ") else {
            continue;
        };
        let plain = [
            "title",
            "name",
            "mass",
            "wheelbase",
            "tyre_radius",
            "cylinders",
            "idle",
            "redline",
            "final_drive",
            "gears",
            "point",
            "isolator",
            "apply",
        ];
        assert!(
            rest.contains('#') || seen.contains(&key) || plain.contains(&key),
            "nothing said about: {line}"
        );
        seen.push(key);
    }
    assert!(seen.len() > 40);
}

/// What stands there to be uncommented is taken as it is, one of every kind but those in use.
#[test]
fn the_other_kinds_of_the_starter_are_read_as_they_stand() {
    let starter = Run::new().run(&["new", "-"]).ends_with(0).out;
    let (_, after) = starter.split_once("# Other kinds").unwrap();
    let (examples, _) = after.split_once("\n\n").unwrap();
    let examples: Vec<&str> = examples
        .lines()
        .skip(1)
        .map(|line| line.trim_start_matches("# ").trim_start_matches('#'))
        .collect();
    for line in &examples {
        let explained = line.is_empty()
            || line.starts_with('[')
            || line.starts_with("name")
            || line.starts_with("isolator =")
            || line.contains(" # ");
        assert!(explained, "nothing said about: {line}");
    }
    let whole = format!("{starter}\n{}\n", examples.join("\n"));
    let checked = file::read(whole.as_bytes()).unwrap();
    // Only that no mount uses them, but for the rod.
    let told: Vec<&str> = checked.warnings.iter().map(|told| told.code.id()).collect();
    assert_eq!(told, ["M102"; 5], "{:?}", checked.warnings);
    let kinds: Vec<&str> = checked.model.isolators.iter().map(|one| one.kind).collect();
    for kind in ["block", "bush", "polyurethane", "curve", "hydraulic", "rod"] {
        assert!(kinds.contains(&kind), "{kind}: {kinds:?}");
    }
}

#[test]
fn explain_knows_every_code() {
    let run = Run::new();
    let list = run.run(&["explain"]).ends_with(0).out;
    assert_eq!(list.lines().count(), Code::ALL.len());
    for code in Code::ALL {
        let answer = run
            .run(&["explain", &code.id().to_lowercase()])
            .ends_with(0);
        let head = format!("{}: {}\n\n", code.id(), code.title());
        let body = answer.out.strip_prefix(&head).unwrap();
        assert!(body.trim().len() > 40, "{}", answer.out);
        assert!(body.lines().all(|line| line == line.trim()));
        assert!(list.contains(&format!("{}  {}\n", code.id(), code.title())));
    }
}

#[test]
fn explain_helps_with_an_unknown_code() {
    Run::new()
        .run(&["explain", "M14"])
        .refuses(&["unknown code `M14`", "did you mean `M014`?"]);
    Run::new()
        .run(&["explain", "banana"])
        .refuses(&["`bedplate explain` lists all codes"]);
}

#[test]
fn units_lists_what_the_reader_accepts() {
    let run = Run::new();
    let text = run.run(&["units"]).ends_with(0).out;
    let json = run.run(&["units", "--format", "json"]).ends_with(0).json();
    let csv = run.run(&["units", "--format", "csv"]).ends_with(0).out;
    let mut rows = csv::Reader::from_reader(csv.as_bytes());
    let rows: Vec<_> = rows.records().map(Result::unwrap).collect();
    assert_eq!(
        json["quantities"].as_array().unwrap().len(),
        Quantity::ALL.len()
    );
    for quantity in Quantity::ALL {
        assert!(text.contains(&format!("{}, such as", quantity.name())));
        for spelling in quantity.units().flat_map(|unit| unit.spellings) {
            let row = rows
                .iter()
                .find(|row| &row[0] == quantity.name() && &row[1] == *spelling)
                .unwrap_or_else(|| panic!("no line for {spelling}"));
            // What the list states is what the reader does.
            let (factor, zero): (f64, f64) = (row[2].parse().unwrap(), row[3].parse().unwrap());
            let read = units::parse(&format!("50 {spelling}"), quantity).unwrap();
            let stated = (50.0 - zero) * factor;
            assert!(
                (read - stated).abs() <= 1e-12 * stated.abs(),
                "{spelling}: {read} {stated}"
            );
        }
    }
}

#[test]
fn completions_and_manual_come_from_the_arguments() {
    let run = Run::new();
    for shell in ["bash", "elvish", "fish", "powershell", "zsh"] {
        let script = run.run(&["completions", shell]).ends_with(0).out;
        for word in ["explain", "exit-zero", "message-format"] {
            assert!(script.contains(word), "{shell} lacks {word}");
        }
    }
    let whole = run.run(&["man"]).ends_with(0).out;
    assert!(
        whole.contains(".TH bedplate 1") && whole.contains("Exit codes"),
        "{whole}"
    );
    let one = run.run(&["man", "solve"]).ends_with(0).out;
    assert!(one.contains("exit\\-zero"), "{one}");
    run.run(&["man", "slove"])
        .refuses(&["unknown command `slove`", "did you mean `solve`?"]);
}

#[test]
fn help_states_examples_and_exit_codes() {
    let run = Run::new();
    for command in [
        "new",
        "check",
        "report",
        "solve",
        "isolator",
        "explain",
        "units",
        "completions",
        "man",
    ] {
        let long = run.run(&[command, "--help"]).ends_with(0);
        assert!(
            long.out.matches(&format!("  bedplate {command}")).count() >= 2,
            "{}",
            long.out
        );
        assert_eq!(long.err, "");
        let short = run.run(&[command, "-h"]).ends_with(0).out;
        assert!(!short.contains("Examples:"), "{short}");
        assert!(long.out.len() > short.len());
        assert_eq!(
            long.out.contains("Exit codes:"),
            ["report", "solve"].contains(&command)
        );
    }
    let whole = run.run(&["--help"]).ends_with(0).out;
    assert!(whole.contains("Exit codes:"));
    assert!(
        whole.lines().all(|line| line.chars().count() <= 100),
        "{whole}"
    );
    let version = run.run(&["--version"]).ends_with(0).out;
    assert_eq!(version, format!("bedplate {}\n", env!("CARGO_PKG_VERSION")));
    run.run(&[]).refuses(&["Usage: bedplate"]);
    run.run(&["reprot", "x.toml"])
        .refuses(&["reprot", "report"]);
}
