//! The body on its mounts: resultant, energy and tangent at any pose.

use crate::model::mass::MassProperties;
use crate::numeric::{NumericError, require_finite};
use crate::spatial::{
    Mat3, Mat6, Pose, STANDARD_GRAVITY, Vec3, Vec6, Wrench, add_spring, turning_displacement,
};

use super::loading::Loading;
use super::mount_response::{HeldMount, MountAction, MountFailure};

/// A rigid powertrain and the mounts that hold it.
///
/// Fitted pose: upright, centre of gravity at `mass.centre()`.
#[derive(Debug, Clone)]
pub struct Supported<'a> {
    mass: MassProperties,
    mounts: Vec<HeldMount<'a>>,
    /// `p_PM` of each mount \[m\].
    arms: Vec<Vec3>,
    arm_length: f64,
}

/// Mounts and loads together at one pose; moments and rotations about the displaced centre of gravity, vehicle axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Assembly {
    /// Resultant of mounts and loads on the powertrain; zero at equilibrium.
    pub resultant: Wrench,
    /// Loads alone.
    pub applied: Wrench,
    /// Stiffness of the mounts [N/m, N, N m]: `Σ B' A k_s A' B` and rotational rates, symmetric.
    pub material: Mat6,
    /// Stiffness from forces that keep their direction while arms turn, of mounts and loads, from rods that swing and moments that turn [N/m, N, N m]; not symmetric in general.
    pub geometric: Mat6,
    /// Energy in the mounts \[J\].
    pub energy: f64,
    /// Minus the work of the load forces since the fitted pose \[J\]; moments do not count.
    pub load_potential: f64,
}

impl Assembly {
    /// Minus the derivative of the resultant with respect to `(dc, dth)`: full, not symmetric away from equilibrium.
    #[must_use]
    pub fn tangent(&self) -> Mat6 {
        self.material + self.geometric
    }
}

/// Why there is no assembly at a pose.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AssemblyFailure {
    /// The mount at this place gave no force.
    Mount(usize, MountFailure),
    /// The sum is not finite.
    NotFinite,
}

impl<'a> Supported<'a> {
    /// A body on mounts.
    ///
    /// # Errors
    /// [`NumericError`] from [`HeldMount::check`].
    pub fn new(mass: MassProperties, mounts: Vec<HeldMount<'a>>) -> Result<Self, NumericError> {
        for mount in &mounts {
            mount.check()?;
        }
        let arms: Vec<Vec3> = mounts.iter().map(|m| m.at - mass.centre()).collect();
        let arm_length = characteristic_length(&mass, &arms);
        require_finite(&[arm_length, mass.mass() * STANDARD_GRAVITY])?;
        Ok(Self {
            mass,
            mounts,
            arms,
            arm_length,
        })
    }

    /// Mass properties in the fitted pose.
    #[must_use]
    pub fn mass(&self) -> &MassProperties {
        &self.mass
    }

    /// The mounts, in the order given.
    #[must_use]
    pub fn mounts(&self) -> &[HeldMount<'a>] {
        &self.mounts
    }

    /// Length that makes forces of moments and lengths of rotations \[m\]: the root mean square arm of the mounts, or the radius of gyration when that is longer.
    #[must_use]
    pub fn arm_length(&self) -> f64 {
        self.arm_length
    }

    /// Weight \[N\].
    #[must_use]
    pub fn weight(&self) -> f64 {
        self.mass.mass() * STANDARD_GRAVITY
    }

    /// The pose in which the build was drawn.
    #[must_use]
    pub fn fitted_pose(&self) -> Pose {
        Pose::upright(self.mass.centre())
    }

