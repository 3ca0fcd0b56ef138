//! Whether each isolator stays within the deflections that its curve was measured for.

use super::spread::Spread;
use super::{Check, Sense, slug, states_of};
use crate::model::Model;
use crate::model::isolator::AXIS_NAMES;
use crate::study::evaluate::Evaluation;
use crate::units::{Digits, Shown, show};

/// One check for each mount and axis with a measured curve: the share of the measured range that is used.
///
/// Beyond it the curve goes on with its last slope, which real rubber exceeds.
pub(super) fn checks(model: &Model, evaluation: &Evaluation, spread: &Spread) -> Vec<Check> {
    let mut checks = Vec::new();
    for (index, mount) in model.mounts.iter().enumerate() {
        let isolator = &model.isolators[mount.isolator];
        for (axis, range) in isolator.measured.iter().enumerate() {
            let Some([lower, upper]) = *range else {
                continue;
            };
            let most = states_of(model, evaluation, index)
                .map(|(_, load, state)| {
                    let x = state.isolator_deflection[axis];
                    let end = if x < 0.0 { lower } else { upper };
                    (load, x, end, x / end)
                })
                .max_by(|a, b| a.3.total_cmp(&b.3));
            let Some((load, x, end, share)) = most else {
                continue;
            };
            let name = AXIS_NAMES[axis];
            let length = |x: f64| show(x, Shown::Millimetre, Digits::Decimals(1));
            checks.push(
                Check {
                    load: Some(load),
                    basis: format!("range of `curve.{name}` of isolator {}", isolator.name),
                    ..Check::new(
                        format!("measured.{}.{name}", slug(&mount.name)),
                        format!(
                            "{} share of its measured curve along {name} ({} of {})",
                            mount.name,
                            length(x),
                            length(end)
                        ),
                        Shown::Percent,
                    )
                }
                .judged(share, Sense::AtMost, 1.0, spread)
                .advisory()
                .cured_by(|| {
                    format!("measure the curve along {name} further; beyond it the last slope is taken, and rubber is stiffer than that")
                }),
            );
        }
    }
    checks
}
