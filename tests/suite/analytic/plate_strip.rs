//! Strips of plate under one force.

use bedplate::strength::plate::strip::{Held, Strip, spread_width};

use crate::kit::assert_close;

fn strip(held: Held) -> Strip {
    Strip {
        span: 40e-3,
        width: 50e-3,
        thickness: 8e-3,
        held,
    }
}

/// Derived by hand, 1 kN: M 40, 10, 5 N m; w t²/6 = 533.33 mm³, so 75, 18.75, 9.375 MPa;
/// E I = 210 000 · 2133.33 N mm², stiffness 3, 48, 192 times E I/40³ = 7000 N/mm.
#[test]
fn strips_by_hand() {
    for (held, moment, stress, stiffness, collapse) in [
        (Held::OneEnd, 40.0, 75e6, 21e6, 4700.0),
        (Held::Resting, 10.0, 18.75e6, 336e6, 18_800.0),
        (Held::BothEnds, 5.0, 9.375e6, 1344e6, 37_600.0),
    ] {
        let strip = strip(held);
        // M_p = 235 · 50 · 64/4 = 188 N m, over 40, 10, 5 mm.
        let found = [
            strip.moment(1e3),
            strip.stress(1e3),
            strip.stiffness(210e9),
            strip.plastic_load(235e6),
            strip.first_yield(235e6),
        ];
        let yields = collapse / 1.5;
        assert_close(
            held,
            &found,
            &[moment, stress, stiffness, collapse, yields],
            1e-9,
            0.0,
        );
    }
}

/// Cross-checked: deflection by summing M M'/(E I) over the strip, the clamped one with its end moments F a/8.
#[test]
fn stiffness_agrees_with_virtual_work() {
    let bending = 210e9 * 50e-3 * 8e-3_f64.powi(3) / 12.0;
    let a = 40e-3;
    for held in [Held::OneEnd, Held::Resting, Held::BothEnds] {
        let moment = |x: f64| match held {
            Held::OneEnd => x,
            Held::Resting => x.min(a - x) / 2.0,
            Held::BothEnds => x.min(a - x) / 2.0 - a / 8.0,
        };
        let slices = 4000;
        let sum: f64 = (0..slices)
            .map(|i| moment(a * (f64::from(i) + 0.5) / f64::from(slices)).powi(2))
            .sum();
        let moved = sum * a / f64::from(slices) / bending;
        assert_close(
            held,
            &[strip(held).stiffness(210e9)],
            &[1.0 / moved],
            1e-6,
            0.0,
        );
    }
}

/// By hand: head 14 mm, 20 mm from the bend: 54 mm, unless an edge is 18 mm away.
#[test]
fn width_that_bends_with_a_bolt() {
    let found = [
        spread_width(14e-3, 20e-3, 0.1),
        spread_width(14e-3, 20e-3, 18e-3),
    ];
    assert_close("width", &found, &[54e-3, 36e-3], 1e-12, 0.0);
}
