//! Large rotations, pendulums, tipping, slack and one-sided mounts.

use std::sync::Arc;

use bedplate::model::isolator::{Isolator, Law, LawPoint, stop::AxisStops};
use bedplate::model::mass::MassProperties;
use bedplate::rigid::equilibrium::{StaticEquilibrium, solve_equilibrium};
use bedplate::rigid::failure::StaticsFailure;
use bedplate::rigid::loading::Loading;
use bedplate::rigid::modes::solve_modes;
use bedplate::rigid::mount_response::HeldMount;
use bedplate::rigid::supported::Supported;
use bedplate::spatial::{Mat3, STANDARD_GRAVITY, Vec3, Wrench};

use crate::kit::{assert_close, linear, plain_mount};

/// Body at the datum.
pub(super) fn body_of(mass: f64, inertia: [f64; 3]) -> MassProperties {
    let inertia = Mat3::from_diagonal(&Vec3::from(inertia));
    MassProperties::new(mass, Vec3::zeros(), inertia).unwrap()
}

/// Four mounts at the corners of a rectangle, `z` above the datum.
pub(super) fn corners<'a>(isolator: &'a Isolator, a: f64, b: f64, z: f64) -> Vec<HeldMount<'a>> {
    [
        ("front left", a, b),
        ("front right", a, -b),
        ("rear left", -a, b),
        ("rear right", -a, -b),
    ]
    .map(|(name, x, y)| plain_mount(name, Vec3::new(x, y, z), isolator))
    .to_vec()
}

pub(super) fn stops(travel: f64, rate: f64) -> AxisStops {
    AxisStops {
        lower: Some(-travel),
        upper: Some(travel),
        rate,
        blend: 0.1 * travel,
    }
}

/// Derived: four mounts with equal rates k in all axes at (±a, ±b, 0) under a
/// pure moment M about x. Each mount moves by (R − I) r; the sum of forces is
/// zero and M = 4 k b² sin θ. Tangent 4 k b² cos θ, energy 4 k b² (1 − cos θ).
#[test]
fn large_roll_under_a_pure_moment() {
    let isolator = linear("even", [1e5; 3]);
    let body = Supported::new(
        body_of(100.0, [3.0, 5.0, 6.0]),
        corners(&isolator, 0.4, 0.25, 0.0),
    )
    .unwrap();
    for (degrees, moment, tangent) in [
        (5.0_f64, 2178.893568691, 24904.867),
        (20.0, 8550.503583, 23492.316),
        (40.0, 16069.690242, 19151.111),
        (60.0, 21650.635095, 12500.0),
    ] {
        let mut loading = Loading::none();
        loading.moment.x = moment;
        let loaded = solve_equilibrium(&body, &loading, None).unwrap();
        let angle = degrees.to_radians();
        let expected = [angle, 0.0, 0.0];
        assert_close(
            degrees,
            loaded.rotation.scaled_axis().as_slice(),
            &expected,
            1e-9,
            1e-12,
        );
        assert_close(
            degrees,
            loaded.displacement.as_slice(),
            &[0.0; 3],
            0.0,
            1e-12,
        );
        let material = loaded.tangent[(3, 3)] - loaded.geometric[(3, 3)];
        let found = [loaded.tangent[(3, 3)], material];
        assert_close(degrees, &found, &[tangent, 25e3], 1e-7, 0.0);
        let energy: f64 = loaded.mounts.iter().map(|m| m.energy).sum();
        let expected = 25e3 * (1.0 - angle.cos());
        assert_close("energy", &[energy], &[expected], 1e-9, 0.0);
    }
    // Above the largest moment, 4 k b² = 25 kN m, there is no balance to report.
    let mut loading = Loading::none();
    loading.moment.x = 25.1e3;
    let failure = solve_equilibrium(&body, &loading, None).unwrap_err();
    assert!(
        matches!(
            failure,
            StaticsFailure::NotConverged { reached_share, .. } if (0.9..1.0).contains(&reached_share)
        ),
        "{failure:?}"
    );
}

