//! Where the powertrain comes to rest under a load.

mod newton;
mod standing;

use nalgebra::UnitQuaternion;

use crate::model::isolator::IsolatorState;
use crate::spatial::{Mat3, Mat6, Pose, Vec3, Wrench, turning_displacement};

use super::failure::StaticsFailure;
use super::loading::Loading;
use super::mount_response::MountAction;
use super::supported::Supported;
use super::unsupported::FreeMotion;
use newton::{Balance, Descent, Stall, descend};
use standing::{Standing, free_of_mounts, stand};

/// Smallest load step, as a share of the load.
const SMALLEST_STEP: f64 = 1.0 / 64.0;

/// How often an unstable balance is left before giving up.
const PERTURBATIONS: usize = 3;

/// Size of the push off an unstable balance, in arm lengths.
const PUSH: f64 = 1e-2;

/// Turn from the fitted pose \[rad\] beyond which a powertrain that mounts alone do not hold has fallen over.
const FALLEN_OVER: f64 = std::f64::consts::FRAC_PI_4;

/// One mount of a loaded powertrain.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MountState {
    /// Mount axes u, v, w as they lie now, in vehicle axes: of a rod they swing with it.
    pub axes: Mat3,
    /// Whole deflection, powertrain side minus chassis side, along u, v, w \[m\].
    pub deflection: Vec3,
    /// The isolator's own deflection along u, v, w \[m\]: without bracket and chassis.
    pub isolator_deflection: Vec3,
    /// Force on the powertrain in vehicle axes \[N\]; the chassis feels its negative.
    pub force_on_powertrain: Vec3,
    /// Moment on the powertrain in vehicle axes, from rotational rates [N m]; the chassis feels its negative.
    pub moment_on_powertrain: Vec3,
    /// From the loaded centre of gravity to the mount, in vehicle axes \[m\].
    pub arm: Vec3,
    /// Static tangent of isolator, bracket and chassis in series, in mount axes [N/m].
    pub rate: Mat3,
    /// Static stiffness of the rotational rates, in vehicle axes [N m/rad].
    pub twist_rate: Mat3,
    /// Whether a stop is touched, along u, v, w.
    pub on_stop: [bool; 3],
    /// Energy in isolator, bracket and chassis \[J\].
    pub energy: f64,
    /// The isolator at its own deflection.
    pub isolator: IsolatorState,
}

/// Position of the powertrain in which mounts and loads balance.
#[derive(Debug, Clone, PartialEq)]
pub struct StaticEquilibrium {
    /// Loaded pose.
    pub pose: Pose,
    /// Of the centre of gravity, from the fitted pose, in vehicle axes \[m\].
    pub displacement: Vec3,
    /// From the fitted pose, in vehicle axes.
    pub rotation: UnitQuaternion<f64>,
    /// Mounts in the order of the build.
    pub mounts: Vec<MountState>,
    /// Loads, about the loaded centre of gravity.
    pub applied: Wrench,
    /// What is left out of balance \[N\], moments over the arm length.
    pub residual: f64,
    /// Solver iterations spent.
    pub iterations: usize,
    /// Full static tangent about the loaded centre of gravity; not symmetric when a moment is applied.
    pub tangent: Mat6,
    /// Part of the tangent that comes from forces keeping their direction, of mounts and loads, from rods and moments.
    pub geometric: Mat6,
    /// Motions held by less than 1e-4 of the stiffest.
    pub barely_held: Vec<FreeMotion>,
    /// Motions that the mounts leave free and the weight holds, like a pendulum.
    pub held_by_weight_only: Vec<FreeMotion>,
    /// Whether a balance that does not stand by itself was found first and left.
    pub left_unstable_balance: bool,
    fitted_centre: Vec3,
    loading: Loading,
}

impl StaticEquilibrium {
    /// Displacement in vehicle axes \[m\] of the point of the powertrain that is at `point_fitted` in the fitted pose (vehicle axes from the datum).
    #[must_use]
    pub fn displacement_of(&self, point_fitted: Vec3) -> Vec3 {
        let arm = point_fitted - self.fitted_centre;
        self.displacement + turning_displacement(&self.rotation, &arm)
    }

    fn offset(&self) -> Pose {
        Pose {
            position: self.displacement,
            rotation: self.rotation,
        }
    }
}

