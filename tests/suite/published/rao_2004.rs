//! S. S. Rao, Mechanical Vibrations, 4th edition, 2004, chapter 5:
//! bounce and pitch of a car; chapter 3: a car on a road of sine waves.
//!
//! Label: from memory. Data give 5.859292 and 9.434089 rad/s; the source prints five digits.

use bedplate::model::mass::MassProperties;
use bedplate::rigid::equilibrium::solve_equilibrium;
use bedplate::rigid::loading::Loading;
use bedplate::rigid::modes::{Mode, solve_modes};
use bedplate::rigid::supported::Supported;
use bedplate::road::transmissibility::{Damping, transmissibility};
use bedplate::spatial::{Mat3, Vec3};

use crate::kit::{assert_close, linear, plain_mount};

/// The planar car as a body in space: springs level with the centre of gravity, in
/// pairs across, so that bounce and pitch couple with each other and with nothing else.
///
/// The source counts bounce down and pitch nose up, so its ratio x/θ is z/ry here.
#[test]
fn bounce_and_pitch_of_a_car() {
    let m = 1000.0;
    let J = Vec3::new(500.0, m * 0.9 * 0.9, 900.0);
    let mass = MassProperties::new(m, Vec3::zeros(), Mat3::from_diagonal(&J)).unwrap();
    let front = linear("front", [30e3, 30e3, 18.0e3 / 2.0]);
    let rear = linear("rear", [30e3, 30e3, 22.0e3 / 2.0]);
    let mounts = vec![
        plain_mount("front left", Vec3::new(1.0, 0.7, 0.0), &front),
        plain_mount("front right", Vec3::new(1.0, -0.7, 0.0), &front),
        plain_mount("rear left", Vec3::new(-1.5, 0.7, 0.0), &rear),
        plain_mount("rear right", Vec3::new(-1.5, -0.7, 0.0), &rear),
    ];
    let body = Supported::new(mass, mounts).unwrap();
    let unloaded = solve_equilibrium(&body, &Loading::none(), None).unwrap();
    let modes = solve_modes(&body, &unloaded).unwrap();
    let planar: Vec<&Mode> = modes
        .modes
        .iter()
        .filter(|mode| mode.energy_share[2] + mode.energy_share[4] > 0.999_999)
        .collect();
    assert_eq!(planar.len(), 2);
    let omega: Vec<f64> = planar
        .iter()
        .map(|mode| mode.frequency_hz * std::f64::consts::TAU)
        .collect();
    assert_close("frequencies", &omega, &[5.8593, 9.4341], 5e-5, 0.0);
    let ratio: Vec<f64> = planar
        .iter()
        .map(|mode| mode.shape[2] / mode.shape[4])
        .collect();
    assert_close("shapes", &ratio, &[-2.6461, 0.3061], 0.0, 5e-5);
    // Derived from the printed ratios: m X²/(m X² + I Θ²) = X²/(X² + 0.81 Θ²).
    let bounce: Vec<f64> = planar.iter().map(|mode| mode.energy_share[2]).collect();
    assert_close("bounce share", &bounce, &[0.8963, 0.1037], 0.0, 1e-4);
    assert_eq!(
        (planar[0].name.as_str(), planar[1].name.as_str()),
        ("bounce", "pitch")
    );
}

/// Problem of chapter 1: torque of an engine at 24 instants over 12 ms, taken apart in orders.
///
/// Statement from memory; amplitudes computed independently. It checks the sums
/// by which other tests of this suite take samples apart.
#[test]
fn harmonics_of_a_torque_given_at_24_instants() {
    let torque: Vec<f64> = [
        770, 810, 850, 910, 1010, 1170, 1370, 1610, 1890, 1750, 1630, 1510, 1390, 1290, 1190, 1110,
        1050, 990, 930, 890, 850, 810, 770, 750,
    ]
    .map(f64::from)
    .to_vec();
    let found = [0, 1, 2, 3].map(|order| crate::kit::fourier::amplitude(&torque, order).norm());
    assert_close(
        "orders",
        &found,
        &[1137.5, 441.335, 148.944, 65.713],
        0.0,
        6e-4,
    );
}

/// Chapter 3: a car on a road of sine waves. Printed: 5.81778 rad/s, ratio 1.100964, 0.055048 m;
/// the data give 5.81776 rad/s.
#[test]
fn a_car_on_a_sine_road() {
    let (mass, stiffness, damping) = (1200.0_f64, 400e3, 0.5);
    let (speed, wave, height) = (20.0 / 3.6, 6.0, 0.05);
    let shaken = std::f64::consts::TAU * speed / wave;
    assert_close("road", &[shaken], &[5.817_78], 5e-6, 0.0);
    let ratio = shaken / (stiffness / mass).sqrt();
    let carried = transmissibility(Damping::Ratio(damping), ratio).norm();
    assert_close(
        "ratio",
        &[carried, carried * height],
        &[1.100_964, 0.055_048],
        1e-5,
        0.0,
    );
}
