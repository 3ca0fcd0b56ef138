//! A sleeve longer than the rail is high.

use super::Sleeve;

/// What holds the bracket against sliding.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ShearPath {
    /// Friction on the sleeve ends alone; what slips goes through sleeve and hole. A sleeve
    /// that is not welded brings nothing of it into the rail before that.
    SleeveEnds,
    /// Friction on the sleeve ends and on the face of the rail.
    SleeveEndsAndFace,
}

/// A tightened joint whose sleeve stands proud.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Proud {
    /// Preload from which on the bracket touches the rail \[N\].
    pub flush_force: f64,
    /// Force in the sleeve \[N\].
    pub sleeve: f64,
    /// Force that clamps the walls \[N\]; 0 while the bracket is clear of them.
    pub walls: f64,
    /// Pressure on the sleeve ends \[Pa\].
    pub end_pressure: f64,
    /// Who resists sliding.
    pub shear_path: ShearPath,
}

/// Shares of sleeve and walls when the sleeve is too long by `excess` \[m\].
///
/// # Equation
///   F_f = k_s e;   F ≤ F_f:  sleeve F, walls 0
///   F > F_f:  walls (F − F_f) k_r/(k_s + k_r), sleeve the rest
///
///   e    sleeve longer than the rail is high, from 0 \[m\]
///   k_s  sleeve, k_r closing stiffness of the rail with its plates [N/m]
///
/// # Range
/// Elastic; plates that do not bend over the sleeve ends.
///
/// # Source
/// Derived: sleeve alone until the bracket touches, then both side by side.
#[must_use]
pub fn proud(
    sleeve: &Sleeve,
    excess: f64,
    preload: f64,
    sleeve_stiffness: f64,
    closing: f64,
) -> Proud {
    let flush_force = sleeve_stiffness * excess;
    let walls = (preload - flush_force).max(0.0) * closing / (sleeve_stiffness + closing);
    Proud {
        flush_force,
        sleeve: preload - walls,
        walls,
        end_pressure: (preload - walls) / sleeve.area(),
        shear_path: if walls > 0.0 {
            ShearPath::SleeveEndsAndFace
        } else {
            ShearPath::SleeveEnds
        },
    }
}
