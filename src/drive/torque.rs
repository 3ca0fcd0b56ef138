//! Torque at the outputs of the powertrain, gear by gear, capped by what the tyres can hold.

use crate::model::Model;
use crate::model::drivetrain::{Driveline, Engine, Output};
use crate::model::load::{Drive, LoadCase};
use crate::model::surroundings::{Driven, Vehicle};
use crate::spatial::{STANDARD_GRAVITY, Vec3};

/// Torque that leaves the powertrain in a load case.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OutputTorque {
    /// Torque that the outputs deliver [N m], forward drive positive, shock factor included.
    pub delivered: f64,
    /// Steady torque at which the driven tyres let go [N m, at the outputs]; `None` when the case is not limited by grip.
    pub grip_cap: Option<f64>,
    /// External moment on the powertrain, fixed in vehicle axes [N m].
    pub moment: Vec3,
}

/// Torque that leaves the powertrain in `load`; `None` when the case has no drive.
///
/// # Equation
///   propshaft:     T = Te i                 M = -f T about the flange's forward direction
///   axle shafts:   T = Te i i_f η           M = -f T about +y
///   the wheels drive the engine (throttle below zero): 1/η in place of η, since losses brake too
///
///   Te  engine torque times throttle        [N m]
///   i   gear ratio, i_f final drive, η efficiency
///   f   driveline shock
///
/// The steady torque is capped by grip first and multiplied by the shock after,
/// since a dropped clutch loads the driveline beyond what the tyres hold.
/// Efficiency counts between gearbox and wheels; what the gearbox itself loses
/// is left out, which errs on the high side.
///
/// # Range
/// Level road. A wheel that is stuck or locked is not covered by the grip cap.
///
/// # Source
/// Derived: the powertrain feels minus what its shafts deliver.
#[must_use]
pub fn output_torque(model: &Model, load: &LoadCase) -> Option<OutputTorque> {
    let driveline = model.driveline.as_ref()?;
    let drive = load.drive.as_ref()?;
    let losses = losses(driveline, drive);
    let steady = match drive {
        Drive::OutputTorque(torque) => *torque,
        Drive::Gear { gear, throttle } => {
            steady_torque(model.engine.as_ref()?, driveline, *gear, *throttle, losses)?
        }
    };
    let grip_cap = match (load.grip_limited, &model.vehicle) {
        (true, Some(vehicle)) => {
            let force =
                tractive_limit(vehicle, load.vehicle_acceleration.as_ref(), steady.signum());
            let at_wheels = force * vehicle.tyre_radius;
            Some(match driveline.output {
                Output::Propshaft => at_wheels / (driveline.final_drive * losses),
                Output::AxleShafts => at_wheels,
            })
        }
        _ => None,
    };
    let capped = grip_cap.map_or(steady, |cap| steady.clamp(-cap, cap));
    let delivered = capped * load.factor;
    Some(OutputTorque {
        delivered,
        grip_cap,
        moment: driveline.output_direction * -delivered,
    })
}

fn steady_torque(
    engine: &Engine,
    driveline: &Driveline,
    gear: usize,
    throttle: f64,
    losses: f64,
) -> Option<f64> {
    let gear = driveline.gears.get(gear)?;
    let way = if gear.is_reverse() { -1.0 } else { 1.0 };
    let at_gearbox = way * engine.torque? * throttle * gear.ratio;
    Some(match driveline.output {
        Output::Propshaft => at_gearbox,
        Output::AxleShafts => at_gearbox * driveline.final_drive * losses,
    })
}

/// Torque at the wheels over torque at the gearbox times final drive: losses help to brake and hinder to drive.
fn losses(driveline: &Driveline, drive: &Drive) -> f64 {
    match drive {
        Drive::Gear { throttle, .. } if *throttle < 0.0 => 1.0 / driveline.efficiency,
        _ => driveline.efficiency,
    }
}

/// Largest force the driven tyres can put on the road \[N\], `way` +1 for a push forward, −1 for one backward.
///
/// # Equation
///   with the acceleration (ax, az) of the load case:
///     rear:   F = μ m ((g + az) a + ax h) / L        front:  F = μ m ((g + az)(L − a) − ax h) / L
///   where the case states none, the force itself is the cause, ax = ±F/m:
///     rear:   F = μ m g a / (L ∓ μ h)                front:  F = μ m g (L − a) / (L ± μ h)
///   all wheels:  F = μ m (g + az)
///
///   a  front axle to centre of gravity, h its height, L wheelbase   \[m\]
///
/// # Range
/// Level road, no aerodynamic load, axle loads not below zero nor above the whole weight.
///
/// # Source
/// Derived: moments about the other axle's contact line. The rear- and
/// front-drive forms are also in T. D. Gillespie, Fundamentals of Vehicle
/// Dynamics, SAE 1992, chapter 2, traction-limited acceleration (from memory).
fn tractive_limit(vehicle: &Vehicle, stated: Option<&Vec3>, way: f64) -> f64 {
    let Vehicle {
        mass,
        wheelbase,
        tyre_grip: mu,
        ..
    } = *vehicle;
    let (a, h) = (vehicle.behind_front_axle(), vehicle.height_above_ground());
    let vertical = STANDARD_GRAVITY + stated.map_or(0.0, |acceleration| acceleration.z);
    let most = mu * mass * vertical.max(0.0);
    // Weight moves to the rear axle under a push forward.
    let (arm, gain) = match vehicle.driven {
        Driven::All => return most,
        Driven::Rear => (a, 1.0),
        Driven::Front => (wheelbase - a, -1.0),
    };
    let force = match stated {
        Some(acceleration) => mu * mass * (vertical * arm + gain * acceleration.x * h) / wheelbase,
        None => {
            let leverage = wheelbase - way * gain * mu * h;
            if leverage <= 0.0 {
                return most;
            }
            mu * mass * vertical * arm / leverage
        }
    };
    force.clamp(0.0, most)
}
