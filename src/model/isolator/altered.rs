//! An isolator with another stiffness: what a harder or softer part of the same kind would do.

use std::sync::Arc;

use super::one_sided::{BEDDING, LiftsOff};
use super::rates::Rates;
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
///
/// # Source
/// Derived: the energy of such a law is a sum over its axes, and each term stays
/// a potential when it is multiplied.
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

/// Two laws side by side.
#[derive(Debug)]
struct Beside {
    law: Arc<dyn Law>,
    more: Scaled,
}

impl Law for Beside {
    fn at(&self, x: &Vec3) -> LawPoint {
        let (law, more) = (self.law.at(x), self.more.at(x));
        LawPoint {
            force: law.force + more.force,
            tangent: law.tangent + more.tangent,
            energy: law.energy + more.energy,
        }
    }
}

impl Isolator {
    /// The same isolator with every rate, about its axes too, multiplied by `factor`; stops and limits stay, and so does what swings of a fluid.
    #[must_use]
    pub fn scaled(&self, factor: f64) -> Self {
        let law = Arc::clone(&self.law);
        let mut altered = self.clone();
        altered.law = Arc::new(Scaled::new(law, factor));
        altered.rotational *= factor;
        altered.dynamics.fluid = self.dynamics.fluid.map(|fluid| fluid.with_rubber(factor));
        altered
    }

    /// The same isolator with its rate along one axis, as it is at the free position, multiplied by `factor`.
    #[must_use]
    pub fn stiffened(&self, axis: usize, factor: f64) -> Self {
        let mut rates = Vec3::zeros();
        rates[axis] = 1.0;
        let mut unit: Arc<dyn Law> = Arc::new(Rates { rates });
        if self.tension == Tension::None {
            // What is added lifts off with the rest.
            unit = Arc::new(LiftsOff::new(unit));
        }
        let law = Arc::clone(&self.law);
        let more = Scaled::new(unit, self.free_rate(axis) * (factor - 1.0));
        Self {
            law: Arc::new(Beside { law, more }),
            ..self.clone()
        }
    }

    /// Static rate along one axis at the free position \[N/m\].
    #[must_use]
    pub fn free_rate(&self, axis: usize) -> f64 {
        let mut place = Vec3::zeros();
        if self.tension == Tension::None {
            // A loose support has its rate once it is bedded in.
            place.z = -3.0 * BEDDING;
        }
        self.law.at(&place).tangent[(axis, axis)]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::isolator::curve::monotone::MonotoneCurve;
    use crate::model::isolator::curve::{Axis, Curves};
    use crate::spatial::Mat3;
    use approx::assert_relative_eq;

    /// Derived: at the free position the rates are those measured, at every other place force, tangent
    /// and energy of an axis are the same share of what they were; differences of the energy give the force.
    #[test]
    fn measured_rates_stand_at_the_free_position_and_the_curve_keeps_its_shape() {
        let points = [[-5e-3, -4e3], [-2e-3, -8e2], [0.0, 0.0], [3e-3, 1.5e3]];
        let curve = MonotoneCurve::through(&points).unwrap();
        let axes = [
            Axis::Rate(1e5),
            Axis::Measured(curve.clone()),
            Axis::Measured(curve),
        ];
        let law: Arc<dyn Law> = Arc::new(Curves { axes });
        let free = law.at(&Vec3::zeros()).tangent.diagonal();
        let measured = Vec3::new(1.3e5, 5e5, 2e5);
        let share = measured.component_div(&free);
        let altered = MeasuredAs::new(Arc::clone(&law), share);
        let at_rest = altered.at(&Vec3::zeros());
        assert_relative_eq!(at_rest.tangent.diagonal(), measured, max_relative = 1e-12);
        assert_relative_eq!(at_rest.energy, 0.0);
        for x in [
            Vec3::new(1e-3, -4e-3, 2.5e-3),
            Vec3::new(-2e-3, 1e-3, -6e-3),
        ] {
            let (was, is) = (law.at(&x), altered.at(&x));
            let expected = was.force.component_mul(&share);
            assert_relative_eq!(is.force, expected, max_relative = 1e-12);
            let expected = Mat3::from_diagonal(&was.tangent.diagonal().component_mul(&share));
            assert_relative_eq!(is.tangent, expected, max_relative = 1e-12);
            for axis in 0..3 {
                let mut step = Vec3::zeros();
                step[axis] = 1e-8;
                let rise = altered.at(&(x + step)).energy - altered.at(&(x - step)).energy;
                assert_relative_eq!(rise / 2e-8, is.force[axis], epsilon = 1e-4);
            }
        }
    }

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
