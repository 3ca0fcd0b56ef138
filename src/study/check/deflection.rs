//! Whether each isolator stays within the deflection it is allowed for a long life.

use super::remedy::{smallest_raise, state_again, with_rate};
use super::spread::Spread;
use super::{Check, Sense, slug, states_of, way_of};
use crate::model::Model;
use crate::model::isolator::AXIS_NAMES;
use crate::model::load::LoadClass;
use crate::study::evaluate::Evaluation;
use crate::units::{Digits, Shown, show};

/// From this factor on a rate is more likely mistyped than too low.
const UNLIKELY: f64 = 2.5;

/// One check for each mount and axis with a limit, at the worst load case of class `service` or `durability`.
///
/// Rarer classes do not count: the limits are for a long life.
pub(super) fn checks(model: &Model, evaluation: &Evaluation, spread: &Spread) -> Vec<Check> {
    let mut checks = Vec::new();
    for (index, mount) in model.mounts.iter().enumerate() {
        let isolator = &model.isolators[mount.isolator];
        let unlimited = isolator.limits.iter().all(Option::is_none);
        // Where the size of the rubber is known its strain is checked.
        if unlimited && isolator.strain.is_none() {
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
                checks.extend(check(model, evaluation, spread, index, axis, limit));
            }
        }
    }
    checks
}

fn check(
    model: &Model,
    evaluation: &Evaluation,
    spread: &Spread,
    mount: usize,
    axis: usize,
    limit: f64,
) -> Option<Check> {
    let name = &model.mounts[mount].name;
    let isolator = &model.isolators[model.mounts[mount].isolator];
    let axis_name = AXIS_NAMES[axis];
    let way = way_of(&model.mounts[mount].axes.column(axis).into_owned());
    let (load, deflection) = states_of(model, evaluation, mount)
        .filter(|(load, ..)| matches!(load.class, LoadClass::Service | LoadClass::Durability))
        .map(|(_, load, state)| (load, state.isolator_deflection[axis].abs()))
        .max_by(|a, b| a.1.total_cmp(&b.1))?;
    let check = Check {
        load: Some(load),
        basis: format!("`limits.{axis_name}` of isolator {}", isolator.name),
        ..Check::new(
            format!("deflection.{}.{axis_name}", slug(name)),
            format!("{name} deflection along {axis_name} ({way})"),
            Shown::Millimetre,
        )
    }
    .judged(deflection, Sense::AtMost, limit, spread);
    let share_of_spread = check.uncertainty / deflection;
    Some(check.cured_by(|| cure(model, (mount, axis), load, limit / (1.0 + share_of_spread))))
}

/// What rate brings the deflection below `wanted`, found by solving the load case again.
fn cure(model: &Model, (mount, axis): (usize, usize), load: usize, wanted: f64) -> String {
    let place = model.mounts[mount].isolator;
    let isolator = &model.isolators[place];
    let axis_name = AXIS_NAMES[axis];
    let other = "an isolator that may move further, or mounts set further apart";
    if isolator.free_rate(axis) <= 0.0 {
        return format!(
            "give isolator `{}` a rate along {axis_name}, or take {other}",
            isolator.name
        );
    }
    let factor = smallest_raise(|factor| {
        state_again(model, &with_rate(model, place, axis, factor), load, mount)
            .is_some_and(|state| state.isolator_deflection[axis].abs() <= wanted)
    });
    match factor {
        Some(factor) => {
            let rate = isolator.free_rate(axis) * factor;
            let unlikely = if factor > UNLIKELY {
                "; so large a step is more likely a wrong unit or a wrong place than a weak isolator"
            } else {
                "; stiffer mounts raise the natural frequencies"
            };
            format!(
                "rate of `{}` along {axis_name} from {} to {} or more (solved again with it), or {other}{unlikely}",
                isolator.name,
                rate_in_words(isolator.free_rate(axis)),
                rate_in_words(rate),
            )
        }
        None => format!("no rate along {axis_name} alone mends it; take {other}"),
    }
}

fn rate_in_words(rate: f64) -> String {
    show(rate, Shown::NewtonPerMillimetre, Digits::Significant(3))
}
