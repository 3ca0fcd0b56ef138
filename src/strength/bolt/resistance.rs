//! Resistances of a single bolt in a thin pack, as structures are designed.
//!
//! A long bolt with play inside a sleeve bends; these forms do not know that.

/// Partial factor of bolts and of holes.
///
/// # Source
/// EN 1993-1-8, 2.2, from memory.
pub const SAFETY: f64 = 1.25;

/// What the shear plane cuts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Plane {
    /// The thread.
    Thread,
    /// The plain shank.
    Shank,
}

/// Shear of the bolt in one plane \[N\].
///
/// # Equation
///   Fv = αv fub A/γM2
///   αv = 0.6;   0.5 for brittle bolts where the plane cuts the thread
///
///   fub  tensile strength of the bolt                       \[Pa\]
///   A    stress area in the thread, full area in the shank  \[m²\]
///
/// # Range
/// `ductile` holds for 4.6, 5.6 and 8.8; not for 4.8, 5.8, 6.8 and 10.9, nor above,
/// nor for stainless bolts.
///
/// # Source
/// EN 1993-1-8, table 3.4, and EN 1993-1-4 for stainless bolts, both from memory.
#[must_use]
pub fn shear(ductile: bool, plane: Plane, tensile: f64, area: f64) -> f64 {
    let factor = match plane {
        Plane::Thread if !ductile => 0.5,
        Plane::Thread | Plane::Shank => 0.6,
    };
    factor * tensile * area / SAFETY
}

/// Tension of the bolt \[N\].
///
/// # Equation
///   Ft = 0.9 fub As/γM2
///
/// # Range
/// Heads that are not countersunk.
///
/// # Source
/// EN 1993-1-8, table 3.4, from memory.
#[must_use]
pub fn tension(tensile: f64, stress_area: f64) -> f64 {
    0.9 * tensile * stress_area / SAFETY
}

/// Use of a bolt in shear and tension together; above 1 it fails.
///
/// # Equation
///   u = max(Fv/FvR + Ft/(1.4 FtR), Ft/FtR)
///
/// # Source
/// EN 1993-1-8, table 3.4, from memory.
#[must_use]
pub fn together(shear: f64, shear_limit: f64, tension: f64, tension_limit: f64) -> f64 {
    let pull = tension.max(0.0) / tension_limit;
    (shear.abs() / shear_limit + pull / 1.4).max(pull)
}
