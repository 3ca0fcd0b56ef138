//! A build at rest on its mounts, from which every load case starts.

use crate::drive::torque::{OutputTorque, output_torque};
use crate::model::isolator::Isolator;
use crate::model::load::LoadCase;
use crate::model::mass::MassProperties;
use crate::model::{Fitted, Model};
use crate::rigid::equilibrium::{StaticEquilibrium, solve_equilibrium};
use crate::rigid::failure::StaticsFailure;
use crate::rigid::loading::Loading;
use crate::rigid::modes::{solve_modes, turn_about};
use crate::rigid::mount_response::HeldMount;
use crate::rigid::settled::settled_mounts;
use crate::rigid::supported::Supported;
use crate::spatial::{STANDARD_GRAVITY, Vec3, Wrench};

use super::axes::torque_roll;
use super::evaluate::{LoadResult, ModesAt};

/// A build in its rest position, from which every load case starts.
pub(super) struct Resting<'a> {
    pub(super) model: &'a Model,
    /// Every mount, unloaded where it is when the powertrain is not there.
    pub(super) held: Vec<HeldMount<'a>>,
    /// The whole powertrain on them.
    pub(super) whole: Supported<'a>,
    /// Where it rests under its weight.
    pub(super) rest: StaticEquilibrium,
}

impl<'a> Resting<'a> {
    pub(super) fn of(model: &'a Model, isolators: &'a [Isolator]) -> Result<Self, StaticsFailure> {
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
        if !load.is_service_state() && load.chassis_twist.is_none() {
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
            .map(|mount| {
                let twist = load.chassis_twist.filter(|twist| twist.mount == mount);
                twist.map_or(self.held[mount], |twist| {
                    self.held[mount].shifted(&twist.by)
                })
            })
            .collect();
        Ok(Supported::new(mass, mounts)?)
    }

    /// One load case.
    pub(super) fn load(&self, index: usize) -> LoadResult {
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

    /// Modes about a loaded position.
    pub(super) fn modes(
        &self,
        load: usize,
        loaded: &StaticEquilibrium,
    ) -> Result<ModesAt, StaticsFailure> {
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
