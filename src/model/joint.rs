//! Section `[[joint]]`: how a mount is bolted to a rail, or to a thick part.
//!
//! The joint face is where the bracket meets the rail, or the plate on it. Its axes are
//! x along the rail, y across it, z out of the rail towards the bracket.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `name` | what to call it | words | needed |
//! | `mount` | which `[[mount]]` it holds; one joint a mount | name | needed |
//! | `rail` | which `[rail.NAME]` it is bolted through | name | this or `to` |
//! | `to` | a solid part in place of a rail: keys in [`base`] | table | this or `rail` |
//! | `through` | `"width"`, `"height"` or `"diameter"`: the size of the rail that the bolts cross | word | needed for a box or channel |
//! | `face` | direction out of the rail towards the bracket | direction | up; through the width towards the mount |
//! | `along` | direction of the rail, or of x on a solid part | direction | forward |
//! | `offset` | from the middle of the joint face to the mount, vehicle axes | 3 lengths | nothing |
//! | `edge` | from the middle of the joint face to the nearest cut end of the rail | length | far from any |
//! | `pattern` | list of bolt positions x, y in the joint face | 2 lengths each | one bolt in the middle |
//! | `bolt` | keys in [`bolt`] | table | needed |
//! | `bracket` | foot of the bracket that is clamped: keys in [`plate`] | table | this or `plate` |
//! | `upright` | what rises from the foot, or from the plate: keys in [`upright`] | table | none; the foot's bending is then not judged |
//! | `plate` | plate on the rail, below the foot: keys in [`plate`] | table | none |
//! | `washer` | hard washer under head and nut: keys in [`plate`] | table | none |
//! | `spacer` | `true`: a solid block between the flanges of an open channel, as long as the foot; only of a channel | flag | `false` |
//! | `sleeve` | tube around each bolt inside the rail: keys in [`sleeve`] | table | none |
//! | `weld` | of the plate to the rail: keys in [`weld`] | table | none |
//! | `polymer` | a layer of polymer in the joint: keys in [`polymer`] | table | none |
//! | `slip_friction` | friction coefficient of the faces that must not slip, 0.02 to 1 | ratio | lowest usual for the materials and coatings |
//! | `environment` | `"dry"`, `"damp"` or `"road salt"` | word | `"road salt"` |
//! | `temperature` | coldest and hottest | list of 2 temperatures | −20 to 90 °C |
//! | `assembled` | temperature at which it is tightened | temperature | 20 °C |
//! | `factors` | reserves that are kept: keys in [`sizing`] | table | common practice |
//! | `size` | `true`: find sizes that hold | flag | `false` |
//! | `choose` | from what they are chosen: keys in [`sizing`] | table | usual sizes |

pub mod base;
pub mod bolt;
mod grip;
pub mod pattern;
pub mod plate;
pub mod polymer;
mod pose;
pub mod sizing;
pub mod sleeve;
pub mod upright;
pub mod weld;

pub use base::Base;
pub use bolt::Bolt;
pub use plate::{Foot, Plate, Washer};
pub use polymer::{Polymer, PolymerRole};
pub use sizing::{Choices, Factors};
pub use sleeve::{Seat, Shoulder, Sleeve};
pub use upright::{Upright, UprightWeld};
pub use weld::{Filler, Fillet, Weld, WeldRun};

use super::isolator::service::TEMPERATURE;
use super::material::{Catalogue, Family, Surface};
use super::mount::Mount;
use super::rail::Rail;
use super::reader::{Bound, Ends, Names, Section};
use crate::spatial::Vec3;
use crate::units::Quantity;

/// How wet and salty it gets around a joint.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Environment {
    /// Indoors or under cover, kept dry.
    Dry,
    /// Now and then wet, no salt.
    Damp,
    /// Splashed from the road in winter, or near the sea.
    RoadSalt,
}

