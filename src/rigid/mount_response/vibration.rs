//! Rates of one mount in vibration: isolator, fluid, bracket and chassis together.

use crate::model::isolator::{Amplitude, IsolatorState, Vibration};
use crate::numeric::{NumericError, inverse3_complex};
use crate::spatial::{Mat3, Vec3};

use super::HeldMount;

/// Dynamic rate of a mount with a fluid, in mount axes [N/m].
#[derive(Debug, Clone, Copy)]
pub(in crate::rigid) struct FluidRate {
    /// Of the mount while the fluid is held.
    pub(in crate::rigid) mount: Mat3,
    pub(in crate::rigid) mount_loss: Mat3,
    /// Force on the mount for a motion of the fluid.
    pub(in crate::rigid) coupling: Vec3,
    pub(in crate::rigid) coupling_loss: Vec3,
    /// Of the fluid while the mount is held.
    pub(in crate::rigid) fluid: f64,
    pub(in crate::rigid) fluid_loss: f64,
    /// Mass \[kg\] and damping [N s/m] of the fluid.
    pub(in crate::rigid) mass: f64,
    pub(in crate::rigid) damping: f64,
}

impl HeldMount<'_> {
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

    /// Dynamic rate with the fluid as a coordinate of its own; `None` without a fluid.
    ///
    /// # Equation
    ///   S = (I + C k)⁻¹,   K_dd = k S,   K_dq = −k₁ Sᵀ w,   K_qq = k₁ + k₂ − k₁² w' C Sᵀ w
    ///
    ///   k       complex rate while the fluid is held, upper chamber k₁ included  [N/m]
    ///   C       `compliance`                                                     [m/N]
    ///   k₁, k₂  upper and lower chamber                                          [N/m]
    ///
    /// # Source
    /// Derived: the upper chamber lies between isolator and fluid, the lower one
    /// between fluid and chassis; the isolator's own deflection is eliminated.
    ///
    /// # Errors
    /// [`NumericError`].
    pub(in crate::rigid) fn rate_with_fluid(
        &self,
        isolator: &IsolatorState,
        amplitude: Amplitude,
    ) -> Result<Option<FluidRate>, NumericError> {
        let Some(fluid) = &self.isolator.dynamics.fluid else {
            return Ok(None);
        };
        let (storage, loss) = self.isolator.rate_with_fluid_held(isolator, amplitude);
        let (re, im) = inverse3_complex(
            &(Mat3::identity() + self.compliance * storage),
            &(self.compliance * loss),
        )?;
        let w = Vec3::z();
        let (across, lost) = (re.tr_mul(&w), im.tr_mul(&w));
        let square = fluid.upper * fluid.upper;
        let joined = (storage * re - loss * im, storage * im + loss * re);
        Ok(Some(FluidRate {
            mount: (joined.0 + joined.0.transpose()) * 0.5,
            mount_loss: (joined.1 + joined.1.transpose()) * 0.5,
            coupling: across * -fluid.upper,
            coupling_loss: lost * -fluid.upper,
            fluid: fluid.upper + fluid.lower - square * w.dot(&(self.compliance * across)),
            fluid_loss: -square * w.dot(&(self.compliance * lost)),
            mass: fluid.mass,
            damping: fluid.damping,
        }))
    }
}
