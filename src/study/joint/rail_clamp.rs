//! What the clamp force of a bolt does to a hollow rail, with a sleeve in it and without.

use crate::model::Model;
use crate::model::joint::{Base, Joint, Plate};
use crate::model::rail::Profile;
use crate::strength::column::Curve;
use crate::strength::plate::strip::{Held, Strip};
use crate::strength::rail::box_squeeze::BoxSqueeze;
use crate::strength::rail::face::{self, LOOSE_WASHER};
use crate::strength::rail::local::{box_peak, near_cut_end, round_peak};
use crate::strength::rail::punching;
use crate::strength::rail::round_squeeze::RoundSqueeze;
use crate::strength::rail::side_wall::{self, Loading};
use crate::strength::rail::{BoxRail, Patch, RoundRail};
use crate::strength::sleeve::Sleeve as Tube;
use crate::strength::sleeve::gap::{allowed_gap, tightened};
use crate::strength::sleeve::proud::proud;

use super::preload::Preload;

/// A rail squeezed by one bolt; forces \[N\] of one bolt.
#[derive(Debug, Clone, PartialEq)]
pub struct RailClamp {
    /// What presses on a wall.
    pub patch: Patch,
    /// Length of rail that works with the patch \[m\].
    pub effective_length: f64,
    /// Whether the fit for that length was made for such sizes.
    pub is_within_range: bool,
    /// Rate of the walls against being squeezed [N/m].
    pub squeeze_rate: f64,
    /// Rate that a gap of the sleeve closes against: walls and the plates on them [N/m].
    pub closing_rate: f64,
    /// Clamp force at which the faces yield first.
    pub first_yield: f64,
    /// Clamp force that folds the section between the clamped faces.
    pub plastic: f64,
    /// Push on one face that makes it fold, and that the patch punches through it, and that side walls bear; `None` for a round rail.
    pub face: Option<f64>,
    /// Push that punches the patch through the wall.
    pub punching: f64,
    /// Squeeze that the side walls bear under a patch over the whole face; `None` for a round rail.
    pub side_walls: Option<f64>,
    /// What the sleeve does; `None` without one.
    pub sleeve: Option<SleeveShare>,
    /// Force in the walls at the most preload.
    pub walls: f64,
}

/// A sleeve under the most preload.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SleeveShare {
    /// Force that closes its gap, in the walls before it carries \[N\]; 0 when proud.
    pub gap_force: f64,
    /// Force in it \[N\].
    pub force: f64,
    /// Stress in it \[Pa\].
    pub stress: f64,
    /// Largest gap at which it still carries and nothing yields \[m\].
    pub allowed_gap: f64,
    /// Whether it stands proud of the faces, so that the bracket sits on its ends alone.
    pub is_proud: bool,
}

/// A rail squeezed between two opposite patches.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Squeeze {
    pub(super) patch: Patch,
    pub(super) rate: f64,
    effective_length: f64,
    is_within_range: bool,
    first_yield: f64,
    plastic: f64,
}

/// Squeeze of the rail by one bolt; `None` on a solid part, and for an open channel, whose flanges nothing holds apart.
pub(super) fn squeeze(model: &Model, joint: &Joint) -> Option<Squeeze> {
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
            let fitted = crate::strength::rail::box_squeeze::effective_length(&rail, &patch);
            let end = base
                .edge
                .and_then(|edge| near_cut_end(&rail, edge))
                .unwrap_or(1.0);
            let peak = box_peak(&rail, &patch).map_or(1.0, |peak| peak.stress.max(1.0));
            Squeeze {
                patch,
                rate: squeezed.stiffness(modulus) * end,
                effective_length: fitted.length,
                is_within_range: fitted.is_within_range,
                first_yield: squeezed.first_yield(yields) / peak * end,
                plastic: squeezed.plastic_load(yields) * end,
            }
        }
        Profile::Round { diameter } => {
            let rail = RoundRail {
                outer: diameter,
                wall: base.wall,
            };
            let squeezed = RoundSqueeze::under(rail, patch);
            let fitted = crate::strength::rail::round_squeeze::effective_length(&rail, &patch);
            let peak = round_peak(&rail, &patch).map_or(1.0, |peak| peak.stress.max(1.0));
            Squeeze {
                patch,
                rate: squeezed.stiffness(modulus),
                effective_length: fitted.length,
                is_within_range: fitted.is_within_range,
                first_yield: squeezed.first_yield(yields) / peak,
                plastic: squeezed.plastic_load(yields),
            }
        }
    };
    Some(squeeze)
}

/// The box that the bolts cross, its pressed face first.
pub(super) fn box_rail(joint: &Joint) -> Option<BoxRail> {
    let base = joint.base.rail()?;
    Some(BoxRail {
        face: base.face_width,
        height: base.depth,
        wall: base.wall,
    })
}

