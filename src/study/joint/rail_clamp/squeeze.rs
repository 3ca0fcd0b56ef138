//! How a hollow rail gives between the two patches that one bolt presses on it.

use super::box_rail;
use crate::model::Model;
use crate::model::joint::{Base, Joint, Plate};
use crate::model::rail::Profile;
use crate::strength::rail::box_squeeze::{self, BoxSqueeze};
use crate::strength::rail::local::{HoleEffect, box_peak, near_cut_end, round_peak, with_hole};
use crate::strength::rail::round_squeeze::{self, RoundSqueeze};
use crate::strength::rail::{BoxRail, Patch, RoundRail};

/// A rail squeezed between two opposite patches.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::study::joint) struct Squeeze {
    pub(super) patch: Patch,
    /// Rates of the near and the far face, each against its half of the closing [N/m].
    pub(super) faces: [f64; 2],
    pub(super) effective_length: f64,
    pub(super) is_within_range: bool,
    /// Of the face that yields first \[N\].
    pub(super) first_yield: f64,
    pub(super) plastic: f64,
}

/// Share of its strength that a rail keeps with a bolt nearer to its cut end than was computed.
///
/// # Source
/// Below the least value of [`near_cut_end`]; our own reasoning, no source.
const AT_CUT_END: f64 = 0.5;

/// Peak of stress under a patch smaller than was computed.
///
/// # Source
/// Above the largest value of [`box_peak`] and [`round_peak`]; our own reasoning, no source.
const SHARPEST: f64 = 2.0;

/// Rings under a nut that a hole was computed with, in diameters of the hole.
///
/// # Source
/// [`with_hole`]: 20 mm on 11 mm and 30 mm on 20 mm, rounded outwards.
const RINGS: std::ops::RangeInclusive<f64> = 1.49..=1.82;

/// What a hole larger than was computed leaves.
///
/// # Source
/// Below the least stiffness of [`with_hole`], with its largest stress; our own reasoning, no source.
const LARGEST_HOLE: HoleEffect = HoleEffect {
    stiffness: 0.6,
    stress: 1.75,
};

/// Share of its strength that a box rail keeps so near to its cut end \[m\].
pub(in crate::study::joint) fn left_at_end(rail: &BoxRail, distance: f64) -> f64 {
    near_cut_end(rail, distance).unwrap_or(AT_CUT_END)
}

/// From the bolt nearest to the cut end of the rail to that end \[m\]; `None` where it is far away.
pub(in crate::study::joint) fn to_cut_end(joint: &Joint) -> Option<f64> {
    let far = |far: f64, [x, _]: &[f64; 2]| far.max(x.abs());
    Some(joint.base.rail()?.edge? - joint.pattern.iter().fold(0.0, far))
}

impl Squeeze {
    /// Squeeze of the rail by one bolt; `None` on a solid part, and for an open channel, whose flanges nothing holds apart.
    pub(in crate::study::joint) fn of(model: &Model, joint: &Joint) -> Option<Self> {
        let Base::Rail(base) = &joint.base else {
            return None;
        };
        let rail = model.rails.get(base.rail)?;
        let (modulus, yields) = (rail.material.youngs_modulus, rail.material.yield_strength);
        let patch = patch(joint, base.face_width);
        let squeeze = match rail.profile {
            Profile::Channel { .. } => return None,
            Profile::Box { .. } => {
                let rail = box_rail(joint)?;
                let squeezed = BoxSqueeze::under(rail, patch);
                let fitted = box_squeeze::effective_length(&rail, &patch);
                let end = to_cut_end(joint).map_or(Some(1.0), |end| near_cut_end(&rail, end));
                let peak = box_peak(&rail, &patch);
                let is_within_range = fitted.is_within_range && end.is_some() && peak.is_some();
                let end = end.unwrap_or(AT_CUT_END);
                let peak = peak.map_or(SHARPEST, |peak| peak.stress.max(1.0));
                // Each face closes half of what the whole rail does.
                let face = 2.0 * squeezed.stiffness(modulus) * end;
                Self {
                    patch,
                    faces: [face; 2],
                    effective_length: fitted.length,
                    is_within_range,
                    first_yield: squeezed.first_yield(yields) / peak * end,
                    plastic: squeezed.plastic_load(yields) * end,
                }
                .with_hole_in_far_face(joint, Some(&rail))
            }
            Profile::Round { diameter } => {
                let rail = RoundRail {
                    outer: diameter,
                    wall: base.wall,
                };
                let squeezed = RoundSqueeze::under(rail, patch);
                let fitted = round_squeeze::effective_length(&rail, &patch);
                let peak = round_peak(&rail, &patch);
                let is_within_range = fitted.is_within_range && peak.is_some();
                let peak = peak.map_or(SHARPEST, |peak| peak.stress.max(1.0));
                Self {
                    patch,
                    faces: [2.0 * squeezed.stiffness(modulus); 2],
                    effective_length: fitted.length,
                    is_within_range,
                    first_yield: squeezed.first_yield(yields) / peak,
                    plastic: squeezed.plastic_load(yields),
                }
                .with_hole_in_far_face(joint, None)
            }
        };
        Some(squeeze)
    }