/// A bolted joint, checked.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Joint {
    /// Name in the file.
    pub name: String,
    /// The mount that it holds, as a place in `Model::mounts`.
    pub mount: usize,
    /// What it is bolted to.
    pub base: Base,
    /// Unit vector out of the rail towards the bracket, vehicle axes: z of the joint face.
    pub face: Vec3,
    /// Unit vector along the rail, square to `face`, vehicle axes: x of the joint face.
    pub along: Vec3,
    /// From the middle of the joint face to the mount, vehicle axes \[m\].
    pub offset: Vec3,
    /// The bolts, which are all alike.
    pub bolt: Bolt,
    /// Positions x, y of the bolts in the joint face \[m\]; never empty, no two closer than their heads.
    pub pattern: Vec<[f64; 2]>,
    /// Foot of the bracket that is clamped; `None` when the bracket is welded to `plate`.
    pub foot: Option<Foot>,
    /// What rises from the foot, or from `plate` where the bracket is welded to it.
    pub upright: Option<Upright>,
    /// Plate between foot and rail.
    pub plate: Option<Plate>,
    /// Hard washers under head and nut.
    pub washer: Option<Washer>,
    /// Whether a solid block keeps the flanges of an open channel apart.
    pub spacer: bool,
    /// Tube around each bolt inside the rail.
    pub sleeve: Option<Sleeve>,
    /// Weld of the plate to the rail.
    pub weld: Option<Weld>,
    /// Layer of polymer in the joint.
    pub polymer: Option<Polymer>,
    /// Friction coefficient of the faces that must not slip.
    pub slip_friction: f64,
    /// How wet and salty it gets.
    pub environment: Environment,
    /// Coldest and hottest \[°C\], the first not above the second.
    pub temperature: [f64; 2],
    /// Temperature at which it is tightened \[°C\].
    pub assembled: f64,
    /// Reserves that are kept.
    pub factors: Factors,
    /// From what sizes that hold are to be found; `None` when they are not asked for.
    pub choices: Option<Choices>,
}

impl Joint {
    /// Unit vector across the rail in the joint face, vehicle axes: y of the joint face.
    #[must_use]
    pub fn across(&self) -> Vec3 {
        self.face.cross(&self.along)
    }
}

/// What a joint may refer to.
pub(super) struct Context<'c, 'a> {
    pub(super) materials: &'c Catalogue<'a>,
    pub(super) rails: &'c [Option<Rail>],
    pub(super) rail_names: &'c Names<'a>,
    pub(super) mounts: &'c [Option<Mount>],
    pub(super) mount_names: &'c Names<'a>,
}

/// Coldest and hottest below a vehicle when the file states none \[°C\].
///
/// # Source
/// Common practice: a winter's night, and the warmth of an engine bay away from the exhaust.
const SEASONS: [f64; 2] = [-20.0, 90.0];

/// Temperature of a workshop \[°C\].
const WORKSHOP: f64 = 20.0;

/// Reads one `[[joint]]`; `None` when something in it is wrong.
pub(super) fn read(section: Section<'_>, context: &Context<'_, '_>) -> Option<Joint> {
    section.must_have(&[
        (
            "name",
            "a name to speak of it, such as \"front left to rail\"",
        ),
        ("mount", "which `[[mount]]` it holds"),
        (
            "bolt",
            "`{ size = \"M10\", class = \"8.8\" }`, what it is bolted with",
        ),
    ]);
    section.must_have_one_of(
        &["rail", "to"],
        "which `[rail.NAME]` it is bolted through; `to = { … }` for a solid part",
    );
    section.must_have_one_of(
        &["bracket", "plate"],
        "`{ thickness = \"8 mm\", material = \"S355\" }`, the clamped foot of the bracket; `plate` when the bracket is welded to a plate",
    );
    let name = section.name("name");
    let mount = section.reference("mount", context.mount_names);
    let base = base::read(&section, context);
    let offset = pose::read_offset(&section);
    let at = mount.and_then(|place| Some(context.mounts.get(place)?.as_ref()?.at));
    let axes = pose::read_axes(&section, base.as_ref(), offset, at);
    let given = section.judged("bolt", bolt::read);
    let (bolt, count) = given.flatten().unzip();
    let pattern = pattern::read(&section, base.as_ref(), bolt.as_ref(), count.flatten());
    let room = plate::Room::of(base.as_ref(), pattern.as_deref(), bolt.as_ref());
    let foot = section.judged("bracket", |inner| {
        plate::read_foot(inner, context.materials, room.as_ref())
    });
    let plate = section.judged("plate", |inner| {
        plate::read(inner, context.materials, room.as_ref())
    });
    let washer = section.judged("washer", |inner| plate::read_washer(inner, bolt.as_ref()));
    let sleeve = sleeve::read(
        &section,
        context.materials,
        base.as_ref(),
        bolt.as_ref(),
        pattern.as_deref(),
    );
    let spacer = base::read_spacer(&section, base.as_ref(), context);
    let holes = wall_hole(bolt.as_ref(), sleeve.as_ref());
    let has_edge = pattern::judge_edge(&section, base.as_ref(), pattern.as_deref(), holes);
    let weld = weld::read(&section, base.as_ref(), plate.as_ref(), sleeve.as_ref());
    let polymer = section.judged("polymer", |inner| {
        polymer::read(inner, context.materials, bolt.as_ref())
    });
    let plate = absent_or_read(plate);
    let foot = absent_or_read(foot);
    let upright = upright::read(&section, foot.as_ref(), plate.as_ref());
    let faces = base.as_ref().zip(plate.as_ref()).zip(foot.as_ref());
    let layer = polymer.as_ref().and_then(Option::as_ref);
    let slip_friction =
        read_slip_friction(&section, faces.map(|((b, p), f)| faces_of(b, p, f)), layer);
    let environment = read_environment(&section);
    let temperature = read_temperature(&section);
    let assembled = read_assembled(&section);
    let factors = sizing::read_factors(&section);
    let choices = sizing::read_choices(&section, base.as_ref(), bolt.as_ref());
    let joint = axes.and_then(|(face, along)| {
        Some(Joint {
            name: name?,
            mount: mount?,
            base: base?,
            face,
            along,
            offset: offset?,
            bolt: bolt?,
            pattern: pattern?,
            foot: foot?,
            upright: upright?,
            plate: plate?,
            washer: absent_or_read(washer)?,
            spacer: spacer?,
            sleeve: absent_or_read(sleeve)?,
            weld: weld?,
            polymer: absent_or_read(polymer)?,
            slip_friction: slip_friction?,
            environment: environment?,
            temperature: temperature?,
            assembled: assembled?,
            factors: factors?,
            choices: choices?,
        })
    });
    let fits = joint
        .as_ref()
        .and_then(|joint| grip::judge_length(&section, joint));
    section.finish();
    has_edge.and(fits).and(joint)
}

