//! The lightest sizes of a joint that hold, out of those that may be chosen.

mod layout;
mod variant;

use crate::model::Model;
use crate::model::joint::Joint;

use super::requirement::Requirement;
use super::{JointResult, of_joint};
use crate::study::evaluate::LoadResult;
pub use variant::SLEEVE_STEEL;
use variant::{Variant, variants};

/// What came of looking for the lightest sizes.
#[derive(Debug, Clone, PartialEq)]
pub struct Sizing {
    /// The lightest sizes with which every requirement holds; where none do, those that come nearest.
    pub best: Trial,
    /// Whether every requirement that is no rule of good practice holds with them.
    pub holds: bool,
    /// One step down in one size, the others kept, with why it does not hold; empty where nothing holds.
    pub smaller: Vec<Trial>,
    /// How many combinations there were to choose from.
    pub choices: usize,
}

/// One combination of sizes, computed under all load cases.
#[derive(Debug, Clone, PartialEq)]
pub struct Trial {
    /// The joint as it was judged: sizes that were tried, torque and length of the bolt left open, all else as in the file.
    pub joint: Joint,
    /// Torque to set [N m].
    pub torque: f64,
    /// Mass of bolts with nuts, sleeves and plates \[kg\].
    pub mass: f64,
    /// The requirement that is used most, rules of good practice left out.
    pub governs: Requirement,
    /// Share of its limit that is used, with what the scatter of the isolators adds; above 1 does not hold.
    pub used: f64,
}

impl Trial {
    /// Whether everything but rules of good practice holds, within the scatter of the isolators as well.
    #[must_use]
    pub fn holds(&self) -> bool {
        self.used <= 1.0
    }
}

/// Load cases with the isolators as they are, and at the ends of their scatter.
pub(in crate::study) struct Reactions<'a> {
    pub(in crate::study) nominal: &'a [LoadResult],
    pub(in crate::study) ends: Vec<&'a [LoadResult]>,
}

/// The sizes of a joint that asks for them; `None` for one that does not.
///
/// Sizes are ranked by mass, of equal mass the weaker class first, and tried from the lightest
/// on under the reactions as they are: sizes of a joint do not move the powertrain. What holds
/// does so by more than the scatter of the isolators moves it, so that the verdicts on the sizes
/// found are all "ok".
#[must_use]
pub(in crate::study) fn size(
    model: &Model,
    reactions: &Reactions<'_>,
    place: usize,
) -> Option<Sizing> {
    let joint = model.joints.get(place)?;
    let choices = joint.choices.as_ref()?;
    let variants = variants(model, joint, choices);
    let mut nearest: Option<Trial> = None;
    for variant in &variants {
        let trial = tried(model, reactions, place, variant)?;
        if trial.holds() {
            let smaller = variant
                .one_step_down(&variants)
                .into_iter()
                .filter_map(|lesser| tried(model, reactions, place, lesser));
            return Some(Sizing {
                smaller: smaller.collect(),
                best: trial,
                holds: true,
                choices: variants.len(),
            });
        }
        if nearest.as_ref().is_none_or(|near| trial.used < near.used) {
            nearest = Some(trial);
        }
    }
    nearest.map(|best| Sizing {
        best,
        holds: false,
        smaller: Vec::new(),
        choices: variants.len(),
    })
}

fn tried(
    model: &Model,
    reactions: &Reactions<'_>,
    place: usize,
    variant: &Variant,
) -> Option<Trial> {
    let joint: &Joint = &variant.joint;
    let JointResult {
        preload,
        requirements,
        ..
    } = of_joint(model, reactions.nominal, place, joint);
    let (mut governs, mut used) = most_used(&requirements, &[])?;
    // What fails by itself fails all the more within the scatter.
    if used <= 1.0 {
        let ends: Vec<Vec<Requirement>> = reactions
            .ends
            .iter()
            .map(|loads| of_joint(model, loads, place, joint).requirements)
            .collect();
        (governs, used) = most_used(&requirements, &ends)?;
    }
    Some(Trial {
        joint: joint.clone(),
        torque: preload.torque,
        mass: variant.mass,
        governs: governs.clone(),
        used,
    })
}

/// The requirement that is used most, rules of good practice left out, and how much of its limit is used with what the scatter adds.
fn most_used<'r>(
    requirements: &'r [Requirement],
    ends: &[Vec<Requirement>],
) -> Option<(&'r Requirement, f64)> {
    requirements
        .iter()
        .filter(|one| !one.advisory)
        .map(|one| {
            let moved = ends
                .iter()
                .filter_map(|end| end.iter().find(|other| other.id == one.id))
                .map(|other| (other.value - one.value).abs())
                .fold(0.0, f64::max);
            (one, one.utilisation_within(moved))
        })
        .max_by(|a, b| a.1.total_cmp(&b.1))
}
