//! How much of every limit of a joint each load case uses.

use crate::model::Model;
use crate::report::content::names;
use crate::report::content::table::{Cell, Column, Group, Row, Table};
use crate::study::joint::JointResult;
use crate::study::joint::requirement::Requirement;
use crate::units::Shown;

/// One row a load case, one column a requirement that load cases decide; the governing one first. Without rows where none does.
#[must_use]
pub fn table(model: &Model, result: &JointResult) -> Table {
    let mut decided: Vec<&Requirement> = result
        .requirements
        .iter()
        .filter(|one| !one.each.is_empty())
        .collect();
    decided.sort_by(|a, b| b.utilisation().total_cmp(&a.utilisation()));
    let counts = |load: usize| decided.iter().any(|one| value_in(one, load).is_some());
    let loads = result.loads.iter().map(|loaded| loaded.load);
    let loads: Vec<usize> = loads.filter(|load| counts(*load)).collect();
    let has_gaps = decided.iter().any(|one| one.each.len() < loads.len());
    let rows = loads.into_iter().map(|load| Row {
        load: Some(names::load(model, load).to_owned()),
        ..Row::new(
            names::load(model, load),
            decided
                .iter()
                .map(|one| Cell::maybe(value_in(one, load).map(|value| one.share(value))))
                .collect(),
        )
    });
    Table {
        id: "joint_cases",
        about: "How much of its limit each load case uses, where load cases decide.".to_owned(),
        item: "load case",
        groups: vec![Group::plain(rows.collect())],
        columns: decided
            .iter()
            .map(|one| Column::number(one.id, one.brief, Shown::Percent))
            .collect(),
        note: has_gaps.then(|| {
            "Empty: a load case that happens once does not count there; what it harms is replaced after it.".to_owned()
        }),
    }
}

fn value_in(required: &Requirement, load: usize) -> Option<f64> {
    let mut each = required.each.iter();
    each.find(|(place, _)| *place == load)
        .map(|(_, value)| *value)
}
