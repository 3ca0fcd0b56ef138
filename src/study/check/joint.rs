//! Whether each bolted joint holds in every load case.

use super::spread::Spread;
use super::{Check, slug};
use crate::model::Model;
use crate::study::evaluate::Evaluation;
use crate::study::joint::requirement::{Requirement, Unjudged};
use crate::units::Shown;

/// One check for each requirement of each joint, and one for each that its file leaves open.
pub(super) fn checks(model: &Model, evaluation: &Evaluation, spread: &Spread) -> Vec<Check> {
    let mut checks = Vec::new();
    for result in &evaluation.joints {
        let Some(joint) = model.joints.get(result.joint) else {
            continue;
        };
        let judged = result.requirements.iter();
        checks.extend(judged.map(|required| judge(&joint.name, required, spread)));
        let open = result.unjudged.iter();
        checks.extend(open.map(|unjudged| not_checked(&joint.name, unjudged)));
    }
    checks
}

fn judge(joint: &str, required: &Requirement, spread: &Spread) -> Check {
    let check = Check {
        load: required.load,
        basis: required.basis.clone(),
        ..named(joint, required.id, &required.title, required.unit)
    }
    .judged(required.value, required.sense, required.limit, spread);
    let check = if required.advisory {
        check.advisory()
    } else {
        check
    };
    check.cured_by(|| required.cure.to_owned())
}

fn not_checked(joint: &str, unjudged: &Unjudged) -> Check {
    Check {
        basis: "needs more than the file says".to_owned(),
        note: Some(unjudged.reason.to_owned()),
        cure: Some(unjudged.cure.to_owned()),
        ..named(joint, unjudged.id, unjudged.title, Shown::Number)
    }
}

fn named(joint: &str, id: &str, title: &str, unit: Shown) -> Check {
    Check::new(
        format!("joint.{}.{id}", slug(joint)),
        format!("{joint}: {title}"),
        unit,
    )
}
