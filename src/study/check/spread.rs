//! How far each checked value moves when the isolators lie at the soft or at the stiff end of their scatter.
//!
//! Computed, not estimated: the whole build is evaluated again with every rate
//! multiplied by one minus and by one plus its scatter. The rates of one rubber
//! go up and down together with its hardness (common practice), so all move at once.

use std::collections::BTreeMap;

use super::{ALL, Check};
use crate::model::Model;
use crate::model::isolator::Isolator;
use crate::study::evaluate::{Evaluation, results};

/// Largest movement of each checked value, by the name of the check, SI.
#[derive(Debug, Clone, Default)]
pub(super) struct Spread {
    ends: Vec<BTreeMap<String, f64>>,
}

impl Spread {
    /// Evaluates both ends. An end at which nothing is found tells nothing of the values.
    pub(super) fn of(model: &Model) -> Self {
        let ends = [-1.0, 1.0].into_iter().filter_map(|sign| {
            let altered: Vec<Isolator> = model
                .isolators
                .iter()
                .map(|isolator| isolator.scaled(1.0 + sign * isolator.scatter))
                .collect();
            let evaluation = results(model, &altered).ok()?;
            Some(values(model, &evaluation))
        });
        Self {
            ends: ends.collect(),
        }
    }

    /// Half-width of the band around `value` of the check named `id`.
    pub(super) fn about(&self, id: &str, value: f64) -> f64 {
        let moved = self
            .ends
            .iter()
            .filter_map(|end| Some((end.get(id)? - value).abs()));
        moved.fold(0.0, f64::max)
    }
}

fn values(model: &Model, evaluation: &Evaluation) -> BTreeMap<String, f64> {
    let none = Spread::default();
    let checks: Vec<Check> = ALL
        .iter()
        .flat_map(|check| check(model, evaluation, &none))
        .collect();
    checks
        .into_iter()
        .filter_map(|check| Some((check.id, check.value?)))
        .collect()
}
