//! The lightest sizes of a joint that hold, out of those that may be chosen.

mod layout;
mod variant;

use crate::model::Model;
use crate::model::fastener::{Grade, Thread};
use crate::model::joint::Joint;

use super::requirement::Requirement;
use super::{JointResult, of_joint};
use crate::study::evaluate::LoadResult;
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
    /// Thread of the bolts.
    pub thread: Thread,
    /// Their strength class.
    pub grade: Grade,
    /// How many, in [`Trial::pattern`].
    pub bolts: usize,
    /// Where they are, in the axes of the joint face \[m\].
    pub pattern: Vec<[f64; 2]>,
    /// Outside diameter of the sleeves \[m\]; `None` without.
    pub sleeve: Option<f64>,
    /// Length of the sleeves \[m\], at the short end of their tolerance; `None` without.
    pub sleeve_length: Option<f64>,
    /// Thickness of the plate \[m\]; `None` without.
    pub plate: Option<f64>,
    /// Torque to set [N m].
    pub torque: f64,
    /// Mass of bolts with nuts, sleeves and plates \[kg\].
    pub mass: f64,
    /// The requirement that is used most, rules of good practice left out.
    pub governs: Requirement,
}

/// The sizes of a joint that asks for them; `None` for one that does not.
///
/// Sizes are ranked by mass, of equal mass the weaker class first, and tried from the lightest
/// on under the reactions as they are: sizes of a joint do not move the powertrain. The scatter
/// of the isolators is not counted in; the verdicts of the file's own sizes are.
#[must_use]
pub(in crate::study) fn size(model: &Model, loads: &[LoadResult], place: usize) -> Option<Sizing> {
    let joint = model.joints.get(place)?;
    let choices = joint.choices.as_ref()?;
    let variants = variants(model, joint, choices);
    let mut nearest: Option<Trial> = None;
    for variant in &variants {
        let trial = tried(model, loads, place, variant)?;
        if trial.governs.holds() {
            let smaller = variant
                .one_step_down(&variants)
                .into_iter()
                .filter_map(|lesser| tried(model, loads, place, lesser));
            return Some(Sizing {
                smaller: smaller.collect(),
                best: trial,
                holds: true,
                choices: variants.len(),
            });
        }
        if nearest
            .as_ref()
            .is_none_or(|near| trial.governs.utilisation() < near.governs.utilisation())
        {
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

fn tried(model: &Model, loads: &[LoadResult], place: usize, variant: &Variant) -> Option<Trial> {
    let joint: &Joint = &variant.joint;
    let JointResult {
        preload,
        requirements,
        ..
    } = of_joint(model, loads, place, joint);
    let governs = requirements
        .into_iter()
        .filter(|one| !one.advisory)
        .max_by(|a, b| a.utilisation().total_cmp(&b.utilisation()))?;
    Some(Trial {
        thread: joint.bolt.thread,
        grade: joint.bolt.grade,
        bolts: joint.pattern.len(),
        pattern: joint.pattern.clone(),
        sleeve: joint.sleeve.as_ref().map(|sleeve| sleeve.outer),
        sleeve_length: joint.sleeve.as_ref().map(|sleeve| sleeve.length),
        plate: joint.plate.as_ref().map(|plate| plate.thickness),
        torque: preload.torque,
        mass: variant.mass,
        governs,
    })
}
