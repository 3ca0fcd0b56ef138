//! Strength of the throat of a fillet weld.

/// Stress that the throat of a fillet weld in steel carries in any direction \[Pa\].
///
/// # Equation
///   f_w = f_u/(√3 β_w γ_M2)
///
///   f_u   tensile strength of the weaker part \[Pa\]
///   β_w   [`correlation`]
///   γ_M2  usually 1.25
///
/// # Source
/// EN 1993-1-8:2005, 4.5.3.3, simplified method (from memory).
#[must_use]
pub fn steel(tensile_strength: f64, correlation: f64, gamma: f64) -> f64 {
    tensile_strength / (3_f64.sqrt() * correlation * gamma)
}

/// How much stronger the filler is counted than the steel it joins, by the yield strength of the grade \[Pa\].
///
/// # Equation
///   β_w = 0.80 up to S235, 0.85 up to S275, 0.90 up to S355, 1.0 above
///
/// # Source
/// EN 1993-1-8:2005, table 4.1 (from memory).
#[must_use]
pub fn correlation(yield_strength: f64) -> f64 {
    match yield_strength {
        f if f <= 235e6 => 0.80,
        f if f <= 275e6 => 0.85,
        f if f <= 355e6 => 0.90,
        _ => 1.0,
    }
}

/// Stresses that a fillet weld in aluminium and the metal beside it carry \[Pa\].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AluminiumWeld {
    /// On the throat, all parts together.
    pub throat: f64,
    /// On the leg, in the metal softened by the heat: pulled square to it.
    pub leg_pulled: f64,
    /// On the leg, in the metal softened by the heat: sheared.
    pub leg_sheared: f64,
}

/// Strength of a fillet weld in aluminium, of throat and softened metal.
///
/// # Equation
///   throat        f_w/(√3 γ_Mw)
///   leg, pulled   f_haz/γ_Mw
///   leg, sheared  f_haz/(√3 γ_Mw)
///
///   f_w    tensile strength of the filler with this alloy     \[Pa\]
///   f_haz  tensile strength of the alloy in the zone softened by the heat \[Pa\]
///   γ_Mw   usually 1.25
///
/// # Range
/// The weaker of throat and leg rules.
///
/// # Source
/// EN 1999-1-1:2007, 8.6.3 (from memory).
#[must_use]
pub fn aluminium(filler_strength: f64, softened_strength: f64, gamma: f64) -> AluminiumWeld {
    let root = 3_f64.sqrt();
    AluminiumWeld {
        throat: filler_strength / (root * gamma),
        leg_pulled: softened_strength / gamma,
        leg_sheared: softened_strength / (root * gamma),
    }
}
