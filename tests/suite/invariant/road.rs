//! What holds for every pulse, every oscillator and every frequency.

use bedplate::road::bump::{Bump, Profile};
use bedplate::road::oscillator::{Oscillator, State};
use bedplate::road::pulse::{Piece, Pulse, Shape};
use bedplate::road::ride::{weighted_acceleration, weighted_acceleration_of_density, weighting};
use bedplate::road::shock::{largest_answer, state_at};
use nalgebra::Complex;
use proptest::prelude::*;

use crate::kit::assert_close;

fn shape() -> impl Strategy<Value = Shape> {
    prop::sample::select(vec![
        Shape::HalfSine,
        Shape::VersedSine,
        Shape::Rectangle,
        Shape::Triangle,
    ])
}

proptest! {
    /// The weighting neither jumps nor turns at once, and is that of a real system.
    #[test]
    fn the_weighting_is_continuous(frequency in 0.05..500.0_f64) {
        let (here, beside) = (weighting(frequency), weighting(frequency * (1.0 + 1e-6)));
        prop_assert!((here - beside).norm() < 1e-5 * here.norm());
        prop_assert!(here.norm() < 1.07 && here.norm() > 0.0);
        let (one, two) = (weighted_acceleration(&[(frequency, 0.3)]), weighted_acceleration(&[(frequency, 0.6)]));
        assert_close("proportional", &[two], &[2.0 * one], 1e-12, 0.0);
        // A density of a narrow stretch is a line.
        let width = 1e-5 * frequency;
        let stretch = [(frequency - width, 4.0), (frequency + width, 4.0)];
        let line = weighted_acceleration(&[(frequency, (8.0 * width).sqrt())]);
        assert_close("density", &[weighted_acceleration_of_density(&stretch)], &[line], 1e-6, 0.0);
    }

    /// One step is two steps, whatever the force within and wherever it is cut.
    #[test]
    fn a_step_can_be_cut_anywhere(
        frequency in 0.1..50.0_f64, damping in 0.0..0.99_f64, cut in 0.0..1.0_f64,
        rate in 0.0..300.0_f64, numbers in prop::array::uniform6(-2.0..2.0_f64),
    ) {
        let [constant, slope, re, im, displacement, velocity] = numbers;
        let oscillator = Oscillator::new(frequency, damping).unwrap();
        let (long, from) = (1.5 / frequency, State { displacement, velocity });
        let piece = |constant, harmonic| Piece {
            duration: long, constant, slope, harmonic, rate,
        };
        let harmonic = Complex::new(re, im);
        let whole = oscillator.forced(from, &piece(constant, harmonic), long);
        let first = cut * long;
        let middle = oscillator.forced(from, &piece(constant, harmonic), first);
        let later = piece(constant + slope * first, harmonic * Complex::cis(rate * first));
        let parts = oscillator.forced(middle, &later, long - first);
        let scale = 1.0 + 1.0 / frequency.powi(2) + velocity.abs() / frequency;
        assert_close("displacement", &[parts.displacement], &[whole.displacement], 0.0, 1e-11 * scale);
        assert_close("velocity", &[parts.velocity], &[whole.velocity], 0.0, 1e-10 * scale * frequency.max(1.0));
    }

    /// The motion obeys its own equation: rates by differences, the mass pulled by spring and damper.
    #[test]
    fn the_motion_obeys_its_equation(
        shape in shape(), periods in 0.1..5.0_f64, damping in 0.0..0.9_f64, share in 0.02..0.98_f64,
    ) {
        // The triangle has its kink in the middle.
        prop_assume!((share - 0.5).abs() > 1e-3);
        let oscillator = Oscillator::new(periods, damping).unwrap();
        let pulse = Pulse::new(shape, 3.0, 1.0).unwrap();
        let step = 1e-5;
        let at = |time| state_at(&oscillator, &pulse, time);
        let (before, here, after) = (at(share - step), at(share), at(share + step));
        let rate = (after.displacement - before.displacement) / (2.0 * step);
        assert_close("rate", &[rate], &[here.velocity], 1e-5, 1e-7);
        let relative = (after.velocity - before.velocity) / (2.0 * step);
        let [base, ..] = pulse.at(share);
        assert_close("newton", &[relative + base], &[oscillator.acceleration_of_mass(here)], 1e-4, 1e-4);
    }

    /// Twice the pulse twice the answer, either way round; twice as slow the same acceleration;
    /// and no pulse more than doubles.
    #[test]
    fn answers_scale(shape in shape(), periods in 0.05..6.0_f64, damping in 0.0..0.9_f64) {
        let answer = |peak: f64, duration: f64| {
            let oscillator = Oscillator::new(periods / duration, damping).unwrap();
            largest_answer(&oscillator, &Pulse::new(shape, peak, duration).unwrap()).unwrap()
        };
        let one = answer(1.0, 1.0);
        assert_close("scaled", &[answer(-2.0, 1.0).acceleration], &[2.0 * one.acceleration], 1e-9, 0.0);
        let slow = answer(1.0, 3.0);
        assert_close("slow", &[slow.acceleration, slow.stroke], &[one.acceleration, 9.0 * one.stroke], 1e-7, 0.0);
        prop_assert!(one.acceleration <= 2.0 + 1e-9);
    }

    /// Speed and acceleration on a bump are the rates of its height.
    #[test]
    fn motion_on_a_bump_is_consistent(
        versed: bool, height in -0.2..0.2_f64, length in 0.1..3.0_f64, speed in 1.0..30.0_f64,
        share in 0.01..0.99_f64,
    ) {
        let profile = if versed { Profile::VersedSine } else { Profile::HalfSine };
        let crossing = Bump::new(profile, height, length).unwrap().crossed_at(speed).unwrap();
        let long = crossing.duration();
        let (time, step) = (share * long, 1e-5 * long);
        let (before, here, after) = (crossing.motion(time - step), crossing.motion(time), crossing.motion(time + step));
        let rate = (after.height - before.height) / (2.0 * step);
        assert_close("velocity", &[rate], &[here.velocity], 1e-6, 1e-8 * height.abs() / long + 1e-12);
        let second = (after.velocity - before.velocity) / (2.0 * step);
        assert_close("acceleration", &[second], &[here.acceleration], 1e-6, 1e-6 * height.abs() / long.powi(2) + 1e-12);
        prop_assert!(here.acceleration.abs() <= crossing.largest_acceleration() * (1.0 + 1e-12));
    }
}
