//! Sections `[loads]` and `[[load]]`: what the powertrain must stand.

pub mod usual;

use crate::spatial::{Vec3, Wrench};

/// How serious a load case is; decides which limits count.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LoadClass {
    /// Everyday: no stop may be touched.
    Service,
    /// Hard use, many times in a life: life limits hold, a stop may be touched.
    Durability,
    /// Rare: nothing breaks, life limits may be passed.
    Extreme,
    /// Once: the powertrain stays attached.
    Restraint,
}

impl LoadClass {
    /// Word of the model file.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Service => "service",
            Self::Durability => "durability",
            Self::Extreme => "extreme",
            Self::Restraint => "restraint",
        }
    }
}

/// Where a load case comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LoadOrigin {
    /// The tool's own: the powertrain at rest.
    AtRest,
    /// Written in the file.
    File,
    /// The tool's usual set: common practice, replaced by a case of the same name.
    Usual,
}

/// What drives the outputs.
#[derive(Debug, Clone, PartialEq)]
pub enum Drive {
    /// Engine torque through a gear.
    Gear {
        /// Which gear, as a place in `Driveline::gears`.
        gear: usize,
        /// Share of the highest engine torque, −1 to 1; below zero the wheels drive the engine.
        throttle: f64,
    },
    /// Torque that the gearbox (or the axle shafts together) delivers [N m], forward drive positive.
    OutputTorque(f64),
}

/// A force and a moment on the powertrain at a point.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AppliedAt {
    /// Which point, as a place in `Model::points`.
    pub point: usize,
    /// Force and moment about that point, fixed in vehicle axes.
    pub wrench: Wrench,
}

/// A set of loads held at once.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct LoadCase {
    /// Name in the file.
    pub name: String,
    /// How serious it is.
    pub class: LoadClass,
    /// Where it comes from.
    pub origin: LoadOrigin,
    /// Acceleration of the vehicle, gravity not included [m/s²]; `None` when the case states none.
    pub vehicle_acceleration: Option<Vec3>,
    /// What drives the outputs.
    pub drive: Option<Drive>,
    /// Driveline shock: the torque at the outputs is multiplied by it.
    pub factor: f64,
    /// Whether the steady torque is capped by what the tyres can hold.
    pub grip_limited: bool,
    /// Forces and moments at points.
    pub applied: Vec<AppliedAt>,
    /// Parts taken away, as places in `Model::parts`.
    pub without_parts: Vec<usize>,
    /// Mounts taken away, as places in `Model::mounts`.
    pub without_mounts: Vec<usize>,
}

impl LoadCase {
    /// Name of the case that every model has.
    pub const AT_REST: &'static str = "at rest";

    /// A case of a name and a class with nothing in it but the weight.
    #[must_use]
    pub fn new(name: impl Into<String>, class: LoadClass, origin: LoadOrigin) -> Self {
        Self {
            name: name.into(),
            class,
            origin,
            vehicle_acceleration: None,
            drive: None,
            factor: 1.0,
            grip_limited: false,
            applied: Vec::new(),
            without_parts: Vec::new(),
            without_mounts: Vec::new(),
        }
    }

    /// Whether something of the build is taken away.
    #[must_use]
    pub fn is_service_state(&self) -> bool {
        !(self.without_parts.is_empty() && self.without_mounts.is_empty())
    }
}