/// Diameter of the holes in the walls of a rail; `None` when it is not known.
fn wall_hole(bolt: Option<&Bolt>, sleeve: Option<&Option<Sleeve>>) -> Option<f64> {
    match sleeve {
        None => Some(bolt?.hole),
        Some(sleeve) => Some(sleeve.as_ref()?.hole),
    }
}

/// Turns "absent, broken or read" into "absent or read"; `None` when broken.
fn absent_or_read<T>(read: Option<Option<T>>) -> Option<Option<T>> {
    match read {
        None => Some(None),
        Some(None) => None,
        Some(Some(value)) => Some(Some(value)),
    }
}

/// Materials and surfaces of the faces that rub when the joint slips.
fn faces_of(base: &Base, plate: &Option<Plate>, foot: &Option<Foot>) -> Vec<(Family, Surface)> {
    let mut faces = vec![base.face()];
    faces.extend(
        plate
            .as_ref()
            .map(|plate| (plate.material.family, plate.surface)),
    );
    faces.extend(
        foot.as_ref()
            .map(|foot| (foot.material.family, foot.surface)),
    );
    faces
}

/// Friction of a face on a polymer.
///
/// # Source
/// Common practice: low end, as of paint.
const ON_POLYMER: f64 = 0.10;

fn read_slip_friction(
    section: &Section<'_>,
    faces: Option<Vec<(Family, Surface)>>,
    polymer: Option<&Polymer>,
) -> Option<f64> {
    if section.has("slip_friction") {
        return section.ratio("slip_friction", Bound::Within(0.02, 1.0));
    }
    let friction = faces?
        .into_iter()
        .map(|(family, surface)| surface.slip_friction(family))
        .fold(1.0, f64::min);
    let is_clamped = polymer.is_some_and(|one| one.role != PolymerRole::Locates);
    let friction = if is_clamped {
        friction.min(ON_POLYMER)
    } else {
        friction
    };
    section.assume(
        "slip_friction",
        format!("{friction}: the low end for these materials and coatings (common practice)"),
    );
    Some(friction)
}

fn read_environment(section: &Section<'_>) -> Option<Environment> {
    if section.has("environment") {
        return section.choice(
            "environment",
            &[
                ("dry", Environment::Dry),
                ("damp", Environment::Damp),
                ("road salt", Environment::RoadSalt),
            ],
        );
    }
    section.assume("environment", "road salt: what splashes below a vehicle");
    Some(Environment::RoadSalt)
}

fn read_temperature(section: &Section<'_>) -> Option<[f64; 2]> {
    if section.has("temperature") {
        return section.span(
            "temperature",
            Quantity::Temperature,
            TEMPERATURE,
            &Ends {
                example: "[\"-20 °C\", \"90 °C\"]",
                order: "write the coldest first",
            },
        );
    }
    let [coldest, hottest] = SEASONS;
    section.assume(
        "temperature",
        format!(
            "{coldest} to {hottest} °C: a winter's night to a warm engine bay (common practice)"
        ),
    );
    Some(SEASONS)
}

fn read_assembled(section: &Section<'_>) -> Option<f64> {
    if section.has("assembled") {
        return section.quantity("assembled", Quantity::Temperature, TEMPERATURE);
    }
    section.assume("assembled", format!("{WORKSHOP} °C"));
    Some(WORKSHOP)
}
