//! Compressive stress in a sleeve.

use super::Sleeve;

/// How far below yield a sleeve stays, since its creep is clamp force lost.
///
/// # Source
/// Common practice.
pub const MARGIN: f64 = 1.1;

/// Stress in the sleeve under a force \[Pa\]: with the greatest preload, all of which it may carry.
///
/// # Equation
///   σ = F/A
///
/// # Range
/// Ends square and whole; what it stands on needs the same check.
///
/// # Source
/// Derived.
#[must_use]
pub fn stress(sleeve: &Sleeve, force: f64) -> f64 {
    force / sleeve.area()
}

/// Force that a sleeve may carry for good \[N\].
///
/// # Equation
///   F = A f/1.1
///
/// # Source
/// Common practice: [`MARGIN`].
#[must_use]
pub fn permissible_force(sleeve: &Sleeve, yield_strength: f64) -> f64 {
    sleeve.area() * yield_strength / MARGIN
}
