//! Stress amplitude a bolt bears for good, and for a number of cycles.
//!
//! These limits go with the nominal stress on the stress area. They must not be mixed with
//! [`endurance`](super::endurance), whose limits are some 2.5 times as high.

/// Loads beyond which a bolt that bore so many bears any number.
const LASTING: f64 = 2e6;

/// When the thread was rolled.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Rolled {
    /// Before heat treatment, the usual way.
    BeforeHeatTreatment,
    /// After heat treatment; mean force of the bolt over its force at yield, 0.3 to 1.
    AfterHeatTreatment(f64),
}

/// Amplitude of stress in a bolt under a load that comes and goes \[Pa\].
///
/// # Equation
///   σa = Φ (FAmax − FAmin)/(2 As)
///
///   Φ   load factor; the high end of what is credible
///   FA  axial working load per bolt              \[N\]
///   As  stress area                              \[m²\]
///
/// # Range
/// The joint stays closed; no bending of the bolt.
///
/// # Source
/// VDI 2230-1:2003, from memory.
#[must_use]
pub fn amplitude(load_factor: f64, most: f64, least: f64, stress_area: f64) -> f64 {
    load_factor * (most - least) / (2.0 * stress_area)
}

/// Amplitude that a bolt bears for a number of cycles \[Pa\].
///
/// # Equation
///   rolled before:  σ = 0.85 (150/d + 45) MPa, d in mm;   below 2e6 cycles times (2e6/N)^(1/3)
///   rolled after:   σ = (2 − Fm/F02) times that;          below 2e6 cycles times (2e6/N)^(1/6)
///
///   N    cycles
///   Fm   mean force in the bolt; F02 its force at yield   \[N\]
///
/// # Range
/// M4 to M39, quenched and tempered, 1e4 cycles or more. It does not depend on the class: a
/// stronger bolt bears no more amplitude, it only allows more preload.
///
/// # Source
/// VDI 2230-1:2003, section 5.5.3, from memory.
#[must_use]
pub fn limit(nominal: f64, rolled: Rolled, cycles: f64) -> f64 {
    let lasting = 0.85 * (150.0 / (nominal * 1e3) + 45.0) * 1e6;
    let (lasting, exponent) = match rolled {
        Rolled::BeforeHeatTreatment => (lasting, 1.0 / 3.0),
        Rolled::AfterHeatTreatment(mean) => ((2.0 - mean) * lasting, 1.0 / 6.0),
    };
    lasting * (LASTING / cycles.min(LASTING)).powf(exponent)
}
