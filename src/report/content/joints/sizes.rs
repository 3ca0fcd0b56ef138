//! The lightest sizes with which a joint holds, and why the next smaller ones do not.

use crate::model::Model;
use crate::report::content::table::{Cell, Column, Group, Row, Table};
use crate::report::content::{names, quantity};
use crate::study::joint::sizing::{Sizing, Trial};
use crate::units::{Digits, Shown};

/// The sizes found first, then one step down in each size.
#[must_use]
pub fn table(model: &Model, sizing: &Sizing) -> Table {
    let first = if sizing.holds {
        "lightest that holds"
    } else {
        "nearest to holding"
    };
    let smaller = sizing
        .smaller
        .iter()
        .map(|trial| row(model, "one step down", trial));
    let mut rows = vec![row(model, first, &sizing.best)];
    rows.extend(smaller);
    Table {
        id: "joint_sizes",
        about: if sizing.holds {
            "The lightest sizes that hold in every load case, and the next smaller ones.".to_owned()
        } else {
            "No sizes of the list hold; these come nearest.".to_owned()
        },
        item: "sizes",
        columns: vec![
            Column::text("bolts", "bolts"),
            Column::number("sleeve", "sleeve outside", Shown::Millimetre),
            Column::number("sleeve_length", "sleeve length", Shown::Millimetre)
                .digits(Digits::Decimals(2)),
            Column::number("plate", "plate", Shown::Millimetre),
            Column::number("torque", "torque to set", Shown::NewtonMetre),
            Column::number("mass", "mass", Shown::Kilogram).digits(Digits::Decimals(2)),
            Column::number("utilisation", "limit used", Shown::Percent),
            Column::text("governs", "what governs"),
        ],
        groups: vec![Group::plain(rows)],
        note: Some(format!(
            "Of {} combinations; the mass is that of bolts with nuts, sleeves and plates. Above 100 % it fails. \
             The length of a sleeve is its short end. Put the sizes into the file to get their verdicts, which count in how the isolators scatter.",
            sizing.choices
        )),
    }
}

fn row(model: &Model, name: &str, trial: &Trial) -> Row {
    let load = trial.governs.load.map(|load| names::load(model, load));
    let governs = match load {
        Some(load) => format!("{}, {load}", trial.governs.title),
        None => trial.governs.title.clone(),
    };
    Row::new(
        name,
        vec![
            Cell::Text(format!(
                "{} × {} of {}",
                trial.bolts, trial.thread.name, trial.grade.name
            )),
            Cell::maybe(trial.sleeve),
            Cell::maybe(trial.sleeve_length),
            Cell::maybe(trial.plate),
            Cell::Number(trial.torque),
            Cell::Number(trial.mass),
            Cell::Number(trial.governs.utilisation()),
            Cell::Text(governs),
        ],
    )
}

/// Where the bolts of the sizes found stand, as `pattern` of the file.
#[must_use]
pub fn pattern(sizing: &Sizing) -> String {
    let whole = |length: f64| quantity::number_with(length, Shown::Millimetre, Digits::Decimals(1));
    let places: Vec<String> = sizing
        .best
        .pattern
        .iter()
        .map(|[x, y]| format!("\"{}, {} mm\"", whole(*x), whole(*y)))
        .collect();
    format!("[{}]", places.join(", "))
}
