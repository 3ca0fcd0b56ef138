//! The report as terminal text: at most 80 columns, complete without colour, no box drawing.
//!
//! [`summary`] is what a fabricator can act on, on one screen. [`full`] gives
//! chosen topics with all their tables, [`isolator`] one part with its curve,
//! [`joint`] one joint. All return text and print nothing.

mod layout;
mod summary;
mod table;

use crate::model::Model;
use crate::model::isolator::Isolator;
use crate::study::check::Verdict;
use crate::study::evaluate::Evaluation;

use super::content::finding::Finding;
use super::content::{
    Block, Section, axes, checks, clearances, deflections, frequencies, isolators, joints, loads,
    mass, reactions, shapes, verdicts,
};
use layout::{indented, wrap};

pub use summary::summary;

/// Widest line \[characters\].
pub const WIDTH: usize = 80;

/// Columns before the words of a finding.
const FINDING: usize = 7;

/// Whether verdicts are repeated in colour.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Style {
    /// Plain characters only.
    #[default]
    Plain,
    /// Verdict words in the terminal's red, yellow and green.
    Coloured,
}

impl Style {
    /// A piece of text, in the colour of a verdict when colours are on.
    fn paint(self, text: &str, verdict: Verdict) -> String {
        let code = match (self, verdict) {
            (Self::Plain, _) | (_, Verdict::NotChecked) => return text.to_owned(),
            (_, Verdict::Fails) => 31,
            (_, Verdict::Over | Verdict::Close) => 33,
            (_, Verdict::Ok) => 32,
        };
        format!("\u{1b}[{code}m{text}\u{1b}[0m")
    }
}

/// A part of the results that can be asked for alone.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Topic {
    /// Load cases, reactions, deflections, clearances.
    Statics,
    /// Natural frequencies, mode shapes, axes.
    Modes,
    /// All checks.
    Checks,
    /// Parts, mounts and mass properties.
    Mass,
    /// Rates of the isolators and what belongs to them.
    Isolators,
    /// What holds each mount to the chassis.
    Joints,
}

impl Topic {
    /// All topics in reading order.
    pub const ALL: [Self; 6] = [
        Self::Checks,
        Self::Mass,
        Self::Isolators,
        Self::Joints,
        Self::Statics,
        Self::Modes,
    ];

    /// Word on the command line.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Statics => "statics",
            Self::Modes => "modes",
            Self::Checks => "checks",
            Self::Mass => "mass",
            Self::Isolators => "isolators",
            Self::Joints => "joints",
        }
    }

    fn sections(self, model: &Model, evaluation: &Evaluation) -> Vec<Section> {
        match self {
            Self::Statics => vec![
                loads::section(model, evaluation),
                reactions::section(model, evaluation),
                deflections::section(model, evaluation),
                clearances::section(model, evaluation),
            ],
            Self::Modes => vec![
                frequencies::section(model, evaluation),
                shapes::section(model, evaluation),
                axes::section(evaluation),
            ],
            Self::Checks => vec![Section {
                id: "checks",
                heading: "All checks",
                blocks: vec![
                    Block::Paragraph(verdicts::headline(evaluation)),
                    Block::Findings(checks::all(model, evaluation)),
                ],
            }],
            Self::Mass => vec![mass::section(model)],
            Self::Isolators => vec![isolators::section(model)],
            Self::Joints => vec![joints::section(model, evaluation)],
        }
    }
}

/// The chosen topics with all their tables, in the order given; ends with a line end.
#[must_use]
pub fn full(model: &Model, evaluation: &Evaluation, topics: &[Topic], style: Style) -> String {
    let mut lines = wrap(&model.title, WIDTH);
    for topic in topics {
        for section in topic.sections(model, evaluation) {
            lines.push(String::new());
            lines.extend(section_lines(&section, style));
        }
    }
    joined(&lines)
}

/// All that is known of one isolator of the model; ends with a line end.
#[must_use]
pub fn isolator(model: &Model, isolator: &Isolator, style: Style) -> String {
    let mut lines = wrap(&isolators::sheet::title(isolator), WIDTH);
    for block in isolators::sheet::blocks(model, isolator) {
        lines.push(String::new());
        lines.extend(block_lines(&block, style));
    }
    joined(&lines)
}

