//! Where a torque rod points: a two-force member between two eyes.

use crate::numeric::NumericError;
use crate::spatial::{Mat3, Vec3, axes_from_w_u};

/// Shortest rod, as a share of its free length, whose direction means anything.
const SHORTEST: f64 = 1e-3;

/// A rod in some position.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Chord {
    /// Axes u, v, w; w from the chassis eye to the powertrain eye.
    pub(super) axes: Mat3,
    /// Distance of the eyes \[m\].
    pub(super) length: f64,
    /// How much longer than its free length \[m\].
    pub(super) stretch: f64,
}

impl Chord {
    /// The rod whose powertrain eye has moved by `moved` from `free`, the vector from the chassis eye to it when unloaded \[m\].
    ///
    /// # Equation
    ///   l = |s + m|,   x = l − |s| = (2 s·m + m·m)/(l + |s|)
    ///
    /// # Range
    /// Any swing. The quotient keeps its digits where the difference loses them.
    ///
    /// # Source
    /// Derived.
    ///
    /// # Errors
    /// [`NumericError::NotFinite`] when the eyes meet.
    pub(super) fn of(free: &Vec3, moved: &Vec3, u: &Vec3) -> Result<Self, NumericError> {
        let chord = free + moved;
        let (length, free_length) = (chord.norm(), free.norm());
        if !length.is_finite() || length <= SHORTEST * free_length {
            return Err(NumericError::NotFinite);
        }
        let axes = axes_from_w_u(&chord, u)
            .or_else(|| axes_from_w_u(&chord, &any_across(&chord)))
            .ok_or(NumericError::NotFinite)?;
        Ok(Self {
            axes,
            length,
            stretch: (2.0 * free.dot(moved) + moved.norm_squared()) / (length + free_length),
        })
    }
}

/// A direction well off the one given.
fn any_across(direction: &Vec3) -> Vec3 {
    let smallest = direction.iamin();
    let mut across = Vec3::zeros();
    across[smallest] = 1.0;
    across
}
