//! An isolator with another stiffness: what a harder or softer part of the same kind would do.

use std::sync::Arc;

use super::one_sided;
use super::{AxisPoint, Isolator, Law, LawPoint, Tension};
use crate::spatial::Vec3;

/// A law with every force multiplied.
#[derive(Debug)]
pub(super) struct Scaled {
    law: Arc<dyn Law>,
    factor: f64,
}

impl Scaled {
    pub(super) fn new(law: Arc<dyn Law>, factor: f64) -> Self {
        Self { law, factor }
    }
}

impl Law for Scaled {
    fn at(&self, x: &Vec3) -> LawPoint {
        let point = self.law.at(x);
        LawPoint {
            force: point.force * self.factor,
            tangent: point.tangent * self.factor,
            energy: point.energy * self.factor,
        }
    }
}

/// A law with measured rates at its free position: its curve keeps its shape along each axis.
///
/// # Equation
///   φ'(x) = Σ s φ(x along the axis)
///
/// # Range
/// Laws whose axes know nothing of each other: force and tangent of one axis
/// are multiplied by its share.
#[derive(Debug)]
pub(super) struct MeasuredAs {
    law: Arc<dyn Law>,
    share: Vec3,
}

impl MeasuredAs {
    pub(super) fn new(law: Arc<dyn Law>, share: Vec3) -> Self {
        Self { law, share }
    }
}

impl Law for MeasuredAs {
    fn at(&self, x: &Vec3) -> LawPoint {
        let along = |axis: usize| {
            let mut alone = Vec3::zeros();
            alone[axis] = x[axis];
            let point = self.law.at(&alone);
            AxisPoint {
                force: point.force[axis] * self.share[axis],
                tangent: point.tangent[(axis, axis)] * self.share[axis],
                energy: point.energy * self.share[axis],
            }
        };
        LawPoint::of_axes([along(0), along(1), along(2)])
    }
}

/// A law with a constant rate beside it along one axis.
#[derive(Debug)]
struct Stiffened {
    law: Arc<dyn Law>,
    axis: usize,
    rate: f64,
}

impl Law for Stiffened {
    fn at(&self, x: &Vec3) -> LawPoint {
        let more = AxisPoint::of_rate(self.rate, x[self.axis]);
        self.law.at(x).plus(self.axis, more)
    }
}

impl Isolator {
    /// The same isolator with every rate, about its axes too, multiplied by `factor`; stops and limits stay.
    #[must_use]
    pub fn scaled(&self, factor: f64) -> Self {
        let law = Arc::clone(&self.law);
        let mut altered = self.clone();
        altered.law = Arc::new(Scaled::new(law, factor));
        altered.rotational *= factor;
        altered.dynamics.fluid = self.dynamics.fluid.map(|fluid| fluid.scaled(factor));
        altered
    }

    /// The same isolator with its rate along one axis, as it is at the free position, multiplied by `factor`.
    #[must_use]
    pub fn stiffened(&self, axis: usize, factor: f64) -> Self {
        let rate = self.free_rate(axis) * (factor - 1.0);
        let law = Arc::clone(&self.law);
        Self {
            law: Arc::new(Stiffened { law, axis, rate }),
            ..self.clone()
        }
    }

    /// Static rate along one axis at the free position \[N/m\].
    #[must_use]
    pub fn free_rate(&self, axis: usize) -> f64 {
        let mut place = Vec3::zeros();
        if self.tension == Tension::None {
            // A loose support has its rate once it is pushed at all.
            place.z = -one_sided::BLEND;
        }
        self.law.at(&place).tangent[(axis, axis)]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::isolator::rates::Rates;
    use approx::assert_relative_eq;

    fn plain() -> Isolator {
        let rates = Vec3::new(1e5, 2e5, 3e5);
        Isolator::new("pad", "rates", Arc::new(Rates { rates }))
    }

    /// Derived: rates multiply, and energy is half of force times deflection.
    #[test]
    fn altered_laws_have_the_rates_they_say() {
        let x = Vec3::new(1e-3, -2e-3, 3e-3);
        let scaled = plain().scaled(1.5).at(&x).point;
        assert_relative_eq!(
            scaled.force,
            Vec3::new(150.0, -600.0, 1350.0),
            epsilon = 1e-9
        );
        assert_relative_eq!(
            scaled.energy,
            scaled.force.dot(&x) / 2.0,
            max_relative = 1e-12
        );
        let stiffened = plain().stiffened(1, 1.5).at(&x).point;
        assert_relative_eq!(
            stiffened.force,
            Vec3::new(100.0, -600.0, 900.0),
            epsilon = 1e-9
        );
        assert_relative_eq!(stiffened.tangent[(1, 1)], 3e5, max_relative = 1e-12);
        assert_relative_eq!(
            stiffened.energy,
            stiffened.force.dot(&x) / 2.0,
            max_relative = 1e-12
        );
    }
}
