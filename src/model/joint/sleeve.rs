//! Tube around each bolt inside a rail, which keeps the walls apart.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `sleeve.outer` | outside diameter | length | needed |
//! | `sleeve.inner` | inside diameter, above that of the bolt | length | needed |
//! | `sleeve.material` | listed or `[material.NAME]` | name | needed |
//! | `sleeve.seat` | `"through"`: through holes in the walls, flush with the outside; `"inside"`: between the walls | word | `"through"` |
//! | `sleeve.gap` | how much shorter it is than what it keeps apart; below zero when it stands proud | length | 0.1 mm |
//! | `sleeve.shoulder` | flange outside the far wall, under the nut: the two keys below; only of a sleeve through the walls | table | none |
//! | `sleeve.shoulder.diameter` | of the flange, above `outer` | length | needed |
//! | `sleeve.shoulder.thickness` | of the flange | length | needed |
//! | `sleeve.hole` | diameter of its holes in the walls, from `outer`; only of a sleeve through the walls | length | as `outer`, a close fit |
//! | `sleeve.weld` | weld around it on both walls: keys in [`weld`] | table | none |
//!
//! A sleeve with a flange is put in from the far side. The nut stands on the flange, and a pull on the bolt presses
//! the flange on the far wall. On the side of the bracket its other end is flush with the wall like that of a plain
//! sleeve. A plate below the nuts then lies on the flanges and does not touch the wall.

use super::base::RailBase;
use super::weld::{self, Fillet};
use super::{Base, Bolt, pattern, plate};
use crate::diagnostic::Code;
use crate::model::material::{Catalogue, Material};
use crate::model::rail::millimetres;
use crate::model::reader::{Bound, Section};
use crate::units::Quantity;

/// What the ends of a sleeve stand on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Seat {
    /// It goes through holes in both walls; plates, washers or heads stand on its ends.
    Through,
    /// It stands between the walls, which are clamped on its ends.
    Inside,
}

/// Flange at the far end of a sleeve, outside the wall and under the nut.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct Shoulder {
    /// Diameter \[m\], above that of the sleeve.
    pub diameter: f64,
    /// Thickness \[m\].
    pub thickness: f64,
}

/// A sleeve, checked.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Sleeve {
    /// Outside diameter \[m\].
    pub outer: f64,
    /// Inside diameter \[m\], above that of the bolt and below `outer`.
    pub inner: f64,
    /// Length \[m\], above zero.
    pub length: f64,
    /// How much shorter it is than what it keeps apart \[m\]; below zero when it stands proud.
    pub gap: f64,
    /// What it is made of.
    pub material: Material,
    /// What its ends stand on.
    pub seat: Seat,
    /// Flange at its far end.
    pub shoulder: Option<Shoulder>,
    /// Diameter of its holes in the walls \[m\], not below `outer`; of a sleeve inside, that of the bolt.
    pub hole: f64,
    /// Weld around it on both walls.
    pub weld: Option<Fillet>,
}

/// Gap of a sleeve when the file states none \[m\].
///
/// # Source
/// Common practice: sleeves are cut to length with a tolerance of 0 to −0.1 mm; the shorter end counts.
pub const GAP: f64 = 1e-4;

const GAPS: Bound = Bound::Stated(-5e-3, 20e-3, "between 5 mm proud (-5 mm) and 20 mm short");

/// Reads `sleeve`; the outer `None` says that it is absent, the inner one that something in it is wrong.
pub(super) fn read(
    section: &Section<'_>,
    materials: &Catalogue<'_>,
    base: Option<&Base>,
    bolt: Option<&Bolt>,
    pattern: Option<&[[f64; 2]]>,
) -> Option<Option<Sleeve>> {
    if let (true, Some(Base::Solid(_))) = (section.has("sleeve"), base) {
        section.refuse(
            "sleeve",
            Code::Conflict,
            format!("{} stands beside `to`", section.key_name("sleeve")),
            "a solid part has no hollow; take the sleeve out",
        );
        return Some(None);
    }
    section.judged("sleeve", |inner| {
        read_sleeve(inner, materials, base.and_then(Base::rail), bolt, pattern)
    })
}

