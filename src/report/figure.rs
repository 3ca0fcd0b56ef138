//! Figures of the report: one build and its evaluation as drawings.
//!
//! One file below this one is one figure. Each gives a [`Figure`] whose `svg`
//! can stand inside a page as it is: it has no outer size, a transparent
//! background and only the colours of [`palette`], so that [`DARK_CSS`] can
//! turn it for a dark page. `title`, `alt` and `caption` are plain text, which
//! the page escapes.
//!
//! Reads no file and computes nothing that the evaluation does not hold but
//! where things lie on the paper.

mod axis;
mod canvas;
mod clamp_diagram;
mod clearances;
mod deflections;
#[cfg(test)]
mod fixture;
mod frequencies;
mod hatch;
mod isolator;
mod joint_face;
mod joint_section;
mod key;
mod label;
mod layout;
mod mark;
mod mode_shape;
pub mod palette;
mod reactions;
mod solid;
mod svg;
#[cfg(test)]
mod tests;
mod view;

pub use clamp_diagram::clamp_diagram;
pub use clearances::clearances;
pub use deflections::deflections;
pub use frequencies::frequencies;
pub use isolator::isolator;
pub use joint_face::joint_face;
pub use joint_section::joint_section;
pub use layout::layout;
pub use mode_shape::mode_shape;
pub use palette::DARK_CSS;
pub use reactions::reactions;

use crate::model::Model;
use crate::model::joint::Joint;
use crate::report::content::joints;
use crate::study::evaluate::Evaluation;
use crate::study::joint::JointResult;

/// One figure, ready for a page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Figure {
    /// The drawing: one `svg` element with class `fig`, names in it escaped.
    pub svg: String,
    /// What the figure shows, in a few words; plain text.
    pub title: String,
    /// What is to be seen, with the numbers that count, for a reader who does not see it; plain text.
    pub alt: String,
    /// How to read it; plain text.
    pub caption: String,
}

/// Why a figure was not drawn; its text takes the place of the drawing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum FigureError {
    /// The build or its evaluation holds nothing of this kind.
    Nothing(&'static str),
    /// No load case that the figure needs has a position.
    NoPosition(&'static str),
    /// There is no mode with this place.
    NoSuchMode {
        /// Place in `Evaluation::modes`.
        position: usize,
        /// Place among the modes of that position.
        mode: usize,
    },
    /// A number that should be drawn is infinite or not a number.
    NotFinite(&'static str),
    /// The drawing library refused.
    Drawing(String),
}

impl std::fmt::Display for FigureError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Nothing(what) => write!(f, "the build has no {what}"),
            Self::NoPosition(what) => write!(
                f,
                "no load case has a position from which to show the {what}"
            ),
            Self::NoSuchMode { position, mode } => write!(
                f,
                "there is no mode {} at position {}",
                mode.saturating_add(1),
                position.saturating_add(1)
            ),
            Self::NotFinite(what) => write!(f, "a number of the {what} is not finite"),
            Self::Drawing(reason) => write!(f, "the drawing library says: {reason}"),
        }
    }
}

impl std::error::Error for FigureError {}

/// The joint with this place in `Evaluation::joints`, and its result.
fn joint_at<'a>(
    model: &'a Model,
    evaluation: &'a Evaluation,
    place: usize,
) -> Result<(&'a Joint, &'a JointResult), FigureError> {
    joints::at(model, evaluation, place).ok_or(FigureError::Nothing("joint at this place"))
}
