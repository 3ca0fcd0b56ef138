//! Second models of the stiffness of bolt and parts, to show how far models are apart.
//!
//! On one and the same joint they differ by up to 40 % for the parts and 28 % for the bolt. One
//! run keeps to one pair; these bound the load factor to about ± 30 %.

use std::f64::consts::PI;

/// Resilience of a bolt by two lengths, without head and nut [m/N].
///
/// # Equation
///   k = Ad At E/(Ad lt + At ld),   δ = 1/k
///
///   Ad, At  area of the nominal diameter, stress area      \[m²\]
///   ld, lt  plain length, threaded length in the grip      \[m\]
///
/// # Source
/// R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th ed., eq. 8-17.
#[must_use]
pub fn short_resilience(
    nominal: f64,
    stress_area: f64,
    plain: f64,
    threaded: f64,
    youngs_modulus: f64,
) -> f64 {
    let full = PI / 4.0 * nominal * nominal;
    (threaded / stress_area + plain / full) / youngs_modulus
}

/// Resilience of one layer in which pressure spreads as a cone [m/N].
///
/// # Equation
///   δ = ln{(2 t tan α + D − d)(D + d)/\[(2 t tan α + D + d)(D − d)\]}/(π E d tan α)
///
///   D     diameter where the cone enters, larger than d  \[m\]
///   d     nominal diameter of the bolt, or hole          \[m\]
///   t     thickness                                      \[m\]
///   α     half angle of the cone; books take 30° or 45°  \[rad\]
///
/// # Range
/// Parts wider than the cone, which starts at head and nut and ends at half of the grip. The
/// resiliences of the layers add up.
///
/// # Source
/// Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th ed., eq. 8-19.
#[must_use]
pub fn cone_layer_resilience(
    entry: f64,
    hole: f64,
    thickness: f64,
    half_angle: f64,
    youngs_modulus: f64,
) -> f64 {
    let slope = half_angle.tan();
    let exit = entry + 2.0 * thickness * slope;
    let ratio = (exit - hole) * (entry + hole) / ((exit + hole) * (entry - hole));
    ratio.ln() / (PI * youngs_modulus * hole * slope)
}

/// Material of a fit over finite elements.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fitted {
    /// Steel.
    Steel,
    /// Aluminium.
    Aluminium,
    /// Copper.
    Copper,
    /// Grey cast iron.
    CastIron,
    /// Any.
    General,
}

/// Resilience of wide plates by a fit over finite elements [m/N].
///
/// # Equation
///   k = E d a exp(b d/l),   δ = 1/k
///
///   d, l  nominal diameter, grip                       \[m\]
///   a, b  of the material: steel 0.78715, 0.62873; aluminium 0.79670, 0.63816; copper
///         0.79568, 0.63553; cast iron 0.77871, 0.61616; any 0.78952, 0.62914
///
/// # Range
/// Plates of one material, much wider than the head, washer face 1.5 d.
///
/// # Source
/// J. Wileman, M. Choudhury, I. Green, Computation of member stiffness in bolted connections,
/// J. Mech. Des. 113 (1991) 432-437; steel, cast iron and any as printed in Shigley's Mechanical
/// Engineering Design, 8th ed., aluminium and copper from memory of the same.
#[must_use]
pub fn fitted_resilience(material: Fitted, nominal: f64, grip: f64, youngs_modulus: f64) -> f64 {
    let (a, b) = match material {
        Fitted::Steel => (0.787_15, 0.628_73),
        Fitted::Aluminium => (0.796_70, 0.638_16),
        Fitted::Copper => (0.795_68, 0.635_53),
        Fitted::CastIron => (0.778_71, 0.616_16),
        Fitted::General => (0.789_52, 0.629_14),
    };
    1.0 / (youngs_modulus * nominal * a * (b * nominal / grip).exp())
}
