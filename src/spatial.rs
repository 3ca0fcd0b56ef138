//! Frames, poses and wrenches: the vocabulary of every formula in the crate.
//!
//! # Frames and letters
//!
//! | letter | meaning |
//! |---|---|
//! | `V` | vehicle frame: x forward, y left, z up, right-handed (orientation of ISO 8855); origin at the user's datum |
//! | `P` | powertrain frame: origin at the centre of gravity of what is supported, axes parallel to `V` in the fitted pose |
//! | `M` | frame of one mount: axes u, v, w, fixed to the chassis |
//! | `E` | frame of one part: its own axes, turned by roll, pitch, yaw against `V` |
//!
//! | symbol | meaning |
//! |---|---|
//! | `p_VP` | position of the origin of `P`, measured from `V`, in axes of `V` \[m\] |
//! | `p_PM` | powertrain-side mount point, measured from `P`, in axes of `P` \[m\] |
//! | `R_VP` | rotation that takes components in `P` to components in `V` |
//! | `r` | `R_VP p_PM`: arm from the centre of gravity to a point, in axes of `V` \[m\] |
//! | `F`, `M` | force \[N\] and moment [N m] |
//! | `q` | small motion `(translation, rotation)` of the powertrain, in axes of `V` |
//!
//! Letters that stand side by side cancel: `R_VP * p_PM` is a vector in `V`.
//!
//! Six-vectors hold the translation (or force) first: `[x, y, z, rx, ry, rz]`.
//!
//! Knows no units but SI, and no vehicle, part or mount.

use nalgebra::{Matrix3, Matrix6, Rotation3, UnitQuaternion, Vector3, Vector6};

/// Vector in space.
pub type Vec3 = Vector3<f64>;
/// 3x3 matrix.
pub type Mat3 = Matrix3<f64>;
/// Six-vector, translation or force first.
pub type Vec6 = Vector6<f64>;
/// 6x6 matrix, translation or force first.
pub type Mat6 = Matrix6<f64>;

/// Standard acceleration of gravity [m/s²].
///
/// # Source
/// Exact by convention: BIPM, The International System of Units, 9th edition
/// 2019, resolution of the 3rd CGPM (1901).
pub const STANDARD_GRAVITY: f64 = 9.80665;

/// Position and attitude of the powertrain in the vehicle frame.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pose {
    /// `p_VP`: the centre of gravity in vehicle axes \[m\].
    pub position: Vec3,
    /// `R_VP`: takes powertrain axes to vehicle axes.
    pub rotation: UnitQuaternion<f64>,
}

impl Pose {
    /// Pose with the axes of `P` parallel to those of `V`.
    #[must_use]
    pub fn upright(position: Vec3) -> Self {
        Self {
            position,
            rotation: UnitQuaternion::identity(),
        }
    }

    /// Pose after the increment `q = (dc, dth)`, `dth` in vehicle axes and multiplied from the left.
    #[must_use]
    pub fn moved_by(&self, q: &Vec6) -> Self {
        let turn = UnitQuaternion::from_scaled_axis(q.fixed_rows::<3>(3).into_owned());
        Self {
            position: self.position + q.fixed_rows::<3>(0),
            rotation: UnitQuaternion::new_normalize((turn * self.rotation).into_inner()),
        }
    }
}

/// Force and moment, about the point and in the axes that the holder states.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wrench {
    /// Force \[N\].
    pub force: Vec3,
    /// Moment [N m].
    pub moment: Vec3,
}

impl Wrench {
    /// No force and no moment.
    #[must_use]
    pub fn zero() -> Self {
        Self {
            force: Vec3::zeros(),
            moment: Vec3::zeros(),
        }
    }

    /// Wrench about a reference point of a force that acts at `arm` from that point.
    #[must_use]
    pub fn of_force_at(force: Vec3, arm: Vec3) -> Self {
        Self {
            force,
            moment: arm.cross(&force),
        }
    }

    /// As a six-vector, force first.
    #[must_use]
    pub fn vector(&self) -> Vec6 {
        stack(&self.force, &self.moment)
    }
}

impl std::ops::Add for Wrench {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self {
            force: self.force + other.force,
            moment: self.moment + other.moment,
        }
    }
}

/// Joins a translational and a rotational part to a six-vector.
#[must_use]
pub fn stack(translation: &Vec3, rotation: &Vec3) -> Vec6 {
    Vec6::new(
        translation.x,
        translation.y,
        translation.z,
        rotation.x,
        rotation.y,
        rotation.z,
    )
}

/// The matrix `[x]` with `[x] y = x × y`.
#[must_use]
pub fn skew(x: &Vec3) -> Mat3 {
    x.cross_matrix()
}

/// Joins four 3x3 blocks to a 6x6 matrix.
#[must_use]
pub fn blocks(tt: &Mat3, tr: &Mat3, rt: &Mat3, rr: &Mat3) -> Mat6 {
    let mut joined = Mat6::zeros();
    joined.fixed_view_mut::<3, 3>(0, 0).copy_from(tt);
    joined.fixed_view_mut::<3, 3>(0, 3).copy_from(tr);
    joined.fixed_view_mut::<3, 3>(3, 0).copy_from(rt);
    joined.fixed_view_mut::<3, 3>(3, 3).copy_from(rr);
    joined
}

/// Adds the stiffness `k` [N/m, vehicle axes] of a spring that holds the point at `arm` to a 6x6 stiffness about the origin of the arm.
///
/// # Equation
///   K += B' k B,   B = [ I , -\[arm\] ]
///
/// # Source
/// Derived: the point moves by `dc + dth × arm`, and `-[arm] dth` is that cross product.
pub fn add_spring(stiffness: &mut Mat6, k: &Mat3, arm: &Vec3) {
    let s = skew(arm);
    let k_s = k * s;
    let tr = -k_s;
    let rt = s * k;
    let rr = -(s * k_s);
    *stiffness += blocks(k, &tr, &rt, &rr);
}

