//! Fluid of a hydraulic mount: a chamber that bulges, a track in which the fluid swings, a chamber that takes it up.
//!
//! Written with the rates that the chambers and the track have at the rubber:
//! areas and volumes do not appear. A pumping area A \[m²\], chamber compliances
//! C₁ and C₂ \[m⁵/N\], inertance I \[kg/m⁴\] and resistance R \[N s/m⁵\] become
//! k₁ = A²/C₁, k₂ = A²/C₂, m = A² I, c = A² R.

use nalgebra::Complex;

/// Fluid path along w, in parallel to the rubber.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fluid {
    /// Rate of the upper chamber's bulge k₁ [N/m].
    pub upper: f64,
    /// Rate of the lower chamber k₂ [N/m].
    pub lower: f64,
    /// Mass of the fluid in the track, as felt at the rubber \[kg\].
    pub mass: f64,
    /// Resistance of the track, as felt at the rubber [N s/m].
    pub damping: f64,
}

impl Fluid {
    /// Dynamic rate of the fluid alone at an angular frequency [rad/s], as storage and loss [N/m].
    ///
    /// # Equation
    ///   1/k = 1/k₁ + 1/(k₂ + i ω c − ω² m)
    ///
    /// # Range
    /// One track, no decoupler, constant resistance. At rest it is the static rate.
    ///
    /// # Source
    /// Derived: the bulge of the upper chamber in series with track and lower
    /// chamber, through which the same volume runs.
    #[must_use]
    pub fn rate(&self, omega: f64) -> Complex<f64> {
        let below = Complex::new(self.lower - self.mass * omega * omega, self.damping * omega);
        below * self.upper / (below + self.upper)
    }

    /// Static rate [N/m].
    #[must_use]
    pub fn static_rate(&self) -> f64 {
        self.upper * self.lower / (self.upper + self.lower)
    }

    /// Natural frequency of the fluid in the track while the rubber is held \[Hz\].
    ///
    /// # Equation
    ///   f = √((k₁ + k₂)/m)/(2π)
    ///
    /// # Source
    /// Derived: both chambers push the fluid back.
    #[must_use]
    pub fn track_frequency_hz(&self) -> f64 {
        ((self.upper + self.lower) / self.mass).sqrt() / std::f64::consts::TAU
    }

    /// With all forces multiplied; its frequency stays.
    pub(super) fn scaled(&self, factor: f64) -> Self {
        Self {
            upper: self.upper * factor,
            lower: self.lower * factor,
            mass: self.mass * factor,
            damping: self.damping * factor,
        }
    }
}
