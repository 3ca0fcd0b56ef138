//! Torque rods: a platform hung on four of them, a swing, a rod that draws two points together.

use std::sync::Arc;

use bedplate::model::isolator::{Isolator, rates::Rates};
use bedplate::rigid::equilibrium::solve_equilibrium;
use bedplate::rigid::loading::Loading;
use bedplate::rigid::modes::solve_modes;
use bedplate::rigid::mount_response::HeldMount;
use bedplate::rigid::settled::settled_mounts;
use bedplate::rigid::supported::Supported;
use bedplate::spatial::{STANDARD_GRAVITY, Vec3};
use nalgebra::UnitQuaternion;

use super::rest_and_torque::body_of;
use crate::kit::{assert_close, linear, plain_mount};

const LENGTH: f64 = 0.25;
const RATE: f64 = 2e6;
const MASS: f64 = 100.0;

/// A rod that pulls and pushes with one rate \[N/m\] along its line.
fn rod(rate: f64) -> Isolator {
    let rates = Vec3::new(0.0, 0.0, rate);
    Isolator::new("rod", "rod", Arc::new(Rates { rates }))
}

fn held<'a>(isolator: &'a Isolator, at: Vec3, to: Vec3) -> HeldMount<'a> {
    HeldMount {
        far_eye: Some(to),
        ..plain_mount("rod", at, isolator)
    }
}

/// Four vertical rods with eyes at (±0.3, ±0.2), level with the centre of gravity.
fn hung(isolator: &Isolator) -> Vec<HeldMount<'_>> {
    [(0.3, 0.2), (0.3, -0.2), (-0.3, 0.2), (-0.3, -0.2)]
        .map(|(x, y)| held(isolator, Vec3::new(x, y, 0.0), Vec3::new(x, y, LENGTH)))
        .to_vec()
}

/// Derived, at the length L₁ = L + m g/(4k) to which the rods stretch:
/// swing √(g/L₁)/2π twice, yaw √(m g (a² + b²)/(L₁ Jz))/2π (the swing test of
/// the workshop), bounce √(4k/m)/2π, roll √(4k b²/Jx)/2π, pitch √(4k a²/Jy)/2π.
#[test]
fn a_platform_hung_on_four_rods() {
    let isolator = rod(RATE);
    let body = Supported::new(body_of(MASS, [3.0, 5.0, 6.0]), hung(&isolator)).unwrap();
    let rest = solve_equilibrium(&body, &Loading::weight(MASS), None).unwrap();
    assert_close(
        "sag",
        &[rest.displacement.z],
        &[-0.122_583_125e-3],
        1e-9,
        0.0,
    );
    assert_eq!(rest.held_by_weight_only.len(), 3, "{rest:?}");
    let modes = solve_modes(&body, &rest).unwrap().modes;
    let found: Vec<f64> = modes.iter().map(|mode| mode.frequency_hz).collect();
    let stretched = LENGTH + MASS * STANDARD_GRAVITY / (4.0 * RATE);
    let hertz = |square: f64| square.sqrt() / std::f64::consts::TAU;
    let swing = hertz(STANDARD_GRAVITY / stretched);
    let yaw = hertz(MASS * STANDARD_GRAVITY * (0.09 + 0.04) / (stretched * 6.0));
    let others = [4.0 / MASS, 4.0 * 0.04 / 3.0, 4.0 * 0.09 / 5.0].map(|share| hertz(share * RATE));
    let expected = [swing, swing, yaw, others[0], others[1], others[2]];
    assert_close("frequencies", &found, &expected, 1e-9, 0.0);
    // Worked by hand: 0.9966 Hz, 1.4669, 45.016, 51.980, 60.395.
    assert_close("swing by hand", &found[..1], &[0.996_561_3], 1e-7, 0.0);
    assert_close("pitch by hand", &found[5..], &[60.395_054_5], 1e-8, 0.0);
}

