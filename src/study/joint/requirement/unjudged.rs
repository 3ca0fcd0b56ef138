//! What a joint needs that its file leaves unknown: said, never passed over.

use super::Unjudged;
use super::foot::below_upright;
use super::weld::base;
use crate::model::Model;
use crate::model::joint::bolt::Threads;
use crate::model::joint::{Joint, PolymerRole};
use crate::model::material::{HeatAffected, Material};
use crate::model::rail::Profile;

/// Everything about a joint that cannot be judged.
pub(in crate::study::joint) fn unjudged(model: &Model, joint: &Joint) -> Vec<Unjudged> {
    [
        spacer(model, joint),
        fatigue(joint),
        creep(joint),
        weld(model, joint),
        foot(joint),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn spacer(model: &Model, joint: &Joint) -> Option<Unjudged> {
    let rail = model.rails.get(joint.base.rail()?.rail)?;
    matches!(rail.profile, Profile::Channel { .. }).then_some(Unjudged {
        id: "spacer",
        title: "what holds the flanges of the channel apart",
        reason: "nothing holds the flanges of an open channel apart; the joint is computed as if filled by a rigid spacer block",
        cure: "fit a spacer block between the flanges, as long as the plate and as high as the inside of the channel",
    })
}

/// Whether a lasting amplitude is known for the thread.
pub(super) fn lasts(joint: &Joint) -> bool {
    joint.bolt.grade.heat_treated && joint.bolt.threads != Threads::Cut
}

fn fatigue(joint: &Joint) -> Option<Unjudged> {
    (!lasts(joint)).then_some(Unjudged {
        id: "fatigue",
        title: "stress amplitude of the bolt between its frequent loads",
        reason: "lasting amplitudes are listed for rolled threads of quenched and tempered bolts only",
        cure: "a bolt of class 8.8 or above with rolled threads, or the maker's lasting amplitude",
    })
}

fn creep(joint: &Joint) -> Option<Unjudged> {
    let polymer = joint.polymer.as_ref()?;
    let clamped = matches!(polymer.role, PolymerRole::Clamped { .. });
    (clamped && polymer.material.long_term_modulus.is_none()).then_some(Unjudged {
        id: "polymer-creep",
        title: "preload that the polymer leaves after a thousand hours",
        reason: "its modulus after 1000 h is not known; the preload is computed as if it did not creep",
        cure: "give `long_term_modulus` to the material, or keep polymer out of the way of the clamp force",
    })
}

fn weld(model: &Model, joint: &Joint) -> Option<Unjudged> {
    let unknown = |material: &Material| material.heat_affected == HeatAffected::NotKnown;
    let of_plate = joint.weld.is_some() && {
        let parts = [
            base(model, joint).map(|(_, material)| material),
            joint.plate.as_ref().map(|plate| &plate.material),
        ];
        parts.into_iter().flatten().any(unknown)
    };
    let of_upright = joint.upright.is_some_and(|upright| upright.weld.is_some())
        && below_upright(joint).is_some_and(|bent| unknown(bent.material));
    let (title, reason) = match (of_plate, of_upright) {
        (false, false) => return None,
        (true, false) => (
            "strength of the metal beside the weld",
            "the heat of welding weakens this material by what no list used here says; the weld is computed with its full strength",
        ),
        (false, true) => (
            "strength of the metal beside the weld of the upright",
            "the heat of welding weakens this material by what no list used here says; the weld and what bends beside it are computed with its full strength",
        ),
        (true, true) => (
            "strength of the metal beside the welds of plate and upright",
            "the heat of welding weakens these materials by what no list used here says; the welds and what bends beside them are computed with their full strength",
        ),
    };
    Some(Unjudged {
        id: "weld-softening",
        title,
        reason,
        cure: if of_upright {
            "give `heat_affected` to the material, or bend the upright from the foot"
        } else {
            "give `heat_affected` to the material, or bolt the plate"
        },
    })
}

fn foot(joint: &Joint) -> Option<Unjudged> {
    if joint.upright.is_some() {
        return None;
    }
    let title = match joint.foot {
        Some(_) => "bending and prying of the foot",
        None => "bending and prying of the plate that the bracket is welded to",
    };
    Some(Unjudged {
        id: "foot",
        title,
        reason: "how far the bolts stand from what rises from it is not in the file",
        cure: "say how far it is from the middle of the nearest bolts to its face: `upright = { arm = \"25 mm\" }`",
    })
}
