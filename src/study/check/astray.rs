//! Whether the powertrain stays where it was drawn: a balance may exist far from the drawing.

use super::spread::Spread;
use super::{Check, Sense, solved};
use crate::model::Model;
use crate::model::load::LoadClass;
use crate::study::evaluate::Evaluation;
use crate::units::Shown;

/// Farthest that the centre of gravity may rest from its drawn place \[m\].
///
/// # Source
/// Common practice: a powertrain settles by some millimetres; five centimetres
/// are a powertrain that fell over its rods or off its pads.
const AT_REST: f64 = 50e-3;

/// Farthest in any load case that is driven on from \[m\].
///
/// # Source
/// Common practice: nothing in an engine bay is that far from anything.
const UNDER_LOAD: f64 = 3.0 * AT_REST;

/// One check at rest and one under load, each only where it does not hold: the sag has a check of its own.
pub(super) fn checks(model: &Model, evaluation: &Evaluation, spread: &Spread) -> Vec<Check> {
    let mut rest = None;
    let mut worst: Option<(usize, f64)> = None;
    for (load, result, found) in solved(model, evaluation) {
        let moved = found.displacement.norm();
        if result.load == 0 {
            rest = Some(moved);
        } else if load.class != LoadClass::Restraint && worst.is_none_or(|(_, most)| moved > most) {
            worst = Some((result.load, moved));
        }
    }
    let at_rest = rest
        .filter(|moved| *moved > AT_REST)
        .map(|moved| check("astray.at-rest", 0, moved, AT_REST, spread));
    let under_load = worst
        .filter(|(_, moved)| *moved > UNDER_LOAD)
        .map(|(load, moved)| check("astray.under-load", load, moved, UNDER_LOAD, spread));
    at_rest.into_iter().chain(under_load).collect()
}

fn check(id: &str, load: usize, moved: f64, limit: f64, spread: &Spread) -> Check {
    Check {
        load: Some(load),
        basis: "way from the drawn place: further off it has fallen over its rods or off its mounts (common practice)".to_owned(),
        ..Check::new(
            id.to_owned(),
            "powertrain moved from its drawn place".to_owned(),
            Shown::Millimetre,
        )
    }
    .judged(moved, Sense::AtMost, limit, spread)
    .cured_by(|| {
        "mounts that hold it in every direction: rods swing and loose pads let go; look for a slip of unit in the rates".to_owned()
    })
}
