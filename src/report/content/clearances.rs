//! Section: gaps that must stay open, and how far each point moves.

use crate::model::Model;
use crate::study::check::Verdict;
use crate::study::envelope::Envelope;
use crate::study::evaluate::Evaluation;
use crate::units::Shown;

use super::table::{Cell, Column, Group, Row, Table};
use super::{Block, Drawing, Line, Section, names, quantity};

/// The figure and the tables of gaps and of the motion of points.
#[must_use]
pub fn section(model: &Model, evaluation: &Evaluation) -> Section {
    let mut blocks = Vec::new();
    if model.clearances.is_empty() {
        blocks.push(Block::paragraph(
            "The file states no clearance. A [[clearance]] with a point, a direction and a gap adds the check that nothing touches.",
        ));
    } else {
        blocks.push(Block::plate(Drawing::Clearances));
        blocks.push(Block::Table(gaps(model, evaluation)));
    }
    if let Some(creep) = &evaluation.creep {
        blocks.push(Block::Lines(vec![Line::new(
            "over the years",
            format!(
                "the rubber creeps and the centre of gravity sinks {} further; the checks take what each gap loses from what is left of it",
                quantity::with_unit(-creep.displacement.z, Shown::Millimetre)
            ),
        )]));
    }
    if model.points.is_empty() {
        blocks.push(Block::paragraph(
            "The file states no points. A [[point]] adds how far that place moves.",
        ));
    } else {
        blocks.push(Block::Table(envelopes(model, evaluation)));
    }
    Section {
        id: "clearances",
        heading: "Clearances and how far points move",
        blocks,
    }
}

/// One row a load case and clearance.
#[must_use]
pub fn gaps(model: &Model, evaluation: &Evaluation) -> Table {
    let groups = evaluation
        .loads
        .iter()
        .map(|result| {
            let rows = model
                .clearances
                .iter()
                .zip(&result.gaps)
                .filter_map(|(clearance, gap)| {
                    let gap = (*gap)?;
                    let holds = if gap < clearance.keep {
                        Verdict::Fails
                    } else {
                        Verdict::Ok
                    };
                    let cells = vec![
                        Cell::Number(clearance.gap),
                        Cell::Number(gap),
                        Cell::Number(clearance.keep),
                        Cell::Verdict(holds),
                    ];
                    Some(Row::new(&clearance.name, cells))
                })
                .collect();
            Group {
                load: Some(names::load(model, result.load).to_owned()),
                remark: result
                    .outcome
                    .as_ref()
                    .err()
                    .map(|failure| format!("No loaded position: {failure}")),
                rows,
            }
        })
        .collect();
    Table {
        id: "clearances",
        about: "What is left of each gap, load case by load case.".to_owned(),
        item: "clearance",
        columns: vec![
            Column::number("gap_fitted", "as fitted", Shown::Millimetre),
            Column::number("gap", "left", Shown::Millimetre),
            Column::number("keep", "must stay", Shown::Millimetre),
            Column::words("holds"),
        ],
        groups,
        note: Some(
            "A gap below zero means the two would touch. The scatter of the rubber is counted in the checks, not here."
                .to_owned(),
        ),
    }
}

/// One row a point and direction.
#[must_use]
pub fn envelopes(model: &Model, evaluation: &Evaluation) -> Table {
    let rows = model
        .points
        .iter()
        .zip(&evaluation.envelopes)
        .flat_map(|(point, envelope)| point_rows(model, &point.name, envelope))
        .collect();
    Table {
        id: "envelopes",
        about: "How far each point moves from where it was fitted, over all load cases.".to_owned(),
        item: "point, direction",
        columns: vec![
            Column::number("least", "least", Shown::Millimetre),
            Column::text("least_at", "in load case"),
            Column::number("most", "most", Shown::Millimetre),
            Column::text("most_at", "in load case"),
        ],
        groups: vec![Group::plain(rows)],
        note: Some("Forward, left and up are positive.".to_owned()),
    }
}

fn point_rows(model: &Model, name: &str, envelope: &Envelope) -> Vec<Row> {
    ["forward x", "left y", "up z"]
        .into_iter()
        .enumerate()
        .map(|(axis, direction)| {
            Row::new(
                format!("{name}, {direction}"),
                vec![
                    Cell::Number(envelope.least[axis]),
                    Cell::Text(names::load(model, envelope.least_at[axis]).to_owned()),
                    Cell::Number(envelope.most[axis]),
                    Cell::Text(names::load(model, envelope.most_at[axis]).to_owned()),
                ],
            )
        })
        .collect()
}
