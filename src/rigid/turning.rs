//! Moment of an isolator that is twisted: a potential of the rotation vector.

use nalgebra::UnitQuaternion;

use crate::spatial::{Mat3, Vec3, skew};

/// Below this turn \[rad\] series take the place of differences of nearly equal numbers.
const SMALL_TURN: f64 = 1e-2;

/// What rotational rates do at a turn; vehicle axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Twist {
    /// Moment on the powertrain [N m].
    pub moment: Vec3,
    /// Stiffness of the rubber [N m/rad], symmetric, never negative.
    pub material: Mat3,
    /// Stiffness from the moment turning with the powertrain [N m/rad].
    pub geometric: Mat3,
    /// Stored energy \[J\].
    pub energy: f64,
}

impl Twist {
    /// No rates about any axis.
    pub const NONE: Self = Self {
        moment: Vec3::new(0.0, 0.0, 0.0),
        material: Mat3::new(0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0),
        geometric: Mat3::new(0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0),
        energy: 0.0,
    };

    /// Rates `Kr` [N m/rad, vehicle axes, symmetric] twisted by `turn`.
    ///
    /// # Equation
    ///   E = θ' Kr θ/2,   M = −J⁻ᵀ g,   g = Kr θ
    ///   −dM/dφ = J⁻ᵀ Kr J⁻¹ + D J⁻¹
    ///   J⁻¹ = I − \[θ\]/2 + β \[θ\]²,   β = (1 − (t/2) cot(t/2))/t²
    ///   D = −\[g\]/2 − β (\[θ × g\] + \[θ\]\[g\]) + (β'/t) (θ × (θ × g)) θ'
    ///
    ///   θ, t  rotation vector of the turn, its length  \[rad\]
    ///   φ     small turn from the left, vehicle axes   \[rad\]
    ///
    /// # Range
    /// Turns below half a turn.
    ///
    /// # Source
    /// Derived: the potential of θ, differentiated along small turns from the
    /// left; J is the left Jacobian of the rotation group.
    #[must_use]
    pub fn of_rates(rates: &Mat3, turn: &UnitQuaternion<f64>) -> Self {
        let theta = turn.scaled_axis();
        let t = theta.norm();
        let g = rates * theta;
        let (beta, slope) = coefficients(t);
        let (cross, of_g) = (skew(&theta), skew(&g));
        let inverse = Mat3::identity() - cross * 0.5 + cross * cross * beta;
        let across = theta.cross(&g);
        let bend = of_g * -0.5 - (skew(&across) + cross * of_g) * beta
            + theta.cross(&across) * theta.transpose() * slope;
        Self {
            moment: -inverse.tr_mul(&g),
            material: inverse.tr_mul(&(rates * inverse)),
            geometric: bend * inverse,
            energy: theta.dot(&g) / 2.0,
        }
    }
}

/// β and β'/t of the equation above.
fn coefficients(t: f64) -> (f64, f64) {
    let t2 = t * t;
    if t < SMALL_TURN {
        return (1.0 / 12.0 + t2 / 720.0, 1.0 / 360.0 + t2 / 7560.0);
    }
    let half = t / 2.0;
    let cot = 1.0 / half.tan();
    let beta = (1.0 - half * cot) / t2;
    let slope = (-2.0 / (t2 * t) + 1.0 / (4.0 * t * half.sin().powi(2)) + cot / (2.0 * t2)) / t;
    (beta, slope)
}
