//! A shoulder on a sleeve that is pushed or pulled against a wall.

use std::f64::consts::PI;

/// Flange at the end of a sleeve.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shoulder {
    /// Diameter of the flange \[m\].
    pub diameter: f64,
    /// Thickness of the flange \[m\].
    pub thickness: f64,
    /// Diameter of the sleeve \[m\], below that of the flange.
    pub sleeve: f64,
    /// Hole in the wall \[m\], from the sleeve's diameter to below the flange's.
    pub wall_hole: f64,
}

impl Shoulder {
    /// Pressure of the flange on the wall \[Pa\].
    ///
    /// # Equation
    ///   p = F/(π/4 (D_f² − d_w²))
    ///
    /// # Range
    /// Flange as stiff as the wall. On a bare wall the lower list of permissible pressures applies.
    ///
    /// # Source
    /// Derived: even pressure.
    #[must_use]
    pub fn bearing(&self, force: f64) -> f64 {
        force / (PI / 4.0 * (self.diameter.powi(2) - self.wall_hole.powi(2)))
    }

    /// Shear stress at the root of the flange \[Pa\], to stay below yield over √3.
    ///
    /// # Equation
    ///   τ = F/(π t_f D)
    ///
    /// # Source
    /// Derived: even over the root.
    #[must_use]
    pub fn flange_shear(&self, force: f64) -> f64 {
        force / (PI * self.thickness * self.sleeve)
    }

    /// Bending stress at the root of the flange \[Pa\].
    ///
    /// # Equation
    ///   σ = 6 m/t_f²,   m = F (D_f − D)/(4 π D)
    ///
    /// # Range
    /// On the safe side: hoop stress in the flange helps and is left out.
    ///
    /// # Source
    /// Derived: force in the middle of the overhang, on the root circle as on a cantilever.
    #[must_use]
    pub fn flange_bending(&self, force: f64) -> f64 {
        let moment = force * (self.diameter - self.sleeve) / (4.0 * PI * self.sleeve);
        6.0 * moment / self.thickness.powi(2)
    }
}

/// Load at which thin sheet is pulled over a screw head or washer \[N\].
///
/// # Equation
///   F = 1.5 t d f_u
///
/// # Range
/// Sheet under screw heads, to compare [`round`](crate::strength::rail::punching::round)
/// with, which is of the same order and rules a shoulder.
///
/// # Source
/// AISI S100, pull-over of screws (from memory).
#[must_use]
pub fn pull_over(diameter: f64, thickness: f64, tensile_strength: f64) -> f64 {
    1.5 * thickness * diameter * tensile_strength
}
