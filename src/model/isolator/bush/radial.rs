//! Radial rate of a bonded bush of any length.

use std::f64::consts::PI;

use spec_math::cephes64::{i0e, i1e, k0e, k1e};

use crate::numeric::{NumericError, solve6};
use crate::spatial::{Mat6, Vec6};

/// Square of the decay of the bulging along the radius, times the length squared.
///
/// The equations of equilibrium averaged over the length give 48, which makes
/// the rate an upper bound since the motion is an assumed one.
///
/// # Source
/// Computed independently: against finite elements 48 gives 0 to 12 % too
/// much over the verified range, 60 gives 10 % too little to 8 % too much.
const DECAY: f64 = 60.0;

/// One solution of the averaged equations at one radius: motion `u_r cos θ`,
/// `u_t sin θ`, axial bulge `w z cos θ`, and slopes along the radius.
#[derive(Debug, Clone, Copy)]
struct Solution {
    u_r: f64,
    u_t: f64,
    w: f64,
    u_r_slope: f64,
    u_t_slope: f64,
}

impl Solution {
    /// Bulging that follows the decay: `w` with its slope along the radius at `r`, in-plane part its gradient.
    fn bulging(w: f64, slope: f64, alpha: f64, r: f64) -> Self {
        let square = alpha * alpha;
        let bend = (square + 1.0 / (r * r)) * w - slope / r;
        Self {
            u_r: -slope / square,
            u_t: w / (square * r),
            w,
            u_r_slope: -bend / square,
            u_t_slope: (slope / r - w / (r * r)) / square,
        }
    }
}

/// The six independent solutions at radius `r` of a bush between `a` and `b`.
///
/// The first two are made to be one at their own tube, so that neither
/// overflows however short the bush is.
fn solutions(r: f64, a: f64, b: f64, alpha: f64) -> [Solution; 6] {
    let x = alpha * r;
    let outward = (alpha * (r - b)).exp() / i1e(alpha * b);
    let inward = (alpha * (a - r)).exp() / k1e(alpha * a);
    let plain = |u_r, u_t, w, u_r_slope, u_t_slope| Solution {
        u_r,
        u_t,
        w,
        u_r_slope,
        u_t_slope,
    };
    let (r2, ln) = (r * r, r.ln());
    [
        Solution::bulging(
            i1e(x) * outward,
            alpha * (i0e(x) - i1e(x) / x) * outward,
            alpha,
            r,
        ),
        Solution::bulging(
            k1e(x) * inward,
            -alpha * (k0e(x) + k1e(x) / x) * inward,
            alpha,
            r,
        ),
        plain(r2 / 8.0, -11.0 * r2 / 8.0, r, r / 4.0, -11.0 * r / 4.0),
        plain(-2.5 * ln, 2.5 * ln + 1.5, 1.0 / r, -2.5 / r, 2.5 / r),
        plain(1.0, -1.0, 0.0, 0.0, 0.0),
        plain(1.0 / r2, 1.0 / r2, 0.0, -2.0 / (r2 * r), -2.0 / (r2 * r)),
    ]
}

/// Radial rate over shear modulus and length, of rubber between radii `a` and `b` in any unit of length.
///
/// # Equation
///   k/(G L) = π a |2 u_r' − u_t' + (u_t + u_r)/a + 4 w_B|   at r = a
///
///   u_r cos θ, u_t sin θ, z w cos θ   motion of the rubber, the sum of six solutions x₁ … x₆
///   at r = a: u_r = 1, u_t = −1, w = 0      the inner tube shifted by one
///   at r = b: u_r = u_t = w = 0             the outer tube held
///   w_B   the part of w in the first two solutions, I₁(α r) and K₁(α r), α² = 60/L²
///
/// # Range
/// Incompressible, small strain, ends free. Against finite elements −10 % to
/// +8 % over b/a 1.25 to 4 and L/(b − a) 0.25 to 16; down to b/a 1.05 and up to
/// L/(b − a) 64 it is −17 % to +9 %.
///
/// # Source
/// Derived: the motion in the plane is taken as constant along the axis, the
/// rubber bulges in proportion to the distance from the middle, the pressure is
/// the mean over the length; see [`DECAY`] for its number.
///
/// # Errors
/// [`NumericError`] for sizes that are no bush.
pub(super) fn share(a: f64, b: f64, length: f64) -> Result<f64, NumericError> {
    let alpha = DECAY.sqrt() / length;
    let (at_inner, at_outer) = (solutions(a, a, b, alpha), solutions(b, a, b, alpha));
    let mut whole = Mat6::zeros();
    let mut scale = Vec6::repeat(1.0);
    for (column, (inner, outer)) in at_inner.iter().zip(&at_outer).enumerate() {
        let numbers = Vec6::new(inner.u_r, inner.u_t, inner.w, outer.u_r, outer.u_t, outer.w);
        // The solutions differ by orders of magnitude in a very long or very short bush.
        scale[column] = numbers.amax();
        whole.set_column(column, &(numbers / scale[column]));
    }
    let boundary = Vec6::new(1.0, -1.0, 0.0, 0.0, 0.0, 0.0);
    let weights = solve6(&whole, &boundary)?.component_div(&scale);
    let sum = |part: fn(&Solution) -> f64| -> f64 {
        at_inner
            .iter()
            .zip(weights.iter())
            .map(|(solution, weight)| part(solution) * weight)
            .sum()
    };
    let bulging: f64 = at_inner
        .iter()
        .zip(weights.iter())
        .take(2)
        .map(|(solution, weight)| solution.w * weight)
        .sum();
    let pull = 2.0 * sum(|s| s.u_r_slope) - sum(|s| s.u_t_slope)
        + (sum(|s| s.u_t) + sum(|s| s.u_r)) / a
        + 4.0 * bulging;
    Ok(PI * a * pull.abs())
}

