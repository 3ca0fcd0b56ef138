//! Forces and moments on the powertrain that do not come from its mounts.

use nalgebra::UnitQuaternion;

use crate::numeric::{NumericError, require_finite};
use crate::spatial::{STANDARD_GRAVITY, Vec3, Wrench, skew, turning_displacement};

/// Dead loads: fixed in vehicle axes while their points move with the powertrain.
#[derive(Debug, Clone, PartialEq)]
pub struct Loading {
    /// Force at the centre of gravity \[N\]: weight and inertia.
    pub at_centre: Vec3,
    /// Moment [N m].
    pub moment: Vec3,
    /// Point of the powertrain in the fitted pose, in vehicle axes from the datum \[m\], and force and moment about it.
    pub at_points: Vec<(Vec3, Wrench)>,
}

impl Loading {
    /// No load at all.
    #[must_use]
    pub fn none() -> Self {
        Self {
            at_centre: Vec3::zeros(),
            moment: Vec3::zeros(),
            at_points: Vec::new(),
        }
    }

    /// Weight of a mass \[kg\] on level ground.
    #[must_use]
    pub fn weight(mass: f64) -> Self {
        Self {
            at_centre: Vec3::new(0.0, 0.0, -mass * STANDARD_GRAVITY),
            ..Self::none()
        }
    }

    /// Every force and moment multiplied by `factor`.
    #[must_use]
    pub fn scaled(&self, factor: f64) -> Self {
        Self {
            at_centre: self.at_centre * factor,
            moment: self.moment * factor,
            at_points: self
                .at_points
                .iter()
                .map(|(point, wrench)| {
                    let wrench = Wrench {
                        force: wrench.force * factor,
                        moment: wrench.moment * factor,
                    };
                    (*point, wrench)
                })
                .collect(),
        }
    }

    /// Both loads together.
    #[must_use]
    pub fn plus(mut self, other: &Self) -> Self {
        self.at_centre += other.at_centre;
        self.moment += other.moment;
        self.at_points.extend_from_slice(&other.at_points);
        self
    }

    /// Sum of all moments that are the same about every point [N m].
    #[must_use]
    pub fn free_moment(&self) -> Vec3 {
        self.at_points
            .iter()
            .fold(self.moment, |sum, (_, wrench)| sum + wrench.moment)
    }

    /// Refuses numbers that are not finite.
    ///
    /// # Errors
    /// [`NumericError::NotFinite`].
    pub fn check(&self) -> Result<(), NumericError> {
        require_finite(self.at_centre.as_slice())?;
        require_finite(self.moment.as_slice())?;
        for (point, wrench) in &self.at_points {
            require_finite(point.as_slice())?;
            require_finite(wrench.force.as_slice())?;
            require_finite(wrench.moment.as_slice())?;
        }
        Ok(())
    }

    /// Effect on a body whose centre of gravity was fitted at `centre`, moved by `shift` and turned by `turn`.
    pub(crate) fn on(&self, centre: &Vec3, shift: &Vec3, turn: &UnitQuaternion<f64>) -> LoadEffect {
        let mut effect = LoadEffect {
            wrench: Wrench {
                force: self.at_centre,
                moment: self.moment,
            },
            turning_rate: nalgebra::Matrix3::zeros(),
            potential: -self.at_centre.dot(shift),
        };
        for (point, wrench) in &self.at_points {
            let fitted = point - centre;
            let moved = turning_displacement(turn, &fitted);
            let arm = fitted + moved;
            effect.wrench = effect.wrench + Wrench::of_force_at(wrench.force, arm);
            effect.wrench.moment += wrench.moment;
            effect.turning_rate -= skew(&wrench.force) * skew(&arm);
            effect.potential -= wrench.force.dot(&(shift + moved));
        }
        effect
    }
}

/// What a loading does to a displaced body.
#[derive(Debug, Clone, Copy)]
pub(crate) struct LoadEffect {
    /// About the displaced centre of gravity.
    pub(crate) wrench: Wrench,
    /// Minus the derivative of the moment with respect to a turn [N m/rad].
    pub(crate) turning_rate: nalgebra::Matrix3<f64>,
    /// Minus the work of the forces since the fitted pose \[J\]; moments have no potential.
    pub(crate) potential: f64,
}