    /// Force for each metre by which the whole rail closes [N/m].
    ///
    /// # Source
    /// Derived: both faces in series.
    pub(in crate::study::joint) fn rate(&self) -> f64 {
        let [near, far] = self.faces;
        near * far / (near + far)
    }

    /// The same with the hole of the far face, where nut, washer or flange presses on its rim.
    ///
    /// The near face lies under a foot or a plate, which spreads the force far beyond the hole; so
    /// does a plate on the far face. What is left is the far wall around the hole of bolt or
    /// sleeve. It matters also where a sleeve carries: until its gap has closed the wall bends.
    /// Hinges of the whole section are not told to suffer. Of a round tube with a hole nothing is
    /// known, so it counts as plain and the range says so.
    fn with_hole_in_far_face(mut self, joint: &Joint, rail: Option<&BoxRail>) -> Self {
        if far_plate(joint).is_some() {
            return self;
        }
        let Some(rail) = rail else {
            self.is_within_range = false;
            return self;
        };
        let hole = wall_hole(joint);
        let known = with_hole(rail, hole);
        let effect = known.unwrap_or(LARGEST_HOLE);
        let is_ring = RINGS.contains(&(far_press(joint) / hole));
        self.is_within_range &= known.is_some() && is_ring;
        self.faces[1] *= effect.stiffness;
        self.first_yield /= effect.stress;
        self
    }
}

/// Diameter of the holes in the walls \[m\].
pub(in crate::study::joint) fn wall_hole(joint: &Joint) -> f64 {
    joint
        .sleeve
        .as_ref()
        .map_or(joint.bolt.hole, |sleeve| sleeve.hole)
}

/// The plate that lies on the far wall; one over the flange of a sleeve does not touch it.
pub(in crate::study::joint) fn far_plate(joint: &Joint) -> Option<&Plate> {
    let has_flange = joint
        .sleeve
        .as_ref()
        .is_some_and(|sleeve| sleeve.shoulder.is_some());
    joint
        .plate
        .as_ref()
        .filter(|plate| plate.both_sides && !has_flange)
}

/// What one bolt presses on a wall, spread through the washer and at 45° through the far plate: the smaller patch of the two sides, which is that of the nut.
fn patch(joint: &Joint, face_width: f64) -> Patch {
    let bearing = far_press(joint);
    let (length, width) = match far_plate(joint) {
        Some(plate) => {
            let spread = bearing + 2.0 * plate.thickness;
            (spread.min(plate.length), spread.min(plate.width))
        }
        None => (bearing, bearing),
    };
    Patch {
        length,
        width: width.min(face_width),
    }
}

/// Diameter on which the far wall is pressed, or the plate on it: by the flange of a sleeve, else by the nut \[m\].
pub(in crate::study::joint) fn far_press(joint: &Joint) -> f64 {
    let shoulder = joint.sleeve.as_ref().and_then(|sleeve| sleeve.shoulder);
    shoulder.map_or_else(|| nut_patch(joint), |flange| flange.diameter)
}

/// Diameter that holds the far wall when the bolt is pulled: the flange of a sleeve, the whole washer, else the nut \[m\].
pub(in crate::study::joint) fn far_hold(joint: &Joint) -> f64 {
    let shoulder = joint.sleeve.as_ref().and_then(|sleeve| sleeve.shoulder);
    let washer = joint.washer.map(|washer| washer.diameter);
    shoulder
        .map(|flange| flange.diameter)
        .or(washer)
        .unwrap_or(joint.bolt.thread.head_bearing)
}

/// Diameter on which a nut presses on what is below its washer \[m\].
fn nut_patch(joint: &Joint) -> f64 {
    joint
        .washer
        .as_ref()
        .map_or(joint.bolt.thread.head_bearing, |washer| {
            washer.pressed(joint.bolt.thread.head_bearing)
        })
}
