//! How the powertrain sinks over the years, as its rubber creeps under the weight.

use crate::rigid::equilibrium::solve_equilibrium;
use crate::rigid::loading::Loading;
use crate::rigid::mount_response::HeldMount;
use crate::rigid::supported::Supported;
use crate::spatial::Vec3;

use super::resting::Resting;

/// Motion from the rest position as new to the rest position after years of service.
#[derive(Debug, Clone, PartialEq)]
pub struct Creep {
    /// Of the centre of gravity, vehicle axes \[m\].
    pub displacement: Vec3,
    /// Of each point of the model \[m\].
    pub points: Vec<Vec3>,
    /// What each clearance of the model loses \[m\]; below zero where it gains.
    pub gaps_lost: Vec<f64>,
}

/// Rests the build again on isolators that have crept; `None` when none creeps or no such rest is found.
///
/// # Equation
///   unloaded place + A (c x),   x the isolator's own deflection at rest, c its creep
///
/// # Range
/// The force of each mount is taken as constant over the years.
///
/// # Source
/// Derived: an isolator that has crept carries its load at a deflection that is larger by `c x`.
pub(super) fn creep(build: &Resting<'_>) -> Option<Creep> {
    let (model, rest) = (build.model, &build.rest);
    if build.held.iter().all(|mount| mount.isolator.creep <= 0.0) {
        return None;
    }
    let crept: Vec<HeldMount<'_>> = build
        .held
        .iter()
        .zip(&rest.mounts)
        .map(|(mount, state)| {
            let by = state.isolator_deflection * mount.isolator.creep;
            mount.crept(&state.axes, &by)
        })
        .collect();
    let body = Supported::new(model.mass, crept).ok()?;
    let aged = solve_equilibrium(&body, &Loading::weight(model.mass.mass()), Some(rest)).ok()?;
    let points: Vec<Vec3> = model
        .points
        .iter()
        .map(|point| aged.displacement_of(point.at) - rest.displacement_of(point.at))
        .collect();
    let gaps_lost = model
        .clearances
        .iter()
        .map(|clearance| clearance.toward.dot(&points[clearance.point]))
        .collect();
    Some(Creep {
        displacement: aged.displacement - rest.displacement,
        points,
        gaps_lost,
    })
}
