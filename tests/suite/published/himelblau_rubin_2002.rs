//! H. Himelblau, S. Rubin, Vibration of a resiliently supported rigid body,
//! chapter 3 of Harris' Shock and Vibration Handbook, 5th edition,
//! McGraw-Hill, 2002: four identical mounts with two planes of symmetry.
//!
//! Label: closed form from memory (equations near 3.36 to 3.40), body data our own.

use bedplate::model::mass::MassProperties;
use bedplate::rigid::equilibrium::solve_equilibrium;
use bedplate::rigid::loading::Loading;
use bedplate::rigid::modes::solve_modes;
use bedplate::rigid::supported::Supported;
use bedplate::spatial::{Mat3, Vec3};

use crate::kit::{assert_close, linear, plain_mount};

/// Pair of coupled frequencies [Hz] of a translation and the rotation with it.
fn coupled(f_z: f64, side_over_up: f64, below: f64, spacing: f64, gyration2: f64) -> [f64; 2] {
    let R = side_over_up * (1.0 + below * below / gyration2) + spacing * spacing / gyration2;
    let S = side_over_up * spacing * spacing / gyration2;
    let root = (R * R - 4.0 * S).sqrt();
    [(R - root) / 2.0, (R + root) / 2.0].map(|squared| f_z * squared.sqrt())
}

#[test]
fn four_mounts_below_the_centre_of_gravity() {
    let (m, J) = (220.0, Vec3::new(9.0, 18.0, 16.0));
    let (ax, ay, az) = (0.42, 0.24, 0.18);
    let [kx, ky, kz] = [140.0e3, 110.0e3, 260.0e3];
    let turn = std::f64::consts::TAU;
    let f_z = f64::sqrt(4.0 * kz / m) / turn;
    let f_rz = f64::sqrt(4.0 * (kx * ay * ay + ky * ax * ax) / J.z) / turn;
    let mut closed = vec![f_z, f_rz];
    closed.extend(coupled(f_z, kx / kz, az, ax, J.y / m));
    closed.extend(coupled(f_z, ky / kz, az, ay, J.x / m));
    closed.sort_by(f64::total_cmp);
    // The same numbers from an independent assembly of the six equations.
    let expected = [6.22133, 7.56363, 10.94272, 13.18875, 14.85521, 17.05778];
    assert_close("closed form", &closed, &expected, 2e-5, 0.0);

    let isolator = linear("isolator", [kx, ky, kz]);
    let mounts = [(ax, ay), (ax, -ay), (-ax, ay), (-ax, -ay)]
        .map(|(x, y)| plain_mount("corner", Vec3::new(x, y, -az), &isolator))
        .to_vec();
    let mass = MassProperties::new(m, Vec3::zeros(), Mat3::from_diagonal(&J)).unwrap();
    let body = Supported::new(mass, mounts).unwrap();
    let unloaded = solve_equilibrium(&body, &Loading::none(), None).unwrap();
    let modes = solve_modes(&body, &unloaded).unwrap();
    let found: Vec<f64> = modes.modes.iter().map(|mode| mode.frequency_hz).collect();
    assert_close("body on mounts", &found, &closed, 1e-11, 0.0);
}
