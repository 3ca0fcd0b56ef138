//! Whether every gap stays open in every load case.

use super::spread::Spread;
use super::{Check, Sense, Subject, millimetres, slug, solved};
use crate::model::Model;
use crate::model::load::LoadClass;
use crate::model::surroundings::Clearance;
use crate::study::evaluate::Evaluation;
use crate::units::Shown;

/// Creep below this is not spoken of \[m\]: it rounds to nothing.
const WORTH_TELLING: f64 = 0.05e-3;

/// One check for each clearance, at the load case with the smallest gap, less what it loses over the years.
///
/// Load cases of class `restraint` do not count: they happen once.
pub(super) fn checks(model: &Model, evaluation: &Evaluation, spread: &Spread) -> Vec<Check> {
    model
        .clearances
        .iter()
        .enumerate()
        .map(|(index, clearance)| check(model, evaluation, spread, index, clearance))
        .collect()
}

fn check(
    model: &Model,
    evaluation: &Evaluation,
    spread: &Spread,
    index: usize,
    clearance: &Clearance,
) -> Check {
    let blank = Check {
        subject: Some(Subject::Clearance(index)),
        basis: format!(
            "`keep` of the clearance, gap {} as fitted",
            millimetres(clearance.gap)
        ),
        ..Check::new(
            format!("clearance.{}", slug(&clearance.name)),
            format!("gap {}", clearance.name),
            Shown::Millimetre,
        )
    };
    let smallest = solved(model, evaluation)
        .filter(|(load, ..)| load.class != LoadClass::Restraint)
        .filter_map(|(_, result, _)| Some((result.load, result.gaps[index]?)))
        .min_by(|a, b| a.1.total_cmp(&b.1));
    let Some((load, gap)) = smallest else {
        return Check {
            note: Some("no load case with this point has a position".to_owned()),
            ..blank
        };
    };
    let lost = evaluation
        .creep
        .as_ref()
        .map_or(0.0, |creep| creep.gaps_lost[index].max(0.0));
    let title = if lost < WORTH_TELLING {
        blank.title.clone()
    } else {
        format!(
            "{} less {} as the rubber creeps",
            blank.title,
            millimetres(lost)
        )
    };
    let left = gap - lost;
    let check = Check {
        load: Some(load),
        title,
        ..blank
    }
    .judged(left, Sense::AtLeast, clearance.keep, spread);
    let missing = clearance.keep - left + check.uncertainty;
    check.cured_by(|| {
        format!(
            "open the gap by {} or more, or hold `{}` closer: stiffer isolators, mounts further apart, a stop",
            millimetres((missing * 1e4).ceil() / 1e4),
            model.points[clearance.point].name
        )
    })
}
