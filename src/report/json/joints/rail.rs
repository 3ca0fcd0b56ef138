//! Rail and sleeve of a joint under the clamp force, in the results document.

use serde::Serialize;

use crate::model::joint::Sleeve;
use crate::report::json::finite;
use crate::study::joint::rail_clamp::{RailClamp, SleeveShare};

#[derive(Serialize)]
pub(super) struct SleeveOut {
    outer_m: f64,
    inner_m: f64,
    length_m: f64,
    /// Below zero when it stands proud.
    gap_m: f64,
    allowed_gap_m: Option<f64>,
    is_proud: bool,
    /// Whether the most preload closes its gap; else the walls carry all.
    carries: bool,
    /// At the most preload.
    force_n: f64,
    stress_pa: f64,
    /// In the walls before it carries.
    gap_force_n: f64,
}

#[derive(Serialize)]
pub(super) struct RailOut {
    squeeze_rate_n_per_m: f64,
    /// Walls and the plates on them, against which a gap closes.
    closing_rate_n_per_m: f64,
    effective_length_m: f64,
    /// Whether that length was fitted to such sizes.
    is_within_range: bool,
    first_yield_n: f64,
    plastic_n: f64,
    /// One face; `null` for a round rail.
    face_mechanism_n: Option<f64>,
    punching_n: f64,
    /// `null` where no plate stands on them.
    side_walls_n: Option<f64>,
    /// In the walls, and the plates that stand on them, at the most preload.
    wall_force_n: f64,
    /// Share of that which the worse face bends under.
    face_share: f64,
    /// Least that presses bracket or plate on the rail, after all losses.
    gripped_n: f64,
}

impl SleeveOut {
    pub(super) fn of(sleeve: &Sleeve, share: &SleeveShare) -> Self {
        Self {
            outer_m: sleeve.outer,
            inner_m: sleeve.inner,
            length_m: sleeve.length,
            gap_m: sleeve.gap,
            allowed_gap_m: finite(share.allowed_gap),
            is_proud: share.is_proud,
            carries: share.carries,
            force_n: share.force,
            stress_pa: share.stress,
            gap_force_n: share.gap_force,
        }
    }
}

impl RailOut {
    pub(super) fn of(clamp: &RailClamp) -> Self {
        Self {
            squeeze_rate_n_per_m: clamp.squeeze_rate,
            closing_rate_n_per_m: clamp.closing_rate,
            effective_length_m: clamp.effective_length,
            is_within_range: clamp.is_within_range,
            first_yield_n: clamp.first_yield,
            plastic_n: clamp.plastic,
            face_mechanism_n: clamp.face,
            punching_n: clamp.punching,
            side_walls_n: clamp.side_walls,
            wall_force_n: clamp.walls,
            face_share: clamp.face_share,
            gripped_n: clamp.gripped,
        }
    }
}
