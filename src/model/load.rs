//! Sections `[loads]` and `[[load]]`: what the powertrain must stand.
//!
//! `[loads]`:
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `usual` | whether the usual set of cases is added: see [`usual`] | true or false | true |
//! | `modes` | load cases about whose loaded position the modes are wanted, beside the one at rest | list of names | the largest steady forward torque |
//!
//! `[[load]]`:
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `name` | what to call it; one of the usual set replaces that one | words | needed |
//! | `class` | `"service"`, `"durability"`, `"extreme"` or `"restraint"` | word | `"durability"` |
//! | `vehicle` | acceleration of the vehicle, gravity not included, up to 100 g | 3 accelerations | none |
//! | `gear` | gear through which the engine drives | name | none |
//! | `throttle` | share of the highest engine torque, −1 to 1, with `gear` | ratio | 1 |
//! | `output_torque` | torque that leaves the powertrain, in place of `gear` | torque | none |
//! | `factor` | driveline shock, 0 to 20: multiplies the torque at the outputs | ratio | 1 |
//! | `grip_limited` | whether the tyres cap the steady torque | true or false | false |
//! | `apply` | list of `{ point, force, moment }` on the powertrain, vehicle axes | name, 3 forces, 3 torques | none |
//! | `chassis_twist` | `{ mount, by }`: the chassis at one mount is displaced, vehicle axes, up to 100 mm | name, 3 lengths | none |
//! | `without` | `{ parts, mounts }`: what is taken away | lists of names | nothing |

mod drive;
pub mod usual;

pub use drive::Drive;

use super::drivetrain::{Driveline, Engine};
use super::reader::{Bound, Names, Other, Section, quoted};
use super::surroundings::{Point, Vehicle};
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

/// A force and a moment on the powertrain at a point.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AppliedAt {
    /// Which point, as a place in `Model::points`.
    pub point: usize,
    /// Force and moment about that point, fixed in vehicle axes.
    pub wrench: Wrench,
}

/// The chassis at one mount displaced against the chassis at all others.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ChassisTwist {
    /// Which mount, as a place in `Model::mounts`.
    pub mount: usize,
    /// Displacement in vehicle axes \[m\].
    pub by: Vec3,
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
    /// Displacement of the chassis at one mount, as a frame that twists makes it.
    pub chassis_twist: Option<ChassisTwist>,
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
            chassis_twist: None,
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
    pub(super) parts: &'a Names<'a>,
    pub(super) mounts: &'a Names<'a>,
    pub(super) point_names: &'a Names<'a>,
    pub(super) points: &'a [Option<Point>],
    pub(super) engine: Other<'a, Engine>,
    pub(super) driveline: Other<'a, Driveline>,
    pub(super) vehicle: Other<'a, Vehicle>,
}

/// Largest acceleration taken: beyond it a rigid body on mounts says nothing.
const ACCELERATION: Bound = Bound::Stated(
    -100.0 * STANDARD_GRAVITY,
    100.0 * STANDARD_GRAVITY,
    "between -100 g and 100 g",
);

