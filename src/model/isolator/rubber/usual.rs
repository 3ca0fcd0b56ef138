//! What is usual for a rubber of a hardness, where the file is silent.

use std::f64::consts::FRAC_2_PI;

use super::compound::NATURAL;
use super::relation::hardness_of_shear;
use super::table::{hundredths, interpolated};
use super::{Compound, Moduli};
use crate::model::isolator::Tension;
use crate::model::isolator::description::Usual;
use crate::model::isolator::dynamic::DECADES;

/// Rate in vibration of some micrometres over the static rate, by hardness \[IRHD\].
///
/// # Source
/// Common practice for natural rubber: 1.1 to 1.2 at 40, 1.2 to 1.4 at 50, 1.4
/// to 1.8 at 60, 1.8 to 2.5 at 70; the middles. Beyond the ends nothing is known.
const DYNAMIC_RATIO: [(f64, f64); 4] = [(40.0, 1.15), (50.0, 1.3), (60.0, 1.6), (70.0, 2.15)];

/// Share of the stiffening of small motion that is left at a millimetre.
///
/// # Source
/// From memory, the curve of Kraus, 1/(1 + (x/x_c)^1.2): 0.30 at twice the
/// strain at which half is lost. Common practice: filled rubber of 50 IRHD is
/// 1.2 to 1.5 times stiffer at 0.1 % than at 20 %, of 65 to 70 IRHD 2 to 4 times,
/// so all of the stiffening is that of the filler.
const LEFT_AT_LARGE: f64 = 0.3;

/// Creep a decade of time by hardness \[IRHD\], as a share of the deflection at one minute.
///
/// # Source
/// From memory of the AASHTO rules for bridge bearings: 25, 35 and 45 % in 25
/// years at 50, 60 and 70 Shore A, over the 7.12 decades from one minute on.
const CREEP: [(f64, f64); 3] = [(50.0, 0.035), (60.0, 0.049), (70.0, 0.063)];

/// Decades of time from one minute to ten years: lg(10 · 365.25 · 24 · 60).
const DECADES_OF_TEN_YEARS: f64 = 6.721;

/// Half-width of the band of the rate of parts with the same hardness in the catalogue.
///
/// # Source
/// Common practice: a tolerance of ±5 degrees makes ±20 % of the rate.
const SCATTER_OF_HARDNESS: f64 = 0.2;

/// The same of parts whose modulus was measured on one of them.
///
/// # Source
/// Common practice: ±3 degrees make ±15 % of the rate.
const SCATTER_OF_MODULUS: f64 = 0.15;

/// What is usual for a rubber known by its hardness \[IRHD\].
pub(super) fn of_hardness(compound: &Compound, hardness: f64) -> Usual {
    let loss_factor = compound.loss_factor(hardness);
    let of_natural = interpolated(&DYNAMIC_RATIO, hardness);
    // Of other rubbers only the loss is known, and what loses more stiffens more.
    let ratio = if *compound == NATURAL {
        of_natural
    } else {
        of_natural.max(dynamic_ratio_of_loss(loss_factor))
    };
    Usual {
        dynamic_ratio: hundredths(ratio),
        dynamic_ratio_large: hundredths(1.0 + LEFT_AT_LARGE * (ratio - 1.0)),
        loss_factor,
        scatter: SCATTER_OF_HARDNESS,
        creep: interpolated(&CREEP, hardness) * DECADES_OF_TEN_YEARS,
        tension: Tension::Allowed,
        of: format!("{} of {hardness:.0} degrees", compound.name),
    }
}

/// What is usual for a rubber known by its moduli: that of the hardness at which natural rubber has its shear modulus.
pub(super) fn of_modulus(compound: &Compound, moduli: &Moduli) -> Usual {
    Usual {
        scatter: SCATTER_OF_MODULUS,
        ..of_hardness(compound, hardness_of_shear(moduli.shear))
    }
}

/// Ratio of dynamic to static rate that goes with a loss factor, to two digits behind the point.
///
/// # Equation
///   R = 10^(n m),   m = (2/π) arctan η
///
///   n  decades of time between the static test and the vibration
///   η  loss factor
///
/// # Range
/// A loss that changes little over those decades; of filled rubber the least that the ratio is.
///
/// # Source
/// Derived: a rate that follows a power of the frequency has this loss.
pub(crate) fn dynamic_ratio_of_loss(loss_factor: f64) -> f64 {
    hundredths(10_f64.powf(DECADES * FRAC_2_PI * loss_factor.atan()))
}
