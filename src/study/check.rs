//! Verdicts: a computed value against a limit, with where the limit comes from and what would move the value.
//!
//! One check is one file below this one and one line in `ALL`.

mod astray;
mod clearance;
mod deflection;
mod frame_twist;
mod heat;
mod held;
mod idle;
mod joint;
mod measured;
mod remedy;
mod sag;
mod separation;
mod spread;
mod stop;
mod strain;
mod tension;
mod tilt;
mod torque;
mod upside_down;
mod weight;
mod wheel_hop;

use std::collections::BTreeMap;

use super::evaluate::{Evaluation, LoadResult};
use crate::model::Model;
use crate::model::load::LoadCase;
use crate::rigid::equilibrium::{MountState, StaticEquilibrium};
use crate::units::{Digits, Shown, show};

use crate::spatial::Vec3;
use spread::Spread;

/// One kind of check: all of its verdicts on an evaluation.
type Kind = fn(&Model, &Evaluation, &Spread) -> Vec<Check>;

/// Every kind of check. Within one verdict they are shown in this order: what
/// is wrong with the layout first, since it makes the rest go wrong.
const ALL: &[Kind] = &[
    held::checks,
    tilt::checks,
    astray::checks,
    upside_down::checks,
    weight::checks,
    clearance::checks,
    stop::checks,
    deflection::checks,
    joint::checks,
    strain::checks,
    tension::checks,
    heat::checks,
    idle::checks,
    torque::checks,
    frame_twist::checks,
    measured::checks,
    sag::checks,
    wheel_hop::checks,
    separation::checks,
];

/// Outcome of a check.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Verdict {
    /// The limit holds with a margin larger than the scatter of the isolators.
    Ok,
    /// The limit lies inside the scatter: passed or not, the next part may lie on the other side.
    Close,
    /// A rule of good practice is missed by more than the scatter; it breaks nothing.
    Over,
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
            Self::Over => "over",
            Self::Fails => "fails",
            Self::NotChecked => "not checked",
        }
    }
}

/// What of the model a check judges, where its outcome is looked up again by it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Subject {
    /// A clearance, as a place in `Model::clearances`.
    Clearance(usize),
    /// A requirement of a joint.
    Requirement {
        /// The joint, as a place in `Model::joints`.
        joint: usize,
        /// Name of the requirement within the joint.
        id: &'static str,
    },
}

/// One check.
#[derive(Debug, Clone, PartialEq)]
pub struct Check {
    /// Stable name: kind and subject joined by a point, such as `clearance.fan-to-radiator`.
    pub id: String,
    /// What it judges; `None` where nothing is looked up by it.
    pub subject: Option<Subject>,
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
    /// Whether it is a rule of good practice: missing it breaks nothing, and the worst verdict is [`Verdict::Over`].
    pub advisory: bool,
    /// Outcome.
    pub verdict: Verdict,
    /// Where the limit comes from.
    pub basis: String,
    /// What the verdict rests on or lacks, when the number alone does not say it.
    pub note: Option<String>,
    /// What would mend it, in words and numbers; empty when nothing needs mending.
    pub cure: Option<String>,
}

impl Sense {
    /// Words before a limit.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::AtMost => "at most",
            Self::AtLeast => "at least",
        }
    }
}

/// On which side of its limit a value must stay.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sense {
    /// The value must not be above the limit.
    AtMost,
    /// The value must not be below the limit.
    AtLeast,
}

impl Check {
    /// A check that has no value yet: not checked.
    fn new(id: String, title: String, unit: Shown) -> Self {
        Self {
            id,
            subject: None,
            title,
            load: None,
            value: None,
            limit: None,
            sense: Sense::AtMost,
            unit,
            utilisation: None,
            uncertainty: 0.0,
            advisory: false,
            verdict: Verdict::NotChecked,
            basis: String::new(),
            note: None,
            cure: None,
        }
    }

    /// Compares a value with a limit and gives the verdict that follows.
    ///
    /// Within its spread of the limit on the right side of it the verdict is
    /// [`Verdict::Close`], since the next part of the same kind may pass it.
    fn judged(mut self, value: f64, sense: Sense, limit: f64, spread: &Spread) -> Self {
        let uncertainty = spread.about(&self.id, value);
        let (used, of) = match sense {
            Sense::AtMost => (value, limit),
            Sense::AtLeast => (limit, value),
        };
        self.value = Some(value);
        self.limit = Some(limit);
        self.sense = sense;
        self.uncertainty = uncertainty;
        self.utilisation = (of > 0.0).then_some((used / of).max(0.0));
        let inside = "the margin is inside the scatter of the isolators";
        self.verdict = if used > of {
            if used - uncertainty <= of {
                self.note = Some(inside.to_owned());
            }
            Verdict::Fails
        } else if used + uncertainty > of {
            self.note = Some(inside.to_owned());
            Verdict::Close
        } else {
            Verdict::Ok
        };
        self
    }

