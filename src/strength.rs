//! Strength of what holds a mount: bolts, sleeves, rails, plates, welds, pairs of metals.
//!
//! One function a clause, on plain numbers in SI; knows no mount, load case or file.

pub mod galvanic;
pub mod polymer;