/// What one bolt presses on the wall: its share of the plate, or its head or washer spread through the foot at 45°.
fn patch(joint: &Joint, face_width: f64) -> Patch {
    let bearing = joint
        .washer
        .as_ref()
        .map_or(joint.bolt.thread.head_bearing, |washer| {
            washer.diameter + 2.0 * washer.thickness
        });
    if let Some(plate) = &joint.plate {
        let spread = bearing + 2.0 * plate.thickness;
        return Patch {
            length: spread.min(plate.length),
            width: spread.min(plate.width).min(face_width),
        };
    }
    let spread = bearing
        + joint
            .foot
            .as_ref()
            .map_or(0.0, |foot| 2.0 * foot.thickness);
    Patch {
        length: spread,
        width: spread.min(face_width),
    }
}

/// Rate against which a gap closes: at each side the face, and the plate on it when it stands on the side walls.
///
/// # Equation
///   1/k = 1/(2 k_r + k_p) + 1/(2 k_r + k_p')
///
/// # Source
/// Derived: each side closes half of what the whole does, against its face
/// (twice the rate of the whole rail) and its plate as a beam between the side walls.
fn closing_rate(joint: &Joint, squeeze: &Squeeze) -> f64 {
    let stands = |plate: &&Plate| {
        joint
            .base
            .rail()
            .is_some_and(|base| plate.width >= base.face_width - 2.0 * base.wall)
    };
    let of_plate = |plate: &Plate| {
        let span = joint
            .base
            .rail()
            .map_or(plate.width, |base| base.face_width - base.wall);
        Strip {
            span,
            width: plate.length / joint.pattern.len().max(1) as f64,
            thickness: plate.thickness,
            held: Held::Resting,
        }
        .stiffness(plate.material.youngs_modulus)
    };
    let plate = joint.plate.as_ref().filter(stands);
    let near = 2.0 * squeeze.rate + plate.map_or(0.0, of_plate);
    let far = 2.0 * squeeze.rate
        + plate
            .filter(|plate| plate.both_sides)
            .map_or(0.0, of_plate);
    near * far / (near + far)
}

impl RailClamp {
    pub(super) fn of(model: &Model, joint: &Joint, preload: &Preload) -> Option<Self> {
        let squeeze = squeeze(model, joint)?;
        let base = joint.base.rail()?;
        let rail = model.rails.get(base.rail)?;
        let material = &rail.material;
        let shape = matches!(rail.profile, Profile::Box { .. })
            .then(|| box_rail(joint))
            .flatten();
        let loose = if joint.plate.is_some() { 1.0 } else { LOOSE_WASHER };
        let closing = closing_rate(joint, &squeeze);
        let sleeve = joint
            .sleeve
            .as_ref()
            .map(|sleeve| sleeve_share(sleeve, base.depth, preload, closing, &squeeze));
        Some(Self {
            patch: squeeze.patch,
            effective_length: squeeze.effective_length,
            is_within_range: squeeze.is_within_range,
            squeeze_rate: squeeze.rate,
            closing_rate: closing,
            first_yield: squeeze.first_yield,
            plastic: squeeze.plastic,
            face: shape.map(|rail| {
                face::strength(&rail, &squeeze.patch, material.yield_strength, loose).force
            }),
            punching: punching::round(
                squeeze.patch.width.min(squeeze.patch.length),
                base.wall,
                material.tensile_strength,
            ),
            side_walls: shape.map(|rail| {
                side_wall::strength(
                    &rail,
                    squeeze.patch.length,
                    material.youngs_modulus,
                    material.yield_strength,
                    Loading::Squeeze,
                    Curve::C,
                )
            }),
            walls: sleeve.map_or(preload.hottest(), |share| preload.hottest() - share.force),
            sleeve,
        })
    }
}

fn sleeve_share(
    sleeve: &crate::model::joint::Sleeve,
    depth: f64,
    preload: &Preload,
    closing: f64,
    squeeze: &Squeeze,
) -> SleeveShare {
    let tube = Tube {
        outer: sleeve.outer,
        inner: sleeve.inner,
        length: depth,
    };
    let rate = tube.stiffness(sleeve.material.youngs_modulus);
    let most = preload.hottest();
    let (gap_force, force) = if sleeve.gap < 0.0 {
        (0.0, proud(&tube, -sleeve.gap, most, rate, closing).sleeve)
    } else {
        let share = tightened(most, sleeve.gap, closing, rate);
        (share.gap_force, share.sleeve)
    };
    SleeveShare {
        gap_force,
        force,
        stress: force / tube.area(),
        allowed_gap: allowed_gap(preload.clamp(), squeeze.first_yield, closing).smaller(),
        is_proud: sleeve.gap < 0.0,
    }
}