/// Derived: hung from two eyes on a fore-aft line, h above the centre of
/// gravity. The mounts leave the swing about that line free and the weight
/// holds it. With coordinates y and rx the stiffness is
/// 2k \[1, h; h, h²\] + \[0, 0; 0, m g h\]; a side acceleration a gives tan θ = a/g.
#[test]
fn hung_from_two_eyes_it_swings_like_a_pendulum() {
    let (m, jx, h, k) = (120.0, 4.0, 0.35, 2e6);
    let isolator = linear("eye", [k; 3]);
    let mounts = vec![
        plain_mount("front eye", Vec3::new(0.35, 0.0, h), &isolator),
        plain_mount("rear eye", Vec3::new(-0.35, 0.0, h), &isolator),
    ];
    let body = Supported::new(body_of(m, [jx, 6.0, 7.0]), mounts).unwrap();
    let rest = solve_equilibrium(&body, &Loading::weight(m), None).unwrap();
    assert_eq!(rest.held_by_weight_only.len(), 1);
    assert_eq!(
        rest.held_by_weight_only[0].words,
        "turning about the line through `front eye` and `rear eye`"
    );
    let modes = solve_modes(&body, &rest).unwrap();
    // det(K − λ M) = 0:  m J λ² − (2k J + (2k h² + m g h) m) λ + 2k m g h = 0.
    let w = m * STANDARD_GRAVITY * h;
    let (a, b, c) = (
        m * jx,
        2.0 * k * jx + (2.0 * k * h * h + w) * m,
        2.0 * k * w,
    );
    let lambda = 2.0 * c / (b + (b * b - 4.0 * a * c).sqrt());
    let expected = lambda.sqrt() / std::f64::consts::TAU;
    assert_close(
        "swing",
        &[modes.modes[0].frequency_hz],
        &[expected],
        1e-7,
        0.0,
    );
    // Rigid eyes: the physical pendulum, √(m g h/(J + m h²)).
    let rigid = (w / (jx + m * h * h)).sqrt() / std::f64::consts::TAU;
    assert_close("pendulum", &[expected], &[rigid], 1e-3, 0.0);

    let mut loading = Loading::weight(m);
    loading.at_centre.y = 0.5 * m * STANDARD_GRAVITY;
    let aside = solve_equilibrium(&body, &loading, Some(&rest)).unwrap();
    let swung = aside.rotation.scaled_axis();
    assert_close("swung", &[swung.x], &[0.5_f64.atan()], 1e-9, 0.0);
}

/// The same two eyes below the centre of gravity: it stands on its head and falls over.
#[test]
fn on_two_eyes_below_the_centre_of_gravity_it_falls_over() {
    let isolator = linear("eye", [2e6; 3]);
    let mounts = vec![
        plain_mount("front eye", Vec3::new(0.4, 0.02, -0.3), &isolator),
        plain_mount("rear eye", Vec3::new(-0.3, 0.02, -0.3), &isolator),
    ];
    let body = Supported::new(body_of(120.0, [4.0, 6.0, 7.0]), mounts).unwrap();
    let failure = solve_equilibrium(&body, &Loading::weight(120.0), None).unwrap_err();
    assert_eq!(
        failure.to_string(),
        "nothing holds the powertrain against turning about the line through `front eye` and `rear eye`"
    );
}

