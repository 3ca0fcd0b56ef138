//! Kind `rates`: three constant static rates along u, v, w.

use super::{Law, LawPoint};
use crate::spatial::{Mat3, Vec3};

/// Three independent constant rates.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rates {
    /// Rates along u, v, w [N/m], none negative.
    pub rates: Vec3,
}

impl Law for Rates {
    /// # Equation
    ///   f = k x along each axis,   energy = Σ k x²/2
    fn at(&self, x: &Vec3) -> LawPoint {
        let force = self.rates.component_mul(x);
        LawPoint {
            force,
            tangent: Mat3::from_diagonal(&self.rates),
            energy: force.dot(x) / 2.0,
        }
    }
}
