//! bedplate.
pub mod units;