/// Derived: equal rates k at (±a, ±b, −h): the net roll moment is (m g h − 4 k b²) sin θ,
/// so upright is unstable when m g h > 4 k b², and without stops it tips right over.
#[test]
fn top_heavy_on_soft_mounts() {
    let (m, k, a, b, h) = (300.0, 10e3, 0.5, 0.15, 0.45);
    assert!(m * STANDARD_GRAVITY * h > 4.0 * k * b * b);
    let mass = body_of(m, [10.0, 20.0, 20.0]);
    let soft = linear("soft", [k; 3]);
    let body = Supported::new(mass, corners(&soft, a, b, -h)).unwrap();
    let failure = solve_equilibrium(&body, &Loading::weight(m), None).unwrap_err();
    assert!(
        matches!(failure, StaticsFailure::Unstable { rate, .. } if rate < 0.0),
        "{failure:?}"
    );

    // Stops beyond the sag of 73.5 mm catch it in a lean to one side.
    let mut stopped = soft.clone();
    stopped.stops[2] = stops(0.09, 1e6);
    let body = Supported::new(mass, corners(&stopped, a, b, -h)).unwrap();
    let lean = solve_equilibrium(&body, &Loading::weight(m), None).unwrap();
    assert!(lean.left_unstable_balance);
    let roll = lean.rotation.scaled_axis().x.abs();
    assert!((0.05..0.5).contains(&roll), "roll {roll}");
    let modes = solve_modes(&body, &lean).unwrap();
    assert!(modes.modes.iter().all(|mode| mode.growth_rate.is_none()));
    assert_balanced(&lean, m * STANDARD_GRAVITY);
}

/// A point rubber with free play: no force within the play, k beyond it.
#[derive(Debug)]
struct Play {
    play: f64,
    k: f64,
}

impl Law for Play {
    fn at(&self, x: &Vec3) -> LawPoint {
        let beyond = x.map(|x| x - x.clamp(-self.play, self.play));
        let touched = beyond.map(|b| if b.abs() > 0.0 { self.k } else { 0.0 });
        LawPoint {
            force: beyond * self.k,
            tangent: Mat3::from_diagonal(&touched),
            energy: beyond.norm_squared() * self.k / 2.0,
        }
    }
}

/// Pushes along w only: the powertrain may lift off.
#[derive(Debug)]
pub(super) struct PushOnly {
    pub(super) shear: f64,
    pub(super) k: f64,
}

impl Law for PushOnly {
    fn at(&self, x: &Vec3) -> LawPoint {
        let pressed = x.z.min(0.0);
        let k = if x.z < 0.0 { self.k } else { 0.0 };
        LawPoint {
            force: Vec3::new(self.shear * x.x, self.shear * x.y, self.k * pressed),
            tangent: Mat3::from_diagonal(&Vec3::new(self.shear, self.shear, k)),
            energy: (self.shear * (x.x * x.x + x.y * x.y) + self.k * pressed * pressed) / 2.0,
        }
    }
}

/// Derived: every mount is slack as drawn; the weight and a push close the play and
/// each of the four carries a quarter: play + m g/(4k) down, play + F/(4k) sideways and fore-aft.
#[test]
fn slack_mounts_are_closed_by_the_load() {
    let (play, k, m) = (3e-3, 200e3, 160.0);
    let isolator = Isolator::new("loose", "test", Arc::new(Play { play, k }));
    let body = Supported::new(
        body_of(m, [5.0, 9.0, 9.0]),
        corners(&isolator, 0.4, 0.3, 0.0),
    )
    .unwrap();
    let mut loading = Loading::weight(m);
    loading.at_centre += Vec3::new(300.0, 500.0, 0.0);
    let loaded = solve_equilibrium(&body, &loading, None).unwrap();
    let expected = loading.at_centre.map(|f| f.signum() * play + f / (4.0 * k));
    assert_close(
        "closed",
        loaded.displacement.as_slice(),
        expected.as_slice(),
        1e-9,
        0.0,
    );

    // Weight alone leaves the play fore-aft, sideways and in yaw open: nothing holds it there.
    let failure = solve_equilibrium(&body, &Loading::weight(m), None).unwrap_err();
    let StaticsFailure::Unsupported(motions) = failure else {
        panic!("{failure:?}");
    };
    let words: Vec<&str> = motions.iter().map(|motion| motion.words.as_str()).collect();
    assert_eq!(words[..2], ["sliding fore-aft", "sliding sideways"]);
    assert!(words[2].starts_with("yawing about"), "{words:?}");
}