    /// A rule of good practice: missing it breaks nothing, so the worst verdict is [`Verdict::Over`].
    fn advisory(mut self) -> Self {
        self.advisory = true;
        if self.verdict == Verdict::Fails {
            let missed_by = self.margin().map_or(f64::INFINITY, |margin| -margin);
            self.verdict = if missed_by > self.uncertainty {
                Verdict::Over
            } else {
                Verdict::Close
            };
        }
        self
    }

    /// With a cure where the verdict asks for one.
    fn cured_by(mut self, cure: impl FnOnce() -> String) -> Self {
        if matches!(
            self.verdict,
            Verdict::Close | Verdict::Over | Verdict::Fails
        ) {
            self.cure = Some(cure());
        }
        self
    }

    /// Distance to the limit, above zero on the right side of it, SI.
    #[must_use]
    pub fn margin(&self) -> Option<f64> {
        let (value, limit) = (self.value?, self.limit?);
        Some(match self.sense {
            Sense::AtMost => limit - value,
            Sense::AtLeast => value - limit,
        })
    }

    /// How much the reader should care: failed first, not checked after what is over or close.
    fn rank(&self) -> u8 {
        match self.verdict {
            Verdict::Fails => 0,
            Verdict::Over => 1,
            Verdict::Close => 2,
            Verdict::NotChecked => 3,
            Verdict::Ok => 4,
        }
    }
}

/// All checks, the worst first, with the evaluations at the ends of the isolators' scatter; among equal verdicts in the order of the kinds, then the most used first.
pub(super) fn all(model: &Model, evaluation: &Evaluation, ends: &[Evaluation]) -> Vec<Check> {
    let spread = Spread::of(model, ends);
    let mut checks = Vec::new();
    for kind in ALL {
        let mut of_kind = kind(model, evaluation, &spread);
        let used = |check: &Check| check.utilisation.unwrap_or(0.0);
        of_kind.sort_by(|a, b| used(b).total_cmp(&used(a)));
        checks.extend(of_kind);
    }
    tell_apart(&mut checks);
    checks.sort_by_key(Check::rank);
    checks
}

/// Adds a number to every name of a check that stands there already: "front left" and "front-left" give the same one.
fn tell_apart(checks: &mut [Check]) {
    let mut seen: BTreeMap<String, usize> = BTreeMap::new();
    for check in checks {
        let times = seen.entry(check.id.clone()).or_default();
        *times += 1;
        if *times > 1 {
            check.id = format!("{}-{times}", check.id);
        }
    }
}

/// Last part of a check's name from a user's name: lower case, everything but letters and digits becomes one hyphen.
fn slug(name: &str) -> String {
    let mut slug = String::new();
    for character in name.chars() {
        if character.is_alphanumeric() {
            slug.extend(character.to_lowercase());
        } else if !slug.ends_with('-') {
            slug.push('-');
        }
    }
    slug.trim_matches('-').to_owned()
}

/// Load cases in which a position was found.
fn solved<'a>(
    model: &'a Model,
    evaluation: &'a Evaluation,
) -> impl Iterator<Item = (&'a LoadCase, &'a LoadResult, &'a StaticEquilibrium)> {
    evaluation.loads.iter().filter_map(|result| {
        Some((
            model.loads.get(result.load)?,
            result,
            result.outcome.as_ref().ok()?,
        ))
    })
}

/// States of one mount in the load cases in which it takes part and a position was found.
fn states_of<'a>(
    model: &'a Model,
    evaluation: &'a Evaluation,
    mount: usize,
) -> impl Iterator<Item = (&'a LoadCase, usize, &'a MountState)> {
    solved(model, evaluation).filter_map(move |(load, result, found)| {
        let place = result
            .mounts
            .iter()
            .position(|&taking_part| taking_part == mount)?;
        Some((load, result.load, found.mounts.get(place)?))
    })
}

/// Which way a mount axis runs in the vehicle, for people who do not know the letters.
fn way_of(axis: &Vec3) -> &'static str {
    /// Cosine of 25°: beyond it an axis is said to lean.
    const ALONG: f64 = 0.906;
    match axis.abs() {
        way if way.x > ALONG => "fore-aft",
        way if way.y > ALONG => "sideways",
        way if way.z > ALONG => "up-down",
        _ => "leaning",
    }
}

fn millimetres(length: f64) -> String {
    show(length, Shown::Millimetre, Digits::Decimals(1))
}

fn hertz(frequency_hz: f64) -> String {
    show(frequency_hz, Shown::Hertz, Digits::Decimals(1))
}

/// A share as whole per cent, rounded up: for "by so much or more".
fn at_least_percent(share: f64) -> String {
    show(
        (share * 100.0).ceil() / 100.0,
        Shown::Percent,
        Digits::Decimals(0),
    )
}

/// A share as whole per cent, rounded down: for "so much or less".
fn at_most_percent(share: f64) -> String {
    show(
        (share * 100.0).floor() / 100.0,
        Shown::Percent,
        Digits::Decimals(0),
    )
}
