//! Free vibration of the powertrain about a loaded position.

use crate::model::isolator::Vibration;
use crate::numeric::{NumericError, cholesky3, inverse3, symmetric_eigen, symmetric_eigen6};
use crate::spatial::{Mat3, Mat6, Vec3, Vec6, add_spring, blocks, stack};
use nalgebra::DMatrix;

use super::equilibrium::StaticEquilibrium;
use super::mount_response::vibration::FluidRate;
use super::supported::{Supported, add_turning};

/// Energy share above which one coordinate names a mode.
///
/// # Source
/// Common practice.
const NAMING_SHARE: f64 = 0.6;

/// Names of motions along and about x, y, z.
pub const MOTION_NAMES: [&str; 6] = ["fore-aft", "lateral", "bounce", "roll", "pitch", "yaw"];

/// Vibration of the powertrain about one loaded position; matrices about the loaded centre of gravity, vehicle axes.
#[derive(Debug, Clone, PartialEq)]
pub struct ModalSolution {
    /// Six modes, and one more for each fluid, slowest first; growing motions come before all others.
    pub modes: Vec<Mode>,
    /// Mass matrix: mass \[kg\] and inertia tensor [kg m²].
    pub mass: Mat6,
    /// Storage part of the dynamic stiffness at [`Vibration::OF_MODES`] with the symmetric part of the geometric stiffness [N/m, N, N m].
    pub stiffness: Mat6,
    /// Loss part of the dynamic stiffness, of fluids what they lose beside their tracks.
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
    /// Share of the kinetic energy in each coordinate; sums to 1 together with `fluid_share`.
    ///
    /// With products of inertia the shares of rx, ry, rz may leave 0 to 1.
    pub energy_share: Vec6,
    /// Share of the kinetic energy in the fluids of hydraulic mounts.
    pub fluid_share: f64,
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
    pub fn motion_share(&self, v: &Vec6) -> Vec<f64> {
        let Mv = self.mass * v;
        let whole = v.dot(&Mv);
        let modes = self.modes.iter();
        modes
            .map(|mode| mode.shape.dot(&Mv).powi(2) / whole)
            .collect()
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
/// Small motion. A fluid is a coordinate of its own, so that its mass counts at
/// every frequency; a track that damps strongly moves and blurs the resonances
/// of its mount. Gyroscopic effects of turning parts are left out.
///
/// # Source
/// Derived. Modal strain energy for the damping, with c φ_q²/(2 ω) of each
/// track: exact for equal loss factors, error of second order in their differences.
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
    let mut fluids = Vec::new();
    let mut of_mounts = Vec::with_capacity(at.mounts.len());
    let vibration = Vibration::OF_MODES;
    for (place, (mount, state)) in body.mounts().iter().zip(&at.mounts).enumerate() {
        let ratio = mount.isolator.rotational_ratio(vibration.amplitude);
        let twist = state.twist_rate * ratio;
        let in_vehicle = |k: &Mat3| {
            let mut alone = Mat6::zeros();
            add_spring(
                &mut alone,
                &(state.axes * k * state.axes.transpose()),
                &state.arm,
            );
            alone
        };
        let (storage, lost) = mount.dynamic_rate(&state.isolator, &vibration)?;
        let mut alone = in_vehicle(&storage);
        add_turning(&mut alone, &twist);
        let mut held = alone;
        let mut lost = in_vehicle(&lost);
        if let Some(rate) = mount.rate_with_fluid(&state.isolator, vibration.amplitude)? {
            held = in_vehicle(&rate.mount);
            add_turning(&mut held, &twist);
            lost = in_vehicle(&rate.mount_loss);
            fluids.push(FluidInMount::of(place, &rate, &state.axes, &state.arm));
        }
        add_turning(&mut lost, &(twist * mount.isolator.dynamics.loss_factor));
        stiffness += alone;
        loss += lost;
        of_mounts.push(held);
    }
    let held = of_mounts.iter().fold(geometric, |sum, alone| sum + alone);
    let held = (held + held.transpose()) * 0.5;
    let stiffness = (stiffness + stiffness.transpose()) * 0.5;
    let loss = (loss + loss.transpose()) * 0.5;

    let to_shape = inverse_cholesky_transposed(m, &J)?;
    let swings = if fluids.is_empty() {
        swings_of_body(&stiffness, &to_shape)?
    } else {
        swings_with_fluids(&held, &fluids, &to_shape)?
    };
    let modes = swings
        .iter()
        .map(|swing| {
            let energy_share = swing.shape.component_mul(&(mass * swing.shape));
            let sign = sign_of_largest(&swing.shape, &energy_share);
            mode(
                swing,
                sign,
                energy_share,
                &of_mounts,
                &loss,
                &geometric,
                &fluids,
            )
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

/// Fluid of one mount as a coordinate beside the six of the body.
struct FluidInMount {
    /// Mount, as a place in the list of mounts.
    mount: usize,
    coupling: Vec6,
    coupling_loss: Vec6,
    rate: f64,
    rate_loss: f64,
    mass: f64,
    damping: f64,
}

impl FluidInMount {
    fn of(mount: usize, rate: &FluidRate, axes: &Mat3, arm: &Vec3) -> Self {
        let on_body = |of_mount: &Vec3| {
            let force = axes * of_mount;
            stack(&force, &arm.cross(&force))
        };
        Self {
            mount,
            coupling: on_body(&rate.coupling),
            coupling_loss: on_body(&rate.coupling_loss),
            rate: rate.fluid,
            rate_loss: rate.fluid_loss,
            mass: rate.mass,
            damping: rate.damping,
        }
    }
}

/// An undamped vibration with unit modal mass.
struct Swing {
    /// ω² [1/s²].
    lambda: f64,
    shape: Vec6,
    /// Motion of each fluid.
    fluids: Vec<f64>,
}

fn swings_of_body(stiffness: &Mat6, to_shape: &Mat6) -> Result<Vec<Swing>, NumericError> {
    let reduced = to_shape.transpose() * stiffness * to_shape;
    let eigen = symmetric_eigen6(&((reduced + reduced.transpose()) * 0.5))?;
    let columns = eigen.values.iter().zip(eigen.vectors.column_iter());
    Ok(columns
        .map(|(&lambda, column)| Swing {
            lambda,
            shape: to_shape * column,
            fluids: Vec::new(),
        })
        .collect())
}

/// Vibrations of body and fluids together: exact at every frequency, where one rate a mount holds at one.
///
/// # Equation
///   \[K_h  k_q; k_q'  K_q\] φ = ω² diag(M, m_q) φ
///
///   K_h  stiffness while every fluid is held      [N/m, N, N m]
///   k_q  coupling of body and fluids              [N/m, N]
///   m_q  masses of the fluids                     \[kg\]
///
/// # Source
/// Derived: the fluid in a track is a mass between two springs.
fn swings_with_fluids(
    held: &Mat6,
    fluids: &[FluidInMount],
    to_shape: &Mat6,
) -> Result<Vec<Swing>, NumericError> {
    let size = 6 + fluids.len();
    let mut reduced = DMatrix::zeros(size, size);
    let body = to_shape.transpose() * held * to_shape;
    reduced.view_mut((0, 0), (6, 6)).copy_from(&body);
    for (place, fluid) in fluids.iter().enumerate() {
        let (row, root) = (6 + place, fluid.mass.sqrt());
        let coupling = to_shape.tr_mul(&fluid.coupling) / root;
        reduced.view_mut((0, row), (6, 1)).copy_from(&coupling);
        reduced
            .view_mut((row, 0), (1, 6))
            .copy_from(&coupling.transpose());
        reduced[(row, row)] = fluid.rate / fluid.mass;
    }
    let eigen = symmetric_eigen(&((&reduced + reduced.transpose()) * 0.5))?;
    let columns = eigen.values.iter().zip(eigen.vectors.column_iter());
    Ok(columns
        .map(|(&lambda, column)| Swing {
            lambda,
            shape: to_shape * column.fixed_rows::<6>(0),
            fluids: fluids
                .iter()
                .enumerate()
                .map(|(place, fluid)| column[6 + place] / fluid.mass.sqrt())
                .collect(),
        })
        .collect())
}

/// Shares, damping and name of one vibration.
fn mode(
    swing: &Swing,
    sign: f64,
    energy_share: Vec6,
    of_mounts: &[Mat6],
    loss: &Mat6,
    geometric: &Mat6,
    fluids: &[FluidInMount],
) -> Mode {
    let Swing {
        lambda, ref shape, ..
    } = *swing;
    let quadratic = |k: &Mat6| shape.dot(&(k * shape));
    let mut strains: Vec<f64> = of_mounts.iter().map(quadratic).collect();
    let mut lost = quadratic(loss);
    let (mut viscous, mut fluid_share) = (0.0, 0.0);
    for (fluid, &q) in fluids.iter().zip(&swing.fluids) {
        strains[fluid.mount] += 2.0 * q * fluid.coupling.dot(shape) + fluid.rate * q * q;
        lost += 2.0 * q * fluid.coupling_loss.dot(shape) + fluid.rate_loss * q * q;
        viscous += fluid.damping * q * q;
        fluid_share += fluid.mass * q * q;
    }
    // Kinetic and strain energy of a vibration are alike: with unit modal mass the strain is ω².
    let strain = if fluids.is_empty() {
        strains.iter().sum::<f64>() + quadratic(geometric)
    } else {
        lambda
    };
    let omega = lambda.max(0.0).sqrt();
    Mode {
        frequency_hz: omega / std::f64::consts::TAU,
        growth_rate: (lambda < 0.0).then(|| (-lambda).sqrt()),
        damping_ratio: if lambda > 0.0 {
            ratio(lost, strain) / 2.0 + ratio(viscous, 2.0 * omega)
        } else {
            0.0
        },
        shape: shape * sign,
        name: mode_name(&energy_share, fluid_share),
        energy_share,
        fluid_share,
        mount_strain_share: strains.iter().map(|&part| ratio(part, strain)).collect(),
        geometric_strain_share: ratio(quadratic(geometric), strain),
    }
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
pub fn mode_name(energy_share: &Vec6, fluid_share: f64) -> String {
    let mut ranked: Vec<(f64, &str)> = energy_share.iter().copied().zip(MOTION_NAMES).collect();
    ranked.push((fluid_share, "fluid"));
    ranked.sort_by(|a, b| b.0.total_cmp(&a.0));
    match ranked.as_slice() {
        [first, second, ..] if first.0 <= NAMING_SHARE => format!("{} + {}", first.1, second.1),
        [first, ..] => first.1.to_owned(),
        [] => String::new(),
    }
}

/// Motion of the whole body that turns about an axis through its centre of gravity.
#[must_use]
pub fn turn_about(axis: &Vec3) -> Vec6 {
    stack(&Vec3::zeros(), axis)
}
