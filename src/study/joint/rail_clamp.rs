//! What the clamp force of a bolt does to a hollow rail, with a sleeve in it and without.

mod squeeze;

pub(super) use squeeze::{Squeeze, far_hold, far_plate, left_at_end, to_cut_end, wall_hole};

use crate::model::Model;
use crate::model::joint::{Joint, Plate, Seat, Sleeve};
use crate::model::rail::Profile;
use crate::strength::column::Curve;
use crate::strength::plate::strip::{Held, Strip};
use crate::strength::rail::face::{self, LOOSE_WASHER};
use crate::strength::rail::punching;
use crate::strength::rail::side_wall::{self, Loading};
use crate::strength::rail::{BoxRail, Patch};
use crate::strength::sleeve::Sleeve as Tube;
use crate::strength::sleeve::gap::{allowed_gap, tightened};
use crate::strength::sleeve::proud::proud;
use crate::strength::sleeve::stress::stress;

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
    /// Rate that a gap of the sleeve closes against: walls and the plates that stand on them [N/m].
    pub closing_rate: f64,
    /// Share of the force on the walls that the worse face bends under, 0 to 1; the rest goes by a plate to the side walls.
    pub face_share: f64,
    /// Share of the force on the walls that the near plate takes as it bends; `None` where none stands on the side walls.
    pub plate_share: Option<f64>,
    /// Clamp force at which the faces yield first, were it all on them.
    pub first_yield: f64,
    /// Clamp force that folds the section between the clamped faces, were it all on them.
    pub plastic: f64,
    /// Push on one face that makes it fold; `None` for a round rail.
    pub face: Option<f64>,
    /// Push that punches the patch through the wall.
    pub punching: f64,
    /// Squeeze that both side walls bear; `None` where no plate stands on them.
    pub side_walls: Option<f64>,
    /// What the sleeve does; `None` without one.
    pub sleeve: Option<SleeveShare>,
    /// Force in the walls, and in the plates that stand on them, at the most preload.
    pub walls: f64,
    /// Least clamp force that presses bracket or plate on the rail itself: all of it, but past a loose sleeve through the walls.
    pub gripped: f64,
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
    /// Largest gap at which it still carries and neither wall nor plate yields \[m\].
    pub allowed_gap: f64,
    /// Whether the most preload closes its gap; else the walls carry all.
    pub carries: bool,
    /// Whether it stands proud of the faces, so that the bracket sits on its ends alone.
    pub is_proud: bool,
}

/// Rate against which both sides of the rail close [N/m]; `None` on a solid part and for an open channel.
pub(super) fn closing(model: &Model, joint: &Joint) -> Option<f64> {
    let squeeze = Squeeze::of(model, joint)?;
    let base = joint.base.rail()?;
    let is_box = matches!(model.rails.get(base.rail)?.profile, Profile::Box { .. });
    let shape = is_box.then(|| box_rail(joint)).flatten();
    Some(Sides::of(joint, shape.as_ref(), &squeeze).closing())
}

/// The box that the bolts cross, with the face they enter by as the loaded one.
pub(super) fn box_rail(joint: &Joint) -> Option<BoxRail> {
    let base = joint.base.rail()?;
    Some(BoxRail {
        face: base.face_width,
        height: base.depth,
        wall: base.wall,
    })
}

/// Whether a plate reaches from side wall to side wall of a box rail.
pub(super) fn stands_on_side_walls(plate: &Plate, rail: &BoxRail) -> bool {
    plate.width >= rail.face - 2.0 * rail.wall
}

/// A plate as a beam from side wall to side wall, as long along the rail as belongs to one bolt.
pub(super) fn beam(plate: &Plate, rail: &BoxRail, bolts: usize) -> Strip {
    Strip {
        span: rail.middle_width(),
        width: plate.length / bolts.max(1) as f64,
        thickness: plate.thickness,
        held: Held::Resting,
    }
}

/// The two sides of a squeezed rail, near and far, each a face with what may stand on it.
struct Sides {
    /// Rates of the faces [N/m].
    faces: [f64; 2],
    /// Rates of the plates that stand on the side walls; 0 where none does [N/m].
    plates: [f64; 2],
}

impl Sides {
    fn of(joint: &Joint, rail: Option<&BoxRail>, squeeze: &Squeeze) -> Self {
        let rate = |plate: Option<&Plate>| {
            plate
                .zip(rail)
                .filter(|(plate, rail)| stands_on_side_walls(plate, rail))
                .map_or(0.0, |(plate, rail)| {
                    beam(plate, rail, joint.pattern.len()).stiffness(plate.material.youngs_modulus)
                })
        };
        Self {
            faces: squeeze.faces,
            plates: [joint.plate.as_ref(), far_plate(joint)].map(rate),
        }
    }

    /// Rate against which both sides close.
    ///
    /// # Equation
    ///   1/k = 1/(k_f + k_p) + 1/(k_f' + k_p')
    ///
    ///   k_f, k_f' faces of the two sides, each twice the squeeze stiffness of the whole [N/m]
    ///   k_p, k_p' plates of the two sides, 0 for none [N/m]
    ///
    /// # Source
    /// Derived: at each side face and plate beside each other, the sides in series.
    fn closing(&self) -> f64 {
        let [near, far] = self.both(|face, plate| face + plate);
        near * far / (near + far)
    }

