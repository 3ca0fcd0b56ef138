//! Collapse of the face of a box rail under a patch.

use super::{BoxRail, Patch};

/// What lies outside the range that the face formula was made for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outside {
    /// Patch narrower than a quarter of the face.
    NarrowPatch,
    /// Patch wider than 0.85 of the face: counted as 0.85, see [`wide_patch`].
    WidePatch,
    /// Face wider than 35 walls (30 in older editions).
    ThinWall,
    /// Rail lower than half of the face.
    Flat,
    /// Rail higher than twice the face.
    Tall,
}

/// Load at which a face collapses, and how far that can be trusted.
#[derive(Debug, Clone, PartialEq)]
pub struct FaceStrength {
    /// Push or pull on the patch \[N\].
    pub force: f64,
    /// What lies outside the range of the formula; empty when nothing does.
    pub outside: Vec<Outside>,
}

/// Width of the patch over width of the face from which on the side walls help.
pub const WIDE: f64 = 0.85;

/// What is left of the face under a loose washer, which does not hold the wall at its edge.
///
/// # Source
/// Common practice.
pub const LOOSE_WASHER: f64 = 0.85;

/// Thickness of a plate or washer, in walls, from which on its footprint counts as stiff.
///
/// # Source
/// Common practice.
pub const STIFF_PLATE: f64 = 2.0;

/// Load at which a patch pushes in or pulls out the face of a box rail.
///
/// # Equation
///   F = f t² Q (2 η/(1 − β) + 4/√(1 − β)),   β = c/b₀,   η = c_x/b₀
///
///   f, t    yield strength \[Pa\], wall \[m\]
///   c, c_x  width and length of the patch  \[m\]
///   b₀      outside width of the face      \[m\]
///   Q       [`stress_factor`], times [`LOOSE_WASHER`] where it applies
///
/// # Range
/// β 0.25 to 0.85, b₀/t up to 35, height 0.5 to 2 times the face: what lies
/// outside is told. Made for a welded branch; a stiff plate or washer stands for
/// it by its footprint. Characteristic: divide by γ_M5, usually 1.0.
///
/// # Source
/// EN 1993-1-8:2005, table 7.11, with the branch square to the rail; the same in
/// ANSI/AISC 360-10, table K2.2 (from memory).
#[must_use]
pub fn strength(rail: &BoxRail, patch: &Patch, yield_strength: f64, factor: f64) -> FaceStrength {
    let beta = patch.width / rail.face;
    let free = 1.0 - beta.min(WIDE);
    let eta = patch.length / rail.face;
    let lines = 2.0 * eta / free + 4.0 / free.sqrt();
    FaceStrength {
        force: yield_strength * rail.wall.powi(2) * factor * lines,
        outside: outside(rail, beta),
    }
}

fn outside(rail: &BoxRail, beta: f64) -> Vec<Outside> {
    let slim = rail.height / rail.face;
    [
        (beta < 0.25, Outside::NarrowPatch),
        (beta > WIDE, Outside::WidePatch),
        (rail.face > 35.0 * rail.wall, Outside::ThinWall),
        (slim < 0.5, Outside::Flat),
        (slim > 2.0, Outside::Tall),
    ]
    .into_iter()
    .filter_map(|(is_out, what)| is_out.then_some(what))
    .collect()
}

/// What compression along the rail leaves of the strength of its face.
///
/// # Equation
///   Q = 1.3 − 0.4 n/β,   0 ≤ Q ≤ 1
///
///   n  largest compressive stress along the rail over yield strength; 0 for tension
///   β  width of the patch over width of the face
///
/// # Source
/// EN 1993-1-8:2005, table 7.10, k_n; ANSI/AISC 360-10, K1, Q_f with U (from memory).
#[must_use]
pub fn stress_factor(compression: f64, beta: f64) -> f64 {
    if compression <= 0.0 {
        return 1.0;
    }
    (1.3 - 0.4 * compression / beta).clamp(0.0, 1.0)
}

/// Strength under a patch wider than 0.85 of the face \[N\].
///
/// # Equation
///   straight line from the face at β = 0.85 to the side walls at β = 1
///
/// # Range
/// β 0.85 to 1; nearer values count as these. Punching is another limit.
///
/// # Source
/// EN 1993-1-8:2005, table 7.11 (from memory).
#[must_use]
pub fn wide_patch(face_at_085: f64, side_walls: f64, beta: f64) -> f64 {
    let share = ((beta - WIDE) / (1.0 - WIDE)).clamp(0.0, 1.0);
    face_at_085 + (side_walls - face_at_085) * share
}
