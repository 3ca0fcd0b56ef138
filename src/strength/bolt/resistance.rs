//! Resistances of a single bolt in a thin pack, as structures are designed.
//!
//! A long bolt with play inside a sleeve bends; these forms do not know that.

use std::f64::consts::PI;

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

/// A hole as a bolt bears on it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bearing {
    /// Nominal diameter d of the bolt \[m\].
    pub nominal: f64,
    /// Hole d0 \[m\].
    pub hole: f64,
    /// Thickness t of the part \[m\].
    pub thickness: f64,
    /// From the hole to the edge along the force, e1 \[m\].
    pub end: f64,
    /// From the hole to the edge across the force, e2 \[m\].
    pub edge: f64,
    /// To the next hole along the force, p1 \[m\]; infinite when there is none.
    pub next_along: f64,
    /// To the next hole across the force, p2 \[m\]; infinite when there is none.
    pub next_across: f64,
    /// Tensile strength fu of the part \[Pa\].
    pub part_tensile: f64,
    /// Tensile strength fub of the bolt \[Pa\].
    pub bolt_tensile: f64,
}

impl Bearing {
    /// Force at which the hole gives or tears out \[N\].
    ///
    /// # Equation
    ///   Fb = k1 αb fu d t/γM2
    ///   αb = min(e1/(3 d0), p1/(3 d0) − 1/4, fub/fu, 1)
    ///   k1 = min(2.8 e2/d0 − 1.7, 1.4 p2/d0 − 1.7, 2.5)
    ///
    /// # Range
    /// Normal holes, e1 and e2 at least 1.2 d0, p1 2.2 d0, p2 2.4 d0. Never below zero.
    ///
    /// # Source
    /// EN 1993-1-8, table 3.4, from memory.
    #[must_use]
    pub fn resistance(&self) -> f64 {
        let hole = self.hole;
        let along = (self.end / (3.0 * hole))
            .min(self.next_along / (3.0 * hole) - 0.25)
            .min(self.bolt_tensile / self.part_tensile)
            .min(1.0);
        let across = (2.8 * self.edge / hole - 1.7)
            .min(1.4 * self.next_across / hole - 1.7)
            .min(2.5);
        across.max(0.0) * along.max(0.0) * self.part_tensile * self.nominal * self.thickness
            / SAFETY
    }
}

/// Pull at which a head or nut punches through a part \[N\].
///
/// # Equation
///   Bp = 0.6 π dm t fu/γM2
///
///   dm  mean of the widths across flats and corners, or washer diameter  \[m\]
///   t   thickness                                                        \[m\]
///   fu  tensile strength of the part                                     \[Pa\]
///
/// # Source
/// EN 1993-1-8, table 3.4, from memory.
#[must_use]
pub fn punching(mean_diameter: f64, thickness: f64, part_tensile: f64) -> f64 {
    0.6 * PI * mean_diameter * thickness * part_tensile / SAFETY
}
