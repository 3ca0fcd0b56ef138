//! Units.
pub mod show;
