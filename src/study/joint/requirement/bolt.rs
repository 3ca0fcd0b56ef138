//! What the bolt itself must stand: tightening, working loads, wear, the thread it holds in.

use std::f64::consts::PI;

use super::{Case, Requirement, worst};
use crate::model::fastener::Metal;
use crate::model::joint::{Base, bolt::Threads};
use crate::strength::bolt::fatigue::{self, Rolled};
use crate::strength::bolt::resistance::{self, Plane, SAFETY};
use crate::strength::bolt::stripping::WorstFit;
use crate::strength::bolt::yielding::working_stress;
use crate::study::check::Sense;
use crate::units::Shown;

/// Cycles for which a bolt is to last under frequent loads.
///
/// # Source
/// VDI 2230-1: the amplitude that is borne for good is that at 2 million cycles (from memory).
const CYCLES: f64 = 2e6;

pub(super) fn requirements(case: &Case<'_>) -> Vec<Requirement> {
    let mut found = vec![tightening(case)];
    found.extend(in_service(case));
    found.extend(separation(case));
    found.extend(fatigue(case));
    found.extend(shear(case));
    found.extend(engagement(case));
    found
}

fn tightening(case: &Case<'_>) -> Requirement {
    Requirement {
        id: "tightening",
        title: "bolt while it is tightened, friction lowest".to_owned(),
        load: None,
        value: case.preload.most,
        limit: case.preload.permissible * (1.0 + 1e-9),
        sense: Sense::AtMost,
        unit: Shown::Newton,
        advisory: false,
        basis: "90 % of its yield strength, pull and twist together (VDI 2230-1, from memory)".to_owned(),
        cure: "a lower torque, a stronger class or a larger bolt",
    }
}

fn in_service(case: &Case<'_>) -> Option<Requirement> {
    let bolt = &case.joint.bolt;
    let stress = |pull: f64| {
        working_stress(
            &bolt.thread,
            case.preload.hottest(),
            case.stack.load_factor * pull.max(0.0),
            bolt.lubrication.friction.low,
        )
    };
    let (load, value) = worst(case.lasting(), |loaded| stress(loaded.most_pulled()))?;
    Some(Requirement {
        id: "working-stress",
        title: "bolt under load, hottest and tightened most".to_owned(),
        load: Some(load),
        value,
        limit: bolt.limits.yield_strength,
        sense: Sense::AtMost,
        unit: Shown::Megapascal,
        advisory: false,
        basis: "yield strength of its class, half of the tightening twist left (VDI 2230-1, from memory)".to_owned(),
        cure: "a lower torque, more or larger bolts, a sleeve of the metal of the bolt",
    })
}

/// What pulls the faces apart against the least clamp force.
fn separation(case: &Case<'_>) -> Option<Requirement> {
    let (load, pull) = worst(case.lasting(), |loaded| {
        loaded.most_pulled() * case.separation_factor(loaded)
    })?;
    Some(Requirement {
        id: "separation",
        title: "pull on the bolt that is pulled most, reserve included".to_owned(),
        load: Some(load),
        value: pull.max(0.0),
        limit: case.preload.clamp(),
        sense: Sense::AtMost,
        unit: Shown::Newton,
        advisory: false,
        basis: "least clamp force after settling, heat and scatter of tightening; beyond it the joint opens".to_owned(),
        cure: "more clamp force (larger or stronger bolts, a better way of tightening), bolts further apart, a mount nearer to the joint",
    })
}