fn read_sleeve(
    section: Section<'_>,
    materials: &Catalogue<'_>,
    rail: Option<&RailBase>,
    bolt: Option<&Bolt>,
    pattern: Option<&[[f64; 2]]>,
) -> Option<Sleeve> {
    section.must_have(&[
        ("outer", "outside diameter, such as \"22 mm\""),
        ("inner", "inside diameter, such as \"13 mm\""),
        ("material", "what it is made of, such as \"S235\""),
    ]);
    let length = |key| section.quantity(key, Quantity::Length, Bound::SIZE);
    let (outer, inner) = (length("outer"), length("inner"));
    let sizes = outer.zip(inner);
    let sizes = sizes.filter(|&(outer, inner)| is_tube(&section, outer, inner, bolt));
    let sizes = sizes.filter(|&(outer, _)| has_room(&section, outer, rail, pattern));
    let wall = sizes.map(|(outer, inner)| (outer - inner) / 2.0);
    let material = materials.pick(&section, wall);
    let seat = section.choice(
        "seat",
        &[("through", Seat::Through), ("inside", Seat::Inside)],
    );
    let seat = if section.has("seat") {
        seat
    } else {
        section.assume("seat", "through: it goes through holes in both walls");
        Some(Seat::Through)
    };
    let gap = section.quantity("gap", Quantity::Length, GAPS);
    if !section.has("gap") {
        section.assume(
            "gap",
            "0.1 mm: the short end of the usual tolerance of length (common practice)",
        );
    }
    let gap = if section.has("gap") { gap } else { Some(GAP) };
    let kept_apart = rail.zip(seat).map(|(rail, seat)| match seat {
        Seat::Through => rail.depth,
        Seat::Inside => rail.depth - 2.0 * rail.wall,
    });
    let length = kept_apart.zip(gap).map(|(whole, gap)| whole - gap);
    if let (Some(length), Some(whole)) = (length, kept_apart)
        && length <= 0.0
    {
        section.refuse(
            "gap",
            Code::OutOfRange,
            format!(
                "{} must be below the {} that the sleeve has to fill: {}",
                section.key_name("gap"),
                millimetres(whole),
                millimetres(whole - length)
            ),
            "it is how much the sleeve is too short, some hundredths to tenths of a millimetre",
        );
    }
    let shoulder = section.judged("shoulder", |inner| read_shoulder(inner, outer, seat));
    let hole = read_hole(&section, outer, seat, bolt, shoulder.flatten(), rail);
    let family = material.as_ref().map(|material| material.family);
    let weld = section.judged("weld", |inner| weld::read_ring(inner, family));
    section.finish();
    let (outer, inner) = sizes?;
    Some(Sleeve {
        outer,
        inner,
        length: length.filter(|length| *length > 0.0)?,
        gap: gap?,
        material: material?,
        seat: seat?,
        shoulder: super::absent_or_read(shoulder)?,
        hole: hole?,
        weld: super::absent_or_read(weld)?,
    })
}

/// Diameter of the holes in the walls: the sleeve must go through, and its flange must not.
fn read_hole(
    section: &Section<'_>,
    outer: Option<f64>,
    seat: Option<Seat>,
    bolt: Option<&Bolt>,
    shoulder: Option<Shoulder>,
    rail: Option<&RailBase>,
) -> Option<f64> {
    let given = section.quantity("hole", Quantity::Length, Bound::SIZE);
    if seat? == Seat::Inside {
        if section.has("hole") {
            section.refuse(
                "hole",
                Code::Conflict,
                format!(
                    "{} belongs to a sleeve inside the walls",
                    section.key_name("hole")
                ),
                "only the bolt goes through these walls: its hole is `bolt.hole`; take this one out, or write `seat = \"through\"`",
            );
            return None;
        }
        return Some(bolt?.hole);
    }
    let outer = outer?;
    if !section.has("hole") {
        section.assume("hole", "as `outer`: the sleeve fits closely");
        return Some(outer);
    }
    let hole = given?;
    let flange = shoulder.map_or(f64::INFINITY, |shoulder| shoulder.diameter);
    let most = rail.map_or(flange, |rail| flange.min(rail.face_width - 2.0 * rail.wall));
    if hole < outer || hole >= most {
        let flange = if most < flange {
            format!(
                ", and stay below the {} between the walls",
                millimetres(most)
            )
        } else if most.is_finite() {
            format!(", and below the {} of its shoulder", millimetres(most))
        } else {
            String::new()
        };
        section.refuse(
            "hole",
            Code::OutOfRange,
            format!(
                "{} must let the sleeve of {} through{flange}: {}",
                section.key_name("hole"),
                millimetres(outer),
                millimetres(hole)
            ),
            "drill it to the sleeve, or take a thinner tube",
        );
        return None;
    }
    Some(hole)
}