/// Displacement `R arm - arm` of the tip of an arm \[m\] by a rotation about its foot.
///
/// # Equation
///   (R − I) r = 2 w (v × r) + 2 v × (v × r),   (w, v) the unit quaternion of R
///
/// # Range
/// Any rotation. Unlike the difference of two long vectors it keeps all its
/// digits when the rotation is small.
///
/// # Source
/// Derived: Rodrigues' formula with half angles.
#[must_use]
pub fn turning_displacement(rotation: &UnitQuaternion<f64>, arm: &Vec3) -> Vec3 {
    let v = rotation.imag();
    let across = v.cross(arm);
    (across * rotation.w + v.cross(&across)) * 2.0
}

/// Rotation from roll, pitch and yaw \[rad\]: `Rz(yaw) Ry(pitch) Rx(roll)`.
///
/// Positive roll lifts the left side, positive pitch drops the nose, positive yaw turns the nose left.
#[must_use]
pub fn rotation_from_roll_pitch_yaw(roll: f64, pitch: f64, yaw: f64) -> Rotation3<f64> {
    Rotation3::from_euler_angles(roll, pitch, yaw)
}

/// Roll, pitch and yaw \[rad\] of a rotation, in the order of [`rotation_from_roll_pitch_yaw`].
#[must_use]
pub fn roll_pitch_yaw(rotation: &UnitQuaternion<f64>) -> [f64; 3] {
    let (roll, pitch, yaw) = rotation.euler_angles();
    [roll, pitch, yaw]
}

/// Mount axes `R_VM` (columns u, v, w) from the main axis `w` and a wish for `u`, which is made square to `w`.
///
/// `None` when a direction has no length or `u` lies along `w` (within 0.06°).
#[must_use]
pub fn axes_from_w_u(w: &Vec3, u: &Vec3) -> Option<Mat3> {
    let w = w.try_normalize(f64::MIN_POSITIVE)?;
    let u = u.try_normalize(f64::MIN_POSITIVE)?;
    let u = (u - w * w.dot(&u)).try_normalize(1e-3)?;
    let v = w.cross(&u);
    Some(Mat3::from_columns(&[u, v, w]))
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    #[test]
    fn rotation_order_is_roll_then_pitch_then_yaw_about_fixed_axes() {
        let (r, p, y) = (0.3, -0.2, 0.7);
        let by_hand = Rotation3::from_axis_angle(&Vec3::z_axis(), y)
            * Rotation3::from_axis_angle(&Vec3::y_axis(), p)
            * Rotation3::from_axis_angle(&Vec3::x_axis(), r);
        let ours = rotation_from_roll_pitch_yaw(r, p, y);
        assert_relative_eq!(ours.matrix(), by_hand.matrix(), epsilon = 1e-15);
        let back = roll_pitch_yaw(&UnitQuaternion::from_rotation_matrix(&ours));
        assert_relative_eq!(back[0], r, epsilon = 1e-14);
        assert_relative_eq!(back[1], p, epsilon = 1e-14);
        assert_relative_eq!(back[2], y, epsilon = 1e-14);
    }

    #[test]
    fn positive_roll_lifts_the_left_side_and_positive_pitch_drops_the_nose() {
        let left = Vec3::y();
        let nose = Vec3::x();
        assert!((rotation_from_roll_pitch_yaw(0.1, 0.0, 0.0) * left).z > 0.0);
        assert!((rotation_from_roll_pitch_yaw(0.0, 0.1, 0.0) * nose).z < 0.0);
        assert!((rotation_from_roll_pitch_yaw(0.0, 0.0, 0.1) * nose).y > 0.0);
    }

    #[test]
    fn a_turn_moves_the_tip_of_an_arm_by_the_difference_of_the_vectors() {
        let arm = Vec3::new(0.3, -1.2, 0.7);
        let turn = UnitQuaternion::from_scaled_axis(Vec3::new(0.4, -0.9, 1.1));
        assert_relative_eq!(
            turning_displacement(&turn, &arm),
            turn * arm - arm,
            epsilon = 1e-15
        );
    }

    #[test]
    fn a_spring_off_centre_resists_a_turn_with_force_and_moment() {
        // Unit stiffness at arm (0, 2, 0); a turn of 1 about x lifts the point by 2:
        // restoring force 2 along z, moment 2*2 about x.
        let mut stiffness = Mat6::zeros();
        add_spring(&mut stiffness, &Mat3::identity(), &Vec3::new(0.0, 2.0, 0.0));
        let resisted = stiffness * Vec6::new(0.0, 0.0, 0.0, 1.0, 0.0, 0.0);
        assert_relative_eq!(
            resisted,
            Vec6::new(0.0, 0.0, 2.0, 4.0, 0.0, 0.0),
            epsilon = 1e-15
        );
    }

    #[test]
    fn mount_axes_are_right_handed_and_refuse_parallel_directions() {
        let w = Vec3::new(0.0, -1.0, 1.0);
        let axes = axes_from_w_u(&w, &Vec3::x()).unwrap();
        assert_relative_eq!(axes.determinant(), 1.0, epsilon = 1e-14);
        assert_relative_eq!(axes.column(2).into_owned(), w.normalize(), epsilon = 1e-15);
        assert!(axes_from_w_u(&w, &(w * -3.0)).is_none());
        assert!(axes_from_w_u(&Vec3::zeros(), &Vec3::x()).is_none());
    }
}
