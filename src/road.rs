//! What the road does to a vehicle, and how one mass on a spring or a seated person takes it.
//!
//! Plain numbers in SI; knows no mount, load case or file. What is refused is
//! `None` from a constructor: a pulse without length, a damping that does not swing.

pub mod bump;
pub mod oscillator;
pub mod pulse;
pub mod ride;
pub mod roughness;
pub mod shock;
pub mod track;
pub mod transmissibility;
