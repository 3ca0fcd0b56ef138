//! What the welds of a sleeve to the walls of a rail must stand.

use super::weld::strength;
use super::{Case, Governing, Requirement, worst};
use crate::model::joint::Sleeve;
use crate::model::material::HeatAffected;
use crate::spatial::{Vec3, Wrench};
use crate::strength::pattern::BoltForce;
use crate::strength::weld::shapes;
use crate::study::check::Sense;
use crate::units::Shown;

/// Walls that a sleeve is welded to.
pub(super) const WALLS: f64 = 2.0;

/// The rings around the sleeve of the bolt that loads them most, as if they held all.
///
/// Pull or push goes to both walls alike, since the sleeve is stiff beside them. The force along
/// the face comes in at the near end of the sleeve, so the ring of the near wall takes all of it.
/// The clamp force is not counted: the ends of a sleeve are trued after welding, and it goes from
/// end to end.
pub(super) fn requirement(case: &Case<'_>, sleeve: &Sleeve) -> Option<Requirement> {
    let fillet = sleeve.weld?;
    let base = case.joint.base.rail()?;
    let wall = &case.model.rails.get(base.rail)?.material;
    let radius = sleeve.outer / 2.0;
    let ring = shapes::circle(radius)?;
    let stress = |bolt: &BoltForce| {
        let [along, across] = bolt.shear;
        let load = Wrench {
            force: Vec3::new(along, across, bolt.axial / WALLS),
            moment: Vec3::zeros(),
        };
        // Without a moment the stress is the same all around.
        let parts = ring.stress_at(fillet.throat, &load, [radius, 0.0]);
        parts.map_or(f64::INFINITY, |parts| parts.norm())
    };
    let Governing { load, value, each } = worst(case.loads.iter(), |loaded| {
        loaded.bolts.iter().map(stress).fold(0.0, f64::max)
    })?;
    let limit = strength(fillet.filler, wall).min(strength(fillet.filler, &sleeve.material));
    let unknown = [wall, &sleeve.material]
        .into_iter()
        .any(|material| material.heat_affected == HeatAffected::NotKnown);
    Some(Requirement {
        id: "sleeve-weld",
        brief: "weld of the sleeve",
        title: "weld of a sleeve to the walls, as if it held all".to_owned(),
        load: Some(load),
        each,
        value,
        limit,
        sense: Sense::AtMost,
        unit: Shown::Megapascal,
        advisory: false,
        basis: format!(
            "EN 1993-1-8 4.5.3.3, EN 1999-1-1 8.6.3 {} (from memory), safety factor 1.25; pull on both walls, force along the face on the near one (derived)",
            if unknown {
                "with the full strength of a metal whose loss beside a weld is not known"
            } else {
                "with the strength beside the weld"
            }
        ),
        cure: "a thicker weld, a wider sleeve; have it made by a qualified welder",
    })
}
