//! Whether the rubber of each mount lasts at the temperature of its place.

use super::spread::Spread;
use super::{Check, Sense, slug};
use crate::model::Model;
use crate::study::evaluate::Evaluation;
use crate::units::Shown;

/// One check for each mount that states its temperature on an isolator that is no metal.
///
/// A limit that the file states can fail; the usual one of the rubber is common practice.
pub(super) fn checks(model: &Model, _: &Evaluation, spread: &Spread) -> Vec<Check> {
    let mut checks = Vec::new();
    for mount in &model.mounts {
        let isolator = &model.isolators[mount.isolator];
        let (Some(temperature), Some(limit)) = (mount.temperature, isolator.heat_limit) else {
            continue;
        };
        let usual = isolator
            .compound
            .filter(|compound| (compound.heat_limit - limit).abs() <= 0.0);
        let check = Check {
            basis: usual.map_or_else(
                || format!("`heat_limit` of isolator {}", isolator.name),
                |compound| format!("usual for {} (common practice)", compound.name),
            ),
            ..Check::new(
                format!("heat.{}", slug(&mount.name)),
                format!("{} temperature of its place", mount.name),
                Shown::Celsius,
            )
        }
        .judged(temperature, Sense::AtMost, limit, spread)
        .cured_by(|| {
            "a shield and air between exhaust and mount, another place, or a rubber that stands more heat"
                .to_owned()
        });
        checks.push(if usual.is_some() {
            check.advisory()
        } else {
            check
        });
    }
    checks
}
