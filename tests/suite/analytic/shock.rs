//! Pulses of the base and falls, by closed forms and an independent integration.

use bedplate::road::oscillator::{Oscillator, State};
use bedplate::road::pulse::{Piece, Pulse, Shape};
use bedplate::road::shock::{
    drop_deflection, half_sine_answer, largest_answer, left_behind, rectangle_answer,
    short_pulse_answer, state_at,
};

use crate::kit::assert_close;

const SHAPES: [Shape; 4] = [
    Shape::HalfSine,
    Shape::VersedSine,
    Shape::Rectangle,
    Shape::Triangle,
];

fn unit(shape: Shape) -> Pulse {
    Pulse::new(shape, 1.0, 1.0).unwrap()
}

/// Derived, worked apart from the code: 4R cos(πR)/(1 − 4R²) at 0.1 and 0.3, 2R/(2R−1)
/// sin(2π/(2R+1)) at 0.81 and 1.2; 2 sin(0.2π).
#[test]
fn closed_forms_at_a_few_durations() {
    let found = [0.1, 0.3, 0.81, 1.2].map(half_sine_answer);
    let expected = [0.396_274, 1.102_10, 1.768_46, 1.648_84];
    assert_close("half sine", &found, &expected, 5e-6, 0.0);
    assert_close(
        "rectangle",
        &[rectangle_answer(0.2)],
        &[1.175_57],
        5e-6,
        0.0,
    );
}

/// Derived: the two branches meet at half a period, with π/2; at one period a versed sine leaves
/// π/2 too. Nothing is lost beside either.
#[test]
fn closed_forms_have_no_hole_where_they_would_divide_by_zero() {
    let pi_half = std::f64::consts::FRAC_PI_2;
    for beside in [-1e-9, -1e-13, 0.0, 1e-13, 1e-9] {
        let found = [
            half_sine_answer(0.5 + beside),
            left_behind(Shape::HalfSine, 0.5 + beside),
            left_behind(Shape::VersedSine, 1.0 + beside),
        ];
        assert_close(beside, &found, &[pi_half; 3], 1e-8, 0.0);
    }
    for shape in SHAPES {
        assert_close(shape, &[left_behind(shape, 0.0)], &[0.0], 0.0, 1e-15);
    }
}

/// Closed forms against the largest of the exact motion, also where several peaks fall into the pulse.
#[test]
fn exact_motion_meets_the_closed_forms_without_damping() {
    for periods in [
        0.02, 0.2, 0.49, 0.5, 0.51, 0.81, 1.0, 1.2, 1.9, 3.3, 7.7, 20.3,
    ] {
        let oscillator = Oscillator::new(periods, 0.0).unwrap();
        let found = [Shape::HalfSine, Shape::Rectangle].map(|shape| {
            largest_answer(&oscillator, &unit(shape))
                .unwrap()
                .acceleration
        });
        let expected = [half_sine_answer(periods), rectangle_answer(periods)];
        assert_close(periods, &found, &expected, 1e-9, 0.0);
    }
}

/// Amplitude of the free vibration after each pulse against the Fourier transform of its shape.
#[test]
fn what_a_pulse_leaves_behind() {
    for shape in SHAPES {
        for periods in [0.05, 0.4, 0.5, 0.77, 1.0, 1.3, 2.5, 6.1] {
            let oscillator = Oscillator::new(periods, 0.0).unwrap();
            let omega = std::f64::consts::TAU * periods;
            let end = state_at(&oscillator, &unit(shape), 1.0);
            let amplitude = (omega * omega * end.displacement).hypot(omega * end.velocity);
            let expected = left_behind(shape, periods);
            assert_close((shape, periods), &[amplitude], &[expected], 1e-10, 1e-12);
        }
    }
}

/// Integrated independently (Runge-Kutta of eighth order, steps to 1e-11): largest acceleration,
/// and largest stroke times ω², of half sine, versed sine, rectangle, triangle.
#[test]
fn damped_answers_to_the_four_pulses() {
    let table: [(f64, f64, [f64; 8]); 6] = [
        (
            0.3,
            0.05,
            [
                1.0264432, 1.0213153, 0.8279961, 0.8238596, 1.5070265, 1.4994977, 0.8146957,
                0.8106256,
            ],
        ),
        (
            0.3,
            0.2,
            [
                0.9048796, 0.8334701, 0.7298613, 0.6722636, 1.3293758, 1.2244668, 0.7181615,
                0.6614870,
            ],
        ),
        (
            0.81,
            0.0,
            [
                1.7684576, 1.7684576, 1.6648600, 1.6648600, 2.0, 2.0, 1.5071855, 1.5071855,
            ],
        ),
        (
            1.2,
            0.05,
            [
                1.5525710, 1.5496314, 1.5746608, 1.5708109, 1.8587581, 1.8544679, 1.3694431,
                1.3662995,
            ],
        ),
        (
            3.3,
            0.05,
            [
                1.1098594, 1.1092959, 1.0387513, 1.0385133, 1.8587581, 1.8544679, 1.1109473,
                1.1099567,
            ],
        ),
        (
            3.3,
            0.2,
            [
                1.0383361, 1.0351418, 1.0444048, 1.0407612, 1.5717400, 1.5266206, 1.0519060,
                1.0410922,
            ],
        ),
    ];
    for (periods, damping, expected) in table {
        let oscillator = Oscillator::new(periods, damping).unwrap();
        let stiffness = (std::f64::consts::TAU * periods).powi(2);
        let found: Vec<f64> = SHAPES
            .iter()
            .flat_map(|shape| {
                let answer = largest_answer(&oscillator, &unit(*shape)).unwrap();
                [answer.acceleration, answer.stroke * stiffness]
            })
            .collect();
        assert_close((periods, damping), &found, &expected, 0.0, 1e-7);
    }
}

