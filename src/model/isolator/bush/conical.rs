//! Rate of a bonded bush when one tube tilts in the other, from a table.

/// Outer over inner radius of the rows of [`SHARES`].
const RATIOS: [f64; ROWS] = [
    1.05, 1.07, 1.1, 1.16, 1.25, 1.36, 1.5, 1.75, 2.0, 2.5, 3.0, 4.0, 6.0,
];

/// Length over wall of the columns of [`SHARES`].
const LENGTHS: [f64; COLUMNS] = [
    0.05, 0.1, 0.2, 0.35, 0.5, 0.7, 1.0, 1.4, 2.0, 2.8, 4.0, 5.6, 8.0, 11.2, 16.0, 22.4, 32.0,
    45.0, 64.0,
];

const ROWS: usize = 13;
const COLUMNS: usize = 19;

/// Moment per angle over shear modulus and the cube of the length.
///
/// # Source
/// Computed independently: finite elements, incompressible (bulk over shear
/// modulus 1e5 and more), first harmonic round the axis, biquadratic motion
/// with a pressure linear in each element, inner tube tilted about a diameter
/// through the middle, outer tube held, ends free. A finer net changed none of
/// nine places tried by more than 0.03 %. Shifting the tube in place of tilting
/// it, the same elements come within 0.6 % of plane stress at b/a 6 and a length
/// of a thirty-second of the wall, within 1.3 % of plane strain at 64 walls.
const SHARES: [[f64; COLUMNS]; ROWS] = [
    [
        108700.0, 106600.0, 96260.0, 74110.0, 54100.0, 35670.0, 20640.0, 11550.0, 6017.0, 3203.0,
        1638.0, 887.9, 504.8, 369.0, 396.5, 595.2, 1079.0, 1972.0, 3583.0,
    ],
    [
        40810.0, 40010.0, 36130.0, 27810.0, 20300.0, 13390.0, 7754.0, 4342.0, 2268.0, 1214.0,
        630.1, 354.0, 221.8, 192.4, 247.3, 401.4, 733.2, 1298.0, 2212.0,
    ],
    [
        14620.0, 14340.0, 12940.0, 9966.0, 7276.0, 4801.0, 2783.0, 1562.0, 820.2, 443.9, 236.9,
        142.0, 102.9, 107.7, 158.2, 265.4, 472.5, 786.1, 1220.0,
    ],
    [
        3893.0, 3816.0, 3445.0, 2652.0, 1937.0, 1279.0, 744.2, 420.3, 223.8, 124.8, 71.41, 49.13,
        44.81, 56.82, 90.36, 148.5, 243.3, 359.6, 487.3,
    ],
    [
        1158.0, 1135.0, 1024.0, 788.2, 576.0, 381.5, 223.3, 127.8, 70.01, 41.21, 26.4, 21.55,
        23.72, 32.92, 51.92, 79.34, 115.7, 151.8, 185.1,
    ],
    [
        450.3, 441.2, 397.8, 306.0, 223.9, 148.8, 87.97, 51.32, 29.27, 18.47, 13.32, 12.42, 15.03,
        21.13, 31.65, 44.49, 58.9, 71.39, 82.0,
    ],
    [
        201.6, 197.4, 177.8, 136.7, 100.2, 66.94, 40.13, 24.04, 14.44, 9.852, 7.92, 8.082, 10.17,
        13.96, 19.56, 25.47, 31.34, 36.05, 39.87,
    ],
    [
        80.91, 79.16, 71.1, 54.52, 40.05, 27.04, 16.63, 10.43, 6.786, 5.132, 4.61, 5.019, 6.312,
        8.196, 10.53, 12.66, 14.58, 16.03, 17.18,
    ],
    [
        45.07, 44.04, 39.42, 30.13, 22.17, 15.11, 9.52, 6.215, 4.298, 3.471, 3.297, 3.658, 4.509,
        5.598, 6.817, 7.85, 8.746, 9.409, 9.923,
    ],
    [
        21.82, 21.25, 18.85, 14.28, 10.53, 7.295, 4.78, 3.317, 2.489, 2.163, 2.157, 2.4, 2.846,
        3.339, 3.836, 4.231, 4.562, 4.802, 4.986,
    ],
    [
        14.02, 13.6, 11.94, 8.949, 6.602, 4.634, 3.131, 2.268, 1.79, 1.616, 1.643, 1.816, 2.096,
        2.382, 2.657, 2.869, 3.045, 3.171, 3.266,
    ],
    [
        8.278, 7.957, 6.823, 5.004, 3.694, 2.648, 1.873, 1.437, 1.202, 1.129, 1.164, 1.271, 1.421,
        1.563, 1.693, 1.791, 1.871, 1.928, 1.971,
    ],
    [
        4.89, 4.602, 3.763, 2.668, 1.982, 1.47, 1.104, 0.9025, 0.7993, 0.7753, 0.8054, 0.8661,
        0.9419, 1.009, 1.068, 1.112, 1.148, 1.173, 1.191,
    ],
];

