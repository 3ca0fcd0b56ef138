//! Whether the bounce mode keeps clear of the band in which the wheels hop.

use super::remedy::{modes_again, smallest_cut, smallest_raise, with_all_rates};
use super::spread::Spread;
use super::{Check, Sense, at_least_percent, at_most_percent, hertz};
use crate::model::Model;
use crate::rigid::modes::Mode;
use crate::study::evaluate::{Evaluation, ModesAt};
use crate::units::Shown;

/// One check, a rule of good practice: the mode with the largest share of up-and-down motion against the wheel-hop band.
pub(super) fn checks(model: &Model, evaluation: &Evaluation, spread: &Spread) -> Vec<Check> {
    let Some(modes) = evaluation.modes.first() else {
        return Vec::new();
    };
    let Some(mode) = bounce(modes) else {
        return Vec::new();
    };
    let [low, high] = model.criteria.wheel_hop;
    let frequency = mode.frequency_hz;
    let (sense, edge) = if frequency < (low + high) / 2.0 {
        (Sense::AtMost, low)
    } else {
        (Sense::AtLeast, high)
    };
    let check = Check {
        load: Some(modes.load),
        basis: format!(
            "out of the band from {} to {} in which the wheels hop (common practice, `targets.wheel_hop`)",
            hertz(low),
            hertz(high)
        ),
        ..Check::new(
            "frequency.wheel-hop".to_owned(),
            "bounce mode against wheel hop".to_owned(),
            Shown::Hertz,
        )
    }
    .judged(frequency, sense, edge, spread)
    .advisory();
    let share_of_spread = check.uncertainty / frequency;
    vec![check.cured_by(|| match sense {
        Sense::AtMost => lower(model, edge / (1.0 + share_of_spread)),
        Sense::AtLeast => raise(model, edge / (1.0 - share_of_spread)),
    })]
}

fn lower(model: &Model, wanted: f64) -> String {
    match smallest_cut(|factor| bounce_again(model, factor).is_some_and(|f| f <= wanted)) {
        Some(factor) => format!(
            "{} or less of every rate of the isolators brings it to {} (solved again with it), but softer mounts move further; where it stays, rough roads shake it",
            at_most_percent(factor),
            hertz(wanted)
        ),
        None => OUT_OF_REACH.to_owned(),
    }
}

fn raise(model: &Model, wanted: f64) -> String {
    match smallest_raise(|factor| bounce_again(model, factor).is_some_and(|f| f >= wanted)) {
        Some(factor) => format!(
            "{} or more of every rate of the isolators brings it to {} (solved again with it), but stiffer mounts pass on more; where it stays, rough roads shake it",
            at_least_percent(factor),
            hertz(wanted)
        ),
        None => OUT_OF_REACH.to_owned(),
    }
}

/// When brackets and chassis decide, no isolator helps.
const OUT_OF_REACH: &str =
    "the isolators alone cannot bring it there: brackets and chassis decide it";

fn bounce_again(model: &Model, factor: f64) -> Option<f64> {
    let modes = modes_again(model, &with_all_rates(model, factor))?;
    Some(bounce(&modes)?.frequency_hz)
}

/// The mode with the largest share of up-and-down motion.
fn bounce(modes: &ModesAt) -> Option<&Mode> {
    modes
        .solution
        .modes
        .iter()
        .max_by(|a, b| a.energy_share.z.total_cmp(&b.energy_share.z))
}
