//! What the bolt itself must stand: tightening, working loads, wear, the thread it holds in.

use super::foot::Bending;
use super::unjudged::lasts;
use super::{Case, Governing, Requirement, worst};
use crate::model::fastener::Metal;
use crate::model::joint::{Base, bolt::Threads};
use crate::strength::bolt::fatigue::{self, Rolled};
use crate::strength::bolt::load_share::Preloaded;
use crate::strength::bolt::resistance::{self, Plane};
use crate::strength::bolt::stripping::{SHEAR_RATIO, WorstFit};
use crate::strength::bolt::yielding::working_stress;
use crate::strength::pattern::BoltForce;
use crate::study::check::Sense;
use crate::units::Shown;

/// Cycles for which a bolt is to last under frequent loads.
///
/// # Source
/// VDI 2230-1: the amplitude that is borne for good is that at 2 million cycles (from memory).
const CYCLES: f64 = 2e6;

/// Tensile strength up to which a steel bolt counts as ductile where a shear plane cuts its thread \[Pa\].
///
/// # Source
/// Class 8.8, at most 830 MPa, does and 10.9, from 1040 MPa, does not: EN 1993-1-8, table 3.4
/// (from memory). The middle between the two parts inch grades in the same way.
const DUCTILE: f64 = 935e6;

/// Threads that do not count at the ends of an engagement.
///
/// # Source
/// Common practice: about one pitch at either end is not full.
const LOST_THREADS: f64 = 2.0;

pub(super) fn requirements(case: &Case<'_>) -> Vec<Requirement> {
    let mut found = Vec::new();
    // A torque that was not stated is computed to use the bolt up to its limit, and no further.
    if case.preload.is_stated {
        found.push(tightening(case));
    }
    found.extend(in_service(case));
    found.extend(separation(case));
    found.extend(fatigue(case));
    found.extend(strength(case));
    found.extend(engagement(case));
    found
}

fn tightening(case: &Case<'_>) -> Requirement {
    Requirement {
        id: "tightening",
        brief: "bolt, tightened",
        title: "bolt while it is tightened, friction lowest".to_owned(),
        load: None,
        each: Vec::new(),
        value: case.preload.most,
        limit: case.preload.permissible,
        sense: Sense::AtMost,
        unit: Shown::Newton,
        advisory: false,
        basis: "90 % of its yield strength, pull and twist together (VDI 2230-1, from memory)"
            .to_owned(),
        cure: "a lower torque, a stronger class or a larger bolt",
    }
}

fn in_service(case: &Case<'_>) -> Option<Requirement> {
    let bolt = &case.joint.bolt;
    let preloaded = Preloaded {
        preload: case.preload.hottest(),
        load_factor: case.stack.load_factor,
    };
    let stress = |pull: f64| {
        working_stress(
            &bolt.thread,
            preloaded.preload,
            preloaded.bolt_force(pull.max(0.0)) - preloaded.preload,
            bolt.lubrication.friction.low,
        )
    };
    let Governing { load, value, each } =
        worst(case.lasting(), |loaded| stress(loaded.most_pulled()))?;
    Some(Requirement {
        id: "working-stress",
        brief: "bolt under load",
        title: "bolt under load, hottest and tightened most".to_owned(),
        load: Some(load),
        each,
        value,
        limit: bolt.limits.yield_strength,
        sense: Sense::AtMost,
        unit: Shown::Megapascal,
        advisory: false,
        basis: "yield strength of its class, half of the tightening twist left (VDI 2230-1, from memory); load under head and nut".to_owned(),
        cure: "a lower torque, more or larger bolts, a sleeve of the metal of the bolt",
    })
}

/// What pulls the faces apart against the least clamp force.
///
/// The pull is taken to come in at the faces, where it unloads them most: the whole of it is
/// lost to the clamp force, and none goes into the bolt.
fn separation(case: &Case<'_>) -> Option<Requirement> {
    let factor = case.joint.factors.separation;
    let Governing { load, value, each } = worst(case.lasting(), |loaded| {
        loaded.most_pulled() * case.reserve(loaded, factor)
    })?;
    Some(Requirement {
        id: "separation",
        brief: "pull on the bolt",
        title: "pull on the bolt that is pulled most, reserve included".to_owned(),
        load: Some(load),
        each,
        value: value.max(0.0),
        limit: case.preload.clamp(),
        sense: Sense::AtMost,
        unit: Shown::Newton,
        advisory: false,
        basis: format!(
            "least clamp force after settling, heat and scatter of tightening; reserve {factor}, in rare load cases 1; load at the faces"
        ),
        cure: "more clamp force (larger or stronger bolts, a better way of tightening), bolts further apart, a mount nearer to the joint",
    })
}

