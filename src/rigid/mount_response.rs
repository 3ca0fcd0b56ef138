//! One mount: an isolator in series with what holds it.

use nalgebra::UnitQuaternion;

use crate::model::isolator::{Isolator, IsolatorState, Vibration};
use crate::model::mount::Mount;
use crate::numeric::{
    NumericError, inverse3, inverse3_complex, require_finite, solve3, symmetric_eigen3,
};
use crate::spatial::{Mat3, Vec3, turning_displacement};

/// Iterations for the deflection of the isolator behind a flexible bracket.
const ITERATIONS: usize = 60;

/// Residual, as a share of the whole deflection, at which the split is as good as rounding allows.
const SPLIT_ROUNDING: f64 = 2e-15;

/// Residual, as a share of the whole deflection, that is accepted when no step betters it.
const SPLIT_ACCEPTED: f64 = 1e-12;

/// Largest entry of `A'A - I` of mount axes.
const AXES_TOLERANCE: f64 = 1e-9;

/// A mount between powertrain and chassis, ready for a solver.
#[derive(Debug, Clone, Copy)]
pub struct HeldMount<'a> {
    /// Name, for messages.
    pub name: &'a str,
    /// Powertrain-side point in the fitted pose, in vehicle axes from the datum \[m\].
    pub at: Vec3,
    /// Chassis-side point, in vehicle axes from the datum \[m\]; equal to `at` when fitted free.
    pub anchor: Vec3,
    /// `R_VM`: columns are the mount axes u, v, w in vehicle axes. They stay with the chassis.
    pub axes: Mat3,
    /// Compliance of bracket and chassis in series with the isolator, in mount axes [m/N]: symmetric, not negative.
    ///
    /// It stays with the chassis axes as well, so that the mount keeps a potential.
    pub compliance: Mat3,
    /// The isolator.
    pub isolator: &'a Isolator,
}

/// What a mount does at a deflection, bracket and chassis included; in mount axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MountResponse {
    /// Whole deflection `d`, powertrain side minus chassis side, along u, v, w \[m\].
    pub deflection: Vec3,
    /// The isolator's own deflection `x` \[m\]: `d` without bracket and chassis.
    pub isolator_deflection: Vec3,
    /// Force that holds the deflection \[N\]: the chassis feels it, the powertrain its negative.
    pub force: Vec3,
    /// Derivative of the force with respect to the whole deflection [N/m], symmetric.
    pub rate: Mat3,
    /// Energy in isolator, bracket and chassis \[J\], zero at no deflection.
    pub energy: f64,
    /// The isolator at its own deflection.
    pub isolator: IsolatorState,
}

/// Why a mount gives no force at a deflection.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MountFailure {
    /// A number is not finite or a matrix has no inverse.
    Numeric(NumericError),
    /// The split of the deflection between isolator and bracket was not found.
    NoSplit,
}

impl From<NumericError> for MountFailure {
    fn from(error: NumericError) -> Self {
        Self::Numeric(error)
    }
}

impl<'a> HeldMount<'a> {
    /// A mount of the model with the isolator that sits in it, fitted free: both sides at the place in the file.
    #[must_use]
    pub fn fitted_free(mount: &'a Mount, isolator: &'a Isolator) -> Self {
        Self {
            name: &mount.name,
            at: mount.at,
            anchor: mount.at,
            axes: mount.axes,
            compliance: mount.compliance(),
            isolator,
        }
    }
}

