//! Torque on the crank by order, as the file gives it.

use std::f64::consts::TAU;

use crate::diagnostic::Code;
use crate::model::reader::{Bound, Section};
use crate::units::Quantity;

/// Highest order that is taken: far above the slot orders of any machine.
const HIGHEST: f64 = 200.0;

/// One order of the torque on the crank: `Re(T e^(i (order θ + phase)))`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TorqueHarmonic {
    /// Order of the crank, a multiple of one half.
    pub order: f64,
    /// Amplitude at idle [N m].
    pub idle: f64,
    /// Amplitude at full load [N m].
    pub full: f64,
    /// Lead over cos(order θ) \[rad\].
    pub phase: f64,
}

/// Reads `harmonics`.
pub(super) fn read(section: &Section<'_>) -> Vec<TorqueHarmonic> {
    section.refuse_empty(
        "harmonics",
        "an order, such as { order = 2, torque = \"75 N m\" }",
    );
    let all: Vec<Option<TorqueHarmonic>> = section
        .sections("harmonics")
        .into_iter()
        .map(read_one)
        .collect();
    all.into_iter().flatten().collect()
}

fn read_one(section: Section<'_>) -> Option<TorqueHarmonic> {
    const AMPLITUDE: Bound = Bound::Stated(0.0, 1e6, "between 0 and 1e6 N m");
    section.must_have(&[
        ("order", "times a turn of the crank, such as 2"),
        ("torque", "amplitude at full load, such as \"75 N m\""),
    ]);
    let order = section.ratio("order", Bound::Within(0.5, HIGHEST));
    if let Some(order) = order
        && (2.0 * order).fract() != 0.0
    {
        section.refuse(
            "order",
            Code::OutOfRange,
            format!(
                "{} is no multiple of one half: {order}",
                section.key_name("order")
            ),
            "what repeats with the working cycle has orders 0.5, 1, 1.5 and so on",
        );
    }
    let full = section.quantity("torque", Quantity::Torque, AMPLITUDE);
    let idle = section.quantity("idle_torque", Quantity::Torque, AMPLITUDE);
    let phase = section.quantity(
        "phase",
        Quantity::Angle,
        Bound::Stated(-2.0 * TAU, 2.0 * TAU, "within two turns either way"),
    );
    if !section.has("idle_torque") {
        section.assume("idle_torque", "as at full load");
    }
    section.finish();
    Some(TorqueHarmonic {
        order: order?,
        idle: idle.or(full)?,
        full: full?,
        phase: phase.unwrap_or(0.0),
    })
}
