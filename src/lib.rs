//! bedplate.
#![allow(
    non_snake_case,
    reason = "frame letters in names of vectors and rotations: see `spatial`"
)]
pub mod diagnostic;
pub mod drive;
pub mod model;
pub mod numeric;
pub mod report;
pub mod rigid;
pub mod spatial;
pub mod study;
pub mod units;
