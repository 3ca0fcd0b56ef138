//! Pairs of metals of a joint, in the results document.

use serde::Serialize;

use crate::report::content::joints::metals::to_do;
use crate::strength::galvanic::{Advice, AreaEffect};
use crate::study::joint::metals::MetalPair;

/// Two parts that touch, or are joined by the bolts.
#[derive(Serialize)]
pub(super) struct MetalPairOut {
    parts: [&'static str; 2],
    /// Volts below gold of what is outermost of each.
    anodic_indices_v: [f64; 2],
    difference_v: f64,
    /// In the environment of the joint.
    allowed_v: f64,
    /// `null` when they are alike.
    eaten: Option<&'static str>,
    /// Nobler area over the other.
    area_ratio: f64,
    /// `mild`, `worse` or `severe`.
    area_effect: &'static str,
    /// `fine`, `zinc spent`, `coat` or `avoid`; what holds without an excuse.
    advice: &'static str,
    /// `nobler side coated` or `zinc protects steel`; `null` where the pair counts.
    excuse: Option<&'static str>,
    /// In words, with the parts to coat.
    to_do: String,
}

impl MetalPairOut {
    pub(super) fn of(metals: &MetalPair) -> Self {
        let pair = &metals.pair;
        Self {
            parts: metals.parts,
            anodic_indices_v: metals.indices,
            difference_v: pair.difference,
            allowed_v: pair.allowed,
            eaten: metals.eaten_and_nobler().map(|[eaten, _]| eaten),
            area_ratio: pair.area_ratio,
            area_effect: match pair.area_effect {
                AreaEffect::Mild => "mild",
                AreaEffect::Worse => "worse",
                AreaEffect::Severe => "severe",
            },
            advice: match pair.advice {
                Advice::Fine => "fine",
                Advice::ZincSpent => "zinc spent",
                Advice::Coat => "coat",
                Advice::Avoid => "avoid",
            },
            excuse: metals.excuse.map(|excuse| excuse.word()),
            to_do: to_do(metals),
        }
    }
}
