//! Section: the verdicts, and what to change first.

use crate::model::Model;
use crate::study::check::Verdict;
use crate::study::evaluate::Evaluation;

use super::finding::{Finding, VERDICTS, count};
use super::{Block, Section};

/// Counts, then each check that fails, is over advice or close.
#[must_use]
pub fn section(model: &Model, evaluation: &Evaluation) -> Section {
    let mut blocks = vec![Block::Paragraph(headline(evaluation))];
    let wanting = wanting(model, evaluation);
    if !wanting.is_empty() {
        blocks.push(Block::Paragraph(
            "Change these first. Each says what was found, what it is held against, and what would mend it."
                .to_owned(),
        ));
        blocks.push(Block::Findings(wanting));
    }
    Section {
        id: "verdicts",
        heading: "Verdicts, and what to change first",
        blocks,
    }
}

/// One sentence with the number of checks of each verdict.
#[must_use]
pub fn headline(evaluation: &Evaluation) -> String {
    let total = evaluation.checks.len();
    if total == 0 {
        return "Nothing was checked: the file states no limits.".to_owned();
    }
    let counts: Vec<String> = VERDICTS
        .iter()
        .map(|&verdict| (verdict, count(evaluation, verdict)))
        .filter(|(_, count)| *count > 0)
        .map(|(verdict, count)| format!("{count} {}", counted(verdict, count)))
        .collect();
    let noun = if total == 1 { "check" } else { "checks" };
    format!("{total} {noun}: {}.", counts.join(", "))
}

/// Checks that fail, are over advice or close, the worst first.
#[must_use]
pub fn wanting(model: &Model, evaluation: &Evaluation) -> Vec<Finding> {
    evaluation
        .checks
        .iter()
        .filter(|check| {
            matches!(
                check.verdict,
                Verdict::Fails | Verdict::Over | Verdict::Close
            )
        })
        .map(|check| Finding::of(check, model))
        .collect()
}

/// Word of a verdict after a number of checks.
#[must_use]
pub fn counted(verdict: Verdict, count: usize) -> &'static str {
    match verdict {
        Verdict::Fails if count != 1 => "fail",
        Verdict::Over => "over advice",
        other => other.word(),
    }
}
