//! Free vibration of the powertrain about a loaded position.

use crate::model::isolator::Vibration;
use crate::numeric::{NumericError, cholesky3, inverse3, symmetric_eigen6};
use crate::spatial::{Mat3, Mat6, Vec6, add_spring, blocks, stack};

use super::equilibrium::StaticEquilibrium;
use super::supported::{Supported, add_turning};

/// Energy share above which one coordinate names a mode.
///
/// # Source
/// Common practice.
const NAMING_SHARE: f64 = 0.6;

/// Names of motions along and about x, y, z.
const MOTION_NAMES: [&str; 6] = ["fore-aft", "lateral", "bounce", "roll", "pitch", "yaw"];

/// Vibration of the powertrain about one loaded position; matrices about the loaded centre of gravity, vehicle axes.
#[derive(Debug, Clone, PartialEq)]
pub struct ModalSolution {
    /// Six modes, slowest first; growing motions come before all others.
    pub modes: Vec<Mode>,
    /// Mass matrix: mass \[kg\] and inertia tensor [kg m²].
    pub mass: Mat6,
    /// Storage part of the dynamic stiffness with the symmetric part of the geometric stiffness [N/m, N, N m].
    pub stiffness: Mat6,
    /// Loss part of the dynamic stiffness.
    pub loss: Mat6,
    /// What the modes leave out: the skew part `[a]` of the static stiffness, as |a| against the Frobenius norm of the rotation block.
    ///
    /// An applied moment M causes it, with |a| = |M|/2. Above 0.02 (common practice) frequencies should be read with care.
    pub skew_ratio: f64,
}

/// One natural vibration.
#[derive(Debug, Clone, PartialEq)]
pub struct Mode {
    /// Frequency \[Hz\]; zero for a motion that grows.
    pub frequency_hz: f64,
    /// Growth rate [1/s] of a motion that nothing brings back; `None` for a vibration.
    pub growth_rate: Option<f64>,
    /// Share of critical damping from the strain energy: half the loss factor of the mode; zero for a motion that grows.
    pub damping_ratio: f64,
    /// Motion `[x, y, z, rx, ry, rz]` with unit modal mass; the coordinate with the largest energy share is positive.
    pub shape: Vec6,
    /// Share of the kinetic energy in each coordinate; sums to 1.
    ///
    /// With products of inertia the shares of rx, ry, rz may leave 0 to 1.
    pub energy_share: Vec6,
    /// Share of the strain energy in each mount; sums to 1 together with `geometric_strain_share`.
    pub mount_strain_share: Vec<f64>,
    /// Share of the strain energy in the geometric stiffness, mostly slightly below zero.
    pub geometric_strain_share: f64,
    /// Name from the energy shares, e.g. "bounce" or "pitch + bounce".
    pub name: String,
}

impl ModalSolution {
    /// Share of each mode in a motion `v` of the whole body, e.g. a turn about any axis: sums to 1 over the modes, each 0 to 1.
    ///
    /// # Equation
    ///   (v' M φ)² / ((v' M v)(φ' M φ))
    ///
    /// # Source
    /// Derived: the modes are a basis, orthogonal in M.
    #[must_use]
    pub fn motion_share(&self, v: &Vec6) -> Vec6 {
        let Mv = self.mass * v;
        let whole = v.dot(&Mv);
        let mut shares = Vec6::zeros();
        for (share, mode) in shares.iter_mut().zip(&self.modes) {
            *share = mode.shape.dot(&Mv).powi(2) / whole;
        }
        shares
    }
}

