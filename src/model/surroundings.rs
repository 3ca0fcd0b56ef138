//! Sections `[vehicle]`, `[[point]]` and `[[clearance]]`: what is around the powertrain.

use crate::spatial::Vec3;

/// Which wheels are driven.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Driven {
    /// Front axle.
    Front,
    /// Rear axle.
    Rear,
    /// All wheels.
    All,
}

/// The vehicle around the powertrain.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Vehicle {
    /// Mass of the whole vehicle [kg].
    pub mass: f64,
    /// Distance between the axles [m].
    pub wheelbase: f64,
    /// Centre of gravity of the whole vehicle, vehicle axes [m].
    pub centre_of_gravity: Vec3,
    /// Middle of the front axle, vehicle axes [m]; the ground is a tyre radius below.
    pub front_axle: Vec3,
    /// Loaded radius of the driven tyres [m].
    pub tyre_radius: f64,
    /// Friction coefficient at the driven tyres.
    pub tyre_grip: f64,
    /// Which wheels are driven.
    pub driven: Driven,
}

impl Vehicle {
    /// Height of the centre of gravity above the ground [m].
    #[must_use]
    pub fn height_above_ground(&self) -> f64 {
        self.centre_of_gravity.z - self.front_axle.z + self.tyre_radius
    }

    /// Distance from the front axle back to the centre of gravity [m].
    #[must_use]
    pub fn behind_front_axle(&self) -> f64 {
        self.front_axle.x - self.centre_of_gravity.x
    }
}

/// A place on the powertrain whose motion matters.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Point {
    /// Name in the file.
    pub name: String,
    /// Place in the fitted state, vehicle axes [m].
    pub at: Vec3,
    /// The part it sits on, as a place in `Model::parts`; it goes when that part is taken away.
    pub part: Option<usize>,
}

/// A gap that must stay open.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Clearance {
    /// Name in the file.
    pub name: String,
    /// Which point, as a place in `Model::points`.
    pub point: usize,
    /// Unit vector from the point toward the obstacle, vehicle axes.
    pub toward: Vec3,
    /// Gap in the fitted state [m].
    pub gap: f64,
    /// Gap that must remain [m].
    pub keep: f64,
}