impl HeldMount<'_> {
    /// Refuses numbers no mount can have.
    ///
    /// # Errors
    /// [`NumericError`] for a number that is not finite, axes that are not
    /// square, a compliance that is not symmetric or is negative in a direction.
    pub fn check(&self) -> Result<(), NumericError> {
        require_finite(self.at.as_slice())?;
        require_finite(self.anchor.as_slice())?;
        require_finite(self.axes.as_slice())?;
        if (self.axes.transpose() * self.axes - Mat3::identity()).amax() > AXES_TOLERANCE {
            return Err(NumericError::NotRotation);
        }
        let softness = symmetric_eigen3(&self.compliance)?.values;
        if softness[0] < -SPLIT_ACCEPTED * softness[2].abs() {
            return Err(NumericError::NotPositiveDefinite);
        }
        Ok(())
    }

    /// Whole deflection in mount axes \[m\] of a body that moved by `shift` and turned by `turn` about its centre of gravity.
    ///
    /// `arm` leads from the centre of gravity to the mount in the fitted pose \[m\].
    ///
    /// # Equation
    ///   d = A' (at − anchor + shift + (R − I) arm)
    ///
    /// # Source
    /// Derived: powertrain side minus chassis side, in axes that stay with the chassis.
    #[must_use]
    pub fn deflection(&self, shift: &Vec3, turn: &UnitQuaternion<f64>, arm: &Vec3) -> Vec3 {
        let moved = shift + turning_displacement(turn, arm);
        self.axes.tr_mul(&(self.at - self.anchor + moved))
    }

    /// Force, tangent and energy at the whole deflection `d` [m, mount axes].
    ///
    /// # Equation
    ///   x + C f(x) = d,   k_s = k (I + C k)⁻¹,   energy = φ(x) + f' C f / 2
    ///
    ///   x    deflection of the isolator            \[m\]
    ///   f, k its force and tangent at x            \[N\], [N/m]
    ///   C    `compliance`                          [m/N]
    ///
    /// # Range
    /// One solution for every law whose energy is convex. The form of `k_s` used
    /// holds for a slack isolator (k = 0) and for a rigid bracket (C = 0) alike.
    ///
    /// # Source
    /// Derived: one force runs through isolator and bracket, deflections add.
    ///
    /// # Errors
    /// [`MountFailure`].
    pub fn respond(&self, d: &Vec3) -> Result<MountResponse, MountFailure> {
        let (x, isolator) = if self.is_flexible() {
            self.split(d)?
        } else {
            (*d, self.isolator.at(d))
        };
        let force = isolator.point.force;
        let rate = if self.is_flexible() {
            let spread = Mat3::identity() + self.compliance * isolator.point.tangent;
            let rate = isolator.point.tangent * inverse3(&spread)?;
            (rate + rate.transpose()) * 0.5
        } else {
            isolator.point.tangent
        };
        Ok(MountResponse {
            deflection: *d,
            isolator_deflection: x,
            force,
            rate,
            energy: isolator.point.energy + force.dot(&(self.compliance * force)) / 2.0,
            isolator,
        })
    }

    /// Storage and loss part of the assembled rate in vibration [N/m, mount axes] about a deflection.
    ///
    /// # Equation
    ///   k* = k_dyn (I + C k_dyn)⁻¹ with the complex dynamic rate k_dyn of the isolator
    ///
    /// # Source
    /// Derived as for [`Self::respond`]. Dynamic ratio and loss factor belong to
    /// the law alone, so bracket, chassis and stops lower the loss of the mount.
    ///
    /// # Errors
    /// [`NumericError`].
    pub fn dynamic_rate(
        &self,
        isolator: &IsolatorState,
        vibration: &Vibration,
    ) -> Result<(Mat3, Mat3), NumericError> {
        let (storage, loss) = self.isolator.dynamic_rate(isolator, vibration);
        if !self.is_flexible() {
            return Ok((storage, loss));
        }
        let (re, im) = inverse3_complex(
            &(Mat3::identity() + self.compliance * storage),
            &(self.compliance * loss),
        )?;
        let joined = (storage * re - loss * im, storage * im + loss * re);
        Ok((
            (joined.0 + joined.0.transpose()) * 0.5,
            (joined.1 + joined.1.transpose()) * 0.5,
        ))
    }

    fn is_flexible(&self) -> bool {
        self.compliance.amax() > 0.0
    }

    /// Newton's method for the isolator's share of the deflection; a step is halved while the residual does not fall.
    fn split(&self, d: &Vec3) -> Result<(Vec3, IsolatorState), MountFailure> {
        let whole = d.norm();
        let mut x = d * 0.5;
        let mut state = self.isolator.at(&x);
        let mut residual = x + self.compliance * state.point.force - d;
        for _ in 0..ITERATIONS {
            if residual.norm() <= SPLIT_ROUNDING * whole {
                return Ok((x, state));
            }
            let jacobian = Mat3::identity() + self.compliance * state.point.tangent;
            let step = solve3(&jacobian, &residual)?;
            let mut share = 1.0;
            loop {
                let trial = x - step * share;
                let trial_state = self.isolator.at(&trial);
                let left = trial + self.compliance * trial_state.point.force - d;
                if left.norm() < residual.norm() {
                    (x, state, residual) = (trial, trial_state, left);
                    break;
                }
                if residual.norm() <= SPLIT_ACCEPTED * whole {
                    return Ok((x, state));
                }
                share *= 0.5;
                if share < 1e-9 {
                    return Err(MountFailure::NoSplit);
                }
            }
        }
        if residual.norm() <= SPLIT_ACCEPTED * whole {
            return Ok((x, state));
        }
        Err(MountFailure::NoSplit)
    }
}
