//! Fatigue damage of a random history from the moments of its spectrum.

use std::f64::consts::SQRT_2;

use spec_math::cephes64::gamma;

use super::damage::FatigueLine;

/// Weight of the exponential part below which Dirlik's other parts are differences of nearly
/// equal numbers; his result is then that of the narrow band within 1e-5.
const LEAST_EXPONENTIAL: f64 = 1e-6;

/// Moments of a one-sided spectrum over frequency in Hz.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Moments {
    m0: f64,
    m1: f64,
    m2: f64,
    m4: f64,
}

impl Moments {
    /// Moments of lines of frequency \[Hz\] and mean square.
    ///
    /// `None` unless every frequency is above zero, no mean square below, and one above it.
    ///
    /// # Equation
    ///   mk = Σ f^k s²
    ///
    /// # Range
    /// Many lines: a few are a beat, no random history.
    ///
    /// # Source
    /// Derived: the integral of the density over each line.
    #[must_use]
    pub fn of_lines(lines: &[(f64, f64)]) -> Option<Self> {
        let sound = lines
            .iter()
            .all(|&(frequency, square)| frequency > 0.0 && square >= 0.0);
        if !sound {
            return None;
        }
        let moment = |k: i32| lines.iter().map(|&(f, square)| f.powi(k) * square).sum();
        Self::checked(moment(0), moment(1), moment(2), moment(4))
    }

    /// Moments of a density given at rising frequencies \[Hz, unit²/Hz\].
    ///
    /// `None` unless the frequencies rise from zero or more, no density is below zero, and one is above it.
    ///
    /// # Equation
    ///   mk = ∫ f^k G df,   G straight between the points
    ///
    /// # Source
    /// T. Dirlik, PhD thesis, University of Warwick, 1985, for the moments; the integral of
    /// straight stretches is exact, derived.
    #[must_use]
    pub fn of_density(density: &[(f64, f64)]) -> Option<Self> {
        let stretches = || density.iter().zip(density.iter().skip(1));
        let sound = density
            .iter()
            .all(|&(frequency, value)| frequency >= 0.0 && value >= 0.0)
            && stretches().all(|(left, right)| left.0 < right.0);
        if !sound {
            return None;
        }
        let moment = |k| {
            stretches()
                .map(|(left, right)| of_stretch(*left, *right, k))
                .sum()
        };
        Self::checked(moment(0), moment(1), moment(2), moment(4))
    }

    fn checked(m0: f64, m1: f64, m2: f64, m4: f64) -> Option<Self> {
        let sound = [m0, m1, m2, m4]
            .iter()
            .all(|moment| moment.is_finite() && *moment > 0.0);
        sound.then_some(Self { m0, m1, m2, m4 })
    }

    /// Root mean square of the history, in its unit.
    #[must_use]
    pub fn rms(&self) -> f64 {
        self.m0.sqrt()
    }

    /// Crossings of the mean on the way up, per second.
    ///
    /// # Equation
    ///   √(m2/m0)
    ///
    /// # Range
    /// A random history with normal distribution.
    ///
    /// # Source
    /// S. O. Rice, Bell System Technical Journal 24 (1945) 46, from memory.
    #[must_use]
    pub fn upward_crossings(&self) -> f64 {
        (self.m2 / self.m0).sqrt()
    }

    /// Peaks per second.
    ///
    /// # Equation
    ///   √(m4/m2)
    ///
    /// # Range
    /// A random history with normal distribution.
    ///
    /// # Source
    /// S. O. Rice, as for [`upward_crossings`](Self::upward_crossings), from memory.
    #[must_use]
    pub fn peaks(&self) -> f64 {
        (self.m4 / self.m2).sqrt()
    }

    /// Crossings over peaks: 1 for a narrow band, near 0 for a wide one.
    ///
    /// # Equation
    ///   γ = m2/√(m0 m4)
    ///
    /// # Source
    /// T. Dirlik, as for [`of_density`](Self::of_density).
    #[must_use]
    pub fn irregularity(&self) -> f64 {
        self.upward_crossings() / self.peaks()
    }
}

/// ∫ f^k G df over a straight stretch of density.
fn of_stretch(left: (f64, f64), right: (f64, f64), k: i32) -> f64 {
    let slope = (right.1 - left.1) / (right.0 - left.0);
    // Gauss's rule with three points is exact to the fifth power, and nothing cancels in it.
    let (middle, half) = (f64::midpoint(left.0, right.0), (right.0 - left.0) / 2.0);
    [(-0.6_f64.sqrt(), 5.0), (0.0, 8.0), (0.6_f64.sqrt(), 5.0)]
        .iter()
        .map(|&(place, weight)| {
            let f = middle + place * half;
            weight / 9.0 * half * f.powi(k) * (left.1 + slope * (f - left.0))
        })
        .sum()
}

/// How the amplitudes of the cycles of a random history are distributed, and how many there are.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Amplitudes {
    rms: f64,
    rate: f64,
    form: Form,
}

/// Form of the distribution.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Form {
    /// Rayleigh's, of a narrow band: each crossing is a cycle.
    NarrowBand,
    /// Dirlik's sum of an exponential and two of Rayleigh's: each peak is a cycle.
    Dirlik {
        /// Weight of the exponential part, D1.
        exponential: f64,
        /// Its scale, Q.
        scale: f64,
        /// Weight of the first Rayleigh part, D2.
        narrow: f64,
        /// Its scale, the magnitude of R.
        narrow_scale: f64,
        /// Weight of the second Rayleigh part, D3, of scale 1.
        wide: f64,
    },
}

