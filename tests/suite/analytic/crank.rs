//! Slider-crank: coefficients of the exact mechanism, their series, bounds of the first terms.

use approx::assert_relative_eq;
use bedplate::drive::crank::{HIGHEST, SliderCrank};

use crate::kit::assert_close;
use crate::kit::fourier::{amplitude, derivative};

/// Computed independently: Fourier sums of the exact mechanism in another language.
#[test]
fn coefficients_of_two_usual_ratios() {
    for (ratio, pull, torque) in [
        (
            0.25,
            [0.254025, -0.0040981, 7.438e-5],
            [0.0635063, -0.500130, -0.192056, -0.016129, 0.0025923],
        ),
        (
            1.0 / 3.5,
            [0.291780, -0.0062105, 1.4872e-4],
            [0.0729449, -0.500227, -0.221164, -0.0212766, 0.0039436],
        ),
    ] {
        let found = SliderCrank::new(ratio).unwrap().coefficients();
        assert_relative_eq!(found.pull[1], 1.0, epsilon = 1e-14);
        let even = [found.pull[2], found.pull[4], found.pull[6]];
        assert_close(("pull", ratio), &even, &pull, 1e-4, 6e-7);
        assert_close(("torque", ratio), &found.torque[1..6], &torque, 2e-5, 6e-7);
        let odd = [found.pull[3], found.pull[5], found.pull[0]];
        assert_close(("none", ratio), &odd, &[0.0; 3], 0.0, 1e-15);
    }
}

/// Derived: the root expanded by the binomial series; what is cut off is of the order λ⁷ and λ⁶.
#[test]
fn coefficients_follow_their_series_in_the_ratio() {
    for ratio in [0.05, 0.1, 0.2, 0.3] {
        let found = SliderCrank::new(ratio).unwrap().coefficients();
        let l = |power: i32| ratio.powi(power);
        assert_close(
            ("pull", ratio),
            &[found.pull[2], found.pull[4], found.pull[6]],
            &[
                l(1) + l(3) / 4.0 + 15.0 * l(5) / 128.0,
                -(l(3) / 4.0 + 3.0 * l(5) / 16.0),
                9.0 * l(5) / 128.0 + 45.0 * l(7) / 512.0,
            ],
            0.0,
            0.3 * l(7),
        );
        assert_close(
            ("torque", ratio),
            &found.torque[1..6],
            &[
                l(1) / 4.0 + l(3) / 16.0 + 15.0 * l(5) / 512.0,
                -(0.5 + l(4) / 32.0),
                -(3.0 * l(1) / 4.0 + 9.0 * l(3) / 32.0 + 81.0 * l(5) / 512.0),
                -(l(2) / 4.0 + l(4) / 8.0),
                5.0 * l(3) / 32.0 + 75.0 * l(5) / 512.0,
            ],
            0.0,
            0.3 * l(6),
        );
    }
}

/// Cross-checked: the pin height of the mechanism, differentiated through its spectrum.
#[test]
fn pull_and_torque_are_derivatives_of_the_height_at_any_ratio() {
    for ratio in [0.1, 0.3, 0.6, 0.85] {
        let crank = SliderCrank::new(ratio).unwrap();
        let points = 128;
        let angle = |at: usize| std::f64::consts::TAU * at as f64 / points as f64;
        let height: Vec<f64> = (0..points).map(|at| crank.height(angle(at))).collect();
        let (rise, bend) = (derivative(&height, 1), derivative(&height, 2));
        let torque: Vec<f64> = rise.iter().zip(&bend).map(|(a, b)| -a * b).collect();
        let found = crank.coefficients();
        for order in 0..=HIGHEST {
            let what = (ratio, order);
            let pull = amplitude(&bend, order);
            assert_close(
                what,
                &[-pull.re, pull.im],
                &[found.pull[order], 0.0],
                0.0,
                1e-10,
            );
            let torque = amplitude(&torque, order);
            assert_close(
                what,
                &[torque.re, -torque.im],
                &[0.0, found.torque[order]],
                0.0,
                1e-10,
            );
        }
        let rises: Vec<f64> = (0..points).map(|at| crank.rise(angle(at))).collect();
        assert_close(ratio, &rises, &rise, 0.0, 1e-10);
        let pulls: Vec<f64> = (0..points).map(|at| -crank.pull(angle(at))).collect();
        assert_close(ratio, &pulls, &bend, 0.0, 1e-9);
    }
}

/// Derived: at the dead centres the rod is in line, a = r ω² (1 ± λ).
#[test]
fn pull_at_the_dead_centres() {
    let crank = SliderCrank::new(0.3).unwrap();
    assert_relative_eq!(crank.pull(0.0), 1.3, epsilon = 1e-15);
    assert_relative_eq!(crank.pull(std::f64::consts::PI), -0.7, epsilon = 1e-15);
}

#[test]
fn a_rod_that_cannot_turn_over_is_refused() {
    for ratio in [0.0, -0.3, 0.86, 1.0, f64::NAN, f64::INFINITY] {
        assert!(SliderCrank::new(ratio).is_none(), "{ratio}");
    }
}
