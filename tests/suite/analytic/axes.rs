//! Lines, centres and mobilities of the axes module.

use bedplate::numeric::NumericError;
use bedplate::rigid::axes::{
    about, coupling, distance_of_lines, distance_to_line, elastic_axis, point_mobility,
    principal_elastic_axes, stiffness_centre, torque_roll_axis,
};
use bedplate::spatial::{Mat3, Mat6, Vec3, Vec6, add_spring, stack};

use crate::kit::assert_close;

/// Derived: x axis and the line y = 2 along z through (5, 2, 7): 2 apart; parallel lines 3-4-5.
#[test]
fn distances_of_lines() {
    let origin = Vec3::zeros();
    let p = Vec3::new(5.0, 2.0, 7.0);
    let square = distance_of_lines((&origin, &Vec3::x()), (&p, &Vec3::z()));
    assert_close("square", &[square], &[2.0], 1e-15, 0.0);
    let q = Vec3::new(9.0, 3.0, 4.0);
    let parallel = distance_of_lines((&origin, &Vec3::x()), (&q, &-Vec3::x()));
    assert_close("parallel", &[parallel], &[5.0], 1e-15, 0.0);
    assert_close(
        "point",
        &[distance_to_line(&q, &origin, &Vec3::x())],
        &[5.0],
        1e-15,
        0.0,
    );
}

/// Derived: for J = \[\[2, −1, 0\], \[−1, 2, 0\], \[0, 0, 1\]\] and a torque about x, J⁻¹ x = (2, 1, 0)/3.
#[test]
fn torque_roll_axis_of_a_body_with_a_product_of_inertia() {
    let J = Mat3::new(2.0, -1.0, 0.0, -1.0, 2.0, 0.0, 0.0, 0.0, 1.0);
    let axis = torque_roll_axis(&J, &Vec3::x()).unwrap();
    let expected = [2.0 / 5.0_f64.sqrt(), 1.0 / 5.0_f64.sqrt(), 0.0];
    assert_close("axis", axis.as_slice(), &expected, 0.0, 1e-15);
    let none = torque_roll_axis(&J, &Vec3::zeros()).unwrap_err();
    assert_eq!(none, NumericError::Singular);
}

/// Derived: a free body obeys Newton and Euler; here the answer is integrated by hand for a
/// force at q, and the mobility is symmetric between its two points.
#[test]
fn point_mobility_is_newton_and_euler() {
    let J = Mat3::new(3.0, -0.4, 0.2, -0.4, 5.0, 0.3, 0.2, 0.3, 4.0);
    let (m, p, q) = (50.0, Vec3::new(0.4, -0.2, 0.3), Vec3::new(-0.5, 0.1, 0.6));
    let Y = point_mobility(m, &J, &p, &q).unwrap();
    let F = Vec3::new(10.0, -20.0, 5.0);
    let spin = bedplate::numeric::solve3(&J, &q.cross(&F)).unwrap();
    let expected = F / m + spin.cross(&p);
    assert_close(
        "motion",
        (Y * F).as_slice(),
        expected.as_slice(),
        1e-13,
        0.0,
    );
    let back = point_mobility(m, &J, &q, &p).unwrap().transpose();
    assert_close("reciprocal", Y.as_slice(), back.as_slice(), 1e-13, 1e-16);
}

fn ugly() -> Mat6 {
    let mut K = Mat6::zeros();
    for (i, arm) in [
        Vec3::new(0.4, 0.3, -0.2),
        Vec3::new(-0.6, 0.1, 0.3),
        Vec3::new(0.1, -0.5, 0.2),
    ]
    .iter()
    .enumerate()
    {
        let root = Mat3::new(3.0, 0.2, 0.1, -0.4, 5.0, 0.3, 0.6, -0.2, 4.0);
        let k = root * root.transpose() * (1.0 + 0.7 * i as f64);
        add_spring(&mut K, &k, arm);
    }
    K
}

/// Derived: the same points and lines whatever the reference point, and the
/// defining property of each.
#[test]
fn axes_and_centres_do_not_depend_on_the_reference_point() {
    let K = ugly();
    let shift = Vec3::new(0.3, -0.7, 0.2);
    let moved = about(&K, &shift);
    let here = stiffness_centre(&K, &Vec3::zeros()).unwrap();
    let there = stiffness_centre(&moved, &shift).unwrap();
    assert_close("centre", here.as_slice(), there.as_slice(), 1e-12, 1e-13);
    let block = about(&K, &here).fixed_view::<3, 3>(0, 3).into_owned();
    let skew = block - block.transpose();
    assert_close("symmetric", skew.as_slice(), &[0.0; 9], 0.0, 1e-12);
    for along in [Vec3::x(), Vec3::new(0.3, -0.5, 0.8)] {
        let a = elastic_axis(&K, &Vec3::zeros(), &along).unwrap();
        let b = elastic_axis(&moved, &shift, &along).unwrap();
        let off = distance_to_line(&b.through, &a.through, &a.direction);
        assert_close("line", &[off, b.pitch], &[0.0, a.pitch], 0.0, 1e-13);
        // A force along the axis with its own small couple moves the body by pure translation.
        let F = a.direction;
        let wrench = stack(&F, &(a.through.cross(&F) + F * a.pitch));
        let motion = bedplate::numeric::solve6(&K, &wrench).unwrap();
        let turned = motion.fixed_rows::<3>(3).into_owned();
        assert_close("no turn", turned.as_slice(), &[0.0; 3], 0.0, 1e-14);
    }
    let axes = principal_elastic_axes(&K, &Vec3::zeros()).unwrap();
    let square = axes[0].direction.dot(&axes[1].direction);
    assert_close("square", &[square], &[0.0], 0.0, 1e-13);
}

/// Derived: moving the reference point leaves the energy of a motion as it is.
#[test]
fn energy_does_not_depend_on_the_reference_point() {
    let K = ugly();
    let p = Vec3::new(0.3, -0.7, 0.2);
    let (dc, dth) = (Vec3::new(1.0, 2.0, -1.5), Vec3::new(0.4, -0.3, 0.8));
    let at_origin = stack(&dc, &dth);
    let at_p = stack(&(dc + dth.cross(&p)), &dth);
    let energy = |K: &Mat6, q: &Vec6| q.dot(&(K * q)) / 2.0;
    let found = energy(&about(&K, &p), &at_p);
    assert_close("energy", &[found], &[energy(&K, &at_origin)], 1e-13, 0.0);
    // K_zz = 9, K_yy = 4, K_yz = 3: coupling 3/√36 = 1/2.
    let mut small = Mat6::identity();
    small[(1, 1)] = 4.0;
    small[(2, 2)] = 9.0;
    small[(1, 2)] = -3.0;
    assert_close(
        "coupling",
        &[coupling(&small, 1, 2).unwrap()],
        &[0.5],
        1e-15,
        0.0,
    );
    assert_eq!(coupling(&small, 1, 6), None);
    assert_eq!(coupling(&Mat6::zeros(), 0, 1), None);
}
