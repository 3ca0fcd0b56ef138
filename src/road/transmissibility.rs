//! Answer of one mass on a spring to a steady vibration.
//!
//! Everywhere `r` is the frequency over the undamped natural frequency.

use nalgebra::Complex;

/// How the spring loses energy.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Damping {
    /// Share of critical damping of a viscous damper, ζ.
    Ratio(f64),
    /// Loss factor of a material, η; for steady harmonic motion only.
    LossFactor(f64),
}

impl Damping {
    /// Imaginary part of the stiffness over its real part.
    fn loss(self, r: f64) -> f64 {
        match self {
            Self::Ratio(zeta) => 2.0 * zeta * r,
            Self::LossFactor(eta) => eta,
        }
    }
}

/// Motion of the mass over motion of the base, or force on the base over force on the mass.
///
/// # Equation
///   T = (1 + i l)/(1 − r² + i l),   l = 2 ζ r (viscous) or η (material)
///
/// A negative phase says that the mass lags.
///
/// # Range
/// r ≥ 0; infinite at r = 1 without damping. |T| = 1 at r = √2 whatever the damping.
/// η = 2ζ is alike at resonance only.
///
/// # Source
/// Derived. Magnitude also in S. S. Rao, Mechanical Vibrations, chapter 3 (from memory).
#[must_use]
pub fn transmissibility(damping: Damping, r: f64) -> Complex<f64> {
    let l = damping.loss(r);
    Complex::new(1.0, l) / Complex::new(1.0 - r * r, l)
}

/// Displacement of the mass over what the force would deflect the spring at rest.
///
/// Times r²: shaking by an unbalance, X M/(m e), and motion relative to a shaken base, −Z/Y.
///
/// # Equation
///   H = 1/(1 − r² + i l),   l = 2 ζ r (viscous) or η (material)
///
/// # Range
/// r ≥ 0; infinite at r = 1 without damping.
///
/// # Source
/// Derived.
#[must_use]
pub fn magnification(damping: Damping, r: f64) -> Complex<f64> {
    Complex::new(1.0 - r * r, damping.loss(r)).inv()
}

/// Frequency ratio at which the viscous transmissibility is largest.
///
/// # Equation
///   r = √(√(1 + 8ζ²) − 1)/(2ζ)
///
/// # Range
/// ζ ≥ 0; 1 without damping.
///
/// # Source
/// Derived: where the magnitude stands still.
#[must_use]
pub fn peak_ratio(damping_ratio: f64) -> f64 {
    let z = damping_ratio;
    // The same multiplied by its conjugate, which stays exact as the damping goes to zero.
    (2.0 / ((1.0 + 8.0 * z * z).sqrt() + 1.0)).sqrt()
}
