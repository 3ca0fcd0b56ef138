//! What the clamp force does between the faces: they must not slip, nor be crushed under the heads.

use super::{Case, Governing, Requirement, worst};
use crate::model::joint::{Base, Joint, Seat, Sleeve};
use crate::model::material::Material;
use crate::strength::bolt::head::pressure;
use crate::study::check::Sense;
use crate::study::joint::LoadedJoint;
use crate::study::joint::coats;
use crate::study::joint::stack::clamped_polymer;
use crate::units::Shown;

/// Moment about z below which a pattern is taken to bear all of it [N m].
const NO_TWIST: f64 = 1e-6;

/// Share of the preload that a clamped layer must leave.
///
/// # Source
/// Common practice: a joint that loses more than a tenth does not stay tight.
const KEPT: f64 = 0.9;

pub(super) fn requirements(case: &Case<'_>) -> Vec<Requirement> {
    let mut found = Vec::new();
    found.extend(slip(case));
    found.extend(twist(case));
    found.extend(head_pressure(case));
    found.extend(coats(case));
    found.extend(polymer(case));
    found
}

/// Clamp force that the face of the worst bolt needs \[N\], when `held` is what friction must hold there.
///
/// # Equation
///   F = S Q/μ + F_A
///
///   S, Q  reserve, force along the face            \[N\]
///   F_A   pull of the bolt, all of it lost to the clamp force \[N\]
///
/// # Source
/// Coulomb; VDI 2230-1:2003, main equation (from memory), with the load coming in at the faces.
pub(super) fn needed(case: &Case<'_>, loaded: &LoadedJoint, more: f64) -> f64 {
    let reserve = case.reserve(loaded, case.joint.factors.slip);
    loaded
        .bolts
        .iter()
        .map(|bolt| {
            reserve * (bolt.shear_size() + more) / case.joint.slip_friction + bolt.axial.max(0.0)
        })
        .fold(0.0, f64::max)
}

fn slip(case: &Case<'_>) -> Option<Requirement> {
    let Governing { load, value, each } =
        worst(case.lasting(), |loaded| needed(case, loaded, 0.0))?;
    let joint = case.joint;
    Some(Requirement {
        id: "slip",
        brief: "clamp against slip",
        title: "clamp force of a bolt that its face needs so as not to slip, reserve included"
            .to_owned(),
        load: Some(load),
        each,
        value,
        limit: case.gripped(),
        sense: Sense::AtMost,
        unit: Shown::Newton,
        advisory: false,
        basis: format!(
            "least clamp force on the face; friction {}, reserve {}, in rare load cases 1 (VDI 2230-1, from memory)",
            joint.slip_friction, joint.factors.slip
        ),
        cure: "more clamp force, bare or blasted faces, bolts further apart, dowels that take the shear",
    })
}

/// A single bolt resists a moment about its own line by the friction below its head alone.
fn twist(case: &Case<'_>) -> Option<Requirement> {
    let moment = |loaded: &LoadedJoint| loaded.untaken[2].abs();
    if !case.lasting().any(|loaded| moment(loaded) > NO_TWIST) {
        return None;
    }
    // The clamp force acts at least as far out as below the head.
    let radius = (case.stack.bearing + case.joint.bolt.hole) / 4.0;
    let Governing { load, value, each } = worst(case.lasting(), |loaded| {
        needed(case, loaded, moment(loaded) / radius)
    })?;
    Some(Requirement {
        id: "twist",
        brief: "clamp against turning",
        title: "clamp force that the face needs so as not to turn about its only bolt".to_owned(),
        load: Some(load),
        each,
        value,
        limit: case.gripped(),
        sense: Sense::AtMost,
        unit: Shown::Newton,
        advisory: false,
        basis: format!(
            "friction {} on a ring as wide as what the head presses, shear and moment added (derived)",
            case.joint.slip_friction
        ),
        cure: "a second bolt, or a stop that keeps the bracket from turning",
    })
}

