//! Builds drawn at rest whose mounts have no stiffness, or none in every direction, when unloaded.

use std::sync::Arc;

use bedplate::model::isolator::Isolator;
use bedplate::rigid::equilibrium::solve_equilibrium;
use bedplate::rigid::failure::StaticsFailure;
use bedplate::rigid::loading::Loading;
use bedplate::rigid::settled::settled_mounts;
use bedplate::rigid::supported::Supported;
use bedplate::spatial::{STANDARD_GRAVITY, Vec3};

use super::rest_and_torque::{PushOnly, body_of, corners};
use crate::kit::{assert_close, linear, plain_mount};

/// Derived: pads that only push have no rate at their unloaded height. Each
/// carries a quarter, so each anchor lies m g/(4 k) above the drawn point.
#[test]
fn pads_that_only_push() {
    let (k, m) = (300e3, 200.0);
    let law = PushOnly { shear: 1e5, k };
    let pad = Isolator::new("pad", "test", Arc::new(law));
    let mass = body_of(m, [8.0, 15.0, 15.0]);
    let mounts = corners(&pad, 0.4, 0.3, -0.1);
    let mounts = settled_mounts(&mass, &mounts).unwrap();
    let sag = m * STANDARD_GRAVITY / (4.0 * k);
    for mount in &mounts {
        let (anchor, expected) = (mount.anchor(), mount.at + Vec3::new(0.0, 0.0, sag));
        assert_close("anchor", anchor.as_slice(), expected.as_slice(), 0.0, 1e-10);
    }
    let body = Supported::new(mass, mounts).unwrap();
    let rest = solve_equilibrium(&body, &Loading::weight(m), None).unwrap();
    assert_close("rests", rest.displacement.as_slice(), &[0.0; 3], 0.0, 1e-10);
}

/// Derived: hung from two eyes straight above the centre of gravity, 0.5 m ahead and
/// 0.2 m behind; the swing is free. The eyes carry 2/7 and 5/7 of the weight, and each
/// anchor lies that force over k above its eye. The eyes keep their distance, so the
/// difference of the two stretches, 0.13 mm, shifts the anchors fore-aft by 1e-8 m.
#[test]
fn hung_from_two_eyes() {
    let (k, m) = (2e6, 120.0);
    let eye = linear("eye", [k; 3]);
    let mounts = [0.5, -0.2].map(|x| plain_mount("eye", Vec3::new(x, 0.0, 0.4), &eye));
    let settled = settled_mounts(&body_of(m, [4.0, 6.0, 7.0]), &mounts).unwrap();
    let weight = m * STANDARD_GRAVITY;
    for (mount, share) in settled.iter().zip([2.0 / 7.0, 5.0 / 7.0]) {
        let (anchor, expected) = (
            mount.anchor(),
            mount.at + Vec3::new(0.0, 0.0, share * weight / k),
        );
        assert_close("anchor", anchor.as_slice(), expected.as_slice(), 0.0, 3e-8);
    }
}

/// Derived: metal pucks a thousand times as stiff as any rubber, drawn at rest, carry a quarter
/// of the weight each and do not move. Their places are told to 1e-16 m, which such a mount feels
/// as micronewtons.
#[test]
fn metal_pucks() {
    let puck = linear("puck", [2e11, 2e11, 4e11]);
    let m = 187.0;
    let mass = bedplate::model::mass::MassProperties::new(
        m,
        Vec3::new(-0.237, 0.0, 0.15),
        bedplate::spatial::Mat3::identity() * 12.0,
    )
    .unwrap();
    let drawn = [
        [-0.13, 0.27, 0.06],
        [-0.13, -0.27, 0.06],
        [-0.78, 0.0, -0.04],
    ]
    .map(|at| plain_mount("puck", Vec3::from(at), &puck));
    let settled = settled_mounts(&mass, &drawn).unwrap();
    let body = Supported::new(mass, settled).unwrap();
    let rest = solve_equilibrium(&body, &Loading::weight(m), None).unwrap();
    assert_close("rests", rest.displacement.as_slice(), &[0.0; 3], 0.0, 1e-12);
    let lift: f64 = rest.mounts.iter().map(|m| m.force_on_powertrain.z).sum();
    assert_close("lift", &[lift], &[m * STANDARD_GRAVITY], 1e-9, 0.0);
}

/// Drawn at rest beside the line of its only two eyes: no such rest exists.
#[test]
fn a_rest_that_cannot_be_is_refused() {
    let eye = linear("eye", [2e6; 3]);
    let mounts = [0.35, -0.35].map(|x| plain_mount("eye", Vec3::new(x, 0.2, -0.4), &eye));
    let failure = settled_mounts(&body_of(120.0, [4.0, 6.0, 7.0]), &mounts).unwrap_err();
    assert!(
        matches!(failure, StaticsFailure::Unsupported(_)),
        "{failure:?}"
    );
    let failure = settled_mounts(&body_of(120.0, [4.0, 6.0, 7.0]), &[]).unwrap_err();
    assert!(matches!(&failure, StaticsFailure::Unsupported(motions) if motions.len() == 6));
}
