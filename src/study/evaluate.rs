//! The one function that wires the analyses together.

use crate::model::Model;
use crate::rigid::axes::ElasticAxes;
use crate::rigid::equilibrium::{StaticEquilibrium, StaticsFailure};
use crate::rigid::modes::ModalSolution;
use crate::spatial::{Vec3, Wrench};

use super::check::Check;

/// Everything computed from one model.
#[derive(Debug, Clone)]
pub struct Evaluation {
    /// One result for each load case, in the order of `Model::loads`.
    pub loads: Vec<LoadResult>,
    /// Modes about each loaded position that `Model::modes_at` asks for and that was found.
    pub modes: Vec<ModesAt>,
    /// Axes of the powertrain on its mounts at rest; `None` when the rest position was not found.
    pub axes: Option<Axes>,
    /// Motion of each point over all load cases, in the order of `Model::points`.
    pub envelopes: Vec<Envelope>,
    /// Firing at idle, when the machine idles.
    pub idle: Option<Idle>,
    /// Verdicts, the worst first.
    pub checks: Vec<Check>,
}

/// One load case and what came of it.
#[derive(Debug, Clone)]
pub struct LoadResult {
    /// Which load case, as a place in `Model::loads`.
    pub load: usize,
    /// Torque that the outputs deliver [N m], shock factor included; `None` without a drive.
    pub output_torque: Option<f64>,
    /// Torque at which the tyres let go [N m, at the outputs], when the case is limited by grip.
    pub grip_cap: Option<f64>,
    /// Weight, inertia force, and moment, about the centre of gravity in the fitted state, vehicle axes.
    pub applied: Wrench,
    /// Mounts that take part, as places in `Model::mounts`; the states of the equilibrium stand in this order.
    pub mounts: Vec<usize>,
    /// The loaded position, or why there is none.
    pub outcome: Result<StaticEquilibrium, StaticsFailure>,
    /// Motion of each point of the model from the fitted state [m]; `None` when its part is taken away or nothing was found.
    pub points: Vec<Option<Vec3>>,
    /// Remaining gap of each clearance of the model [m]; `None` likewise.
    pub gaps: Vec<Option<f64>>,
}

/// Modes about one loaded position.
#[derive(Debug, Clone)]
pub struct ModesAt {
    /// Which load case, as a place in `Model::loads`.
    pub load: usize,
    /// The six modes and the matrices they come from.
    pub solution: ModalSolution,
    /// Share of the motion about the torque roll axis that each mode carries, in 0 to 1, adding to 1; `None` without an engine.
    pub torque_share: Option<[f64; 6]>,
}

/// Axes of the powertrain and of its mounts, at rest.
#[derive(Debug, Clone, PartialEq)]
pub struct Axes {
    /// Unit vector about which the free powertrain starts to turn under engine torque, vehicle axes; through the centre of gravity. `None` without an engine.
    pub torque_roll: Option<Vec3>,
    /// Centre of gravity of the powertrain at rest [m].
    pub centre_of_gravity: Vec3,
    /// Elastic axes and centres of the mounts, with dynamic rates.
    pub elastic: ElasticAxes,
    /// Distance of the torque roll axis from the crank line [m], when a point of the crank line is known.
    pub torque_roll_from_crank: Option<f64>,
    /// Distance of the elastic centre from the crank line [m], likewise.
    pub elastic_centre_from_crank: Option<f64>,
}

/// Motion of a point over all load cases.
#[derive(Debug, Clone, PartialEq)]
pub struct Envelope {
    /// Smallest motion along x, y, z [m].
    pub least: Vec3,
    /// Largest motion along x, y, z [m].
    pub most: Vec3,
    /// Load cases at which the smallest motions occur, as places in `Model::loads`.
    pub least_at: [usize; 3],
    /// Load cases at which the largest motions occur.
    pub most_at: [usize; 3],
}

/// Firing at idle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Idle {
    /// Firing pulses per turn of the crank.
    pub order: f64,
    /// Firing frequency [Hz].
    pub frequency_hz: f64,
}
