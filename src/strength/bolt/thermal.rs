//! Change of preload with temperature.

/// A clamped layer: its length \[m\] and thermal expansion [1/K].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Layer {
    /// Length along the bolt \[m\].
    pub length: f64,
    /// Thermal expansion [1/K].
    pub expansion: f64,
}

/// What a change of temperature adds to the preload \[N\]; negative when the bolt expands more.
///
/// # Equation
///   ΔF = ΔT (Σ αi li − αS Σ li)/(δS + δP)
///
///   ΔT      temperature above that of tightening       \[K\]
///   αi, li  expansion and length of the layers         [1/K], \[m\]
///   αS      expansion of the bolt                      [1/K]
///   δS, δP  resilience of the bolt, the clamped parts  [m/N]
///
/// # Range
/// Bolt and parts equally warm, moduli constant, the joint stays closed.
///
/// # Source
/// Derived: the misfit of free expansion is shared by bolt and parts.
#[must_use]
pub fn change(
    temperature: f64,
    layers: &[Layer],
    bolt_expansion: f64,
    bolt: f64,
    clamped: f64,
) -> f64 {
    let misfit: f64 = layers
        .iter()
        .map(|layer| (layer.expansion - bolt_expansion) * layer.length)
        .sum();
    temperature * misfit / (bolt + clamped)
}
