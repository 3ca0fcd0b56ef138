//! Sections `[loads]` and `[[load]]`: what the powertrain must stand.

pub mod usual;

use super::drivetrain::{Driveline, Engine};
use super::reader::{Bound, Other, Section};
use super::surroundings::Vehicle;
use crate::diagnostic::Code;
use crate::spatial::{STANDARD_GRAVITY, Vec3, Wrench};
use crate::units::Quantity;

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

/// What load cases refer to.
pub(super) struct Context<'a> {
    pub(super) parts: &'a [&'a str],
    pub(super) mounts: &'a [&'a str],
    pub(super) points: &'a [&'a str],
    pub(super) engine: Other<'a, Engine>,
    pub(super) driveline: Other<'a, Driveline>,
    pub(super) vehicle: Other<'a, Vehicle>,
}

/// Largest acceleration taken [g]: beyond it a rigid body on mounts says nothing.
const MOST_G: f64 = 100.0;

/// Reads one `[[load]]`.
pub(super) fn read(section: Section<'_>, context: &Context<'_>) -> Option<LoadCase> {
    section.must_have(&[("name", "a name to speak of it, such as \"launch\"")]);
    let name = section.name("name");
    if name.as_deref() == Some(LoadCase::AT_REST) {
        section.error(
            "name",
            Code::BadName,
            format!(
                "`{}` is the name of the case that the program adds itself",
                LoadCase::AT_REST
            ),
        );
    }
    let class = section.choice(
        "class",
        &[
            LoadClass::Service,
            LoadClass::Durability,
            LoadClass::Extreme,
            LoadClass::Restraint,
        ]
        .map(|class| (class.word(), class)),
    );
    if !section.has("class") {
        section.assume("class", "durability");
    }
    let most = MOST_G * STANDARD_GRAVITY;
    let vehicle_acceleration = section.vector(
        "vehicle",
        Quantity::Acceleration,
        Bound::Within(-most, most),
    );
    let drive = read_drive(&section, context);
    let factor = section.ratio("factor", Bound::Within(0.0, 20.0));
    let grip_limited = section.flag("grip_limited").unwrap_or(false);
    if grip_limited && matches!(context.vehicle, Other::Absent) {
        section.error(
            "grip_limited",
            Code::NeedsOther,
            "a limit by grip needs a `[vehicle]`",
        );
    }
    for key in ["factor", "grip_limited"] {
        if section.has(key) && !section.has("gear") && !section.has("output_torque") {
            section.error(
                key,
                Code::NeedsOther,
                format!("`{key}` needs a `gear` or an `output_torque`"),
            );
        }
    }
    let applied = section
        .sections("apply")
        .into_iter()
        .filter_map(|applied| read_applied(applied, context))
        .collect();
    let (without_parts, without_mounts) = read_without(&section, context);
    section.finish();
    Some(LoadCase {
        vehicle_acceleration,
        drive,
        factor: factor.unwrap_or(1.0),
        grip_limited,
        applied,
        without_parts,
        without_mounts,
        ..LoadCase::new(
            name?,
            class.unwrap_or(LoadClass::Durability),
            LoadOrigin::File,
        )
    })
}

fn read_drive(section: &Section<'_>, context: &Context<'_>) -> Option<Drive> {
    let throttle = section.ratio("throttle", Bound::Within(-1.0, 1.0));
    let most = 1e6;
    let torque = section.quantity(
        "output_torque",
        Quantity::Torque,
        Bound::Within(-most, most),
    );
    if section.has("throttle") && !section.has("gear") {
        section.error("throttle", Code::NeedsOther, "`throttle` needs a `gear`");
    }
    if section.has("output_torque") {
        if section.has("gear") {
            section.error(
                "output_torque",
                Code::Conflict,
                "a load case takes `gear` or `output_torque`, not both",
            );
        }
        if matches!(context.driveline, Other::Absent) {
            section.error(
                "output_torque",
                Code::NeedsOther,
                "`output_torque` needs a `[driveline]`, which says where the torque leaves",
            );
        }
        return Some(Drive::OutputTorque(torque?));
    }
    if !section.has("gear") {
        return None;
    }
    let has_torque = match context.engine {
        Other::Read(engine) => engine.torque.is_some(),
        Other::Broken => true,
        Other::Absent => false,
    };
    if !has_torque {
        section.error(
            "gear",
            Code::NeedsOther,
            "`gear` needs an `[engine]` with its `torque`",
        );
    }
    let driveline = match context.driveline {
        Other::Read(driveline) => driveline,
        Other::Broken => return None,
        Other::Absent => {
            section.error(
                "gear",
                Code::NeedsOther,
                "`gear` needs a `[driveline]` with gears",
            );
            return None;
        }
    };
    let names: Vec<&str> = driveline
        .gears
        .iter()
        .map(|gear| gear.name.as_str())
        .collect();
    let gear = section.reference("gear", "gear", &names)?;
    Some(Drive::Gear {
        gear,
        throttle: throttle.unwrap_or(1.0),
    })
}

fn read_applied(section: Section<'_>, context: &Context<'_>) -> Option<AppliedAt> {
    section.must_have(&[("point", "which `[[point]]` the force acts at")]);
    if !section.has("force") && !section.has("moment") {
        section.must_have(&[(
            "force",
            "force on the powertrain, vehicle axes, such as \"0, 0, 2.8 kN\"",
        )]);
    }
    let point = section.reference("point", "point", context.points);
    let force = section.vector("force", Quantity::Force, Bound::Within(-1e7, 1e7));
    let moment = section.vector("moment", Quantity::Torque, Bound::Within(-1e7, 1e7));
    section.finish();
    Some(AppliedAt {
        point: point?,
        wrench: Wrench {
            force: force.unwrap_or_else(Vec3::zeros),
            moment: moment.unwrap_or_else(Vec3::zeros),
        },
    })
}

fn read_without(section: &Section<'_>, context: &Context<'_>) -> (Vec<usize>, Vec<usize>) {
    let Some(without) = section.section("without") else {
        return (Vec::new(), Vec::new());
    };
    let taken = |key, sort, known: &[&str]| {
        let taken = without.references(key, sort, known).unwrap_or_default();
        if !taken.is_empty() && taken.len() == known.len() {
            without.error(
                key,
                Code::NothingLeft,
                format!("the load case takes away every {sort}"),
            );
        }
        taken
    };
    let found = (
        taken("parts", "part", context.parts),
        taken("mounts", "mount", context.mounts),
    );
    without.finish();
    found
}
