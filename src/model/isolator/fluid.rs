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

    /// Where the loss angle of the fluid beside a rubber without loss of its own, rate `rubber` [N/m], is largest.
    ///
    /// # Equation
    ///   tan δ = Im k*/Re k*,   k* = `rubber` + `rate`
    ///
    /// # Range
    /// Looked for from a hundredth to a hundred times the track frequency.
    ///
    /// # Source
    /// Derived: the loss of a second-order system has one peak; found on a grid, then narrowed.
    #[must_use]
    pub fn largest_loss(&self, rubber: f64) -> LossPeak {
        const STEPS: i32 = 400;
        const DECADES: f64 = 2.0;
        let at = |decades: f64| {
            let frequency_hz = self.track_frequency_hz() * 10_f64.powf(decades);
            let rate = self.rate(frequency_hz * std::f64::consts::TAU) + rubber;
            LossPeak {
                frequency_hz,
                angle: rate.im.atan2(rate.re),
            }
        };
        let step = 2.0 * DECADES / f64::from(STEPS);
        let (mut place, mut peak) = (-DECADES, at(-DECADES));
        for i in 1..=STEPS {
            let here = -DECADES + f64::from(i) * step;
            let found = at(here);
            if found.angle > peak.angle {
                (place, peak) = (here, found);
            }
        }
        let mut width = step;
        while width > 1e-9 {
            width /= 2.0;
            for here in [place - width, place + width] {
                let found = at(here);
                if found.angle > peak.angle {
                    (place, peak) = (here, found);
                }
            }
        }
        peak
    }

    /// In chambers of stiffer or softer rubber; the fluid in the track stays what it is.
    pub(super) fn with_rubber(&self, factor: f64) -> Self {
        Self {
            upper: self.upper * factor,
            lower: self.lower * factor,
            ..*self
        }
    }
}

/// The largest loss of a mount with fluid.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LossPeak {
    /// Where it is \[Hz\].
    pub frequency_hz: f64,
    /// Angle by which the force leads the deflection there \[rad\].
    pub angle: f64,
}
