//! The one function that wires the analyses together.

use crate::drive::firing::{Idle, firing_at_idle};
use crate::drive::torque::OutputTorque;
use crate::model::Model;
use crate::model::isolator::Isolator;
use crate::rigid::equilibrium::StaticEquilibrium;
use crate::rigid::failure::StaticsFailure;
use crate::rigid::modes::ModalSolution;
use crate::spatial::{Vec3, Wrench};

use super::axes::Axes;
use super::check::{self, Check};
use super::creep::{Creep, creep};
use super::envelope::{Envelope, envelopes};
use super::frame_twist::{FrameTwist, frame_twist};
use super::joint::sizing::{self, Reactions};
use super::joint::{JointResult, joints};
use super::resting::Resting;
use super::scatter;

/// Everything computed from one model.
#[derive(Debug, Clone)]
#[non_exhaustive]
pub struct Evaluation {
    /// One result for each load case, in the order of `Model::loads`; the first is the rest position, which was found.
    pub loads: Vec<LoadResult>,
    /// Modes about each loaded position that `Model::modes_at` asks for and that was found; the first at rest.
    pub modes: Vec<ModesAt>,
    /// Axes of the powertrain and of its mounts at rest.
    pub axes: Axes,
    /// Motion of each point over all load cases, in the order of `Model::points`.
    pub envelopes: Vec<Envelope>,
    /// How the powertrain sinks over the years; `None` when nothing creeps.
    pub creep: Option<Creep>,
    /// What a frame that twists puts into the mounts, one for each mount at which it gives way.
    pub frame_twist: Vec<FrameTwist>,
    /// Firing at idle, when the machine idles.
    pub idle: Option<Idle>,
    /// Bolted joints, in the order of `Model::joints`.
    pub joints: Vec<JointResult>,
    /// Verdicts, the worst first.
    pub checks: Vec<Check>,
}

/// One load case and what came of it.
#[derive(Debug, Clone)]
#[non_exhaustive]
pub struct LoadResult {
    /// Which load case, as a place in `Model::loads`.
    pub load: usize,
    /// What leaves the powertrain at its outputs; `None` without a drive.
    pub torque: Option<OutputTorque>,
    /// Everything but the mounts, about the centre of gravity where the outcome puts it, or in the fitted state when there is none; vehicle axes.
    pub applied: Wrench,
    /// Mounts that take part, as places in `Model::mounts`; the states of the equilibrium stand in this order.
    pub mounts: Vec<usize>,
    /// The loaded position, or why there is none.
    pub outcome: Result<StaticEquilibrium, StaticsFailure>,
    /// Motion of each point of the model from the fitted state \[m\]; `None` when its part is taken away or nothing was found.
    pub points: Vec<Option<Vec3>>,
    /// Remaining gap of each clearance of the model \[m\]; `None` likewise.
    pub gaps: Vec<Option<f64>>,
}

/// Modes about one loaded position.
#[derive(Debug, Clone)]
#[non_exhaustive]
pub struct ModesAt {
    /// Which load case, as a place in `Model::loads`.
    pub load: usize,
    /// The modes and the matrices they come from.
    pub solution: ModalSolution,
    /// Share of a turn about the torque roll axis that each mode carries, 0 to 1, adding to 1; `None` without an engine.
    pub torque_share: Option<Vec<f64>>,
}

/// Computes everything from a model.
///
/// # Errors
/// [`StaticsFailure`] when the powertrain has no position at rest, since every
/// other result starts there. A load case without a position is no error: it
/// says so in its own [`LoadResult`].
pub fn evaluate(model: &Model) -> Result<Evaluation, StaticsFailure> {
    let mut evaluation = results(model, &model.isolators)?;
    let ends = scatter::ends(model);
    let reactions = Reactions {
        nominal: &evaluation.loads,
        ends: ends.iter().map(|end| end.loads.as_slice()).collect(),
    };
    for joint in &mut evaluation.joints {
        joint.sizing = sizing::size(model, &reactions, joint.joint);
    }
    evaluation.checks = check::all(model, &evaluation, &ends);
    Ok(evaluation)
}

/// Everything but the verdicts, with isolators in place of the model's own.
pub(super) fn results(model: &Model, isolators: &[Isolator]) -> Result<Evaluation, StaticsFailure> {
    let build = Resting::of(model, isolators)?;
    let loads: Vec<LoadResult> = (0..model.loads.len())
        .map(|load| build.load(load))
        .collect();
    let at_rest = build.modes(0, &build.rest)?;
    let axes = Axes::at_rest(model, &build.rest, &at_rest.solution)?;
    let mut modes = vec![at_rest];
    for &load in model.modes_at.iter().filter(|&&load| load != 0) {
        if let Some(Ok(loaded)) = loads.get(load).map(|result| &result.outcome) {
            modes.push(build.modes(load, loaded)?);
        }
    }
    Ok(Evaluation {
        envelopes: envelopes(model, &loads),
        creep: creep(&build),
        frame_twist: frame_twist(&build),
        joints: joints(model, &loads),
        loads,
        modes,
        axes,
        idle: model.engine.as_ref().and_then(firing_at_idle),
        checks: Vec::new(),
    })
}

/// One load case alone, with isolators in place of the model's own.
pub(super) fn solve_one(
    model: &Model,
    isolators: &[Isolator],
    load: usize,
) -> Result<LoadResult, StaticsFailure> {
    Ok(Resting::of(model, isolators)?.load(load))
}

/// The modes at rest alone, with isolators in place of the model's own.
pub(super) fn modes_at_rest(
    model: &Model,
    isolators: &[Isolator],
) -> Result<ModesAt, StaticsFailure> {
    let build = Resting::of(model, isolators)?;
    build.modes(0, &build.rest)
}
