//! Whether each bolted joint holds in every load case.

use super::spread::Spread;
use super::{Check, Subject, slug};
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
        let of = |id: &'static str| OfJoint {
            name: &joint.name,
            place: result.joint,
            id,
        };
        let judged = result.requirements.iter();
        checks.extend(judged.map(|required| judge(&of(required.id), required, spread)));
        let open = result.unjudged.iter();
        checks.extend(open.map(|unjudged| not_checked(&of(unjudged.id), unjudged)));
    }
    checks
}

/// A requirement and the joint that it is one of.
struct OfJoint<'a> {
    name: &'a str,
    place: usize,
    id: &'static str,
}

impl OfJoint<'_> {
    fn check(&self, title: &str, unit: Shown) -> Check {
        Check {
            subject: Some(Subject::Requirement {
                joint: self.place,
                id: self.id,
            }),
            ..Check::new(
                format!("joint.{}.{}", slug(self.name), self.id),
                format!("{}: {title}", self.name),
                unit,
            )
        }
    }
}

fn judge(of: &OfJoint<'_>, required: &Requirement, spread: &Spread) -> Check {
    let check = Check {
        load: required.load,
        basis: required.basis.clone(),
        ..of.check(&required.title, required.unit)
    }
    .judged(required.value, required.sense, required.limit, spread);
    let check = if required.advisory {
        check.advisory()
    } else {
        check
    };
    check.cured_by(|| required.cure.to_owned())
}

fn not_checked(of: &OfJoint<'_>, unjudged: &Unjudged) -> Check {
    Check {
        basis: "needs more than the file says".to_owned(),
        note: Some(unjudged.reason.to_owned()),
        cure: Some(unjudged.cure.to_owned()),
        ..of.check(&unjudged.title, Shown::Number)
    }
}
