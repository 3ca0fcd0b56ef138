//! Sleeves that carry the clamp force of a bolt through a hollow rail.

pub mod gap;
pub mod proud;
pub mod shoulder;
pub mod stability;
pub mod stress;

use std::f64::consts::PI;

/// Round sleeve about a bolt.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sleeve {
    /// Outer diameter \[m\].
    pub outer: f64,
    /// Inner diameter \[m\], below the outer.
    pub inner: f64,
    /// Length \[m\].
    pub length: f64,
}

impl Sleeve {
    /// Area of the cross-section \[m²\].
    #[must_use]
    pub fn area(&self) -> f64 {
        PI / 4.0 * (self.outer.powi(2) - self.inner.powi(2))
    }

    /// Force for each metre of shortening [N/m].
    ///
    /// # Equation
    ///   k = E A/l
    ///
    /// # Source
    /// Derived: Hooke's law.
    #[must_use]
    pub fn stiffness(&self, youngs_modulus: f64) -> f64 {
        youngs_modulus * self.area() / self.length
    }
}