/// Reads one `[[load]]`.
pub(super) fn read(section: Section<'_>, context: &Context<'_>) -> Option<LoadCase> {
    section.must_have(&[("name", "a name to speak of it, such as \"launch\"")]);
    let name = section.name("name");
    if name.as_deref() == Some(LoadCase::AT_REST) {
        section.refuse(
            "name",
            Code::BadName,
            format!(
                "every build has a load case of this name: `{}`",
                LoadCase::AT_REST
            ),
            "give it another name; the one at rest holds the weight and nothing else",
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
    let vehicle_acceleration = section.vector("vehicle", Quantity::Acceleration, ACCELERATION);
    let drive = drive::read(&section, context);
    let factor = section.ratio("factor", Bound::Within(0.0, 20.0));
    let grip_limited = section.flag("grip_limited").unwrap_or(false);
    if grip_limited && matches!(context.vehicle, Other::Absent) {
        section.refuse_once(
            "grip without vehicle",
            "grip_limited",
            Code::NeedsOther,
            format!("{} needs a `[vehicle]`", section.key_name("grip_limited")),
            "add `[vehicle]` with its mass, wheelbase, centre of gravity and tyres, or take `grip_limited` out",
        );
    }
    for key in ["factor", "grip_limited"] {
        if section.has(key) && !section.has("gear") && !section.has("output_torque") {
            section.refuse(
                key,
                Code::NeedsOther,
                format!(
                    "{} needs a `gear` or an `output_torque`",
                    section.key_name(key)
                ),
                format!("add one of them, or take `{key}` out"),
            );
        }
    }
    let applied: Vec<AppliedAt> = section
        .sections("apply")
        .into_iter()
        .filter_map(|applied| read_applied(applied, context))
        .collect();
    let (without_parts, without_mounts) = read_without(&section, context);
    let chassis_twist = section
        .section("chassis_twist")
        .and_then(|twist| read_twist(twist, context, &without_mounts));
    refuse_forces_on_nothing(&section, context, &applied, &without_parts);
    section.finish();
    Some(LoadCase {
        vehicle_acceleration,
        drive,
        factor: factor.unwrap_or(1.0),
        grip_limited,
        applied,
        chassis_twist,
        without_parts,
        without_mounts,
        ..LoadCase::new(
            name?,
            class.unwrap_or(LoadClass::Durability),
            LoadOrigin::File,
        )
    })
}

fn read_applied(section: Section<'_>, context: &Context<'_>) -> Option<AppliedAt> {
    section.must_have(&[("point", "which `[[point]]` the force acts at")]);
    section.must_have_one_of(
        &["force", "moment"],
        "force on the powertrain, vehicle axes, such as \"0, 0, 2.8 kN\", or a `moment`",
    );
    let point = section.reference("point", context.point_names);
    let force = section.vector("force", Quantity::Force, Bound::FORCE);
    let moment = section.vector("moment", Quantity::Torque, Bound::TORQUE);
    section.finish();
    Some(AppliedAt {
        point: point?,
        wrench: Wrench {
            force: force.unwrap_or_else(Vec3::zeros),
            moment: moment.unwrap_or_else(Vec3::zeros),
        },
    })
}

/// How far a frame gives way at one corner.
const TWIST: Bound = Bound::Stated(-0.1, 0.1, "within 100 mm either way");

fn read_twist(
    section: Section<'_>,
    context: &Context<'_>,
    without: &[usize],
) -> Option<ChassisTwist> {
    section.must_have(&[
        ("mount", "at which mount the chassis is displaced"),
        ("by", "how far, vehicle axes, such as \"0, 0, 3 mm\""),
    ]);
    let mount = section.reference("mount", context.mounts);
    let by = section.vector("by", Quantity::Length, TWIST);
    if mount.is_some_and(|mount| without.contains(&mount)) {
        section.refuse(
            "mount",
            Code::NothingLeft,
            format!(
                "{} is taken away in this load case",
                section.key_name("mount")
            ),
            "displace the chassis at a mount that is there",
        );
    }
    section.finish();
    Some(ChassisTwist {
        mount: mount?,
        by: by?,
    })
}

fn read_without(section: &Section<'_>, context: &Context<'_>) -> (Vec<usize>, Vec<usize>) {
    let Some(without) = section.section("without") else {
        return (Vec::new(), Vec::new());
    };
    let taken = |key, known: &Names<'_>| {
        let taken = without.references(key, known).unwrap_or_default();
        if !taken.is_empty() && taken.len() == known.len() {
            without.refuse(
                key,
                Code::NothingLeft,
                format!(
                    "{} takes away every {}",
                    without.key_name(key),
                    known.sort()
                ),
                "leave at least one",
            );
        }
        taken
    };
    let found = (
        taken("parts", context.parts),
        taken("mounts", context.mounts),
    );
    without.finish();
    found
}

/// A force cannot act at a point of a part that is taken away.
fn refuse_forces_on_nothing(
    section: &Section<'_>,
    context: &Context<'_>,
    applied: &[AppliedAt],
    without: &[usize],
) {
    let gone = applied.iter().find_map(|applied| {
        let point = context.points.get(applied.point)?.as_ref()?;
        point
            .part
            .is_some_and(|part| without.contains(&part))
            .then_some(&point.name)
    });
    if let Some(point) = gone {
        section.refuse(
            "apply",
            Code::NothingLeft,
            format!(
                "{} acts at a point whose part is taken away: {}",
                section.key_name("apply"),
                quoted(point)
            ),
            "take out the force, or leave the part in",
        );
    }
}
