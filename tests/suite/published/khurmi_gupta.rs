//! R. S. Khurmi, J. K. Gupta, Theory of Machines, chapter 22: balancing of reciprocating masses.
//!
//! Label: from memory, recomputed from the stated data.

use bedplate::drive::balance::unbalance;
use std::f64::consts::{PI, SQRT_2};

use crate::analytic::balance::layout;
use crate::kit::assert_close;

fn speed(rpm: f64) -> f64 {
    rpm * PI / 30.0
}

/// Two cylinders at 90 deg on one pin: 11.5 kg each, crank 75 mm, rod 300 mm, 500 rpm.
#[test]
fn a_right_angled_twin_leaves_a_turning_first_and_an_836_newton_second_order() {
    let twin = layout(&[(0.0, -45.0, 0.0), (0.0, 45.0, 0.0)]);
    let force = 11.5 * 0.075 * speed(500.0).powi(2);
    let first = unbalance(&twin, 1).force;
    assert_close(
        "first",
        &[first.with.norm(), first.against.norm()],
        &[1.0, 0.0],
        0.0,
        1e-14,
    );
    let second = unbalance(&twin, 2).force;
    assert_close("vectors", &[second.largest()], &[SQRT_2], 1e-14, 0.0);
    let largest = force * 0.25 * second.largest();
    assert_close("second", &[largest], &[836.0], 0.0, 0.05);
}

/// Two cylinders at 60 deg on one pin: 1.5 kg each, stroke 100 mm, 1800 rpm. The book rounds the speed.
#[test]
fn a_sixty_degree_twin_pulls_three_times_as_hard_upright_as_across() {
    let twin = layout(&[(0.0, -30.0, 0.0), (0.0, 30.0, 0.0)]);
    let force = 1.5 * 0.05 * speed(1800.0).powi(2);
    let first = unbalance(&twin, 1).force;
    let found = [force * first.largest(), force * first.smallest()];
    assert_close("first", &found, &[3998.0, 1332.6], 3e-4, 0.0);
    let [upright, across] = first.along_axes();
    assert_close(
        "shares",
        &[upright.norm(), across.norm()],
        &[1.5, 0.5],
        1e-14,
        0.0,
    );
}