/// All that is known of one joint, with its place in `Evaluation::joints`; empty when there is none. Ends with a line end.
#[must_use]
pub fn joint(model: &Model, evaluation: &Evaluation, place: usize, style: Style) -> String {
    let mut lines = Vec::new();
    if let Some((joint, result)) = joints::at(model, evaluation, place) {
        lines.extend(wrap(&joints::title(model, joint), WIDTH));
        let cautions = joints::assembly::CAUTIONS.map(str::to_owned).to_vec();
        let mut blocks = joints::sheet::blocks(model, evaluation, joint, result, place);
        blocks.push(Block::List(cautions));
        for block in &blocks {
            let of_block = block_lines(block, style);
            if !of_block.is_empty() {
                lines.push(String::new());
                lines.extend(of_block);
            }
        }
    }
    joined(&lines)
}

fn joined(lines: &[String]) -> String {
    let mut text = String::new();
    for line in lines {
        text.push_str(line.trim_end());
        text.push('\n');
    }
    text
}

fn section_lines(section: &Section, style: Style) -> Vec<String> {
    let mut lines = vec![
        section.heading.to_owned(),
        "=".repeat(section.heading.chars().count()),
    ];
    for (place, block) in section.blocks.iter().enumerate() {
        let of_block = block_lines(block, style);
        if place > 0 && !of_block.is_empty() {
            lines.push(String::new());
        }
        lines.extend(of_block);
    }
    lines
}

fn block_lines(block: &Block, style: Style) -> Vec<String> {
    match block {
        Block::Heading(text) => {
            let mut lines = wrap(text, WIDTH);
            let widest = lines.iter().map(|l| l.chars().count()).max().unwrap_or(0);
            lines.push("-".repeat(widest));
            lines
        }
        Block::Paragraph(text) => wrap(text, WIDTH),
        Block::List(items) => items
            .iter()
            .flat_map(|item| indented("- ", 2, item, WIDTH))
            .collect(),
        Block::Lines(lines) => lines
            .iter()
            .flat_map(|line| {
                let text = format!("{}: {}", line.label, line.value);
                indented("", 2, &text, WIDTH)
            })
            .collect(),
        Block::Verbatim(lines) => lines.iter().map(|line| layout::visible(line)).collect(),
        Block::Table(table) => table::lines(table, style),
        Block::Findings(findings) => findings
            .iter()
            .flat_map(|finding| finding_lines(finding, style))
            .collect(),
        Block::Plates(plates) => plates
            .iter()
            .filter_map(|plate| plate.text.as_deref())
            .flat_map(|text| indented("", 2, text, WIDTH))
            .collect(),
    }
}

/// The verdict as a word that stands out without colour.
fn verdict_word(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Fails => "FAILS",
        other => other.word(),
    }
}

/// A finding cut short: verdict, and what was found against what.
fn found_lines(finding: &Finding, style: Style) -> Vec<String> {
    let mut found = finding.title.clone();
    if let Some(load) = &finding.load {
        found.push_str(&format!(" ({load})"));
    }
    let numbers: Vec<&str> = [&finding.value, &finding.limit]
        .into_iter()
        .flatten()
        .map(String::as_str)
        .collect();
    if !numbers.is_empty() {
        found.push_str(": ");
        found.push_str(&numbers.join("; "));
    }
    if let Some(used) = &finding.used {
        found.push_str(&format!("; {used} used"));
    }
    let word = verdict_word(finding.verdict);
    let head = format!("{word:<width$}", width = FINDING.max(word.len() + 2));
    let mut lines = indented(&head, FINDING, &found, WIDTH);
    if let Some(first) = lines.first_mut()
        && let Some(rest) = first.strip_prefix(word)
    {
        *first = format!("{}{rest}", style.paint(word, finding.verdict));
    }
    lines
}

/// A finding: verdict, what was found against what, where the limit comes from, what mends it.
fn finding_lines(finding: &Finding, style: Style) -> Vec<String> {
    let mut lines = found_lines(finding, style);
    let blank = " ".repeat(FINDING);
    let mut more = vec![format!("Limit: {}", finding.basis)];
    more.extend(finding.note.clone());
    more.extend(finding.cure.as_ref().map(|cure| format!("Cure: {cure}")));
    for text in more {
        lines.extend(indented(&blank, FINDING + 2, &text, WIDTH));
    }
    lines
}

#[cfg(test)]
mod tests;
