//! Firing order and firing frequency at idle.

use crate::model::drivetrain::{Cycle, Engine};

/// Firing pulses per turn of the crank of an evenly firing machine; `None` for one that does not fire.
///
/// # Equation
///   four-stroke: N/2,   two-stroke: N,   rotary-piston: one per rotor and turn of the shaft
///
/// # Source
/// Derived: each cylinder fires once in two turns or once a turn. Also
/// published: A. J. Martyr, M. A. Plint, Engine Testing (chapter on vibration),
/// from memory.
#[must_use]
pub fn firing_order(cycle: Cycle) -> Option<f64> {
    match cycle {
        Cycle::FourStroke { cylinders } => Some(f64::from(cylinders) / 2.0),
        Cycle::TwoStroke { cylinders } => Some(f64::from(cylinders)),
        Cycle::RotaryPiston { rotors } => Some(f64::from(rotors)),
        Cycle::Electric { .. } => None,
    }
}

/// Firing at idle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Idle {
    /// Firing pulses per turn of the crank.
    pub order: f64,
    /// Firing frequency \[Hz\].
    pub frequency_hz: f64,
}

/// Firing at the idle speed; `None` when the machine does not fire or its idle speed is not known.
#[must_use]
pub fn firing_at_idle(engine: &Engine) -> Option<Idle> {
    let order = firing_order(engine.cycle)?;
    let turns_per_second = engine.idle? / std::f64::consts::TAU;
    Some(Idle {
        order,
        frequency_hz: order * turns_per_second,
    })
}
