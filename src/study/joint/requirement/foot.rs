//! What the foot of a bracket must stand between its bolts and the upright.

use super::plate::{Sheet, next_to, sheets, to_edges};
use super::weld::beside;
use super::{Case, Governing, Requirement, worst};
use crate::model::joint::Joint;
use crate::model::material::Family;
use crate::strength::bolt::resistance::{self, SAFETY};
use crate::strength::pattern::BoltForce;
use crate::strength::plate::prying::Flange;
use crate::strength::plate::strip::{Held, Strip, spread_width};
use crate::strength::rail::punching;
use crate::study::check::Sense;
use crate::study::joint::LoadedJoint;
use crate::units::Shown;

/// Share of the tensile strength at which a hinge in steel turns.
///
/// # Source
/// As [`Flange`]: 0.9 of the tensile strength.
const HINGE: f64 = 0.9;

/// What bends between bolts and upright: the foot, or the plate where the bracket is welded to it.
///
/// `None` with neither, which is refused when the joint is read.
pub(super) fn below_upright(joint: &Joint) -> Option<Sheet<'_>> {
    sheets(joint).into_iter().next()
}

/// Every bolt with the strip of foot that bends with it.
///
/// Which way the upright lies is not in the file. So the strip is no wider than the nearest edge
/// or the nearest bolt lets it be, whichever way that is, and the tip that pries is that edge. Every
/// bolt counts as far from the upright as the nearest.
pub(super) struct Bending<'a> {
    pub(super) bent: Sheet<'a>,
    /// In the order of `Joint::pattern`.
    flanges: Vec<Flange>,
    /// Yield strength at the face of the upright \[Pa\].
    yields: f64,
    /// Stress at which a hinge turns \[Pa\].
    hinge: f64,
}

impl<'a> Bending<'a> {
    /// `None` where the file tells of no upright.
    pub(super) fn of(case: &Case<'a>) -> Option<Self> {
        let joint = case.joint;
        let (bent, upright) = (below_upright(joint)?, joint.upright?);
        let flange = |(bolt, place): (usize, &[f64; 2])| {
            let [end, edge] = to_edges(std::slice::from_ref(place), bent.size);
            let tip = end.min(edge);
            let next = next_to(joint, bolt).map_or(f64::INFINITY, |next| next / 2.0);
            Flange {
                bolt: joint.bolt.thread.nominal,
                hole: joint.bolt.hole,
                to_stem: upright.arm,
                to_tip: tip,
                length: spread_width(case.stack.bearing, upright.arm, tip.min(next)),
                thickness: bent.thickness,
            }
        };
        let [yields, tensile] = match upright.weld {
            Some(_) => beside(bent.material),
            None => [bent.material.yield_strength, bent.material.tensile_strength],
        };
        // The share of the tensile strength was found on steel; others are held to yield.
        let hinge = match bent.material.family {
            Family::Steel | Family::Stainless => HINGE * tensile,
            _ => yields,
        };
        Some(Self {
            flanges: joint.pattern.iter().enumerate().map(flange).collect(),
            yields,
            hinge,
            bent,
        })
    }

    /// Largest bending stress at the face of the upright under the pulls of the bolts \[Pa\]; bolts that are pushed do not bend it.
    fn stress(&self, loaded: &LoadedJoint) -> f64 {
        let bolts = loaded.bolts.iter().zip(&self.flanges);
        bolts
            .map(|(bolt, flange)| strip(flange).stress(bolt.axial.max(0.0)))
            .fold(0.0, f64::max)
    }

    /// Force in a bolt under its pull \[N\], prying included; 0 for one that is pushed.
    pub(super) fn in_bolt(&self, place: usize, pull: f64) -> f64 {
        let pull = pull.max(0.0);
        self.flanges
            .get(place)
            .filter(|flange| reaches(flange) && has_metal(flange))
            .map_or(pull, |flange| flange.under(pull, self.hinge).bolt)
    }

    /// Least pull that a bolt carries with its strip \[N\].
    fn carries(&self, bolt_strength: f64) -> f64 {
        let carried = |flange: &Flange| match (has_metal(flange), reaches(flange)) {
            (false, _) => 0.0,
            (true, false) => bolt_strength,
            (true, true) => flange.carries(bolt_strength, self.hinge).pull,
        };
        self.flanges
            .iter()
            .map(carried)
            .fold(bolt_strength, f64::min)
    }
}