fn fatigue(case: &Case<'_>) -> Option<Requirement> {
    let bolt = &case.joint.bolt;
    if !lasts(case.joint) {
        return None;
    }
    let rolled = match bolt.threads {
        Threads::RolledAfterHeatTreatment => {
            let yields = bolt.limits.yield_strength * bolt.thread.stress_area();
            Rolled::AfterHeatTreatment(case.preload.most / yields)
        }
        _ => Rolled::BeforeHeatTreatment,
    };
    let amplitude = |place: usize| {
        let pulls = || {
            case.frequent()
                .filter_map(move |loaded| Some((loaded.load, loaded.bolts.get(place)?.axial)))
        };
        let (load, high) = pulls().max_by(|a, b| a.1.total_cmp(&b.1))?;
        // The pivot of the foot is not known: the range is that between the highest pull of one and the lowest of the other.
        let low = case
            .frequent()
            .filter_map(|loaded| loaded.centred.get(place).copied())
            .chain(pulls().map(|(_, pull)| pull))
            .fold(high, f64::min);
        let area = bolt.thread.stress_area();
        Some((
            load,
            fatigue::amplitude(case.stack.load_factor, high, low, area),
        ))
    };
    let (load, value) = (0..case.joint.pattern.len())
        .filter_map(amplitude)
        .max_by(|a, b| a.1.total_cmp(&b.1))?;
    let factor = case.joint.factors.fatigue;
    Some(Requirement {
        id: "fatigue",
        brief: "stress amplitude",
        title: "stress amplitude of the bolt between its frequent loads".to_owned(),
        load: Some(load),
        // An amplitude lies between load cases, not in one.
        each: Vec::new(),
        value,
        limit: fatigue::limit(bolt.thread.nominal, rolled, CYCLES) / factor,
        sense: Sense::AtMost,
        unit: Shown::Megapascal,
        advisory: false,
        basis: format!(
            "lasting amplitude of the thread (VDI 2230-1, from memory) over {factor}; a stronger class lasts no longer; bending of the bolt not counted"
        ),
        cure: "a stiffer stack (sleeve, plates), more bolts, a longer bolt, threads rolled after heat treatment",
    })
}

/// What holds when the joint has slipped or opened: the bolt in shear and pull, as a structure of steel is judged.
fn strength(case: &Case<'_>) -> Option<Requirement> {
    let bolt = &case.joint.bolt;
    let ductile = bolt.grade.metal == Metal::Steel && bolt.limits.tensile <= DUCTILE;
    let area = bolt.thread.stress_area();
    let borne = resistance::shear(ductile, Plane::Thread, bolt.limits.tensile, area);
    let pulled = resistance::tension(bolt.limits.tensile, area);
    let bending = Bending::of(case);
    let used = |(place, force): (usize, &BoltForce)| {
        let pull = bending.as_ref().map_or(force.axial.max(0.0), |foot| {
            foot.in_bolt(place, force.axial)
        });
        resistance::together(force.shear_size(), borne, pull, pulled)
    };
    let Governing { load, value, each } = worst(case.loads.iter(), |loaded| {
        let bolts = loaded.bolts.iter().enumerate();
        bolts.map(used).fold(0.0, f64::max)
    })?;
    let pried = bending.map_or_else(
        || "prying not known".to_owned(),
        |foot| format!("prying of the {} counted (Thornton 1985)", foot.bent.name),
    );
    Some(Requirement {
        id: "bolt-strength",
        brief: "shear and pull",
        title: "bolt in shear and pull together, as if the faces held nothing".to_owned(),
        load: Some(load),
        each,
        value,
        limit: 1.0,
        sense: Sense::AtMost,
        unit: Shown::Percent,
        advisory: false,
        basis: format!(
            "EN 1993-1-8, table 3.4 (from memory), safety factor 1.25; {pried}; every load case, even one that happens once"
        ),
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
    let needed = WorstFit::of(&bolt.thread).engagement(
        breaking,
        SHEAR_RATIO * bolt.limits.tensile,
        SHEAR_RATIO * solid.material.tensile_strength,
    );
    Some(Requirement {
        id: "engagement",
        brief: "length of thread",
        title: "length of thread in the tapped part".to_owned(),
        load: None,
        each: Vec::new(),
        value: length,
        limit: needed + LOST_THREADS * bolt.thread.pitch,
        sense: Sense::AtLeast,
        unit: Shown::Millimetre,
        advisory: false,
        basis: "so that the bolt breaks before a thread strips, two pitches not full (FED-STD-H28, from memory)".to_owned(),
        cure: "a longer thread, a thread insert of steel, or a weaker class of bolt with its lower torque",
    })
}
