//! One mount: a nonlinear isolator behind a flexible bracket.

use std::sync::Arc;

use bedplate::model::isolator::{Dynamics, Isolator, Law, LawPoint, Vibration, stop::AxisStops};
use bedplate::rigid::mount_response::HeldMount;
use bedplate::spatial::{Mat3, Vec3, axes_from_w_u};

use crate::kit::{assert_close, linear, plain_mount};

/// f = k x + c x³ along each axis.
#[derive(Debug)]
struct Cubic {
    k: f64,
    c: f64,
}

impl Law for Cubic {
    fn at(&self, x: &Vec3) -> LawPoint {
        let force = x.map(|x| self.k * x + self.c * x.powi(3));
        let energy = x.map(|x| self.k * x * x / 2.0 + self.c * x.powi(4) / 4.0);
        LawPoint {
            force,
            tangent: Mat3::from_diagonal(&x.map(|x| self.k + 3.0 * self.c * x * x)),
            energy: energy.sum(),
        }
    }
}

/// Derived: x + C f(x) = d solved to all digits by bisection, f = 200e3 x + 4e9 x³, C = 1e-6 m/N.
/// By hand at d = 1 mm: f(0.8314 mm) = 166.28 + 2.30 = 168.58 N, 0.8314 + 0.16858 = 1.0000 mm.
#[test]
fn cubic_isolator_behind_a_bracket() {
    let law = Cubic { k: 200e3, c: 4e9 };
    let isolator = Isolator::new("cubic", "test", Arc::new(law));
    let mut mount = plain_mount("only", Vec3::zeros(), &isolator);
    mount.compliance = Mat3::identity() * 1e-6;
    for (d, x, f, k, energy) in [
        (
            1e-3,
            0.8314175942e-3,
            168.5824058,
            172387.5807,
            0.08381336914,
        ),
        (5e-3, 3.9597143396e-3, 1040.28566, 279617.8209, 2.354872522),
        (
            10e-3,
            7.1267573764e-3,
            2873.242624,
            447357.4993,
            11.78652089,
        ),
    ] {
        for axis in 0..3 {
            let mut whole = Vec3::zeros();
            whole[axis] = -d;
            let found = mount.respond(&whole).unwrap();
            let numbers = [
                found.isolator_deflection[axis],
                found.force[axis],
                found.rate[(axis, axis)],
                found.energy,
            ];
            assert_close(d, &numbers, &[-x, -f, k, energy], 1e-9, 0.0);
        }
    }
}

/// Derived: rates in series, 1/(1/k + C): 330e3 N/mm·1000 behind 40 and 25 kN/mm gives 323 070.145 N/m;
/// with the loss factor on the rubber alone, the series of complex rates by complex division.
#[test]
fn loss_belongs_to_the_rubber_and_not_to_the_bracket() {
    let mut isolator = linear("rubber", [95e3, 120e3, 330e3]);
    isolator.dynamics = Dynamics::uniform(1.35, 0.2);
    let mut mount = plain_mount("only", Vec3::zeros(), &isolator);
    let c = 1.0 / 4e6;
    mount.compliance = Mat3::identity() * c;
    let state = mount.respond(&Vec3::new(1e-3, 2e-3, -1e-3)).unwrap();
    let (storage, loss) = mount
        .dynamic_rate(&state.isolator, &Vibration::OF_MODES)
        .unwrap();
    for (axis, k) in [95e3, 120e3, 330e3].into_iter().enumerate() {
        // k*/(1 + C k*) with k* = a + i b: numerator times the conjugate of the denominator.
        let (a, b) = (1.35 * k, 1.35 * k * 0.2);
        let square = (1.0 + c * a).powi(2) + (c * b).powi(2);
        let expected = [(a + c * (a * a + b * b)) / square, b / square];
        let found = [storage[(axis, axis)], loss[(axis, axis)]];
        assert_close(axis, &found, &expected, 1e-13, 0.0);
        assert!(found[1] / found[0] < 0.2);
    }
}

