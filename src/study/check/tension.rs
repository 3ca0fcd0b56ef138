//! Whether an isolator that should only be pushed is pulled.

use super::{Check, Sense, Verdict, slug, states_of};
use crate::model::Model;
use crate::model::isolator::Tension;
use crate::model::load::LoadClass;
use crate::study::evaluate::Evaluation;
use crate::units::Shown;

/// One check for each mount whose isolator says `tension = "avoid"`, at the load case that stretches it most along w.
///
/// Pulled in a `service` or `durability` case it fails, in a rarer one it is close.
pub(super) fn checks(model: &Model, evaluation: &Evaluation) -> Vec<Check> {
    model
        .mounts
        .iter()
        .enumerate()
        .filter(|(_, mount)| model.isolators[mount.isolator].tension == Tension::Avoid)
        .filter_map(|(index, mount)| {
            let isolator = &model.isolators[mount.isolator];
            let most_stretched = |rare: bool| {
                states_of(model, evaluation, index)
                    .filter(|(load, ..)| matches!(load.class, LoadClass::Extreme | LoadClass::Restraint) == rare)
                    .map(|(_, load, state)| (load, state.isolator_deflection.z))
                    .max_by(|a, b| a.1.total_cmp(&b.1))
            };
            let judge = |(load, stretch): (usize, f64)| {
                Check {
                    load: Some(load),
                    basis: format!("isolator {} says `tension = \"avoid\"`", isolator.name),
                    ..Check::new(
                        format!("tension.{}", slug(&mount.name)),
                        format!("{} stretched along w", mount.name),
                        Shown::Millimetre,
                    )
                }
                .judged(stretch, Sense::AtMost, 0.0, isolator.scatter * stretch.abs())
                .cured_by(|| {
                    "spread the mounts, turn the isolator so that the load pushes it, or choose one that is captive".to_owned()
                })
            };
            let hard = judge(most_stretched(false)?);
            if hard.verdict == Verdict::Fails {
                return Some(hard);
            }
            match most_stretched(true).filter(|(_, stretch)| *stretch > 0.0) {
                Some(rare) => Some(judge(rare).advisory()),
                None => Some(hard),
            }
        })
        .collect()
}
