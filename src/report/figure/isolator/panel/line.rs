//! The line of a curve: where it is sampled, with its scatter, and what of it a scale holds.

use crate::model::isolator::Isolator;
use crate::report::content::isolators::curve::force_and_rate;
use crate::report::figure::axis::Axis;
use crate::report::figure::canvas::Spot;

/// Steps of a drawn curve.
const STEPS: u32 = 80;

/// A deflection with its force, and the forces at both ends of the scatter.
pub(super) struct Sample {
    pub(super) deflection: f64,
    pub(super) force: f64,
    pub(super) scattered: [f64; 2],
}

/// The curve of an isolator along one axis between two deflections \[m\].
pub(super) fn samples(part: &Isolator, axis: usize, [low, high]: [f64; 2]) -> Vec<Sample> {
    let ends = [
        part.scaled(1.0 - part.scatter),
        part.scaled(1.0 + part.scatter),
    ];
    let sample = |deflection: f64| Sample {
        deflection,
        force: force_and_rate(part, axis, deflection).0,
        scattered: ends
            .each_ref()
            .map(|end| force_and_rate(end, axis, deflection).0),
    };
    places(part, axis, low, high)
        .into_iter()
        .map(sample)
        .collect()
}

/// The pieces of a line of places whose second number lies in a scale, cut where it leaves it.
pub(super) fn within(line: &[Spot], scale: &Axis) -> Vec<Vec<Spot>> {
    let mut pieces: Vec<Vec<Spot>> = vec![Vec::new()];
    let mut previous: Option<Spot> = None;
    for &spot in line {
        let is_inside = scale.holds(spot.1);
        if let Some(before) = previous
            && scale.holds(before.1) != is_inside
        {
            let edge = scale.nearest(if is_inside { before.1 } else { spot.1 });
            let share = (edge - before.1) / (spot.1 - before.1);
            let cut = (before.0 + (spot.0 - before.0) * share, edge);
            if is_inside {
                pieces.push(vec![cut]);
            } else if let Some(piece) = pieces.last_mut() {
                piece.push(cut);
            }
        }
        if is_inside && let Some(piece) = pieces.last_mut() {
            piece.push(spot);
        }
        previous = Some(spot);
    }
    pieces.retain(|piece| piece.len() > 1);
    pieces
}

/// Deflections at which the curve is drawn: close together, and where it bends.
fn places(part: &Isolator, axis: usize, low: f64, high: f64) -> Vec<f64> {
    let step = (high - low) / f64::from(STEPS);
    let mut places: Vec<f64> = (0..=STEPS).map(|i| low + step * f64::from(i)).collect();
    if let Some(stops) = part.stops.get(axis) {
        for (stop, outward) in [(stops.lower, -1.0), (stops.upper, 1.0)] {
            let bends = [0.0, 0.5, 1.0].map(|share| share * outward * stops.blend);
            places.extend(
                stop.into_iter()
                    .flat_map(|stop| bends.map(|bend| stop + bend)),
            );
        }
    }
    places.extend(
        part.measured
            .get(axis)
            .copied()
            .flatten()
            .into_iter()
            .flatten(),
    );
    places.push(0.0);
    places.retain(|x| (low..=high).contains(x));
    places.sort_by(f64::total_cmp);
    places.dedup();
    places
}
