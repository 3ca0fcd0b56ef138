//! Files: what cannot be read or written is said before the work, and nothing is left half done.

use std::fs;

use super::{Answer, GOOD, Run, project};

#[test]
fn a_missing_model_gets_a_near_name_or_a_way_to_start() {
    let run = Run::new();
    run.write("pickup.toml", "");
    run.run(&["check", "pikcup.toml"]).refuses(&[
        "there is no file `pikcup.toml`",
        "did you mean `pickup.toml`?",
    ]);
    run.run(&["check", "van.toml"])
        .refuses(&["`bedplate new van.toml` writes one to start from"]);
    run.run(&["check", "no/such/van.toml"])
        .refuses(&["there is no file"]);
}

#[test]
fn a_directory_is_no_model() {
    let run = Run::new();
    run.run(&["report", "."])
        .refuses(&["error: `.` is a directory"]);
    assert_eq!(run.files().len(), 0);
}

#[cfg(unix)]
#[test]
fn a_model_that_may_not_be_read_is_said_so() {
    use std::os::unix::fs::PermissionsExt;
    let run = Run::new();
    run.write("a.toml", "");
    fs::set_permissions(run.path("a.toml"), fs::Permissions::from_mode(0o000)).unwrap();
    // The superuser may read everything, so to them it is an empty model.
    let words = match fs::File::open(run.path("a.toml")) {
        Err(_) => "`a.toml` may not be read",
        Ok(_) => "M005",
    };
    run.run(&["solve", "a.toml"]).refuses(&[words]);
}

#[test]
fn a_new_model_replaces_nothing_by_accident() {
    let run = Run::new();
    run.write("a.toml", "mine");
    run.run(&["new", "a.toml"])
        .refuses(&["`a.toml` is there already", "--force"]);
    assert_eq!(fs::read(run.path("a.toml")).unwrap(), b"mine");
    run.run(&["new", "a.toml", "--force"]).ends_with(0);
    assert!(
        fs::read_to_string(run.path("a.toml"))
            .unwrap()
            .contains("[[mount]]")
    );
    assert_eq!(run.files(), ["a.toml"]);
    run.run(&["new", ".", "--force"])
        .refuses(&["is a directory"]);
}

#[test]
fn output_that_cannot_be_written_is_known_before_the_work() {
    let run = Run::new();
    for command in ["solve", "report"] {
        run.run(&[command, &project(GOOD), "-o", "none/r.html"])
            .refuses(&["the directory of `none/r.html` does not exist"]);
        run.run(&[command, &project(GOOD), "-o", "."]).refuses(&[
            "`.` is a directory",
            "give the output a file name inside it",
        ]);
        run.run(&[command, &project(GOOD), "-o", ""])
            .refuses(&["error"]);
    }
    run.run(&["new", "none/a.toml"])
        .refuses(&["the directory of"]);
    assert_eq!(run.files().len(), 0);
}

#[test]
fn the_model_is_never_replaced_by_its_results() {
    let run = Run::new();
    let text = fs::read(project(GOOD)).unwrap();
    run.write("a.toml", &text);
    for output in ["a.toml", "./a.toml", "../x/../a.toml"] {
        let inside = format!("{}/a.toml", run.directory.path().display());
        let output = if output.starts_with("..") {
            inside.as_str()
        } else {
            output
        };
        run.run(&["solve", "a.toml", "-o", output])
            .refuses(&["would replace the model"]);
    }
    assert_eq!(fs::read(run.path("a.toml")).unwrap(), text);
}

#[cfg(target_os = "linux")]
#[test]
fn a_model_behind_standard_input_is_not_replaced_either() {
    let run = Run::new();
    let text = fs::read(project(GOOD)).unwrap();
    run.write("a.toml", &text);
    let output = std::process::Command::new(env!("CARGO_BIN_EXE_bedplate"))
        .args(["solve", "-", "-o", "a.toml"])
        .current_dir(run.directory.path())
        .stdin(fs::File::open(run.path("a.toml")).unwrap())
        .output()
        .unwrap();
    Answer::of(output).refuses(&["would replace the model"]);
    assert_eq!(fs::read(run.path("a.toml")).unwrap(), text);
}

