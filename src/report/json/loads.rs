//! Load cases and the motion of points, in the results document.

use serde::Serialize;

use crate::model::Model;
use crate::report::content::loads::origin_word;
use crate::report::content::names;
use crate::rigid::equilibrium::{MountState, StaticEquilibrium};
use crate::spatial::{Vec3, Wrench, roll_pitch_yaw};
use crate::study::evaluate::{Evaluation, LoadResult};

use super::triple;

#[derive(Serialize)]
pub(super) struct LoadOut<'a> {
    name: &'a str,
    /// `service`, `durability`, `extreme` or `restraint`.
    class: &'static str,
    /// `at rest`, `file` or `usual`.
    origin: &'static str,
    converged: bool,
    /// Why there is no position.
    failure: Option<String>,
    /// What is left out of balance, moments over the arm of the mounts.
    residual_n: Option<f64>,
    iterations: Option<usize>,
    /// Of the centre of gravity.
    displacement_m: Option<[f64; 3]>,
    /// Rotation vector in vehicle axes: its direction is the axis, its length the angle.
    rotation_rad: Option<[f64; 3]>,
    /// The same rotation as roll, pitch and yaw.
    roll_pitch_yaw_rad: Option<[f64; 3]>,
    /// Centre of gravity of what is held, in this position.
    centre_of_gravity_m: Option<[f64; 3]>,
    /// Everything but the mounts, about the centre of gravity in this position, or in the fitted one when none was found.
    applied_wrench: WrenchOut,
    output_torque_nm: Option<f64>,
    grip_cap_nm: Option<f64>,
    mounts: Vec<MountOut<'a>>,
    points: Vec<PointOut<'a>>,
    clearances: Vec<ClearanceOut<'a>>,
}

#[derive(Serialize)]
pub(super) struct WrenchOut {
    force_n: [f64; 3],
    moment_nm: [f64; 3],
}

#[derive(Serialize)]
struct MountOut<'a> {
    name: &'a str,
    /// Where the force acts on the powertrain, in this position.
    acts_at_m: [f64; 3],
    force_on_powertrain_n: [f64; 3],
    force_on_chassis_n: [f64; 3],
    /// About the mount point, beside that of the force. Zero: a law knows deflection and no turn, so its force has no arm there.
    moment_on_powertrain_nm: [f64; 3],
    /// Along u, v, w, bracket and chassis included.
    deflection_m: [f64; 3],
    /// Along u, v, w, the isolator alone.
    isolator_deflection_m: [f64; 3],
    /// Static rate of isolator, bracket and chassis along u, v, w at this deflection.
    rate_n_per_m: [f64; 3],
    on_stop: bool,
    /// Along u, v, w.
    stops_touched: [bool; 3],
    energy_j: f64,
}

#[derive(Serialize)]
struct PointOut<'a> {
    name: &'a str,
    displacement_m: [f64; 3],
}

#[derive(Serialize)]
struct ClearanceOut<'a> {
    name: &'a str,
    gap_m: f64,
    keep_m: f64,
}

#[derive(Serialize)]
pub(super) struct EnvelopeOut<'a> {
    name: &'a str,
    least_m: [f64; 3],
    most_m: [f64; 3],
    /// Load case of each smallest motion.
    least_at: [&'a str; 3],
    most_at: [&'a str; 3],
}

impl<'a> LoadOut<'a> {
    pub(super) fn of(model: &'a Model, result: &'a LoadResult) -> Self {
        let load = model.loads.get(result.load);
        let found = result.outcome.as_ref();
        let position: Option<&StaticEquilibrium> = found.ok();
        Self {
            name: names::load(model, result.load),
            class: load.map_or("", |load| load.class.word()),
            origin: load.map_or("", |load| origin_word(load.origin)),
            converged: position.is_some(),
            failure: found.err().map(ToString::to_string),
            residual_n: position.map(|p| p.residual),
            iterations: position.map(|p| p.iterations),
            displacement_m: position.map(|p| triple(&p.displacement)),
            rotation_rad: position.map(|p| p.rotation.scaled_axis().into()),
            roll_pitch_yaw_rad: position.map(|p| roll_pitch_yaw(&p.rotation)),
            centre_of_gravity_m: position.map(|p| triple(&p.pose.position)),
            applied_wrench: WrenchOut::of(&result.applied),
            output_torque_nm: result.torque.map(|torque| torque.delivered),
            grip_cap_nm: result.torque.and_then(|torque| torque.grip_cap),
            mounts: position.map_or_else(Vec::new, |p| mounts(model, result, p)),
            points: points(model, result),
            clearances: clearances(model, result),
        }
    }
}

impl WrenchOut {
    pub(super) fn of(wrench: &Wrench) -> Self {
        Self {
            force_n: triple(&wrench.force),
            moment_nm: triple(&wrench.moment),
        }
    }
}

fn mounts<'a>(
    model: &'a Model,
    result: &LoadResult,
    position: &StaticEquilibrium,
) -> Vec<MountOut<'a>> {
    result
        .mounts
        .iter()
        .zip(&position.mounts)
        .map(|(&place, state)| mount(names::mount(model, place), &position.pose.position, state))
        .collect()
}

fn mount<'a>(name: &'a str, centre: &Vec3, state: &MountState) -> MountOut<'a> {
    MountOut {
        name,
        acts_at_m: triple(&(centre + state.arm)),
        force_on_powertrain_n: triple(&state.force_on_powertrain),
        force_on_chassis_n: triple(&-state.force_on_powertrain),
        moment_on_powertrain_nm: triple(&state.moment_on_powertrain),
        deflection_m: triple(&state.deflection),
        isolator_deflection_m: triple(&state.isolator_deflection),
        rate_n_per_m: triple(&state.rate.diagonal()),
        on_stop: state.on_stop.contains(&true),
        stops_touched: state.on_stop,
        energy_j: state.energy,
    }
}

fn points<'a>(model: &'a Model, result: &LoadResult) -> Vec<PointOut<'a>> {
    model
        .points
        .iter()
        .zip(&result.points)
        .filter_map(|(point, moved)| {
            Some(PointOut {
                name: &point.name,
                displacement_m: triple(moved.as_ref()?),
            })
        })
        .collect()
}

fn clearances<'a>(model: &'a Model, result: &LoadResult) -> Vec<ClearanceOut<'a>> {
    model
        .clearances
        .iter()
        .zip(&result.gaps)
        .filter_map(|(clearance, gap)| {
            Some(ClearanceOut {
                name: &clearance.name,
                gap_m: (*gap)?,
                keep_m: clearance.keep,
            })
        })
        .collect()
}

pub(super) fn envelopes<'a>(model: &'a Model, evaluation: &Evaluation) -> Vec<EnvelopeOut<'a>> {
    model
        .points
        .iter()
        .zip(&evaluation.envelopes)
        .map(|(point, envelope)| EnvelopeOut {
            name: &point.name,
            least_m: triple(&envelope.least),
            most_m: triple(&envelope.most),
            least_at: envelope.least_at.map(|load| names::load(model, load)),
            most_at: envelope.most_at.map(|load| names::load(model, load)),
        })
        .collect()
}
