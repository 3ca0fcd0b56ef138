//! What a build is made of: the checked model, in SI, valid by construction.
//!
//! One file below is one section of the model file: its type and how it is
//! read. A [`Model`] exists only after every check passed; no solver meets an
//! unchecked value.

pub mod criteria;
pub mod cylinder;
pub mod drivetrain;
pub mod fastener;
pub mod file;
pub mod isolator;
pub mod joint;
pub mod load;
pub mod mass;
pub mod material;
pub mod mount;
pub mod part;
pub mod rail;
mod reader;
pub mod shaking;
pub mod strain_limit;
pub mod surroundings;

use criteria::Criteria;
use drivetrain::{Driveline, Engine};
use isolator::Isolator;
use joint::Joint;
use load::LoadCase;
use mass::MassProperties;
use mount::Mount;
use part::Part;
use rail::Rail;
use surroundings::{Clearance, Point, Vehicle};

/// In which state the positions of the file were measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fitted {
    /// With the rubber unloaded.
    Free,
    /// With the powertrain resting on its mounts.
    Settled,
}

/// Something the tool took for granted because the file does not say it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Assumption {
    /// Key of the file that would replace it.
    pub key: String,
    /// What was assumed, in words with numbers.
    pub text: String,
}

/// A build, checked.
#[derive(Debug, Clone)]
#[non_exhaustive]
pub struct Model {
    /// Title of the build.
    pub title: String,
    /// Free notes.
    pub notes: Option<String>,
    /// Where the origin of the vehicle frame is, in words.
    pub origin: String,
    /// In which state the positions were measured.
    pub fitted: Fitted,
    /// The vehicle around the powertrain.
    pub vehicle: Option<Vehicle>,
    /// What is supported; never empty.
    pub parts: Vec<Part>,
    /// What drives it.
    pub engine: Option<Engine>,
    /// How its torque leaves it.
    pub driveline: Option<Driveline>,
    /// Isolators in the order of the file.
    pub isolators: Vec<Isolator>,
    /// Mounts in the order of the file; never empty.
    pub mounts: Vec<Mount>,
    /// Load cases; the first is "at rest".
    pub loads: Vec<LoadCase>,
    /// Load cases about whose loaded position the modes are wanted, as places in `loads`.
    pub modes_at: Vec<usize>,
    /// Points whose motion matters.
    pub points: Vec<Point>,
    /// Gaps that must stay open.
    pub clearances: Vec<Clearance>,
    /// Rails in the order of the file.
    pub rails: Vec<Rail>,
    /// Bolted joints in the order of the file, no two of one mount.
    pub joints: Vec<Joint>,
    /// What the checks compare with.
    pub criteria: Criteria,
    /// What was taken for granted.
    pub assumptions: Vec<Assumption>,
    /// Mass properties of all parts together.
    pub mass: MassProperties,
}
