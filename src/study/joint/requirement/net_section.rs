//! What the holes leave of foot and plate.

use super::plate::{Sheet, sheets};
use super::{Case, Governing, Requirement, worst};
use crate::model::joint::Joint;
use crate::model::material::{Family, Material};
use crate::spatial::Wrench;
use crate::strength::bolt::resistance::SAFETY;
use crate::strength::plate::net_section::area;
use crate::study::check::Sense;
use crate::study::joint::LoadedJoint;
use crate::units::Shown;

pub(super) fn requirement(case: &Case<'_>) -> Option<Requirement> {
    let rows = rows(case.joint);
    let Governing { load, value, each } = worst(case.loads.iter(), |loaded| {
        rows.iter().map(|row| row.used(loaded)).fold(0.0, f64::max)
    })?;
    let loaded = case.loads.iter().find(|loaded| loaded.load == load)?;
    let row = rows
        .iter()
        .max_by(|a, b| a.used(loaded).total_cmp(&b.used(loaded)))?;
    Some(Requirement {
        id: "net-section",
        brief: "holes in a row",
        title: format!("what the holes leave of the {}", row.words),
        load: Some(load),
        each,
        value,
        limit: 1.0,
        sense: Sense::AtMost,
        unit: Shown::Percent,
        advisory: false,
        basis: format!(
            "EN 1993-1-1, 6.2.3 (from memory): 0.9 of the tensile strength over {SAFETY} between the holes, yield strength over 1, 1.1 for other metals than steel, without them; the whole mount reaction along the face, once the faces slip"
        ),
        cure: "a wider or thicker foot or plate, fewer holes in a row, smaller bolts",
    })
}

/// A section of foot or plate through a row of holes.
struct Row {
    words: String,
    /// Pull that it bears \[N\].
    bears: f64,
    /// The part of the mount reaction that pulls on it.
    force: fn(&Wrench) -> f64,
}

impl Row {
    /// Share of its strength that a load case uses; infinite where the holes leave nothing.
    fn used(&self, loaded: &LoadedJoint) -> f64 {
        let force = (self.force)(&loaded.wrench).abs();
        if force > 0.0 { force / self.bears } else { 0.0 }
    }
}

/// Most holes in one line, for lines on which this coordinate is the same to half a hole.
fn most_in_line(joint: &Joint, coordinate: fn(&[f64; 2]) -> f64) -> usize {
    let in_line = |place: &[f64; 2]| {
        let at = coordinate(place);
        let near = |other: &&[f64; 2]| (coordinate(other) - at).abs() <= joint.bolt.hole / 2.0;
        joint.pattern.iter().filter(near).count()
    };
    joint.pattern.iter().map(in_line).max().unwrap_or(0)
}

/// The sections of foot and plate through the most holes, against a force along the rail and across it.
fn rows(joint: &Joint) -> Vec<Row> {
    let [along, across] = [
        most_in_line(joint, |[x, _]| *x),
        most_in_line(joint, |[_, y]| *y),
    ];
    let row = |sheet: &Sheet<'_>, way: &str, wide: f64, count: usize, force: fn(&Wrench) -> f64| {
        let holes = vec![joint.bolt.hole; count];
        Row {
            words: format!(
                "{} pulled {way} the rail, holes in the row: {count}",
                sheet.name
            ),
            bears: pulled(sheet.material, wide, sheet.thickness, &holes),
            force,
        }
    };
    sheets(joint)
        .iter()
        .flat_map(|sheet| {
            let [length, width] = sheet.size;
            [
                row(sheet, "along", width, along, |wrench| wrench.force.x),
                row(sheet, "across", length, across, |wrench| wrench.force.y),
            ]
        })
        .collect()
}

/// Pull that a flat bar bears across a row of holes \[N\].
///
/// # Equation
///   N = min(A f_y/γ_M0, 0.9 A_net f_u/γ_M2),   A_net = (w − Σ d) t
///
///   A         w t, without holes          \[m²\]
///   w, t, d   width, thickness, holes     \[m\]
///   γ_M0      [`section_safety`];  γ_M2 = 1.25
///
/// # Source
/// EN 1993-1-1:2005, 6.2.3 (from memory).
fn pulled(material: &Material, width: f64, thickness: f64, holes: &[f64]) -> f64 {
    let gross = width * thickness * material.yield_strength / section_safety(material.family);
    let net = 0.9 * area(width, thickness, holes) * material.tensile_strength / SAFETY;
    gross.min(net)
}

/// Partial factor of a section that yields.
///
/// # Source
/// 1.0: EN 1993-1-1:2005, 6.1. 1.1: EN 1993-1-4:2006, 5.1, and EN 1999-1-1:2007, 6.1.3; all from
/// memory. Other materials take the larger.
fn section_safety(family: Family) -> f64 {
    match family {
        Family::Steel => 1.0,
        _ => 1.1,
    }
}
