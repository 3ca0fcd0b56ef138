//! What the machine does to the powertrain that carries it: torque at the outputs, firing, shaking.
//!
//! Knows no mount and no rigid body.

pub mod balance;
pub mod crank;
pub mod excitation;
pub mod firing;
pub mod gas;
pub mod torque;
