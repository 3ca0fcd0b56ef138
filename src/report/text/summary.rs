//! The summary: one screen of what a fabricator can act on.

use crate::model::{Fitted, Model};
use crate::report::content::finding::Finding;
use crate::report::content::table::Table;
use crate::report::content::{
    cautions, deflections, frequencies, names, overview, quantity, verdicts,
};
use crate::spatial::STANDARD_GRAVITY;
use crate::study::check::{Check, Subject, Verdict};
use crate::study::evaluate::Evaluation;
use crate::units::Shown;

use super::layout::{indented, wrap};
use super::{Style, WIDTH, finding_lines, found_lines, joined, table};

/// About as many lines as a terminal shows at once.
const LINES: usize = 40;

/// At least so many lines for what fails, however much else there is to say.
const LEAST_FOR_FINDINGS: usize = 8;

/// So many checks that are not checked are named.
const MOST_OPEN: usize = 2;

/// Verdicts with their cures, mass, sag, highest reactions, frequencies and idle firing; ends with a line end.
///
/// About 40 lines: what fails and does not fit loses its limit and cure, what
/// is over advice or close and does not fit is counted. A build with many mounts or many
/// checks that fail gets a line for each.
#[must_use]
pub fn summary(model: &Model, evaluation: &Evaluation, style: Style) -> String {
    let mut top = wrap(&model.title, WIDTH);
    top.extend(wrap(&verdicts::headline(evaluation), WIDTH));
    top.extend(no_position(model, evaluation));
    let bottom = bottom(model, evaluation, style);
    let room = LINES
        .saturating_sub(top.len() + bottom.len() + 2)
        .max(LEAST_FOR_FINDINGS);
    let findings = findings(model, evaluation, style, room);
    if !findings.is_empty() {
        top.push(String::new());
        top.extend(findings);
    }
    top.extend(bottom);
    joined(&top)
}

fn findings(model: &Model, evaluation: &Evaluation, style: Style, room: usize) -> Vec<String> {
    let (fails, others): (Vec<Finding>, Vec<Finding>) = verdicts::wanting(model, evaluation)
        .into_iter()
        .partition(|finding| finding.verdict == Verdict::Fails);
    let mut lines = Vec::new();
    for (place, finding) in fails.iter().enumerate() {
        let whole = finding_lines(finding, style);
        let follow = fails.len() - place - 1;
        if lines.is_empty() || lines.len() + whole.len() + follow <= room {
            lines.extend(whole);
        } else {
            lines.extend(found_lines(finding, style));
        }
    }
    let mut shown = 0;
    for finding in &others {
        let next = finding_lines(finding, style);
        if !lines.is_empty() && lines.len() + next.len() > room {
            break;
        }
        lines.extend(next);
        shown += 1;
    }
    let left = others.get(shown..).unwrap_or_default();
    let more: Vec<String> = [Verdict::Over, Verdict::Close]
        .into_iter()
        .map(|verdict| {
            let alike = left.iter().filter(|finding| finding.verdict == verdict);
            (verdict, alike.count())
        })
        .filter(|(_, count)| *count > 0)
        .map(|(verdict, count)| format!("{count} more {}", verdicts::counted(verdict, count)))
        .collect();
    if !more.is_empty() {
        lines.push(format!("and {}: see the report", more.join(", ")));
    }
    lines.extend(not_checked(evaluation));
    lines
}

/// What could not be judged, with what it lacks.
fn not_checked(evaluation: &Evaluation) -> Vec<String> {
    let open: Vec<&Check> = evaluation
        .checks
        .iter()
        .filter(|check| check.verdict == Verdict::NotChecked)
        .collect();
    let mut lines = Vec::new();
    for check in open.iter().take(MOST_OPEN) {
        let lacks = check.note.as_deref().unwrap_or(&check.basis);
        lines.extend(indented(
            "not checked  ",
            2,
            &format!("{}: {lacks}", check.title),
            WIDTH,
        ));
    }
    if open.len() > MOST_OPEN {
        lines.push(format!("and {} more not checked", open.len() - MOST_OPEN));
    }
    lines
}