/// Solves for the vibrations about a loaded position.
///
/// # Equation
///   K φ = ω² M φ,   M = diag(m I, R J R'),   K = Re Σ B' A k* A' B + sym(K_g + K_load)
///   ζ = φ' (Im K) φ / (2 φ' K φ)
///
///   k*   dynamic rate of isolator, bracket and chassis in series [N/m]
///   R J R'  inertia tensor in the loaded pose                    [kg m²]
///
/// # Range
/// Small motion, rates at one frequency. Gyroscopic effects of turning parts are left out.
///
/// # Source
/// Derived. Modal strain energy for the damping: exact for equal loss factors, error of second order in their differences.
///
/// # Errors
/// [`NumericError`].
pub fn solve_modes(
    body: &Supported<'_>,
    at: &StaticEquilibrium,
) -> Result<ModalSolution, NumericError> {
    let R = at.rotation.to_rotation_matrix().into_inner();
    let J = R * body.mass().inertia() * R.transpose();
    let J = (J + J.transpose()) * 0.5;
    let m = body.mass().mass();
    let mass = blocks(&(Mat3::identity() * m), &Mat3::zeros(), &Mat3::zeros(), &J);
    let geometric = (at.geometric + at.geometric.transpose()) * 0.5;
    let mut stiffness = geometric;
    let mut loss = Mat6::zeros();
    let vibration = Vibration::OF_MODES;
    let mut of_mounts = Vec::with_capacity(at.mounts.len());
    for (mount, state) in body.mounts().iter().zip(&at.mounts) {
        let (storage, lost) = mount.dynamic_rate(&state.isolator, &vibration)?;
        let mut alone = Mat6::zeros();
        let A = state.axes;
        add_spring(&mut alone, &(A * storage * A.transpose()), &state.arm);
        add_spring(&mut loss, &(A * lost * A.transpose()), &state.arm);
        let ratio = mount.isolator.rotational_ratio(vibration.amplitude);
        add_turning(&mut alone, &(state.twist_rate * ratio));
        let lost = ratio * mount.isolator.dynamics.loss_factor;
        add_turning(&mut loss, &(state.twist_rate * lost));
        stiffness += alone;
        of_mounts.push(alone);
    }
    let stiffness = (stiffness + stiffness.transpose()) * 0.5;
    let loss = (loss + loss.transpose()) * 0.5;

    let to_shape = inverse_cholesky_transposed(m, &J)?;
    let reduced = to_shape.transpose() * stiffness * to_shape;
    let eigen = symmetric_eigen6(&((reduced + reduced.transpose()) * 0.5))?;
    let modes = eigen
        .values
        .iter()
        .zip(eigen.vectors.column_iter())
        .map(|(&lambda, column)| {
            let shape = to_shape * column;
            let energy_share = shape.component_mul(&(mass * shape));
            let shape = shape * sign_of_largest(&shape, &energy_share);
            let strain = shape.dot(&(stiffness * shape));
            let share = |k: &Mat6| ratio(shape.dot(&(k * shape)), strain);
            Mode {
                frequency_hz: lambda.max(0.0).sqrt() / std::f64::consts::TAU,
                growth_rate: (lambda < 0.0).then(|| (-lambda).sqrt()),
                damping_ratio: if lambda > 0.0 {
                    share(&loss) / 2.0
                } else {
                    0.0
                },
                shape,
                energy_share,
                mount_strain_share: of_mounts.iter().map(share).collect(),
                geometric_strain_share: share(&geometric),
                name: mode_name(&energy_share),
            }
        })
        .collect();
    let skew = (at.geometric - at.geometric.transpose()) * 0.5;
    // A skew 3x3 block [a] has the Frobenius norm √2 |a|.
    let twist = skew.norm() / std::f64::consts::SQRT_2;
    let turning = at.tangent.fixed_view::<3, 3>(3, 3).norm();
    Ok(ModalSolution {
        modes,
        mass,
        stiffness,
        loss,
        skew_ratio: ratio(twist, turning),
    })
}

/// `L⁻ᵀ` of `M = L L'`.
fn inverse_cholesky_transposed(m: f64, J: &Mat3) -> Result<Mat6, NumericError> {
    let turning = inverse3(&cholesky3(J)?)?.transpose();
    Ok(blocks(
        &(Mat3::identity() / m.sqrt()),
        &Mat3::zeros(),
        &Mat3::zeros(),
        &turning,
    ))
}

/// Quotient, or zero when there is nothing to share.
fn ratio(part: f64, whole: f64) -> f64 {
    let quotient = part / whole;
    if quotient.is_finite() { quotient } else { 0.0 }
}

fn sign_of_largest(shape: &Vec6, share: &Vec6) -> f64 {
    let (largest, _) = share.argmax();
    if shape[largest] < 0.0 { -1.0 } else { 1.0 }
}

/// Name of a mode: the coordinate with more than 60 % of the energy, else the two largest joined.
#[must_use]
pub fn mode_name(energy_share: &Vec6) -> String {
    let mut ranked: Vec<(f64, &str)> = energy_share.iter().copied().zip(MOTION_NAMES).collect();
    ranked.sort_by(|a, b| b.0.total_cmp(&a.0));
    match ranked.as_slice() {
        [first, second, ..] if first.0 <= NAMING_SHARE => format!("{} + {}", first.1, second.1),
        [first, ..] => first.1.to_owned(),
        [] => String::new(),
    }
}

/// Motion of the whole body that turns about an axis through its centre of gravity.
#[must_use]
pub fn turn_about(axis: &crate::spatial::Vec3) -> Vec6 {
    stack(&crate::spatial::Vec3::zeros(), axis)
}
