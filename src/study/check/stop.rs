//! Whether stops stay untouched in everyday driving.

use super::spread::Spread;
use super::{Check, Sense, Verdict, slug, states_of, way_of};
use crate::model::Model;
use crate::model::isolator::{AXIS_NAMES, Tension};
use crate::model::load::LoadClass;
use crate::study::evaluate::Evaluation;
use crate::units::Shown;

/// How near to its stop a mount comes.
struct Nearness {
    mount: usize,
    load: usize,
    axis: usize,
    deflection: f64,
    travel: f64,
    /// Whether it is the upper stop of a loose part, which is there to catch it.
    catches: bool,
}

/// One check for each mount with stops in `service` cases, and one for each that touches its stop in a `durability` case.
///
/// A stop touched in a `service` case fails: it passes noise and shock all day.
/// Touched in a `durability` case there is advice against it: the knock is felt.
/// In rarer cases stops are meant to be touched. The upper stop of a part that
/// lies loose is meant for hard use too, and in everyday use there is advice
/// against touching it.
pub(super) fn checks(model: &Model, evaluation: &Evaluation, spread: &Spread) -> Vec<Check> {
    let judged = |sort: &str, near: Nearness| {
        let mount = &model.mounts[near.mount];
        let isolator = &model.isolators[mount.isolator];
        let axis = AXIS_NAMES[near.axis];
        let way = way_of(&mount.axes.column(near.axis).into_owned());
        Check {
            load: Some(near.load),
            basis: format!("free travel of isolator {} before its stop", isolator.name),
            ..Check::new(
                format!("{sort}.{}", slug(&mount.name)),
                format!("{} travel along {axis} ({way}) before its stop", mount.name),
                Shown::Millimetre,
            )
        }
        .judged(near.deflection, Sense::AtMost, near.travel, spread)
        .cured_by(|| {
            format!(
                "more free travel along {axis} or a stiffer isolator along {axis}; a stop that is touched passes shock and noise"
            )
        })
    };
    let mut checks = Vec::new();
    for mount in 0..model.mounts.len() {
        let near = |class| nearest(model, evaluation, mount, class);
        let everyday = near(LoadClass::Service).map(|near| {
            if near.catches {
                judged("stop", near).advisory()
            } else {
                judged("stop", near)
            }
        });
        let everyday_holds = everyday
            .as_ref()
            .is_some_and(|check| check.verdict != Verdict::Fails);
        checks.extend(everyday);
        let touched = near(LoadClass::Durability)
            .filter(|near| near.deflection > near.travel && !near.catches);
        if let (true, Some(near)) = (everyday_holds, touched) {
            checks.push(Check {
                note: Some("touched in hard use only: a knock is felt, nothing breaks".to_owned()),
                ..judged("hard-stop", near).advisory()
            });
        }
    }
    checks
}

/// The load case of a class in which the mount uses the largest share of its free travel.
fn nearest(
    model: &Model,
    evaluation: &Evaluation,
    mount: usize,
    class: LoadClass,
) -> Option<Nearness> {
    let isolator = &model.isolators[model.mounts[mount].isolator];
    let stops = &isolator.stops;
    states_of(model, evaluation, mount)
        .filter(|(load, ..)| load.class == class)
        .flat_map(|(_, load, state)| {
            (0..3).filter_map(move |axis| {
                let x = state.isolator_deflection[axis];
                let travel = if x < 0.0 {
                    -stops[axis].lower?
                } else {
                    stops[axis].upper?
                };
                Some(Nearness {
                    mount,
                    load,
                    axis,
                    deflection: x.abs(),
                    travel,
                    catches: isolator.tension == Tension::None && axis == 2 && x > 0.0,
                })
            })
        })
        .max_by(|a, b| (a.deflection / a.travel).total_cmp(&(b.deflection / b.travel)))
}
