//! One check in words: what was found, what it is held against, and what would mend it.

use crate::model::Model;
use crate::study::check::{Check, Verdict};
use crate::study::evaluate::Evaluation;
use crate::units::Digits;

use super::comparison::side;
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
        let [value, scatter, limit] = numbers(check);
        Self {
            verdict: check.verdict,
            title: check.title.clone(),
            load: check.load.map(|load| names::load(model, load).to_owned()),
            value: value.map(|value| match scatter {
                Some(scatter) => format!("{value}, give or take {scatter}"),
                None => value,
            }),
            limit: limit.map(|limit| format!("{} {limit}", side(check.sense, check.advisory))),
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

/// Value, its scatter and limit where they are known, with digits that suit each other.
fn numbers(check: &Check) -> [Option<String>; 3] {
    let unit = check.unit;
    let [value, limit] = [check.value, check.limit].map(|n| n.filter(|n| n.is_finite()));
    let [of_value, of_limit] =
        quantity::compared(value.unwrap_or(f64::NAN), limit.unwrap_or(f64::NAN), unit);
    [
        value.map(|value| quantity::with_digits(value, unit, of_value)),
        scatter(check, of_value),
        limit.map(|limit| quantity::with_digits(limit, unit, of_limit)),
    ]
}

/// Half-width of the band with the decimals of its value, unless it rounds to nothing.
fn scatter(check: &Check, of_value: Digits) -> Option<String> {
    let width = check.uncertainty;
    let shown = |size: f64| match of_value {
        Digits::Decimals(_) => quantity::with_digits(size, check.unit, of_value),
        // Fewer digits than the value itself has.
        Digits::Significant(_) => quantity::with_unit(size, check.unit),
    };
    (width.is_finite() && width > 0.0 && shown(width) != shown(0.0)).then(|| shown(width))
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
