//! Verdicts, in the results document.

use serde::Serialize;

use crate::model::Model;
use crate::report::content::finding::count;
use crate::report::content::{names, quantity};
use crate::study::check::{Check, Verdict};
use crate::study::evaluate::Evaluation;
use crate::study::joint::requirement::Requirement;

use super::finite;

#[derive(Serialize)]
pub(super) struct Counts {
    fails: usize,
    over: usize,
    close: usize,
    not_checked: usize,
    ok: usize,
}

/// What is held against what, of a check or of a requirement.
#[derive(Serialize)]
pub(super) struct ComparedOut<'a> {
    id: &'a str,
    title: &'a str,
    /// Governing load case; `null` where none governs.
    load: Option<&'a str>,
    value: Option<f64>,
    limit: Option<f64>,
    /// `at most` or `at least`.
    sense: &'static str,
}

#[derive(Serialize)]
pub(super) struct CheckOut<'a> {
    #[serde(flatten)]
    compared: ComparedOut<'a>,
    /// A rule of good practice: missing it breaks nothing, and the worst verdict is `over`.
    advisory: bool,
    /// SI unit of value, limit, margin and uncertainty; `1` for plain numbers and shares.
    unit: &'static str,
    /// How far the value is from the limit; below zero it is past it.
    margin: Option<f64>,
    utilisation: Option<f64>,
    /// Half-width of the band of the value from the scatter of the isolators.
    uncertainty: f64,
    /// `ok`, `close`, `over`, `fails` or `not checked`.
    verdict: &'static str,
    basis: &'a str,
    note: Option<&'a str>,
    cure: Option<&'a str>,
}

impl Counts {
    pub(super) fn of(evaluation: &Evaluation) -> Self {
        Self {
            fails: count(evaluation, Verdict::Fails),
            over: count(evaluation, Verdict::Over),
            close: count(evaluation, Verdict::Close),
            not_checked: count(evaluation, Verdict::NotChecked),
            ok: count(evaluation, Verdict::Ok),
        }
    }
}

pub(super) fn all<'a>(model: &'a Model, evaluation: &'a Evaluation) -> Vec<CheckOut<'a>> {
    evaluation
        .checks
        .iter()
        .map(|check| CheckOut::of(model, check))
        .collect()
}

impl<'a> ComparedOut<'a> {
    pub(super) fn of_requirement(model: &'a Model, required: &'a Requirement) -> Self {
        Self {
            id: required.id,
            title: &required.title,
            load: required.load.map(|load| names::load(model, load)),
            value: finite(required.value),
            limit: finite(required.limit),
            sense: required.sense.words(),
        }
    }
}

impl<'a> CheckOut<'a> {
    pub(super) fn of(model: &'a Model, check: &'a Check) -> Self {
        Self {
            compared: ComparedOut {
                id: &check.id,
                title: &check.title,
                load: check.load.map(|load| names::load(model, load)),
                value: check.value,
                limit: check.limit,
                sense: check.sense.words(),
            },
            advisory: check.advisory,
            unit: quantity::si_symbol(check.unit),
            margin: check.margin(),
            utilisation: check.utilisation,
            uncertainty: check.uncertainty,
            verdict: check.verdict.word(),
            basis: &check.basis,
            note: check.note.as_deref(),
            cure: check.cure.as_deref(),
        }
    }
}
