//! Files of the project that hold what the program writes: the demo reports and the front page.
//!
//! `BEDPLATE_RENEW=1 cargo test --test suite renew` writes them anew.

use std::fs;
use std::process::Command;

use bedplate::model::file;
use bedplate::report::content::cautions;
use bedplate::report::{figure, html};
use bedplate::study::evaluate::evaluate;

use crate::kit::assert_renewed;

const ROOT: &str = env!("CARGO_MANIFEST_DIR");

#[test]
fn the_report_of_every_demo_is_what_the_program_writes() {
    let mut wanted = vec!["forestry-pickup-layout.svg".to_owned()];
    for entry in fs::read_dir(format!("{ROOT}/models")).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_stem().unwrap().to_str().unwrap();
        let checked = file::read(&fs::read(&path).unwrap()).unwrap();
        let evaluation = evaluate(&checked.model).unwrap();
        assert_renewed(
            &format!("reports/{name}.html"),
            &html::document(&checked.model, &evaluation),
        );
        wanted.push(format!("{name}.html"));
        if name == "forestry-pickup" {
            let drawn = figure::layout(&checked.model, &evaluation).unwrap().svg;
            assert_renewed("reports/forestry-pickup-layout.svg", &on_paper(&drawn));
        }
    }
    wanted.sort();
    let mut found: Vec<String> = fs::read_dir(format!("{ROOT}/reports"))
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    found.sort();
    assert_eq!(found, wanted, "files in reports/");
}

/// A drawing that stands alone needs its own paper: the page around it may be dark.
fn on_paper(svg: &str) -> String {
    let end = svg.find('>').unwrap() + 1;
    format!(
        "{}<rect width=\"100%\" height=\"100%\" fill=\"#FFFFFF\"/>{}\n",
        &svg[..end],
        &svg[end..]
    )
}

/// Every `console` block is run: a line after `$` is a command, the lines up to the next are its standard output.
#[test]
fn every_command_of_the_front_page_prints_what_it_says() {
    let path = format!("{ROOT}/README.md");
    let page = fs::read_to_string(&path).unwrap();
    let place = tempfile::tempdir().unwrap();
    fs::create_dir(place.path().join("models")).unwrap();
    for entry in fs::read_dir(format!("{ROOT}/models")).unwrap() {
        let entry = entry.unwrap();
        fs::copy(
            entry.path(),
            place.path().join("models").join(entry.file_name()),
        )
        .unwrap();
    }
    let mut fresh = String::new();
    let mut in_console = false;
    let mut commands = 0;
    for line in page.split_inclusive('\n') {
        if line.starts_with("```") {
            in_console = line.trim_end() == "```console";
            fresh.push_str(line);
        } else if !in_console {
            fresh.push_str(line);
        } else if let Some(command) = line.strip_prefix("$ ") {
            fresh.push_str(line);
            fresh.push_str(&printed(command.trim_end(), place.path()));
            commands += 1;
        }
    }
    assert!(commands >= 2, "the front page shows {commands} commands");
    assert!(
        page.contains("```sh\ncargo test\n```"),
        "the test command stands alone"
    );
    assert_renewed("README.md", &fresh);
}

fn printed(command: &str, place: &std::path::Path) -> String {
    let arguments = command
        .strip_prefix("cargo run --release -- ")
        .unwrap_or_else(|| panic!("a command of another kind: {command}"));
    let output = Command::new(env!("CARGO_BIN_EXE_bedplate"))
        .args(arguments.split(' '))
        .current_dir(place)
        .output()
        .unwrap();
    assert_eq!(output.status.code(), Some(0), "{command}");
    String::from_utf8(output.stdout).unwrap()
}

#[test]
fn the_front_page_holds_every_caution() {
    let page = fs::read_to_string(format!("{ROOT}/README.md")).unwrap();
    let words = page.split_whitespace().collect::<Vec<_>>().join(" ");
    for caution in cautions::ALL {
        let text = format!("**{}.** {}", caution.about, caution.text);
        let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(words.contains(&text), "the front page lacks: {text}");
    }
}
