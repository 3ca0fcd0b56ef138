//! Whether the bounce mode keeps clear of the band in which the wheels hop.

use super::{Check, Sense, at_least_percent, at_most_percent, hertz, largest_scatter};
use crate::model::Model;
use crate::study::evaluate::Evaluation;
use crate::units::Shown;

/// One check, a rule of good practice: the mode with the largest share of up-and-down motion against the wheel-hop band.
pub(super) fn checks(model: &Model, evaluation: &Evaluation) -> Vec<Check> {
    let Some(modes) = evaluation.modes.first() else {
        return Vec::new();
    };
    let bounce = modes
        .solution
        .modes
        .iter()
        .max_by(|a, b| a.energy_share.z.total_cmp(&b.energy_share.z));
    let Some(mode) = bounce else {
        return Vec::new();
    };
    let [low, high] = model.criteria.wheel_hop;
    let frequency = mode.frequency_hz;
    let (sense, edge) = if frequency < (low + high) / 2.0 {
        (Sense::AtMost, low)
    } else {
        (Sense::AtLeast, high)
    };
    let softness = largest_scatter(model) / 2.0;
    let check = Check {
        load: Some(modes.load),
        basis: format!(
            "wheel hop between {} and {} (common practice unless `targets.wheel_hop` is given)",
            hertz(low),
            hertz(high)
        ),
        ..Check::new(
            "frequency.wheel-hop".to_owned(),
            "bounce mode against wheel hop".to_owned(),
            Shown::Hertz,
        )
    }
    .judged(frequency, sense, edge, frequency * softness)
    .advisory();
    vec![check.cured_by(|| {
        let rates = |wanted: f64| (wanted / frequency).powi(2);
        let change = match sense {
            Sense::AtMost => {
                let wanted = edge / (1.0 + softness);
                format!(
                    "lower the bounce mode to {}, with {} or less",
                    hertz(wanted),
                    at_most_percent(rates(wanted))
                )
            }
            Sense::AtLeast => {
                let wanted = edge / (1.0 - softness);
                format!(
                    "raise the bounce mode to {}, with {} or more",
                    hertz(wanted),
                    at_least_percent(rates(wanted))
                )
            }
        };
        format!("{change} of the vertical rates; in the band it shakes on rough roads")
    })]
}
