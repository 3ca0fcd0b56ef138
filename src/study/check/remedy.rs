//! Cures that are tried before they are printed: the build is changed and solved again.

use crate::model::Model;
use crate::model::isolator::Isolator;
use crate::rigid::equilibrium::MountState;
use crate::study::evaluate::{ModesAt, modes_at_rest, solve_one};

/// Largest change of a rate that is tried, either way.
const MOST: f64 = 16.0;

/// Halvings of the interval in which the factor lies: good to half a per cent for a change of a quarter.
const HALVINGS: usize = 6;

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

/// The isolators with the rate of one along one axis multiplied.
pub(super) fn with_rate(model: &Model, isolator: usize, axis: usize, factor: f64) -> Vec<Isolator> {
    altered(model, isolator, |part| part.stiffened(axis, factor))
}

/// The isolators with every rate of one multiplied.
pub(super) fn with_isolator(model: &Model, isolator: usize, factor: f64) -> Vec<Isolator> {
    altered(model, isolator, |part| part.scaled(factor))
}

/// The isolators with every rate of every one multiplied.
pub(super) fn with_all_rates(model: &Model, factor: f64) -> Vec<Isolator> {
    model
        .isolators
        .iter()
        .map(|part| part.scaled(factor))
        .collect()
}

fn altered(
    model: &Model,
    isolator: usize,
    change: impl Fn(&Isolator) -> Isolator,
) -> Vec<Isolator> {
    let mut altered = model.isolators.clone();
    if let Some(part) = altered.get_mut(isolator) {
        *part = change(part);
    }
    altered
}

/// State of a mount in a load case with other isolators; `None` when no position is found.
pub(super) fn state_again(
    model: &Model,
    isolators: &[Isolator],
    load: usize,
    mount: usize,
) -> Option<MountState> {
    let result = solve_one(model, isolators, load).ok()?;
    let place = result
        .mounts
        .iter()
        .position(|&taking_part| taking_part == mount)?;
    result.outcome.ok()?.mounts.get(place).copied()
}

/// Modes at rest with other isolators; `None` when no position is found.
pub(super) fn modes_again(model: &Model, isolators: &[Isolator]) -> Option<ModesAt> {
    modes_at_rest(model, isolators).ok()
}
