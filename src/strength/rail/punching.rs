//! Punching through the wall of a rail.

use std::f64::consts::PI;

use super::{BoxRail, Patch};

/// Load at which a plate or patch shears through the face of a box rail \[N\].
///
/// # Equation
///   F = f₀ t₀/√3 (2 c_x + 2 b_p),   b_p = 10/(b₀/t₀) c ≤ c
///
///   c_x, c      length along the rail and width of the patch \[m\]
///   b₀, t₀, f₀  face \[m\], wall \[m\], yield strength of the rail \[Pa\]
///
/// # Range
/// c up to b₀ − 2 t₀; wider patches stand on the side walls: none. Characteristic:
/// γ_M5, usually 1.0.
///
/// # Source
/// EN 1993-1-8:2005, table 7.13 (plate across, c_x its thickness) and 7.11 (from memory).
#[must_use]
pub fn patch(rail: &BoxRail, patch: &Patch, yield_strength: f64) -> Option<f64> {
    (patch.width <= rail.face - 2.0 * rail.wall).then(|| {
        let across = patch.width * (10.0 * rail.wall / rail.face).min(1.0);
        yield_strength * rail.wall / 3_f64.sqrt() * 2.0 * (patch.length + across)
    })
}

/// Load at which a round head, washer or flange shears through a sheet \[N\].
///
/// # Equation
///   F = 0.6 π d t f_u
///
///   d    diameter; of a hexagon the mean of its widths across corners and flats \[m\]
///   t    sheet                     \[m\]
///   f_u  tensile strength of the sheet  \[Pa\]
///
/// # Range
/// Characteristic: γ_M2, usually 1.25.
///
/// # Source
/// EN 1993-1-8:2005, table 3.4, B_p (from memory).
#[must_use]
pub fn round(diameter: f64, thickness: f64, tensile_strength: f64) -> f64 {
    0.6 * PI * diameter * thickness * tensile_strength
}
