//! What spreads the force of the bolts over the rail: foot of the bracket, plate, washer.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `bracket.thickness` | of the foot that is clamped | length | needed |
//! | `bracket.material` | listed or `[material.NAME]` | name | needed |
//! | `bracket.coating` | see `bolt.coating` | word | `"bare"` |
//! | `bracket.length` | of the foot along the rail | length | two bolt diameters beyond the outer bolts |
//! | `bracket.width` | of the foot across the rail | length | two bolt diameters beyond the outer bolts |
//! | `bracket.saddle` | `true`: the foot is shaped to the round tube it stands on | flag | `false` |
//! | `plate.thickness` | of the plate on the rail | length | needed |
//! | `plate.material` | listed or `[material.NAME]` | name | needed |
//! | `plate.coating` | see `bolt.coating` | word | `"bare"` |
//! | `plate.length` | along the rail | length | two bolt diameters beyond the outer bolts |
//! | `plate.width` | across the rail | length | the face of the rail; on a solid part as `length` |
//! | `plate.saddle` | `true`: the plate is shaped to the round tube it lies on | flag | `false` |
//! | `plate.both_sides` | `true`: another one below the nuts | flag | `false` |
//! | `washer.diameter` | outside, above the bearing face of the head | length | needed |
//! | `washer.thickness` | of the washer | length | needed |

use super::{Base, Bolt};
use crate::diagnostic::Code;
use crate::model::material::{Catalogue, Material, Surface, read_surface};
use crate::model::rail::{Through, millimetres};
use crate::model::reader::{Bound, Section};
use crate::units::Quantity;

/// Thicknesses of anything that is clamped \[m\].
pub(super) const THICKNESS: Bound = Bound::Stated(1e-4, 0.5, "between 0.1 mm and 500 mm");

/// Sides of a foot, plate or upright \[m\]: larger ones are slips of unit.
pub(super) const SIDE: Bound = Bound::Stated(1e-4, 1.0, "between 0.1 mm and 1 m");

/// Most that a washer is wider than the head on it; wider ones are slips of unit.
const WIDEST_WASHER: f64 = 6.0;

/// Foot of a bracket.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Foot {
    /// Thickness \[m\].
    pub thickness: f64,
    /// Size along the rail \[m\]; it holds the bolt holes.
    pub length: f64,
    /// Size across the rail \[m\]; it holds the bolt holes.
    pub width: f64,
    /// Whether length and width are not of the file but [usual](usual_side) for the bolts.
    pub follows_bolts: [bool; 2],
    /// Whether it is shaped to the round tube it stands on; else it touches a tube along a line.
    pub saddle: bool,
    /// What it is made of.
    pub material: Material,
    /// What covers it.
    pub surface: Surface,
}

/// Plate on a rail.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Plate {
    /// Thickness \[m\].
    pub thickness: f64,
    /// Size along the rail \[m\].
    pub length: f64,
    /// Size across the rail \[m\].
    pub width: f64,
    /// Whether length and width are not of the file but [usual](usual_side) for the bolts.
    pub follows_bolts: [bool; 2],
    /// Whether it is shaped to the round tube it lies on; else it touches a tube along a line.
    pub saddle: bool,
    /// What it is made of.
    pub material: Material,
    /// What covers it.
    pub surface: Surface,
    /// Whether there is another one below the nuts.
    pub both_sides: bool,
}

/// Hard washer under head and nut, with the hole of the bolt.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct Washer {
    /// Outside diameter \[m\].
    pub diameter: f64,
    /// Thickness \[m\].
    pub thickness: f64,
}

impl Washer {
    /// Diameter on which a head or nut of this bearing diameter presses below the washer \[m\].
    ///
    /// # Equation
    ///   d = min(D, d_W + 1.6 h)
    ///
    ///   D, h  washer: diameter, thickness  \[m\];  d_W  bearing face of the head \[m\]
    ///
    /// # Source
    /// VDI 2230-1:2003, 5.5.4 (from memory): a washer spreads the force with its thickness, not with its width.
    #[must_use]
    pub fn pressed(&self, head_bearing: f64) -> f64 {
        self.diameter.min(head_bearing + 1.6 * self.thickness)
    }
}

/// What a plate must cover.
pub(super) struct Room {
    /// Face of the rail across it \[m\]; `None` on a solid part.
    face_width: Option<f64>,
    /// Largest x and y of the bolts, without sign \[m\].
    reach: [f64; 2],
    nominal: f64,
    hole: f64,
    /// Whether the bolts end in the part, so that nothing is below it.
    tapped: bool,
    /// Whether it lies on a round tube.
    is_round: bool,
}

impl Room {
    pub(super) fn of(
        base: Option<&Base>,
        pattern: Option<&[[f64; 2]]>,
        bolt: Option<&Bolt>,
    ) -> Option<Self> {
        let (base, bolt) = (base?, bolt?);
        let reach = pattern?
            .iter()
            .fold([0.0_f64; 2], |[far_x, far_y], [x, y]| {
                [far_x.max(x.abs()), far_y.max(y.abs())]
            });
        Some(Self {
            face_width: base.rail().map(|rail| rail.face_width),
            reach,
            nominal: bolt.thread.nominal,
            hole: bolt.hole,
            tapped: matches!(base, Base::Solid(solid) if solid.engagement.is_some()),
            is_round: base
                .rail()
                .is_some_and(|rail| rail.through == Through::Diameter),
        })
    }

    fn usual(&self, axis: usize) -> f64 {
        usual_side(self.reach.get(axis).copied().unwrap_or(0.0), self.nominal)
    }
}

