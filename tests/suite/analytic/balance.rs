//! Free forces and moments of usual and of arbitrary layouts.

use bedplate::drive::balance::{Unbalance, unbalance};
use bedplate::drive::crank::SliderCrank;
use bedplate::model::cylinder::Cylinder;
use proptest::prelude::*;
use std::f64::consts::{SQRT_2, TAU};

use crate::kit::assert_close;
use crate::kit::fourier::{amplitude, derivative};

/// Cylinders from pin, bank \[deg\] and place.
pub(crate) fn layout(cylinders: &[(f64, f64, f64)]) -> Vec<Cylinder> {
    let of = |&(pin, bank, place): &(f64, f64, f64)| Cylinder {
        pin: pin.to_radians(),
        bank: bank.to_radians(),
        place,
    };
    cylinders.iter().map(of).collect()
}

/// Upright cylinders one pitch of 1 apart.
pub(crate) fn in_line(pins: &[f64]) -> Vec<Cylinder> {
    let middle = (pins.len() as f64 - 1.0) / 2.0;
    let places = pins.iter().enumerate();
    let all: Vec<_> = places
        .map(|(at, pin)| (*pin, 0.0, at as f64 - middle))
        .collect();
    layout(&all)
}

/// Two banks at 90 deg, two rods on each pin, pins one pitch of 1 apart.
fn vee_90(pins: &[f64]) -> Vec<Cylinder> {
    in_line(pins)
        .iter()
        .flat_map(|upright| {
            [-45.0_f64, 45.0].map(|bank| Cylinder {
                bank: bank.to_radians(),
                ..*upright
            })
        })
        .collect()
}

/// Six opposed cylinders, banks in turn, one pitch of 1 apart.
fn boxer_6() -> Vec<Cylinder> {
    let mut all = in_line(&[0.0, 180.0, 120.0, 300.0, 240.0, 60.0]);
    for (at, cylinder) in all.iter_mut().enumerate() {
        cylinder.bank = if at % 2 == 0 { 90.0_f64 } else { -90.0 }.to_radians();
    }
    all
}

/// Computed independently from the vector sum; rows of the in-line engines, the six and
/// the vees also in the usual handbook table of engine balance (from memory).
#[test]
fn largest_free_forces_and_moments_of_usual_layouts() {
    let l3 = in_line(&[0.0, 120.0, 240.0]);
    let l4 = in_line(&[0.0, 180.0, 180.0, 0.0]);
    let l4_cross = in_line(&[0.0, 90.0, 270.0, 180.0]);
    let l6 = in_line(&[0.0, 120.0, 240.0, 240.0, 120.0, 0.0]);
    let v6 = vee_90(&[0.0, 120.0, 240.0]);
    let v8_cross = vee_90(&[0.0, 90.0, 270.0, 180.0]);
    let v8_flat = vee_90(&[0.0, 180.0, 180.0, 0.0]);
    for (name, cylinders, [f1, f2, m1, m2]) in [
        ("L3", l3, [0.0, 0.0, 1.732, 1.732]),
        ("L4", l4, [0.0, 4.0, 0.0, 0.0]),
        ("L4 cross-plane", l4_cross, [0.0, 0.0, 3.162, 0.0]),
        ("L6", l6, [0.0; 4]),
        ("V6", v6, [0.0, 0.0, 1.732, 2.449]),
        ("V8 cross-plane", v8_cross, [0.0, 0.0, 3.162, 0.0]),
        ("V8 flat-plane", v8_flat, [0.0, 5.657, 0.0, 0.0]),
        ("boxer 6", boxer_6(), [0.0; 4]),
    ] {
        let (first, second) = (unbalance(&cylinders, 1), unbalance(&cylinders, 2));
        let found = [&first, &second].map(|order| order.force.largest());
        assert_close(name, &found, &[f1, f2], 0.0, 5e-4);
        let found = [&first, &second].map(|order| order.moment.largest());
        assert_close(name, &found, &[m1, m2], 0.0, 5e-4);
    }
}

/// Computed independently from the same sum.
#[test]
fn moments_split_in_the_part_with_and_the_part_against_the_crank() {
    let split = |Unbalance { moment, .. }: Unbalance| [moment.with.norm(), moment.against.norm()];
    for (name, cylinders, first, second) in [
        (
            "L3",
            in_line(&[0.0, 120.0, 240.0]),
            [0.866, 0.866],
            [0.866, 0.866],
        ),
        (
            "V6",
            vee_90(&[0.0, 120.0, 240.0]),
            [1.732, 0.0],
            [1.225, 1.225],
        ),
        (
            "V8",
            vee_90(&[0.0, 90.0, 270.0, 180.0]),
            [3.162, 0.0],
            [0.0, 0.0],
        ),
    ] {
        assert_close(
            (name, 1),
            &split(unbalance(&cylinders, 1)),
            &first,
            0.0,
            5e-4,
        );
        assert_close(
            (name, 2),
            &split(unbalance(&cylinders, 2)),
            &second,
            0.0,
            5e-4,
        );
    }
}

