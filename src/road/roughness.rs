//! Roughness of a road as a density over spatial frequency, after ISO 8608.

use std::f64::consts::TAU;

/// Spatial frequency to which the classes refer \[cycle/m\].
///
/// ISO 8608:2016, from memory.
pub const REFERENCE: f64 = 0.1;

/// Spatial frequencies for which the standard gives its classes \[cycle/m\].
///
/// ISO 8608:2016, from memory.
pub const BAND: Band = Band {
    from: 0.011,
    to: 2.83,
};

/// Class of a road, A the smoothest.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Class {
    /// 16e-6 m³ at 0.1 cycle/m in the mean.
    A,
    /// 64e-6 m³ at 0.1 cycle/m in the mean.
    B,
    /// 256e-6 m³ at 0.1 cycle/m in the mean.
    C,
    /// 1024e-6 m³ at 0.1 cycle/m in the mean.
    D,
    /// 4096e-6 m³ at 0.1 cycle/m in the mean.
    E,
    /// 16384e-6 m³ at 0.1 cycle/m in the mean.
    F,
    /// 65536e-6 m³ at 0.1 cycle/m in the mean.
    G,
    /// 262144e-6 m³ at 0.1 cycle/m in the mean.
    H,
}

impl Class {
    /// Every class, the smoothest first.
    pub const ALL: [Self; 8] = [
        Self::A,
        Self::B,
        Self::C,
        Self::D,
        Self::E,
        Self::F,
        Self::G,
        Self::H,
    ];

    /// Geometric mean of the displacement density at 0.1 cycle/m \[m³\].
    ///
    /// # Equation
    ///   Gd(n0) = 16e-6 · 4^k,   k = 0 for A to 7 for H
    ///
    /// # Source
    /// G. Agostinacchio, D. Ciampa, S. Olita, European Transport Research Review (2014),
    /// DOI 10.1007/s12544-013-0127-8, after ISO 8608.
    #[must_use]
    pub fn mean(self) -> f64 {
        16e-6 * 4.0_f64.powi(self as i32)
    }

    /// Density at 0.1 cycle/m above which a road is of the next class \[m³\]; `None` for H.
    ///
    /// # Equation
    ///   twice the mean
    ///
    /// # Source
    /// ISO 8608:2016, from memory.
    #[must_use]
    pub fn upper_limit(self) -> Option<f64> {
        (self != Self::H).then(|| 2.0 * self.mean())
    }

    /// Density at 0.1 cycle/m below which a road is of the class before \[m³\]; `None` for A.
    ///
    /// # Equation
    ///   half the mean
    ///
    /// # Source
    /// ISO 8608:2016, from memory.
    #[must_use]
    pub fn lower_limit(self) -> Option<f64> {
        (self != Self::A).then(|| self.mean() / 2.0)
    }
}

/// A band of spatial frequencies \[cycle/m\].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Band {
    from: f64,
    to: f64,
}

impl Band {
    /// A band between two spatial frequencies \[cycle/m\].
    ///
    /// `None` unless 0 < `from` < `to`, both finite.
    #[must_use]
    pub fn new(from: f64, to: f64) -> Option<Self> {
        (from > 0.0 && from < to && to.is_finite()).then_some(Self { from, to })
    }

    /// Its lower end \[cycle/m\].
    #[must_use]
    pub fn from(&self) -> f64 {
        self.from
    }

    /// Its upper end \[cycle/m\].
    #[must_use]
    pub fn to(&self) -> f64 {
        self.to
    }
}

/// Roughness of one track, with a density that falls with the square of the spatial frequency.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Roughness {
    at_reference: f64,
}

impl Roughness {
    /// Displacement density at 0.1 cycle/m \[m³\], one-sided over cycle/m.
    ///
    /// `None` unless above zero and finite. Some publications give the density at 1 rad/m per
    /// rad/m instead: see [`from_angular`](Self::from_angular).
    #[must_use]
    pub fn new(at_reference: f64) -> Option<Self> {
        (at_reference > 0.0 && at_reference.is_finite()).then_some(Self { at_reference })
    }

    /// The mean of a class.
    #[must_use]
    pub fn of_class(class: Class) -> Self {
        Self {
            at_reference: class.mean(),
        }
    }

    /// Roughness by its density at 1 rad/m, per rad/m \[m³\]; `None` unless above zero and finite.
    ///
    /// # Equation
    ///   Gd(n0) = Gd(1 rad/m)/(2π n0²)
    ///
    /// # Source
    /// Derived: inverse of [`angular_density`](Self::angular_density).
    #[must_use]
    pub fn from_angular(at_one: f64) -> Option<Self> {
        Self::new(at_one / (TAU * REFERENCE * REFERENCE))
    }

