//! Length that the bolts of a joint clamp, and whether a stated bolt fits it.

use super::{Base, Bolt, Joint, PolymerRole};
use crate::diagnostic::Code;
use crate::model::rail::millimetres;
use crate::model::reader::Section;

impl Joint {
    /// Length that a bolt clamps, from head to nut or to the first thread of a tapped part \[m\].
    #[must_use]
    pub fn grip(&self) -> f64 {
        let far = match &self.base {
            Base::Rail(rail) => Some(rail.depth),
            Base::Solid(solid) if solid.engagement.is_none() => Some(solid.thickness),
            Base::Solid(_) => None,
        };
        let washer = self.washer.map_or(0.0, |washer| washer.thickness);
        let plate = self.plate.as_ref();
        let below = plate.filter(|plate| plate.both_sides);
        let clamped = self
            .polymer
            .as_ref()
            .filter(|layer| matches!(layer.role, PolymerRole::Clamped { .. }));
        let sleeve = self.sleeve.as_ref();
        let flange = sleeve.and_then(|sleeve| sleeve.shoulder);
        washer
            + self.foot.as_ref().map_or(0.0, |foot| foot.thickness)
            + clamped.map_or(0.0, |layer| layer.thickness)
            + plate.map_or(0.0, |plate| plate.thickness)
            + flange.map_or(0.0, |flange| flange.thickness)
            + far.map_or(0.0, |far| {
                far + below.map_or(0.0, |plate| plate.thickness) + washer
            })
    }
}

/// `None`, and said, when the bolt of the file is too short for what it clamps, or too long.
pub(super) fn judge_length(section: &Section<'_>, joint: &Joint) -> Option<()> {
    let Bolt { thread, length, .. } = &joint.bolt;
    let Some(length) = *length else {
        return Some(());
    };
    let grip = joint.grip();
    let plain = thread.plain_on(length);
    let solid = match &joint.base {
        Base::Solid(solid) => solid.engagement.map(|engaged| (engaged, solid.thickness)),
        Base::Rail(_) => None,
    };
    let (needed, what) = match solid {
        Some((engaged, _)) => (engaged, "the thread in the part"),
        None => (thread.nut(), "the nut"),
    };
    let (problem, cure) = if length < grip + needed {
        (
            format!(
                "is too short: it clamps {}, and {what} needs {} more",
                millimetres(grip),
                millimetres(needed)
            ),
            "take a longer one, or leave `length` out to be told the shortest",
        )
    } else if plain > grip {
        (
            format!(
                "is too long: its plain shank of {} is longer than the {} that it clamps, so that nothing would be clamped",
                millimetres(plain),
                millimetres(grip)
            ),
            "take a shorter one; leave `length` out for a screw that is threaded to its head",
        )
    } else if let Some((_, deep)) = solid
        && length > grip + deep
    {
        (
            format!(
                "is too long: {} of it would stand in a part {} thick",
                millimetres(length - grip),
                millimetres(deep)
            ),
            "a bolt that stands on the ground of its hole clamps nothing; take a shorter one",
        )
    } else {
        return Some(());
    };
    section.refuse(
        "bolt",
        Code::OutOfRange,
        format!(
            "{} {problem}: {}",
            section.key_name("bolt"),
            millimetres(length)
        ),
        cure,
    );
    None
}
