//! What slenderness leaves of the strength of a compressed member.

use std::f64::consts::PI;

/// Buckling curve of EN 1993-1-1, by how the member was made.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Curve {
    /// Hot-finished hollow sections.
    A,
    /// Welded boxes.
    B,
    /// Cold-formed hollow sections, solid sections.
    C,
    /// The worst: thick welded sections bent the weak way.
    D,
}

impl Curve {
    /// Imperfection factor α.
    ///
    /// # Source
    /// EN 1993-1-1:2005, table 6.1 (from memory).
    #[must_use]
    pub fn imperfection(self) -> f64 {
        match self {
            Self::A => 0.21,
            Self::B => 0.34,
            Self::C => 0.49,
            Self::D => 0.76,
        }
    }
}

/// Slenderness relative to that at which Euler's load equals the yield load.
///
/// # Equation
///   λ̄ = (l/i)/(π √(E/f))
///
///   l/i  buckling length over radius of gyration
///   E, f  Young's modulus, yield strength  \[Pa\]
///
/// # Source
/// Euler's load over the yield load: derived.
#[must_use]
pub fn relative_slenderness(slenderness: f64, youngs_modulus: f64, yield_strength: f64) -> f64 {
    slenderness / (PI * (youngs_modulus / yield_strength).sqrt())
}

/// Share χ of the yield load that a compressed member carries, 0 to 1.
///
/// # Equation
///   χ = 1/(Φ + √(Φ² − λ̄²)) ≤ 1,   Φ = (1 + α (λ̄ − 0.2) + λ̄²)/2
///
/// # Range
/// λ̄ from 0; up to 0.2 nothing is lost.
///
/// # Source
/// EN 1993-1-1:2005, 6.3.1.2 (from memory).
#[must_use]
pub fn reduction(relative_slenderness: f64, curve: Curve) -> f64 {
    let square = relative_slenderness * relative_slenderness;
    let phi = (1.0 + curve.imperfection() * (relative_slenderness - 0.2) + square) / 2.0;
    // Below 0.2 the root of the equation is above 1, down to 0, where it is real for every curve.
    (1.0 / (phi + (phi * phi - square).sqrt())).min(1.0)
}
