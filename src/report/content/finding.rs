//! One check in words: what was found, what it is held against, and what would mend it.

use crate::model::Model;
use crate::study::check::{Check, Verdict};
use crate::study::evaluate::Evaluation;

use super::{names, quantity};

/// A check as people read it.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding {
    /// Outcome.
    pub verdict: Verdict,
    /// What is checked.
    pub title: String,
    /// Governing load case.
    pub load: Option<String>,
    /// Computed value with unit, and its scatter where it has one.
    pub value: Option<String>,
    /// Limit with unit, after `at most` or `at least`, and after `advised` for a rule of good practice.
    pub limit: Option<String>,
    /// Share of the limit that is used.
    pub used: Option<String>,
    /// Where the limit comes from.
    pub basis: String,
    /// What the verdict rests on or lacks.
    pub note: Option<String>,
    /// What would mend it.
    pub cure: Option<String>,
}

impl Finding {
    /// A check in words.
    #[must_use]
    pub fn of(check: &Check, model: &Model) -> Self {
        let (value, limit) = value_and_limit(check);
        Self {
            verdict: check.verdict,
            title: check.title.clone(),
            load: check.load.map(|load| names::load(model, load).to_owned()),
            value: value.map(|value| match scatter(check) {
                Some(scatter) => format!("{value}, give or take {scatter}"),
                None => value,
            }),
            limit: limit.map(|limit| format!("{} {limit}", side(check))),
            used: check
                .utilisation
                .filter(|u| u.is_finite())
                .map(quantity::share),
            basis: check.basis.clone(),
            note: check.note.clone().filter(|note| !note.is_empty()),
            cure: check.cure.clone().filter(|cure| !cure.is_empty()),
        }
    }
}

/// Verdicts in reading order, the worst first.
pub const VERDICTS: [Verdict; 5] = [
    Verdict::Fails,
    Verdict::Over,
    Verdict::Close,
    Verdict::NotChecked,
    Verdict::Ok,
];

/// How many checks have a verdict.
#[must_use]
pub fn count(evaluation: &Evaluation, verdict: Verdict) -> usize {
    evaluation
        .checks
        .iter()
        .filter(|check| check.verdict == verdict)
        .count()
}

/// Words before a limit. A rule of good practice only advises.
#[must_use]
pub fn side(check: &Check) -> String {
    let words = check.sense.words();
    if check.advisory {
        format!("advised {words}")
    } else {
        words.to_owned()
    }
}

fn value_and_limit(check: &Check) -> (Option<String>, Option<String>) {
    let finite = |number: Option<f64>| number.filter(|n| n.is_finite());
    match (finite(check.value), finite(check.limit)) {
        (Some(value), Some(limit)) => {
            let (value, limit) = quantity::pair(value, limit, check.unit);
            (Some(value), Some(limit))
        }
        (value, limit) => (
            value.map(|value| quantity::with_unit(value, check.unit)),
            limit.map(|limit| quantity::with_unit(limit, check.unit)),
        ),
    }
}

/// Half-width of the band, unless it rounds to nothing.
fn scatter(check: &Check) -> Option<String> {
    let width = check.uncertainty;
    let shown = quantity::with_unit(width, check.unit);
    let nothing = quantity::with_unit(0.0, check.unit);
    (width.is_finite() && width > 0.0 && shown != nothing).then_some(shown)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::fixture;

    #[test]
    fn a_scatter_that_rounds_to_nothing_and_a_number_that_is_none_are_not_said() {
        let (model, mut evaluation) = fixture::build();
        let check = &mut evaluation.checks[0];
        check.uncertainty = 0.01e-3;
        assert_eq!(Finding::of(check, &model).value.as_deref(), Some("13.0 mm"));
        check.uncertainty = 0.4e-3;
        let value = Finding::of(check, &model).value;
        assert_eq!(value.as_deref(), Some("13.0 mm, give or take 0.4 mm"));
        check.value = Some(f64::NAN);
        assert_eq!(Finding::of(check, &model).value, None);
    }
}
