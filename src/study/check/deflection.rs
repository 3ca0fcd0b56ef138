//! Whether each isolator stays within the deflection it is allowed for a long life.

use super::{Check, Sense, Verdict, at_least_percent, slug, states_of};
use crate::model::Model;
use crate::model::isolator::AXIS_NAMES;
use crate::model::load::LoadClass;
use crate::study::evaluate::Evaluation;
use crate::units::Shown;

/// One check for each mount and axis with a limit, at the worst load case of class `service` or `durability`.
///
/// Rarer classes do not count: the limits are for a long life.
pub(super) fn checks(model: &Model, evaluation: &Evaluation) -> Vec<Check> {
    let mut checks = Vec::new();
    for (index, mount) in model.mounts.iter().enumerate() {
        let isolator = &model.isolators[mount.isolator];
        if isolator.limits.iter().all(Option::is_none) {
            checks.push(Check {
                basis: "no limit in the file".to_owned(),
                note: Some(format!("give `limits` to [isolator.{}]", isolator.name)),
                ..Check::new(
                    format!("deflection.{}", slug(&mount.name)),
                    format!("{} deflection", mount.name),
                    Shown::Millimetre,
                )
            });
        }
        for (axis, limit) in isolator.limits.iter().enumerate() {
            if let Some(limit) = *limit {
                checks.extend(check(model, evaluation, index, axis, limit));
            }
        }
    }
    checks
}

fn check(
    model: &Model,
    evaluation: &Evaluation,
    mount: usize,
    axis: usize,
    limit: f64,
) -> Option<Check> {
    let name = &model.mounts[mount].name;
    let isolator = &model.isolators[model.mounts[mount].isolator];
    let axis_name = AXIS_NAMES[axis];
    let (load, deflection) = states_of(model, evaluation, mount)
        .filter(|(load, ..)| matches!(load.class, LoadClass::Service | LoadClass::Durability))
        .map(|(_, load, state)| (load, state.isolator_deflection[axis].abs()))
        .max_by(|a, b| a.1.total_cmp(&b.1))?;
    let rest = states_of(model, evaluation, mount)
        .next()
        .map_or(0.0, |(_, _, state)| state.isolator_deflection[axis].abs());
    let checked = Check {
        load: Some(load),
        basis: format!("`limits.{axis_name}` of isolator {}", isolator.name),
        ..Check::new(
            format!("deflection.{}.{axis_name}", slug(name)),
            format!("{name} deflection along {axis_name}"),
            Shown::Millimetre,
        )
    }
    .judged(
        deflection,
        Sense::AtMost,
        limit,
        isolator.scatter * deflection,
    );
    let weight_alone = checked.verdict == Verdict::Fails && rest > limit;
    Some(checked.cured_by(|| {
        let stiffer = deflection * (1.0 + isolator.scatter) / limit - 1.0;
        let cure = format!(
            "raise the rate along {axis_name} by {} or more, or take an isolator that may move further",
            at_least_percent(stiffer)
        );
        if weight_alone {
            format!("{cure}; the weight alone passes the limit")
        } else {
            cure
        }
    }))
}
