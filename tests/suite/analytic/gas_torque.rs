//! Gas torque of one cylinder: closed forms, and a constructed cycle computed independently.

use bedplate::drive::crank::SliderCrank;
use bedplate::drive::gas::{AMBIENT, EXPONENT, HALF_ORDERS, WorkingCycle, gas_torque};
use std::f64::consts::PI;

use crate::kit::assert_close;
use crate::kit::fourier::amplitude;

const CYCLE: WorkingCycle = WorkingCycle {
    four_stroke: true,
    swept: 5e-4,
    compression: 10.0,
    effective: Some(5.0 * AMBIENT),
    inlet: AMBIENT,
};

fn crank() -> SliderCrank {
    SliderCrank::new(0.28).unwrap()
}

/// Computed independently in another language: compression ratio 10, exponent 1.32, λ 0.28,
/// inlet pressure a fifth of the mean effective pressure. No measured engine.
#[test]
fn amplitudes_of_a_constructed_cycle_over_its_mean() {
    let found = gas_torque(&crank(), &CYCLE);
    let ratios: Vec<f64> = found[1..13]
        .iter()
        .map(|order| order.norm() / found[0].re)
        .collect();
    let expected = [
        2.343, 2.789, 2.819, 2.497, 2.078, 1.705, 1.380, 1.093, 0.860, 0.689, 0.557, 0.444,
    ];
    assert_close("orders 0.5 to 6", &ratios, &expected, 0.0, 6e-4);
}

/// Derived: mean torque times the angle of a cycle is the work, mean pressure times swept volume.
#[test]
fn the_mean_is_the_work_of_a_cycle() {
    for (four_stroke, angle) in [(true, 4.0 * PI), (false, 2.0 * PI)] {
        for inlet in [40e3, 100e3, 180e3] {
            let cycle = WorkingCycle {
                four_stroke,
                inlet,
                ..CYCLE
            };
            let mean = gas_torque(&crank(), &cycle)[0];
            assert_close(
                "mean",
                &[mean.re, mean.im],
                &[250.0 / angle, 0.0],
                1e-9,
                1e-12,
            );
        }
    }
}

/// Derived: a cylinder that only breathes at the pressure around it takes no work, and what
/// compression takes expansion gives back.
#[test]
fn a_dead_cylinder_takes_no_work_on_the_mean() {
    let dead = WorkingCycle {
        effective: None,
        ..CYCLE
    };
    let torque = gas_torque(&crank(), &dead);
    assert_close("mean", &[torque[0].re], &[0.0], 0.0, 1e-9);
    assert!(torque[1].norm() > 1.0, "{}", torque[1]);
}

/// Cross-checked: the same cycle sampled in time and taken apart; the throttle makes every stroke count.
#[test]
fn orders_are_those_of_the_torque_in_time() {
    let (crank, points) = (crank(), 2880);
    for four_stroke in [true, false] {
        let cycle = WorkingCycle {
            four_stroke,
            inlet: 40e3,
            effective: Some(150e3),
            ..CYCLE
        };
        let strokes = if four_stroke { 4 } else { 2 };
        let volume =
            |angle: f64| 5e-4 * (1.0 / 9.0 + (crank.height(0.0) - crank.height(angle)) / 2.0);
        let largest = volume(PI);
        // The pressure at the top that gives the work, from the sum of what the other strokes give.
        let step = PI * f64::from(strokes) / f64::from(points);
        let pressure = |angle: f64, top: f64| {
            let stroke = (angle / PI) as u32;
            if stroke == 0 {
                top * (volume(0.0) / volume(angle)).powf(EXPONENT)
            } else if stroke + 1 == strokes {
                40e3 * (largest / volume(angle)).powf(EXPONENT)
            } else if stroke == 1 {
                AMBIENT
            } else {
                40e3
            }
        };
        let sampled = |top: f64| -> Vec<f64> {
            (0..points)
                .map(|at| {
                    let angle = (f64::from(at) + 0.5) * step;
                    let growth = -5e-4 * crank.rise(angle) / 2.0;
                    (pressure(angle, top) - AMBIENT) * growth
                })
                .collect()
        };
        let work = |top: f64| sampled(top).iter().sum::<f64>() * step;
        let top = (150e3 * 5e-4 - work(0.0)) / (work(1.0) - work(0.0));
        let samples = sampled(top);
        let found = gas_torque(&crank, &cycle);
        let whole = if four_stroke { 1 } else { 2 };
        for half in (whole..=HALF_ORDERS).step_by(whole) {
            let period = half / whole;
            // Samples stand amid their steps.
            let shift = nalgebra::Complex::from_polar(1.0, -(half as f64) / 2.0 * step / 2.0);
            let off = found[half] - amplitude(&samples, period) * shift;
            assert!(
                off.norm() < 2e-3 * found[1.max(whole)].norm(),
                "{half}: {off}"
            );
        }
        if !four_stroke {
            assert!(found[1].norm() < 1e-15 && found[3].norm() < 1e-15);
        }
    }
}
