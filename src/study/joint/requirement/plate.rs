//! What the parts around the holes must stand once the faces slip, and how far from the edge a hole must be.

use super::{Case, Governing, Requirement, worst};
use crate::model::joint::{Base, Joint, Seat};
use crate::model::material::Material;
use crate::strength::bolt::resistance::SAFETY;
use crate::strength::plate::bearing::{self, Hole};
use crate::strength::plate::edge_distance::smallest;
use crate::study::check::Sense;
use crate::study::joint::LoadedJoint;
use crate::units::Shown;

/// Distance from a hole to the edges of a part whose outline is not in the file, over its diameter.
///
/// # Source
/// Common practice.
const USUAL_EDGE: f64 = 2.0;

pub(super) fn requirements(case: &Case<'_>) -> Vec<Requirement> {
    let mut found = Vec::new();
    found.extend(bearing(case));
    found.extend(edges(case.joint));
    found.extend(spacing(case.joint));
    found
}

/// A part that the shear goes through: its name, material, thickness, and what bears on its hole.
struct Ply<'a> {
    name: &'static str,
    material: &'a Material,
    thickness: f64,
    pin: f64,
    hole: f64,
    /// To end and edge of the part \[m\].
    end: f64,
    edge: f64,
}

fn plies<'a>(case: &Case<'a>) -> Vec<Ply<'a>> {
    let joint = case.joint;
    let (pin, hole) = (joint.bolt.thread.nominal, joint.bolt.hole);
    let usual = USUAL_EDGE * hole;
    let mut plies = Vec::new();
    let mut ply = |name, material, thickness, [pin, hole]: [f64; 2], [end, edge]: [f64; 2]| {
        plies.push(Ply {
            name,
            material,
            thickness,
            pin,
            hole,
            end,
            edge,
        });
    };
    if let Some(foot) = &joint.foot {
        let to = [usual, usual];
        ply("foot", &foot.material, foot.thickness, [pin, hole], to);
    }
    if let (Some(plate), Some([end, edge])) = (&joint.plate, to_plate_edges(joint)) {
        let to = [end, edge];
        ply("plate", &plate.material, plate.thickness, [pin, hole], to);
    }
    match &joint.base {
        Base::Solid(solid) if solid.engagement.is_none() => {
            let to = [usual, usual];
            ply("part", &solid.material, solid.thickness, [pin, hole], to);
        }
        Base::Solid(_) => {}
        Base::Rail(base) => {
            // A sleeve that goes through the wall bears on it in place of the bolt.
            let sleeve = joint.sleeve.as_ref();
            let pair = match sleeve.filter(|sleeve| sleeve.seat == Seat::Through) {
                Some(sleeve) => [sleeve.outer; 2],
                None => [pin, hole],
            };
            let far = 2.0 * USUAL_EDGE * pair[1];
            let to_end = base.edge.map_or(far, |edge| {
                edge - joint
                    .pattern
                    .iter()
                    .fold(0.0, |x: f64, at| x.max(at[0].abs()))
            });
            let across = joint
                .pattern
                .iter()
                .fold(0.0, |y: f64, at| y.max(at[1].abs()));
            let to = [to_end.max(0.0), (base.face_width / 2.0 - across).max(0.0)];
            if let Some(rail) = case.model.rails.get(base.rail) {
                ply("wall of the rail", &rail.material, base.wall, pair, to);
            }
        }
    }
    plies
}

/// Bearing of bolt or sleeve on the weakest hole, once the faces have slipped.
fn bearing(case: &Case<'_>) -> Option<Requirement> {
    let joint = case.joint;
    let next = nearest(joint);
    let strength = |ply: &Ply<'_>| {
        let hole = Hole {
            bolt: ply.pin,
            hole: ply.hole,
            thickness: ply.thickness,
            // The shear may point any way, so the nearer edge counts as the end.
            end: ply.end.min(ply.edge),
            edge: ply.end.min(ply.edge),
            pitch: next,
            gauge: next,
        };
        let tensile = ply.material.tensile_strength;
        bearing::strength(&hole, tensile, joint.bolt.limits.tensile).max(0.0) / SAFETY
    };
    let (limit, ply) = plies(case)
        .into_iter()
        .map(|ply| (strength(&ply), ply))
        .min_by(|a, b| a.0.total_cmp(&b.0))?;
    let Governing { load, value, each } = worst(case.loads.iter(), LoadedJoint::most_sheared)?;
    Some(Requirement {
        id: "bearing",
        title: format!(
            "bolt or sleeve against the hole of the {}, once the faces slip",
            ply.name
        ),
        load: Some(load),
        each,
        value,
        limit,
        sense: Sense::AtMost,
        unit: Shown::Newton,
        advisory: false,
        basis: format!(
            "EN 1993-1-8, table 3.4 (from memory), safety factor 1.25, {:.0} mm to the nearest edge",
            ply.end.min(ply.edge) * 1e3
        ),
        cure: "a thicker part, more edge, larger or more bolts",
    })
}

/// Distances of the outer holes from the ends and edges of the plate \[m\]; `None` without a plate.
fn to_plate_edges(joint: &Joint) -> Option<[f64; 2]> {
    let plate = joint.plate.as_ref()?;
    let left = |half: f64, axis: usize| {
        joint
            .pattern
            .iter()
            .filter_map(|place| place.get(axis))
            .map(|at| half - at.abs())
            .fold(f64::INFINITY, f64::min)
    };
    Some([left(plate.length / 2.0, 0), left(plate.width / 2.0, 1)])
}

/// Distance between the two bolts that are nearest to each other \[m\]; `None` for a single bolt.
fn nearest(joint: &Joint) -> Option<f64> {
    let places = joint.pattern.iter().enumerate();
    places
        .flat_map(|(at, [x, y])| {
            let others = joint.pattern.iter().skip(at + 1);
            others.map(move |[u, v]| (x - u).hypot(y - v))
        })
        .min_by(f64::total_cmp)
}

fn edges(joint: &Joint) -> Option<Requirement> {
    let [end, edge] = to_plate_edges(joint)?;
    let least = smallest(joint.bolt.hole);
    Some(Requirement {
        id: "edge-distance",
        title: "from the middle of a hole to the edge of the plate".to_owned(),
        load: None,
        each: Vec::new(),
        value: end.min(edge),
        limit: least.end.max(least.edge),
        sense: Sense::AtLeast,
        unit: Shown::Millimetre,
        advisory: false,
        basis: "1.2 hole diameters (EN 1993-1-8, table 3.3, from memory)".to_owned(),
        cure: "a larger plate, or bolts nearer to its middle",
    })
}

fn spacing(joint: &Joint) -> Option<Requirement> {
    let least = smallest(joint.bolt.hole);
    Some(Requirement {
        id: "spacing",
        title: "between the two bolts that are nearest to each other".to_owned(),
        load: None,
        each: Vec::new(),
        value: nearest(joint)?,
        limit: least.pitch.max(least.gauge),
        sense: Sense::AtLeast,
        unit: Shown::Millimetre,
        advisory: false,
        basis: "2.4 hole diameters (EN 1993-1-8, table 3.3, from memory)".to_owned(),
        cure: "bolts further apart, or smaller ones",
    })
}
