//! How the weight is shared: by each mount, and between left and right.

use super::spread::Spread;
use super::{Check, Sense, slug, solved};
use crate::model::Model;
use crate::rigid::equilibrium::StaticEquilibrium;
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
        let centre = model.mass.centre() * 1e3;
        format!(
            "the centre of gravity (x {:.0}, y {:.0} mm) does not lie between the mounts; look at the sign and the unit of every `at`, then move a mount beyond it",
            centre.x, centre.y
        )
    })
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
