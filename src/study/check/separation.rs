//! Whether neighbouring modes lie far enough apart not to feed each other.

use super::spread::Spread;
use super::{Check, Sense, hertz};
use crate::model::Model;
use crate::rigid::modes::Mode;
use crate::study::evaluate::Evaluation;
use crate::units::Shown;

/// One check, a rule of good practice: the closest pair of neighbouring modes at rest.
pub(super) fn checks(model: &Model, evaluation: &Evaluation, spread: &Spread) -> Vec<Check> {
    let Some(modes) = evaluation.modes.first() else {
        return Vec::new();
    };
    let distance = |pair: &[Mode]| match pair {
        [lower, upper] => upper.frequency_hz - lower.frequency_hz,
        _ => f64::INFINITY,
    };
    let closest = modes
        .solution
        .modes
        .windows(2)
        .min_by(|a, b| distance(a).total_cmp(&distance(b)));
    let Some(pair @ [lower, upper]) = closest else {
        return Vec::new();
    };
    let check = Check {
        load: Some(modes.load),
        basis: "neighbouring modes 0.5 to 1 Hz apart (common practice, `targets.separation`)"
            .to_owned(),
        ..Check::new(
            "frequency.separation".to_owned(),
            format!(
                "{} at {} and {} at {} apart",
                lower.name,
                hertz(lower.frequency_hz),
                upper.name,
                hertz(upper.frequency_hz)
            ),
            Shown::Hertz,
        )
    }
    .judged(
        distance(pair),
        Sense::AtLeast,
        model.criteria.separation,
        spread,
    )
    .advisory();
    vec![check.cured_by(|| {
        "move a mount or change one rate so that the two part; as they are, one shakes the other".to_owned()
    })]
}
