//! What the flange of a sleeve must stand between the nut and the far wall.

use super::{Case, Governing, Requirement, worst};
use crate::model::joint::Sleeve;
use crate::strength::sleeve::shoulder::Shoulder;
use crate::study::check::Sense;
use crate::units::Shown;

/// The flange under the bolt that is pulled most.
///
/// The flange lies outside the far wall and the nut stands on it. What closes the gap of the sleeve
/// presses it on the wall from the day of tightening; a pull adds half of itself while both walls
/// are pressed, and all of it when the near one has come free.
///
/// # Equation
///   F = max(F_A, F_w + F_A/2)
///
///   F_A  pull of the bolt \[N\]
///   F_w  force in the walls, tightened most and hottest \[N\]
///
/// # Source
/// Derived: two walls alike, pressed together by F_w, one relieved by what the other gains.
pub(super) fn requirement(case: &Case<'_>, sleeve: &Sleeve) -> Option<Requirement> {
    let flange = sleeve.shoulder?;
    let rail = case.joint.base.rail()?;
    let wall = &case.model.rails.get(rail.rail)?.material;
    let shape = Shoulder {
        diameter: flange.diameter,
        thickness: flange.thickness,
        sleeve: sleeve.outer,
        wall_hole: sleeve.hole,
    };
    let reserve = case.joint.factors.yields;
    let yields = sleeve.material.yield_strength / reserve;
    // Each stress grows in proportion to the force.
    let (limit, what) = [
        (
            wall.head_pressure.bare / shape.bearing(1.0),
            "its pressure on the bare wall (VDI 2230, from memory)".to_owned(),
        ),
        (
            yields / 3_f64.sqrt() / shape.flange_shear(1.0),
            format!("shear at its root, over {reserve} (derived)"),
        ),
        (
            yields / shape.flange_bending(1.0),
            format!("bending at its root, over {reserve} (derived)"),
        ),
    ]
    .into_iter()
    .min_by(|a, b| a.0.total_cmp(&b.0))?;
    let clamped = case.rail.map_or(0.0, |rail| rail.walls);
    let Governing { load, value, each } = worst(case.lasting(), |loaded| {
        let pull = loaded.most_pulled().max(0.0);
        pull.max(clamped + pull / 2.0)
    })?;
    Some(Requirement {
        id: "shoulder",
        brief: "flange of the sleeve",
        title: "force of the flange of a sleeve on the far wall, by the pull on its bolt and by what closes its gap".to_owned(),
        load: Some(load),
        each,
        value,
        limit,
        sense: Sense::AtMost,
        unit: Shown::Newton,
        advisory: false,
        basis: format!(
            "the least of pressure on the wall, shear and bending of the flange; here {what}"
        ),
        cure: "a thicker flange, a wider one where it is the pressure, a sleeve that is flush to slightly short",
    })
}
