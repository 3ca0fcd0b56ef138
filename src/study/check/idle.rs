//! Whether the firing at idle lies high enough above the modes that the torque excites.

use super::remedy::{modes_again, smallest_cut, with_all_rates};
use super::spread::Spread;
use super::{Check, Sense, Verdict, at_most_percent, hertz};
use crate::model::Model;
use crate::model::drivetrain::Cycle;
use crate::rigid::modes::Mode;
use crate::study::evaluate::{Evaluation, ModesAt};
use crate::units::Shown;

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

/// Distance from the firing frequency, as a share of it, within which a mode is shaken at its own frequency.
///
/// # Source
/// Common practice: keep crossings 15 to 20 % away from the idle speed.
const NEAR: f64 = 0.2;

/// Most by which an idle can be raised, as a factor.
///
/// # Source
/// Common practice: a still faster idle wastes fuel and creeps in gear.
const MOST_RAISED: f64 = 1.5;

/// One check: firing frequency at idle over the highest mode that the torque excites.
///
/// The limit √2 is where isolation starts: `|1/(1 − r²)| = 1` (derived).
pub(super) fn checks(model: &Model, evaluation: &Evaluation, spread: &Spread) -> Vec<Check> {
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
    let Some(mode) = highest_excited(modes) else {
        return not_checked("no mode carries the torque motion");
    };
    let ratio = idle.frequency_hz / mode.frequency_hz;
    let wanted = model.criteria.idle_ratio;
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
    .judged(ratio, Sense::AtLeast, wanted, spread);
    let near = on_the_firing(modes, idle.frequency_hz);
    if !near.is_empty() {
        check.note = Some(format!("right on the firing: {}", near.join(", ")));
    } else if check.verdict == Verdict::Ok && ratio < COMFORTABLE {
        check.note = Some("isolated, but a ratio of 2 is felt as smooth".to_owned());
    }
    // What must be reached so that the soft and the stiff end pass too.
    let reached = wanted / (1.0 - check.uncertainty / ratio);
    let raised = engine.idle.and_then(|idle| {
        let raised = round_up(idle * reached / ratio);
        let can_be_had =
            raised <= MOST_RAISED * idle && engine.redline.is_none_or(|redline| raised < redline);
        can_be_had.then_some(raised)
    });
    vec![check.cured_by(|| cure(model, reached, idle.frequency_hz, raised))]
}

/// One turn a minute \[rad/s\].
const RPM: f64 = std::f64::consts::PI / 30.0;

/// A speed \[rad/s\], up to the next ten turns a minute.
fn round_up(speed: f64) -> f64 {
    (speed / (10.0 * RPM)).ceil() * 10.0 * RPM
}

/// Softer isolators, found by solving again, or the `raised` idle \[rad/s\] when it can be had.
fn cure(model: &Model, reached: f64, firing_hz: f64, raised: Option<f64>) -> String {
    let raise = raised.map_or_else(String::new, |idle| {
        format!("; or raise the idle to {:.0} rpm", idle / RPM)
    });
    let passes = |factor: f64| {
        modes_again(model, &with_all_rates(model, factor))
            .and_then(|modes| Some(firing_hz / highest_excited(&modes)?.frequency_hz))
            .is_some_and(|ratio| ratio >= reached)
    };
    match smallest_cut(passes) {
        Some(factor) => format!(
            "{} or less of every rate of the isolators (solved again with it), but softer mounts move further{raise}",
            at_most_percent(factor)
        ),
        None if is_on_solids(model) => format!(
            "these isolators are as stiff as what holds them, softening them alone cannot mend it: take rubber{raise}"
        ),
        None => format!(
            "softening all isolators alike does not mend it, tried down to a sixteenth of their rates; mounts nearer to the torque roll axis lower this mode{raise}"
        ),
    }
}

/// Whether every mount but the rods is metal on metal.
fn is_on_solids(model: &Model) -> bool {
    let mut bearing = model
        .mounts
        .iter()
        .filter_map(|mount| model.isolators.get(mount.isolator))
        .filter(|isolator| !isolator.is_rod);
    bearing.all(|isolator| isolator.kind == "solid")
}

/// The highest mode that the torque excites.
fn highest_excited(modes: &ModesAt) -> Option<&Mode> {
    excited(modes).max_by(|a, b| a.frequency_hz.total_cmp(&b.frequency_hz))
}

/// Modes that swing and that the torque excites.
fn excited(modes: &ModesAt) -> impl Iterator<Item = &Mode> {
    let shares = modes.torque_share.iter().flat_map(|shares| shares.iter());
    modes
        .solution
        .modes
        .iter()
        .zip(shares)
        .filter(|(mode, share)| **share >= EXCITED && mode.frequency_hz > 0.0)
        .map(|(mode, _)| mode)
}

/// Excited modes within a fifth of the firing frequency, in words.
fn on_the_firing(modes: &ModesAt, firing_hz: f64) -> Vec<String> {
    excited(modes)
        .filter(|mode| (mode.frequency_hz / firing_hz - 1.0).abs() <= NEAR)
        .map(|mode| format!("{} at {}", mode.name, hertz(mode.frequency_hz)))
        .collect()
}
