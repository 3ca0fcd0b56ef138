//! How the weight is shared: by each mount, and between left and right.

use super::{Check, Sense, slug, solved};
use crate::model::Model;
use crate::rigid::equilibrium::StaticEquilibrium;
use crate::study::evaluate::Evaluation;
use crate::units::Shown;

/// Mounts nearer to the middle of the vehicle than this carry neither left nor right \[m\].
const MIDDLE: f64 = 20e-3;

/// The share of the most loaded mount, of any mount that pulls down, and the difference between left and right; rules of good practice.
pub(super) fn checks(model: &Model, evaluation: &Evaluation) -> Vec<Check> {
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
        .map(|(name, share)| pulled_down(name, *share))
        .collect();
    let largest = shares.iter().max_by(|a, b| a.1.total_cmp(&b.1));
    if let (Some((name, share)), true) = (largest, shares.len() > 1) {
        checks.push(most_loaded(model, name, *share));
    }
    checks.extend(imbalance(model, &lifts));
    checks
}

/// Upward force of each mount at rest \[N\].
fn lifts(rest: &StaticEquilibrium) -> Vec<f64> {
    rest.mounts
        .iter()
        .map(|mount| mount.force_on_powertrain.z)
        .collect()
}

fn pulled_down(name: &str, share: f64) -> Check {
    Check {
        load: Some(0),
        basis: "a mount should carry weight, not pull down at rest (common practice)".to_owned(),
        ..Check::new(
            format!("weight.{}", slug(name)),
            format!("{name} share of the weight"),
            Shown::Percent,
        )
    }
    .judged(share, Sense::AtLeast, 0.0, 0.0)
    .advisory()
    .cured_by(|| {
        "the centre of gravity lies outside the mounts: move this mount or another beyond it"
            .to_owned()
    })
}

fn most_loaded(model: &Model, name: &str, share: f64) -> Check {
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
    .judged(share, Sense::AtMost, model.criteria.mount_share, 0.0)
    .advisory()
    .cured_by(|| {
        format!("move {name} away from the centre of gravity, or another mount nearer to it")
    })
}

fn imbalance(model: &Model, lifts: &[f64]) -> Option<Check> {
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
        .judged(difference, Sense::AtMost, model.criteria.imbalance, 0.0)
        .advisory()
        .cured_by(|| format!("a stiffer or taller isolator on the {heavier} side keeps the powertrain level; mounts moved toward that side share the weight better")),
    )
}
