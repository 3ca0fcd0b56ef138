//! Guarded linear algebra: the only place that calls factorisations.
//!
//! Some routines of the algebra library never return, or return nonsense, when
//! a number is not finite or a matrix is not symmetric. Every call goes through
//! here, where the numbers are looked at first; a lint keeps others away.
//!
//! Knows no mechanics: matrices in, matrices out.

use nalgebra::{DMatrix, DVector};

use crate::spatial::{Mat3, Mat6, Vec3, Vec6};

/// Relative asymmetry above which a matrix is not taken as symmetric.
const SYMMETRY_TOLERANCE: f64 = 1e-9;

/// Why a matrix operation gave no answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NumericError {
    /// A number in the input is infinite or not a number.
    NotFinite,
    /// The matrix is not symmetric.
    NotSymmetric,
    /// The matrix has no inverse to working precision.
    Singular,
    /// The matrix is not positive definite.
    NotPositiveDefinite,
    /// The columns of the matrix are not three unit vectors square to each other.
    NotRotation,
}

impl std::fmt::Display for NumericError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Self::NotFinite => "a number is infinite or not a number",
            Self::NotSymmetric => "the matrix is not symmetric",
            Self::Singular => "the matrix has no inverse",
            Self::NotPositiveDefinite => "the matrix is not positive definite",
            Self::NotRotation => "the axes are not unit vectors square to each other",
        })
    }
}

impl std::error::Error for NumericError {}

/// Eigenvalues in rising order with the unit eigenvectors in the columns of the matrix beside them.
#[derive(Debug, Clone, Copy)]
pub struct Eigen<V, M> {
    /// Eigenvalues, rising.
    pub values: V,
    /// Column `j` belongs to value `j`.
    pub vectors: M,
}

macro_rules! fixed_size_algebra {
    ($eigen:ident, $solve:ident, $cholesky:ident, $inverse:ident, $mat:ty, $vec:ty, $n:literal) => {
        /// Eigenvalues and vectors of a symmetric matrix, rising.
        ///
        /// # Errors
        /// [`NumericError::NotFinite`], [`NumericError::NotSymmetric`] (relative asymmetry above 1e-9).
        pub fn $eigen(a: &$mat) -> Result<Eigen<$vec, $mat>, NumericError> {
            let scale = finite_scale(a.as_slice())?;
            let symmetric = (a + a.transpose()) * 0.5;
            if (a - symmetric).amax() > SYMMETRY_TOLERANCE * scale {
                return Err(NumericError::NotSymmetric);
            }
            #[allow(clippy::disallowed_methods, reason = "the guarded call itself")]
            let unsorted = symmetric.symmetric_eigen();
            let mut order: [usize; $n] = std::array::from_fn(|i| i);
            order.sort_by(|&i, &j| unsorted.eigenvalues[i].total_cmp(&unsorted.eigenvalues[j]));
            let mut sorted = Eigen {
                values: <$vec>::zeros(),
                vectors: <$mat>::zeros(),
            };
            for (to, &from) in order.iter().enumerate() {
                sorted.values[to] = unsorted.eigenvalues[from];
                sorted
                    .vectors
                    .set_column(to, &unsorted.eigenvectors.column(from));
            }
            Ok(sorted)
        }

        /// Solves `a x = b` by factorisation with row exchange.
        ///
        /// # Errors
        /// [`NumericError::NotFinite`] for input or answer, [`NumericError::Singular`].
        pub fn $solve(a: &$mat, b: &$vec) -> Result<$vec, NumericError> {
            finite_scale(a.as_slice())?;
            finite_scale(b.as_slice())?;
            #[allow(clippy::disallowed_methods, reason = "the guarded call itself")]
            let x = a.lu().solve(b).ok_or(NumericError::Singular)?;
            finite_scale(x.as_slice())?;
            Ok(x)
        }

        /// Lower factor `l` with `a = l l'`.
        ///
        /// # Errors
        /// [`NumericError::NotFinite`], [`NumericError::NotPositiveDefinite`].
        pub fn $cholesky(a: &$mat) -> Result<$mat, NumericError> {
            finite_scale(a.as_slice())?;
            #[allow(clippy::disallowed_methods, reason = "the guarded call itself")]
            let factor = a.cholesky().ok_or(NumericError::NotPositiveDefinite)?;
            Ok(factor.l())
        }

        /// Inverse of a matrix.
        ///
        /// # Errors
        /// [`NumericError::NotFinite`], [`NumericError::Singular`].
        pub fn $inverse(a: &$mat) -> Result<$mat, NumericError> {
            finite_scale(a.as_slice())?;
            #[allow(clippy::disallowed_methods, reason = "the guarded call itself")]
            let inverse = a.try_inverse().ok_or(NumericError::Singular)?;
            finite_scale(inverse.as_slice())?;
            Ok(inverse)
        }
    };
}

fixed_size_algebra!(symmetric_eigen3, solve3, cholesky3, inverse3, Mat3, Vec3, 3);
fixed_size_algebra!(symmetric_eigen6, solve6, cholesky6, inverse6, Mat6, Vec6, 6);

