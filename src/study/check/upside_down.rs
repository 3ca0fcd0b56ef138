//! Whether the weight pushes the isolators the way their `w` says.

use super::spread::Spread;
use super::{Check, Sense, slug, states_of};
use crate::model::Model;
use crate::study::evaluate::Evaluation;
use crate::units::Shown;

/// One close check for each mount whose `w` points down and which the weight stretches: its `w` is likely upside down.
pub(super) fn checks(model: &Model, evaluation: &Evaluation, spread: &Spread) -> Vec<Check> {
    let mut checks = Vec::new();
    for (index, mount) in model.mounts.iter().enumerate() {
        if !model.isolators[mount.isolator].is_pushed_along_w() {
            continue;
        }
        let Some((_, load, state)) = states_of(model, evaluation, index).next() else {
            continue;
        };
        let points_down = mount.axes[(2, 2)] < 0.0;
        if !points_down || state.isolator_deflection.z <= 0.0 {
            continue;
        }
        checks.push(
            Check {
                load: Some(load),
                basis: "w points from the chassis to the powertrain, so the weight should push it"
                    .to_owned(),
                ..Check::new(
                    format!("upside-down.{}", slug(&mount.name)),
                    format!("{} is stretched by the weight", mount.name),
                    Shown::Millimetre,
                )
            }
            .judged(state.isolator_deflection.z, Sense::AtMost, 0.0, spread)
            .advisory()
            .cured_by(|| {
                "turn its `w` round, unless the powertrain really hangs from this mount".to_owned()
            }),
        );
    }
    checks
}
