//! `report`: judges a build; a summary on standard output, everything in a page.

use std::path::{Path, PathBuf};

use super::arguments::Report;
use super::build::Build;
use super::console::Console;
use super::exit::Exit;
use super::failure::Failure;
use super::files::is_stream;
use super::files::target::{Existing, Target};
use super::output;

pub(crate) fn run(console: &Console, asked: &Report) -> Result<Exit, Failure> {
    let build = Build::read(&asked.input.file)?;
    let path = asked
        .output
        .clone()
        .unwrap_or_else(|| default_path(&asked.input.file));
    let target = Target::open(&path, build.input.path.as_deref(), Existing::Replace)?;
    let evaluation = build.evaluate(console)?;
    let page = output::page(&build.model, &evaluation);
    // The page first: it must not be lost when the reader of the summary goes away.
    let is_file = target.fill(console, page.as_bytes())?;
    if !is_stream(&path) {
        console.print(&output::summary(
            &build.model,
            &evaluation,
            console.has_colour_out(),
        ))?;
    }
    if is_file {
        console.note(&format!("report: {}", path.display()));
    }
    Ok(Exit::of_checks(&evaluation.checks, asked.verdict.exit_zero))
}

/// `NAME-report.html` in the current directory.
fn default_path(model: &Path) -> PathBuf {
    let stem = match model.file_stem() {
        Some(stem) if !is_stream(model) => stem,
        _ => "model".as_ref(),
    };
    let mut name = stem.to_owned();
    name.push("-report.html");
    name.into()
}

#[cfg(test)]
mod tests {
    use super::{Path, default_path};

    #[test]
    fn the_report_is_named_after_the_model() {
        let named = |path: &str| default_path(Path::new(path));
        assert_eq!(
            named("models/forestry-pickup.toml"),
            Path::new("forestry-pickup-report.html")
        );
        assert_eq!(named("noending"), Path::new("noending-report.html"));
        assert_eq!(named("-"), Path::new("model-report.html"));
    }
}