/// Moment per angle over shear modulus and the cube of the length, for outer
/// over inner radius `ratio` and length over wall `slenderness`.
///
/// # Range
/// `ratio` 1.05 to 6, `slenderness` 0.05 to 64; beyond, the cubic of the last
/// interval runs on. Against the same finite elements at 162 places between
/// those of the table within 0.7 %, and within 0.2 % over `ratio` 1.25 to 4
/// and `slenderness` 0.25 to 16.
pub(super) fn share(ratio: f64, slenderness: f64) -> f64 {
    let lengths = LENGTHS.map(f64::ln);
    let along = slenderness.ln();
    let at_length = SHARES.map(|row| between(&lengths, &row.map(f64::ln), along));
    // By wall over inner radius, in powers of which the rate of a thin wall goes.
    let walls = RATIOS.map(|ratio| (ratio - 1.0).ln());
    between(&walls, &at_length, (ratio - 1.0).ln()).exp()
}

/// Value at `at` between values `y` at rising places `x`, smooth to the first derivative.
///
/// # Equation
///   the cubic with the values and slopes at both ends of the interval
///
///   slope  of the parabola through a place and its neighbours
///
/// # Source
/// Derived: Hermite's cubic, and the derivative of Lagrange's parabola.
fn between<const N: usize>(x: &[f64; N], y: &[f64; N], at: f64) -> f64 {
    let interval = x.partition_point(|x| *x <= at).clamp(1, N - 1) - 1;
    let (start, end) = (interval, interval + 1);
    let slope = |place: usize| {
        let middle = place.clamp(1, N - 2);
        let secant = |from: usize| (y[from + 1] - y[from]) / (x[from + 1] - x[from]);
        let (left, right) = (secant(middle - 1), secant(middle));
        let bend = (right - left) / (x[middle + 1] - x[middle - 1]);
        left + bend * (2.0 * x[place] - x[middle - 1] - x[middle])
    };
    let width = x[end] - x[start];
    let s = (at - x[start]) / width;
    let back = 1.0 - s;
    back * back * ((1.0 + 2.0 * s) * y[start] + s * width * slope(start))
        + s * s * ((1.0 + 2.0 * back) * y[end] - back * width * slope(end))
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    /// Derived: a parabola is its own interpolation, at every place and beyond the ends.
    #[test]
    fn a_parabola_is_kept() {
        let x = [0.0, 0.4, 1.0, 1.1, 2.0];
        let parabola = |x: f64| 2.0 - 3.0 * x + 0.7 * x * x;
        for at in [-0.3, 0.0, 0.2, 0.7, 1.0, 1.05, 1.9, 2.0, 2.4] {
            assert_relative_eq!(
                between(&x, &x.map(parabola), at),
                parabola(at),
                max_relative = 1e-13
            );
        }
    }
}
