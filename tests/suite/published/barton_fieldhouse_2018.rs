//! D. C. Barton, J. D. Fieldhouse, Automotive Chassis Engineering, Springer,
//! 2018, page 209: two masses in series.
//!
//! Label: published. The source rounds inside: it prints the frequency equation
//! with 4786, the data give 4783; unrounded 7.879 and 68.71 rad/s, ratio 0.1042.

use bedplate::model::mass::MassProperties;
use bedplate::rigid::equilibrium::solve_equilibrium;
use bedplate::rigid::loading::Loading;
use bedplate::rigid::modes::{Mode, solve_modes};
use bedplate::rigid::supported::Supported;
use bedplate::spatial::{Mat3, Vec3};

use crate::kit::{assert_close, linear, plain_mount};

/// The two masses recast as bounce and pitch of one body (derived): with the upper
/// mass m₁ as its mass, m₂ l² as its pitch inertia and the lower displacement as l ry,
/// two springs k₁/2 at x = l (1 ± √(k₂/k₁)) give the same two equations, since
/// Σ k = k₁, Σ k x = k₁ l, Σ k x² = (k₁ + k₂) l².
#[test]
fn quarter_car() {
    let (m1, m2, k1, k2, l) = (317.5, 45.4, 22.0e3, 192.0e3_f64, 1.0);
    let J = Vec3::new(40.0, m2 * l * l, 50.0);
    let mass = MassProperties::new(m1, Vec3::zeros(), Mat3::from_diagonal(&J)).unwrap();
    let spring = linear("spring", [20e3, 20e3, k1 / 4.0]);
    let apart = (k2 / k1).sqrt();
    let mut mounts = Vec::new();
    for x in [l * (1.0 + apart), l * (1.0 - apart)] {
        for y in [0.5, -0.5] {
            mounts.push(plain_mount("spring", Vec3::new(x, y, 0.0), &spring));
        }
    }
    let body = Supported::new(mass, mounts).unwrap();
    let unloaded = solve_equilibrium(&body, &Loading::none(), None).unwrap();
    let modes = solve_modes(&body, &unloaded).unwrap();
    let planar: Vec<&Mode> = modes
        .modes
        .iter()
        .filter(|mode| mode.energy_share[2] + mode.energy_share[4] > 0.999_999)
        .collect();
    assert_eq!(planar.len(), 2);
    let hertz: Vec<f64> = planar.iter().map(|mode| mode.frequency_hz).collect();
    let omega: Vec<f64> = hertz.iter().map(|f| f * std::f64::consts::TAU).collect();
    assert_close("printed", &omega, &[7.87, 68.73], 1.5e-3, 0.0);
    assert_close("printed", &hertz, &[1.25, 10.9], 5e-3, 0.0);
    // Derived from the unrounded data.
    let (sum, product) = ((k1 + k2) / m2 + k1 / m1, k1 * k2 / (m1 * m2));
    let root = (sum * sum - 4.0 * product).sqrt();
    let exact = [(sum - root) / 2.0, (sum + root) / 2.0].map(f64::sqrt);
    assert_close("unrounded", &omega, &exact, 1e-10, 0.0);
    let ratio = l * planar[0].shape[4] / planar[0].shape[2];
    assert_close("lower over upper", &[ratio], &[0.104], 5e-3, 0.0);
}
