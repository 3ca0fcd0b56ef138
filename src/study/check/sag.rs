//! Whether the powertrain settles by a sensible amount under its own weight.

use super::remedy::{smallest_raise, state_again, with_isolator};
use super::spread::Spread;
use super::{Check, Sense, at_least_percent, states_of};
use crate::model::Model;
use crate::study::evaluate::Evaluation;
use crate::units::Shown;

/// From this many times the largest sensible sag on, the build is not the one that was drawn.
///
/// # Source
/// Common practice: no rubber mount in a vehicle settles by 30 mm.
const ABSURD: f64 = 3.0;

/// One check for the mount that settles most: a rule of good practice up to three times the limit, a failure beyond.
pub(super) fn checks(model: &Model, evaluation: &Evaluation, spread: &Spread) -> Vec<Check> {
    let sags = model
        .mounts
        .iter()
        .enumerate()
        .filter_map(|(index, mount)| {
            let (_, load, state) = states_of(model, evaluation, index).next()?;
            let down = -(state.axes * state.deflection).z;
            Some((index, mount, load, down))
        });
    let Some((index, mount, load, sag)) = sags.max_by(|a, b| a.3.total_cmp(&b.3)) else {
        return Vec::new();
    };
    let isolator = &model.isolators[mount.isolator];
    let mut check = Check {
        load: Some(load),
        basis:
            "largest sag at a mount (common practice, `targets.sag`): more is soft enough to wander"
                .to_owned(),
        ..Check::new(
            "sag.largest".to_owned(),
            format!("{} settles at rest", mount.name),
            Shown::Millimetre,
        )
    }
    .judged(sag, Sense::AtMost, model.criteria.sag, spread);
    if sag <= ABSURD * model.criteria.sag {
        check = check.advisory();
    }
    let wanted = model.criteria.sag / (1.0 + check.uncertainty / sag);
    vec![check.cured_by(|| {
        let factor = smallest_raise(|factor| {
            let changed = with_isolator(model, mount.isolator, factor);
            state_again(model, &changed, 0, index)
                .is_some_and(|state| -(state.axes * state.deflection).z <= wanted)
        });
        match factor {
            Some(factor) => format!(
                "every rate of `{}` {} or more of what it is (solved again with it)",
                isolator.name,
                at_least_percent(factor)
            ),
            None => {
                "look for a slip of unit in the rates or the masses: no reasonable rate mends it"
                    .to_owned()
            }
        }
    })]
}
