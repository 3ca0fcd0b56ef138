//! How the weight is shared: by each mount, and between left and right.

use std::f64::consts::{PI, TAU};

use super::spread::Spread;
use super::{Check, Sense, slug, solved};
use crate::model::Model;
use crate::rigid::equilibrium::StaticEquilibrium;
use crate::spatial::Vec3;
use crate::study::evaluate::Evaluation;
use crate::units::Shown;

/// Mounts nearer to the middle of the vehicle than this carry neither left nor right \[m\].
const MIDDLE: f64 = 20e-3;

/// Any mount that pulls down, which fails; the share of the most loaded mount and the difference between left and right, which are rules of good practice.
pub(super) fn checks(model: &Model, evaluation: &Evaluation, spread: &Spread) -> Vec<Check> {
    let Some((_, _, rest)) = solved(model, evaluation).next() else {
        return Vec::new();
    };
    let lifts = lifts(rest);
    let weight: f64 = lifts.iter().sum();
    let shares: Vec<(&str, f64)> = model
        .mounts
        .iter()
        .zip(&lifts)
        .map(|(mount, lift)| (mount.name.as_str(), lift / weight))
        .collect();
    let mut checks: Vec<Check> = shares
        .iter()
        .filter(|(_, share)| *share < 0.0)
        .map(|(name, share)| pulled_down(model, name, *share, spread))
        .collect();
    let largest = shares.iter().max_by(|a, b| a.1.total_cmp(&b.1));
    if let (Some((name, share)), true) = (largest, shares.len() > 1) {
        checks.push(most_loaded(model, name, *share, spread));
    }
    checks.extend(imbalance(model, &lifts, spread));
    checks
}

/// Upward force of each mount at rest \[N\].
fn lifts(rest: &StaticEquilibrium) -> Vec<f64> {
    rest.mounts
        .iter()
        .map(|mount| mount.force_on_powertrain.z)
        .collect()
}

fn pulled_down(model: &Model, name: &str, share: f64, spread: &Spread) -> Check {
    Check {
        load: Some(0),
        basis: "a mount that pulls the powertrain down at rest makes the others carry more than the weight".to_owned(),
        ..Check::new(
            format!("pulled-down.{}", slug(name)),
            format!("{name} pulls down at rest: its share of the weight"),
            Shown::Percent,
        )
    }
    .judged(share, Sense::AtLeast, 0.0, spread)
    .cured_by(|| {
        let centre = model.mass.centre();
        let [x, y] = [centre.x, centre.y].map(|along| along * 1e3);
        let bearing = model.mounts.iter().filter(|mount| {
            let isolator = model.isolators.get(mount.isolator);
            isolator.is_some_and(|isolator| !isolator.is_rod)
        });
        if is_between(&centre, bearing.map(|mount| &mount.at)) {
            format!(
                "the centre of gravity (x {x:.0}, y {y:.0} mm) lies between the mounts, but the stiff ones near it work as a pivot over which the powertrain pries this one up: softer isolators there, a softer one or none at {name}; look also for a slip of unit in a rate"
            )
        } else {
            format!(
                "the centre of gravity (x {x:.0}, y {y:.0} mm) does not lie between the mounts; look at the sign and the unit of every `at`, then move a mount beyond it"
            )
        }
    })
}

/// Whether a point lies within the outline of others, seen from above.
///
/// It does when the others, seen from it, leave no gap of half a turn or more.
fn is_between<'a>(point: &Vec3, others: impl Iterator<Item = &'a Vec3>) -> bool {
    let mut bearings: Vec<f64> = others
        .map(|other| (other.y - point.y).atan2(other.x - point.x))
        .collect();
    bearings.sort_by(f64::total_cmp);
    let (Some(first), Some(last)) = (bearings.first(), bearings.last()) else {
        return false;
    };
    let across_the_seam = first + TAU - last;
    let gaps = bearings.windows(2).map(|pair| pair[1] - pair[0]);
    gaps.fold(across_the_seam, f64::max) < PI
}

fn most_loaded(model: &Model, name: &str, share: f64, spread: &Spread) -> Check {
    Check {
        load: Some(0),
        basis: "largest share of the weight on one mount (common practice, `targets.mount_share`)"
            .to_owned(),
        ..Check::new(
            format!("weight.{}", slug(name)),
            format!("{name} share of the weight"),
            Shown::Percent,
        )
    }
    .judged(share, Sense::AtMost, model.criteria.mount_share, spread)
    .advisory()
    .cured_by(|| {
        format!("move {name} away from the centre of gravity, or another mount nearer to it")
    })
}

fn imbalance(model: &Model, lifts: &[f64], spread: &Spread) -> Option<Check> {
    let side = |left: bool| -> f64 {
        model
            .mounts
            .iter()
            .zip(lifts)
            .filter(|(mount, _)| mount.at.y.abs() > MIDDLE && (mount.at.y > 0.0) == left)
            .map(|(_, lift)| lift)
            .sum()
    };
    let (left, right) = (side(true), side(false));
    if left <= 0.0 || right <= 0.0 {
        return None;
    }
    let difference = (left - right).abs() / (left + right);
    let heavier = if left > right { "left" } else { "right" };
    Some(
        Check {
            load: Some(0),
            basis: "difference over sum of the mounts left and right of the middle (common practice, `targets.imbalance`)".to_owned(),
            ..Check::new(
                "weight.left-right".to_owned(),
                format!("{heavier} side carries more, by"),
                Shown::Percent,
            )
        }
        .judged(difference, Sense::AtMost, model.criteria.imbalance, spread)
        .advisory()
        .cured_by(|| format!("a stiffer or taller isolator on the {heavier} side keeps the powertrain level; mounts moved toward that side share the weight better")),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Derived: the triangle (0, 0), (2, 0), (0, 2) holds (0.5, 0.5), not (1.1, 1.1) beyond its long side; heights do
    /// not count. Nothing lies between two points or none.
    #[test]
    fn between_is_within_the_outline_from_above() {
        let corners = [(0.0, 0.0), (2.0, 0.0), (0.0, 2.0)].map(|(x, y)| Vec3::new(x, y, 9.0));
        let inside = Vec3::new(0.5, 0.5, -3.0);
        assert!(is_between(&inside, corners.iter()));
        assert!(!is_between(&Vec3::new(1.1, 1.1, 9.0), corners.iter()));
        assert!(!is_between(&inside, corners.iter().take(2)));
        assert!(!is_between(&inside, [].iter()));
    }
}
