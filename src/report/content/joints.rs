//! Section: what holds each mount to the chassis, the torque to set, and what is required of it.

pub mod assembly;
pub mod bolts;
pub mod cases;
pub mod metals;
pub mod requirements;
pub mod sheet;
pub mod sizes;
pub mod squeezed;
pub mod stack;
pub mod tightening;
pub mod written;

use crate::model::Model;
use crate::model::joint::Joint;
use crate::study::evaluate::Evaluation;
use crate::study::joint::JointResult;
use crate::units::{Digits, Shown};

use super::table::{Cell, Column, Group, Row, Table};
use super::{Block, Section, quantity};

/// The table of joints, the sheet of each, and how to put them together.
#[must_use]
pub fn section(model: &Model, evaluation: &Evaluation) -> Section {
    let mut blocks = Vec::new();
    if evaluation.joints.is_empty() {
        blocks.push(Block::paragraph(
            "The file describes no joint, so nothing is said of bolts, rails and welds. \
             A `[[joint]]` with its mount, its bolts and the rail they go through adds them.",
        ));
    } else {
        blocks.push(Block::Table(table(model, evaluation)));
    }
    for (place, joint, result) in each(model, evaluation) {
        blocks.push(Block::Heading(title(model, joint)));
        blocks.extend(sheet::blocks(model, evaluation, joint, result, place));
    }
    if !evaluation.joints.is_empty() {
        blocks.push(Block::Heading("Before you rely on them".to_owned()));
        blocks.push(Block::List(assembly::CAUTIONS.map(str::to_owned).to_vec()));
    }
    Section {
        id: "joints",
        heading: "Joints",
        blocks,
    }
}

/// Joints with their results and their places in `Evaluation::joints`.
pub fn each<'a>(
    model: &'a Model,
    evaluation: &'a Evaluation,
) -> impl Iterator<Item = (usize, &'a Joint, &'a JointResult)> {
    (0..evaluation.joints.len()).filter_map(|place| {
        let (joint, result) = at(model, evaluation, place)?;
        Some((place, joint, result))
    })
}

/// The joint with this place in `Evaluation::joints`, and its result.
#[must_use]
pub fn at<'a>(
    model: &'a Model,
    evaluation: &'a Evaluation,
    place: usize,
) -> Option<(&'a Joint, &'a JointResult)> {
    let result = evaluation.joints.get(place)?;
    Some((model.joints.get(result.joint)?, result))
}

/// Name of a joint and what it holds.
#[must_use]
pub fn title(model: &Model, joint: &Joint) -> String {
    format!(
        "{}: holds mount {}",
        joint.name,
        super::names::mount(model, joint.mount)
    )
}

/// Number, thread and class of the bolts.
#[must_use]
pub fn bolts_in_words(joint: &Joint) -> String {
    let bolt = &joint.bolt;
    format!(
        "{} × {} of {}",
        joint.pattern.len(),
        bolt.thread.name,
        bolt.grade.name
    )
}

/// A force of a bolt for people \[N\].
#[must_use]
pub(crate) fn force(newtons: f64) -> String {
    quantity::with_digits(newtons, Shown::Kilonewton, Digits::Decimals(1))
}

/// One row a joint.
#[must_use]
pub fn table(model: &Model, evaluation: &Evaluation) -> Table {
    Table {
        id: "joints",
        about: "Each joint with the torque to set and what governs it.".to_owned(),
        item: "joint",
        columns: vec![
            Column::text("verdict", "verdict"),
            Column::text("bolts", "bolts"),
            Column::number("torque", "torque to set", Shown::NewtonMetre),
            Column::number("clamp", "clamp force left", Shown::Kilonewton),
            Column::text("governs", "what governs"),
            Column::number("utilisation", "limit used", Shown::Percent),
        ],
        groups: vec![Group::plain(
            each(model, evaluation)
                .map(|(_, joint, result)| row(evaluation, joint, result))
                .collect(),
        )],
        note: Some(
            "The clamp force is that of one bolt after all losses. `bedplate joint FILE NAME` prints one joint by itself."
                .to_owned(),
        ),
    }
}

fn row(evaluation: &Evaluation, joint: &Joint, result: &JointResult) -> Row {
    let governing = requirements::governing(result);
    let preload = &result.preload;
    Row::new(
        &joint.name,
        vec![
            Cell::Verdict(requirements::of_joint(evaluation, result)),
            Cell::Text(bolts_in_words(joint)),
            Cell::Number(preload.torque),
            Cell::Number(preload.clamp()),
            governing.map_or(Cell::Empty, |one| Cell::Text(one.title.clone())),
            Cell::maybe(governing.map(|one| one.utilisation())),
        ],
    )
}
