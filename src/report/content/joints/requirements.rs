//! What is required of a joint, the governing requirement first.

use crate::model::Model;
use crate::report::content::names;
use crate::report::content::table::{Cell, Column, Group, Row, Table};
use crate::study::check::Verdict;
use crate::study::joint::JointResult;
use crate::study::joint::requirement::Requirement;
use crate::units::Shown;

/// Outcome of one requirement; a rule of good practice is `close` at worst.
#[must_use]
pub fn verdict(requirement: &Requirement) -> Verdict {
    match (requirement.holds(), requirement.advisory) {
        (true, _) => Verdict::Ok,
        (false, true) => Verdict::Close,
        (false, false) => Verdict::Fails,
    }
}

/// The worst outcome of a joint; not checked when nothing was required.
#[must_use]
pub fn of_joint(result: &JointResult) -> Verdict {
    let worst = result.requirements.iter().map(verdict).max();
    worst.unwrap_or(Verdict::NotChecked)
}

/// All requirements, the worst first: by outcome, then by what is used of the limit.
#[must_use]
pub fn ordered(result: &JointResult) -> Vec<&Requirement> {
    let mut all: Vec<&Requirement> = result.requirements.iter().collect();
    all.sort_by(|a, b| {
        verdict(b)
            .cmp(&verdict(a))
            .then(a.advisory.cmp(&b.advisory))
            .then(b.utilisation().total_cmp(&a.utilisation()))
    });
    all
}

/// The requirement that decides: of those that break something when missed, the one nearest to its limit or farthest past it.
///
/// The tightening of the bolt is left to others: without a stated torque it is at its limit on purpose.
#[must_use]
pub fn governing(result: &JointResult) -> Option<&Requirement> {
    let decides = |one: &&Requirement| !one.advisory && (one.id != "tightening" || !one.holds());
    let all = result.requirements.iter();
    all.filter(decides)
        .max_by(|a, b| a.utilisation().total_cmp(&b.utilisation()))
}

/// Load case in which a joint is nearest to its limit; that with the largest pull when no requirement has one.
#[must_use]
pub fn governing_load(result: &JointResult) -> Option<usize> {
    let all = result.requirements.iter();
    let loaded = all.filter(|one| one.load.is_some() && !one.advisory);
    loaded
        .max_by(|a, b| a.utilisation().total_cmp(&b.utilisation()))
        .and_then(|one| one.load)
        .or_else(|| pulled_most(result).map(|(load, _)| load))
}

/// Load case and pull \[N\] of the bolt that is pulled most over all load cases; `None` when none is pulled.
#[must_use]
pub fn pulled_most(result: &JointResult) -> Option<(usize, f64)> {
    let pulls = result
        .loads
        .iter()
        .map(|loaded| (loaded.load, loaded.most_pulled()));
    pulls
        .max_by(|a, b| a.1.total_cmp(&b.1))
        .filter(|(_, pull)| *pull > 0.0)
}

/// One row a requirement.
#[must_use]
pub fn table(model: &Model, result: &JointResult) -> Table {
    Table {
        id: "joint_requirements",
        about: "What is required of the joint over all load cases, the governing one first."
            .to_owned(),
        item: "requirement",
        columns: vec![
            Column::text("verdict", "verdict"),
            Column::words("load case"),
            Column::number("value", "value", Shown::Number),
            Column::text("sense", "limit is"),
            Column::number("limit", "limit", Shown::Number),
            Column::number("utilisation", "limit used", Shown::Percent),
            Column::text("basis", "where the limit comes from"),
        ],
        groups: vec![Group::plain(
            ordered(result)
                .into_iter()
                .map(|one| row(model, one))
                .collect(),
        )],
        note: Some(
            "Where the limit is advised, missing it breaks nothing by itself. No load case means: before any load."
                .to_owned(),
        ),
    }
}

fn row(model: &Model, one: &Requirement) -> Row {
    let load = one.load.map(|load| names::load(model, load).to_owned());
    let words = one.sense.words();
    let sense = if one.advisory {
        format!("advised {words}")
    } else {
        words.to_owned()
    };
    Row {
        item: one.title.clone(),
        cells: vec![
            Cell::Verdict(verdict(one)),
            load.clone().map_or(Cell::Empty, Cell::Text),
            Cell::Quantity(one.value, one.unit),
            Cell::Text(sense),
            Cell::Quantity(one.limit, one.unit),
            Cell::Number(one.utilisation()),
            Cell::Text(one.basis.clone()),
        ],
        load,
    }
}

/// What would mend each requirement that is missed.
#[must_use]
pub fn cures(result: &JointResult) -> Vec<String> {
    ordered(result)
        .into_iter()
        .filter(|one| !one.holds() && !one.cure.is_empty())
        .map(|one| format!("What would mend it ({}): {}.", one.title, one.cure))
        .collect()
}
