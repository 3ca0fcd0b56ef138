//! Side walls of a box rail under a load on its face.

use super::BoxRail;
use crate::strength::column::{Curve, reduction, relative_slenderness};

/// How the side walls are loaded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Loading {
    /// Pulled.
    Pull,
    /// Pushed from one face, the rail carries the load away.
    PushOneFace,
    /// Squeezed between two opposite loads.
    Squeeze,
}

/// Load that both side walls carry under a patch over the whole face \[N\].
///
/// # Equation
///   F = k f t (2 c_x + 10 t),   k = 1 pulled, χ pushed, 0.8 χ squeezed
///   λ̄ = 3.46 (h₀/t − 2)/(π √(E/f))
///
///   c_x   length of the patch along the rail    \[m\]
///   h₀, t  outside height, wall                 \[m\]
///   χ     [`reduction`] at λ̄
///
/// # Range
/// Patch at least as wide as the face less two walls. Compression along the
/// rail: times [`stress_factor`](super::face::stress_factor). Characteristic: γ_M5,
/// usually 1.0.
///
/// # Source
/// EN 1993-1-8:2005, tables 7.11 (T and X joints) and 7.13 (from memory).
#[must_use]
pub fn strength(
    rail: &BoxRail,
    patch_length: f64,
    youngs_modulus: f64,
    yield_strength: f64,
    loading: Loading,
    curve: Curve,
) -> f64 {
    let slenderness = 3.46 * (rail.height / rail.wall - 2.0);
    let relative = relative_slenderness(slenderness, youngs_modulus, yield_strength);
    let left = match loading {
        Loading::Pull => 1.0,
        Loading::PushOneFace => reduction(relative, curve),
        Loading::Squeeze => 0.8 * reduction(relative, curve),
    };
    left * yield_strength * rail.wall * (2.0 * patch_length + 10.0 * rail.wall)
}

/// Load at which both side walls yield beside the corners \[N\].
///
/// # Equation
///   F = 2 f t (5 k + l),   k outer corner radius, at least 1.5 t
///
///   l  length of the patch along the rail  \[m\]
///
/// # Range
/// Patch over the whole face. Nominal: times φ 1.0.
///
/// # Source
/// ANSI/AISC 360-10, table K1.2 (from memory).
#[must_use]
pub fn yielding(rail: &BoxRail, corner_radius: f64, patch_length: f64, yield_strength: f64) -> f64 {
    let corner = corner_radius.max(1.5 * rail.wall);
    2.0 * yield_strength * rail.wall * (5.0 * corner + patch_length)
}

/// Load at which both side walls cripple under a load on one face \[N\].
///
/// # Equation
///   F = 1.6 t² (1 + 3 l/(h₀ − 3 t)) √(E f) Q
///
///   Q  [`stress_factor`](super::face::stress_factor)
///
/// # Range
/// Patch over the whole face. Nominal: times φ 0.75. The source takes E as 200 GPa.
///
/// # Source
/// ANSI/AISC 360-10, table K1.2 (from memory).
#[must_use]
pub fn crippling(
    rail: &BoxRail,
    patch_length: f64,
    youngs_modulus: f64,
    yield_strength: f64,
    stress_factor: f64,
) -> f64 {
    let flat = rail.height - 3.0 * rail.wall;
    let root = (youngs_modulus * yield_strength).sqrt();
    1.6 * rail.wall.powi(2) * (1.0 + 3.0 * patch_length / flat) * root * stress_factor
}

/// Load at which both side walls buckle between two opposite loads \[N\].
///
/// # Equation
///   F = 48 t³/(h₀ − 3 t) √(E f) Q
///
/// # Range
/// Patches over the whole face. Nominal: times φ 0.90. The source takes E as 200 GPa.
///
/// # Source
/// ANSI/AISC 360-10, table K1.2 (from memory).
#[must_use]
pub fn buckling(
    rail: &BoxRail,
    youngs_modulus: f64,
    yield_strength: f64,
    stress_factor: f64,
) -> f64 {
    let flat = rail.height - 3.0 * rail.wall;
    48.0 * rail.wall.powi(3) / flat * (youngs_modulus * yield_strength).sqrt() * stress_factor
}
