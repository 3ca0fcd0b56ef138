//! One mount: an isolator in series with what holds it, bonded in place or swinging as a rod.

pub(super) mod vibration;

use nalgebra::UnitQuaternion;

use crate::model::isolator::{Isolator, IsolatorState};
use crate::model::mount::Mount;
use crate::numeric::{NumericError, inverse3, require_finite, solve3, symmetric_eigen3};
use crate::spatial::{Mat3, Vec3};

use super::rod::Chord;
use super::turning::Twist;

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
    /// From where the powertrain-side point is while the isolator is unloaded to `at`, in vehicle axes \[m\]; nothing when fitted free.
    ///
    /// An offset and not a place: a stiff mount feels the last digit of a place a metre from the datum.
    pub preset: Vec3,
    /// Turn of the powertrain from the fitted pose at which the isolator is not twisted.
    pub untwisted: UnitQuaternion<f64>,
    /// `R_VM`: columns are the mount axes u, v, w in vehicle axes. They stay with the chassis, but for a rod.
    pub axes: Mat3,
    /// Chassis-side eye of a rod, in vehicle axes from the datum \[m\]; `None` for an isolator that is bonded in place.
    ///
    /// The w axis of a rod swings with it; its isolator must act along w alone.
    pub far_eye: Option<Vec3>,
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

/// What a mount does to a displaced and turned powertrain; vehicle axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MountAction {
    /// Mount axes u, v, w as they lie now.
    pub axes: Mat3,
    /// What isolator, bracket and chassis do in these axes.
    pub response: MountResponse,
    /// Force on the powertrain \[N\].
    pub force: Vec3,
    /// Minus the derivative of `force` with respect to the powertrain-side point, of the material [N/m]: symmetric.
    pub rate: Mat3,
    /// The same from a rod that swings: its force over its length, across it.
    pub swing: Mat3,
    /// Moment on the powertrain and its rates.
    pub twist: Twist,
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
            preset: Vec3::zeros(),
            untwisted: UnitQuaternion::identity(),
            axes: mount.axes,
            far_eye: mount.rod_to,
            compliance: mount.compliance(),
            isolator,
        }
    }
}

impl HeldMount<'_> {
    /// The same mount on a chassis that is displaced at it by `by` [m, vehicle axes].
    #[must_use]
    pub fn shifted(mut self, by: &Vec3) -> Self {
        self.preset -= by;
        self.far_eye = self.far_eye.map(|eye| eye + by);
        self
    }

    /// The same mount after its rubber has crept by `by` [m, mount axes `axes`]: it is unloaded there.
    #[must_use]
    pub fn crept(mut self, axes: &Mat3, by: &Vec3) -> Self {
        self.preset -= axes * by;
        self
    }

    /// Where the powertrain-side point is while the isolator is unloaded, in vehicle axes from the datum \[m\].
    #[must_use]
    pub fn anchor(&self) -> Vec3 {
        self.at - self.preset
    }

    /// Refuses numbers no mount can have.
    ///
    /// # Errors
    /// [`NumericError`] for a number that is not finite, axes that are not
    /// square, a compliance that is not symmetric or is negative in a direction.
    pub fn check(&self) -> Result<(), NumericError> {
        require_finite(self.at.as_slice())?;
        require_finite(self.preset.as_slice())?;
        require_finite(self.axes.as_slice())?;
        if let Some(eye) = self.far_eye {
            Chord::of(&(self.anchor() - eye), &Vec3::zeros(), &self.u())?;
        }
        if (self.axes.transpose() * self.axes - Mat3::identity()).amax() > AXES_TOLERANCE {
            return Err(NumericError::NotRotation);
        }
        let softness = symmetric_eigen3(&self.compliance)?.values;
        if softness[0] < -SPLIT_ACCEPTED * softness[2].abs() {
            return Err(NumericError::NotPositiveDefinite);
        }
        Ok(())
    }

    /// What the mount does to a powertrain whose mount point has moved by `moved` from the anchor and that has turned by `turn` from the fitted pose.
    ///
    /// # Equation
    ///   bonded:  d = A' m,           F = −A f(d),    −dF/dm = A k A'
    ///   rod:     d = (0, 0, l − L₀),   F = −N e,       −dF/dm = N' e e' + (N/l)(I − e e')
    ///
    ///   m      `moved` \[m\]
    ///   e, l   direction and distance from the chassis eye to the powertrain eye
    ///   N      force along w, pulled is positive \[N\]
    ///
    /// # Range
    /// Any displacement; of a rod any swing. The eyes of a rod turn freely:
    /// what their rubber resists is some k_cone/l² across the rod.
    ///
    /// # Source
    /// Derived: powertrain side minus chassis side, in axes that stay with the
    /// chassis; the length of a chord and its derivatives.
    ///
    /// # Errors
    /// [`MountFailure`].
    pub fn act(
        &self,
        moved: &Vec3,
        turn: &UnitQuaternion<f64>,
    ) -> Result<MountAction, MountFailure> {
        let (axes, response, swing) = match self.far_eye {
            None => {
                let response = self.respond(&self.axes.tr_mul(moved))?;
                (self.axes, response, Mat3::zeros())
            }
            Some(eye) => {
                let chord = Chord::of(&(self.anchor() - eye), moved, &self.u())?;
                let response = self.respond(&Vec3::new(0.0, 0.0, chord.stretch))?;
                let e = chord.axes.column(2);
                let across = Mat3::identity() - e * e.transpose();
                (
                    chord.axes,
                    response,
                    across * (response.force.z / chord.length),
                )
            }
        };
        Ok(MountAction {
            axes,
            response,
            force: -(axes * response.force),
            rate: axes * response.rate * axes.transpose(),
            swing,
            twist: self.twist(turn),
        })
    }

    /// Moment of the rotational rates at a turn of the powertrain from the fitted pose.
    fn twist(&self, turn: &UnitQuaternion<f64>) -> Twist {
        let rates = self.isolator.rotational;
        if rates.amax() <= 0.0 {
            return Twist::NONE;
        }
        let rates = self.axes * Mat3::from_diagonal(&rates) * self.axes.transpose();
        Twist::of_rates(&rates, &(turn * self.untwisted.inverse()))
    }

    /// Derivative of the force on the powertrain with respect to the place where the mount is unloaded [N/m].
    ///
    /// # Equation
    ///   bonded:  A k A'        rod:  N' e e_f'
    ///
    ///   e_f  direction of the unloaded rod
    ///
    /// # Source
    /// Derived: the free length of a rod grows as its unloaded end moves along it.
    pub(super) fn rate_of_anchor(&self, action: &MountAction) -> Mat3 {
        match self.far_eye {
            None => action.rate,
            Some(eye) => {
                let e = action.axes.column(2);
                let free = (self.anchor() - eye).normalize();
                e * free.transpose() * action.response.rate[(2, 2)]
            }
        }
    }

    fn u(&self) -> Vec3 {
        self.axes.column(0).into_owned()
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