    /// Share of the force that the worse face takes.
    fn face_share(&self) -> f64 {
        let shares = self.both(|face, plate| face / (face + plate));
        shares.into_iter().fold(0.0, f64::max)
    }

    /// Share of the force that a plate on the side walls takes; `None` where none stands there.
    fn plate_share(&self) -> Option<f64> {
        let [near, _] = self.both(|face, plate| plate / (face + plate));
        (near > 0.0).then_some(near)
    }

    fn both(&self, of: impl Fn(f64, f64) -> f64) -> [f64; 2] {
        std::array::from_fn(|side| {
            let at = |rates: &[f64; 2]| rates.get(side).copied().unwrap_or_default();
            of(at(&self.faces), at(&self.plates))
        })
    }
}

impl RailClamp {
    /// Force at which a wall that stands alone folds: hinges of the section, or of the face of a box \[N\].
    #[must_use]
    pub fn folds(&self) -> f64 {
        self.face
            .map_or(self.plastic, |face| face.min(self.plastic))
    }

    pub(super) fn of(model: &Model, joint: &Joint, preload: &Preload) -> Option<Self> {
        let squeeze = Squeeze::of(model, joint)?;
        let base = joint.base.rail()?;
        let rail = model.rails.get(base.rail)?;
        let material = &rail.material;
        let shape = matches!(rail.profile, Profile::Box { .. })
            .then(|| box_rail(joint))
            .flatten();
        let sides = Sides::of(joint, shape.as_ref(), &squeeze);
        let loose = if sides.plates.contains(&0.0) {
            LOOSE_WASHER
        } else {
            1.0
        };
        let face_yield = squeeze.first_yield / sides.face_share();
        let plate_yield = shape.zip(joint.plate.as_ref()).and_then(|(rail, plate)| {
            let strip = beam(plate, &rail, joint.pattern.len());
            let share = sides.plate_share()?;
            Some(strip.first_yield(plate.material.yield_strength) / share)
        });
        let first_yield = plate_yield.map_or(face_yield, |plate| plate.min(face_yield));
        let sleeve = joint
            .sleeve
            .as_ref()
            .map(|sleeve| sleeve_share(sleeve, preload, &sides, first_yield));
        Some(Self {
            patch: squeeze.patch,
            effective_length: squeeze.effective_length,
            is_within_range: squeeze.is_within_range,
            squeeze_rate: squeeze.rate(),
            closing_rate: sides.closing(),
            face_share: sides.face_share(),
            plate_share: sides.plate_share(),
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
            side_walls: shape
                .zip(joint.plate.as_ref())
                .filter(|(rail, plate)| stands_on_side_walls(plate, rail))
                .map(|(rail, plate)| {
                    side_wall::strength(
                        &rail,
                        beam(plate, &rail, joint.pattern.len()).width,
                        material.youngs_modulus,
                        material.yield_strength,
                        Loading::Squeeze,
                        Curve::C,
                    )
                }),
            walls: sleeve.map_or(preload.hottest(), |share| preload.hottest() - share.force),
            gripped: gripped(joint, preload, sides.closing()),
            sleeve,
        })
    }
}

fn tube(sleeve: &Sleeve) -> Tube {
    Tube {
        outer: sleeve.outer,
        inner: sleeve.inner,
        length: sleeve.length,
    }
}

fn sleeve_share(
    sleeve: &Sleeve,
    preload: &Preload,
    sides: &Sides,
    first_yield: f64,
) -> SleeveShare {
    let (tube, closing) = (tube(sleeve), sides.closing());
    let rate = tube.stiffness(sleeve.material.youngs_modulus);
    let most = preload.hottest();
    let is_proud = sleeve.gap < 0.0;
    let (gap_force, force) = if is_proud {
        (0.0, proud(&tube, -sleeve.gap, most, rate, closing).sleeve)
    } else {
        let share = tightened(most, sleeve.gap, closing, rate);
        (share.gap_force, share.sleeve)
    };
    let allowed = allowed_gap(preload.least, first_yield, closing);
    // Plates on both sides that stand on the side walls clamp there as well: only yield limits the gap.
    let allowed_gap = if sides.plates.contains(&0.0) {
        allowed.smaller()
    } else {
        allowed.by_yield
    };
    SleeveShare {
        gap_force,
        force,
        stress: stress(&tube, force),
        allowed_gap,
        carries: force > 0.0,
        is_proud,
    }
}

/// Clamp force on the rail itself: what a loose sleeve through the walls carries goes past them, since it slides in its holes.
///
/// A flange changes nothing of that: it lies outside the far wall, under the nut.
fn gripped(joint: &Joint, preload: &Preload, closing: f64) -> f64 {
    let clamp = preload.clamp();
    match &joint.sleeve {
        Some(sleeve) if is_loose(sleeve) => {
            let tube = tube(sleeve);
            let rate = tube.stiffness(sleeve.material.youngs_modulus);
            if sleeve.gap < 0.0 {
                proud(&tube, -sleeve.gap, clamp, rate, closing).walls
            } else {
                clamp - tightened(clamp, sleeve.gap, closing, rate).sleeve
            }
        }
        _ => clamp,
    }
}

/// Whether a sleeve may slide through the walls.
pub(super) fn is_loose(sleeve: &Sleeve) -> bool {
    sleeve.seat == Seat::Through && sleeve.weld.is_none()
}
