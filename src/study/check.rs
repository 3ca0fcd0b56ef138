//! Verdicts: a computed value against a limit, with where the limit comes from and what would move the value.
//!
//! One check is one file below this one and one line in [`ALL`].

use crate::units::show::Shown;

/// Outcome of a check.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Verdict {
    /// The limit holds with a margin larger than the scatter of the isolators.
    Ok,
    /// The margin lies inside the scatter, or a rule of good practice is missed that breaks nothing.
    Close,
    /// The limit is passed.
    Fails,
    /// What the check needs is not in the file.
    NotChecked,
}

impl Verdict {
    /// Word for people and for the results document.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Ok => "ok",
            Self::Close => "close",
            Self::Fails => "fails",
            Self::NotChecked => "not checked",
        }
    }
}

/// One check.
#[derive(Debug, Clone, PartialEq)]
pub struct Check {
    /// Stable name: kind and subject joined by a point, such as `clearance.fan-to-radiator`.
    pub id: String,
    /// What is checked, in a few words for people.
    pub title: String,
    /// Governing load case, as a place in `Model::loads`.
    pub load: Option<usize>,
    /// Computed value, SI.
    pub value: Option<f64>,
    /// Limit, SI.
    pub limit: Option<f64>,
    /// Whether the value must stay above the limit (a gap) or below it (a deflection).
    pub sense: Sense,
    /// Unit for people; also names the SI unit of `value`.
    pub unit: Shown,
    /// Share of the limit that is used; above 1 fails.
    pub utilisation: Option<f64>,
    /// Half-width of the band in which the real value lies because of the isolators' scatter, SI.
    pub uncertainty: f64,
    /// Outcome.
    pub verdict: Verdict,
    /// Where the limit comes from.
    pub basis: String,
    /// What the verdict rests on or lacks, when the number alone does not say it.
    pub note: Option<String>,
    /// What would mend it, in words and numbers; empty when nothing needs mending.
    pub cure: Option<String>,
}

/// On which side of its limit a value must stay.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sense {
    /// The value must not be above the limit.
    AtMost,
    /// The value must not be below the limit.
    AtLeast,
}