impl Amplitudes {
    /// Amplitudes as if the band were narrow, on the safe side for any other.
    ///
    /// # Equation
    ///   density of Z = amplitude/√m0:  Z e^(−Z²/2),   √(m2/m0) cycles per second
    ///
    /// # Range
    /// A random history with normal distribution.
    ///
    /// # Source
    /// J. S. Bendat, NASA report on contract NAS-5-4590, 1964, from memory.
    #[must_use]
    pub fn narrow_band(moments: &Moments) -> Self {
        Self {
            rms: moments.rms(),
            rate: moments.upward_crossings(),
            form: Form::NarrowBand,
        }
    }

    /// Amplitudes as rainflow counts them, after Dirlik; of a single frequency those of the
    /// narrow band, which [`form`](Self::form) tells.
    ///
    /// # Equation
    ///   γ = m2/√(m0 m4),   x = (m1/m0) √(m2/m4)
    ///   D1 = 2 (x − γ²)/(1 + γ²),   R = (γ − x − D1²)/(1 − γ − D1 + D1²)
    ///   D2 = (1 − γ − D1 + D1²)/(1 − R),   D3 = 1 − D1 − D2,   Q = 1.25 (γ − D3 − D2 R)/D1
    ///   density of Z = amplitude/√m0:
    ///     D1/Q e^(−Z/Q) + D2 Z/R² e^(−Z²/2R²) + D3 Z e^(−Z²/2),   √(m4/m2) cycles per second
    ///
    /// # Range
    /// A random history with normal distribution. D1 is never below zero, since m2³ ≤ m1² m4,
    /// and is zero at a single frequency only; there R and Q are 0/0. Below D1 = 1e-6, and where
    /// a weight or scale is not that of a distribution, the narrow band is taken.
    ///
    /// # Source
    /// T. Dirlik, Application of computers in fatigue analysis, PhD thesis, University of
    /// Warwick, 1985. The switch: derived.
    #[must_use]
    pub fn dirlik(moments: &Moments) -> Self {
        let Moments { m0, m1, m2, m4 } = *moments;
        let g = moments.irregularity();
        let x = m1 / m0 * (m2 / m4).sqrt();
        let d1 = 2.0 * (x - g * g) / (1.0 + g * g);
        let rest = 1.0 - g - d1 + d1 * d1;
        let r = (g - x - d1 * d1) / rest;
        let d2 = rest / (1.0 - r);
        let d3 = 1.0 - d1 - d2;
        let q = 1.25 * (g - d3 - d2 * r) / d1;
        let sound = d1 >= LEAST_EXPONENTIAL
            && [d2, d3].iter().all(|weight| *weight >= 0.0)
            && [r.abs(), q]
                .iter()
                .all(|scale| scale.is_finite() && *scale > 0.0);
        if !sound {
            return Self::narrow_band(moments);
        }
        Self {
            rms: moments.rms(),
            rate: moments.peaks(),
            form: Form::Dirlik {
                exponential: d1,
                scale: q,
                narrow: d2,
                narrow_scale: r.abs(),
                wide: d3,
            },
        }
    }

    /// Which distribution it is.
    #[must_use]
    pub fn form(&self) -> Form {
        self.form
    }

    /// Cycles per second.
    #[must_use]
    pub fn rate(&self) -> f64 {
        self.rate
    }

    /// Probability density of an amplitude over the root mean square; zero below zero.
    #[must_use]
    pub fn density(&self, z: f64) -> f64 {
        if z < 0.0 {
            return 0.0;
        }
        let rayleigh = |scale: f64| z / (scale * scale) * (-z * z / (2.0 * scale * scale)).exp();
        match self.form {
            Form::NarrowBand => rayleigh(1.0),
            Form::Dirlik {
                exponential,
                scale,
                narrow,
                narrow_scale,
                wide,
            } => {
                exponential / scale * (-z / scale).exp()
                    + narrow * rayleigh(narrow_scale)
                    + wide * rayleigh(1.0)
            }
        }
    }

    /// Mean of an amplitude over the root mean square, to a power above −1.
    ///
    /// # Equation
    ///   Rayleigh:  2^(k/2) Γ(1 + k/2)
    ///   Dirlik:    D1 Q^k Γ(1 + k) + 2^(k/2) Γ(1 + k/2) (D2 |R|^k + D3)
    ///
    /// # Source
    /// Derived: moments of the densities.
    #[must_use]
    pub fn mean_power(&self, k: f64) -> f64 {
        let rayleigh = SQRT_2.powf(k) * gamma(1.0 + k / 2.0);
        match self.form {
            Form::NarrowBand => rayleigh,
            Form::Dirlik {
                exponential,
                scale,
                narrow,
                narrow_scale,
                wide,
            } => {
                exponential * scale.powf(k) * gamma(1.0 + k)
                    + rayleigh * (narrow * narrow_scale.powf(k) + wide)
            }
        }
    }

    /// Damage per second by a line of ranges.
    ///
    /// # Equation
    ///   D = rate · E\[(2 Z √m0)^m\]/(N0 R0^m)
    ///
    ///   R0, N0  point of the line, in ranges: twice the amplitude; m its slope
    ///
    /// # Source
    /// Derived: Miner's sum over the distribution.
    #[must_use]
    pub fn damage_rate(&self, line: &FatigueLine) -> f64 {
        self.rate * line.damage_of_one(2.0 * self.rms) * self.mean_power(line.slope())
    }
}
