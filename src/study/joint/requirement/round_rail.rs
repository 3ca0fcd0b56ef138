//! What a round tube must stand from the mount: its wall under foot or plate, and what keeps these from turning about it.

use std::f64::consts::PI;

use super::rail::joins_walls;
use super::{Case, Governing, Requirement, worst};
use crate::model::joint::{Joint, Sleeve};
use crate::model::material::Material;
use crate::strength::rail::RoundRail;
use crate::strength::rail::round_local::{plate_along, punched_line, punched_outline, saddle};
use crate::study::check::Sense;
use crate::study::joint::LoadedJoint;
use crate::study::joint::rail_clamp::RailClamp;
use crate::study::joint::sharing::half_sizes;
use crate::study::joint::touch::Touch;
use crate::units::Shown;

/// Moment about a tube that counts as none [N m]: the friction of any bolt holds it.
const NO_MOMENT: f64 = 0.01;

pub(super) fn requirements(
    case: &Case<'_>,
    rail: &RailClamp,
    material: &Material,
) -> Vec<Requirement> {
    let (Some(base), Some(touch)) = (case.joint.base.rail(), Touch::of(case.joint, Some(rail)))
    else {
        return Vec::new();
    };
    let tube = RoundRail {
        outer: base.face_width,
        wall: base.wall,
    };
    let mut found = Vec::new();
    found.extend(local(case, rail, &tube, touch, material));
    found.extend(across(case, &tube, touch, material));
    found.extend(turn(case, rail, &tube, touch));
    found
}

/// The mount reaction on the wall of the tube: push and moments together, on a saddle or on a line.
///
/// The moment about the tube is left to [`across`] where a line of contact cannot bear it.
fn local(
    case: &Case<'_>,
    rail: &RailClamp,
    tube: &RoundRail,
    touch: Touch,
    material: &Material,
) -> Option<Requirement> {
    let [length, width] = half_sizes(case.joint).map(|half| 2.0 * half);
    let outline = [length, width.min(tube.outer)];
    let reserve = case.joint.factors.yields;
    let yields = material.yield_strength;
    let (faces, words) = if joins_walls(case.joint, rail) {
        (2.0, "both walls, which the welded sleeves join")
    } else {
        (1.0, "one wall")
    };
    let is_saddle = touch == Touch::Saddle;
    let borne = if is_saddle {
        saddle(tube, yields, outline, 1.0)
    } else {
        plate_along(tube, yields, length, 1.0)
    }
    .times(faces / reserve);
    let used = |loaded: &LoadedJoint| {
        let (force, moment) = (loaded.wrench.force, loaded.wrench.moment);
        let onto = reserve / faces;
        let punched = if is_saddle {
            let on_wall = [force.z, moment.y, moment.x].map(|part| part * onto);
            punched_outline(tube, yields, outline, on_wall).unwrap_or(0.0)
        } else {
            let on_wall = [force.z, moment.y].map(|part| part * onto);
            punched_line(tube, yields, length, on_wall)
        };
        borne.used(force.z, moment.y, moment.x).max(punched)
    };
    let Governing { load, value, each } = worst(case.lasting(), used)?;
    let range = if borne.is_within_range {
        ""
    } else {
        "; outside the sizes it was made for"
    };
    let footing = if is_saddle {
        "a saddle (table 7.4)"
    } else {
        "a plate along the tube, which is how a flat foot touches it (table 7.3)"
    };
    Some(Requirement {
        id: "local",
        brief: "foot on the tube",
        title:
            "mount reaction and its moments together, as a load of the foot on the wall of the tube"
                .to_owned(),
        load: Some(load),
        each,
        value,
        limit: 1.0,
        sense: Sense::AtMost,
        unit: Shown::Percent,
        advisory: false,
        basis: format!(
            "EN 1993-1-8, equation 7.3, strength under {footing}, punching included (from memory), {words}, over {reserve}{range}"
        ),
        cure: "a longer foot or a saddle around more of the tube, sleeves through the tube, a mount nearer to the tube",
    })
}

