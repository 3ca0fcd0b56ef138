//! A bolt that tears out through the end of a plate.

/// Load at which the plate between hole and end tears out \[N\].
///
/// # Equation
///   F = 1.2 l t f_u
///
///   l  clear distance from the rim of the hole to the end or the next hole \[m\]
///
/// # Range
/// Nominal: times φ 0.75.
///
/// # Source
/// ANSI/AISC 360-10, J3.10 (from memory).
#[must_use]
pub fn american(clear_distance: f64, thickness: f64, tensile_strength: f64) -> f64 {
    1.2 * clear_distance * thickness * tensile_strength
}

/// Load of one bolt at which the two planes behind it yield in shear \[N\].
///
/// # Equation
///   F = 2 a t · 0.577 f
///
///   a  from the middle of the hole to the end \[m\]
///
/// # Source
/// R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th
/// ed., example 8-6.
#[must_use]
pub fn edge_shear(end: f64, thickness: f64, yield_strength: f64) -> f64 {
    2.0 * end * thickness * 0.577 * yield_strength
}
