//! The usual set of load cases: what a road vehicle does to its mounts, for those who have no measured loads.
//!
//! No case of class `restraint`: what holds in a crash is for a licensed
//! engineer, who may write one in the file.
//!
//! Every number here is common practice, is shown in the report, and gives way
//! to a case of the same name in the file.

use super::{Drive, LoadCase, LoadClass, LoadOrigin};
use crate::model::drivetrain::{Cycle, Driveline, Engine, Gear};
use crate::model::reader::Other;
use crate::model::surroundings::Vehicle;
use crate::spatial::{STANDARD_GRAVITY, Vec3};

/// Name of the steady full-torque case, about which modes are shown by default.
pub const FULL_TORQUE: &str = "full torque";

/// Multiple of the steady torque when the clutch is let in hard.
const CLUTCH_SHOCK: f64 = 1.5;

/// Multiple of the steady torque when an electric machine, which has no clutch, takes up the play of the driveline.
const ELECTRIC_SHOCK: f64 = 1.2;

/// Share of the highest torque with which a piston engine holds the car back.
const OVERRUN_SHARE: f64 = -0.4;

/// Acceleration cases: name, class, vehicle acceleration in g without gravity.
const ROAD: &[(&str, LoadClass, [f64; 3])] = &[
    ("braking", LoadClass::Durability, [-1.0, 0.0, 0.0]),
    ("left bend", LoadClass::Durability, [0.0, 1.0, 0.0]),
    ("right bend", LoadClass::Durability, [0.0, -1.0, 0.0]),
    ("bump", LoadClass::Durability, [0.0, 0.0, 2.0]),
    ("rebound", LoadClass::Durability, [0.0, 0.0, -1.5]),
    ("pothole", LoadClass::Extreme, [-1.0, 0.0, 4.0]),
];

/// The set for a build; torque cases only when engine torque and gears are known.
pub(crate) fn cases(
    engine: Other<'_, Engine>,
    driveline: Other<'_, Driveline>,
    vehicle: Other<'_, Vehicle>,
) -> Vec<LoadCase> {
    let mut cases = Vec::new();
    if let (Other::Read(driveline), Other::Read(engine)) = (driveline, engine)
        && engine.torque.is_some()
    {
        let shock = match engine.cycle {
            Cycle::Electric { .. } => ELECTRIC_SHOCK,
            _ => CLUTCH_SHOCK,
        };
        cases.extend(torque_cases(
            driveline,
            shock,
            matches!(vehicle, Other::Read(_)),
        ));
    }
    cases.extend(ROAD.iter().map(|(name, class, g)| LoadCase {
        vehicle_acceleration: Some(Vec3::from(*g) * STANDARD_GRAVITY),
        ..LoadCase::new(*name, *class, LoadOrigin::Usual)
    }));
    cases
}

fn torque_cases(driveline: &Driveline, shock: f64, grip_limited: bool) -> Vec<LoadCase> {
    let place = |wanted: Option<&Gear>| {
        wanted.and_then(|wanted| driveline.gears.iter().position(|gear| gear == wanted))
    };
    let lowest = place(driveline.lowest_forward());
    let reverse = place(driveline.reverse());
    [
        (FULL_TORQUE, LoadClass::Service, lowest, 1.0, 1.0),
        ("launch", LoadClass::Durability, lowest, 1.0, shock),
        (
            "full torque in reverse",
            LoadClass::Durability,
            reverse,
            1.0,
            1.0,
        ),
        ("overrun", LoadClass::Service, lowest, OVERRUN_SHARE, 1.0),
    ]
    .into_iter()
    .filter_map(|(name, class, gear, throttle, factor)| {
        Some(LoadCase {
            drive: Some(Drive::Gear {
                gear: gear?,
                throttle,
            }),
            factor,
            grip_limited,
            ..LoadCase::new(name, class, LoadOrigin::Usual)
        })
    })
    .collect()
}
