//! The powertrain as a rigid body on its mounts: statics, modes, axes.
//!
//! Takes mass properties, mounts and loads; knows no engine, gear or file.

pub mod axes;
pub mod equilibrium;
pub mod failure;
pub mod loading;
pub mod modes;
pub mod mount_response;
mod rod;
pub mod settled;
pub mod supported;
pub mod turning;
pub mod unsupported;
