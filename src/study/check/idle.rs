//! Whether the firing at idle lies high enough above the modes that the torque excites.

use super::{Check, Sense, Verdict, at_most_percent, hertz, largest_scatter};
use crate::model::Model;
use crate::model::drivetrain::Cycle;
use crate::study::evaluate::Evaluation;
use crate::units::{Digits, Shown, show};

/// Share of a turn about the torque roll axis from which on a mode counts as excited by the torque.
///
/// # Source
/// Common practice: below a tenth the mode hardly shows at idle.
const EXCITED: f64 = 0.1;

/// Ratio from which on the idle is comfortable rather than merely isolated.
///
/// # Source
/// Common practice. At a ratio of 2 an undamped mount passes one third of the force: 1/(2² − 1).
const COMFORTABLE: f64 = 2.0;

/// One check: firing frequency at idle over the highest mode that the torque excites.
///
/// The limit √2 is where isolation starts: `|1/(1 − r²)| = 1` (derived).
pub(super) fn checks(model: &Model, evaluation: &Evaluation) -> Vec<Check> {
    let blank = Check {
        basis: "firing at idle over the highest mode with a tenth or more of the torque motion; √2 is where isolation starts (derived), 2 is comfortable (common practice)".to_owned(),
        ..Check::new("frequency.idle".to_owned(), "idle firing over torque mode".to_owned(), Shown::Number)
    };
    let not_checked = |note: &str| {
        vec![Check {
            note: Some(note.to_owned()),
            ..blank.clone()
        }]
    };
    let Some(engine) = &model.engine else {
        return not_checked("give an [engine] with its cycle and idle speed");
    };
    if matches!(engine.cycle, Cycle::Electric { .. }) {
        return Vec::new();
    }
    let Some(idle) = evaluation.idle else {
        return not_checked("give the engine's `idle` speed");
    };
    let Some(modes) = evaluation.modes.first() else {
        return not_checked("no modes at rest");
    };
    let Some(shares) = &modes.torque_share else {
        return not_checked("no torque roll axis");
    };
    let highest = modes
        .solution
        .modes
        .iter()
        .zip(shares.iter())
        .filter(|(_, share)| **share >= EXCITED)
        .map(|(mode, _)| mode)
        .max_by(|a, b| a.frequency_hz.total_cmp(&b.frequency_hz));
    let Some(mode) = highest.filter(|mode| mode.frequency_hz > 0.0) else {
        return not_checked("no mode carries the torque motion");
    };
    let ratio = idle.frequency_hz / mode.frequency_hz;
    let wanted = model.criteria.idle_ratio;
    // A rate that is off by s moves the frequency by s/2.
    let uncertainty = ratio * largest_scatter(model) / 2.0;
    let mut check = Check {
        title: format!(
            "idle firing {} over the {} mode at {}",
            hertz(idle.frequency_hz),
            mode.name,
            hertz(mode.frequency_hz)
        ),
        load: Some(modes.load),
        ..blank
    }
    .judged(ratio, Sense::AtLeast, wanted, uncertainty);
    if check.verdict == Verdict::Ok && ratio < COMFORTABLE {
        check.note = Some("isolated, but a ratio of 2 is felt as smooth".to_owned());
    }
    let idle_speed = engine.idle.unwrap_or_default();
    vec![check.cured_by(|| {
        let raise = (wanted + uncertainty) / ratio;
        format!(
            "lower that mode to {}, with {} or less of the rates that hold it; or raise the idle to {}",
            hertz(mode.frequency_hz / raise),
            at_most_percent(1.0 / (raise * raise)),
            show(
                idle_speed * raise,
                Shown::RevPerMinute,
                Digits::Significant(2)
            ),
        )
    })]
}
