//! The integration tests, in one binary.

mod analytic;
mod diagnostics;
mod invariant;
