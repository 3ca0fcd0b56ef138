//! Section: all checks.

use crate::model::Model;
use crate::study::check::Check;
use crate::study::evaluate::Evaluation;

use super::comparison::{self, Comparison};
use super::finding::Finding;
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
    let mut columns = comparison::columns();
    columns.push(Column::text("note", "note"));
    Table {
        id: "checks",
        about: "Each check, the worst first, with the load case that governs it.".to_owned(),
        item: "check",
        columns,
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
    let load = check.load.map(|load| names::load(model, load));
    let mut row = Comparison::of_check(check, load).row(&check.title);
    let note = check.note.clone();
    row.cells.push(note.map_or(Cell::Empty, Cell::Text));
    row
}
