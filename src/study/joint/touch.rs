//! How what lies on a round tube touches it, which decides what holds it from turning about the tube.

use super::rail_clamp::RailClamp;
use crate::model::joint::{Joint, Seat};
use crate::model::rail::Through;

/// What a foot or plate stands on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Touch {
    /// A tube that it is shaped to.
    Saddle,
    /// The ends of sleeves that go through the tube and carry: a flat rim on the top of the tube.
    SleeveEnds {
        /// From the middle of a sleeve to the middle of its rim \[m\].
        rim: f64,
    },
    /// A tube that it touches along a line, and nothing else.
    Line,
}

impl Touch {
    /// On a round tube; `None` on anything flat.
    pub(super) fn of(joint: &Joint, rail: Option<&RailClamp>) -> Option<Self> {
        joint
            .base
            .rail()
            .filter(|base| base.through == Through::Diameter)?;
        if has_saddle(joint) {
            return Some(Self::Saddle);
        }
        let carries = rail
            .and_then(|rail| rail.sleeve)
            .is_some_and(|share| share.carries);
        let sleeve = joint.sleeve.as_ref();
        let through = sleeve.filter(|sleeve| carries && sleeve.seat == Seat::Through);
        Some(through.map_or(Self::Line, |sleeve| Self::SleeveEnds {
            rim: (sleeve.outer + sleeve.inner) / 4.0,
        }))
    }
}

/// Whether what lies on the rail, the plate or else the foot, is shaped to a tube.
fn has_saddle(joint: &Joint) -> bool {
    match (&joint.plate, &joint.foot) {
        (Some(plate), _) => plate.saddle,
        (None, Some(foot)) => foot.saddle,
        (None, None) => false,
    }
}
