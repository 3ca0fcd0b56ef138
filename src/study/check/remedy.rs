//! Cures that are tried before they are printed: the build is changed and solved again.

use crate::model::Model;
use crate::rigid::equilibrium::MountState;
use crate::study::evaluate::{LoadResult, ModesAt, modes_at_rest, solve_one};

/// Largest change of a rate that is tried, either way.
const MOST: f64 = 16.0;

/// Halvings of the interval in which the factor lies: good to a third of a per cent.
const HALVINGS: usize = 8;

/// The smallest factor above 1 at which `passes` holds, or none up to [`MOST`].
pub(super) fn smallest_raise(passes: impl Fn(f64) -> bool) -> Option<f64> {
    let enough = std::iter::successors(Some(1.25), |factor| Some(factor * 1.6))
        .take_while(|factor| *factor <= MOST)
        .find(|factor| passes(*factor))?;
    Some(between(enough / 1.6, enough, passes))
}

/// The largest factor below 1 at which `passes` holds, or none down to one over [`MOST`].
pub(super) fn smallest_cut(passes: impl Fn(f64) -> bool) -> Option<f64> {
    let inverse = smallest_raise(|factor| passes(1.0 / factor))?;
    Some(1.0 / inverse)
}

fn between(fails: f64, passes_at: f64, passes: impl Fn(f64) -> bool) -> f64 {
    let (mut low, mut high) = (fails.max(1.0), passes_at);
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(low, high);
        if passes(middle) {
            high = middle;
        } else {
            low = middle;
        }
    }
    high
}

/// The build with the rate of one isolator along one axis multiplied.
pub(super) fn with_rate(model: &Model, isolator: usize, axis: usize, factor: f64) -> Model {
    altered(model, |place, part| {
        (place == isolator).then(|| part.stiffened(axis, factor))
    })
}

/// The build with every rate of one isolator multiplied.
pub(super) fn with_isolator(model: &Model, isolator: usize, factor: f64) -> Model {
    altered(model, |place, part| {
        (place == isolator).then(|| part.scaled(factor))
    })
}

/// The build with every rate of every isolator multiplied.
pub(super) fn with_all_rates(model: &Model, factor: f64) -> Model {
    altered(model, |_, part| Some(part.scaled(factor)))
}

fn altered(
    model: &Model,
    change: impl Fn(
        usize,
        &crate::model::isolator::Isolator,
    ) -> Option<crate::model::isolator::Isolator>,
) -> Model {
    let mut altered = model.clone();
    for (place, part) in altered.isolators.iter_mut().enumerate() {
        if let Some(changed) = change(place, part) {
            *part = changed;
        }
    }
    altered
}

/// One load case of a changed build.
pub(super) fn solved_again(model: &Model, load: usize) -> Option<LoadResult> {
    solve_one(model, load)
        .ok()
        .filter(|result| result.outcome.is_ok())
}

/// State of a mount in a load case of a changed build.
pub(super) fn state_again(model: &Model, load: usize, mount: usize) -> Option<MountState> {
    let result = solved_again(model, load)?;
    let place = result
        .mounts
        .iter()
        .position(|&taking_part| taking_part == mount)?;
    result.outcome.ok()?.mounts.get(place).copied()
}

/// Modes at rest of a changed build.
pub(super) fn modes_again(model: &Model) -> Option<ModesAt> {
    modes_at_rest(model).ok()
}
