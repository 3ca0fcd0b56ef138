//! Buckling of a sleeve.

use super::Sleeve;
use crate::strength::column::{Curve, reduction, relative_slenderness};

/// Length over radius of gyration.
///
/// # Equation
///   l/i,   i = √(D² + d²)/4
///
/// # Source
/// Derived: ring.
#[must_use]
pub fn slenderness(sleeve: &Sleeve) -> f64 {
    4.0 * sleeve.length / sleeve.outer.hypot(sleeve.inner)
}

/// Load at which the sleeve buckles as a column or is squashed \[N\].
///
/// # Equation
///   F = χ A f,   χ = [`reduction`] at λ̄ of the sleeve
///
/// # Range
/// Ends held from moving aside, not from turning. Below l/i of about 20 squash
/// rules. An end out of square starts as a line contact, which matters more.
/// Characteristic: γ_M1, usually 1.0.
///
/// # Source
/// EN 1993-1-1:2005, 6.3.1 (from memory).
#[must_use]
pub fn column_load(sleeve: &Sleeve, youngs_modulus: f64, yield_strength: f64, curve: Curve) -> f64 {
    let relative = relative_slenderness(slenderness(sleeve), youngs_modulus, yield_strength);
    reduction(relative, curve) * sleeve.area() * yield_strength
}

/// Stress at which the wall of the sleeve folds as a shell \[Pa\]; none while R/t is 30 or less, where it yields first.
///
/// # Equation
///   σ = 0.605 γ E t/R,   γ = 1 − 0.901 (1 − exp(−√(R/t)/16))
///
///   R, t  radius of the middle of the wall, wall  \[m\]
///
/// # Range
/// R/t up to 1500, elastic.
///
/// # Source
/// NASA SP-8007, Buckling of thin-walled circular cylinders (from memory).
#[must_use]
pub fn shell_stress(sleeve: &Sleeve, youngs_modulus: f64) -> Option<f64> {
    let wall = (sleeve.outer - sleeve.inner) / 2.0;
    let thinness = (sleeve.outer + sleeve.inner) / 4.0 / wall;
    (thinness > 30.0).then(|| {
        let knock_down = 1.0 - 0.901 * (1.0 - (-thinness.sqrt() / 16.0).exp());
        0.605 * knock_down * youngs_modulus / thinness
    })
}

/// Outer diameter over wall up to which a tube reaches its yield load.
///
/// # Equation
///   D/t ≤ 90 · 235 MPa/f
///
/// # Source
/// EN 1993-1-1:2005, table 5.2, class 3 (from memory).
#[must_use]
pub fn class_limit(yield_strength: f64) -> f64 {
    90.0 * 235e6 / yield_strength
}