/// Whether the tube has a wall and lets the bolt through; says so when not.
fn is_tube(section: &Section<'_>, outer: f64, inner: f64, bolt: Option<&Bolt>) -> bool {
    if outer <= inner {
        section.refuse(
            "inner",
            Code::InsideOut,
            format!(
                "{} must be below `outer`, {}: {}",
                section.key_name("inner"),
                millimetres(outer),
                millimetres(inner)
            ),
            "exchange the two, or check their units",
        );
        return false;
    }
    if let Some(bolt) = bolt
        && inner <= bolt.thread.nominal
    {
        section.refuse(
            "inner",
            Code::OutOfRange,
            format!(
                "{} must be above the {} of the bolt: {}",
                section.key_name("inner"),
                millimetres(bolt.thread.nominal),
                millimetres(inner)
            ),
            format!("usual for this thread: {}", millimetres(bolt.thread.hole)),
        );
        return false;
    }
    true
}

/// Whether all sleeves find room in the rail beside each other; says so when not.
fn has_room(
    section: &Section<'_>,
    outer: f64,
    rail: Option<&RailBase>,
    pattern: Option<&[[f64; 2]]>,
) -> bool {
    let Some(pattern) = pattern else {
        return true;
    };
    let aside = pattern.iter().fold(0.0_f64, |far, [_, y]| far.max(y.abs()));
    let hollow = rail.map_or(f64::INFINITY, |rail| {
        rail.face_width - 2.0 * rail.wall - 2.0 * aside
    });
    let room = hollow.min(pattern::nearest(pattern));
    if outer > room {
        section.refuse(
            "outer",
            Code::OutOfRange,
            format!(
                "{} is more than the {} that the walls and the other sleeves leave: {}",
                section.key_name("outer"),
                millimetres(room),
                millimetres(outer)
            ),
            "take a thinner tube, or move the bolts to the middle of the face and apart",
        );
    }
    outer <= room
}

fn read_shoulder(section: Section<'_>, outer: Option<f64>, seat: Option<Seat>) -> Option<Shoulder> {
    section.must_have(&[
        ("diameter", "of the flange, such as \"30 mm\""),
        ("thickness", "of the flange, such as \"4 mm\""),
    ]);
    let diameter = section.quantity("diameter", Quantity::Length, Bound::SIZE);
    let thickness = section.quantity("thickness", Quantity::Length, plate::THICKNESS);
    if let (Some(diameter), Some(outer)) = (diameter, outer)
        && diameter <= outer
    {
        section.refuse(
            "diameter",
            Code::OutOfRange,
            format!(
                "{} must be above `outer`, {}: {}",
                section.key_name("diameter"),
                millimetres(outer),
                millimetres(diameter)
            ),
            "the flange stands on the outside of the wall",
        );
    }
    if seat == Some(Seat::Inside) {
        section.refuse(
            "diameter",
            Code::Conflict,
            format!(
                "{} belongs to a sleeve inside the walls",
                section.key_name("diameter")
            ),
            "only a sleeve through the walls has a flange outside; take `shoulder` out, or write `seat = \"through\"`",
        );
    }
    section.finish();
    Some(Shoulder {
        diameter: diameter?,
        thickness: thickness?,
    })
}
