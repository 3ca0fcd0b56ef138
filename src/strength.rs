//! Strength of what holds a mount: bolts, sleeves, rails, plates, welds, pairs of metals.
//!
//! One function a clause, on plain numbers in SI; knows no mount, load case or file.
//!
//! Resistances are characteristic values: the caller divides by a partial
//! factor, whose usual value the doc of each function names. A function whose
//! formula was made for a range either tells that the numbers lie outside or
//! gives nothing; it never returns a guess in silence.

pub mod bolt;
pub mod column;
pub mod galvanic;
pub mod pattern;
pub mod plate;
pub mod polymer;
pub mod rail;
pub mod sleeve;
pub mod weld;