/// Side of a foot or plate whose outer bolts, of this diameter, are so far from its middle \[m\]: two diameters beyond them.
///
/// # Source
/// Common practice.
#[must_use]
pub fn usual_side(reach: f64, nominal: f64) -> f64 {
    2.0 * (reach + 2.0 * nominal)
}

/// Reads `bracket`.
pub(super) fn read_foot(
    section: Section<'_>,
    materials: &Catalogue<'_>,
    room: Option<&Room>,
) -> Option<Foot> {
    section.must_have(&[
        ("thickness", "of the foot, such as \"8 mm\""),
        ("material", "what it is made of, such as \"S355\""),
    ]);
    let thickness = section.quantity("thickness", Quantity::Length, THICKNESS);
    let material = materials.pick(&section, thickness);
    let surface = read_surface(&section);
    let saddle = read_saddle(&section, room);
    let length = read_side(&section, "length", room, 0, room.map(|room| room.usual(0)));
    let width = read_side(&section, "width", room, 1, room.map(|room| room.usual(1)));
    let follows_bolts = ["length", "width"].map(|key| !section.has(key));
    section.finish();
    Some(Foot {
        thickness: thickness?,
        length: length?,
        width: width?,
        follows_bolts,
        saddle: saddle?,
        material: material?,
        surface: surface?,
    })
}

/// Reads `plate`.
pub(super) fn read(
    section: Section<'_>,
    materials: &Catalogue<'_>,
    room: Option<&Room>,
) -> Option<Plate> {
    section.must_have(&[
        ("thickness", "of the plate, such as \"6 mm\""),
        ("material", "what it is made of, such as \"S355\""),
    ]);
    let thickness = section.quantity("thickness", Quantity::Length, THICKNESS);
    let material = materials.pick(&section, thickness);
    let surface = read_surface(&section);
    let both_sides = read_both_sides(&section, room);
    let saddle = read_saddle(&section, room);
    let usual_width = room.map(|room| room.face_width.unwrap_or(room.usual(1)));
    let length = read_side(&section, "length", room, 0, room.map(|room| room.usual(0)));
    let width = read_side(&section, "width", room, 1, usual_width);
    let on_rail = room.is_some_and(|room| room.face_width.is_some());
    let follows_bolts = [!section.has("length"), !section.has("width") && !on_rail];
    section.finish();
    Some(Plate {
        thickness: thickness?,
        length: length?,
        width: width?,
        follows_bolts,
        saddle: saddle?,
        material: material?,
        surface: surface?,
        both_sides: both_sides?,
    })
}

fn read_both_sides(section: &Section<'_>, room: Option<&Room>) -> Option<bool> {
    if !section.has("both_sides") {
        section.assume("both_sides", "false: the nuts have no plate");
        return Some(false);
    }
    let both = section.flag("both_sides")?;
    if both && room?.tapped {
        section.refuse(
            "both_sides",
            Code::Conflict,
            format!(
                "{} stands beside `to.tapped`",
                section.key_name("both_sides")
            ),
            "bolts that are screwed into the part have nothing below it",
        );
        return None;
    }
    Some(both)
}

fn read_saddle(section: &Section<'_>, room: Option<&Room>) -> Option<bool> {
    let on_tube = room?.is_round;
    if !section.has("saddle") {
        if on_tube {
            section.assume(
                "saddle",
                "false: it is flat and touches the tube along a line",
            );
        }
        return Some(false);
    }
    let saddle = section.flag("saddle")?;
    if saddle && !on_tube {
        section.refuse(
            "saddle",
            Code::Conflict,
            format!("{} is for a round tube", section.key_name("saddle")),
            "nothing is round here; take it out",
        );
        return None;
    }
    Some(saddle)
}

/// A side of foot or plate, wide enough for the holes.
fn read_side(
    section: &Section<'_>,
    key: &'static str,
    room: Option<&Room>,
    axis: usize,
    usual: Option<f64>,
) -> Option<f64> {
    let given = section.quantity(key, Quantity::Length, SIDE);
    let (room, usual) = (room?, usual?);
    if !section.has(key) {
        section.assume(key, millimetres(usual));
    }
    let side = if section.has(key) { given? } else { usual };
    let reach = room.reach.get(axis).copied().unwrap_or(0.0);
    let least = 2.0 * reach + room.hole;
    if side <= least {
        section.refuse(
            key,
            Code::OutOfRange,
            format!(
                "{} does not hold the bolt holes, which reach over {}: {}",
                section.key_name(key),
                millimetres(least),
                millimetres(side)
            ),
            "it lies with its middle in the middle of the joint face",
        );
        return None;
    }
    Some(side)
}

/// Reads `washer`.
pub(super) fn read_washer(section: Section<'_>, bolt: Option<&Bolt>) -> Option<Washer> {
    section.must_have(&[
        ("diameter", "outside, such as \"24 mm\""),
        ("thickness", "such as \"2.5 mm\""),
    ]);
    let diameter = section.quantity("diameter", Quantity::Length, Bound::SIZE);
    let thickness = section.quantity("thickness", Quantity::Length, THICKNESS);
    if let (Some(diameter), Some(bolt)) = (diameter, bolt) {
        let head = bolt.thread.head_bearing;
        let most = WIDEST_WASHER * head;
        if diameter <= head || diameter > most {
            section.refuse(
                "diameter",
                Code::OutOfRange,
                format!(
                    "{} must be above the {} of the head on it, and at most {}: {}",
                    section.key_name("diameter"),
                    millimetres(head),
                    millimetres(most),
                    millimetres(diameter)
                ),
                "take the washer out when it is no wider than the head; a wider one is a `plate`",
            );
        }
    }
    section.finish();
    Some(Washer {
        diameter: diameter?,
        thickness: thickness?,
    })
}
