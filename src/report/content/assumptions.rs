//! Section: what was taken for granted.

use crate::model::{Assumption, Model};

use super::table::{Cell, Column, Group, Row, Table};
use super::{Block, Section};

/// What was assumed, with the key that would replace it.
#[must_use]
pub fn section(model: &Model) -> Section {
    let blocks = if model.assumptions.is_empty() {
        vec![Block::paragraph("Nothing that matters was assumed.")]
    } else {
        vec![Block::Table(table(model))]
    };
    Section {
        id: "assumptions",
        heading: "What was assumed",
        blocks,
    }
}

/// One row an assumption.
#[must_use]
pub fn table(model: &Model) -> Table {
    table_of(&model.assumptions)
}

/// One row an assumption, of those given.
pub fn table_of<'a>(assumed: impl IntoIterator<Item = &'a Assumption>) -> Table {
    Table {
        id: "assumptions",
        about: "What the file does not say and was taken for granted; writing the key replaces it."
            .to_owned(),
        item: "key",
        columns: vec![Column::text("assumed", "assumed")],
        groups: vec![Group::plain(
            assumed
                .into_iter()
                .map(|a| Row::new(&a.key, vec![Cell::Text(a.text.clone())]))
                .collect(),
        )],
        note: None,
    }
}
