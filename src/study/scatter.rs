//! The build with its isolators at the soft and at the stiff end of their scatter.
//!
//! Computed, not estimated: the whole build is evaluated again with every rate
//! multiplied by one minus and by one plus its scatter. The rates of one rubber
//! go up and down together with its hardness (common practice), so all move at once.

use crate::model::Model;
use crate::model::isolator::Isolator;

use super::evaluate::{Evaluation, results};

/// Both ends, the soft one first. An end at which the powertrain has no position at rest tells nothing and is left out.
pub(super) fn ends(model: &Model) -> Vec<Evaluation> {
    let end = |sign: f64| {
        let altered: Vec<Isolator> = model
            .isolators
            .iter()
            .map(|isolator| isolator.scaled(1.0 + sign * isolator.scatter))
            .collect();
        results(model, &altered).ok()
    };
    [-1.0, 1.0].into_iter().filter_map(end).collect()
}