#[test]
fn nothing_is_written_when_there_is_nothing_to_tell() {
    let run = Run::new();
    let unheld = "title = \"x\"\n[datum]\norigin = \"o\"\nfitted = \"free\"\n\
        [[part]]\nname = \"p\"\nmass = \"10 kg\"\nat = \"0, 0, 0 mm\"\nbox = \"100, 100, 100 mm\"\n\
        [isolator.i]\nkind = \"rates\"\nrates = \"1, 1, 1 N/mm\"\n\
        [[mount]]\nname = \"m\"\nat = \"0, 0, 0 mm\"\nisolator = \"i\"\n";
    run.write("unheld.toml", unheld);
    run.write("broken.toml", "title = ");
    run.write("old.html", "old");
    let far_too_soft = unheld
        .replace("1, 1, 1 N/mm", "1, 1, 1 N/m")
        .replace("10 kg", "9000 kg")
        + "[[mount]]\nname = \"n\"\nat = \"90, 80, 9 mm\"\nisolator = \"i\"\n\
           [[mount]]\nname = \"o\"\nat = \"-70, 60, -10 mm\"\nisolator = \"i\"\n";
    run.write("soft.toml", far_too_soft);
    run.run(&["solve", "soft.toml"]).refuses(&[
        "error[S002]: the powertrain found no position",
        "slip of unit",
    ]);
    let top_heavy = crate::kit::four_mounts_and("")
        .replace("200, 200, 400 N/mm", "4 N/mm")
        .replace("-50 mm", "-3000 mm");
    run.write("top-heavy.toml", top_heavy);
    run.run(&["solve", "top-heavy.toml"])
        .refuses(&["error[S003]: the powertrain tips over"]);
    for command in ["solve", "report"] {
        run.run(&[command, "unheld.toml", "-o", "old.html"])
            .refuses(&[
                "error[S001]: nothing holds the powertrain against ",
                "bedplate explain S001",
            ]);
        run.run(&[command, "unheld.toml", "-o", "new.html"])
            .refuses(&["S001"]);
        run.run(&[command, "broken.toml", "-o", "old.html"])
            .refuses(&["error[M003]"]);
    }
    run.run(&["report", "unheld.toml"]).refuses(&["S001"]);
    assert_eq!(fs::read(run.path("old.html")).unwrap(), b"old");
    assert_eq!(
        run.files(),
        [
            "broken.toml",
            "old.html",
            "soft.toml",
            "top-heavy.toml",
            "unheld.toml"
        ]
    );
}

#[test]
fn results_in_a_file_are_those_of_standard_output() {
    let run = Run::new();
    let model = project(GOOD);
    for form in ["text", "json", "csv", "html"] {
        let shown = run.run(&["solve", &model, "--format", form]).ends_with(0);
        let filed = run
            .run(&["solve", &model, "--format", form, "-o", "out"])
            .ends_with(0);
        assert_eq!(
            (filed.out.as_str(), filed.err.as_str()),
            ("", "results: out\n")
        );
        assert_eq!(
            fs::read_to_string(run.path("out")).unwrap(),
            shown.out,
            "{form}"
        );
    }
    assert_eq!(run.files(), ["out"]);
}

#[cfg(unix)]
#[test]
fn written_files_have_the_usual_permissions() {
    use std::os::unix::fs::PermissionsExt;
    let run = Run::new();
    let mode = |name: &str| fs::metadata(run.path(name)).unwrap().permissions().mode() & 0o777;
    run.write("by-hand", "");
    run.run(&["new", "a.toml"]).ends_with(0);
    assert_eq!(mode("a.toml"), mode("by-hand"));
    fs::set_permissions(run.path("a.toml"), fs::Permissions::from_mode(0o640)).unwrap();
    run.run(&["new", "a.toml", "--force"]).ends_with(0);
    assert_eq!(mode("a.toml"), 0o640, "a replaced file keeps its own");
    fs::set_permissions(run.path("a.toml"), fs::Permissions::from_mode(0o440)).unwrap();
    run.run(&["new", "a.toml", "--force"])
        .refuses(&["`a.toml` is write-protected"]);
}

#[cfg(unix)]
#[test]
fn links_and_devices_stay_what_they_are() {
    use std::os::unix::fs::FileTypeExt;
    let run = Run::new();
    run.write("real.html", "old");
    std::os::unix::fs::symlink("real.html", run.path("link.html")).unwrap();
    run.run(&["report", &project(GOOD), "-o", "link.html"])
        .ends_with(0);
    assert!(
        fs::symlink_metadata(run.path("link.html"))
            .unwrap()
            .is_symlink()
    );
    assert!(
        fs::read_to_string(run.path("real.html"))
            .unwrap()
            .starts_with("<!DOCTYPE html>")
    );
    run.run(&["new", "/dev/null"])
        .refuses(&["is there already"]);
    run.run(&["report", &project(GOOD), "-o", "/dev/null"])
        .ends_with(0);
    assert!(
        fs::metadata("/dev/null")
            .unwrap()
            .file_type()
            .is_char_device()
    );
}
