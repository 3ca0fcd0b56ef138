//! A plate weakened by its holes.

/// What a drilled or punched hole costs beyond its diameter \[m\].
///
/// # Source
/// ANSI/AISC 360-10, B4.3b (from memory).
pub const DAMAGED_EDGE: f64 = 2e-3;

/// Area left across a row of holes \[m²\]; 0 where the holes take all.
///
/// # Equation
///   A = (w − Σ d) t
///
///   w, t  width and thickness of the plate      \[m\]
///   d     holes; American: plus [`DAMAGED_EDGE`] each  \[m\]
///
/// # Source
/// Derived.
#[must_use]
pub fn area(width: f64, thickness: f64, holes: &[f64]) -> f64 {
    (width - holes.iter().sum::<f64>()).max(0.0) * thickness
}

/// A hole in a bar that is bent in its plane.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HoleOffAxis {
    /// From the middle of the bar to that of the hole \[m\], either sign.
    pub offset: f64,
    /// Diameter \[m\].
    pub diameter: f64,
}

/// Bending stress at the edge of a bar bent in its plane across a row of holes \[Pa\].
///
/// # Equation
///   σ = M (w/2)/I,   I = t (w³/12 − Σ (d³/12 + d y²))
///
///   y, d  place of each hole from the middle, its diameter \[m\]
///
/// # Range
/// Holes alike on both sides of the middle, so that the axis stays there. None
/// where the holes take all.
///
/// # Source
/// Derived. The same: R. G. Budynas, J. K. Nisbett, Shigley's Mechanical
/// Engineering Design, 9th ed., example 8-7.
#[must_use]
pub fn bending_stress(
    moment: f64,
    width: f64,
    thickness: f64,
    holes: &[HoleOffAxis],
) -> Option<f64> {
    let lost: f64 = holes
        .iter()
        .map(|hole| hole.diameter.powi(3) / 12.0 + hole.diameter * hole.offset.powi(2))
        .sum();
    let second_moment = thickness * (width.powi(3) / 12.0 - lost);
    (second_moment > 0.0).then(|| moment * width / 2.0 / second_moment)
}
