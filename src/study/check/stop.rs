//! Whether stops stay untouched in everyday driving.

use super::{Check, Sense, Verdict, slug, states_of};
use crate::model::Model;
use crate::model::isolator::AXIS_NAMES;
use crate::model::load::LoadClass;
use crate::study::evaluate::Evaluation;
use crate::units::Shown;

/// How near to its stop a mount comes.
struct Nearness {
    load: usize,
    axis: usize,
    deflection: f64,
    travel: f64,
}

/// One check for each mount with stops.
///
/// A stop touched in a `service` case fails: it passes noise and shock all day.
/// Touched in a `durability` case it is close: the knock is felt. In rarer
/// cases stops are meant to be touched.
pub(super) fn checks(model: &Model, evaluation: &Evaluation) -> Vec<Check> {
    (0..model.mounts.len()).filter_map(|mount| check(model, evaluation, mount)).collect()
}

fn check(model: &Model, evaluation: &Evaluation, mount: usize) -> Option<Check> {
    let name = &model.mounts[mount].name;
    let isolator = &model.isolators[model.mounts[mount].isolator];
    let service = nearest(model, evaluation, mount, LoadClass::Service)?;
    let blank = Check {
        basis: format!("free travel of isolator {} before its stop", isolator.name),
        ..Check::new(
            format!("stop.{}", slug(name)),
            format!("{name} free travel left"),
            Shown::Millimetre,
        )
    };
    let judge = |near: &Nearness| {
        Check {
            load: Some(near.load),
            title: format!("{name} travel along {} before its stop", AXIS_NAMES[near.axis]),
            ..blank.clone()
        }
        .judged(near.deflection, Sense::AtMost, near.travel, isolator.scatter * near.deflection)
    };
    let cure = |near: &Nearness| {
        format!(
            "more free travel along {0} or a stiffer isolator along {0}; a stop that is touched passes shock and noise",
            AXIS_NAMES[near.axis]
        )
    };
    let everyday = judge(&service);
    if everyday.verdict != Verdict::Ok {
        return Some(everyday.cured_by(|| cure(&service)));
    }
    let hard = nearest(model, evaluation, mount, LoadClass::Durability)
        .filter(|near| near.deflection > near.travel);
    Some(match hard {
        Some(near) => Check {
            note: Some("the stop is touched in hard use only: a knock is felt, nothing breaks".to_owned()),
            ..judge(&near).advisory().cured_by(|| cure(&near))
        },
        None => everyday,
    })
}

/// The load case of a class in which the mount uses the largest share of its free travel.
fn nearest(model: &Model, evaluation: &Evaluation, mount: usize, class: LoadClass) -> Option<Nearness> {
    let stops = &model.isolators[model.mounts[mount].isolator].stops;
    states_of(model, evaluation, mount)
        .filter(|(load, ..)| load.class == class)
        .flat_map(|(_, load, state)| {
            (0..3).filter_map(move |axis| {
                let x = state.isolator_deflection[axis];
                let travel = if x < 0.0 { -stops[axis].lower? } else { stops[axis].upper? };
                Some(Nearness {
                    load,
                    axis,
                    deflection: x.abs(),
                    travel,
                })
            })
        })
        .max_by(|a, b| (a.deflection / a.travel).total_cmp(&(b.deflection / b.travel)))
}