/// What head and nut press on: the material, the pressure it bears, the ring that is pressed.
fn seats(case: &Case<'_>) -> Vec<(String, f64, [f64; 2])> {
    let joint = case.joint;
    let ring = [case.stack.bearing, joint.bolt.hole];
    let thick = |what: &str, material: &Material| {
        let words = format!("{what} of {}", material.name);
        (words, material.head_pressure.supported, ring)
    };
    let mut seats = Vec::new();
    let plate = joint.plate.as_ref();
    match (&joint.foot, plate) {
        (Some(foot), _) => seats.push(thick("foot", &foot.material)),
        (None, Some(plate)) => seats.push(thick("plate", &plate.material)),
        (None, None) => {}
    }
    match &joint.base {
        Base::Solid(solid) if solid.engagement.is_none() => {
            seats.push(thick("part", &solid.material));
        }
        Base::Solid(_) => {}
        Base::Rail(base) => match (plate.filter(|plate| plate.both_sides), &joint.sleeve) {
            (Some(plate), _) => seats.push(thick("plate", &plate.material)),
            (None, Some(sleeve)) if sleeve.seat == Seat::Through => seats.push((
                format!("end of the sleeve of {}", sleeve.material.name),
                sleeve.material.head_pressure.supported,
                [
                    case.stack.bearing.min(end_of(sleeve)),
                    joint.bolt.hole.max(sleeve.inner),
                ],
            )),
            (None, sleeve) => seats.extend(case.model.rails.get(base.rail).map(|rail| {
                let bears = rail.material.head_pressure;
                let (words, limit) = match sleeve {
                    Some(_) => ("wall over the sleeve", bears.supported),
                    None => ("bare wall", bears.bare),
                };
                (format!("{words}, {}", rail.material.name), limit, ring)
            })),
        },
    }
    seats
}

/// Diameter of the end of a sleeve that a nut stands on \[m\]: its flange when it has one.
fn end_of(sleeve: &Sleeve) -> f64 {
    sleeve
        .shoulder
        .map_or(sleeve.outer, |flange| flange.diameter)
}

fn head_pressure(case: &Case<'_>) -> Option<Requirement> {
    let force = case.preload.hottest();
    let (what, limit, value) = seats(case)
        .into_iter()
        .map(|(what, limit, [outer, inner])| (what, limit, pressure(force, outer, inner)))
        .max_by(|a, b| (a.2 / a.1).total_cmp(&(b.2 / b.1)))?;
    Some(Requirement {
        id: "head-pressure",
        brief: "pressure under head",
        title: format!("pressure under head or nut, tightened most: on the {what}"),
        load: None,
        each: Vec::new(),
        value,
        limit,
        sense: Sense::AtMost,
        unit: Shown::Megapascal,
        advisory: false,
        basis: "pressure that the material bears: the lower list on a bare wall, the higher over a sleeve or a thick part (VDI 2230-1, from memory)".to_owned(),
        cure: "a hard washer or a flange head, a plate below the nut, a smaller preload",
    })
}

/// Coats on clamped faces flow away under the clamp force.
fn coats(case: &Case<'_>) -> Option<Requirement> {
    let lost = case.preload.coats;
    (lost > 0.0).then(|| Requirement {
        id: "coats",
        brief: "loss by the coats",
        title: "preload lost when the coats on the clamped faces have flowed away".to_owned(),
        load: None,
        each: Vec::new(),
        value: lost,
        limit: (1.0 - KEPT) * case.preload.least,
        sense: Sense::AtMost,
        unit: Shown::Newton,
        advisory: true,
        basis: format!(
            "a tenth of the least preload; {:.0} um of coats in all, each counted whole (common practice); counted in every other line",
            coats::thickness(case.joint) * 1e6
        ),
        cure: "strip paint and powder off the clamped faces, seal the edge afterwards, tighten again",
    })
}

/// Whether it is known how the polymer of the joint creeps.
fn has_known_creep(joint: &Joint) -> bool {
    let material = joint.polymer.as_ref().map(|polymer| &polymer.material);
    material.is_some_and(|material| material.long_term_modulus.is_some())
}

fn polymer(case: &Case<'_>) -> Vec<Requirement> {
    let Some(layer) = clamped_polymer(case.joint) else {
        return Vec::new();
    };
    let cure =
        "no polymer in the way of the clamp force: let it locate only, beside a metal sleeve";
    let mut found = vec![Requirement {
        id: "polymer-pressure",
        brief: "pressure on polymer",
        title: "pressure on the polymer in the way of the clamp force".to_owned(),
        load: None,
        each: Vec::new(),
        value: case.preload.hottest() / layer.area,
        limit: layer.yield_strength,
        sense: Sense::AtMost,
        unit: Shown::Megapascal,
        advisory: false,
        basis: "its short-term strength (common practice): beyond it, it is pressed out".to_owned(),
        cure,
    }];
    // What its creep leaves is told as not judged where nothing is known of it.
    if has_known_creep(case.joint) {
        found.push(Requirement {
            id: "polymer-creep",
            brief: "left by the polymer",
            title: "preload that the polymer leaves after a thousand hours".to_owned(),
            load: None,
            each: Vec::new(),
            value: case.preload.retained,
            limit: KEPT,
            sense: Sense::AtLeast,
            unit: Shown::Percent,
            advisory: true,
            basis: "a joint that loses more than a tenth does not stay tight (common practice); the loss is counted in every other line".to_owned(),
            cure,
        });
    }
    found
}
