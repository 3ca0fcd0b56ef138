//! Newton's method downhill in energy, with bounded work.

use crate::numeric::{NumericError, cholesky6, solve6, symmetric_eigen6};
use crate::rigid::loading::Loading;
use crate::rigid::mount_response::{MountAction, MountFailure};
use crate::rigid::supported::{Assembly, AssemblyFailure, Supported};
use crate::rigid::unsupported::UNHELD;
use crate::spatial::{Mat6, Pose, Vec6};

/// Out of balance, as a share of the larger of weight and load, at which a pose is an answer.
const BALANCED: f64 = 1e-10;

/// The same when rounding allows no better, as a share of the largest force in it: metal on metal feels the last digit of a position.
const BALANCED_BY_ROUNDING: f64 = 1e-9;

/// Step that rounding makes of nothing \[m\].
const STEP_OF_ROUNDING: f64 = 1e-13;

/// Newton step \[m\] at which a pose is an answer.
const STEP_LEFT: f64 = 1e-9;

/// Iterations of one descent.
const ITERATIONS: usize = 80;

/// Longest step: rotation \[rad\], and translation in arm lengths.
const LONGEST_STEP: f64 = 0.15;

/// Smallest share of a step that is tried.
const SMALLEST_SHARE: f64 = 1e-6;

/// Share of the expected gain that a step must bring.
const EXPECTED_GAIN: f64 = 1e-4;

/// Rounding of an energy, as a share of its parts.
const ENERGY_ROUNDING: f64 = 1e-14;

/// Stiffness given to directions without any, as a share of the largest.
const FLOOR: f64 = 1e-6;

/// A pose in balance.
#[derive(Debug, Clone, Copy)]
pub(super) struct Balance {
    /// From the fitted pose.
    pub(super) offset: Pose,
    pub(super) assembly: Assembly,
    /// |S g| \[N\].
    pub(super) residual: f64,
}

/// Why a descent ended without balance.
#[derive(Debug, Clone, Copy)]
pub(super) enum Stall {
    Numeric(NumericError),
    OutOfBalance {
        residual: f64,
        /// Place of the mount with the largest force, or of the one that failed.
        worst_mount: usize,
        /// Last offset from the fitted pose.
        offset: Pose,
    },
}

impl From<NumericError> for Stall {
    fn from(error: NumericError) -> Self {
        Self::Numeric(error)
    }
}

impl Stall {
    fn at(offset: Pose, failure: AssemblyFailure) -> Self {
        match failure {
            AssemblyFailure::NotFinite => Self::Numeric(NumericError::NotFinite),
            AssemblyFailure::Mount(_, MountFailure::Numeric(error)) => Self::Numeric(error),
            AssemblyFailure::Mount(worst_mount, MountFailure::NoSplit) => Self::OutOfBalance {
                residual: f64::INFINITY,
                worst_mount,
                offset,
            },
        }
    }
}

/// Work space of a solve, so that iterations allocate nothing.
pub(super) struct Descent<'b, 'a> {
    pub(super) body: &'b Supported<'a>,
    pub(super) iterations: usize,
    actions: Vec<MountAction>,
    scale: Vec6,
}

impl<'b, 'a> Descent<'b, 'a> {
    pub(super) fn new(body: &'b Supported<'a>) -> Self {
        Self {
            body,
            iterations: 0,
            actions: Vec::with_capacity(body.mounts().len()),
            scale: body.scale(),
        }
    }

    pub(super) fn assembly(
        &mut self,
        offset: &Pose,
        loading: &Loading,
    ) -> Result<Assembly, AssemblyFailure> {
        self.body.assemble(offset, loading, &mut self.actions)
    }

    /// Responses of the mounts at an offset.
    pub(super) fn actions(
        &mut self,
        offset: &Pose,
        loading: &Loading,
    ) -> Result<&[MountAction], NumericError> {
        self.assembly(offset, loading)
            .map_err(|_| NumericError::NotFinite)?;
        Ok(&self.actions)
    }

    pub(super) fn mount_name(&self, place: usize) -> String {
        let named = self.body.mounts().get(place);
        named.map_or_else(|| "(none)".to_owned(), |mount| mount.name.to_owned())
    }

    /// Offset after a scaled push along `y` \[m\], to the side with the lower energy.
    pub(super) fn push_off(
        &mut self,
        loading: &Loading,
        balance: &Balance,
        y: &Vec6,
    ) -> Result<Pose, NumericError> {
        let y = y * self.body.arm_length();
        let mut sides = [(balance.offset, 0.0); 2];
        for (side, sign) in sides.iter_mut().zip([1.0, -1.0]) {
            let q = self.scale.component_mul(&y) * sign;
            let offset = balance.offset.moved_by(&q);
            let there = self
                .assembly(&offset, loading)
                .map_err(|_| NumericError::NotFinite)?;
            *side = (offset, energy_gain(&balance.assembly, &there, loading, &q));
        }
        let [there, back] = sides;
        Ok(if back.1 < there.1 { back.0 } else { there.0 })
    }

