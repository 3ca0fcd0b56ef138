//! Brackets and base plates about their bolts: bearing, tear-out, net section, bending, prying.

pub mod bearing;
pub mod edge_distance;
pub mod net_section;
pub mod prying;
pub mod strip;
pub mod t_stub;
pub mod tear_out;