/// Finds the position in which the mounts carry a load.
///
/// Starts from `start`, an answer for the same body (or from the fitted pose),
/// with the whole load at once. Only when that fails the load is raised in
/// steps, halved down to 1/64. The answer is a stable balance: one that is not
/// is pushed off and followed down, and the answer says so.
///
/// # Equation
///   find (c, R) with Σ F + F_ext = 0 and Σ r × F + M_ext = 0
///
/// # Range
/// Any rotation. Converged when |S g| ≤ 1e-10 of the larger of weight and
/// |S (F_ext, M_ext)|, and the step left is below 1e-9 m; where rounding allows
/// no better, ≤ 1e-9 of the largest force with a step below 1e-13 m. The work is bounded.
///
/// # Source
/// Derived; Newton's method on the exact tangent of [`Supported::at`].
///
/// # Errors
/// [`StaticsFailure`]; a position that is not converged is never returned.
pub fn solve_equilibrium(
    body: &Supported<'_>,
    loading: &Loading,
    start: Option<&StaticEquilibrium>,
) -> Result<StaticEquilibrium, StaticsFailure> {
    loading.check()?;
    let fitted = Pose::upright(Vec3::zeros());
    let none = Loading::none();
    let (from, before) = start.map_or((fitted, &none), |s| (s.offset(), &s.loading));
    let mut descent = Descent::new(body);
    let balance = raise_load(&mut descent, before, loading, from)?;
    let (balance, standing, left) = settle_down(&mut descent, loading, balance)?;
    if !standing.unheld.is_empty() {
        return Err(StaticsFailure::Unsupported(standing.unheld));
    }
    let turn = balance.offset.rotation.angle();
    if let Some(rate) = left.filter(|_| turn > FALLEN_OVER) {
        return Err(StaticsFailure::Unstable {
            rate,
            iterations: descent.iterations,
        });
    }
    if !standing.held_by_weight_only.is_empty() && turn > FALLEN_OVER {
        let as_drawn = free_of_mounts_at(&mut descent, &fitted);
        return Err(StaticsFailure::Unsupported(if as_drawn.is_empty() {
            standing.held_by_weight_only
        } else {
            as_drawn
        }));
    }
    let mounts = descent.actions(&balance.offset, loading)?;
    Ok(StaticEquilibrium {
        pose: Pose {
            position: body.mass().centre() + balance.offset.position,
            rotation: balance.offset.rotation,
        },
        displacement: balance.offset.position,
        rotation: balance.offset.rotation,
        mounts: mount_states(body, &balance.offset, mounts),
        applied: balance.assembly.applied,
        residual: balance.residual,
        iterations: descent.iterations,
        tangent: balance.assembly.tangent(),
        geometric: balance.assembly.geometric,
        barely_held: standing.barely_held,
        held_by_weight_only: standing.held_by_weight_only,
        left_unstable_balance: left.is_some(),
        fitted_centre: body.mass().centre(),
        loading: loading.clone(),
    })
}

/// Goes from one load to another in as few steps as work.
fn raise_load(
    descent: &mut Descent<'_, '_>,
    before: &Loading,
    after: &Loading,
    from: Pose,
) -> Result<Balance, StaticsFailure> {
    let mut stall = match descend(descent, after, from) {
        Ok(balance) => return Ok(balance),
        Err(stall) => stall,
    };
    let (mut reached, mut step, mut offset) = (0.0, 0.5, from);
    while step >= SMALLEST_STEP {
        let share = f64::min(reached + step, 1.0);
        let mixed = before.scaled(1.0 - share).plus(&after.scaled(share));
        match descend(descent, &mixed, offset) {
            Ok(balance) if share >= 1.0 => return Ok(balance),
            Ok(balance) => (reached, offset) = (share, balance.offset),
            Err(again) => {
                stall = again;
                step *= 0.5;
            }
        }
    }
    Err(failure_of(descent, &stall, reached))
}

/// What to tell of a stall: the free motions when the mounts leave some both as drawn and at the end, else the numbers.
fn failure_of(descent: &mut Descent<'_, '_>, stall: &Stall, reached_share: f64) -> StaticsFailure {
    match *stall {
        Stall::Numeric(error) => StaticsFailure::Numeric(error),
        Stall::OutOfBalance {
            residual,
            worst_mount,
            offset,
        } => {
            let as_drawn = free_of_mounts_at(descent, &Pose::upright(Vec3::zeros()));
            if !as_drawn.is_empty() && !free_of_mounts_at(descent, &offset).is_empty() {
                return StaticsFailure::Unsupported(as_drawn);
            }
            StaticsFailure::NotConverged {
                reached_share,
                residual,
                worst_mount: descent.mount_name(worst_mount),
                iterations: descent.iterations,
            }
        }
    }
}

/// Leaves a balance that does not stand by itself; tells the rate [N/m] at which it was left, if it was.
fn settle_down(
    descent: &mut Descent<'_, '_>,
    loading: &Loading,
    mut balance: Balance,
) -> Result<(Balance, Standing, Option<f64>), StaticsFailure> {
    let mut standing = stand(descent.body, &balance)?;
    let mut left = None;
    for pushed in 0..=PERTURBATIONS {
        let Some((direction, rate)) = standing.falls_along else {
            return Ok((balance, standing, left));
        };
        left = left.or(Some(rate));
        if pushed == PERTURBATIONS {
            break;
        }
        let offset = descent.push_off(loading, &balance, &(direction * PUSH))?;
        balance =
            descend(descent, loading, offset).map_err(|stall| failure_of(descent, &stall, 1.0))?;
        standing = stand(descent.body, &balance)?;
    }
    Err(StaticsFailure::Unstable {
        rate: left.unwrap_or_default(),
        iterations: descent.iterations,
    })
}

/// The motions that the mounts alone leave free at an offset; none when that cannot be told.
fn free_of_mounts_at(descent: &mut Descent<'_, '_>, offset: &Pose) -> Vec<FreeMotion> {
    let body = descent.body;
    descent
        .assembly(offset, &Loading::none())
        .ok()
        .and_then(|assembly| free_of_mounts(body, &assembly, offset).ok())
        .unwrap_or_default()
}

fn mount_states(body: &Supported<'_>, offset: &Pose, actions: &[MountAction]) -> Vec<MountState> {
    body.arms()
        .iter()
        .zip(actions)
        .map(|(arm, action)| MountState {
            axes: action.axes,
            deflection: action.response.deflection,
            isolator_deflection: action.response.isolator_deflection,
            force_on_powertrain: action.force,
            moment_on_powertrain: action.twist.moment,
            arm: offset.rotation * arm,
            rate: action.response.rate,
            twist_rate: action.twist.material,
            on_stop: action.response.isolator.on_stop,
            energy: action.response.energy + action.twist.energy,
            isolator: action.response.isolator,
        })
        .collect()
}
