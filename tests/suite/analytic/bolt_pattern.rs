//! Bolts that share a wrench.
//!
//! Label, where a test does not name another: computed independently, as the least sum of
//! squares of bolt forces that is in equilibrium (the pseudo-inverse of the six conditions).

use bedplate::spatial::{Vec3, Wrench};
use bedplate::strength::pattern::{Pattern, Shared};

use crate::kit::assert_close;

const SKEW: [[f64; 2]; 4] = [[0.0, 0.0], [0.080, 0.010], [0.065, 0.070], [-0.020, 0.040]];
const OUTLINE: [[f64; 2]; 4] = [[-0.04, -0.02], [0.10, -0.02], [0.10, 0.09], [-0.04, 0.09]];

fn load() -> Wrench {
    Wrench {
        force: Vec3::new(1200.0, -700.0, 3000.0),
        moment: Vec3::new(90.0, -150.0, 60.0),
    }
}

fn pulls(shared: &Shared) -> Vec<f64> {
    shared.bolts.iter().map(|bolt| bolt.axial).collect()
}

#[test]
fn four_bolts_without_symmetry() {
    let pattern = Pattern::new(&SKEW).unwrap();
    assert_close("centre", &pattern.centre(), &[31.25e-3, 30e-3], 1e-12, 0.0);
    let shared = pattern.about_centre(&load());
    let expected = [
        [477.887_585, -360.299_568, -574.232_185],
        [418.591_729, 114.067_326, 1_136.834_007],
        [62.816_553, 25.123_533, 2_371.191_094],
        [240.704_138, -478.891_291, 66.207_084],
    ];
    for (bolt, expected) in shared.bolts.iter().zip(expected) {
        let found = [bolt.shear[0], bolt.shear[1], bolt.axial];
        assert_close("bolt", &found, &expected, 1e-6, 0.0);
    }
    assert_close("untaken", &shared.untaken, &[0.0; 3], 0.0, 1e-12);
}

/// Computed independently by the formula of the pivot at the edge; the worst of both is the larger pull.
#[test]
fn plate_on_its_heel() {
    let pattern = Pattern::new(&SKEW).unwrap();
    let heel = pattern.about_heel(&load(), &OUTLINE);
    let expected = [961.462_175, 1_311.188_079, 1_396.586_265, 977.728_496];
    assert_close("heel", &pulls(&heel), &expected, 1e-6, 0.0);
    let centre = pattern.about_centre(&load());
    assert_close(
        "shear",
        &heel.bolts[2].shear,
        &centre.bolts[2].shear,
        1e-12,
        0.0,
    );
    let worst = pattern.worst(&load(), &OUTLINE);
    let expected = [961.462_175, 1_311.188_079, 2_371.191_094, 977.728_496];
    assert_close("worst", &pulls(&worst), &expected, 1e-6, 0.0);
}

/// Bolts at (0, 0), (30, 40), (60, 80): of 100 N m about x they take the 80 N m across their line,
/// 100 times (0.8, −0.6) · (0.8, −0.6), by ± 800 N; (36, 48) N m along it stays.
#[test]
fn bolts_in_one_line_do_not_resist_turning_about_it() {
    let pattern = Pattern::new(&[[0.0, 0.0], [0.030, 0.040], [0.060, 0.080]]).unwrap();
    let moment = Wrench {
        force: Vec3::zeros(),
        moment: Vec3::new(100.0, 0.0, 0.0),
    };
    let shared = pattern.about_centre(&moment);
    assert_close("pulls", &pulls(&shared), &[-800.0, 0.0, 800.0], 1e-9, 1e-9);
    assert_close("untaken", &shared.untaken, &[36.0, 48.0, 0.0], 1e-9, 1e-9);
    // Derived: on its heel the plate resists about any axis.
    let worst = pattern.worst(&moment, &[[-0.01, -0.01], [0.07, 0.09]]);
    assert_close("worst", &worst.untaken, &[0.0; 3], 0.0, 1e-9);
}

/// Derived: one bolt has the forces, no twist; a moment only where the plate has a heel, 20 mm away.
#[test]
fn single_bolt() {
    let pattern = Pattern::new(&[[0.3, 0.1]]).unwrap();
    let shared = pattern.about_centre(&load());
    assert_close("pull", &pulls(&shared), &[3000.0], 1e-12, 0.0);
    assert_close(
        "shear",
        &shared.bolts[0].shear,
        &[1200.0, -700.0],
        1e-12,
        0.0,
    );
    assert_close("untaken", &shared.untaken, &[90.0, -150.0, 60.0], 1e-9, 0.0);
    let moment = Wrench {
        force: Vec3::new(0.0, 0.0, 500.0),
        moment: Vec3::new(0.0, 10.0, 3.0),
    };
    let corners = [[0.28, 0.08], [0.32, 0.08], [0.32, 0.12], [0.28, 0.12]];
    let worst = pattern.worst(&moment, &corners);
    assert_close("pull", &pulls(&worst), &[500.0 + 10.0 / 0.02], 1e-9, 0.0);
    assert_close("untaken", &worst.untaken, &[0.0, 0.0, 3.0], 0.0, 1e-9);
}

/// Derived: bolts on one spot are one bolt of several, however the spot is rounded.
#[test]
fn bolts_on_one_spot_take_no_moment() {
    let pattern = Pattern::new(&[[0.1, 0.7]; 3]).unwrap();
    let shared = pattern.about_centre(&load());
    assert_close("pulls", &pulls(&shared), &[1000.0; 3], 1e-9, 0.0);
    assert_close("untaken", &shared.untaken, &[90.0, -150.0, 60.0], 1e-9, 0.0);
    assert_eq!(Pattern::new(&[]), None);
}
