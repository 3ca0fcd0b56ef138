//! Exercises on the balance of in-line and radial engines in textbooks of theory of machines
//! whose titles are not known any more: chapter 12, illustration 8, and two exercises.
//!
//! Label: statements published, source incomplete; values recomputed from the stated data.

use bedplate::drive::balance::unbalance;
use std::f64::consts::PI;

use crate::analytic::balance::{in_line, layout};
use crate::kit::assert_close;

fn speed(rpm: f64) -> f64 {
    rpm * PI / 30.0
}

/// Four in line, pins 0, 180, 270, 90 deg, 1.5 kg, crank 60 mm, rod 240 mm, 1800 rpm, pitch 150 mm.
///
/// The book rounds 0.01909 to 0.019 kg m² before it multiplies: 675 N m for 678.
#[test]
fn couples_of_a_crank_in_two_planes() {
    let pitch = 0.15;
    let engine = in_line(&[0.0, 180.0, 270.0, 90.0]);
    let force = 1.5 * 0.06 * speed(1800.0).powi(2);
    let first = unbalance(&engine, 1);
    let second = unbalance(&engine, 2);
    let couple = force * pitch * first.moment.largest();
    assert_close("first", &[couple], &[675.0], 6e-3, 0.0);
    let couple = force * 0.25 * pitch * second.moment.largest();
    assert_close("second", &[couple], &[479.5], 1e-3, 0.0);
    let forces = [first.force.largest(), second.force.largest()];
    assert_close("forces", &forces, &[0.0; 2], 0.0, 1e-14);
}

/// Four in line, cranks 0, 180, 240, 60 deg, 100 kg, crank 150 mm, rod 450 mm, 1200 rpm.
///
/// The exercise states the second order with crank 1 at the top; the largest over the turn is twice that.
#[test]
fn a_second_order_at_one_crank_angle_is_not_the_largest() {
    let engine = in_line(&[0.0, 180.0, 240.0, 60.0]);
    let force = 100.0 * 0.15 * speed(1200.0).powi(2) / 3.0;
    let second = unbalance(&engine, 2).force;
    let [upright, across] = second.along_axes();
    assert_close("at the top", &[force * upright.re], &[78.96e3], 1e-4, 0.0);
    assert_close(
        "largest",
        &[force * second.largest()],
        &[157.9e3],
        2e-4,
        0.0,
    );
    assert_close("upright only", &[across.norm()], &[0.0], 0.0, 1e-14);
}

/// Three cylinders in a star, 1 kg, crank 60 mm, rod 240 mm, 2400 rpm.
#[test]
fn forces_of_a_star() {
    let star = layout(&[(0.0, 0.0, 0.0), (0.0, 120.0, 0.0), (0.0, 240.0, 0.0)]);
    let force = 0.06 * speed(2400.0).powi(2);
    let found = [1, 2].map(|order| unbalance(&star, order).force.largest());
    assert_close(
        "first and second",
        &[force * found[0], force * 0.25 * found[1]],
        &[5684.9, 1421.2],
        1e-4,
        0.0,
    );
}
