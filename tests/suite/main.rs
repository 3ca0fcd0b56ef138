//! Tests of the library as a whole: closed forms, published examples, invariants.

#![allow(non_snake_case, reason = "symbols of the equations, as in the library")]
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "helpers of tests: a missing answer is a failed test"
)]

mod analytic;
mod invariant;
mod kit;
mod published;
