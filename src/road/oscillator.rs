//! One mass on a spring and a damper whose base is shaken, stepped exactly in time.

use std::f64::consts::TAU;

use nalgebra::Complex;

use super::pulse::Piece;

/// Terms of the series that stands in for a difference of nearly equal numbers.
const SERIES_TERMS: u32 = 18;

/// A mass on a spring and a viscous damper.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Oscillator {
    omega: f64,
    damping_ratio: f64,
}

/// Where the mass is relative to its base.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct State {
    /// Displacement of the mass less that of the base \[m\].
    pub displacement: f64,
    /// Its rate \[m/s\].
    pub velocity: f64,
}

impl Oscillator {
    /// Undamped natural frequency \[Hz\] and share of critical damping.
    ///
    /// `None` unless the frequency is above zero and the damping at least 0 and
    /// below 1: one that does not swing is not covered.
    #[must_use]
    pub fn new(frequency_hz: f64, damping_ratio: f64) -> Option<Self> {
        let valid =
            frequency_hz.is_finite() && frequency_hz > 0.0 && (0.0..1.0).contains(&damping_ratio);
        valid.then_some(Self {
            omega: TAU * frequency_hz,
            damping_ratio,
        })
    }

    /// Undamped natural frequency \[Hz\].
    #[must_use]
    pub fn frequency_hz(&self) -> f64 {
        self.omega / TAU
    }

    /// Share of critical damping.
    #[must_use]
    pub fn damping_ratio(&self) -> f64 {
        self.damping_ratio
    }

    /// Angular frequency at which it swings freely \[rad/s\].
    ///
    /// # Equation
    ///   ωd = ω √(1 − ζ²)
    ///
    /// # Source
    /// Derived.
    #[must_use]
    pub fn damped_rate(&self) -> f64 {
        let z = self.damping_ratio;
        // The product keeps what the square would lose where the damping is all but critical.
        self.omega * ((1.0 - z) * (1.0 + z)).sqrt()
    }

    /// Acceleration of the mass against the ground \[m/s²\].
    ///
    /// # Equation
    ///   a = −(2 ζ ω ż + ω² z),   z displacement relative to the base
    ///
    /// # Source
    /// Derived: Newton's law; the spring and the damper are all that pulls.
    #[must_use]
    pub fn acceleration_of_mass(&self, state: State) -> f64 {
        let Self {
            omega,
            damping_ratio,
        } = *self;
        -(2.0 * damping_ratio * omega * state.velocity + omega * omega * state.displacement)
    }

    /// State after the base has stood still, or gone on at a steady speed, for `time` \[s\].
    ///
    /// # Equation
    ///   z = e^(−ζωt) (z0 cos ωd t + (v0 + ζ ω z0) sin ωd t/ωd)
    ///
    /// # Source
    /// Derived: solution of z̈ + 2 ζ ω ż + ω² z = 0.
    #[must_use]
    pub fn free(&self, from: State, time: f64) -> State {
        let rate = self.damped_rate();
        let decay = self.damping_ratio * self.omega;
        let (sin, cos) = (rate * time).sin_cos();
        let shrunk = (-decay * time).exp();
        let State {
            displacement: z,
            velocity: v,
        } = from;
        State {
            displacement: shrunk * (z * cos + (v + decay * z) * sin / rate),
            velocity: shrunk * (v * cos - (self.omega * self.omega * z + decay * v) * sin / rate),
        }
    }

    /// State `time` \[s\] into a piece of base acceleration, exact for any length of step.
    ///
    /// # Equation
    ///   z̈ + 2 ζ ω ż + ω² z = −a(t),   a = a0 + a1 t + Re(A e^(iΩt))
    ///   z = free − ∫ h(t − s) a(s) ds,   h = Im(e^(λt))/ωd,   λ = −ζω + iωd
    ///
    ///   a  acceleration of the base \[m/s²\]
    ///
    /// # Range
    /// Any, resonance without damping included.
    ///
    /// # Source
    /// Derived: Duhamel's integral of each term, written with (eˣ − 1)/x and (eˣ − 1 − x)/x²,
    /// so that nothing is divided by a difference that vanishes at resonance. For a straight
    /// line it is the recurrence of N. C. Nigam, P. C. Jennings, Bull. Seism. Soc. Am. 59
    /// (1969) 909 (from memory).
    #[must_use]
    pub fn forced(&self, from: State, base: &Piece, time: f64) -> State {
        let rate = self.damped_rate();
        let root = Complex::new(-self.damping_ratio * self.omega, rate);
        let swing = Complex::new(0.0, base.rate);
        let straight =
            (first(root * time) * base.constant + second(root * time) * (base.slope * time)) * time;
        // ∫ e^(λ(t−s)) e^(iΩs) ds; the exponent left inside never has a growing real part.
        let driven =
            |root: Complex<f64>| (swing * time).exp() * first((root - swing) * time) * time;
        let (with, against) = (driven(root), driven(root.conj()));
        let over = Complex::new(0.0, 2.0 * rate);
        let harmonic = |of: Complex<f64>, of_conjugate: Complex<f64>| {
            (base.harmonic * (of - of_conjugate) / over).re
        };
        let free = self.free(from, time);
        State {
            displacement: free.displacement - straight.im / rate - harmonic(with, against),
            velocity: free.velocity
                - (root * straight).im / rate
                - harmonic(root * with, root.conj() * against),
        }
    }

    /// States at every sample of a base acceleration \[m/s²\] that runs straight between samples
    /// `step` \[s\] apart, from rest.
    ///
    /// `None` when the step is not above zero or a sample is not finite.
    #[must_use]
    pub fn history(&self, base: &[f64], step: f64) -> Option<Vec<State>> {
        let sound = step.is_finite() && step > 0.0 && base.iter().all(|a| a.is_finite());
        if !sound {
            return None;
        }
        let mut state = State::default();
        let mut states = Vec::with_capacity(base.len());
        states.extend(base.first().map(|_| state));
        for (from, to) in base.iter().zip(base.iter().skip(1)) {
            state = self.forced(state, &Piece::line(step, *from, (to - from) / step), step);
            states.push(state);
        }
        Some(states)
    }
}

/// (eˣ − 1)/x.
fn first(x: Complex<f64>) -> Complex<f64> {
    if x.norm_sqr() < 1.0 {
        return series(x, 1);
    }
    (x.exp() - 1.0) / x
}

/// (eˣ − 1 − x)/x².
fn second(x: Complex<f64>) -> Complex<f64> {
    if x.norm_sqr() < 1.0 {
        return series(x, 2);
    }
    (x.exp() - 1.0 - x) / (x * x)
}

/// Sum of xᵏ/(k + order)!.
fn series(x: Complex<f64>, order: u32) -> Complex<f64> {
    let mut term = Complex::new(if order == 1 { 1.0 } else { 0.5 }, 0.0);
    let mut sum = term;
    for k in 1..SERIES_TERMS {
        term = term * x / f64::from(k + order);
        sum += term;
    }
    sum
}
