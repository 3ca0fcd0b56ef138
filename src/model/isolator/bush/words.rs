//! What is said of a bush: how its rates came about and what to keep in mind.

use super::Bush;
use crate::model::isolator::rubber::Moduli;
use crate::spatial::Vec3;
use crate::units::{Digits, Shown, number, show};

/// Steady push across over the wall that rubber bears.
///
/// # Source
/// P. B. Lindley, Engineering Design with Natural Rubber: 15 % in compression, an average for design.
const STEADY: f64 = 0.15;

/// Swing across either way, on top of the steady push, over the wall.
///
/// # Source
/// Common practice for a long life.
const SWING: f64 = 0.05;

/// Outer over inner diameter, and length over wall, over which the rate across is within a tenth.
const SURE_RATIOS: [f64; 2] = [1.25, 4.0];
const SURE_SLENDERNESSES: [f64; 2] = [0.25, 16.0];

/// Loss of the rate across by compression of the rubber itself that is worth telling.
const TOLD_LOSS: f64 = 0.05;

/// How the rates came about and what to keep in mind, each a sentence without its full stop.
pub(super) fn remarks(bush: &Bush, moduli: &Moduli, voids: &Vec3) -> Vec<String> {
    let [_, long] = bush.radial_bounds(moduli.shear);
    let flowing = bush.radial_rate(moduli.shear);
    let mut remarks = vec![
        bush.in_words(),
        format!(
            "Pushed across, the rubber escapes at its ends: the formula of an endless bush would give {} times the rate",
            number(long / flowing, Digits::Significant(2))
        ),
        bush.long_life_in_words(),
    ];
    let loss = 1.0 - bush.rates(moduli).x / flowing;
    if loss > TOLD_LOSS {
        remarks.push(format!(
            "The rubber is so confined that its own compression takes {:.0} % off the rate across",
            loss * 100.0
        ));
    }
    if voids.min() < 1.0 {
        remarks.push(
            "With voids the rates hold until a void closes; from there on it is stiffer, which `stiffening` can tell"
                .to_owned(),
        );
    }
    remarks.extend(bush.doubt_in_words());
    remarks
}

impl Bush {
    /// Its sizes and ratios.
    pub(in crate::model::isolator) fn in_words(&self) -> String {
        let length = |value| show(value, Shown::Millimetre, Digits::Significant(3));
        format!(
            "Rubber from {} to {} diameter, {} long: outer over inner {:.2}, length over wall {:.2}",
            length(self.inner),
            length(self.outer),
            length(self.length),
            self.ratio(),
            self.slenderness()
        )
    }

    /// How far it may be pushed across.
    pub(in crate::model::isolator) fn long_life_in_words(&self) -> String {
        let length = |share| {
            show(
                share * self.wall(),
                Shown::Millimetre,
                Digits::Significant(2),
            )
        };
        format!(
            "For a long life push it no further across than {} steadily ({:.0} % of the wall, Lindley) \
             and swing it no more than {} either way on top ({:.0} %, common practice)",
            length(STEADY),
            STEADY * 100.0,
            length(SWING),
            SWING * 100.0
        )
    }

    /// That its shape is far from the ordinary, if it is.
    pub(in crate::model::isolator) fn doubt_in_words(&self) -> Option<String> {
        let within = |value: f64, [low, high]: [f64; 2]| (low..=high).contains(&value);
        let sure =
            within(self.ratio(), SURE_RATIOS) && within(self.slenderness(), SURE_SLENDERNESSES);
        (!sure).then(|| {
            format!(
                "Beyond outer over inner {} to {} and length over wall {} to {} \
                 the rate across is 17 % too small to 9 % too large; measure it",
                SURE_RATIOS[0], SURE_RATIOS[1], SURE_SLENDERNESSES[0], SURE_SLENDERNESSES[1]
            )
        })
    }
}
