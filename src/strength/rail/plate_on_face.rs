//! A plate welded by its edge on a face of a box rail.

use super::BoxRail;

/// Width of a plate across a face that really carries \[m\]: its middle pushes on a soft wall.
///
/// # Equation
///   b_e = 10/(b₀/t₀) · f₀ t₀/(f₁ t₁) · b₁ ≤ b₁
///
///   b₀, t₀, f₀  face \[m\], wall \[m\], yield strength of the rail \[Pa\]
///   b₁, t₁, f₁  width, thickness, yield strength of the plate
///
/// # Range
/// Welds across a face count with this length too.
///
/// # Source
/// EN 1993-1-8:2005, table 7.13 (from memory).
#[must_use]
pub fn effective_width(
    rail: &BoxRail,
    rail_yield: f64,
    width: f64,
    thickness: f64,
    plate_yield: f64,
) -> f64 {
    let share = 10.0 * rail.wall / rail.face * rail_yield * rail.wall / (plate_yield * thickness);
    width * share.min(1.0)
}

/// Load at which a plate across the face yields beside the side walls \[N\].
///
/// # Equation
///   F = f₁ t₁ b_e
///
/// # Range
/// Plate across the whole or most of the face. Characteristic: γ_M5, usually 1.0.
///
/// # Source
/// EN 1993-1-8:2005, table 7.13 (from memory).
#[must_use]
pub fn across(
    rail: &BoxRail,
    rail_yield: f64,
    width: f64,
    thickness: f64,
    plate_yield: f64,
) -> f64 {
    plate_yield * thickness * effective_width(rail, rail_yield, width, thickness, plate_yield)
}

/// Load at which a plate across the face pushes it in \[N\].
///
/// # Equation
///   F = k_n f₀ t₀² (2 + 2.8 β)/√(1 − 0.9 β),   β = b₁/b₀
///
/// # Range
/// β up to 0.85. Some 20 % below [`face`](super::face) with the plate as its
/// patch: for a welded plate take this one. Characteristic: γ_M5, usually 1.0.
///
/// # Source
/// EN 1993-1-8:2005, table 7.13 (from memory).
#[must_use]
pub fn face_under_plate_across(
    rail: &BoxRail,
    rail_yield: f64,
    width: f64,
    stress_factor: f64,
) -> f64 {
    let beta = width / rail.face;
    stress_factor * rail_yield * rail.wall.powi(2) * (2.0 + 2.8 * beta) / (1.0 - 0.9 * beta).sqrt()
}

/// Load at which a plate along the rail, in the middle of the face, pushes it in \[N\].
///
/// # Equation
///   F = k_m f₀ t₀² (2 h₁/b₀ + 4 √(1 − t₁/b₀))
///
///   h₁, t₁  length along the rail, thickness of the plate  \[m\]
///   k_m     [`stress_factor_along`]
///
/// # Range
/// t₁/b₀ up to 0.2: none beyond, where the plate is a patch of [`face`](super::face).
/// Characteristic: γ_M5, usually 1.0.
///
/// # Source
/// EN 1993-1-8:2005, table 7.13 (from memory).
#[must_use]
pub fn along(
    rail: &BoxRail,
    rail_yield: f64,
    length: f64,
    thickness: f64,
    stress_factor: f64,
) -> Option<f64> {
    let thin = thickness / rail.face;
    (thin <= 0.2).then(|| {
        let lines = 2.0 * length / rail.face + 4.0 * (1.0 - thin).sqrt();
        stress_factor * rail_yield * rail.wall.powi(2) * lines
    })
}

/// What compression along the rail leaves of the face under a plate along it.
///
/// # Equation
///   k_m = 1.3 (1 − n) ≤ 1,   n compressive stress over yield strength; 1 for tension
///
/// # Source
/// EN 1993-1-8:2005, table 7.13 (from memory).
#[must_use]
pub fn stress_factor_along(compression: f64) -> f64 {
    if compression <= 0.0 {
        return 1.0;
    }
    (1.3 * (1.0 - compression)).clamp(0.0, 1.0)
}
