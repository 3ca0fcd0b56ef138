//! The report as data: sections of headings, sentences, lines, tables, findings and figures.
//!
//! One file below is the builder of one section. The order of [`page`] is the
//! order in which a fabricator decides: what fails and what mends it, then the
//! numbers behind it, then where every number comes from.
//!
//! Holds text as people read it, not escaped for any format: the writers do that.

pub mod assumptions;
pub mod axes;
pub mod cautions;
pub mod checks;
pub mod clearances;
mod comparison;
pub mod deflections;
pub mod finding;
pub mod frequencies;
pub mod isolators;
pub mod joints;
pub mod loads;
pub mod mass;
pub mod method;
pub(crate) mod names;
pub mod overview;
pub mod quantity;
pub mod reactions;
pub mod shapes;
pub mod table;
pub mod verdicts;

use crate::model::{Fitted, Model};
use crate::study::check::Verdict;
use crate::study::evaluate::Evaluation;

use finding::Finding;
use table::Table;

/// The whole report.
#[derive(Debug, Clone, PartialEq)]
pub struct Page {
    /// Title of the build.
    pub title: String,
    /// What the page is, and where its coordinates start.
    pub subtitle: String,
    /// Sections in reading order.
    pub sections: Vec<Section>,
}

/// One section.
#[derive(Debug, Clone, PartialEq)]
pub struct Section {
    /// Short name for links, unique on the page: letters and hyphens only.
    pub id: &'static str,
    /// Heading.
    pub heading: &'static str,
    /// What stands in it, in reading order.
    pub blocks: Vec<Block>,
}

/// One piece of a section.
#[derive(Debug, Clone, PartialEq)]
pub enum Block {
    /// A heading below the section's own.
    Heading(String),
    /// Sentences.
    Paragraph(String),
    /// Items of equal rank.
    List(Vec<String>),
    /// Labelled values.
    Lines(Vec<Line>),
    /// Lines to be copied as they stand, never broken.
    Verbatim(Vec<String>),
    /// A table.
    Table(Table),
    /// Checks with all that is known of each.
    Findings(Vec<Finding>),
    /// Figures that belong side by side; left out where nothing can be drawn.
    Plates(Vec<Plate>),
}

impl Block {
    /// A paragraph.
    #[must_use]
    pub fn paragraph(text: impl Into<String>) -> Self {
        Self::Paragraph(text.into())
    }

    /// One figure on its own.
    #[must_use]
    pub fn plate(drawing: Drawing) -> Self {
        Self::Plates(vec![Plate {
            drawing,
            text: None,
        }])
    }
}

/// A label with its value, unit included.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// What it is.
    pub label: String,
    /// Its value in words or with its unit.
    pub value: String,
    /// Verdict on it, when there is one.
    pub verdict: Option<Verdict>,
}

impl Line {
    /// A line without a verdict.
    #[must_use]
    pub fn new(label: impl Into<String>, value: impl Into<String>) -> Self {
        Self {
            label: label.into(),
            value: value.into(),
            verdict: None,
        }
    }
}

/// A figure with what is said below it.
#[derive(Debug, Clone, PartialEq)]
pub struct Plate {
    /// What is drawn.
    pub drawing: Drawing,
    /// Sentences that belong to it beside its own caption.
    pub text: Option<String>,
}

/// Which figure; a writer that can show it draws it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Drawing {
    /// The build seen from three sides.
    Layout,
    /// Forces at the mounts.
    Reactions,
    /// Isolator deflections against limits and stops.
    Deflections,
    /// Force against deflection of one isolator, with what its mounts do.
    Isolator {
        /// Which, as a place in `Model::isolators`.
        isolator: usize,
    },
    /// Section through rail, sleeve, plates and bolt of one joint.
    JointSection {
        /// Which, as a place in `Evaluation::joints`.
        joint: usize,
    },
    /// Bolts of one joint seen on its face, with the load that governs.
    JointFace {
        /// Which, as a place in `Evaluation::joints`.
        joint: usize,
    },
    /// Force against elongation of one bolt and what it clamps.
    ClampDiagram {
        /// Which, as a place in `Evaluation::joints`.
        joint: usize,
    },
    /// Remaining gaps.
    Clearances,
    /// Natural frequencies on one line with what excites them.
    Frequencies,
    /// One mode shape.
    ModeShape {
        /// Which position, as a place in `Evaluation::modes`.
        position: usize,
        /// Which mode of it, from 0.
        mode: usize,
    },
}

/// The whole report as data.
#[must_use]
pub fn page(model: &Model, evaluation: &Evaluation) -> Page {
    let fitted = match model.fitted {
        Fitted::Free => "with the rubber unloaded",
        Fitted::Settled => "with the powertrain resting on its mounts",
    };
    Page {
        title: model.title.clone(),
        subtitle: format!(
            "Powertrain mounting report. Positions are measured from {}, x forward, y left, z up, {fitted}.",
            model.origin
        ),
        sections: vec![
            verdicts::section(model, evaluation),
            mass::section(model),
            reactions::section(model, evaluation),
            deflections::section(model, evaluation),
            isolators::section(model),
            joints::section(model, evaluation),
            clearances::section(model, evaluation),
            frequencies::section(model, evaluation),
            shapes::section(model, evaluation),
            axes::section(evaluation),
            checks::section(model, evaluation),
            loads::section(model, evaluation),
            assumptions::section(model),
            method::section(),
            cautions::section(),
        ],
    }
}
