//! Section: all checks.

use crate::model::Model;
use crate::study::check::Check;
use crate::study::evaluate::Evaluation;
use crate::units::Shown;

use super::finding::{Finding, side};
use super::table::{Cell, Column, Group, Row, Table};
use super::{Block, Section, names};

/// The table of all checks.
#[must_use]
pub fn section(model: &Model, evaluation: &Evaluation) -> Section {
    let table = table(model, evaluation);
    let blocks = if table.is_empty() {
        vec![Block::paragraph("Nothing was checked.")]
    } else {
        vec![
            Block::paragraph(
                "ok: the limit holds with more to spare than the rubber scatters. close: the limit \
                 lies inside the scatter. over: what good practice advises is missed by more than \
                 the scatter, which breaks nothing. fails: the limit is passed. not checked: the file lacks something the check needs.",
            ),
            Block::Table(table),
        ]
    };
    Section {
        id: "checks",
        heading: "All checks",
        blocks,
    }
}

/// Every check in words, the worst first.
#[must_use]
pub fn all(model: &Model, evaluation: &Evaluation) -> Vec<Finding> {
    evaluation
        .checks
        .iter()
        .map(|check| Finding::of(check, model))
        .collect()
}

/// One row a check, the worst first.
#[must_use]
pub fn table(model: &Model, evaluation: &Evaluation) -> Table {
    Table {
        id: "checks",
        about: "Each check, the worst first, with the load case that governs it.".to_owned(),
        item: "check",
        columns: vec![
            Column::text("verdict", "verdict"),
            Column::words("load case"),
            Column::number("value", "value", Shown::Number),
            Column::text("sense", "limit is"),
            Column::number("limit", "limit", Shown::Number),
            Column::number("utilisation", "limit used", Shown::Percent),
            Column::text("basis", "where the limit comes from"),
            Column::text("note", "note"),
        ],
        groups: vec![Group::plain(
            evaluation
                .checks
                .iter()
                .map(|check| row(check, model))
                .collect(),
        )],
        note: None,
    }
}

fn row(check: &Check, model: &Model) -> Row {
    let load = check.load.map(|load| names::load(model, load).to_owned());
    let [value, limit] = Cell::compared(check.value, check.limit, check.unit);
    Row {
        item: check.title.clone(),
        cells: vec![
            Cell::Verdict(check.verdict),
            load.clone().map_or(Cell::Empty, Cell::Text),
            value,
            check.limit.map_or(Cell::Empty, |_| Cell::Text(side(check))),
            limit,
            Cell::maybe(check.utilisation),
            Cell::Text(check.basis.clone()),
            check.note.clone().map_or(Cell::Empty, Cell::Text),
        ],
        load,
    }
}