    /// Largest force of a mount at the pose that was assembled last \[N\].
    fn largest_force(&self) -> f64 {
        let forces = self.actions.iter().map(|action| action.force.norm());
        forces.fold(0.0, f64::max)
    }

    fn worst_mount(&self) -> usize {
        let forces = self.actions.iter().map(|action| action.force.norm());
        forces
            .enumerate()
            .max_by(|a, b| a.1.total_cmp(&b.1))
            .map_or(0, |(place, _)| place)
    }
}

/// Energy of mounts and loads at `there` less that at `here`, along the increment `q` between them \[J\].
///
/// A dead moment has no potential, but along one increment `exp([s dth])`,
/// s from 0 to 1, its work is `M·dth`; so each step of a descent has an energy.
fn energy_gain(here: &Assembly, there: &Assembly, loading: &Loading, q: &Vec6) -> f64 {
    let work = loading.free_moment().dot(&q.fixed_rows::<3>(3));
    (there.energy - here.energy) + (there.load_potential - here.load_potential) - work
}

/// Follows the energy down from an offset until mounts and loads balance.
///
/// # Source
/// Derived. Where the symmetric part of S K S is positive definite, the Newton
/// step of the full tangent leads downhill in energy. Elsewhere (slack mounts,
/// a body about to fall over) eigenvalues are replaced by their magnitude and
/// a floor, so that a balance without stability repels instead of attracting
/// and a slack mount is closed by the load.
pub(super) fn descend(
    descent: &mut Descent<'_, '_>,
    loading: &Loading,
    from: Pose,
) -> Result<Balance, Stall> {
    let length = descent.body.arm_length();
    let mut offset = from;
    let mut here = descent
        .assembly(&offset, loading)
        .map_err(|failure| Stall::at(offset, failure))?;
    let mut worst = descent.worst_mount();
    let mut residual = f64::INFINITY;
    for _ in 0..ITERATIONS {
        let g = descent.scale.component_mul(&here.resultant.vector());
        residual = g.norm();
        let applied = descent.scale.component_mul(&here.applied.vector()).norm();
        let tolerance = BALANCED * descent.body.weight().max(applied);
        if !(residual.is_finite() && tolerance.is_finite()) {
            return Err(Stall::Numeric(NumericError::NotFinite));
        }
        let k = descent.body.scaled_matrix(&here.tangent());
        let Step { y, firm } = newton_step(&k, &g, length)?;
        let forces = descent
            .body
            .weight()
            .max(applied)
            .max(descent.largest_force());
        let rounded =
            firm && y.norm() <= STEP_OF_ROUNDING && residual <= BALANCED_BY_ROUNDING * forces;
        if rounded || residual <= tolerance && y.norm() <= STEP_LEFT {
            return Ok(Balance {
                offset,
                assembly: here,
                residual,
            });
        }
        descent.iterations += 1;
        let longest = LONGEST_STEP * length;
        let moved = y.fixed_rows::<3>(0).norm().max(y.fixed_rows::<3>(3).norm());
        let mut share = f64::min(1.0, longest / moved);
        let step = descent.scale.component_mul(&y);
        let expected = g.dot(&y);
        let rounding = ENERGY_ROUNDING * (here.energy.abs() + here.load_potential.abs());
        loop {
            let q = step * share;
            let trial = offset.moved_by(&q);
            if let Ok(there) = descent.assembly(&trial, loading) {
                let gain = energy_gain(&here, &there, loading, &q);
                let left = descent
                    .scale
                    .component_mul(&there.resultant.vector())
                    .norm();
                let downhill = gain <= rounding - EXPECTED_GAIN * share * expected;
                let nearer = firm && left <= (1.0 - EXPECTED_GAIN * share) * residual;
                if downhill || nearer {
                    (offset, here) = (trial, there);
                    worst = descent.worst_mount();
                    break;
                }
            }
            share *= 0.5;
            if share < SMALLEST_SHARE {
                return Err(Stall::OutOfBalance {
                    residual,
                    worst_mount: worst,
                    offset,
                });
            }
        }
    }
    Err(Stall::OutOfBalance {
        residual,
        worst_mount: worst,
        offset,
    })
}

struct Step {
    /// Scaled step \[m\].
    y: Vec6,
    /// Whether the symmetric part of the tangent is positive definite.
    firm: bool,
}

fn newton_step(k: &Mat6, g: &Vec6, length: f64) -> Result<Step, NumericError> {
    let symmetric = (k + k.transpose()) * 0.5;
    let margin = UNHELD * symmetric.trace().abs();
    if margin > 0.0 && cholesky6(&(symmetric - Mat6::identity() * margin)).is_ok() {
        return Ok(Step {
            y: solve6(k, g)?,
            firm: true,
        });
    }
    let eigen = symmetric_eigen6(&symmetric)?;
    let floor = (FLOOR * eigen.values.amax()).max(1e-3 * g.norm() / length);
    let mut y = Vec6::zeros();
    if floor > 0.0 {
        for (value, column) in eigen.values.iter().zip(eigen.vectors.column_iter()) {
            y += column * (column.dot(g) / value.abs().max(floor));
        }
    }
    Ok(Step { y, firm: false })
}
