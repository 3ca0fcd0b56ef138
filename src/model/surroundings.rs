//! Sections `[vehicle]`, `[[point]]` and `[[clearance]]`: what is around the powertrain.

use super::reader::{Bound, Section};
use crate::diagnostic::Code;
use crate::spatial::Vec3;
use crate::units::Quantity;

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

/// Friction coefficient of a road tyre on a dry road.
///
/// # Source
/// Common practice.
const ROAD_GRIP: f64 = 1.0;

/// Reads `[vehicle]`.
pub(super) fn read_vehicle(section: Section<'_>) -> Option<Vehicle> {
    section.must_have(&[
        ("mass", "of the whole vehicle, such as \"1450 kg\""),
        (
            "wheelbase",
            "distance between the axles, such as \"2600 mm\"",
        ),
        (
            "centre_of_gravity",
            "of the whole vehicle, such as \"-1200, 0, 250 mm\"",
        ),
        (
            "tyre_radius",
            "loaded radius of the driven tyres, such as \"310 mm\"",
        ),
        ("driven", "which wheels: \"front\", \"rear\" or \"all\""),
    ]);
    let length = |key| section.quantity(key, Quantity::Length, Bound::Positive);
    let mass = section.quantity("mass", Quantity::Mass, Bound::Positive);
    let wheelbase = length("wheelbase");
    let tyre_radius = length("tyre_radius");
    let centre_of_gravity = section.vector("centre_of_gravity", Quantity::Length, Bound::Any);
    let front_axle = section.vector("front_axle", Quantity::Length, Bound::Any);
    if !section.has("front_axle") {
        section.assume(
            "front_axle",
            "the middle of the front axle is the origin (0, 0, 0 mm)",
        );
    }
    let grip = section.ratio("tyre_grip", Bound::Within(0.01, 5.0));
    if !section.has("tyre_grip") {
        section.assume(
            "tyre_grip",
            format!("{ROAD_GRIP}: a road tyre on a dry road (common practice)"),
        );
    }
    let driven = section.choice(
        "driven",
        &[
            ("front", Driven::Front),
            ("rear", Driven::Rear),
            ("all", Driven::All),
        ],
    );
    let vehicle = (|| {
        Some(Vehicle {
            mass: mass?,
            wheelbase: wheelbase?,
            centre_of_gravity: centre_of_gravity?,
            front_axle: front_axle.unwrap_or_else(Vec3::zeros),
            tyre_radius: tyre_radius?,
            tyre_grip: grip.unwrap_or(ROAD_GRIP),
            driven: driven?,
        })
    })();
    if let Some(vehicle) = &vehicle {
        refuse_impossible_stance(&section, vehicle);
    }
    section.finish();
    vehicle
}

/// The centre of gravity must lie between the axles and above the ground.
fn refuse_impossible_stance(section: &Section<'_>, vehicle: &Vehicle) {
    let behind = vehicle.behind_front_axle();
    if !(0.0..=vehicle.wheelbase).contains(&behind) {
        section.error(
            "centre_of_gravity",
            Code::OutOfRange,
            format!(
                "the vehicle's centre of gravity lies {:.0} mm behind the front axle, outside the wheelbase of {:.0} mm",
                behind * 1e3,
                vehicle.wheelbase * 1e3
            ),
        );
    }
    let height = vehicle.height_above_ground();
    if height <= 0.0 {
        section.error(
            "centre_of_gravity",
            Code::OutOfRange,
            format!(
                "the vehicle's centre of gravity lies {:.0} mm below the ground: the ground is a tyre radius below `front_axle`",
                -height * 1e3
            ),
        );
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

/// Reads one `[[point]]`.
pub(super) fn read_point(section: Section<'_>, parts: &[&str]) -> Option<Point> {
    section.must_have(&[
        ("name", "a name to speak of it, such as \"fan tip\""),
        ("at", "its place, such as \"260, 0, 330 mm\""),
    ]);
    let name = section.name("name");
    let at = section.vector("at", Quantity::Length, Bound::Any);
    let part = section.reference("part", "part", parts);
    section.finish();
    Some(Point {
        name: name?,
        at: at?,
        part,
    })
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

/// Gap to keep when the file states none [m].
///
/// # Source
/// Common practice: 15 mm between the engine and the chassis, steering or crossmember.
const KEEP: f64 = 15e-3;

/// Reads one `[[clearance]]`.
pub(super) fn read_clearance(section: Section<'_>, points: &[&str]) -> Option<Clearance> {
    section.must_have(&[
        ("name", "a name to speak of it, such as \"fan to radiator\""),
        ("point", "which `[[point]]` comes near"),
        (
            "toward",
            "direction from the point to the obstacle, such as \"1, 0, 0\"",
        ),
        ("gap", "gap in the fitted state, such as \"30 mm\""),
    ]);
    let name = section.name("name");
    let point = section.reference("point", "point", points);
    let toward = section.direction("toward");
    let gap = section.quantity("gap", Quantity::Length, Bound::NotNegative);
    let keep = section.quantity("keep", Quantity::Length, Bound::NotNegative);
    if !section.has("keep") {
        section.assume(
            "keep",
            "15 mm: what is kept between an engine and the chassis (common practice)",
        );
    }
    section.finish();
    Some(Clearance {
        name: name?,
        point: point?,
        toward: toward?,
        gap: gap?,
        keep: keep.unwrap_or(KEEP),
    })
}