/// Radial rates over shear modulus and length of a disc-like and of an endless bush, between which every bush lies.
///
/// # Equation
///   short: 80 π (a² + b²)/(25 (a² + b²) ln(b/a) − 9 (b² − a²))
///   long:  4 π/(ln(b/a) − (b² − a²)/(b² + a²))
///
/// # Range
/// Incompressible, small strain. An ordinary bush is far from both.
///
/// # Source
/// J. E. Adkins, A. N. Gent, Load-deflexion relations of rubber bush mountings,
/// Br. J. Appl. Phys. 5 (1954) 354-358 (from memory): plane stress and plane strain.
/// Computed independently: finite elements approach both.
pub(super) fn bounds(a: f64, b: f64) -> [f64; 2] {
    let (sum, difference, ln) = (a * a + b * b, b * b - a * a, (b / a).ln());
    [
        80.0 * PI * sum / (25.0 * sum * ln - 9.0 * difference),
        4.0 * PI / (ln - difference / sum),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    /// Derived: rubber keeps its volume, u_r' + (u_r + u_t)/r + w = 0 in every solution.
    #[test]
    fn every_solution_keeps_its_volume() {
        for (a, b, length) in [
            (1.0, 2.0, 1.0),
            (0.008, 0.0085, 0.000_03),
            (2.0, 9.0, 400.0),
        ] {
            for share in [0.0, 0.3, 1.0] {
                let r = a + (b - a) * share;
                for (place, s) in solutions(r, a, b, DECAY.sqrt() / length).iter().enumerate() {
                    let terms = [s.u_r_slope, s.u_r / r, s.u_t / r, s.w];
                    let size = terms.iter().fold(0.0_f64, |m, t| m.max(t.abs()));
                    let sum: f64 = terms.iter().sum();
                    assert!(
                        sum.abs() <= 1e-13 * size,
                        "{place} at {r}: {sum:e} of {size:e}"
                    );
                }
            }
        }
    }

    /// Derived: the slopes are those of the motions, by central differences.
    #[test]
    fn slopes_are_those_of_the_motion() {
        let (a, b, alpha, h) = (1.0, 2.0, 3.0, 1e-5);
        for r in [1.2, 1.7] {
            let near = |r| solutions(r, a, b, alpha);
            for ((s, before), after) in near(r).iter().zip(near(r - h)).zip(near(r + h)) {
                let slope = |part: fn(&Solution) -> f64| (part(&after) - part(&before)) / (2.0 * h);
                assert_relative_eq!(slope(|s| s.u_r), s.u_r_slope, epsilon = 1e-8);
                assert_relative_eq!(slope(|s| s.u_t), s.u_t_slope, epsilon = 1e-8);
            }
        }
    }

    /// Cross-checked: `scipy.special.ive`, `kve` of scipy 1.17, 15 digits.
    #[test]
    fn bessel_functions_agree_with_another_library() {
        for (x, expected) in [
            (
                0.02,
                [
                    0.98029669562461,
                    0.00980247684057261,
                    4.10983756667257,
                    50.9638700563013,
                ],
            ),
            (
                0.5,
                [
                    0.64503527044915,
                    0.156420803184872,
                    1.52410938577391,
                    2.73100970821179,
                ],
            ),
            (
                1.9,
                [
                    0.318243162889142,
                    0.21661191117477,
                    0.861450616751754,
                    1.06747092981457,
                ],
            ),
            (
                2.1,
                [
                    0.299563094526282,
                    0.213747672106332,
                    0.823017152531662,
                    1.00236805274058,
                ],
            ),
            (
                7.9,
                [
                    0.144369864141042,
                    0.134896499439894,
                    0.439300081900215,
                    0.46631778473688,
                ],
            ),
            (
                8.1,
                [
                    0.142511809488295,
                    0.133400688325837,
                    0.433994375430857,
                    0.460043570752806,
                ],
            ),
            (
                30.0,
                [
                    0.0731459464822373,
                    0.0719163305986476,
                    0.227886665616254,
                    0.231654129377712,
                ],
            ),
            (
                700.0,
                [
                    0.0150812956515314,
                    0.0150705194447168,
                    0.0473623694546136,
                    0.0473961876534945,
                ],
            ),
            (
                3300.0,
                [
                    0.00694495680482324,
                    0.00694390445889939,
                    0.0218165724442058,
                    0.0218198777351413,
                ],
            ),
        ] {
            let found = [i0e(x), i1e(x), k0e(x), k1e(x)];
            for (found, expected) in found.into_iter().zip(expected) {
                assert_relative_eq!(found, expected, max_relative = 4e-15);
            }
        }
    }
}
