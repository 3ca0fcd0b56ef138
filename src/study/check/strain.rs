//! Whether the rubber of each isolator is strained no more than rubber bears.

use super::spread::Spread;
use super::{Check, Sense, slug, states_of};
use crate::model::Model;
use crate::model::isolator::Tension;
use crate::model::isolator::strain::{StrainMeasure, Strains};
use crate::model::mount::Mount;
use crate::model::strain_limit::StrainLimit;
use crate::rigid::equilibrium::MountState;
use crate::study::evaluate::Evaluation;
use crate::units::{Digits, Shown, show};

/// Two checks for each mount whose rubber has a known size: at rest, and at the peak of all load cases.
///
/// The value is the share of the allowed strain that is used, of compression,
/// tension and shear the largest. What is allowed in the peaks is common
/// practice, so only the strain at rest can fail.
pub(super) fn checks(model: &Model, evaluation: &Evaluation, spread: &Spread) -> Vec<Check> {
    let mut checks = Vec::new();
    for (index, mount) in model.mounts.iter().enumerate() {
        let isolator = &model.isolators[mount.isolator];
        let Some(measure) = &isolator.strain else {
            continue;
        };
        let uses = |at_rest: bool| {
            states_of(model, evaluation, index)
                .filter(move |(_, load, _)| (*load == 0) == at_rest)
                .map(|(case, load, state)| {
                    let limit = if at_rest {
                        StrainLimit::AT_REST
                    } else {
                        StrainLimit::of_class(case.class)
                    };
                    let is_lifted =
                        isolator.tension == Tension::None && state.isolator_deflection.z > 0.0;
                    Use::of(measure, state, is_lifted, load, limit)
                })
                .max_by(|a, b| a.share.total_cmp(&b.share))
        };
        checks.extend(uses(true).map(|most| judged("strain-at-rest", mount, &most, spread)));
        checks.extend(uses(false).map(|most| judged("strain", mount, &most, spread).advisory()));
    }
    checks
}

/// How much of what it bears a rubber uses in one load case.
struct Use {
    load: usize,
    strains: Strains,
    limit: StrainLimit,
    share: f64,
}

impl Use {
    fn of(
        measure: &StrainMeasure,
        state: &MountState,
        is_lifted: bool,
        load: usize,
        limit: StrainLimit,
    ) -> Self {
        let mut strains = measure.at(&state.isolator_deflection);
        // Off its seat nothing pulls it.
        if is_lifted {
            strains.tension = 0.0;
        }
        let of = |strain: f64, limit: f64| if limit > 0.0 { strain / limit } else { 0.0 };
        let share = of(strains.compression, limit.compression)
            .max(of(strains.tension, limit.tension))
            .max(of(strains.shear, limit.shear));
        Self {
            load,
            strains,
            limit,
            share,
        }
    }

    /// The strains against what is allowed, in words.
    fn in_words(&self) -> String {
        let percent = |share: f64| show(share, Shown::Percent, Digits::Decimals(0));
        let of = |name: &str, strain: f64, limit: f64| {
            format!("{name} {} of {}", percent(strain), percent(limit))
        };
        let mut words = vec![
            of(
                "compressed",
                self.strains.compression,
                self.limit.compression,
            ),
            of("sheared", self.strains.shear, self.limit.shear),
        ];
        if self.strains.tension > 0.0 {
            words.push(of("pulled", self.strains.tension, self.limit.tension));
        }
        words.join(", ")
    }
}

fn judged(sort: &str, mount: &Mount, most: &Use, spread: &Spread) -> Check {
    Check {
        load: Some(most.load),
        basis: format!("strain of the rubber: {}", most.limit.basis),
        ..Check::new(
            format!("{sort}.{}", slug(&mount.name)),
            format!(
                "{} rubber, share of the strain it bears ({})",
                mount.name,
                most.in_words()
            ),
            Shown::Percent,
        )
    }
    .judged(most.share, Sense::AtMost, 1.0, spread)
    .cured_by(|| {
        "a larger or taller isolator, more of them, or harder rubber; a stop that shares the peaks"
            .to_owned()
    })
}
