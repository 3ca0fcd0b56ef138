//! Section `[[mount]]`: one placed isolator with the stiffness of what holds it.

use crate::spatial::{Mat3, Vec3};

/// One placed isolator.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Mount {
    /// Name in the file.
    pub name: String,
    /// Place in the file's fitted state, in vehicle axes [m].
    pub at: Vec3,
    /// `R_VM`: columns are the mount axes u, v, w in vehicle axes, fixed to the chassis.
    pub axes: Mat3,
    /// Which isolator, as a place in `Model::isolators`.
    pub isolator: usize,
    /// Compliance of bracket and chassis in series with the isolator, in mount axes [m/N]; zero when both are taken as rigid.
    pub compliance: Mat3,
    /// Stated stiffness of the powertrain-side bracket along u, v, w [N/m].
    pub bracket: Option<Vec3>,
    /// Stated stiffness of the chassis at the mount along u, v, w [N/m].
    pub chassis: Option<Vec3>,
}
