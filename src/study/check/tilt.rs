//! Whether the powertrain rests the way it was drawn, and does not turn over in any load case.

use super::spread::Spread;
use super::{Check, Sense, solved};
use crate::model::Model;
use crate::model::load::LoadClass;
use crate::study::evaluate::Evaluation;
use crate::units::Shown;

/// Largest turn from the fitted attitude at rest \[rad\]: 10°.
///
/// # Source
/// Common practice: a powertrain settles by a degree or so; ten are another layout.
const AT_REST: f64 = 10.0 * std::f64::consts::PI / 180.0;

/// Largest turn from the fitted attitude in any load case that is driven on from \[rad\]: 30°.
///
/// # Source
/// Common practice: shafts and hoses do not follow that far.
const UNDER_LOAD: f64 = 3.0 * AT_REST;

/// One check at rest, and one under load only where it does not hold.
///
/// A balance may exist far from the drawing: soft mounts under a high centre of
/// gravity let the powertrain turn over until it hangs.
pub(super) fn checks(model: &Model, evaluation: &Evaluation, spread: &Spread) -> Vec<Check> {
    let mut rest = None;
    let mut worst: Option<(usize, f64)> = None;
    for (load, result, found) in solved(model, evaluation) {
        let angle = found.rotation.angle();
        if result.load == 0 {
            rest = Some(angle);
        } else if load.class != LoadClass::Restraint && worst.is_none_or(|(_, most)| angle > most) {
            worst = Some((result.load, angle));
        }
    }
    let at_rest = rest.map(|angle| check("tilt.at-rest", 0, angle, AT_REST, spread));
    let under_load = worst
        .filter(|(_, angle)| *angle > UNDER_LOAD)
        .map(|(load, angle)| check("tilt.under-load", load, angle, UNDER_LOAD, spread));
    at_rest.into_iter().chain(under_load).collect()
}

fn check(id: &str, load: usize, angle: f64, limit: f64, spread: &Spread) -> Check {
    Check {
        load: Some(load),
        basis: "turn from the attitude in the file: shafts, hoses and levers follow no further (common practice)".to_owned(),
        ..Check::new(id.to_owned(), "powertrain turned from its drawn attitude".to_owned(), Shown::Degree)
    }
    .judged(angle, Sense::AtMost, limit, spread)
    .cured_by(|| {
        "stiffer mounts, further apart or nearer the height of the centre of gravity; look for a slip of unit in the rates".to_owned()
    })
}
