//! Bearing of a bolt in its hole.

/// One hole in a plate, with what surrounds it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hole {
    /// Bolt \[m\].
    pub bolt: f64,
    /// Hole \[m\].
    pub hole: f64,
    /// Plate \[m\].
    pub thickness: f64,
    /// From the middle of the hole to the end of the plate, along the load \[m\].
    pub end: f64,
    /// From the middle of the hole to the nearer edge, across the load \[m\].
    pub edge: f64,
    /// To the next hole along the load \[m\].
    pub pitch: Option<f64>,
    /// To the next hole across the load \[m\].
    pub gauge: Option<f64>,
}

/// Load at which a bolt tears or crushes its hole \[N\].
///
/// # Equation
///   F = k₁ α f_u d t,   α = min(e₁/(3 d₀), p₁/(3 d₀) − 1/4, f_ub/f_u, 1)
///   k₁ = min(2.8 e₂/d₀ − 1.7, 1.4 p₂/d₀ − 1.7, 2.5)
///
///   d, d₀, t          bolt, hole, plate                \[m\]
///   e₁, p₁; e₂, p₂    end and pitch; edge and gauge    \[m\]
///   f_u, f_ub         tensile strength of plate, bolt  \[Pa\]
///
/// # Range
/// Thin packs. A long bolt with play in a sleeve bends and carries less.
/// Characteristic: γ_M2, usually 1.25.
///
/// # Source
/// EN 1993-1-8:2005, table 3.4 (from memory).
#[must_use]
pub fn strength(hole: &Hole, tensile_strength: f64, bolt_tensile_strength: f64) -> f64 {
    let d0 = hole.hole;
    let pitch = hole.pitch.map_or(1.0, |p| p / (3.0 * d0) - 0.25);
    let along = (hole.end / (3.0 * d0))
        .min(pitch)
        .min(bolt_tensile_strength / tensile_strength)
        .min(1.0);
    let gauge = hole.gauge.map_or(2.5, |p| 1.4 * p / d0 - 1.7);
    let across = (2.8 * hole.edge / d0 - 1.7).min(gauge).min(2.5);
    across.max(0.0) * along.max(0.0) * tensile_strength * hole.bolt * hole.thickness
}

/// Pressure of a bolt on its hole \[Pa\].
///
/// # Equation
///   p = F/(d t)
///
/// # Source
/// R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th ed., section 8-12.
#[must_use]
pub fn pressure(force: f64, bolt: f64, thickness: f64) -> f64 {
    force / (bolt * thickness)
}

/// Load at which a hole is drawn out of round \[N\].
///
/// # Equation
///   F = 2.4 d t f_u
///
/// # Range
/// Where the stretch of the hole matters. Nominal: times φ 0.75. Beside it:
/// [`american`](super::tear_out::american).
///
/// # Source
/// ANSI/AISC 360-10, J3.10 (from memory).
#[must_use]
pub fn american(bolt: f64, thickness: f64, tensile_strength: f64) -> f64 {
    2.4 * bolt * thickness * tensile_strength
}
