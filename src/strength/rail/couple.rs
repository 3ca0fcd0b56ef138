//! A moment on a face as two opposite forces.

/// What a base plate pushes on a face with at its two ends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TwoEnds {
    /// Push at the end that the moment presses down \[N\]; negative pulls.
    pub pressed: f64,
    /// Push at the other end \[N\]; negative pulls.
    pub lifted: f64,
    /// Distance between the two \[m\].
    pub lever: f64,
    /// Length of each of the two patches along the plate \[m\].
    pub patch_length: f64,
}

/// A push and a moment on a face, through a stiff plate that is held down over its whole length.
///
/// # Equation
///   F = N/2 ± M/z,   z = 2 L/3,   patches L/3 long at both ends
///
///   N  push on the face, negative pulls   \[N\]
///   M  moment, its size counts            \[N m\]
///   L  length of the plate along the lever of the moment  \[m\]
///
/// # Range
/// A plate stiff beside the wall, fastened or welded along its length, for the
/// wall must be able to pull too. Bolts at two ends: [`over_lever`].
///
/// # Source
/// Derived: under a stiff plate the pressure of a moment varies in a straight
/// line, each half a triangle whose resultant lies L/6 from the end; an even
/// patch about that resultant is L/3 long.
#[must_use]
pub fn under_plate(push: f64, moment: f64, plate_length: f64) -> TwoEnds {
    over_lever(push, moment, plate_length * 2.0 / 3.0, plate_length / 3.0)
}

/// A push and a moment on a face, through two places a lever apart.
///
/// # Equation
///   F = N/2 ± M/z
///
///   z  from the bolts that pull to the middle of what presses  \[m\]
///
/// # Source
/// Derived: equilibrium.
#[must_use]
pub fn over_lever(push: f64, moment: f64, lever: f64, patch_length: f64) -> TwoEnds {
    let share = moment.abs() / lever;
    TwoEnds {
        pressed: push / 2.0 + share,
        lifted: push / 2.0 - share,
        lever,
        patch_length,
    }
}
