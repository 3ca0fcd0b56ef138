//! Harmonics of samples over one period, by the sum of the definition.

use nalgebra::Complex;
use std::f64::consts::TAU;

/// Complex amplitude of an order, meaning Re(F e^(ikθ)); for order 0 the mean.
pub(crate) fn amplitude(samples: &[f64], order: usize) -> Complex<f64> {
    let count = samples.len() as f64;
    let sum: Complex<f64> = samples
        .iter()
        .enumerate()
        .map(|(at, sample)| Complex::from_polar(*sample, -TAU * (order * at) as f64 / count))
        .sum();
    sum * (if order == 0 { 1.0 } else { 2.0 } / count)
}

/// Derivatives of a band-limited periodic function by its angle, the samples given over one period.
pub(crate) fn derivative(samples: &[f64], times: i32) -> Vec<f64> {
    let count = samples.len();
    let spectrum: Vec<Complex<f64>> = (0..count / 2)
        .map(|order| amplitude(samples, order) * Complex::new(0.0, order as f64).powi(times))
        .collect();
    (0..count)
        .map(|at| {
            let angle = TAU * at as f64 / count as f64;
            let terms = spectrum.iter().enumerate();
            terms
                .map(|(order, a)| (a * Complex::from_polar(1.0, order as f64 * angle)).re)
                .sum()
        })
        .collect()
}
