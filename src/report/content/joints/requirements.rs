//! What is required of a joint, the governing requirement first.

use crate::model::Model;
use crate::report::content::comparison::{self, Comparison};
use crate::report::content::names;
use crate::report::content::table::{Group, Row, Table};
use crate::study::check::{Check, Subject, Verdict};
use crate::study::evaluate::Evaluation;
use crate::study::joint::JointResult;
use crate::study::joint::requirement::{Requirement, Unjudged};

/// A requirement with its outcome.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Judged<'a> {
    /// What is required.
    pub required: &'a Requirement,
    /// How it came out.
    pub verdict: Verdict,
}

/// The verdicts of the evaluation on one joint.
pub fn checks<'a>(
    evaluation: &'a Evaluation,
    result: &JointResult,
) -> impl Iterator<Item = &'a Check> {
    let place = result.joint;
    evaluation.checks.iter().filter(move |check| {
        matches!(check.subject, Some(Subject::Requirement { joint, .. }) if joint == place)
    })
}

/// The worst outcome of a joint.
#[must_use]
pub fn of_joint(evaluation: &Evaluation, result: &JointResult) -> Verdict {
    let judged = ordered(evaluation, result);
    let worst = judged
        .first()
        .map_or(Verdict::NotChecked, |one| one.verdict);
    // What is left open is worse than ok and better than what is known to be short.
    if worst == Verdict::Ok && !result.unjudged.is_empty() {
        return Verdict::NotChecked;
    }
    worst
}

/// All requirements, the worst first: by outcome, then what breaks something before advice, then by what is used of the limit.
///
/// The outcome is that of the check of the same requirement, which knows how the isolators scatter.
#[must_use]
pub fn ordered<'a>(evaluation: &Evaluation, result: &'a JointResult) -> Vec<Judged<'a>> {
    let verdict = |required: &Requirement| {
        let subject = Subject::Requirement {
            joint: result.joint,
            id: required.id,
        };
        // One without a value tells what is left open of a requirement that is judged as far as it can be.
        let is_its = |check: &&Check| check.subject == Some(subject) && check.value.is_some();
        let found = evaluation.checks.iter().find(is_its);
        found.map_or_else(|| compared(required), |check| check.verdict)
    };
    let mut all: Vec<Judged<'a>> = result
        .requirements
        .iter()
        .map(|required| Judged {
            required,
            verdict: verdict(required),
        })
        .collect();
    all.sort_by(|a, b| {
        let (one, other) = (a.required, b.required);
        b.verdict
            .cmp(&a.verdict)
            .then(one.advisory.cmp(&other.advisory))
            .then(other.utilisation().total_cmp(&one.utilisation()))
    });
    all
}

/// Outcome by the numbers alone, where the evaluation holds no check of it.
fn compared(required: &Requirement) -> Verdict {
    match (required.holds(), required.advisory) {
        (true, _) => Verdict::Ok,
        (false, true) => Verdict::Over,
        (false, false) => Verdict::Fails,
    }
}

/// The requirement that decides: of those that break something when missed, the one nearest to its limit or farthest past it.
///
/// The tightening of the bolt is left to others: without a stated torque it is at its limit on purpose.
#[must_use]
pub fn governing(result: &JointResult) -> Option<&Requirement> {
    let decides = |one: &&Requirement| !one.advisory && (one.id != "tightening" || !one.holds());
    let all = result.requirements.iter();
    all.filter(decides)
        .max_by(|a, b| a.utilisation().total_cmp(&b.utilisation()))
}

/// Load case in which a joint is nearest to its limit; that with the largest pull when no requirement has one.
#[must_use]
pub fn governing_load(result: &JointResult) -> Option<usize> {
    let all = result.requirements.iter();
    let loaded = all.filter(|one| one.load.is_some() && !one.advisory);
    loaded
        .max_by(|a, b| a.utilisation().total_cmp(&b.utilisation()))
        .and_then(|one| one.load)
        .or_else(|| pulled_most(result).map(|(load, _)| load))
}

