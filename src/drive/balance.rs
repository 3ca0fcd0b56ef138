//! Free forces and moments of any layout of cylinders: vector sums, order by order.

use nalgebra::Complex;

use crate::model::cylinder::Cylinder;

/// A vector in the plane across the crank that repeats with one order, as two that turn.
///
/// # Equation
///   Z(θ) = with e^(ikθ) + against e^(−ikθ),   real part along the upright, imaginary part a quarter turn on
///
/// # Source
/// Derived: any ellipse is the sum of two circles run through in opposite senses.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Turning {
    /// Turns with the crank.
    pub with: Complex<f64>,
    /// Turns against it.
    pub against: Complex<f64>,
}

impl Turning {
    /// Nothing that turns.
    pub const NONE: Self = Self {
        with: Complex::new(0.0, 0.0),
        against: Complex::new(0.0, 0.0),
    };

    /// Largest length over a turn.
    #[must_use]
    pub fn largest(&self) -> f64 {
        self.with.norm() + self.against.norm()
    }

    /// Smallest length over a turn.
    #[must_use]
    pub fn smallest(&self) -> f64 {
        (self.with.norm() - self.against.norm()).abs()
    }

    /// Complex amplitudes along the upright and a quarter turn on from it, each meaning Re(F e^(ikθ)).
    ///
    /// # Equation
    ///   F_u = W + G*,   F_v = −i (W − G*)
    ///
    /// # Source
    /// Derived: real and imaginary part of Z.
    #[must_use]
    pub fn along_axes(&self) -> [Complex<f64>; 2] {
        let back = self.against.conj();
        [self.with + back, (self.with - back) * -Complex::i()]
    }
}

/// What one order of all cylinders leaves unbalanced.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Unbalance {
    /// Force on the block, over the amplitude of this order in one cylinder.
    pub force: Turning,
    /// Moment on the block about the middle of the cylinders, over the same amplitude \[m\].
    pub moment: Turning,
}

/// Free force and moment of one order, over the amplitude of that order in one cylinder.
///
/// θ is the crank angle from a top dead centre of the first cylinder. Multiply
/// by `A_k m r ω²` of [`SliderCrank::coefficients`](super::crank::SliderCrank::coefficients).
///
/// # Equation
///   W = ½ Σ e^(ib) e^(ikφ),   G = ½ Σ e^(ib) e^(−ikφ)
///   moments: the same with i x in front of each term, since M = x e × F
///
///   b  bank, φ  phase \[rad\], x  place along the crank direction e \[m\]
///
/// # Range
/// Like pistons and rods, cylinder axes through the crank line. Rotating masses
/// are left out: the counterweights of the crank balance them.
///
/// # Source
/// Derived: `cos kα` split in its two exponentials, added in the plane across the crank.
#[must_use]
pub fn unbalance(cylinders: &[Cylinder], order: usize) -> Unbalance {
    let mut left = Unbalance {
        force: Turning::NONE,
        moment: Turning::NONE,
    };
    let Some(first) = cylinders.first() else {
        return left;
    };
    for cylinder in cylinders {
        let angle = order as f64 * cylinder.phase(first);
        let with = Complex::from_polar(0.5, cylinder.bank + angle);
        let against = Complex::from_polar(0.5, cylinder.bank - angle);
        let lever = Complex::new(0.0, cylinder.place);
        left.force.with += with;
        left.force.against += against;
        left.moment.with += lever * with;
        left.moment.against += lever * against;
    }
    left
}