/// Derived: pushed sideways by F it swings like a pendulum whose string is the
/// stretched rod: N = √(F² + (m g)²)/4, tan θ = F/(m g), L₂ = L + N/k, moved by
/// L₂ sin θ sideways and L − L₂ cos θ up, without turning.
#[test]
fn a_large_swing_is_exact() {
    let isolator = rod(RATE);
    let body = Supported::new(body_of(MASS, [3.0, 5.0, 6.0]), hung(&isolator)).unwrap();
    let (push, weight) = (400.0, MASS * STANDARD_GRAVITY);
    let loading = Loading {
        at_centre: Vec3::new(push, 0.0, -weight),
        ..Loading::none()
    };
    let found = solve_equilibrium(&body, &loading, None).unwrap();
    let pull = f64::hypot(push, weight) / 4.0;
    let (length, angle) = (LENGTH + pull / RATE, f64::atan2(push, weight));
    let expected = [length * angle.sin(), 0.0, LENGTH - length * angle.cos()];
    assert_close(
        "moves",
        found.displacement.as_slice(),
        &expected,
        1e-9,
        1e-12,
    );
    assert_close("turns", &[found.rotation.angle()], &[0.0], 0.0, 1e-9);
    assert_close(
        "by hand",
        &expected,
        &[94.469_326e-3, 0.0, 18.393_096e-3],
        1e-7,
        0.0,
    );
    for mount in &found.mounts {
        assert_close(
            "pull",
            &[mount.force_on_powertrain.norm()],
            &[pull],
            1e-9,
            0.0,
        );
        assert!(mount.deflection.z > 0.0, "a pulled rod is longer");
    }
}

/// Derived: a sideways move h alone stretches a rod of length l by h²/(2l), the
/// next term h⁴/(8l³) left out.
#[test]
fn a_sideways_move_stretches_a_rod() {
    let isolator = rod(RATE);
    let mount = held(&isolator, Vec3::zeros(), Vec3::new(-0.3, 0.0, 0.0));
    let action = mount
        .act(&Vec3::new(0.0, 0.01, 0.0), &UnitQuaternion::identity())
        .unwrap();
    let h2 = 1e-4_f64;
    let expected = h2 / 0.6 - h2 * h2 / (8.0 * 0.027);
    assert_close(
        "stretch",
        &[action.response.deflection.z],
        &[expected],
        1e-6,
        0.0,
    );
    // It pulls back along its own line, and towards the chassis eye.
    assert!(action.force.x < 0.0 && action.force.y < 0.0);
    let slope = action.force.y / action.force.x;
    assert_close("line", &[slope], &[0.01 / 0.3], 1e-12, 0.0);
}

/// Derived: drawn at rest, each hung rod is drawn stretched by m g/(4k); its free length is shorter by that.
#[test]
fn drawn_at_rest_the_free_length_is_shorter() {
    let isolator = rod(RATE);
    let mass = body_of(MASS, [3.0, 5.0, 6.0]);
    let settled = settled_mounts(&mass, &hung(&isolator)).unwrap();
    for mount in &settled {
        let free = (mount.anchor() - mount.far_eye.unwrap()).norm();
        let expected = LENGTH - MASS * STANDARD_GRAVITY / (4.0 * RATE);
        assert_close("free length", &[free], &[expected], 0.0, 1e-12);
    }
    let body = Supported::new(mass, settled).unwrap();
    let rest = solve_equilibrium(&body, &Loading::weight(MASS), None).unwrap();
    assert_close("rests", rest.displacement.as_slice(), &[0.0; 3], 0.0, 1e-11);
}

/// A rod whose eyes are in one place has no direction.
#[test]
fn a_rod_without_length_is_refused() {
    let isolator = rod(RATE);
    let at = Vec3::new(0.1, 0.2, 0.3);
    assert!(held(&isolator, at, at).check().is_err());
    assert!(held(&isolator, at, at + Vec3::x()).check().is_ok());
}

