//! What a joint needs that its file leaves unknown: said, never passed over.

use super::Unjudged;
use crate::model::Model;
use crate::model::joint::bolt::Threads;
use crate::model::joint::{Joint, PolymerRole};
use crate::model::material::HeatAffected;
use crate::model::rail::Profile;

/// Everything about a joint that cannot be judged.
pub(in crate::study::joint) fn unjudged(model: &Model, joint: &Joint) -> Vec<Unjudged> {
    [
        spacer(model, joint),
        fatigue(joint),
        creep(joint),
        weld(model, joint),
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
    let rail = model.rails.get(joint.base.rail()?.rail)?;
    let plate = joint.plate.as_ref()?;
    let unknown = |affected| affected == HeatAffected::NotKnown;
    let either = unknown(rail.material.heat_affected) || unknown(plate.material.heat_affected);
    (joint.weld.is_some() && either).then_some(Unjudged {
        id: "weld-softening",
        title: "strength of the metal beside the weld",
        reason: "the heat of welding weakens this material by what no list used here says; the weld is computed with its full strength",
        cure: "give `heat_affected` to the material, or bolt the plate",
    })
}
