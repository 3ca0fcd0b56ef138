//! What to keep in mind about a block, in sentences without their full stop.

use super::{Footprint, Pad};
use crate::model::isolator::rubber::Rubber;
use crate::model::isolator::rubber::compound::NATURAL;

/// Shape factor above which the correction by the bulk modulus is more than 7 % high.
///
/// # Source
/// Derived: against the exact pressure in a thin disc, with G = 1 MPa and a bulk modulus of 1000 MPa.
const FLAT: f64 = 6.0;

/// Length over width above which the rule of the strip is nearer than that of the block; derived, as for the strip.
const LONG: f64 = 5.0;

/// How the shape bears on the rates.
pub(super) fn of_shape(pad: &Pad) -> Vec<String> {
    let shape_factor = pad.shape_factor();
    let rates = pad.rates() * 1e-3;
    let mut remarks = vec![format!(
        "Shape factor {shape_factor:.2}; each piece has {:.0} N/mm along its w, {:.0} and {:.0} N/mm across, from a formula that misses a rated part by 15 % to 45 % (common practice)",
        rates.z, rates.x, rates.y
    )];
    if shape_factor > FLAT {
        remarks.push(format!(
            "With a shape factor above {FLAT} the rate along w is computed too high, by 7 % to 18 % (derived)"
        ));
    }
    let least = pad.footprint.least_width();
    if pad.height > least {
        remarks.push(
            "Taller than it is wide: it may lean over under its load; up to a quarter of the least width it surely does not (Lindley)".to_owned(),
        );
    }
    if let Footprint::Rectangle { u, v } = pad.footprint
        && u.max(v) >= LONG * least
    {
        remarks
            .push("So long that `strip` describes it better, with its length along u".to_owned());
    }
    remarks
}

/// What bonded rubber bears and what it does not.
pub(super) fn of_bonded(rubber: &Rubber) -> Vec<String> {
    let mut remarks = vec![format!(
        "Pull across the bond is to be avoided: bonded rubber tears from inside at a tension near 5/6 of Young's modulus, here {:.1} MPa (Gent and Lindley 1959, from memory)",
        rubber.moduli.youngs * 5.0 / 6.0 * 1e-6
    )];
    if *rubber.compound == NATURAL {
        remarks.push(
            "Natural rubber lasts longer when no load case lets it relax to zero (Cadwell and others 1940, from memory)".to_owned(),
        );
    }
    remarks
}
