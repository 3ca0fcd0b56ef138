//! How to put a joint together, and what to mind of its numbers.

use crate::model::joint::{Base, Joint, PolymerRole};

/// What to mind before relying on a joint.
pub const CAUTIONS: [&str; 2] = [
    "Preload figures are estimates from friction as it usually is. Until torque against tension is measured on your own bolts, \
     lubricant and wrench, the preload may lie outside the range told here.",
    "A joint whose loss endangers people needs a licensed engineer, who has seen the work and not the file alone.",
];

/// What to do in the workshop, in its order.
#[must_use]
pub fn notes(joint: &Joint) -> Vec<String> {
    let mut notes = vec![
        "Take paint, powder and rubber off every clamped face, and coat again around the joint when it is tight; paint creeps and takes the preload with it.".to_owned(),
    ];
    if let Some(sleeve) = &joint.sleeve {
        notes.push("Cut the sleeve flush to slightly short of the rail, never proud, with square ends and no burr.".to_owned());
        if sleeve.weld.is_some() {
            notes.push("Weld the sleeve in before the last cut to length, and true the ends after it has cooled.".to_owned());
        }
    }
    notes.push(match joint.washer {
        Some(_) => "Put the hardened washers under head and nut; soft ones settle.".to_owned(),
        None => "Where washers are used, take hardened ones under head and nut; soft ones settle."
            .to_owned(),
    });
    if let Base::Solid(solid) = &joint.base
        && solid.engagement.is_some()
    {
        notes.push(
            "Clean the tapped holes to the bottom, and see that no bolt ends on it.".to_owned(),
        );
    }
    if let Some(polymer) = &joint.polymer
        && polymer.role == PolymerRole::Locates
    {
        notes.push("See that the polymer only locates: no face that carries the clamp force may rest on it.".to_owned());
    }
    notes.push(format!(
        "Lubricate as the file says ({}) and no other way: what is oiled besides is tightened too far, what is dry too little.",
        joint.bolt.lubrication.name
    ));
    notes.push(
        "Tighten with the powertrain settled on its mounts, not hung from the hoist.".to_owned(),
    );
    notes.push(match joint.pattern.len() {
        0 | 1 => "Tighten in two steps: half the torque, then all of it.".to_owned(),
        2 => "Tighten in turn: half the torque at both bolts, then all of it at both, then the first once more.".to_owned(),
        _ => "Tighten crosswise from the middle outward: half the torque at all bolts, then all of it at all, then the first once more.".to_owned(),
    });
    notes.push("Mark head and part with a line, and check the torque after the first heat cycles and the first rough road.".to_owned());
    notes
}
