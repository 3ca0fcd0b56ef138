//! All that is known of one joint, in the order in which it is built.

use crate::model::Model;
use crate::model::joint::Joint;
use crate::report::content::{Block, Drawing, Plate};
use crate::study::evaluate::Evaluation;
use crate::study::joint::JointResult;

use super::{assembly, bolts, cases, metals, requirements, sizes, squeezed, stack, tightening};

/// Everything but the name; `place` is the one in `Evaluation::joints`.
#[must_use]
pub fn blocks(
    model: &Model,
    evaluation: &Evaluation,
    joint: &Joint,
    result: &JointResult,
    place: usize,
) -> Vec<Block> {
    let mut blocks = vec![
        Block::Plates(vec![
            plate(Drawing::JointSection { joint: place }),
            plate(Drawing::JointFace { joint: place }),
        ]),
        Block::Lines(tightening::lines(model, evaluation, joint, result)),
        Block::Table(requirements::table(model, evaluation, result)),
    ];
    let cures = requirements::cures(evaluation, result);
    if !cures.is_empty() {
        blocks.push(Block::List(cures));
    }
    let cases = cases::table(model, result);
    if !cases.is_empty() {
        blocks.push(Block::Table(cases));
    }
    blocks.extend(sizes::blocks(model, joint, result.sizing.as_ref()));
    blocks.push(Block::plate(Drawing::ClampDiagram { joint: place }));
    blocks.push(Block::Table(stack::table(result)));
    blocks.push(Block::Lines(squeezed::lines(model, joint, result)));
    blocks.push(Block::Table(bolts::table(model, result)));
    blocks.push(Block::Table(metals::table(result)));
    blocks.push(Block::List(assembly::notes(joint)));
    blocks
}

fn plate(drawing: Drawing) -> Plate {
    Plate {
        drawing,
        text: None,
    }
}
