//! How far the curve of an isolator runs along one axis.

use crate::model::isolator::{Isolator, Tension};
use crate::model::strain_limit::StrainLimit;
use crate::report::content::quantity::round_step;
use crate::spatial::Vec3;

use super::bounds::{self, BoundKind};
use super::curve::force_and_rate;

/// How far the curve runs past what ends it, as a share.
const BEYOND: f64 = 0.1;

/// A stop so many times as far as the one on the other side stands for none.
const NEVER_REACHED: f64 = 5.0;

/// Longest deflection that is shown where nothing tells how far it may go \[m\].
const LONGEST: f64 = 20e-3;

/// So many times the weight of the powertrain ends a curve where nothing tells how far it may go.
///
/// # Source
/// Common practice: about what a pothole puts on one mount.
const WEIGHTS: f64 = 3.0;

/// How far a curve runs below and above zero \[m\]; `None` along an axis without a rate, and across a rod.
///
/// A tenth beyond the farthest of stop, limit and measured range of that side;
/// without these to the strain of rare loads; else as far as the other side;
/// and where nothing is known on either side, until it alone holds three times
/// the `weight` of the powertrain \[N\], 20 mm at most. A stop five times as far
/// as its opposite stands for none. A loose part shows a little of where it has
/// lifted off, or as far as what is stated there.
#[must_use]
pub fn range(isolator: &Isolator, axis: usize, weight: f64) -> Option<[f64; 2]> {
    if axis > 2 || (isolator.is_rod && axis != 2) {
        return None;
    }
    let (below, above) = (known(isolator, axis, -1.0), known(isolator, axis, 1.0));
    let unknown = || {
        let enough = WEIGHTS * weight / isolator.free_rate(axis);
        if enough.is_finite() && enough > 0.0 {
            round_step(enough.min(LONGEST))
        } else {
            LONGEST
        }
    };
    let low = below.or(above).unwrap_or_else(unknown);
    let mut high = above.or(below).unwrap_or_else(unknown);
    if axis == 2 && isolator.tension == Tension::None {
        let stated = stated(isolator, axis, 1.0).unwrap_or_default();
        high = stated.max(2.0 * BEYOND * low);
    }
    let works = [-low, high].map(|x| force_and_rate(isolator, axis, x).0.abs() > 0.0);
    (works.contains(&true) && low.is_finite() && high.is_finite()).then_some([-low, high])
}

/// How far the curve runs on one side because something is known there \[m\], above zero.
fn known(isolator: &Isolator, axis: usize, sense: f64) -> Option<f64> {
    stated(isolator, axis, sense).or_else(|| strained(isolator, axis, sense))
}

/// A tenth beyond the farthest that the file states on one side \[m\], above zero.
fn stated(isolator: &Isolator, axis: usize, sense: f64) -> Option<f64> {
    let bounds = bounds::along(isolator, axis);
    let of = |kind: BoundKind, sense: f64| {
        let mut found = bounds.iter().filter(|bound| bound.kind == kind);
        found
            .find(|bound| bound.deflection * sense > 0.0)
            .map(|bound| bound.deflection.abs())
    };
    let opposite = of(BoundKind::Stop, -sense).unwrap_or(f64::INFINITY);
    let stop = of(BoundKind::Stop, sense).filter(|stop| *stop < NEVER_REACHED * opposite);
    let measured = isolator.measured.get(axis).copied().flatten();
    let measured = measured
        .map(|[lower, upper]| if sense < 0.0 { -lower } else { upper })
        .filter(|end| *end > 0.0);
    let stated = [stop, of(BoundKind::Limit, sense), measured];
    let farthest = stated.into_iter().flatten().reduce(f64::max);
    farthest.map(|end| end * (1.0 + BEYOND))
}

/// Deflection at which rubber has the strain of rare loads, a pull counted like a push.
fn strained(isolator: &Isolator, axis: usize, sense: f64) -> Option<f64> {
    let mut x = Vec3::zeros();
    x[axis] = sense;
    let each = bounds::strains(isolator, &x)?;
    let limit = StrainLimit::RARE;
    let used =
        (each.compression.max(each.tension) / limit.compression).max(each.shear / limit.shear);
    (used > 0.0).then(|| 1.0 / used)
}
