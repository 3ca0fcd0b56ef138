//! Bolted joints: what the computed mount reactions of every load case do to bolts, sleeves, rails and plates.
//!
//! One file below is one step: the [`stack`] that is clamped, the [`preload`]
//! that tightening leaves in it, what that does to a [`rail`](rail_clamp), how a
//! mount reaction is [`shared`](sharing) by the bolts, which [`metals`] touch, and what
//! is [`required`](requirement) of all of it.

mod coats;
pub mod metals;
pub mod preload;
pub mod rail_clamp;
pub mod requirement;
pub mod sharing;
pub mod sizing;
pub mod stack;
mod touch;

use crate::model::Model;
use crate::model::joint::Joint;

use super::evaluate::LoadResult;
use metals::MetalPair;
use preload::Preload;
use rail_clamp::RailClamp;
use requirement::{Requirement, Unjudged};
use sharing::LoadedJoint;
use sizing::Sizing;
use stack::Stack;

/// One joint over all load cases.
#[derive(Debug, Clone, PartialEq)]
pub struct JointResult {
    /// Which joint, as a place in `Model::joints`.
    pub joint: usize,
    /// What a bolt clamps.
    pub stack: Stack,
    /// What tightening and the years leave in each bolt.
    pub preload: Preload,
    /// What the clamp does to a hollow rail; `None` on a solid part.
    pub rail: Option<RailClamp>,
    /// Every two parts that conduct to each other.
    pub metals: Vec<MetalPair>,
    /// Load cases in which the mount takes part and a position was found, in the order of `Model::loads`.
    pub loads: Vec<LoadedJoint>,
    /// What is required of the joint, in the order of the load path.
    pub requirements: Vec<Requirement>,
    /// What is required and cannot be judged by what the file says.
    pub unjudged: Vec<Unjudged>,
    /// The lightest sizes that hold; `None` when the file does not ask for them.
    pub sizing: Option<Sizing>,
}

/// Every joint of the model under the reactions of these load cases.
#[must_use]
pub(super) fn joints(model: &Model, loads: &[LoadResult]) -> Vec<JointResult> {
    model
        .joints
        .iter()
        .enumerate()
        .map(|(place, joint)| of_joint(model, loads, place, joint))
        .collect()
}

/// One joint, with sizes that may differ from those of the model.
#[must_use]
pub(super) fn of_joint(
    model: &Model,
    loads: &[LoadResult],
    place: usize,
    joint: &Joint,
) -> JointResult {
    let stack = Stack::of(model, joint);
    let preload = Preload::of(joint, &stack);
    let rail = RailClamp::of(model, joint, &preload);
    let loads = sharing::loaded(model, joint, rail.as_ref(), loads);
    let metals = metals::pairs(model, joint);
    let clamp = rail.as_ref();
    let requirements = requirement::all(model, joint, &stack, &preload, clamp, &metals, &loads);
    JointResult {
        joint: place,
        stack,
        preload,
        rail,
        metals,
        loads,
        requirements,
        unjudged: requirement::unjudged(model, joint),
        sizing: None,
    }
}
