//! What the model says, in the results document.

use serde::Serialize;

use crate::model::drivetrain::{Cycle, Engine};
use crate::model::surroundings::{Driven, Vehicle};
use crate::model::{Assumption, Fitted, Model};

use super::{rows, triple};

#[derive(Serialize)]
pub(super) struct BuildOut<'a> {
    origin: &'a str,
    /// `free` or `settled`.
    fitted: &'static str,
    assumptions: Vec<AssumptionOut<'a>>,
    vehicle: Option<VehicleOut>,
    engine: Option<EngineOut>,
    parts: Vec<PartOut<'a>>,
    mass: MassOut,
}

#[derive(Serialize)]
pub(super) struct AssumptionOut<'a> {
    key: &'a str,
    text: &'a str,
}

#[derive(Serialize)]
struct VehicleOut {
    mass_kg: f64,
    wheelbase_m: f64,
    centre_of_gravity_m: [f64; 3],
    front_axle_m: [f64; 3],
    tyre_radius_m: f64,
    tyre_grip: f64,
    /// `front`, `rear` or `all`.
    driven: &'static str,
}

#[derive(Serialize)]
struct EngineOut {
    /// Word of the model file.
    cycle: &'static str,
    /// Cylinders, rotors or pole pairs.
    count: Option<u32>,
    crank_direction: [f64; 3],
    crank_at_m: Option<[f64; 3]>,
    torque_nm: Option<f64>,
    idle_rad_per_s: Option<f64>,
    redline_rad_per_s: Option<f64>,
}

#[derive(Serialize)]
struct PartOut<'a> {
    name: &'a str,
    mass_kg: f64,
    centre_of_gravity_m: [f64; 3],
}

#[derive(Serialize)]
struct MassOut {
    total_kg: f64,
    centre_of_gravity_m: [f64; 3],
    /// About the centre of gravity; off-diagonals are minus the integrals.
    inertia_kg_m2: [[f64; 3]; 3],
    /// Rising.
    principal_kg_m2: [f64; 3],
    /// One unit vector a principal value.
    principal_axes: [[f64; 3]; 3],
}

impl<'a> AssumptionOut<'a> {
    pub(super) fn of(assumption: &'a Assumption) -> Self {
        Self {
            key: &assumption.key,
            text: &assumption.text,
        }
    }
}

impl<'a> BuildOut<'a> {
    pub(super) fn of(model: &'a Model) -> Self {
        let (principal, axes) = model.mass.principal();
        Self {
            origin: &model.origin,
            fitted: match model.fitted {
                Fitted::Free => "free",
                Fitted::Settled => "settled",
            },
            assumptions: model.assumptions.iter().map(AssumptionOut::of).collect(),
            vehicle: model.vehicle.as_ref().map(vehicle),
            engine: model.engine.as_ref().map(engine),
            parts: model
                .parts
                .iter()
                .map(|part| PartOut {
                    name: &part.name,
                    mass_kg: part.mass.mass(),
                    centre_of_gravity_m: triple(&part.mass.centre()),
                })
                .collect(),
            mass: MassOut {
                total_kg: model.mass.mass(),
                centre_of_gravity_m: triple(&model.mass.centre()),
                inertia_kg_m2: rows(&model.mass.inertia()),
                principal_kg_m2: triple(&principal),
                principal_axes: rows(&axes.transpose()),
            },
        }
    }
}

fn vehicle(vehicle: &Vehicle) -> VehicleOut {
    VehicleOut {
        mass_kg: vehicle.mass,
        wheelbase_m: vehicle.wheelbase,
        centre_of_gravity_m: triple(&vehicle.centre_of_gravity),
        front_axle_m: triple(&vehicle.front_axle),
        tyre_radius_m: vehicle.tyre_radius,
        tyre_grip: vehicle.tyre_grip,
        driven: match vehicle.driven {
            Driven::Front => "front",
            Driven::Rear => "rear",
            Driven::All => "all",
        },
    }
}

fn engine(engine: &Engine) -> EngineOut {
    let (cycle, count) = match engine.cycle {
        Cycle::FourStroke { cylinders } => ("four-stroke", Some(cylinders)),
        Cycle::TwoStroke { cylinders } => ("two-stroke", Some(cylinders)),
        Cycle::RotaryPiston { rotors } => ("rotary-piston", Some(rotors)),
        Cycle::Electric { pole_pairs } => ("electric", pole_pairs),
    };
    EngineOut {
        cycle,
        count,
        crank_direction: triple(&engine.crank_direction),
        crank_at_m: engine.crank_at.as_ref().map(triple),
        torque_nm: engine.torque,
        idle_rad_per_s: engine.idle,
        redline_rad_per_s: engine.redline,
    }
}
