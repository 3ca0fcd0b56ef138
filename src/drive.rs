//! What the machine does to the powertrain that carries it: torque at the outputs, firing.
//!
//! Knows no mount and no rigid body.

pub mod firing;
pub mod torque;
