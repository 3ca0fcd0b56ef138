//! What the years and a twisting frame do, for the results document.

use serde::Serialize;

use super::triple;
use crate::model::Model;
use crate::report::content::names;
use crate::study::evaluate::Evaluation;

#[derive(Serialize)]
pub(super) struct CreepOut<'a> {
    /// Of the centre of gravity, from the rest position as new.
    displacement_m: [f64; 3],
    points: Vec<PointOut<'a>>,
    clearances: Vec<LossOut<'a>>,
}

#[derive(Serialize)]
struct PointOut<'a> {
    name: &'a str,
    displacement_m: [f64; 3],
}

#[derive(Serialize)]
struct LossOut<'a> {
    name: &'a str,
    /// What the gap loses; below zero where it gains.
    gap_lost_m: f64,
}

#[derive(Serialize)]
pub(super) struct FrameTwistOut<'a> {
    /// Mount at which the chassis is raised.
    raised_at: &'a str,
    raised_m: f64,
    /// Mount whose force changes most.
    most_at: &'a str,
    force_change_n: f64,
}

pub(super) fn creep<'a>(model: &'a Model, evaluation: &Evaluation) -> Option<CreepOut<'a>> {
    let creep = evaluation.creep.as_ref()?;
    let points = model.points.iter().zip(&creep.points);
    let clearances = model.clearances.iter().zip(&creep.gaps_lost);
    Some(CreepOut {
        displacement_m: triple(&creep.displacement),
        points: points
            .map(|(point, moved)| PointOut {
                name: &point.name,
                displacement_m: triple(moved),
            })
            .collect(),
        clearances: clearances
            .map(|(clearance, &gap_lost_m)| LossOut {
                name: &clearance.name,
                gap_lost_m,
            })
            .collect(),
    })
}

pub(super) fn frame_twist<'a>(model: &'a Model, evaluation: &Evaluation) -> Vec<FrameTwistOut<'a>> {
    evaluation
        .frame_twist
        .iter()
        .map(|twist| FrameTwistOut {
            raised_at: names::mount(model, twist.at),
            raised_m: model.criteria.frame_twist,
            most_at: names::mount(model, twist.most_at),
            force_change_n: twist.most,
        })
        .collect()
}