/// The moment about the tube on something flat: the sleeves take it, or nothing does.
///
/// # Equation
///   M ≤ n min(f t D (d − t), f_s W)
///
///   n, D, W    sleeves, outer diameter \[m\], section modulus \[m³\] of one
///   f, f_s     yield strength of tube and sleeve \[Pa\]
///   d, t       outer diameter of the tube, wall  \[m\]
///
/// # Source
/// Derived: a sleeve through both walls bears on the rims of their holes as a couple, and bends
/// between them. Whether the foot stays on the ends of the sleeves is told by the clamp force
/// that the bolts need. What touches a tube along a line tips over it at once.
fn across(
    case: &Case<'_>,
    tube: &RoundRail,
    touch: Touch,
    material: &Material,
) -> Option<Requirement> {
    let joint = case.joint;
    let (limit, basis) = match (touch, &joint.sleeve) {
        (Touch::Saddle, _) => return None,
        (Touch::SleeveEnds { .. }, Some(sleeve)) => (
            by_sleeves(joint, tube, material, sleeve) / joint.factors.yields,
            format!(
                "sleeves through the tube: rims of the holes and bending of the sleeve at yield strength, over {} (derived)",
                joint.factors.yields
            ),
        ),
        _ => (
            0.0,
            "what is flat touches the tube along one line and tips over it: nothing holds against this moment (derived)"
                .to_owned(),
        ),
    };
    let Governing { load, value, each } = worst(case.lasting(), |loaded| {
        let moment = loaded.wrench.moment.x.abs();
        if moment < NO_MOMENT { 0.0 } else { moment }
    })?;
    Some(Requirement {
        id: "local-across",
        brief: "foot across the rail",
        title: "moment of the mount reaction about the tube, under what is flat".to_owned(),
        load: Some(load),
        each,
        value,
        limit,
        sense: Sense::AtMost,
        unit: Shown::NewtonMetre,
        advisory: false,
        basis,
        cure: if joint.plate.is_some() {
            "a plate shaped to the tube (`plate.saddle = true`), or sleeves through it that carry; a mount nearer to the tube"
        } else {
            "a foot shaped to the tube (`bracket.saddle = true`), or sleeves through it that carry; a mount nearer to the tube"
        },
    })
}

/// Moment about the tube that the sleeves of all bolts bear [N m].
fn by_sleeves(joint: &Joint, tube: &RoundRail, material: &Material, sleeve: &Sleeve) -> f64 {
    let rims = material.yield_strength * tube.wall * sleeve.outer * (tube.outer - tube.wall);
    let modulus = PI / 32.0 * (sleeve.outer.powi(4) - sleeve.inner.powi(4)) / sleeve.outer;
    let bent = sleeve.material.yield_strength * modulus;
    joint.pattern.len() as f64 * rims.min(bent)
}

/// Clamp force that keeps a saddle from sliding round the tube.
///
/// # Equation
///   F = S √(Q_x² + (Q_y + M/(n R))²)/μ + F_A
///
///   S, μ       reserve, friction coefficient
///   Q_x, Q_y   force of a bolt along the tube and across it  \[N\]
///   M, n, R    moment about x of the joint face [N m], bolts, outer radius of the tube \[m\]
///   F_A        pull of the bolt \[N\]
///
/// # Range
/// On the safe side where force and moment turn against each other. A weld, or sleeves through
/// the tube, hold by themselves.
///
/// # Source
/// Derived: what presses on a tube presses to its axis and resists no moment about it; that
/// about the axis, Q R + M, is left to the friction on its surface.
fn turn(case: &Case<'_>, rail: &RailClamp, tube: &RoundRail, touch: Touch) -> Option<Requirement> {
    let joint = case.joint;
    if touch != Touch::Saddle || joint.weld.is_some() || rail.sleeve.is_some_and(|one| one.carries)
    {
        return None;
    }
    let arms = joint.pattern.len() as f64 * tube.outer / 2.0;
    let needed = |loaded: &LoadedJoint| {
        let around = loaded.wrench.moment.x.abs() / arms;
        let reserve = case.reserve(loaded, joint.factors.slip);
        let of_bolt = |bolt: &crate::strength::pattern::BoltForce| {
            let [along, across] = bolt.shear;
            reserve * along.hypot(across.abs() + around) / joint.slip_friction + bolt.axial.max(0.0)
        };
        loaded.bolts.iter().map(of_bolt).fold(0.0, f64::max)
    };
    let Governing { load, value, each } = worst(case.lasting(), needed)?;
    Some(Requirement {
        id: "turn",
        brief: "turning on the tube",
        title: "clamp force of a bolt that a saddle needs so as not to slide round the tube, reserve included".to_owned(),
        load: Some(load),
        each,
        value,
        limit: case.gripped(),
        sense: Sense::AtMost,
        unit: Shown::Newton,
        advisory: false,
        basis: format!(
            "least clamp force on the face; friction {}, reserve {}, in rare load cases 1; the moment about the tube held by friction at its radius (derived)",
            joint.slip_friction, joint.factors.slip
        ),
        cure: "sleeves through the tube, a weld, more clamp force, a mount nearer to the tube",
    })
}
