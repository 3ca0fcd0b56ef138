//! Section: what each mount carries.

use crate::model::Model;
use crate::rigid::equilibrium::{MountState, StaticEquilibrium};
use crate::study::evaluate::{Evaluation, LoadResult};
use crate::units::Shown;

use super::table::{Cell, Column, Group, Row, Table};
use super::{Block, Drawing, Section, names, quantity};

/// Below this share of the weight the mounts together carry no weight to share out.
const NO_WEIGHT: f64 = 1e-6;

/// The figure and the table of mount reactions.
#[must_use]
pub fn section(model: &Model, evaluation: &Evaluation) -> Section {
    let mut blocks = Vec::new();
    if let Some(sentence) = at_rest_sentence(model, evaluation) {
        blocks.push(Block::Paragraph(sentence));
    }
    blocks.push(Block::plate(Drawing::Reactions));
    blocks.push(Block::Table(table(model, evaluation)));
    Section {
        id: "reactions",
        heading: "Mount reactions",
        blocks,
    }
}

/// One row a load case and mount.
#[must_use]
pub fn table(model: &Model, evaluation: &Evaluation) -> Table {
    Table {
        id: "reactions",
        about: "The force with which each mount holds the powertrain, load case by load case."
            .to_owned(),
        item: "mount",
        columns: vec![
            Column::number("force_x", "forward x", Shown::Newton),
            Column::number("force_y", "left y", Shown::Newton),
            Column::number("force_z", "up z", Shown::Newton),
            Column::number("force_total", "all together", Shown::Newton),
            Column::number("force_along_w", "along its axis w", Shown::Newton),
            Column::number("upward_share", "share of the upward force", Shown::Percent),
        ],
        groups: each_load(model, evaluation, reaction_rows),
        note: Some(
            "The chassis feels the same force the other way round. Under torque one mount may carry more than everything (above 100 %) \
             while another is pulled down (below zero). A share is left out where the mounts together carry no weight."
                .to_owned(),
        ),
    }
}

/// One group a load case, with the reason in place of rows where no position was found.
pub(super) fn each_load(
    model: &Model,
    evaluation: &Evaluation,
    rows: impl Fn(&Model, &LoadResult, &StaticEquilibrium) -> Vec<Row>,
) -> Vec<Group> {
    evaluation
        .loads
        .iter()
        .map(|result| {
            let (remark, rows) = match &result.outcome {
                Ok(found) => (None, rows(model, result, found)),
                Err(failure) => (Some(format!("No loaded position: {failure}")), Vec::new()),
            };
            Group {
                load: Some(names::load(model, result.load).to_owned()),
                remark,
                rows,
            }
        })
        .collect()
}

/// Mounts that take part, with their names and states.
pub(super) fn held_by<'a>(
    model: &'a Model,
    result: &'a LoadResult,
    found: &'a StaticEquilibrium,
) -> impl Iterator<Item = (usize, &'a str, &'a MountState)> {
    result
        .mounts
        .iter()
        .zip(&found.mounts)
        .map(|(&place, state)| (place, names::mount(model, place), state))
}

/// Share of the upward force that each mount of a case carries, in the order of `found.mounts`; `None` where they carry no weight.
pub(super) fn upward_shares(model: &Model, found: &StaticEquilibrium) -> Vec<Option<f64>> {
    let upward: f64 = found.mounts.iter().map(|m| m.force_on_powertrain.z).sum();
    let weight = model.mass.mass() * crate::spatial::STANDARD_GRAVITY;
    found
        .mounts
        .iter()
        .map(|m| (upward > NO_WEIGHT * weight).then(|| m.force_on_powertrain.z / upward))
        .collect()
}

/// With more mounts than this a sentence that names each is harder to read than the table.
const MOUNTS_IN_A_SENTENCE: usize = 6;

/// The rest position, when it was found.
pub(super) fn at_rest(evaluation: &Evaluation) -> Option<(&LoadResult, &StaticEquilibrium)> {
    let result = evaluation.loads.first()?;
    Some((result, result.outcome.as_ref().ok()?))
}

fn reaction_rows(model: &Model, result: &LoadResult, found: &StaticEquilibrium) -> Vec<Row> {
    held_by(model, result, found)
        .zip(upward_shares(model, found))
        .map(|((place, name, state), share)| {
            let force = state.force_on_powertrain;
            let along_w = model
                .mounts
                .get(place)
                .map(|mount| mount.axes.column(2).dot(&force));
            Row::new(
                name,
                vec![
                    Cell::Number(force.x),
                    Cell::Number(force.y),
                    Cell::Number(force.z),
                    Cell::Number(force.norm()),
                    Cell::maybe(along_w),
                    Cell::maybe(share),
                ],
            )
        })
        .collect()
}

fn at_rest_sentence(model: &Model, evaluation: &Evaluation) -> Option<String> {
    let (result, found) = at_rest(evaluation)?;
    if found.mounts.len() > MOUNTS_IN_A_SENTENCE {
        return None;
    }
    let carried: Vec<String> = held_by(model, result, found)
        .zip(upward_shares(model, found))
        .map(|((_, name, state), share)| {
            let force = quantity::with_unit(state.force_on_powertrain.z, Shown::Newton);
            match share {
                Some(share) => format!("{name} carries {force} ({})", quantity::share(share)),
                None => format!("{name} carries {force}"),
            }
        })
        .collect();
    Some(format!("At rest, {}.", names::and(&carried)))
}
