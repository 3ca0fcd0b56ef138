//! Builds drawn at rest: where the mounts are unloaded when the drawing shows the loaded rubber.

use nalgebra::UnitQuaternion;

use crate::model::mass::MassProperties;
use crate::numeric::{NumericError, cholesky6, solve6, symmetric_eigen6};
use crate::spatial::{
    Mat6, Pose, STANDARD_GRAVITY, Vec3, Vec6, Wrench, skew, turning_displacement,
};

use super::equilibrium::solve_equilibrium;
use super::failure::StaticsFailure;
use super::loading::Loading;
use super::mount_response::{HeldMount, MountFailure};
use super::supported::{Supported, add_turning};

/// Iterations of one attempt.
const ITERATIONS: usize = 80;

/// Out of balance, as a share of the weight, at which the free pose is found.
const BALANCED: f64 = 1e-12;

/// The same, when rounding allows no better.
const BALANCED_BY_ROUNDING: f64 = 1e-9;

/// Longest step: rotation \[rad\], and translation in arm lengths.
const LONGEST_STEP: f64 = 0.15;

/// Eigenvalue of J'J, as a share of the largest, below which a direction is left alone.
const UNSEEN: f64 = 1e-16;

/// The mounts with the places [m, vehicle axes] and the turn at which they are unloaded, so that the powertrain rests under its weight exactly as drawn.
///
/// Takes the mounts as drawn; their `preset` and `untwisted` are not read. With
/// the result the rest displacement is zero.
///
/// # Equation
///   find (c_f, R_f):  Σ F + m g = 0,  Σ (s × F + M) = 0,   F = −A f(d),  d = A' (at − c_f − R_f s)
///   preset = at − c_f − R_f s,   untwisted = R_f
///
///   c_f, R_f  pose in which all mounts are unloaded, against the drawn one
///   s         arm of the mount in the drawn pose          \[m\]
///
/// # Range
/// All mounts are unloaded in one common pose: this is what makes each mount's
/// share unique when there are more than the balance needs. A shim under one
/// mount breaks it.
///
/// # Source
/// Derived. Jacobian of the resultant with respect to a motion of the free
/// pose: Σ B(s)' K_a B(R_f s), with K_a the rate of the force with the anchor, and of the moment T R_f'.
///
/// # Errors
/// [`StaticsFailure`].
pub fn settled_mounts<'a>(
    mass: &MassProperties,
    mounts: &[HeldMount<'a>],
) -> Result<Vec<HeldMount<'a>>, StaticsFailure> {
    let drawn_free: Vec<HeldMount<'a>> = mounts
        .iter()
        .map(|mount| HeldMount {
            preset: Vec3::zeros(),
            untwisted: UnitQuaternion::identity(),
            ..*mount
        })
        .collect();
    let body = Supported::new(*mass, drawn_free)?;
    let free = match free_pose(&body, Pose::upright(Vec3::zeros())) {
        Ok(free) => free,
        Err(_) => {
            // Slack or one-sided mounts give no direction at the unloaded pose.
            // The same build fitted free says how far it sags.
            let sag = solve_equilibrium(&body, &Loading::weight(mass.mass()), None)?;
            let lifted = Pose {
                position: -sag.displacement,
                rotation: sag.rotation.inverse(),
            };
            free_pose(&body, lifted)?
        }
    };
    Ok(body
        .mounts()
        .iter()
        .zip(body.arms())
        .map(|(mount, arm)| unloaded_at(mount, arm, &free))
        .collect())
}

/// A mount that is unloaded while its powertrain is at `free`, against the drawn pose.
fn unloaded_at<'a>(mount: &HeldMount<'a>, arm: &Vec3, free: &Pose) -> HeldMount<'a> {
    HeldMount {
        preset: -(free.position + turning_displacement(&free.rotation, arm)),
        untwisted: free.rotation,
        ..*mount
    }
}

/// Resultant of mounts and weight in the drawn pose, and its derivative with respect to a motion of the free pose.
struct Attempt {
    scaled: Vec6,
    jacobian: Mat6,
    worst_mount: usize,
}

