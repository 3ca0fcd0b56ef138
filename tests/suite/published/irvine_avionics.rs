//! T. Irvine, tutorial on an isolated avionics component as a body with six
//! degrees of freedom, self-published, about 2005 to 2012.
//!
//! Label: from memory. Which dimension belongs to which axis is inferred: of 36
//! assignments only this one, up to renaming, gives all six frequencies.

use bedplate::model::mass::MassProperties;
use bedplate::rigid::equilibrium::solve_equilibrium;
use bedplate::rigid::loading::Loading;
use bedplate::rigid::modes::solve_modes;
use bedplate::rigid::supported::Supported;
use bedplate::spatial::{Mat3, Vec3};

use crate::kit::{assert_close, linear, plain_mount};

/// Newton per pound-force: 0.45359237 kg times 9.80665 m/s².
const LBF: f64 = 0.45359237 * 9.80665;
const INCH: f64 = 0.0254;

/// All four isolators lie on one side of the centre of gravity in x and in y. The
/// source rounds gravity to 386 in/s² and its frequencies to four digits.
#[test]
fn box_on_four_isolators_beside_its_centre_of_gravity() {
    let gravity = 386.0 * INCH;
    let mass = 4.28 * LBF / gravity;
    let inertia = Vec3::new(44.9, 39.9, 18.8) * (LBF * INCH * INCH / gravity);
    let mass = MassProperties::new(mass, Vec3::zeros(), Mat3::from_diagonal(&inertia)).unwrap();
    let isolator = linear("isolator", [80.0 * LBF / INCH; 3]);
    let mounts = [(6.18, 3.0), (6.18, -3.0), (2.68, 3.0), (2.68, -3.0)]
        .map(|(x, z)| plain_mount("corner", Vec3::new(x, 3.85, z) * INCH, &isolator))
        .to_vec();
    let body = Supported::new(mass, mounts).unwrap();
    let unloaded = solve_equilibrium(&body, &Loading::none(), None).unwrap();
    let modes = solve_modes(&body, &unloaded).unwrap();
    let found: Vec<f64> = modes.modes.iter().map(|m| m.frequency_hz).collect();
    let expected = [7.338, 12.02, 27.04, 27.47, 63.06, 83.19];
    assert_close("frequencies", &found, &expected, 3e-4, 0.0);
    // Derived: the third is a pure translation towards the middle of the mounts, √(4 k g/W).
    let pure = (4.0 * 80.0 * 386.0_f64 / 4.28).sqrt() / std::f64::consts::TAU;
    assert_close("pure translation", &[found[2]], &[pure], 1e-12, 0.0);
    let shape = modes.modes[2].shape;
    let turning = shape.fixed_rows::<3>(3).into_owned();
    assert_close("does not turn", turning.as_slice(), &[0.0; 3], 0.0, 1e-9);
    let towards = Vec3::new(shape.x, shape.y, shape.z).cross(&Vec3::new(4.43, 3.85, 0.0));
    assert_close("direction", towards.as_slice(), &[0.0; 3], 0.0, 1e-9);
}
