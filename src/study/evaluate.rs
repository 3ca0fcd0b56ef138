//! The one function that wires the analyses together.

use crate::drive::firing::{Idle, firing_at_idle};
use crate::drive::torque::{OutputTorque, output_torque};
use crate::model::isolator::Isolator;
use crate::model::load::LoadCase;
use crate::model::mass::MassProperties;
use crate::model::{Fitted, Model};
use crate::rigid::equilibrium::{StaticEquilibrium, solve_equilibrium};
use crate::rigid::failure::StaticsFailure;
use crate::rigid::loading::Loading;
use crate::rigid::modes::{ModalSolution, solve_modes, turn_about};
use crate::rigid::mount_response::HeldMount;
use crate::rigid::settled::settled_mounts;
use crate::rigid::supported::Supported;
use crate::spatial::{STANDARD_GRAVITY, Vec3, Vec6, Wrench};

use super::axes::{Axes, torque_roll};
use super::check::{self, Check};
use super::envelope::{Envelope, envelopes};

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
    /// Firing at idle, when the machine idles.
    pub idle: Option<Idle>,
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
    /// The six modes and the matrices they come from.
    pub solution: ModalSolution,
    /// Share of a turn about the torque roll axis that each mode carries, 0 to 1, adding to 1; `None` without an engine.
    pub torque_share: Option<Vec6>,
}

/// Computes everything from a model.
///
/// # Errors
/// [`StaticsFailure`] when the powertrain has no position at rest, since every
/// other result starts there. A load case without a position is no error: it
/// says so in its own [`LoadResult`].
pub fn evaluate(model: &Model) -> Result<Evaluation, StaticsFailure> {
    let mut evaluation = results(model, &model.isolators)?;
    evaluation.checks = check::all(model, &evaluation);
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

/// A build in its rest position, from which every load case starts.
struct Resting<'a> {
    model: &'a Model,
    held: Vec<HeldMount<'a>>,
    whole: Supported<'a>,
    rest: StaticEquilibrium,
}

impl<'a> Resting<'a> {
    fn of(model: &'a Model, isolators: &'a [Isolator]) -> Result<Self, StaticsFailure> {
        let held = held_mounts(model, isolators)?;
        let whole = Supported::new(model.mass, held.clone())?;
        let rest = solve_equilibrium(&whole, &Loading::weight(model.mass.mass()), None)?;
        Ok(Self {
            model,
            held,
            whole,
            rest,
        })
    }

    /// The body that a load case holds: the whole one, or what a service state leaves of it.
    fn body(&self, load: &LoadCase) -> Result<Supported<'a>, StaticsFailure> {
        if !load.is_service_state() {
            return Ok(self.whole.clone());
        }
        let left = self
            .model
            .parts
            .iter()
            .enumerate()
            .filter(|(part, _)| !load.without_parts.contains(part))
            .map(|(_, part)| &part.mass);
        let mass = MassProperties::combine(left).unwrap_or(self.model.mass);
        let mounts = mounts_of(self.held.len(), load)
            .into_iter()
            .map(|mount| self.held[mount])
            .collect();
        Ok(Supported::new(mass, mounts)?)
    }

    fn load(&self, index: usize) -> LoadResult {
        let model = self.model;
        let load = &model.loads[index];
        let torque = output_torque(model, load);
        let mut result = LoadResult {
            load: index,
            torque,
            applied: Wrench::zero(),
            mounts: mounts_of(self.held.len(), load),
            outcome: Ok(self.rest.clone()),
            points: vec![None; model.points.len()],
            gaps: vec![None; model.clearances.len()],
        };
        let body = match self.body(load) {
            Ok(body) => body,
            Err(failure) => {
                result.outcome = Err(failure);
                return result;
            }
        };
        let loading = loading_of(model, load, torque.as_ref(), body.mass().mass());
        result.applied = applied_about(&loading, &body.mass().centre());
        if index > 0 {
            let start = (!load.is_service_state()).then_some(&self.rest);
            result.outcome = solve_equilibrium(&body, &loading, start);
        }
        if let Ok(loaded) = &result.outcome {
            result.applied = loaded.applied;
            result.points = point_motions(model, load, loaded);
            result.gaps = gaps(model, &result.points);
        }
        result
    }

    fn modes(&self, load: usize, loaded: &StaticEquilibrium) -> Result<ModesAt, StaticsFailure> {
        let body = self.body(&self.model.loads[load])?;
        let solution = solve_modes(&body, loaded)?;
        let torque_share = torque_roll(self.model, body.mass(), loaded)?
            .map(|axis| solution.motion_share(&turn_about(&axis)));
        Ok(ModesAt {
            load,
            solution,
            torque_share,
        })
    }
}

fn held_mounts<'a>(
    model: &'a Model,
    isolators: &'a [Isolator],
) -> Result<Vec<HeldMount<'a>>, StaticsFailure> {
    let held: Vec<HeldMount<'_>> = model
        .mounts
        .iter()
        .map(|mount| HeldMount::fitted_free(mount, &isolators[mount.isolator]))
        .collect();
    if model.fitted == Fitted::Settled {
        return settled_mounts(&model.mass, &held);
    }
    Ok(held)
}

fn mounts_of(number: usize, load: &LoadCase) -> Vec<usize> {
    (0..number)
        .filter(|mount| !load.without_mounts.contains(mount))
        .collect()
}

fn loading_of(model: &Model, load: &LoadCase, torque: Option<&OutputTorque>, mass: f64) -> Loading {
    let gravity = Vec3::new(0.0, 0.0, -STANDARD_GRAVITY);
    let acceleration = load.vehicle_acceleration.unwrap_or_else(Vec3::zeros);
    Loading {
        at_centre: (gravity - acceleration) * mass,
        moment: torque.map_or_else(Vec3::zeros, |torque| torque.moment),
        at_points: load
            .applied
            .iter()
            .map(|applied| (model.points[applied.point].at, applied.wrench))
            .collect(),
    }
}

fn applied_about(loading: &Loading, centre: &Vec3) -> Wrench {
    let at_centre = Wrench {
        force: loading.at_centre,
        moment: loading.moment,
    };
    loading
        .at_points
        .iter()
        .fold(at_centre, |sum, (point, wrench)| {
            let turning = Wrench {
                force: Vec3::zeros(),
                moment: wrench.moment,
            };
            sum + Wrench::of_force_at(wrench.force, point - centre) + turning
        })
}

fn point_motions(model: &Model, load: &LoadCase, loaded: &StaticEquilibrium) -> Vec<Option<Vec3>> {
    model
        .points
        .iter()
        .map(|point| {
            let gone = point
                .part
                .is_some_and(|part| load.without_parts.contains(&part));
            (!gone).then(|| loaded.displacement_of(point.at))
        })
        .collect()
}

fn gaps(model: &Model, points: &[Option<Vec3>]) -> Vec<Option<f64>> {
    model
        .clearances
        .iter()
        .map(|clearance| {
            let motion = points[clearance.point]?;
            Some(clearance.gap - clearance.toward.dot(&motion))
        })
        .collect()
}
