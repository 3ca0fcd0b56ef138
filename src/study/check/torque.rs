//! Whether the load cases with engine torque are there at all.

use super::spread::Spread;
use super::{Check, Verdict};
use crate::model::Model;
use crate::study::evaluate::Evaluation;
use crate::units::Shown;

/// One check that is not checked, when no load case drives the outputs: launch and full torque are the hardest of all.
pub(super) fn checks(model: &Model, _: &Evaluation, _: &Spread) -> Vec<Check> {
    let missing = match (&model.engine, &model.driveline) {
        _ if model.loads.iter().any(|load| load.drive.is_some()) => return Vec::new(),
        (Some(engine), Some(_)) if engine.torque.is_some() => {
            "no load case has a gear or an output torque"
        }
        (Some(_), Some(_)) => "the [engine] gives no `torque`",
        (Some(_), None) => "there is no [driveline]",
        (None, Some(_)) => "there is no [engine]",
        (None, None) => "there is no [engine] and no [driveline]",
    };
    vec![Check {
        verdict: Verdict::NotChecked,
        basis: "torque of the machine at the outputs".to_owned(),
        note: Some(format!(
            "{missing}, so full torque, launch, reverse and overrun are left out: the hardest cases of most builds"
        )),
        ..Check::new(
            "torque.cases".to_owned(),
            "load cases with torque".to_owned(),
            Shown::Number,
        )
    }]
}
