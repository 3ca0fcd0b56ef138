//! Rotational rates of isolators, at turns of any size.

use bedplate::rigid::equilibrium::solve_equilibrium;
use bedplate::rigid::loading::Loading;
use bedplate::rigid::modes::solve_modes;
use bedplate::rigid::settled::settled_mounts;
use bedplate::rigid::supported::Supported;
use bedplate::rigid::turning::Twist;
use bedplate::spatial::{Mat3, STANDARD_GRAVITY, Vec3};
use nalgebra::UnitQuaternion;

use super::rest_and_torque::body_of;
use crate::kit::{assert_close, linear, plain_mount};

fn uneven() -> Mat3 {
    let root = Mat3::new(30.0, 5.0, -4.0, 2.0, 25.0, 6.0, -3.0, 4.0, 18.0);
    root * root.transpose()
}

/// Moment against the energy and rate against the moment, by differences along
/// turns from the left, below and above the size at which series take over.
#[test]
fn moment_and_rate_are_derivatives_of_the_energy() {
    let rates = uneven();
    for size in [0.0, 1e-4, 9.9e-3, 1.01e-2, 0.3, 1.2, 2.9] {
        let turn = UnitQuaternion::from_scaled_axis(Vec3::new(0.48, -0.6, 0.64) * size);
        let here = Twist::of_rates(&rates, &turn);
        let h = 1e-5;
        for axis in 0..3 {
            let mut step = Vec3::zeros();
            step[axis] = h;
            let there = Twist::of_rates(&rates, &(UnitQuaternion::from_scaled_axis(step) * turn));
            let before = Twist::of_rates(&rates, &(UnitQuaternion::from_scaled_axis(-step) * turn));
            let slope = (before.energy - there.energy) / (2.0 * h);
            assert_close("moment", &[slope], &[here.moment[axis]], 1e-8, 1e-5);
            let slope = (before.moment - there.moment) / (2.0 * h);
            let column = (here.material + here.geometric).column(axis).into_owned();
            assert_close("rate", slope.as_slice(), column.as_slice(), 1e-7, 2e-4);
        }
    }
}

/// Derived: about one axis the moment is rate times turn, and the rate stays.
#[test]
fn about_one_axis_it_is_a_plain_spring() {
    let rates = Mat3::from_diagonal(&Vec3::new(100.0, 200.0, 300.0));
    let twist = Twist::of_rates(&rates, &UnitQuaternion::from_scaled_axis(Vec3::y() * 0.7));
    assert_close(
        "moment",
        twist.moment.as_slice(),
        &[0.0, -140.0, 0.0],
        1e-12,
        1e-12,
    );
    let rate = twist.material + twist.geometric;
    assert_close("rate", &[rate[(1, 1)]], &[200.0], 1e-12, 0.0);
}

/// Derived: one bush in the centre of gravity holds a body against every
/// motion; a moment turns it by M/k, and f = √(ρ k/J)/2π with the dynamic ratio ρ.
#[test]
fn one_bush_holds_a_body() {
    let mut bush = linear("bush", [4e5, 4e5, 2e5]);
    bush.rotational = Vec3::new(900.0, 900.0, 400.0);
    bush.dynamics = bedplate::model::isolator::Dynamics::uniform(1.3, 0.1);
    let mounts = vec![plain_mount("only", Vec3::zeros(), &bush)];
    let body = Supported::new(body_of(20.0, [0.5, 0.8, 1.1]), mounts).unwrap();
    let loading = Loading {
        moment: Vec3::new(0.0, 45.0, 0.0),
        ..Loading::weight(20.0)
    };
    let found = solve_equilibrium(&body, &loading, None).unwrap();
    let turn = found.rotation.scaled_axis();
    assert_close("turn", turn.as_slice(), &[0.0, 0.05, 0.0], 1e-9, 1e-12);
    let moment = found.mounts[0].moment_on_powertrain;
    assert_close("moment", moment.as_slice(), &[0.0, -45.0, 0.0], 1e-9, 1e-9);
    let rest = solve_equilibrium(&body, &Loading::weight(20.0), None).unwrap();
    let modes = solve_modes(&body, &rest).unwrap().modes;
    let hertz = |k: f64, m: f64| (1.3 * k / m).sqrt() / std::f64::consts::TAU;
    let mut expected = [
        hertz(4e5, 20.0),
        hertz(4e5, 20.0),
        hertz(2e5, 20.0),
        hertz(900.0, 0.5),
        hertz(900.0, 0.8),
        hertz(400.0, 1.1),
    ];
    expected.sort_by(f64::total_cmp);
    let frequencies: Vec<f64> = modes.iter().map(|mode| mode.frequency_hz).collect();
    assert_close("frequencies", &frequencies, &expected, 1e-9, 0.0);
    for mode in &modes {
        assert_close("damping", &[mode.damping_ratio], &[0.05], 1e-9, 0.0);
    }
}

/// Derived: a bush off the centre of gravity carries the weight with its
/// rotational rate, turned back by m g a/k when it is drawn at rest (small
/// angle; the arm shortens by 1 - cos of it).
#[test]
fn drawn_at_rest_a_bush_is_twisted() {
    let mut bush = linear("bush", [8e6; 3]);
    bush.rotational = Vec3::repeat(5e4);
    let mass = body_of(20.0, [0.5, 0.8, 1.1]);
    let drawn = [plain_mount("only", Vec3::new(0.2, 0.0, 0.0), &bush)];
    let settled = settled_mounts(&mass, &drawn).unwrap();
    let turn = settled[0].untwisted.scaled_axis();
    let expected = 20.0 * STANDARD_GRAVITY * 0.2 / 5e4;
    assert_close("untwisted", &[turn.y], &[expected], 1e-6, 0.0);
    let body = Supported::new(mass, settled).unwrap();
    let rest = solve_equilibrium(&body, &Loading::weight(20.0), None).unwrap();
    assert_close("rests", &[rest.rotation.angle()], &[0.0], 0.0, 1e-11);
}
