//! Whether a frame that twists loads the mounts: stiff mounts make the powertrain a part of the frame.

use super::spread::Spread;
use super::{Check, Sense, millimetres};
use crate::model::Model;
use crate::spatial::STANDARD_GRAVITY;
use crate::study::evaluate::Evaluation;
use crate::units::{Digits, Shown, show};

/// One check: the largest change of force at any mount while the chassis gives way at any one mount.
///
/// # Source
/// Common practice: more than the weight of the powertrain, again and again,
/// cracks casings and brackets; rubber, or three points, let a frame twist.
pub(super) fn checks(model: &Model, evaluation: &Evaluation, spread: &Spread) -> Vec<Check> {
    let worst = evaluation
        .frame_twist
        .iter()
        .max_by(|a, b| a.most.total_cmp(&b.most));
    let Some(worst) = worst.filter(|_| model.criteria.frame_twist > 0.0) else {
        return Vec::new();
    };
    let weight = model.mass.mass() * STANDARD_GRAVITY;
    let by = millimetres(model.criteria.frame_twist);
    let (at, most_at) = (
        &model.mounts[worst.at].name,
        &model.mounts[worst.most_at].name,
    );
    let check = Check {
        load: Some(0),
        basis: format!(
            "weight of the powertrain {}, while the chassis rises by {by} at {at} (common practice, `targets.frame_twist`)",
            show(weight, Shown::Newton, Digits::Significant(3)),
        ),
        ..Check::new(
            "frame-twist".to_owned(),
            format!("force that a twisting frame puts into {most_at}"),
            Shown::Newton,
        )
    }
    .judged(worst.most, Sense::AtMost, weight, spread)
    .advisory()
    .cured_by(|| {
        "softer isolators, three mounts in place of four, or a frame that is braced so that it does not twist; \
         with stiff mounts the casing carries what the frame should"
            .to_owned()
    });
    vec![check]
}
