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

/// Distance from a hole to the edges of a solid part, whose outline is not in the file, over its diameter.
///
/// # Source
/// Common practice.
const USUAL_EDGE: f64 = 2.0;

/// Most that one row of bolts bears where the plates lap on one side only, over f_u d t.
///
/// # Source
/// EN 1993-1-8, 3.6.1(10) (from memory).
const ONE_ROW: f64 = 1.5;

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
    /// Tensile strength of what bears on the hole \[Pa\].
    pin_tensile: f64,
    hole: f64,
    /// To end and edge of the part \[m\].
    end: f64,
    edge: f64,
}

fn plies<'a>(case: &Case<'a>) -> Vec<Ply<'a>> {
    let joint = case.joint;
    let (pin, hole) = (joint.bolt.thread.nominal, joint.bolt.hole);
    let usual = USUAL_EDGE * hole;
    let bolt = [pin, hole, joint.bolt.limits.tensile];
    let mut plies = Vec::new();
    let mut ply =
        |name, material, thickness, [pin, hole, pin_tensile]: [f64; 3], [end, edge]: [f64; 2]| {
            plies.push(Ply {
                name,
                material,
                thickness,
                pin,
                pin_tensile,
                hole,
                end,
                edge,
            });
        };
    for sheet in sheets(joint) {
        let to = to_edges(&joint.pattern, sheet.size);
        ply(sheet.name, sheet.material, sheet.thickness, bolt, to);
    }
    match &joint.base {
        Base::Solid(solid) if solid.engagement.is_none() => {
            let to = [usual, usual];
            ply("part", &solid.material, solid.thickness, bolt, to);
        }
        Base::Solid(_) => {}
        Base::Rail(base) => {
            // A sleeve that goes through the wall bears on it in place of the bolt.
            let sleeve = joint.sleeve.as_ref();
            let pair = match sleeve.filter(|sleeve| sleeve.seat == Seat::Through) {
                Some(sleeve) => [sleeve.outer, sleeve.hole, sleeve.material.tensile_strength],
                None => bolt,
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
        let row = ONE_ROW * tensile * ply.pin * ply.thickness;
        bearing::strength(&hole, tensile, ply.pin_tensile).clamp(0.0, row) / SAFETY
    };
    let (limit, ply) = plies(case)
        .into_iter()
        .map(|ply| (strength(&ply), ply))
        .min_by(|a, b| a.0.total_cmp(&b.0))?;
    let Governing { load, value, each } = worst(case.loads.iter(), LoadedJoint::most_sheared)?;
    Some(Requirement {
        id: "bearing",
        brief: "bolt against hole",
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
            "EN 1993-1-8, table 3.4 and 3.6.1(10) (from memory), safety factor 1.25, {:.0} mm to the nearest edge",
            ply.end.min(ply.edge) * 1e3
        ),
        cure: "a thicker part, more edge, larger or more bolts",
    })
}

/// Foot or plate: flat, its outline in the file.
pub(super) struct Sheet<'a> {
    pub(super) name: &'static str,
    pub(super) material: &'a Material,
    pub(super) thickness: f64,
    /// Along the rail and across it \[m\].
    pub(super) size: [f64; 2],
    /// Its upper face above the joint face \[m\].
    pub(super) top: f64,
}

/// The sheets of a joint from the top; the joint face lies on the plate.
pub(super) fn sheets(joint: &Joint) -> Vec<Sheet<'_>> {
    let foot = joint.foot.as_ref().map(|foot| Sheet {
        name: "foot",
        material: &foot.material,
        thickness: foot.thickness,
        size: [foot.length, foot.width],
        top: foot.thickness,
    });
    let plate = joint.plate.as_ref().map(|plate| Sheet {
        name: "plate",
        material: &plate.material,
        thickness: plate.thickness,
        size: [plate.length, plate.width],
        top: 0.0,
    });
    foot.into_iter().chain(plate).collect()
}

/// Distances of the outermost of these places from the ends and edges of a sheet of this length and width \[m\].
pub(super) fn to_edges(places: &[[f64; 2]], [length, width]: [f64; 2]) -> [f64; 2] {
    let reach = places.iter().fold([0.0_f64; 2], |[far_x, far_y], [x, y]| {
        [far_x.max(x.abs()), far_y.max(y.abs())]
    });
    [length / 2.0 - reach[0], width / 2.0 - reach[1]]
}

/// Distance from a bolt, by its place in the pattern, to the nearest other \[m\]; `None` for a single bolt.
pub(super) fn next_to(joint: &Joint, place: usize) -> Option<f64> {
    let [x, y] = joint.pattern.get(place)?;
    let others = joint.pattern.iter().enumerate();
    others
        .filter(|(other, _)| *other != place)
        .map(|(_, [u, v])| (x - u).hypot(y - v))
        .min_by(f64::total_cmp)
}

/// Distance between the two bolts that are nearest to each other \[m\]; `None` for a single bolt.
fn nearest(joint: &Joint) -> Option<f64> {
    (0..joint.pattern.len())
        .filter_map(|place| next_to(joint, place))
        .min_by(f64::total_cmp)
}

fn edges(joint: &Joint) -> Option<Requirement> {
    let (name, value) = sheets(joint)
        .into_iter()
        .map(|sheet| {
            let [end, edge] = to_edges(&joint.pattern, sheet.size);
            (sheet.name, end.min(edge))
        })
        .min_by(|a, b| a.1.total_cmp(&b.1))?;
    let least = smallest(joint.bolt.hole);
    Some(Requirement {
        id: "edge-distance",
        brief: "hole to plate edge",
        title: format!("from the middle of a hole to the edge of the {name}"),
        load: None,
        each: Vec::new(),
        value,
        limit: least.end.max(least.edge),
        sense: Sense::AtLeast,
        unit: Shown::Millimetre,
        advisory: false,
        basis: "1.2 hole diameters (EN 1993-1-8, table 3.3, from memory)".to_owned(),
        cure: "a larger foot or plate, or bolts nearer to its middle",
    })
}

fn spacing(joint: &Joint) -> Option<Requirement> {
    let least = smallest(joint.bolt.hole);
    Some(Requirement {
        id: "spacing",
        brief: "between two bolts",
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
