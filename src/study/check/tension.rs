//! Whether an isolator that should only be pushed is pulled.

use super::spread::Spread;
use super::{Check, Sense, Verdict, slug, states_of};
use crate::model::Model;
use crate::model::isolator::Tension;
use crate::model::load::LoadClass;
use crate::study::evaluate::Evaluation;
use crate::units::Shown;

/// How an isolator takes a pull that it should not get.
struct Pull {
    sort: &'static str,
    rare_sort: &'static str,
    title: &'static str,
    basis: &'static str,
    cure: &'static str,
}

const PULLED: Pull = Pull {
    sort: "tension",
    rare_sort: "rare-tension",
    title: "stretched along w",
    basis: "says `tension = \"avoid\"`",
    cure: "spread the mounts, turn the isolator so that the load pushes it, or choose one that is captive",
};

const LIFTED: Pull = Pull {
    sort: "lift",
    rare_sort: "rare-lift",
    title: "lifted off its seat along w",
    basis: "carries no tension (`tension = \"none\"`)",
    cure: "a second pad above the bracket on the same bolt, an upper stop, mounts set further apart, or a bonded isolator",
};

/// Lifted off a seat over which the file has an upper stop.
const CAUGHT: Pull = Pull {
    cure: "a second pad above the bracket on the same bolt, mounts set further apart, or a bonded isolator",
    ..LIFTED
};

/// One check for each mount whose isolator says `tension = "avoid"` or `"none"`, at the load case that stretches it most along w.
///
/// Pulled in a `service` or `durability` case it fails; against a rarer case that pulls it there is only advice, as a
/// check of its own. A loose part with an upper stop may rise to it: in `service` cases there is advice against it, in
/// harder and rarer ones the stop is there for it.
pub(super) fn checks(model: &Model, evaluation: &Evaluation, spread: &Spread) -> Vec<Check> {
    let mut checks = Vec::new();
    for (index, mount) in model.mounts.iter().enumerate() {
        let isolator = &model.isolators[mount.isolator];
        let upper_stop = isolator.stops[2].upper;
        let way = match isolator.tension {
            Tension::Allowed => continue,
            Tension::Avoid => &PULLED,
            Tension::None if upper_stop.is_some() => &CAUGHT,
            Tension::None => &LIFTED,
        };
        let most_stretched = |counts: fn(LoadClass) -> bool| {
            states_of(model, evaluation, index)
                .filter(|(load, ..)| counts(load.class))
                .map(|(_, load, state)| (load, state.isolator_deflection.z))
                .max_by(|a, b| a.1.total_cmp(&b.1))
        };
        let judged = |sort: &str, (load, stretch): (usize, f64)| {
            Check {
                load: Some(load),
                basis: format!("isolator {} {}", isolator.name, way.basis),
                ..Check::new(
                    format!("{sort}.{}", slug(&mount.name)),
                    format!("{} {}", mount.name, way.title),
                    Shown::Millimetre,
                )
            }
            .judged(stretch, Sense::AtMost, 0.0, spread)
            .cured_by(|| way.cure.to_owned())
        };
        if let (Tension::None, Some(travel)) = (isolator.tension, upper_stop) {
            let everyday = most_stretched(|class| class == LoadClass::Service);
            checks.extend(everyday.map(|worst| judged(way.sort, worst).advisory()));
            let harder = most_stretched(|class| class != LoadClass::Service);
            let rises = harder.filter(|(_, stretch)| *stretch > 0.0);
            checks.extend(rises.map(|worst| risen(&mount.name, &isolator.name, worst, travel)));
            continue;
        }
        let hard = most_stretched(|class| !is_rare(class)).map(|worst| judged(way.sort, worst));
        let hard_holds = hard
            .as_ref()
            .is_some_and(|check| check.verdict != Verdict::Fails);
        checks.extend(hard);
        let pulled = most_stretched(is_rare).filter(|(_, stretch)| *stretch > 0.0);
        if let (true, Some(worst)) = (hard_holds, pulled) {
            checks.push(judged(way.rare_sort, worst).advisory());
        }
    }
    checks
}

/// A loose part that rises in hard or rare use, with a stop over it: that is what the stop is for.
fn risen(mount: &str, isolator: &str, (load, stretch): (usize, f64), travel: f64) -> Check {
    let rise = if stretch >= travel {
        "rises to its stop"
    } else {
        "rises, but not to its stop"
    };
    Check {
        load: Some(load),
        value: Some(stretch),
        verdict: Verdict::Ok,
        basis: format!("the upper stop in `stops.w` of isolator {isolator} catches it"),
        note: Some(rise.to_owned()),
        ..Check::new(
            format!("hard-lift.{}", slug(mount)),
            format!("{mount} {} in hard use", LIFTED.title),
            Shown::Millimetre,
        )
    }
}

fn is_rare(class: LoadClass) -> bool {
    matches!(class, LoadClass::Extreme | LoadClass::Restraint)
}