/// The cantilever from a bolt to the face of the upright.
fn strip(flange: &Flange) -> Strip {
    Strip {
        span: flange.to_stem,
        width: flange.length,
        thickness: flange.thickness,
        held: Held::OneEnd,
    }
}

/// Whether the bolt stands so far out that its strip can bend and pry: beyond the range of
/// [`Flange`] it is held by the upright itself.
fn reaches(flange: &Flange) -> bool {
    flange.to_stem > flange.bolt / 2.0
}

/// Whether the hole leaves something of the strip.
fn has_metal(flange: &Flange) -> bool {
    flange.length > flange.hole
}

pub(super) fn requirements(case: &Case<'_>) -> Vec<Requirement> {
    let bending = Bending::of(case);
    let mut found: Vec<Requirement> = punched(case, bending.as_ref()).into_iter().collect();
    if let Some(bending) = &bending {
        found.extend(bent(case, bending));
        found.extend(prying(case, bending));
    }
    found
}

/// A head that is pulled through what it clamps.
fn punched(case: &Case<'_>, bending: Option<&Bending<'_>>) -> Option<Requirement> {
    let sheet = below_upright(case.joint)?;
    let bolt = |(place, force): (usize, &BoltForce)| {
        bending.map_or(force.axial.max(0.0), |foot| {
            foot.in_bolt(place, force.axial)
        })
    };
    let Governing { load, value, each } = worst(case.loads.iter(), |loaded| {
        let bolts = loaded.bolts.iter().enumerate();
        bolts.map(bolt).fold(0.0, f64::max)
    })?;
    let strength = punching::round(
        case.stack.bearing,
        sheet.thickness,
        sheet.material.tensile_strength,
    );
    Some(Requirement {
        id: "head-punching",
        brief: "head through foot",
        title: format!("pull of a head or its washer through the {}", sheet.name),
        load: Some(load),
        each,
        value,
        limit: strength / SAFETY,
        sense: Sense::AtMost,
        unit: Shown::Newton,
        advisory: false,
        basis: format!(
            "0.6 pi d t f_u over {SAFETY} (EN 1993-1-8, table 3.4, from memory), {}; every load case, even one that happens once",
            match bending {
                Some(_) => "prying counted",
                None => "prying not known",
            }
        ),
        cure: "a thicker foot, a wider hard washer, more bolts",
    })
}

fn bent(case: &Case<'_>, bending: &Bending<'_>) -> Option<Requirement> {
    let factor = case.joint.factors.yields;
    let name = bending.bent.name;
    let Governing { load, value, each } = worst(case.lasting(), |loaded| {
        bending.stress(loaded) * case.reserve(loaded, factor)
    })?;
    Some(Requirement {
        id: "foot-bending",
        brief: "bending of the foot",
        title: format!("bending of the {name} at the face of the upright, reserve included"),
        load: Some(load),
        each,
        value,
        limit: bending.yields,
        sense: Sense::AtMost,
        unit: Shown::Megapascal,
        advisory: false,
        basis: format!(
            "its yield strength, beside a weld if there is one; reserve {factor}, in rare load cases 1; pull of each bolt on a strip that spreads at 45 degrees to the upright (common practice), every bolt at `upright.arm`; its pressed side not counted"
        ),
        cure: "a thicker foot, bolts nearer to the upright, more room beside the holes, gussets between foot and upright",
    })
}

fn prying(case: &Case<'_>, bending: &Bending<'_>) -> Option<Requirement> {
    let bolt = &case.joint.bolt;
    let strength = resistance::tension(bolt.limits.tensile, bolt.thread.stress_area());
    let name = bending.bent.name;
    let Governing { load, value, each } =
        worst(case.loads.iter(), |loaded| loaded.most_pulled().max(0.0))?;
    Some(Requirement {
        id: "prying",
        brief: "foot prying the bolt",
        title: format!("pull on the bolt that is pulled most, as the {name} bends and pries"),
        load: Some(load),
        each,
        value,
        limit: bending.carries(strength),
        sense: Sense::AtMost,
        unit: Shown::Newton,
        advisory: false,
        basis: format!(
            "Thornton 1985, hinges at {:.0} MPa (0.9 of the tensile strength of steel, yield strength of other metals) and the bolt at 0.9 f_ub A_s/{} (EN 1993-1-8, table 3.4, from memory); weakest bolt of the pattern, every load case, even one that happens once",
            bending.hinge * 1e-6,
            SAFETY
        ),
        cure: "a thicker foot, bolts nearer to the upright, more room beside the holes, stronger or more bolts",
    })
}