/// Derived: with mounts that only push, a roll moment above m g b/2·... lifts one side:
/// the loaded side carries the whole weight once M = m g b, and the lifted side nothing.
#[test]
fn one_side_lifts_off() {
    let (k, m, b) = (300e3, 200.0, 0.3);
    let law = PushOnly { shear: 100e3, k };
    let isolator = Isolator::new("pad", "test", Arc::new(law));
    let body = Supported::new(
        body_of(m, [8.0, 15.0, 15.0]),
        corners(&isolator, 0.4, b, 0.0),
    )
    .unwrap();
    let weight = m * STANDARD_GRAVITY;
    let mut loading = Loading::weight(m);
    // Half of the tipping moment: both sides still carry, (1 ± 1/2)/2 of the weight.
    loading.moment.x = -0.5 * weight * b;
    let half = solve_equilibrium(&body, &loading, None).unwrap();
    let left = half.mounts[0].force_on_powertrain.z + half.mounts[2].force_on_powertrain.z;
    assert_close("left side", &[left], &[0.75 * weight], 5e-3, 0.0);
    // Close to tipping: the right side is in the air, shear holds the rest.
    loading.moment.x = -1.02 * weight * b;
    let lifted = solve_equilibrium(&body, &loading, Some(&half)).unwrap();
    assert!(lifted.mounts[1].isolator_deflection.z > 0.0);
    assert_close(
        "right",
        &[lifted.mounts[1].force_on_powertrain.z],
        &[0.0],
        0.0,
        1e-9,
    );
    assert_balanced(&lifted, weight);
}

/// A force fixed in space at a point of the powertrain is the same as that force and its moment, once the point has moved.
#[test]
fn a_force_at_a_point_is_carried_with_the_point() {
    let isolator = linear("even", [9e4, 1.1e5, 2e5]);
    let body = Supported::new(
        body_of(150.0, [5.0, 9.0, 9.0]),
        corners(&isolator, 0.4, 0.3, -0.1),
    )
    .unwrap();
    let point = Vec3::new(0.5, -0.2, 0.3);
    let wrench = Wrench {
        force: Vec3::new(800.0, -1500.0, 600.0),
        moment: Vec3::new(20.0, 70.0, -40.0),
    };
    let mut loading = Loading::weight(150.0);
    loading.at_points.push((point, wrench));
    let at_point = solve_equilibrium(&body, &loading, None).unwrap();
    let moved = point + at_point.displacement_of(point) - at_point.pose.position;
    let mut same = Loading::weight(150.0);
    same.at_centre += wrench.force;
    same.moment = wrench.moment + moved.cross(&wrench.force);
    let at_centre = solve_equilibrium(&body, &same, None).unwrap();
    assert_close(
        "position",
        at_point.displacement.as_slice(),
        at_centre.displacement.as_slice(),
        1e-9,
        1e-13,
    );
    assert_close(
        "attitude",
        at_point.rotation.scaled_axis().as_slice(),
        at_centre.rotation.scaled_axis().as_slice(),
        1e-9,
        1e-13,
    );
    assert_close(
        "applied",
        at_point.applied.vector().as_slice(),
        at_centre.applied.vector().as_slice(),
        1e-9,
        1e-9,
    );
}

/// Forces and moments of all mounts and loads sum to nothing.
#[track_caller]
pub(super) fn assert_balanced(at: &StaticEquilibrium, scale: f64) {
    let mut sum = at.applied;
    for mount in &at.mounts {
        sum = sum + Wrench::of_force_at(mount.force_on_powertrain, mount.arm);
    }
    assert_close(
        "balance",
        sum.vector().as_slice(),
        &[0.0; 6],
        0.0,
        1e-9 * scale,
    );
}