/// Eigenvalues and vectors of a symmetric matrix of any size, rising.
///
/// # Errors
/// As of [`symmetric_eigen6`].
pub fn symmetric_eigen(
    a: &DMatrix<f64>,
) -> Result<Eigen<DVector<f64>, DMatrix<f64>>, NumericError> {
    let scale = finite_scale(a.as_slice())?;
    let symmetric = (a + a.transpose()) * 0.5;
    if (a - &symmetric).amax() > SYMMETRY_TOLERANCE * scale {
        return Err(NumericError::NotSymmetric);
    }
    #[allow(clippy::disallowed_methods, reason = "the guarded call itself")]
    let unsorted = symmetric.symmetric_eigen();
    let mut order: Vec<usize> = (0..a.nrows()).collect();
    order.sort_by(|&i, &j| unsorted.eigenvalues[i].total_cmp(&unsorted.eigenvalues[j]));
    Ok(Eigen {
        values: DVector::from_fn(order.len(), |to, _| unsorted.eigenvalues[order[to]]),
        vectors: DMatrix::from_fn(order.len(), order.len(), |row, to| {
            unsorted.eigenvectors[(row, order[to])]
        }),
    })
}

/// Inverse of the complex matrix `re + i im`, as its real and imaginary part.
///
/// # Equation
///   (P + iQ)⁻¹ = X − i P⁻¹ Q X,   X = (P + Q P⁻¹ Q)⁻¹
///
/// # Range
/// The real part must have an inverse.
///
/// # Source
/// Derived: multiplied out, the product with `P + iQ` is the unit matrix.
///
/// # Errors
/// [`NumericError::NotFinite`], [`NumericError::Singular`].
pub fn inverse3_complex(re: &Mat3, im: &Mat3) -> Result<(Mat3, Mat3), NumericError> {
    finite_scale(im.as_slice())?;
    let ratio = inverse3(re)? * im;
    let real = inverse3(&(re + im * ratio))?;
    Ok((real, -(ratio * real)))
}

/// Refuses numbers that are infinite or not a number.
///
/// # Errors
/// [`NumericError::NotFinite`].
pub fn require_finite(numbers: &[f64]) -> Result<(), NumericError> {
    finite_scale(numbers).map(|_| ())
}

/// Largest magnitude, or an error when any number is not finite.
fn finite_scale(numbers: &[f64]) -> Result<f64, NumericError> {
    let mut scale = 0.0_f64;
    for &number in numbers {
        if !number.is_finite() {
            return Err(NumericError::NotFinite);
        }
        scale = scale.max(number.abs());
    }
    Ok(scale)
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    #[test]
    fn eigenvalues_rise_and_rebuild_the_matrix() {
        let a = Mat3::new(2.0, -1.0, 0.3, -1.0, 5.0, 0.1, 0.3, 0.1, -4.0);
        let e = symmetric_eigen3(&a).unwrap();
        assert!(e.values[0] < e.values[1] && e.values[1] < e.values[2]);
        let rebuilt = e.vectors * Mat3::from_diagonal(&e.values) * e.vectors.transpose();
        assert_relative_eq!(rebuilt, a, epsilon = 1e-13);
    }

    #[test]
    fn complex_inverse_times_the_matrix_is_the_unit_matrix() {
        let p = Mat3::new(2.0, -1.0, 0.3, 0.4, 5.0, 0.1, 0.3, -0.7, 4.0);
        let q = Mat3::new(0.2, 0.5, -0.3, 1.4, 0.6, 0.1, 0.9, -0.7, 0.4);
        let (re, im) = inverse3_complex(&p, &q).unwrap();
        assert_relative_eq!(p * re - q * im, Mat3::identity(), epsilon = 1e-14);
        assert_relative_eq!(p * im + q * re, Mat3::zeros(), epsilon = 1e-14);
        assert_eq!(
            inverse3_complex(&Mat3::zeros(), &q).unwrap_err(),
            NumericError::Singular
        );
    }

    #[test]
    fn what_is_not_finite_or_not_symmetric_is_refused_and_returns() {
        let mut a = Mat6::identity();
        a[(2, 3)] = f64::NAN;
        assert_eq!(symmetric_eigen6(&a).unwrap_err(), NumericError::NotFinite);
        assert_eq!(
            solve6(&a, &Vec6::zeros()).unwrap_err(),
            NumericError::NotFinite
        );
        a[(2, 3)] = 1e-3;
        assert_eq!(
            symmetric_eigen6(&a).unwrap_err(),
            NumericError::NotSymmetric
        );
        assert_eq!(
            solve3(&Mat3::zeros(), &Vec3::x()).unwrap_err(),
            NumericError::Singular
        );
        assert_eq!(
            cholesky3(&-Mat3::identity()).unwrap_err(),
            NumericError::NotPositiveDefinite
        );
        assert_eq!(
            inverse3(&Mat3::zeros()).unwrap_err(),
            NumericError::Singular
        );
    }
}