fn no_position(model: &Model, evaluation: &Evaluation) -> Vec<String> {
    let failed: Vec<(&str, String)> = evaluation
        .loads
        .iter()
        .filter_map(|result| {
            let failure = result.outcome.as_ref().err()?;
            Some((names::load(model, result.load), failure.to_string()))
        })
        .collect();
    let Some((name, reason)) = failed.first() else {
        return Vec::new();
    };
    let mut text = format!("No loaded position for {name}: {reason}.");
    match failed.len() - 1 {
        0 => {}
        1 => text.push_str(" One more load case has none either."),
        more => text.push_str(&format!(" {more} more load cases have none either.")),
    }
    wrap(&text, WIDTH)
}

fn bottom(model: &Model, evaluation: &Evaluation, style: Style) -> Vec<String> {
    let mut lines = vec![String::new()];
    let mass = model.mass.mass();
    lines.extend(sentence(&format!(
        "Mass {} ({}), centre of gravity {}",
        quantity::with_unit(mass, Shown::Kilogram),
        quantity::with_unit(mass * STANDARD_GRAVITY, Shown::Newton),
        quantity::place(&model.mass.centre())
    )));
    if let Some(sag) = deflections::motion_at_rest(model, evaluation).first() {
        lines.extend(sentence(&match model.fitted {
            Fitted::Free => format!("At rest the centre of gravity {}", sag.value),
            Fitted::Settled => sag.value.clone(),
        }));
    }
    let overview = overview::mounts(model, evaluation);
    if !overview.is_empty() {
        lines.push(String::new());
        lines.extend(bare(&overview, style));
    }
    lines.push(String::new());
    if let Some(text) = tightest_gap(model, evaluation) {
        lines.extend(sentence(&text));
    }
    if let Some(text) = natural_frequencies(model, evaluation) {
        lines.extend(sentence(&text));
    }
    lines.extend(sentence(&frequencies::firing(model, evaluation)));
    lines.extend(sentence(cautions::IN_ONE_LINE));
    lines
}

fn sentence(text: &str) -> Vec<String> {
    indented("", 2, text, WIDTH)
}

/// The table without what is said about it.
fn bare(overview: &Table, style: Style) -> Vec<String> {
    let bare = Table {
        about: String::new(),
        note: None,
        ..overview.clone()
    };
    let lines = table::lines(&bare, style);
    lines.into_iter().skip_while(String::is_empty).collect()
}

/// The clearance with the least to spare.
fn tightest_gap(model: &Model, evaluation: &Evaluation) -> Option<String> {
    let gaps = evaluation.checks.iter().filter_map(|check| {
        let of_clearance = matches!(check.subject, Some(Subject::Clearance(_)));
        Some((check, check.margin().filter(|_| of_clearance)?))
    });
    let (check, _) = gaps.min_by(|a, b| a.1.total_cmp(&b.1))?;
    Some(format!(
        "Tightest: {}, {} left in {}, {} to be kept",
        check.title,
        quantity::with_unit(check.value?, Shown::Millimetre),
        names::load(model, check.load?),
        quantity::with_unit(check.limit?, Shown::Millimetre),
    ))
}

fn natural_frequencies(model: &Model, evaluation: &Evaluation) -> Option<String> {
    let at = evaluation.modes.first()?;
    let said: Vec<String> = at
        .solution
        .modes
        .iter()
        .map(|mode| match mode.growth_rate {
            Some(_) => frequencies::mode_name(mode),
            None => format!(
                "{} {}",
                quantity::with_unit(mode.frequency_hz, Shown::Hertz),
                mode.name
            ),
        })
        .collect();
    Some(format!(
        "Natural frequencies ({}): {}",
        names::load(model, at.load),
        said.join(", ")
    ))
}
