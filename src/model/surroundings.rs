//! Sections `[vehicle]`, `[[point]]` and `[[clearance]]`: what is around the powertrain.
//!
//! `[vehicle]`, for loads that the grip of the tyres limits:
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `mass` | of the whole vehicle, 1 g to 1000 t | mass | needed |
//! | `wheelbase` | distance between the axles | length | needed |
//! | `centre_of_gravity` | of the whole vehicle, vehicle axes | 3 lengths | needed |
//! | `front_axle` | middle of the front axle, vehicle axes | 3 lengths | the origin |
//! | `tyre_radius` | loaded radius of the driven tyres | length | needed |
//! | `tyre_grip` | friction coefficient at the driven tyres, 0.01 to 5 | ratio | 1 |
//! | `driven` | `"front"`, `"rear"` or `"all"` | word | needed |
//!
//! `[[point]]`, a place on the powertrain whose motion matters:
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `name` | what to call it | words | needed |
//! | `at` | its place, vehicle axes, within 100 m of the datum | 3 lengths | needed |
//! | `part` | the part it sits on, with which it is taken away | name | none |
//!
//! `[[clearance]]`, a gap that must stay open:
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `name` | what to call it | words | needed |
//! | `point` | which `[[point]]` comes near | name | needed |
//! | `toward` | direction from the point to the obstacle | direction | needed |
//! | `gap` | gap in the fitted state | length | needed |
//! | `keep` | gap that must remain | length | 15 mm |

use super::reader::{Bound, Names, Section};
use crate::diagnostic::{Code, Diagnostic};
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
    /// Mass of the whole vehicle \[kg\].
    pub mass: f64,
    /// Distance between the axles \[m\].
    pub wheelbase: f64,
    /// Centre of gravity of the whole vehicle, vehicle axes \[m\].
    pub centre_of_gravity: Vec3,
    /// Middle of the front axle, vehicle axes \[m\]; the ground is a tyre radius below.
    pub front_axle: Vec3,
    /// Loaded radius of the driven tyres \[m\].
    pub tyre_radius: f64,
    /// Friction coefficient at the driven tyres.
    pub tyre_grip: f64,
    /// Which wheels are driven.
    pub driven: Driven,
}

impl Vehicle {
    /// Height of the centre of gravity above the ground \[m\].
    #[must_use]
    pub fn height_above_ground(&self) -> f64 {
        self.centre_of_gravity.z - self.front_axle.z + self.tyre_radius
    }

    /// Distance from the front axle back to the centre of gravity \[m\].
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
    let length = |key| section.quantity(key, Quantity::Length, Bound::SIZE);
    let mass = section.quantity("mass", Quantity::Mass, Bound::MASS);
    let wheelbase = length("wheelbase");
    let tyre_radius = length("tyre_radius");
    let centre_of_gravity = section.vector("centre_of_gravity", Quantity::Length, Bound::PLACE);
    let front_axle = section.vector("front_axle", Quantity::Length, Bound::PLACE);
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
        section.refuse(
            "centre_of_gravity",
            Code::OutOfRange,
            format!(
                "`vehicle.centre_of_gravity` must lie between the axles, 0 to {:.0} mm behind the front one: {:.0} mm",
                vehicle.wheelbase * 1e3,
                behind * 1e3
            ),
            "x points forward, so a place behind the origin is below zero; `front_axle` says where the front axle is when it is not at the origin",
        );
    }
    let height = vehicle.height_above_ground();
    if height <= 0.0 {
        section.refuse(
            "centre_of_gravity",
            Code::OutOfRange,
            format!(
                "`vehicle.centre_of_gravity` must lie above the ground: {:.0} mm",
                height * 1e3
            ),
            "the ground is a tyre radius below `front_axle`, which is at the origin when it is not given",
        );
    }
}

/// A place on the powertrain whose motion matters.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Point {
    /// Name in the file.
    pub name: String,
    /// Place in the fitted state, vehicle axes \[m\].
    pub at: Vec3,
    /// The part it sits on, as a place in `Model::parts`; it goes when that part is taken away.
    pub part: Option<usize>,
}

/// Reads one `[[point]]`.
pub(super) fn read_point(section: Section<'_>, parts: &Names<'_>) -> Option<Point> {
    section.must_have(&[
        ("name", "a name to speak of it, such as \"fan tip\""),
        ("at", "its place, such as \"260, 0, 330 mm\""),
    ]);
    let name = section.name("name");
    let at = section.vector("at", Quantity::Length, Bound::PLACE);
    let part = section.reference("part", parts);
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
    /// Gap in the fitted state \[m\].
    pub gap: f64,
    /// Gap that must remain \[m\].
    pub keep: f64,
}

/// Gap to keep when the file states none \[m\].
///
/// # Source
/// Common practice: 15 mm between the engine and the chassis, steering or crossmember.
const KEEP: f64 = 15e-3;

/// Reads one `[[clearance]]`.
pub(super) fn read_clearance(section: Section<'_>, points: &Names<'_>) -> Option<Clearance> {
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
    let point = section.reference("point", points);
    let toward = section.direction("toward");
    let gap = section.quantity("gap", Quantity::Length, Bound::TRAVEL);
    let keep = section.quantity("keep", Quantity::Length, Bound::TRAVEL);
    if !section.has("keep") {
        section.assume(
            "keep",
            "15 mm: what is kept between an engine and the chassis (common practice)",
        );
    }
    let kept = keep.or((!section.has("keep")).then_some(KEEP));
    if let (Some(gap), Some(keep)) = (gap, kept)
        && gap < keep
    {
        section.note(
            Diagnostic::warning(
                Code::GapBelowKeep,
                format!(
                    "{} is below the {:.1} mm to keep before anything moves: {:.1} mm",
                    section.key_name("gap"),
                    keep * 1e3,
                    gap * 1e3
                ),
                section.span_of("gap"),
            )
            .label("already too small")
            .help("check the gap, or write a smaller `keep` when it is known to be enough"),
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
