//! How far each checked value moves when the isolators lie at the soft or at the stiff end of their scatter.

use std::collections::BTreeMap;

use super::{ALL, Check};
use crate::model::Model;
use crate::study::evaluate::Evaluation;

/// Largest movement of each checked value, by the name of the check, SI.
#[derive(Debug, Clone, Default)]
pub(super) struct Spread {
    ends: Vec<BTreeMap<String, f64>>,
}

impl Spread {
    /// Of a model and its evaluations at the ends of the scatter.
    pub(super) fn of(model: &Model, ends: &[Evaluation]) -> Self {
        Self {
            ends: ends.iter().map(|end| values(model, end)).collect(),
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