fn fatigue(case: &Case<'_>) -> Option<Requirement> {
    let bolt = &case.joint.bolt;
    let rolled = match bolt.threads {
        Threads::RolledBeforeHeatTreatment | Threads::Cut => Rolled::BeforeHeatTreatment,
        Threads::RolledAfterHeatTreatment => {
            let yields = bolt.limits.yield_strength * bolt.thread.stress_area();
            Rolled::AfterHeatTreatment(case.preload.most / yields)
        }
    };
    let places = case.joint.pattern.len();
    let (mut most, mut governing) = (0.0, None);
    for bolt_place in 0..places {
        let pulls: Vec<(usize, f64)> = case
            .frequent()
            .filter_map(|loaded| Some((loaded.load, loaded.bolts.get(bolt_place)?.axial.max(0.0))))
            .collect();
        let high = pulls.iter().copied().max_by(|a, b| a.1.total_cmp(&b.1))?;
        let low = pulls.iter().map(|pull| pull.1).fold(f64::INFINITY, f64::min);
        let amplitude = fatigue::amplitude(
            case.stack.load_factor,
            high.1,
            low,
            bolt.thread.stress_area(),
        );
        if governing.is_none() || amplitude > most {
            (most, governing) = (amplitude, Some(high.0));
        }
    }
    Some(Requirement {
        id: "fatigue",
        title: "stress amplitude of the bolt between its frequent loads".to_owned(),
        load: governing,
        value: most,
        limit: fatigue::limit(bolt.thread.nominal, rolled, CYCLES) / case.joint.factors.fatigue,
        sense: Sense::AtMost,
        unit: Shown::Megapascal,
        advisory: false,
        basis: format!(
            "lasting amplitude of the thread (VDI 2230-1, from memory) over {}; a stronger class lasts no longer",
            case.joint.factors.fatigue
        ),
        cure: "more clamp force, a stiffer stack (sleeve, plates), a longer bolt, a thread rolled and not cut",
    })
}

/// What holds when the joint has slipped: the bolt in shear and pull, as a structure of steel is judged.
fn shear(case: &Case<'_>) -> Option<Requirement> {
    let bolt = &case.joint.bolt;
    let ductile = bolt.grade.metal == Metal::Steel && !bolt.grade.name.starts_with("1");
    let area = bolt.thread.stress_area();
    let borne = resistance::shear(ductile, Plane::Thread, bolt.limits.tensile, area) / SAFETY;
    let pulled = resistance::tension(bolt.limits.tensile, area) / SAFETY;
    let used = |bolt: &crate::strength::pattern::BoltForce| {
        resistance::together(bolt.shear_size(), borne, bolt.axial.max(0.0), pulled)
    };
    let (load, value) = worst(case.loads.iter(), |loaded| {
        loaded.bolts.iter().map(used).fold(0.0, f64::max)
    })?;
    Some(Requirement {
        id: "bolt-strength",
        title: "bolt in shear and pull together, as if the faces held nothing".to_owned(),
        load: Some(load),
        value,
        limit: 1.0,
        sense: Sense::AtMost,
        unit: Shown::Percent,
        advisory: false,
        basis: "EN 1993-1-8, table 3.4 (from memory), safety factor 1.25; holds in every load case, even once".to_owned(),
        cure: "larger, stronger or more bolts",
    })
}

fn engagement(case: &Case<'_>) -> Option<Requirement> {
    let Base::Solid(solid) = &case.joint.base else {
        return None;
    };
    let length = solid.engagement?;
    let bolt = &case.joint.bolt;
    let breaking = bolt.limits.tensile * bolt.thread.stress_area();
    let shear = crate::strength::bolt::stripping::SHEAR_RATIO;
    let needed = WorstFit::of(&bolt.thread).engagement(
        breaking,
        shear * bolt.limits.tensile,
        shear * solid.material.tensile_strength,
    );
    Some(Requirement {
        id: "engagement",
        title: "length of thread in the tapped part".to_owned(),
        load: None,
        value: length,
        limit: needed,
        sense: Sense::AtLeast,
        unit: Shown::Millimetre,
        advisory: false,
        basis: "so that the bolt breaks before a thread strips (FED-STD-H28, from memory)".to_owned(),
        cure: "a longer thread, a thread insert of steel, or a finer look at what the bolt must hold",
    })
}

impl Case<'_> {
    /// Reserve against opening: that of the file in frequent load cases, none in rare ones.
    pub(super) fn separation_factor(&self, loaded: &super::LoadedJoint) -> f64 {
        match self.class(loaded) {
            Some(crate::model::load::LoadClass::Extreme) => 1.0,
            _ => self.joint.factors.separation,
        }
    }
}

/// Area of a ring \[m²\].
pub(super) fn ring(outer: f64, inner: f64) -> f64 {
    PI / 4.0 * (outer * outer - inner * inner)
}
