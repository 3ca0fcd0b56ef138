//! How strongly a seated person feels vertical vibration, after ISO 2631-1.

use std::f64::consts::SQRT_2;

use nalgebra::Complex;

/// Factors of the weighting Wk at the nominal third-octave frequencies \[Hz, 1\].
///
/// ISO 2631-1:1997, table of principal weightings.
pub const THIRD_OCTAVES: [(f64, f64); 37] = [
    (0.1, 0.0312),
    (0.125, 0.0486),
    (0.16, 0.0790),
    (0.2, 0.121),
    (0.25, 0.182),
    (0.315, 0.263),
    (0.4, 0.352),
    (0.5, 0.418),
    (0.63, 0.459),
    (0.8, 0.477),
    (1.0, 0.482),
    (1.25, 0.484),
    (1.6, 0.494),
    (2.0, 0.531),
    (2.5, 0.631),
    (3.15, 0.804),
    (4.0, 0.967),
    (5.0, 1.039),
    (6.3, 1.054),
    (8.0, 1.036),
    (10.0, 0.988),
    (12.5, 0.902),
    (16.0, 0.768),
    (20.0, 0.636),
    (25.0, 0.513),
    (31.5, 0.405),
    (40.0, 0.314),
    (50.0, 0.246),
    (63.0, 0.186),
    (80.0, 0.132),
    (100.0, 0.0887),
    (125.0, 0.0540),
    (160.0, 0.0285),
    (200.0, 0.0152),
    (250.0, 0.00790),
    (315.0, 0.00398),
    (400.0, 0.00195),
];

// Corner frequencies [Hz] and quality factors: ISO 2631-1:1997, annex A, from memory.
const HIGH_PASS: f64 = 0.4;
const LOW_PASS: f64 = 100.0;
const TRANSITION: f64 = 12.5;
const TRANSITION_QUALITY: f64 = 0.63;
const STEP_FROM: f64 = 2.37;
const STEP_TO: f64 = 3.35;
const STEP_QUALITY: f64 = 0.91;

/// Weighting Wk as a transfer function, at a frequency \[Hz\]: vertical, through the seat.
///
/// # Equation
///   Wk = Hh Hl Ht Hs,   s = 2πi f,   wi = 2π fi
///   Hh = 1/(1 + √2 w1/s + (w1/s)²)                      Hl = 1/(1 + √2 s/w2 + (s/w2)²)
///   Ht = (1 + s/w3)/(1 + s/(Q4 w3) + (s/w3)²)
///   Hs = (1 + s/(Q5 w5) + (s/w5)²)/(1 + s/(Q5 w6) + (s/w6)²) · (w5/w6)²
///
///   f1 0.4, f2 100, f3 12.5, f5 2.37, f6 3.35 Hz,   Q4 0.63, Q5 0.91
///
/// # Range
/// f > 0, else 0; meant for 0.5 to 80 Hz. Within 0.3 % of the printed factors at the nominal
/// third-octave frequencies; at the exact ones, 10^(k/10), those are off by up to 2.5 %.
///
/// # Source
/// ISO 2631-1:1997, annex A, from memory; agrees with the table of the standard.
#[must_use]
pub fn weighting(frequency_hz: f64) -> Complex<f64> {
    // The high pass is a division by the frequency.
    if frequency_hz <= 0.0 {
        return Complex::new(0.0, 0.0);
    }
    let s = |corner: f64| Complex::new(0.0, frequency_hz / corner);
    let quadratic = |x: Complex<f64>, quality: f64| 1.0 + x / quality + x * x;
    let high_pass = quadratic(s(HIGH_PASS).inv(), SQRT_2.recip()).inv();
    let low_pass = quadratic(s(LOW_PASS), SQRT_2.recip()).inv();
    let transition = (1.0 + s(TRANSITION)) / quadratic(s(TRANSITION), TRANSITION_QUALITY);
    let step = quadratic(s(STEP_FROM), STEP_QUALITY) / quadratic(s(STEP_TO), STEP_QUALITY)
        * (STEP_FROM / STEP_TO).powi(2);
    high_pass * low_pass * transition * step
}

/// Weighted acceleration, root mean square \[m/s²\], of lines of frequency \[Hz\] and root-mean-square acceleration \[m/s²\].
///
/// # Equation
///   aw = √(Σ (Wi ai)²)
///
/// # Range
/// Lines of different frequency, or bands with the weight at their middle. Seat, z axis, factor 1.
///
/// # Source
/// ISO 2631-1:1997.
#[must_use]
pub fn weighted_acceleration(lines: &[(f64, f64)]) -> f64 {
    lines
        .iter()
        .map(|&(frequency_hz, rms)| weighting(frequency_hz).norm_sqr() * rms * rms)
        .sum::<f64>()
        .sqrt()
}

/// Weighted acceleration, root mean square \[m/s²\], of a one-sided density given at rising frequencies \[Hz, (m/s²)²/Hz\].
///
/// # Equation
///   aw² = ∫ |Wk|² G df,   trapezoids between the points
///
/// # Range
/// Points close enough that neither weight nor density bends between them.
///
/// # Source
/// Derived from the sum over lines.
#[must_use]
pub fn weighted_acceleration_of_density(density: &[(f64, f64)]) -> f64 {
    let weighted = |&(frequency_hz, value): &(f64, f64)| weighting(frequency_hz).norm_sqr() * value;
    density
        .iter()
        .zip(density.iter().skip(1))
        .map(|(left, right)| (right.0 - left.0) * (weighted(left) + weighted(right)) / 2.0)
        .sum::<f64>()
        .sqrt()
}

/// How people in public transport are likely to call a vibration.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Comfort {
    /// Not uncomfortable.
    Comfortable,
    /// A little uncomfortable.
    ALittle,
    /// Fairly uncomfortable.
    Fairly,
    /// Uncomfortable.
    Uncomfortable,
    /// Very uncomfortable.
    Very,
    /// Extremely uncomfortable.
    Extremely,
}

/// Ranges of the weighted acceleration \[m/s²\]; they overlap.
const COMFORT: [(Comfort, f64, f64); 6] = [
    (Comfort::Comfortable, 0.0, 0.315),
    (Comfort::ALittle, 0.315, 0.63),
    (Comfort::Fairly, 0.5, 1.0),
    (Comfort::Uncomfortable, 0.8, 1.6),
    (Comfort::Very, 1.25, 2.5),
    (Comfort::Extremely, 2.0, f64::INFINITY),
];

impl Comfort {
    /// The words.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Comfortable => "not uncomfortable",
            Self::ALittle => "a little uncomfortable",
            Self::Fairly => "fairly uncomfortable",
            Self::Uncomfortable => "uncomfortable",
            Self::Very => "very uncomfortable",
            Self::Extremely => "extremely uncomfortable",
        }
    }
}

/// Every likely reaction to a weighted acceleration \[m/s²\], the mildest first: one, or two where the ranges overlap.
///
/// Empty only for what is below zero or not a number.
///
/// # Range
/// Public transport, as a guide and no limit. An end that two ranges share counts to the upper
/// one only.
///
/// # Source
/// ISO 2631-1:1997, annex C, from memory.
#[must_use]
pub fn comfort(weighted: f64) -> Vec<Comfort> {
    COMFORT
        .iter()
        .filter(|(_, from, to)| (*from..*to).contains(&weighted))
        .map(|(reaction, ..)| *reaction)
        .collect()
}