/// Derived: a stop in parallel raises the static tangent but carries neither dynamic ratio nor loss.
#[test]
fn a_touched_stop_has_neither_dynamic_ratio_nor_loss() {
    let mut isolator = linear("rubber", [1e5, 1e5, 2e5]);
    isolator.dynamics = Dynamics::uniform(1.5, 0.1);
    isolator.stops[2] = AxisStops {
        lower: Some(-4e-3),
        upper: None,
        rate: 3e6,
        blend: 0.5e-3,
    };
    let mount = plain_mount("only", Vec3::zeros(), &isolator);
    let state = mount.respond(&Vec3::new(0.0, 0.0, -5e-3)).unwrap();
    assert_close("static", &[state.rate[(2, 2)]], &[3.2e6], 1e-14, 0.0);
    // 2e5·5e-3 + 3e6·(1e-3 − 0.25e-3) = 1000 + 2250
    assert_close("force", &[state.force.z], &[-3250.0], 1e-12, 0.0);
    let (storage, loss) = mount
        .dynamic_rate(&state.isolator, &Vibration::OF_MODES)
        .unwrap();
    let found = [storage[(2, 2)], loss[(2, 2)]];
    assert_close("dynamic", &found, &[3.3e6, 3e4], 1e-12, 0.0);
}

/// Independent route: the split by bisection on one axis, the tangent and energy by
/// central differences, for a full compliance matrix that couples the axes.
#[test]
fn coupled_compliance_keeps_tangent_and_energy_consistent() {
    let law = Cubic { k: 150e3, c: 6e9 };
    let mut isolator = Isolator::new("cubic", "test", Arc::new(law));
    isolator.stops[0] = AxisStops {
        lower: Some(-2e-3),
        upper: Some(1e-3),
        rate: 4e6,
        blend: 0.5e-3,
    };
    let root = Mat3::new(8e-4, 1e-4, 0.0, -3e-4, 5e-4, 2e-4, 1e-4, -1e-4, 9e-4);
    let mount = HeldMount {
        axes: axes_from_w_u(&Vec3::new(0.3, -0.2, 0.9), &Vec3::x()).unwrap(),
        compliance: root * root.transpose(),
        ..plain_mount("only", Vec3::zeros(), &isolator)
    };
    let d = Vec3::new(4e-3, -3e-3, 5e-3);
    let here = mount.respond(&d).unwrap();
    assert!(here.isolator.on_stop[0]);
    let back = here.isolator_deflection + mount.compliance * here.force;
    assert_close("split", back.as_slice(), d.as_slice(), 1e-13, 0.0);
    let h = 1e-7;
    for axis in 0..3 {
        let mut step = Vec3::zeros();
        step[axis] = h;
        let there = mount.respond(&(d + step)).unwrap();
        let before = mount.respond(&(d - step)).unwrap();
        let slope = (there.force - before.force) / (2.0 * h);
        let column = here.rate.column(axis).into_owned();
        assert_close("tangent", slope.as_slice(), column.as_slice(), 1e-6, 1.0);
        let slope = (there.energy - before.energy) / (2.0 * h);
        assert_close("force", &[slope], &[here.force[axis]], 1e-7, 0.0);
    }
}

#[test]
fn mounts_with_impossible_numbers_are_refused() {
    let isolator = linear("any", [1e5; 3]);
    let good = plain_mount("only", Vec3::zeros(), &isolator);
    assert!(good.check().is_ok());
    let broken = [
        HeldMount {
            at: Vec3::new(f64::NAN, 0.0, 0.0),
            ..good
        },
        HeldMount {
            preset: Vec3::new(f64::INFINITY, 0.0, 0.0),
            ..good
        },
        HeldMount {
            axes: Mat3::identity() * 1.01,
            ..good
        },
        HeldMount {
            compliance: Mat3::identity() * -1e-9,
            ..good
        },
        HeldMount {
            compliance: Mat3::new(1.0, 0.1, 0.0, 0.0, 1.0, 0.0, 0.0, 0.0, 1.0),
            ..good
        },
    ];
    for mount in broken {
        assert!(mount.check().is_err(), "{mount:?}");
    }
}