/// Load case and pull \[N\] of the bolt that is pulled most over all load cases; `None` when none is pulled.
#[must_use]
pub fn pulled_most(result: &JointResult) -> Option<(usize, f64)> {
    let pulls = result
        .loads
        .iter()
        .map(|loaded| (loaded.load, loaded.most_pulled()));
    pulls
        .max_by(|a, b| a.1.total_cmp(&b.1))
        .filter(|(_, pull)| *pull > 0.0)
}

/// One row a requirement.
#[must_use]
pub fn table(model: &Model, evaluation: &Evaluation, result: &JointResult) -> Table {
    let judged = ordered(evaluation, result);
    let judged = judged.into_iter().map(|one| row(model, one));
    let open = result.unjudged.iter().map(open_row);
    Table {
        id: "joint_requirements",
        about: "What is required of the joint over all load cases, the governing one first."
            .to_owned(),
        item: "requirement",
        columns: comparison::columns(),
        groups: vec![Group::plain(judged.chain(open).collect())],
        note: Some(
            "Where the limit is advised, missing it breaks nothing by itself. No load case means: before any load."
                .to_owned(),
        ),
    }
}

fn row(model: &Model, Judged { required, verdict }: Judged<'_>) -> Row {
    let load = required.load.map(|load| names::load(model, load));
    Row {
        brief: Some(required.brief),
        ..Comparison::of_requirement(required, verdict, load).row(&required.title)
    }
}

fn open_row(open: &Unjudged) -> Row {
    Row {
        brief: Some(open.brief),
        ..Comparison::open(open.reason).row(&open.title)
    }
}

/// What would mend each requirement that is missed, and what to do about those that could not be judged.
#[must_use]
pub fn cures(evaluation: &Evaluation, result: &JointResult) -> Vec<String> {
    let missed = ordered(evaluation, result);
    let missed = missed
        .into_iter()
        .filter(|one| !one.required.holds() && !one.required.cure.is_empty())
        .map(|one| {
            let required = one.required;
            format!(
                "What would mend it ({}): {}.",
                required.title, required.cure
            )
        });
    let open = result
        .unjudged
        .iter()
        .map(|open| format!("Not checked ({}): {}.", open.title, open.cure));
    missed.chain(open).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::fixture;
    use crate::study::evaluate::evaluate;

    fn evaluated() -> Evaluation {
        let (model, _) = fixture::build();
        evaluate(&model).unwrap()
    }

    #[test]
    fn a_verdict_is_found_whatever_its_title_and_joint_are_called() {
        let mut evaluation = evaluated();
        for check in &mut evaluation.checks {
            check.title = "the same for all".to_owned();
            check.id = "x".to_owned();
            if check.subject
                == Some(Subject::Requirement {
                    joint: 1,
                    id: "slip",
                })
            {
                check.verdict = Verdict::Close;
            }
        }
        let verdict = |place: usize| {
            let judged = ordered(&evaluation, &evaluation.joints[place]);
            let slip = judged.iter().find(|one| one.required.id == "slip");
            slip.unwrap().verdict
        };
        assert_eq!(verdict(1), Verdict::Close);
        assert_ne!(verdict(0), Verdict::Close);
        let counted = checks(&evaluation, &evaluation.joints[1]).count();
        let result = &evaluation.joints[1];
        assert_eq!(counted, result.requirements.len() + result.unjudged.len());
    }

    #[test]
    fn missed_advice_is_over_without_a_check_of_it_too() {
        let mut evaluation = evaluated();
        let advice = evaluation.joints[0].requirements.iter_mut();
        let mut advice = advice.filter(|one| one.advisory);
        let missed = advice.next().unwrap();
        missed.value = 3.0 * missed.limit;
        let id = missed.id;
        evaluation.checks.clear();
        let judged = ordered(&evaluation, &evaluation.joints[0]);
        let missed = judged.iter().find(|one| one.required.id == id);
        assert_eq!(missed.unwrap().verdict, Verdict::Over);
    }
}
