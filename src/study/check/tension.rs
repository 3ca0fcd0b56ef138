//! Whether an isolator that should only be pushed is pulled.

use super::spread::Spread;
use super::{Check, Sense, Verdict, slug, states_of};
use crate::model::Model;
use crate::model::isolator::Tension;
use crate::model::load::LoadClass;
use crate::study::evaluate::Evaluation;
use crate::units::Shown;

/// One check for each mount whose isolator says `tension = "avoid"`, at the load case that stretches it most along w.
///
/// Pulled in a `service` or `durability` case it fails; a rarer case that pulls it is close, as a check of its own.
pub(super) fn checks(model: &Model, evaluation: &Evaluation, spread: &Spread) -> Vec<Check> {
    let mut checks = Vec::new();
    for (index, mount) in model.mounts.iter().enumerate() {
        let isolator = &model.isolators[mount.isolator];
        if isolator.tension != Tension::Avoid {
            continue;
        }
        let most_stretched = |rare: bool| {
            states_of(model, evaluation, index)
                .filter(|(load, ..)| is_rare(load.class) == rare)
                .map(|(_, load, state)| (load, state.isolator_deflection.z))
                .max_by(|a, b| a.1.total_cmp(&b.1))
        };
        let judged = |sort: &str, (load, stretch): (usize, f64)| {
            Check {
                load: Some(load),
                basis: format!("isolator {} says `tension = \"avoid\"`", isolator.name),
                ..Check::new(
                    format!("{sort}.{}", slug(&mount.name)),
                    format!("{} stretched along w", mount.name),
                    Shown::Millimetre,
                )
            }
            .judged(stretch, Sense::AtMost, 0.0, spread)
            .cured_by(|| {
                "spread the mounts, turn the isolator so that the load pushes it, or choose one that is captive".to_owned()
            })
        };
        let hard = most_stretched(false).map(|worst| judged("tension", worst));
        let hard_holds = hard
            .as_ref()
            .is_some_and(|check| check.verdict != Verdict::Fails);
        checks.extend(hard);
        let pulled = most_stretched(true).filter(|(_, stretch)| *stretch > 0.0);
        if let (true, Some(worst)) = (hard_holds, pulled) {
            checks.push(judged("rare-tension", worst).advisory());
        }
    }
    checks
}

fn is_rare(class: LoadClass) -> bool {
    matches!(class, LoadClass::Extreme | LoadClass::Restraint)
}
