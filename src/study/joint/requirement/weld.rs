//! What the weld of a plate to a rail must stand.

use std::f64::consts::SQRT_2;

use super::{Case, Governing, Requirement, worst};
use crate::model::joint::{Filler, Plate, Weld, WeldRun};
use crate::model::material::{HeatAffected, Material};
use crate::spatial::{Vec3, Wrench};
use crate::strength::bolt::resistance::SAFETY;
use crate::strength::weld::strength::{aluminium, correlation, steel};
use crate::strength::weld::{group::WeldGroup, shapes};
use crate::study::check::Sense;
use crate::units::Shown;

/// Strength of fillers with the alloys they join: start of the alloy's name, 5356, 4043A \[Pa\].
///
/// # Source
/// EN 1999-1-1:2007, table 8.8 (from memory). An alloy that is not in it takes the weakest row.
const FILLERS: [(&str, f64, f64); 4] = [
    ("6082", 210e6, 190e6),
    ("6061", 190e6, 170e6),
    ("6060", 160e6, 150e6),
    ("5083", 240e6, 150e6),
];

/// Weakest row of the table of fillers \[Pa\].
const WEAKEST: (f64, f64) = (160e6, 150e6);

pub(super) fn requirement(case: &Case<'_>) -> Option<Requirement> {
    let (weld, plate) = (case.joint.weld.as_ref()?, case.joint.plate.as_ref()?);
    let rail = case.model.rails.get(case.joint.base.rail()?.rail)?;
    let group = group(weld, plate)?;
    let stress = |wrench: &Wrench| {
        let found = group.stress(weld.fillet.throat, &at_foot_of(plate, wrench));
        found.map_or(f64::INFINITY, |found| found.stress)
    };
    let Governing { load, value, each } =
        worst(case.loads.iter(), |loaded| stress(&loaded.wrench))?;
    let limit = strength(weld.fillet.filler, &rail.material)
        .min(strength(weld.fillet.filler, &plate.material));
    Some(Requirement {
        id: "weld",
        title: "weld of the plate to the rail, as if it held all".to_owned(),
        load: Some(load),
        each,
        value,
        limit,
        sense: Sense::AtMost,
        unit: Shown::Megapascal,
        advisory: false,
        basis: "EN 1993-1-8 4.5.3.3, EN 1999-1-1 8.6.3 with the strength beside the weld (from memory), safety factor 1.25; the wall counts as stiff".to_owned(),
        cure: "a thicker or longer weld, a larger plate; have it made by a qualified welder",
    })
}

/// Stress that the throat bears between filler and metal beside it \[Pa\].
pub(super) fn strength(filler: Filler, material: &Material) -> f64 {
    let softened = match material.heat_affected {
        HeatAffected::Weaker {
            tensile_strength, ..
        } => tensile_strength,
        HeatAffected::AsParent | HeatAffected::NotKnown => material.tensile_strength,
    };
    let row = FILLERS
        .iter()
        .find(|(alloy, ..)| material.name.starts_with(alloy))
        .map_or(WEAKEST, |(_, magnesium, silicon)| (*magnesium, *silicon));
    let filled = match filler {
        Filler::Matching => return steel(softened, correlation(material.yield_strength), SAFETY),
        Filler::Al5356 => row.0,
        Filler::Al4043A => row.1,
    };
    let bears = aluminium(filled, softened, SAFETY);
    // The leg is √2 throats long, so a stress on the throat is that much smaller on it.
    bears.throat.min(bears.leg_sheared * SQRT_2)
}

/// A wrench about the middle of the joint face, taken at the lower face of the plate.
fn at_foot_of(plate: &Plate, wrench: &Wrench) -> Wrench {
    let arm = Vec3::new(0.0, 0.0, plate.thickness);
    Wrench {
        force: wrench.force,
        moment: wrench.moment + arm.cross(&wrench.force),
    }
}

/// The run of a weld as lines around the plate.
fn group(weld: &Weld, plate: &Plate) -> Option<WeldGroup> {
    match weld.run {
        WeldRun::Around => shapes::rectangle(plate.length, plate.width),
        // Two runs along the rail, each half of the whole.
        WeldRun::Length(run) => shapes::two_horizontals(run / 2.0, plate.width),
    }
}
