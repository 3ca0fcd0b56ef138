//! The integration tests, in one binary.
#![allow(
    non_snake_case,
    reason = "frame letters in names of vectors and rotations"
)]
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::unreachable,
    reason = "a test fails by panicking"
)]

mod analytic;
mod cli;
mod diagnostics;
mod examples;
mod invariant;
mod kit;
mod models;
mod published;
mod tidy;
