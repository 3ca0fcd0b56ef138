//! Fillet welds as lines: any group, any load, strength of the throat.

pub mod group;
pub mod shapes;
pub mod strength;

pub use group::{WeldGroup, WeldStress};

/// Throat of a fillet with equal legs of this length \[m\].
///
/// # Equation
///   a = h/√2
///
/// # Source
/// Derived. The same: R. G. Budynas, J. K. Nisbett, Shigley's Mechanical
/// Engineering Design, 9th ed., chapter 9, 0.707 h.
#[must_use]
pub fn throat(leg: f64) -> f64 {
    leg * std::f64::consts::FRAC_1_SQRT_2
}
