//! T. Dehaeze, open technical report on decoupling of parallel manipulators with
//! the singular value decomposition and the Jacobian, version of 28 April 2021:
//! examples of diagonal stiffness matrices. Unit springs and lengths.
//!
//! Label: published.

use bedplate::rigid::axes::{
    about, compliance_centre, elastic_axis, elastic_centre, stiffness_centre,
};
use bedplate::spatial::{Mat6, Vec3, add_spring};

use crate::kit::assert_close;

/// Axial springs as a 6x6 stiffness about the origin.
fn stiffness(k: &[f64], direction: &[[f64; 3]], position: &[[f64; 3]]) -> Mat6 {
    let mut stiffness = Mat6::zeros();
    for ((k, n), r) in k.iter().zip(direction).zip(position) {
        let n = Vec3::from(*n);
        add_spring(&mut stiffness, &(n * n.transpose() * *k), &Vec3::from(*r));
    }
    stiffness
}

/// Rows and columns x, y, rz.
fn planar(k: &Mat6) -> Vec<f64> {
    let places = [0, 1, 5];
    let pairs = places.into_iter().flat_map(|i| places.map(|j| (i, j)));
    pairs.map(|pair| k[pair]).collect()
}

/// Planar example 1. The source lists 2 for the third stiffness, but its own
/// printed block diag(5, 2) needs 1 (with 2 the centre would be at x = −2/3): one input corrected.
#[test]
fn planar_example_1() {
    let k = stiffness(
        &[5.0, 1.0, 1.0],
        &[[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 1.0, 0.0]],
        &[[-1.0, 0.5, 0.0], [-2.0, -1.0, 0.0], [0.0, -1.0, 0.0]],
    );
    let centre = stiffness_centre(&k, &Vec3::zeros()).unwrap();
    assert_close("centre", &centre.as_slice()[..2], &[-1.0, 0.5], 1e-14, 0.0);
    let there = planar(&about(&k, &centre));
    let expected = [5.0, 0.0, 0.0, 0.0, 2.0, 0.0, 0.0, 0.0, 2.0];
    assert_close("stiffness", &there, &expected, 0.0, 1e-14);
}

/// Planar example 2; the printed centre and block are rounded to five digits.
#[test]
fn planar_example_2() {
    let k = stiffness(
        &[1.0, 2.0, 1.0, 1.0],
        &[
            [1.0, 0.0, 0.0],
            [0.0, 1.0, 0.0],
            [-1.0, 0.0, 0.0],
            [0.0, 1.0, 0.0],
        ],
        &[
            [-1.0, 0.2, 0.0],
            [-1.0, -0.2, 0.0],
            [1.0, 0.2, 0.0],
            [1.0, 0.2, 0.0],
        ],
    );
    let centre = stiffness_centre(&k, &Vec3::zeros()).unwrap();
    assert_close(
        "centre",
        &centre.as_slice()[..2],
        &[-0.33333, 0.2],
        0.0,
        5e-6,
    );
    let there = planar(&about(&k, &centre));
    let expected = [2.0, 0.0, 0.0, 0.0, 3.0, 0.0, 0.0, 0.0, 2.6667];
    assert_close("stiffness", &there, &expected, 0.0, 5e-5);
}

/// Spatial example 1: twelve axial springs.
#[test]
fn spatial_example_1() {
    let x = [-1.0, 0.0, 0.0];
    let y = [0.0, -1.0, 0.0];
    let z = [0.0, 0.0, 1.0];
    let k = stiffness(
        &[2.0, 2.0, 1.0, 1.0, 3.0, 3.0, 1.0, 1.0, 1.0, 1.0, 2.0, 2.0],
        &[x, x, x, x, z, z, z, z, y, y, y, y],
        &[
            [1.0, -3.0, 2.0],
            [1.0, -1.0, 0.0],
            [1.0, -1.0, 2.0],
            [1.0, -3.0, 0.0],
            [1.0, -3.0, 0.0],
            [-1.0, -1.0, 0.0],
            [1.0, -1.0, 0.0],
            [-1.0, -3.0, 0.0],
            [1.0, -1.0, 0.0],
            [-1.0, -1.0, 2.0],
            [-1.0, -1.0, 0.0],
            [1.0, -1.0, 2.0],
        ],
    );
    let expected = [0.0, -2.0, 1.0];
    let origin = Vec3::zeros();
    let centre = stiffness_centre(&k, &origin).unwrap();
    assert_close("stiffness centre", centre.as_slice(), &expected, 0.0, 1e-14);
    let centre = compliance_centre(&k, &origin).unwrap();
    assert_close(
        "compliance centre",
        centre.as_slice(),
        &expected,
        0.0,
        1e-13,
    );
    let found = elastic_centre(&k, &origin, 1e-12).unwrap();
    assert_close(
        "elastic centre",
        found.unwrap().as_slice(),
        &expected,
        0.0,
        1e-14,
    );
    // Derived: the three elastic axes meet in the centre with zero pitch.
    for along in [Vec3::x(), Vec3::y(), Vec3::z()] {
        let axis = elastic_axis(&k, &origin, &along).unwrap();
        let off = (centre - axis.through).cross(&axis.direction);
        assert_close(along, off.as_slice(), &[0.0; 3], 0.0, 1e-13);
        assert_close(along, &[axis.pitch], &[0.0], 0.0, 1e-14);
    }
    let there = about(&k, &centre);
    let expected = Mat6::from_row_slice(&[
        6.0, 0.0, 0.0, 0.0, 0.0, 0.0, //
        0.0, 6.0, 0.0, 0.0, 0.0, 0.0, //
        0.0, 0.0, 8.0, 0.0, 0.0, 0.0, //
        0.0, 0.0, 0.0, 14.0, 4.0, -2.0, //
        0.0, 0.0, 0.0, 4.0, 14.0, 2.0, //
        0.0, 0.0, 0.0, -2.0, 2.0, 12.0,
    ]);
    assert_close(
        "stiffness",
        there.as_slice(),
        expected.as_slice(),
        0.0,
        1e-12,
    );
    // Derived: principal values of the rotation block.
    let turning = there.fixed_view::<3, 3>(3, 3).into_owned();
    let principal = bedplate::numeric::symmetric_eigen3(&turning)
        .unwrap()
        .values;
    assert_close(
        "principal",
        principal.as_slice(),
        &[8.0, 14.0, 18.0],
        1e-12,
        0.0,
    );
}
