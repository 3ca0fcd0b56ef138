//! Whether a position was found in every load case, and whether the mounts hold every motion.

use super::spread::Spread;
use super::{Check, Verdict, slug};
use crate::model::Model;
use crate::study::evaluate::Evaluation;
use crate::units::Shown;

/// One failed check for each load case without a position, one close check for motions that are barely held at rest.
pub(super) fn checks(model: &Model, evaluation: &Evaluation, _: &Spread) -> Vec<Check> {
    let mut checks = Vec::new();
    for result in &evaluation.loads {
        let load = &model.loads[result.load];
        let blank = |what: &str| Check {
            load: Some(result.load),
            ..Check::new(
                format!("{what}.{}", slug(&load.name)),
                format!("position under {}", load.name),
                Shown::Number,
            )
        };
        match &result.outcome {
            Err(failure) => checks.push(Check {
                verdict: Verdict::Fails,
                basis: "the mounts must carry every load case".to_owned(),
                note: Some(failure.to_string()),
                cure: Some(
                    "stiffer mounts, stops, or a mount that holds the motion named".to_owned(),
                ),
                ..blank("held")
            }),
            Ok(found) if result.load == 0 => {
                for motion in &found.barely_held {
                    checks.push(Check {
                        verdict: Verdict::Close,
                        title: "motion barely held at rest".to_owned(),
                        basis: "a motion with less than a ten-thousandth of the largest stiffness (common practice)".to_owned(),
                        note: Some(motion.to_string()),
                        cure: Some("add stiffness against this motion".to_owned()),
                        ..blank("held")
                    });
                }
                for motion in &found.held_by_weight_only {
                    checks.push(Check {
                        verdict: Verdict::Close,
                        title: "motion held by the weight only".to_owned(),
                        basis: "the powertrain hangs: no spring holds this motion".to_owned(),
                        note: Some(motion.to_string()),
                        cure: Some("add a mount or a rod that holds this motion".to_owned()),
                        ..blank("hangs")
                    });
                }
            }
            Ok(_) => {}
        }
    }
    checks
}
