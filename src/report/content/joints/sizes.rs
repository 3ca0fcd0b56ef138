//! The lightest sizes with which a joint holds, and why the next smaller ones do not.

use crate::model::Model;
use crate::model::joint::{Choices, Joint};
use crate::report::content::table::{Cell, Column, Group, Row, Table};
use crate::report::content::{names, quantity};
use crate::study::joint::sizing::{Sizing, Trial};
use crate::units::{Digits, Shown};

/// The sizes found first, then one step down in each size.
#[must_use]
pub fn table(model: &Model, joint: &Joint, sizing: &Sizing) -> Table {
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
            "Out of {} combinations{}. The mass is that of bolts with nuts, sleeves and plates. The limit used \
             counts in how the isolators scatter; above 100 % it fails. Cut the sleeve between the length told and flush.",
            sizing.choices,
            joint
                .choices
                .as_ref()
                .map_or(String::new(), |choices| format!(": {}", listed(choices)))
        )),
    }
}

/// What there was to choose from, in words.
fn listed(choices: &Choices) -> String {
    let names = |list: Vec<&str>| list.join(", ");
    let lengths = |list: &[f64]| {
        let numbers = list.iter().map(|length| {
            quantity::number_with(*length, Shown::Millimetre, Digits::Significant(3))
        });
        numbers.collect::<Vec<_>>().join(", ")
    };
    let mut parts = vec![
        names(choices.threads.iter().map(|thread| thread.name).collect()),
        format!(
            "classes {}",
            names(choices.grades.iter().map(|grade| grade.name).collect())
        ),
    ];
    if !choices.counts.is_empty() {
        let counts = choices.counts.iter().map(u32::to_string);
        parts.push(format!("{} bolts", counts.collect::<Vec<_>>().join(", ")));
    }
    for (what, list) in [("sleeves", &choices.sleeves), ("plates", &choices.plates)] {
        if !list.is_empty() {
            parts.push(format!("{what} of {} mm", lengths(list)));
        }
    }
    parts.join("; ")
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
            Cell::Number(trial.used),
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
