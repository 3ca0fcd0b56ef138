//! The two metals of a joint that lie farthest apart, of those that count.

use super::{Case, Requirement};
use crate::strength::galvanic::Advice;
use crate::study::check::Sense;
use crate::study::joint::metals::MetalPair;
use crate::units::Shown;

pub(super) fn requirements(case: &Case<'_>) -> Option<Requirement> {
    let counting = case.metals.iter().filter(|metals| metals.counts());
    let worst = counting.max_by(|a, b| a.pair.difference.total_cmp(&b.pair.difference))?;
    let pair = worst.pair;
    Some(Requirement {
        id: "metals",
        brief: "potential in V",
        title: format!("potential in V between {}", words(worst)),
        load: None,
        each: Vec::new(),
        value: pair.difference,
        limit: pair.allowed,
        sense: Sense::AtMost,
        unit: Shown::Number,
        advisory: true,
        basis: format!(
            "anodic indices and what is usual in this environment (MIL-STD-889 style list, from memory): a first look, not a rate; nobler over other area {:.1}",
            pair.area_ratio
        ),
        cure: match pair.advice {
            Advice::ZincSpent => "expect the zinc to be spent: look at it each year, or coat both",
            Advice::Avoid => {
                "other metals, or coat both and keep the wet out; never coat only the less noble one"
            }
            Advice::Coat | Advice::Fine => "coat both, or the nobler one; sealant in the gap",
        },
    })
}

fn words(metals: &MetalPair) -> String {
    match metals.eaten_and_nobler() {
        Some([eaten, nobler]) => format!("{eaten} and {nobler}: the {eaten} is eaten"),
        None => format!("{} and {}", metals.parts[0], metals.parts[1]),
    }
}
