//! What is required of a joint: one value against one limit, with where the limit comes from and what would mend it.

mod bolt;
mod clamped;
mod foot;
mod metals;
mod net_section;
mod plate;
mod rail;
mod round_rail;
mod shoulder;
mod sleeve;
mod sleeve_weld;
mod unjudged;
mod weld;

pub(super) use unjudged::unjudged;

use crate::model::Model;
use crate::model::joint::Joint;
use crate::model::load::LoadClass;
use crate::study::check::Sense;
use crate::units::Shown;

use super::metals::MetalPair;
use super::preload::Preload;
use super::rail_clamp::RailClamp;
use super::sharing::LoadedJoint;
use super::stack::Stack;

/// One thing that a joint must do.
#[derive(Debug, Clone, PartialEq)]
pub struct Requirement {
    /// Stable name within the joint, such as `slip`.
    pub id: &'static str,
    /// The same in two or three words, unlike those of any other of the joint.
    pub brief: &'static str,
    /// What it is, in a few words for people.
    pub title: String,
    /// Governing load case, as a place in `Model::loads`; `None` when it holds before any load.
    pub load: Option<usize>,
    /// Value in every load case that counts here, with the place of that load case in `Model::loads`; empty when it holds before any load or lies between several.
    pub each: Vec<(usize, f64)>,
    /// Computed value, the governing one, SI.
    pub value: f64,
    /// Limit, SI, reserves included.
    pub limit: f64,
    /// On which side of the limit it must stay.
    pub sense: Sense,
    /// Unit for people.
    pub unit: Shown,
    /// Whether missing it breaks nothing by itself.
    pub advisory: bool,
    /// Where the limit comes from.
    pub basis: String,
    /// What would mend it.
    pub cure: &'static str,
}

/// What is required and cannot be judged by what the file says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unjudged {
    /// Stable name within the joint, such as `spacer`.
    pub id: &'static str,
    /// The same in two or three words, unlike those of any other of the joint.
    pub brief: &'static str,
    /// What it is, in a few words for people.
    pub title: String,
    /// Why it cannot be judged.
    pub reason: &'static str,
    /// What to do about it.
    pub cure: &'static str,
}

impl Requirement {
    /// Share of the limit that is used, from 0; above 1 fails, and infinite where something stands against a limit of nothing.
    #[must_use]
    pub fn utilisation(&self) -> f64 {
        self.share(self.value)
    }

    /// Share of the limit that another value would use, from 0.
    #[must_use]
    pub fn share(&self, value: f64) -> f64 {
        let (used, of) = match self.sense {
            Sense::AtMost => (value, self.limit),
            Sense::AtLeast => (self.limit, value),
        };
        match (used > 0.0, of > 0.0) {
            (false, _) => 0.0,
            (true, true) => used / of,
            (true, false) => f64::INFINITY,
        }
    }

    /// Share of the limit that is used when the value may lie this far, SI, to its worse side.
    #[must_use]
    pub fn utilisation_within(&self, scatter: f64) -> f64 {
        match self.sense {
            Sense::AtMost => self.share(self.value + scatter),
            Sense::AtLeast => self.share(self.value - scatter),
        }
    }

    /// Whether it holds.
    #[must_use]
    pub fn holds(&self) -> bool {
        match self.sense {
            Sense::AtMost => self.value <= self.limit,
            Sense::AtLeast => self.value >= self.limit,
        }
    }
}

/// What every requirement is computed from.
struct Case<'a> {
    model: &'a Model,
    joint: &'a Joint,
    stack: &'a Stack,
    preload: &'a Preload,
    rail: Option<&'a RailClamp>,
    metals: &'a [MetalPair],
    loads: &'a [LoadedJoint],
}

impl Case<'_> {
    /// Load cases that must not harm the joint: all but those that happen once.
    fn lasting(&self) -> impl Iterator<Item = &LoadedJoint> {
        self.loads
            .iter()
            .filter(|loaded| self.class(loaded) != Some(LoadClass::Restraint))
    }

    /// Load cases that come many times in a life.
    fn frequent(&self) -> impl Iterator<Item = &LoadedJoint> {
        self.loads.iter().filter(|loaded| {
            matches!(
                self.class(loaded),
                Some(LoadClass::Service | LoadClass::Durability)
            )
        })
    }

    fn class(&self, loaded: &LoadedJoint) -> Option<LoadClass> {
        self.model.loads.get(loaded.load).map(|load| load.class)
    }

    /// Least clamp force below the foot \[N\]: on the rail, or on the ends of sleeves that it lies on.
    fn gripped(&self) -> f64 {
        self.preload.clamp()
    }

    /// Reserve of a kind that a load case asks for: that of the file, and none in a rare one.
    fn reserve(&self, loaded: &LoadedJoint, usual: f64) -> f64 {
        match self.class(loaded) {
            Some(LoadClass::Extreme | LoadClass::Restraint) => 1.0,
            _ => usual,
        }
    }
}

/// Every requirement, in the order of the load path.
pub(super) fn all(
    model: &Model,
    joint: &Joint,
    stack: &Stack,
    preload: &Preload,
    rail: Option<&RailClamp>,
    metals: &[MetalPair],
    loads: &[LoadedJoint],
) -> Vec<Requirement> {
    let case = Case {
        model,
        joint,
        stack,
        preload,
        rail,
        metals,
        loads,
    };
    let mut found = bolt::requirements(&case);
    found.extend(clamped::requirements(&case));
    found.extend(sleeve::requirements(&case));
    found.extend(foot::requirements(&case));
    found.extend(plate::requirements(&case));
    found.extend(net_section::requirement(&case));
    found.extend(weld::requirements(&case));
    found.extend(rail::requirements(&case));
    found.extend(metals::requirements(&case));
    found
}

/// A value over the load cases that count for it.
struct Governing {
    /// The load case of the largest value, as a place in `Model::loads`.
    load: usize,
    /// The largest value.
    value: f64,
    /// The value in every one of them.
    each: Vec<(usize, f64)>,
}

/// The largest value of something over load cases; `None` when there is none.
fn worst<'a>(
    loads: impl Iterator<Item = &'a LoadedJoint>,
    value: impl Fn(&LoadedJoint) -> f64,
) -> Option<Governing> {
    let each: Vec<(usize, f64)> = loads.map(|loaded| (loaded.load, value(loaded))).collect();
    let &(load, value) = each.iter().max_by(|a, b| a.1.total_cmp(&b.1))?;
    Some(Governing { load, value, each })
}
