//! Section: natural frequencies, and what excites them.

use crate::model::Model;
use crate::model::drivetrain::Cycle;
use crate::rigid::modes::{MOTION_NAMES, Mode};
use crate::study::evaluate::{Evaluation, ModesAt};
use crate::units::{Digits, Shown};

use super::table::{Cell, Column, Group, Row, Table};
use super::{Block, Drawing, Section, names, quantity};

/// The figure and the table of natural frequencies.
#[must_use]
pub fn section(model: &Model, evaluation: &Evaluation) -> Section {
    let mut blocks = vec![Block::Paragraph(format!(
        "The powertrain on its mounts can swing in six ways, each with its own frequency{}. {}",
        if evaluation
            .modes
            .iter()
            .any(|at| at.solution.modes.len() > 6)
        {
            "; the fluid of each hydraulic mount adds one, and a track that damps strongly blurs those near it"
        } else {
            ""
        },
        firing(model, evaluation)
    ))];
    if evaluation.modes.is_empty() {
        blocks.push(Block::paragraph(
            "No loaded position was found, so there are no frequencies.",
        ));
    } else {
        blocks.push(Block::plate(Drawing::Frequencies));
        blocks.push(Block::Table(table(model, evaluation)));
    }
    Section {
        id: "frequencies",
        heading: "Natural frequencies",
        blocks,
    }
}

/// Firing at idle in one sentence.
#[must_use]
pub fn firing(model: &Model, evaluation: &Evaluation) -> String {
    let electric = model
        .engine
        .as_ref()
        .is_some_and(|engine| matches!(engine.cycle, Cycle::Electric { .. }));
    match &evaluation.idle {
        None if electric => {
            "An electric machine does not fire, so nothing shakes it at idle.".to_owned()
        }
        Some(idle) => {
            let fires = format!(
                "At idle the engine fires at {} ({} pulses a turn)",
                quantity::with_unit(idle.frequency_hz, Shown::Hertz),
                pulses(idle.order)
            );
            format!("{fires}; {}.", shaken(model, evaluation, idle.frequency_hz))
        }
        None => {
            "The file gives no idle speed, so nothing is said about shaking at idle.".to_owned()
        }
    }
}

/// What the firing at idle shakes, among the modes at rest.
fn shaken(model: &Model, evaluation: &Evaluation, firing_hz: f64) -> String {
    let calm_below = firing_hz / model.criteria.idle_ratio;
    let modes = evaluation
        .modes
        .first()
        .map(|at| at.solution.modes.as_slice());
    let (calm, above): (Vec<&Mode>, Vec<&Mode>) = modes
        .unwrap_or_default()
        .iter()
        .partition(|mode| mode.frequency_hz < calm_below);
    let below = quantity::with_unit(calm_below, Shown::Hertz);
    match (calm.is_empty(), above.is_empty()) {
        (_, true) => format!(
            "every mode lies below {below}, where the mounts keep the shaking from the frame"
        ),
        (true, false) => {
            format!("no mode lies below {below}, so the mounts pass the shaking on to the frame")
        }
        (false, false) => format!(
            "{} of the {} modes lie{} above {below}, where the mounts pass the shaking on",
            above.len(),
            above.len() + calm.len(),
            if above.len() == 1 { "s" } else { "" }
        ),
    }
}

/// Pulses a turn: whole, or a half for an odd number of cylinders.
fn pulses(order: f64) -> String {
    let decimals = u8::from(order.fract().abs() > 1e-9);
    quantity::number_with(order, Shown::Number, Digits::Decimals(decimals))
}

/// Name of a mode, or what it does when it does not swing.
#[must_use]
pub fn mode_name(mode: &Mode) -> String {
    match mode.growth_rate {
        Some(_) => format!("{}: does not swing, moves away", mode.name),
        None => mode.name.clone(),
    }
}

/// One row a position and mode.
#[must_use]
pub fn table(model: &Model, evaluation: &Evaluation) -> Table {
    let torque = evaluation.modes.iter().any(|at| at.torque_share.is_some());
    let mut modes = evaluation.modes.iter().flat_map(|at| &at.solution.modes);
    let fluid = modes.any(|mode| mode.fluid_share > 0.0);
    let mut columns = vec![
        Column::number("frequency", "frequency", Shown::Hertz),
        Column::number("damping_ratio", "damping", Shown::Percent).digits(Digits::Decimals(1)),
        Column::text("name", "name"),
    ];
    let keys = [
        "energy_x",
        "energy_y",
        "energy_z",
        "energy_roll",
        "energy_pitch",
        "energy_yaw",
    ];
    columns.extend(
        keys.into_iter()
            .zip(MOTION_NAMES)
            .map(|(key, head)| Column::number(key, head, Shown::Percent)),
    );
    if fluid {
        columns.push(Column::number("energy_fluid", "fluid", Shown::Percent));
    }
    if torque {
        columns.push(Column::number(
            "torque_share",
            "excited by torque",
            Shown::Percent,
        ));
    }
    Table {
        id: "modes",
        about: "The natural frequencies about each loaded position, and what moves in each."
            .to_owned(),
        item: "mode",
        columns,
        groups: evaluation
            .modes
            .iter()
            .map(|at| group(model, at, fluid, torque))
            .collect(),
        note: Some(
            "Damping is the share of critical damping. The energy shares say what moves (lateral is sideways, bounce is up and down): a mode with 90 % in one column \
             is nearly pure, one with energy spread over several couples them. They add to 100 %; a share below zero \
             takes energy back through the products of inertia. Rubber counts with its rate in vibration, not its static rate."
                .to_owned(),
        ),
    }
}

fn group(model: &Model, at: &ModesAt, fluid: bool, torque: bool) -> Group {
    let rows = at
        .solution
        .modes
        .iter()
        .enumerate()
        .map(|(place, mode)| {
            let frequency = match mode.growth_rate {
                Some(_) => Cell::Text("none".to_owned()),
                None => Cell::Number(mode.frequency_hz),
            };
            let damping = match mode.growth_rate {
                Some(_) => Cell::Empty,
                None => Cell::Number(mode.damping_ratio),
            };
            let mut cells = vec![frequency, damping, Cell::Text(mode_name(mode))];
            cells.extend(mode.energy_share.iter().copied().map(Cell::Number));
            if fluid {
                cells.push(Cell::Number(mode.fluid_share));
            }
            if torque {
                let share = at
                    .torque_share
                    .as_ref()
                    .and_then(|shares| shares.get(place).copied());
                cells.push(Cell::maybe(share));
            }
            Row::new((place + 1).to_string(), cells)
        })
        .collect();
    Group {
        load: Some(names::load(model, at.load).to_owned()),
        remark: None,
        rows,
    }
}
