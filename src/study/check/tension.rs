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

/// One check for each mount whose isolator says `tension = "avoid"` or `"none"`, at the load case that stretches it most along w.
///
/// Pulled in a `service` or `durability` case it fails; a rarer case that pulls it is close, as a check of its own.
pub(super) fn checks(model: &Model, evaluation: &Evaluation, spread: &Spread) -> Vec<Check> {
    let mut checks = Vec::new();
    for (index, mount) in model.mounts.iter().enumerate() {
        let isolator = &model.isolators[mount.isolator];
        let way = match isolator.tension {
            Tension::Allowed => continue,
            Tension::Avoid => &PULLED,
            Tension::None => &LIFTED,
        };
        let most_stretched = |rare: bool| {
            states_of(model, evaluation, index)
                .filter(|(load, ..)| is_rare(load.class) == rare)
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
        let hard = most_stretched(false).map(|worst| judged(way.sort, worst));
        let hard_holds = hard
            .as_ref()
            .is_some_and(|check| check.verdict != Verdict::Fails);
        checks.extend(hard);
        let pulled = most_stretched(true).filter(|(_, stretch)| *stretch > 0.0);
        if let (true, Some(worst)) = (hard_holds, pulled) {
            checks.push(judged(way.rare_sort, worst).advisory());
        }
    }
    checks
}

fn is_rare(class: LoadClass) -> bool {
    matches!(class, LoadClass::Extreme | LoadClass::Restraint)
}