/// Derived: a pulse a hundredth of a period long is a step of velocity, whatever its shape.
#[test]
fn a_short_pulse_is_a_step_of_velocity() {
    for shape in SHAPES {
        let pulse = Pulse::new(shape, -30.0, 1e-3).unwrap();
        let oscillator = Oscillator::new(10.0, 0.0).unwrap();
        let found = largest_answer(&oscillator, &pulse).unwrap().acceleration;
        let expected = short_pulse_answer(10.0, pulse.area());
        assert_close(shape, &[found], &[expected], 5e-4, 0.0);
    }
    // 30 m/s² for 1 ms is 0.03 m/s; a triangle half of it.
    let triangle = Pulse::new(Shape::Triangle, 30.0, 1e-3).unwrap();
    assert_close("area", &[triangle.area()], &[0.015], 1e-12, 0.0);
}

/// Derived: by energy, 2 g h more than nothing. A mass that rests 2 mm deep and falls 24 mm goes
/// 2 (1 + √25) = 12 mm deep; without a fall twice as deep as at rest.
#[test]
fn a_fall_onto_a_spring() {
    let found = [drop_deflection(2e-3, 24e-3), drop_deflection(2e-3, 0.0)];
    assert_close("depth", &found, &[12e-3, 4e-3], 1e-12, 0.0);
}

/// A straight-line history in one long step and in many short ones, and a free swing by hand:
/// after one damped period the displacement has shrunk by e^(−2πζ/√(1−ζ²)).
#[test]
fn steps_of_any_length_agree() {
    let oscillator = Oscillator::new(3.0, 0.1).unwrap();
    let corners = [0.0, 2.0, -1.0, 0.5, 0.5];
    let coarse = oscillator.history(&corners, 0.2).unwrap();
    let many: Vec<f64> = (0..=400)
        .map(|place| {
            let (corner, share) = (place / 100, f64::from(place % 100) / 100.0);
            let from = corners[corner as usize];
            let to = corners.get(corner as usize + 1).copied().unwrap_or(from);
            from + (to - from) * share
        })
        .collect();
    let fine = oscillator.history(&many, 0.002).unwrap();
    for (place, coarse) in coarse.iter().enumerate() {
        let fine = fine[place * 100];
        let pair = |state: State| [state.displacement, state.velocity];
        assert_close(place, &pair(*coarse), &pair(fine), 1e-10, 1e-13);
    }
    let period = std::f64::consts::TAU / oscillator.damped_rate();
    let from = State {
        displacement: 0.01,
        velocity: 0.0,
    };
    let after = oscillator.free(from, period);
    let shrunk = (-std::f64::consts::TAU * 0.1 / 0.99_f64.sqrt()).exp();
    assert_close(
        "shrunk",
        &[after.displacement],
        &[0.01 * shrunk],
        1e-12,
        0.0,
    );
    assert_close("turning", &[after.velocity], &[0.0], 0.0, 1e-14);
}

/// Derived: a base that goes on accelerating evenly holds the mass back by a/ω².
#[test]
fn a_steady_acceleration_ends_in_a_steady_deflection() {
    let oscillator = Oscillator::new(2.0, 0.3).unwrap();
    let end = oscillator.forced(State::default(), &Piece::line(100.0, 5.0, 0.0), 100.0);
    let expected = -5.0 / (std::f64::consts::TAU * 2.0).powi(2);
    assert_close(
        "deflection",
        &[end.displacement, end.velocity],
        &[expected, 0.0],
        1e-12,
        1e-12,
    );
    assert_close(
        "mass",
        &[oscillator.acceleration_of_mass(end)],
        &[5.0],
        1e-12,
        0.0,
    );
}

#[test]
fn what_does_not_swing_or_last_is_refused() {
    for (frequency, damping) in [
        (0.0, 0.1),
        (-1.0, 0.1),
        (f64::NAN, 0.1),
        (1.0, 1.0),
        (1.0, -0.1),
        (1.0, f64::NAN),
    ] {
        assert!(
            Oscillator::new(frequency, damping).is_none(),
            "{frequency} {damping}"
        );
    }
    for (peak, duration) in [
        (1.0, 0.0),
        (1.0, -0.1),
        (1.0, f64::NAN),
        (f64::NAN, 1.0),
        (1.0, f64::INFINITY),
    ] {
        assert!(
            Pulse::new(Shape::Triangle, peak, duration).is_none(),
            "{peak} {duration}"
        );
    }
    let fast = Oscillator::new(1.1e4, 0.1).unwrap();
    assert!(largest_answer(&fast, &unit(Shape::HalfSine)).is_none());
    assert!(fast.history(&[1.0, f64::NAN], 0.1).is_none());
    assert!(fast.history(&[1.0], 0.0).is_none());
    assert_eq!(fast.history(&[], 0.1), Some(Vec::new()));
}
