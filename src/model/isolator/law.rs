//! Laws of isolators: force, tangent and energy of one potential.

use crate::spatial::{Mat3, Vec3};

/// Force, tangent and energy of a law at one deflection, in mount axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LawPoint {
    /// Gradient of the energy \[N\]: force that holds the deflection, so the powertrain feels its negative.
    pub force: Vec3,
    /// Derivative of the force [N/m], symmetric.
    pub tangent: Mat3,
    /// Stored energy \[J\], zero at no deflection.
    pub energy: f64,
}

/// Elastic law of one isolator in its own axes u, v, w.
///
/// The energy is convex: the tangent has no negative direction. Force and energy
/// are nothing at no deflection. A bracket in series relies on both.
pub trait Law: std::fmt::Debug + Send + Sync {
    /// Force, tangent and energy at the isolator's own deflection `x` \[m\], powertrain side minus chassis side.
    fn at(&self, x: &Vec3) -> LawPoint;
}

/// A law along one axis at one deflection.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AxisPoint {
    /// Force that holds the deflection \[N\], with the sign of the deflection.
    pub force: f64,
    /// Derivative of the force [N/m].
    pub tangent: f64,
    /// Stored energy \[J\].
    pub energy: f64,
}

impl AxisPoint {
    /// A constant rate [N/m] at a deflection \[m\].
    #[must_use]
    pub fn of_rate(rate: f64, x: f64) -> Self {
        Self {
            force: rate * x,
            tangent: rate,
            energy: rate * x * x / 2.0,
        }
    }
}

impl LawPoint {
    /// Three axes that know nothing of each other.
    #[must_use]
    pub fn of_axes(axes: [AxisPoint; 3]) -> Self {
        let [u, v, w] = axes;
        Self {
            force: Vec3::new(u.force, v.force, w.force),
            tangent: Mat3::from_diagonal(&Vec3::new(u.tangent, v.tangent, w.tangent)),
            energy: u.energy + v.energy + w.energy,
        }
    }

    /// With more along one axis.
    #[must_use]
    pub fn plus(mut self, axis: usize, more: AxisPoint) -> Self {
        self.force[axis] += more.force;
        self.tangent[(axis, axis)] += more.tangent;
        self.energy += more.energy;
        self
    }
}
