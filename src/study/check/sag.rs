//! Whether the powertrain settles by a sensible amount under its own weight.

use super::{Check, Sense, at_least_percent, millimetres, slug, states_of};
use crate::model::Model;
use crate::study::evaluate::Evaluation;
use crate::units::Shown;

/// From this many times the largest sensible sag on, the build is not the one that was drawn.
///
/// # Source
/// Common practice: no rubber mount in a vehicle settles by 30 mm.
const ABSURD: f64 = 3.0;

/// One check for the mount that settles most: a rule of good practice up to three times the limit, a failure beyond.
pub(super) fn checks(model: &Model, evaluation: &Evaluation) -> Vec<Check> {
    let sags = model
        .mounts
        .iter()
        .enumerate()
        .filter_map(|(index, mount)| {
            let (_, load, state) = states_of(model, evaluation, index).next()?;
            let down = -(mount.axes * state.deflection).z;
            Some((mount, load, down))
        });
    let Some((mount, load, sag)) = sags.max_by(|a, b| a.2.total_cmp(&b.2)) else {
        return Vec::new();
    };
    let isolator = &model.isolators[mount.isolator];
    let mut check = Check {
        load: Some(load),
        basis:
            "largest sag at a mount (common practice, `targets.sag`): more is soft enough to wander"
                .to_owned(),
        ..Check::new(
            format!("sag.{}", slug(&mount.name)),
            format!("{} settles at rest", mount.name),
            Shown::Millimetre,
        )
    }
    .judged(
        sag,
        Sense::AtMost,
        model.criteria.sag,
        isolator.scatter * sag.abs(),
    );
    if sag <= ABSURD * model.criteria.sag {
        check = check.advisory();
    }
    vec![check.cured_by(|| {
        format!(
            "raise the vertical rate at {} by {} or more, or build the mount {} higher",
            mount.name,
            at_least_percent(sag * (1.0 + isolator.scatter) / model.criteria.sag - 1.0),
            millimetres(sag)
        )
    })]
}