/// Derived: a block in series with a bracket along the rod; across it neither gives way.
#[test]
fn bracket_and_chassis_give_way_along_a_rod() {
    let isolator = rod(RATE);
    let soft = HeldMount {
        compliance: nalgebra::Matrix3::from_diagonal(&Vec3::new(1e-6, 1e-6, 0.5e-6)),
        ..held(&isolator, Vec3::zeros(), Vec3::new(-0.3, 0.0, 0.0))
    };
    let still = UnitQuaternion::identity();
    let action = soft.act(&Vec3::new(1e-3, 0.0, 0.0), &still).unwrap();
    let expected = 1e-3 / (1.0 / RATE + 0.5e-6);
    assert_close("force", &[-action.force.x], &[expected], 1e-12, 0.0);
}

/// A mount without a rod keeps its axes; the same place with one turns them.
#[test]
fn axes_of_a_rod_follow_it() {
    let isolator = rod(RATE);
    let mount = held(&isolator, Vec3::zeros(), Vec3::new(0.0, 0.0, -0.4));
    let moved = Vec3::new(0.3, 0.0, 0.0);
    let action = mount.act(&moved, &UnitQuaternion::identity()).unwrap();
    let expected = [0.6, 0.0, 0.8];
    let w = action.axes.column(2).into_owned();
    assert_close("w", w.as_slice(), &expected, 0.0, 1e-12);
    let block = linear("block", [1e5; 3]);
    let fixed = plain_mount("block", Vec3::zeros(), &block);
    let action = fixed.act(&moved, &UnitQuaternion::identity()).unwrap();
    assert_eq!(action.axes, fixed.axes);
}

/// Derived: the chassis moved sideways by h pulls the rod longer, √(L² + h²) − L, with both of
/// its ends where they are on the chassis.
#[test]
fn a_chassis_that_moves_takes_the_eye_with_it() {
    let isolator = rod(RATE);
    let mount = held(&isolator, Vec3::zeros(), Vec3::new(-0.3, 0.0, 0.0));
    let by = Vec3::new(0.0, 0.01, 0.0);
    let twisted = mount.shifted(&by);
    let moved = twisted.preset;
    let action = twisted.act(&moved, &UnitQuaternion::identity()).unwrap();
    let expected = f64::hypot(0.3, 0.01) - 0.3;
    assert_close(
        "stretch",
        &[action.response.deflection.z],
        &[expected],
        1e-9,
        0.0,
    );
}

/// A platform that stands on three upright rods falls over them and hangs below: that is a balance, and no build.
#[test]
fn a_platform_on_stilts_is_told() {
    let stilts: String = [("a", 300, 200), ("b", 300, -200), ("c", -300, 0)]
        .iter()
        .map(|(name, x, y)| {
            format!(
                "[[mount]]\nname = \"{name}\"\nat = \"{x}, {y}, -50 mm\"\nisolator = \"stilt\"\nrod = {{ to = \"{x}, {y}, -250 mm\" }}\n"
            )
        })
        .collect();
    let text = format!(
        "title = \"stilts\"\n[datum]\norigin = \"somewhere\"\nfitted = \"free\"\n\
         [[part]]\nname = \"block\"\nmass = \"150 kg\"\nat = \"0, 0, 0 mm\"\nbox = \"600, 500, 500 mm\"\n\
         [isolator.stilt]\nkind = \"rod\"\nrates = \"400 N/mm\"\n{stilts}"
    );
    let checks = bedplate::study::evaluate::evaluate(&crate::kit::model(&text))
        .unwrap()
        .checks;
    let fallen = super::verdicts::find(&checks, "astray.at-rest");
    assert_eq!(fallen.verdict, bedplate::study::check::Verdict::Fails);
    assert_close("hangs", &[fallen.value.unwrap()], &[0.4], 0.02, 0.0);
}
