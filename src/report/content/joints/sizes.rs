//! The lightest sizes with which a joint holds, and why the next smaller ones do not.

use crate::model::Model;
use crate::model::joint::{Joint, Seat};
use crate::report::content::table::{Cell, Column, Group, Row, Table};
use crate::report::content::{Block, names};
use crate::study::joint::sizing::{SLEEVE_STEEL, Sizing, Trial};
use crate::units::{Digits, Shown};

use super::written;

/// What came of looking for sizes: the table, what to widen where none hold, and the keys to write into the file.
#[must_use]
pub fn blocks(model: &Model, joint: &Joint, sizing: Option<&Sizing>) -> Vec<Block> {
    let Some(sizing) = sizing else {
        let words = "No combination of the sizes to choose from can be made: the bolts or sleeves find no room beside each other, or a class is not made in a size.";
        let asked = joint.choices.as_ref();
        return asked.map(|_| Block::paragraph(words)).into_iter().collect();
    };
    let mut blocks = vec![Block::Table(table(model, joint, sizing))];
    if !sizing.holds {
        let wider = wider(joint);
        if !wider.is_empty() {
            blocks.push(Block::List(wider));
        }
    }
    blocks.push(Block::paragraph(told(joint, sizing)));
    blocks.push(Block::Verbatim(written::lines(&sizing.best.joint)));
    blocks
}

/// What of the file is not kept, before the keys that are.
fn told(joint: &Joint, sizing: &Sizing) -> String {
    let best = &sizing.best.joint;
    let mut words = format!(
        "The sizes {} as they go into the file, in place of the same keys of the joint; then take `size` and `choose` out.",
        if sizing.holds {
            "that hold"
        } else {
            "that come nearest"
        }
    );
    let dropped: Vec<&str> = [
        (joint.bolt.torque.is_some(), "`bolt.torque`"),
        (joint.bolt.length.is_some(), "`bolt.length`"),
    ]
    .into_iter()
    .filter_map(|(is_stated, key)| is_stated.then_some(key))
    .collect();
    if !dropped.is_empty() {
        words.push_str(&format!(
            " Left out: {}; each size is tightened with what it bears, and as long as it must be.",
            dropped.join(" and ")
        ));
    }
    if joint.sleeve.is_none()
        && let Some(sleeve) = &best.sleeve
    {
        words.push_str(&format!(
            " The file has no sleeve: this one is taken as of {}, {}.",
            sleeve.material.name,
            match sleeve.seat {
                Seat::Through => "through both walls",
                Seat::Inside => "between the walls",
            }
        ));
    }
    if joint.washer != best.washer {
        words.push_str(" The washer grows with the head.");
    }
    if let (Some(own), Some(found)) = (&joint.sleeve, &best.sleeve)
        && own.shoulder != found.shoulder
    {
        words.push_str(" The shoulder of the sleeve stands out as far as that of the file.");
    }
    words
}

/// What would give more to choose from.
fn wider(joint: &Joint) -> Vec<String> {
    let mut words = Vec::new();
    let has_shoulder = joint
        .sleeve
        .as_ref()
        .is_some_and(|sleeve| sleeve.shoulder.is_some());
    if joint.plate.is_none() && joint.base.rail().is_none() {
        words.push("A `plate` would help.".to_owned());
    } else if joint.plate.is_none() && !has_shoulder {
        words.push("A `plate` or a sleeve with a `shoulder` would help.".to_owned());
    }
    let is_count_open = joint
        .choices
        .as_ref()
        .is_some_and(|choices| choices.counts.is_empty());
    if joint.pattern.len() == 1 {
        words.push(
            "More bolts may help: give `pattern` two places to spread them between, and `choose = { counts = [2, 4] }`."
                .to_owned(),
        );
    } else if is_count_open {
        words.push("More bolts may help: `choose = { counts = [2, 4] }`.".to_owned());
    }
    words
}

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
            "Out of {} combinations{}.{} The mass is that of bolts with nuts, sleeves and plates. The limit used \
             counts in how the isolators scatter; above 100 % it fails. Cut the sleeve between the length told and flush.",
            sizing.choices,
            joint
                .choices
                .as_ref()
                .map_or(String::new(), |choices| format!(": {}", choices.words())),
            if joint.sleeve.is_none()
                && joint
                    .choices
                    .as_ref()
                    .is_some_and(|one| !one.sleeves.is_empty())
            {
                format!(" No sleeve is tried as well; sleeves are of {SLEEVE_STEEL}.")
            } else {
                String::new()
            }
        )),
    }
}

fn row(model: &Model, name: &str, trial: &Trial) -> Row {
    let load = trial.governs.load.map(|load| names::load(model, load));
    let governs = match load {
        Some(load) => format!("{}, {load}", trial.governs.title),
        None => trial.governs.title.clone(),
    };
    let tried = &trial.joint;
    Row::new(
        name,
        vec![
            Cell::Text(format!(
                "{} × {} of {}",
                tried.pattern.len(),
                tried.bolt.thread.name,
                tried.bolt.grade.name
            )),
            Cell::maybe(tried.sleeve.as_ref().map(|sleeve| sleeve.outer)),
            Cell::maybe(tried.sleeve.as_ref().map(|sleeve| sleeve.length)),
            Cell::maybe(tried.plate.as_ref().map(|plate| plate.thickness)),
            Cell::Number(trial.torque),
            Cell::Number(trial.mass),
            Cell::Number(trial.used),
            Cell::Text(governs),
        ],
    )
}
