//! What the welds of plate and upright must stand.

use std::f64::consts::SQRT_2;

use super::foot::below_upright;
use super::{Case, Governing, Requirement, worst};
use crate::model::Model;
use crate::model::joint::{Base, Filler, Joint, Weld, WeldRun};
use crate::model::material::{Family, HeatAffected, Material};
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

/// Correlation factor of welds in stainless steel.
///
/// # Source
/// EN 1993-1-4:2006, 6.3 (from memory).
const STAINLESS: f64 = 1.0;

/// Weakest row of the table of fillers \[Pa\].
const WEAKEST: (f64, f64) = (160e6, 150e6);

/// A weld with what it joins.
struct Seam<'a> {
    weld: Weld,
    /// What it runs around, along the rail and across it \[m\].
    size: [f64; 2],
    /// Its plane above the joint face \[m\].
    height: f64,
    /// The metals beside it.
    materials: Vec<&'a Material>,
}

pub(super) fn requirements(case: &Case<'_>) -> Vec<Requirement> {
    let of_plate = plate_to_base(case).and_then(|(name, seam)| {
        judged(
            case,
            &seam,
            ["weld", "weld of the plate"],
            format!("weld of the plate to the {name}, as if it held all"),
            "what it is welded to counts as stiff",
            "a thicker or longer weld, a larger plate; have it made by a qualified welder",
        )
    });
    let of_upright = upright_to_foot(case).and_then(|(name, seam)| {
        judged(
            case,
            &seam,
            ["upright-weld", "weld of the upright"],
            format!("weld of the upright to the {name}"),
            "both counted as of one metal and as stiff",
            "a thicker or longer weld, a larger upright; have it made by a qualified welder",
        )
    });
    [of_plate, of_upright].into_iter().flatten().collect()
}

fn plate_to_base<'a>(case: &Case<'a>) -> Option<(&'static str, Seam<'a>)> {
    let (weld, plate) = (case.joint.weld?, case.joint.plate.as_ref()?);
    let (name, base) = base(case.model, case.joint)?;
    let seam = Seam {
        weld,
        size: [plate.length, plate.width],
        height: -plate.thickness,
        materials: vec![base, &plate.material],
    };
    Some((name, seam))
}

/// What the plate is welded to, and its metal.
pub(super) fn base<'a>(model: &'a Model, joint: &'a Joint) -> Option<(&'static str, &'a Material)> {
    match &joint.base {
        Base::Rail(base) => {
            let rail = model.rails.get(base.rail)?;
            Some(("rail", &rail.material))
        }
        Base::Solid(solid) => Some(("part", &solid.material)),
    }
}

fn upright_to_foot<'a>(case: &Case<'a>) -> Option<(&'static str, Seam<'a>)> {
    let welded = case.joint.upright?.weld?;
    let bent = below_upright(case.joint)?;
    let seam = Seam {
        weld: welded.weld,
        size: [welded.length, welded.width],
        height: bent.top,
        materials: vec![bent.material],
    };
    Some((bent.name, seam))
}

fn judged(
    case: &Case<'_>,
    seam: &Seam<'_>,
    [id, brief]: [&'static str; 2],
    title: String,
    range: &str,
    cure: &'static str,
) -> Option<Requirement> {
    let fillet = seam.weld.fillet;
    let group = group(seam.weld.run, seam.size)?;
    let stress = |wrench: &Wrench| {
        let found = group.stress(fillet.throat, &at_height(seam.height, wrench));
        found.map_or(f64::INFINITY, |found| found.stress)
    };
    let Governing { load, value, each } =
        worst(case.loads.iter(), |loaded| stress(&loaded.wrench))?;
    let strengths = seam.materials.iter();
    let limit = strengths
        .map(|material| strength(fillet.filler, material))
        .min_by(f64::total_cmp)?;
    Some(Requirement {
        id,
        brief,
        title,
        load: Some(load),
        each,
        value,
        limit,
        sense: Sense::AtMost,
        unit: Shown::Megapascal,
        advisory: false,
        basis: format!(
            "EN 1993-1-8 4.5.3.3, EN 1999-1-1 8.6.3 with the strength beside the weld (from memory), safety factor {SAFETY}; {range}"
        ),
        cure,
    })
}

/// Yield and tensile strength beside a weld \[Pa\]; in full where it is not known, which is told as not judged.
pub(super) fn beside(material: &Material) -> [f64; 2] {
    match material.heat_affected {
        HeatAffected::Weaker {
            yield_strength,
            tensile_strength,
        } => [yield_strength, tensile_strength],
        HeatAffected::AsParent | HeatAffected::NotKnown => {
            [material.yield_strength, material.tensile_strength]
        }
    }
}

/// Stress that the throat bears between filler and metal beside it \[Pa\].
pub(super) fn strength(filler: Filler, material: &Material) -> f64 {
    let [_, softened] = beside(material);
    let row = FILLERS
        .iter()
        .find(|(alloy, ..)| material.name.starts_with(alloy))
        .map_or(WEAKEST, |(_, magnesium, silicon)| (*magnesium, *silicon));
    let filled = match filler {
        Filler::Matching => {
            let correlation = match material.family {
                Family::Stainless => STAINLESS,
                _ => correlation(material.yield_strength),
            };
            return steel(softened, correlation, SAFETY);
        }
        Filler::Al5356 => row.0,
        Filler::Al4043A => row.1,
    };
    let bears = aluminium(filled, softened, SAFETY);
    // The leg is √2 throats long, so a stress on the throat is that much smaller on it.
    bears.throat.min(bears.leg_sheared * SQRT_2)
}

/// A wrench about the middle of the joint face, taken at this height above it \[m\].
fn at_height(height: f64, wrench: &Wrench) -> Wrench {
    let up = Vec3::new(0.0, 0.0, height);
    Wrench {
        force: wrench.force,
        moment: wrench.moment - up.cross(&wrench.force),
    }
}

/// The run of a weld as lines around what is welded.
fn group(run: WeldRun, [length, width]: [f64; 2]) -> Option<WeldGroup> {
    match run {
        WeldRun::Around => shapes::rectangle(length, width),
        // Two runs along the rail, each half of the whole.
        WeldRun::Length(run) => shapes::two_horizontals(run / 2.0, width),
    }
}
