//! Whether a balance stands by itself, and what holds it.

use super::newton::Balance;
use crate::numeric::{Eigen, NumericError, cholesky6, symmetric_eigen6};
use crate::rigid::supported::{Assembly, Supported};
use crate::rigid::unsupported::{
    BARELY_HELD, FreeMotion, NamedPoint, Softness, UNHELD, free_motions,
};
use crate::spatial::{Mat6, Pose, Vec3, Vec6};

/// How firmly a balance is held.
#[derive(Debug, Clone)]
pub(super) struct Standing {
    /// Scaled unit motion along which the powertrain leaves the balance, with its rate [N/m] below zero.
    pub(super) falls_along: Option<(Vec6, f64)>,
    pub(super) unheld: Vec<FreeMotion>,
    pub(super) barely_held: Vec<FreeMotion>,
    pub(super) held_by_weight_only: Vec<FreeMotion>,
}

pub(super) fn stand(body: &Supported<'_>, balance: &Balance) -> Result<Standing, NumericError> {
    let mut standing = Standing {
        falls_along: None,
        unheld: Vec::new(),
        barely_held: Vec::new(),
        held_by_weight_only: Vec::new(),
    };
    let tangent = body.scaled_matrix(&balance.assembly.tangent());
    let full = (tangent + tangent.transpose()) * 0.5;
    let material = body.scaled_matrix(&balance.assembly.material);
    if is_firm(&full) && is_firm(&material) {
        return Ok(standing);
    }
    let spectrum = symmetric_eigen6(&full)?;
    if spectrum.values[0] < -UNHELD * spectrum.values.amax() {
        let direction = spectrum.vectors.column(0).into_owned();
        standing.falls_along = Some((direction, spectrum.values[0]));
        return Ok(standing);
    }
    let find =
        |spectrum: &Eigen<Vec6, Mat6>, softness| motions(body, spectrum, softness, &balance.offset);
    standing.unheld = find(&spectrum, Softness::Unheld)?;
    standing.barely_held = find(&spectrum, Softness::BarelyHeld)?;
    if standing.unheld.is_empty() {
        let of_mounts = symmetric_eigen6(&material)?;
        standing.held_by_weight_only = find(&of_mounts, Softness::Unheld)?;
    }
    Ok(standing)
}

/// Motions that the mounts alone leave free at an offset.
pub(super) fn free_of_mounts(
    body: &Supported<'_>,
    assembly: &Assembly,
    offset: &Pose,
) -> Result<Vec<FreeMotion>, NumericError> {
    let spectrum = symmetric_eigen6(&body.scaled_matrix(&assembly.material))?;
    motions(body, &spectrum, Softness::Unheld, offset)
}

fn motions(
    body: &Supported<'_>,
    spectrum: &Eigen<Vec6, Mat6>,
    softness: Softness,
    offset: &Pose,
) -> Result<Vec<FreeMotion>, NumericError> {
    let centre: Vec3 = body.mass().centre() + offset.position;
    let points: Vec<NamedPoint<'_>> = body
        .mounts()
        .iter()
        .zip(body.arms())
        .map(|(mount, arm)| NamedPoint {
            name: mount.name,
            at: centre + offset.rotation * arm,
        })
        .collect();
    free_motions(spectrum, softness, &centre, body.arm_length(), &points)
}

/// Whether every eigenvalue is above the share that counts as barely held; cheaper than the eigenvalues.
fn is_firm(symmetric: &Mat6) -> bool {
    let margin = BARELY_HELD * symmetric.trace();
    margin > 0.0 && cholesky6(&(symmetric - Mat6::identity() * margin)).is_ok()
}