    /// Displacement density at 0.1 cycle/m \[m³\].
    #[must_use]
    pub fn at_reference(&self) -> f64 {
        self.at_reference
    }

    /// Class in whose limits the roughness lies.
    #[must_use]
    pub fn class(&self) -> Class {
        Class::ALL
            .into_iter()
            .find(|class| {
                class
                    .upper_limit()
                    .is_some_and(|limit| self.at_reference < limit)
            })
            .unwrap_or(Class::H)
    }

    /// Displacement density at a spatial frequency \[m³\].
    ///
    /// # Equation
    ///   Gd(n) = Gd(n0) (n/n0)⁻²
    ///
    ///   n   spatial frequency \[cycle/m\], n0 = 0.1 cycle/m
    ///
    /// # Range
    /// 0.011 to 2.83 cycle/m; n > 0.
    ///
    /// # Source
    /// ISO 8608:2016, from memory; Agostinacchio et al. (2014) as for [`Class::mean`].
    #[must_use]
    pub fn density(&self, n: f64) -> f64 {
        self.at_reference * (REFERENCE / n).powi(2)
    }

    /// Displacement density over angular spatial frequency, per rad/m \[m³\].
    ///
    /// # Equation
    ///   Gd(Ω) = Gd(n)/(2π) = 2π Gd(n0) n0²/Ω²
    ///
    ///   Ω   angular spatial frequency \[rad/m\], 2π n
    ///
    /// # Range
    /// Ω > 0. Class A at 1 rad/m: 1.005e-6 m³, where the form per cycle has 16e-6 at 0.1 cycle/m.
    ///
    /// # Source
    /// Derived: Gd(Ω) dΩ = Gd(n) dn.
    #[must_use]
    pub fn angular_density(&self, angular: f64) -> f64 {
        self.density(angular / TAU) / TAU
    }

    /// Density of the slope of the road, the same at every spatial frequency \[m\].
    ///
    /// The standard calls it the velocity density.
    ///
    /// # Equation
    ///   Gv(n) = (2π n)² Gd(n) = (2π n0)² Gd(n0)
    ///
    /// # Source
    /// ISO 8608:2016, from memory; derived.
    #[must_use]
    pub fn slope_density(&self) -> f64 {
        (TAU * REFERENCE).powi(2) * self.at_reference
    }

    /// Displacement density in time at a speed \[m²/Hz\].
    ///
    /// # Equation
    ///   Gd(f) = Gd(n0) n0² v/f²
    ///
    ///   f  frequency \[Hz\], v speed \[m/s\]
    ///
    /// # Range
    /// f > 0; f/v within the band of the density.
    ///
    /// # Source
    /// Derived: f = n v and Gd(f) df = Gd(n) dn.
    #[must_use]
    pub fn density_in_time(&self, frequency_hz: f64, speed: f64) -> f64 {
        self.density(frequency_hz / speed) / speed
    }

    /// Density of the vertical speed in time, the same at every frequency \[m²/s²/Hz\].
    ///
    /// # Equation
    ///   Gv(f) = 4π² Gd(n0) n0² v
    ///
    /// # Source
    /// Derived.
    #[must_use]
    pub fn velocity_density(&self, speed: f64) -> f64 {
        self.slope_density() * speed
    }

    /// Root mean square height of what lies in a band \[m\].
    ///
    /// # Equation
    ///   rms = n0 √(Gd(n0) (1/n1 − 1/n2))
    ///
    /// # Range
    /// The long waves make nearly all of it: half the lower end, √2 times the value.
    ///
    /// # Source
    /// Derived: integral of the density.
    #[must_use]
    pub fn rms(&self, band: Band) -> f64 {
        REFERENCE * (self.at_reference * (band.to - band.from) / (band.from * band.to)).sqrt()
    }
}

/// Mean density at 0.1 cycle/m of the short form of synthesis with a whole number k \[m³\].
///
/// Its k = 3 is the limit between A and B, not the mean of A.
///
/// # Equation
///   amplitudes √Δn 2^k 1e-3 n0/n   are those of   Gd(n0) = 2^(2k − 1) 1e-6
///
/// # Source
/// The short form: Agostinacchio et al. (2014), as for [`Class::mean`]. What it equals: derived,
/// amplitude² / 2 = Gd Δn.
#[must_use]
pub fn density_of_short_form(k: i32) -> f64 {
    0.5e-6 * 4.0_f64.powi(k)
}
