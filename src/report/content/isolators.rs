//! Section: the isolators by themselves, and what each must do in this build.

pub mod bounds;
pub mod curve;
pub mod curve_table;
pub mod rates;
pub mod reach;
pub mod sheet;

use crate::model::Model;
use crate::model::isolator::{Isolator, Tension};
use crate::units::{Digits, Shown};

use super::table::{Cell, Column, Group, Row, Table};
use super::{Block, Drawing, Section, names};
use rates::Rates;

/// The table of isolators, the curve of each that a mount uses, and what is to be said of each.
#[must_use]
pub fn section(model: &Model) -> Section {
    let mut blocks = vec![Block::Table(table(model))];
    for (place, isolator) in model.isolators.iter().enumerate() {
        blocks.push(Block::Heading(isolator.name.clone()));
        let users = used_by(model, isolator);
        if users.is_empty() {
            blocks.push(Block::paragraph("No mount uses it."));
        } else {
            blocks.push(Block::paragraph(format!("Used by {}.", names::and(&users))));
            blocks.push(Block::plate(Drawing::Isolator { isolator: place }));
        }
        if !isolator.remarks.is_empty() {
            let remarks = isolator.remarks.iter().map(|remark| sentence(remark));
            blocks.push(Block::List(remarks.collect()));
        }
    }
    Section {
        id: "isolators",
        heading: "Isolators",
        blocks,
    }
}

/// One row an isolator.
#[must_use]
pub fn table(model: &Model) -> Table {
    Table {
        id: "isolators",
        about: "Each isolator by itself, at its free position.".to_owned(),
        item: "isolator",
        columns: vec![
            Column::text("kind", "kind"),
            Column::number("rate_u", "static along u", Shown::NewtonPerMillimetre),
            Column::number("rate_v", "static along v", Shown::NewtonPerMillimetre),
            Column::number("rate_w", "static along w", Shown::NewtonPerMillimetre),
            Column::number("dynamic_ratio", "dynamic ratio", Shown::Number),
            Column::number("loss_factor", "loss factor", Shown::Number),
            Column::number("heat_limit", "heat limit", Shown::Celsius).digits(Digits::Decimals(0)),
            Column::number("scatter", "scatter", Shown::Percent),
        ],
        groups: vec![Group::plain(model.isolators.iter().map(row).collect())],
        note: Some(format!(
            "Dynamic ratio: rate in vibration of micrometres over the static rate, of the axis where it is largest. \
             `bedplate isolator FILE NAME` prints the whole curve of one isolator.{}",
            when_loose(&model.isolators)
        )),
    }
}

fn row(isolator: &Isolator) -> Row {
    let rates = Rates::of(isolator).at_rest;
    let mut cells = vec![Cell::Text(isolator.kind.to_owned())];
    cells.extend(rates.iter().copied().map(Cell::Number));
    cells.extend([
        Cell::Number(isolator.dynamics.ratio.max()),
        Cell::Number(isolator.dynamics.loss_factor),
        Cell::maybe(isolator.heat_limit),
        Cell::Number(isolator.scatter),
    ]);
    Row::new(&isolator.name, cells)
}

/// Names of the mounts on an isolator.
fn used_by<'a>(model: &'a Model, isolator: &Isolator) -> Vec<&'a str> {
    model
        .mounts
        .iter()
        .filter(|mount| {
            let used = model.isolators.get(mount.isolator);
            used.is_some_and(|used| used.name == isolator.name)
        })
        .map(|mount| mount.name.as_str())
        .collect()
}

/// Why a loose part has a rate here and none on its curve at the free position; nothing where none is loose.
fn when_loose<'a>(isolators: impl IntoIterator<Item = &'a Isolator>) -> &'static str {
    let mut isolators = isolators.into_iter();
    if isolators.any(|isolator| isolator.tension == Tension::None) {
        " Along w of a part that lies loose: its rate once it is pushed; its curve begins without one, since it beds in first."
    } else {
        ""
    }
}

/// A remark of the model with its full stop.
fn sentence(remark: &str) -> String {
    format!("{remark}.")
}

/// Word of the model file for whether an isolator may be pulled.
#[must_use]
pub fn tension_word(tension: Tension) -> &'static str {
    match tension {
        Tension::Allowed => "allowed",
        Tension::Avoid => "avoid",
        Tension::None => "none",
    }
}