/// Derived: the second order of a flat-plane vee at 90 deg cancels upright and adds sideways.
#[test]
fn a_flat_plane_vee_shakes_sideways() {
    let second = unbalance(&vee_90(&[0.0, 180.0, 180.0, 0.0]), 2);
    let [upright, sideways] = second.force.along_axes();
    assert_close("upright", &[upright.norm()], &[0.0], 0.0, 1e-14);
    assert_close("sideways", &[sideways.norm()], &[4.0 * SQRT_2], 1e-14, 0.0);
}

/// Derived: rods at 120 deg on one pin, cos k(α − b) along b summed over the star.
#[test]
fn a_star_of_three_cylinders_turns_half_as_much_again_as_one() {
    let star = layout(&[(0.0, 0.0, 0.0), (0.0, 120.0, 0.0), (0.0, 240.0, 0.0)]);
    let force = |order| unbalance(&star, order).force;
    assert_close(
        "with and against",
        &[
            force(1).with.norm(),
            force(1).against.norm(),
            force(2).with.norm(),
            force(2).against.norm(),
        ],
        &[1.5, 0.0, 0.0, 1.5],
        0.0,
        1e-14,
    );
}

/// Derived: one upright cylinder whose pin has turned by α pulls along cos kα, its moment
/// x e × F points a quarter turn on.
#[test]
fn signs_of_force_and_moment_of_one_cylinder() {
    let one = layout(&[(0.0, 0.0, 0.2)]);
    let left = unbalance(&one, 1);
    let [upright, across] = left.force.along_axes();
    assert_close(
        "force",
        &[upright.re, upright.im, across.norm()],
        &[1.0, 0.0, 0.0],
        0.0,
        1e-15,
    );
    let [upright, across] = left.moment.along_axes();
    assert_close(
        "moment",
        &[upright.norm(), across.re, across.im],
        &[0.0, 0.2, 0.0],
        0.0,
        1e-15,
    );
}

/// Samples of a turn.
const POINTS: usize = 96;

proptest! {
    /// Cross-checked: pins run round a circle, pistons follow along their cylinders at the length of
    /// the rod, and what their accelerations sum up to is taken apart in orders.
    #[test]
    fn any_layout_is_the_sum_of_its_cylinders_in_time(
        cylinders in prop::collection::vec((-180.0..180.0_f64, -180.0..180.0_f64, -1.0..1.0_f64), 1..9),
        ratio in 0.15..0.5_f64,
    ) {
        let cylinders = layout(&cylinders);
        let first = cylinders[0];
        let (mut force, mut moment) = (vec![[0.0; 2]; POINTS], vec![[0.0; 2]; POINTS]);
        for cylinder in &cylinders {
            let (bank_sin, bank_cos) = cylinder.bank.sin_cos();
            let travel: Vec<f64> = (0..POINTS).map(|at| {
                // The mark of the crank stands where the first pin points along the first cylinder at 0.
                let turned = TAU * at as f64 / POINTS as f64 + first.bank - first.pin;
                let (pin_y, pin_x) = (turned + cylinder.pin).sin_cos();
                let along = pin_x * bank_cos + pin_y * bank_sin;
                along + (ratio.powi(-2) - 1.0 + along * along).sqrt()
            }).collect();
            for (at, acceleration) in derivative(&travel, 2).iter().enumerate() {
                let pull = [-acceleration * bank_cos, -acceleration * bank_sin];
                for axis in 0..2 {
                    force[at][axis] += pull[axis];
                }
                // x e × F with e along the third axis.
                moment[at][0] -= cylinder.place * pull[1];
                moment[at][1] += cylinder.place * pull[0];
            }
        }
        let pull = SliderCrank::new(ratio).unwrap().coefficients().pull;
        for (order, pull) in pull.iter().enumerate().take(9).skip(1) {
            let left = unbalance(&cylinders, order);
            for (ours, theirs) in [(left.force, &force), (left.moment, &moment)] {
                for (axis, ours) in ours.along_axes().into_iter().enumerate() {
                    let samples: Vec<f64> = theirs.iter().map(|vector| vector[axis]).collect();
                    let off = ours * *pull - amplitude(&samples, order);
                    prop_assert!(off.norm() < 1e-6, "order {order}, axis {axis}: {off}");
                }
            }
        }
    }
}