fn attempt(body: &Supported<'_>, free: &Pose) -> Result<Attempt, StaticsFailure> {
    let mut resultant = Wrench {
        force: Vec3::new(0.0, 0.0, -body.mass().mass() * STANDARD_GRAVITY),
        moment: Vec3::zeros(),
    };
    let mut jacobian = Mat6::zeros();
    let (mut worst_mount, mut largest) = (0, -1.0);
    for (place, (mount, s)) in body.mounts().iter().zip(body.arms()).enumerate() {
        let mount = unloaded_at(mount, s, free);
        let action = mount.act(&mount.preset, &UnitQuaternion::identity());
        let action = action.map_err(|failure| match failure {
            MountFailure::Numeric(error) => StaticsFailure::Numeric(error),
            MountFailure::NoSplit => StaticsFailure::NotConverged {
                reached_share: 0.0,
                residual: f64::INFINITY,
                worst_mount: mount.name.to_owned(),
                iterations: 0,
            },
        })?;
        resultant = resultant + Wrench::of_force_at(action.force, *s);
        resultant.moment += action.twist.moment;
        let k = mount.rate_of_anchor(&action);
        let turned = skew(&(free.rotation * s));
        let lever = skew(s);
        jacobian +=
            crate::spatial::blocks(&k, &-(k * turned), &(lever * k), &-(lever * k * turned));
        let of_moment = action.twist.material + action.twist.geometric;
        add_turning(
            &mut jacobian,
            &(of_moment * free.rotation.inverse().to_rotation_matrix()),
        );
        if action.force.norm() > largest {
            (worst_mount, largest) = (place, action.force.norm());
        }
    }
    let scaled = body.scale().component_mul(&resultant.vector());
    if !(scaled.norm() + jacobian.sum()).is_finite() {
        return Err(NumericError::NotFinite.into());
    }
    Ok(Attempt {
        scaled,
        jacobian: body.scaled_matrix(&jacobian),
        worst_mount,
    })
}

/// Newton's method for the free pose, against the drawn one.
fn free_pose(body: &Supported<'_>, from: Pose) -> Result<Pose, StaticsFailure> {
    let length = body.arm_length();
    let mut free = from;
    let mut here = attempt(body, &free)?;
    let failure = |here: &Attempt, iterations| StaticsFailure::NotConverged {
        reached_share: 0.0,
        residual: here.scaled.norm(),
        worst_mount: body
            .mounts()
            .get(here.worst_mount)
            .map_or_else(|| "(none)".to_owned(), |mount| mount.name.to_owned()),
        iterations,
    };
    let good_enough = |here: &Attempt| here.scaled.norm() <= BALANCED_BY_ROUNDING * body.weight();
    for iteration in 0..ITERATIONS {
        let residual = here.scaled.norm();
        if residual <= BALANCED * body.weight() {
            return Ok(free);
        }
        let y = correction(&here)?;
        let moved = y.fixed_rows::<3>(0).norm().max(y.fixed_rows::<3>(3).norm());
        let mut share = f64::min(1.0, LONGEST_STEP * length / moved);
        loop {
            let trial = free.moved_by(&body.scale().component_mul(&(y * share)));
            if let Ok(there) = attempt(body, &trial)
                && there.scaled.norm() <= (1.0 - 1e-4 * share) * residual
            {
                (free, here) = (trial, there);
                break;
            }
            share *= 0.5;
            if share < 1e-6 {
                if good_enough(&here) {
                    return Ok(free);
                }
                return Err(failure(&here, iteration));
            }
        }
    }
    if good_enough(&here) {
        Ok(free)
    } else {
        Err(failure(&here, ITERATIONS))
    }
}

/// Scaled step that cancels the resultant; the shortest one when directions are free.
fn correction(here: &Attempt) -> Result<Vec6, NumericError> {
    let j = &here.jacobian;
    let symmetric = (j + j.transpose()) * 0.5;
    let margin = 1e-8 * symmetric.trace();
    if margin > 0.0 && cholesky6(&(symmetric - Mat6::identity() * margin)).is_ok() {
        return solve6(j, &-here.scaled);
    }
    let squared = j.tr_mul(j);
    let eigen = symmetric_eigen6(&squared)?;
    let largest = eigen.values.amax();
    let wanted = -j.tr_mul(&here.scaled);
    let mut y = Vec6::zeros();
    for (value, column) in eigen.values.iter().zip(eigen.vectors.column_iter()) {
        if *value > UNSEEN * largest {
            y += column * (column.dot(&wanted) / value);
        }
    }
    Ok(y)
}