    /// Resultant, energy and tangent of mounts and loads at a pose.
    ///
    /// # Equation
    ///   K = −dg/dq = Σ B' A k_s A' B + Σ \[0 0; 0 −\[F\]\[r\]\] + rods and twist,   −\[F\]\[r\] = (F·r) I − r F'
    ///
    ///   g    resultant about the centre of gravity           [N, N m]
    ///   q    `(dc, dth)`, dth in vehicle axes from the left  [m, rad]
    ///   F    force on the powertrain, of a mount or a load   \[N\]
    ///   r    arm from the centre of gravity to it            \[m\]
    ///   B    \[I, −\[r\]\]
    ///
    /// # Source
    /// Derived: d(r × F) = r × dF + (dth × r) × F.
    ///
    /// # Errors
    /// [`AssemblyFailure`].
    pub fn at(&self, pose: &Pose, loading: &Loading) -> Result<Assembly, AssemblyFailure> {
        let offset = Pose {
            position: pose.position - self.mass.centre(),
            rotation: pose.rotation,
        };
        let mut actions = Vec::with_capacity(self.mounts.len());
        self.assemble(&offset, loading, &mut actions)
    }

    /// As [`Self::at`], for an offset from the fitted pose; leaves what the mounts do in `actions`.
    ///
    /// Offsets, not positions: a stiff mount feels the last digit of a position a metre from the datum.
    pub(crate) fn assemble(
        &self,
        offset: &Pose,
        loading: &Loading,
        actions: &mut Vec<MountAction>,
    ) -> Result<Assembly, AssemblyFailure> {
        actions.clear();
        let loads = loading.on(&self.mass.centre(), &offset.position, &offset.rotation);
        let mut resultant = loads.wrench;
        let mut material = Mat6::zeros();
        let mut geometric = Mat6::zeros();
        let mut turning = loads.turning_rate;
        let mut twisting = Mat3::zeros();
        let mut energy = 0.0;
        for (place, (mount, arm)) in self.mounts.iter().zip(&self.arms).enumerate() {
            let moved =
                mount.preset + offset.position + turning_displacement(&offset.rotation, arm);
            let action = mount
                .act(&moved, &offset.rotation)
                .map_err(|failure| AssemblyFailure::Mount(place, failure))?;
            let r = offset.rotation * arm;
            resultant = resultant + Wrench::of_force_at(action.force, r);
            resultant.moment += action.twist.moment;
            add_spring(&mut material, &action.rate, &r);
            if mount.far_eye.is_some() {
                add_spring(&mut geometric, &action.swing, &r);
            }
            twisting += action.twist.material;
            turning += Mat3::identity() * action.force.dot(&r) - r * action.force.transpose()
                + action.twist.geometric;
            energy += action.response.energy + action.twist.energy;
            actions.push(action);
        }
        add_turning(&mut material, &twisting);
        add_turning(&mut geometric, &turning);
        let assembly = Assembly {
            resultant,
            applied: loads.wrench,
            material: (material + material.transpose()) * 0.5,
            geometric,
            energy,
            load_potential: loads.potential,
        };
        // One sum sees every entry: anything infinite or undefined spoils it.
        let probe = assembly.tangent().sum() + resultant.vector().sum() + energy + loads.potential;
        if probe.is_finite() {
            Ok(assembly)
        } else {
            Err(AssemblyFailure::NotFinite)
        }
    }

    /// `p_PM` of each mount \[m\].
    pub(crate) fn arms(&self) -> &[Vec3] {
        &self.arms
    }

    /// `S = diag(1, 1, 1, 1/L, 1/L, 1/L)`: moments become forces, rotations lengths.
    pub(crate) fn scale(&self) -> Vec6 {
        let s = 1.0 / self.arm_length;
        Vec6::new(1.0, 1.0, 1.0, s, s, s)
    }

    /// `S K S` [N/m].
    pub(crate) fn scaled_matrix(&self, k: &Mat6) -> Mat6 {
        let s = self.scale();
        k.component_mul(&(s * s.transpose()))
    }
}

/// Adds a stiffness against turning [N m/rad] to a 6x6 stiffness.
pub(super) fn add_turning(stiffness: &mut Mat6, k: &Mat3) {
    let mut block = stiffness.fixed_view_mut::<3, 3>(3, 3);
    block += k;
}

fn characteristic_length(mass: &MassProperties, arms: &[Vec3]) -> f64 {
    let gyration = mass.inertia().trace() / (2.0 * mass.mass());
    let mean = arms.iter().map(Vec3::norm_squared).sum::<f64>() / arms.len().max(1) as f64;
    mean.max(gyration).sqrt()
}
