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
        flanges(model, joint),
        fatigue(joint),
        creep(joint),
        weld(model, joint),
        foot(joint),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn flanges(model: &Model, joint: &Joint) -> Option<Unjudged> {
    let rail = model.rails.get(joint.base.rail()?.rail)?;
    let is_channel = matches!(rail.profile, Profile::Channel { .. });
    (is_channel && !joint.spacer).then_some(Unjudged {
        id: "flanges",
        brief: "flanges of channel",
        title: "bending of the flanges of the channel".to_owned(),
        reason: "what bends the flanges of an open channel beside the bolts is not computed",
        cure: "fit a solid block between the flanges, as long as the foot, and say so: `spacer = true`",
    })
}

/// Whether a lasting amplitude is known for the thread.
pub(super) fn lasts(joint: &Joint) -> bool {
    joint.bolt.grade.heat_treated && joint.bolt.threads != Threads::Cut
}

fn fatigue(joint: &Joint) -> Option<Unjudged> {
    (!lasts(joint)).then_some(Unjudged {
        id: "fatigue",
        brief: "stress amplitude",
        title: "stress amplitude of the bolt between its frequent loads".to_owned(),
        reason: "lasting amplitudes are listed for rolled threads of quenched and tempered bolts only",
        cure: "a bolt of class 8.8 or above with rolled threads, or the maker's lasting amplitude",
    })
}

fn creep(joint: &Joint) -> Option<Unjudged> {
    let polymer = joint.polymer.as_ref()?;
    let clamped = matches!(polymer.role, PolymerRole::Clamped { .. });
    (clamped && polymer.material.long_term_modulus.is_none()).then_some(Unjudged {
        id: "polymer-creep",
        brief: "left by the polymer",
        title: "preload that the polymer leaves after a thousand hours".to_owned(),
        reason: "its modulus after 1000 h is not known; the preload is computed as if it did not creep",
        cure: "give `long_term_modulus` to the material, or keep polymer out of the way of the clamp force",
    })
}

fn weld(model: &Model, joint: &Joint) -> Option<Unjudged> {
    let unknown = |material: &Material| material.heat_affected == HeatAffected::NotKnown;
    let base = base(model, joint).map(|(_, material)| material);
    let plate = joint.plate.as_ref().map(|plate| &plate.material);
    let bent = below_upright(joint).map(|bent| bent.material);
    let of_upright = joint.upright.is_some_and(|upright| upright.weld.is_some());
    let sleeve = joint.sleeve.as_ref();
    let of_sleeve = sleeve.is_some_and(|sleeve| sleeve.weld.is_some());
    let sleeve = sleeve.map(|sleeve| &sleeve.material);
    let welds = [
        ("plate", joint.weld.is_some(), [base, plate]),
        ("upright", of_upright, [bent, None]),
        ("sleeve", of_sleeve, [base, sleeve]),
    ];
    let softened = welds.into_iter().filter(|(_, is_welded, beside)| {
        *is_welded && beside.iter().copied().flatten().any(unknown)
    });
    let names: Vec<&str> = softened.map(|(name, ..)| name).collect();
    (!names.is_empty()).then(|| Unjudged {
        id: "weld-softening",
        brief: "metal beside weld",
        title: format!(
            "strength of the metal beside the weld of the {}",
            names.join(" and of the ")
        ),
        reason: "the heat of welding weakens this material by what no list used here says; weld and metal are computed with their full strength",
        cure: "give `heat_affected` to the material, or join without welding",
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
        brief: "bending of the foot",
        title: title.to_owned(),
        reason: "how far the bolts stand from what rises from it is not in the file",
        cure: "say how far it is from the middle of the nearest bolts to its face: `upright = { arm = \"25 mm\" }`",
    })
}
