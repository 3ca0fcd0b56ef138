//! Largest answer of one mass on a spring to a pulse of its base.

use std::f64::consts::PI;

use super::oscillator::{Oscillator, State};
use super::pulse::{Pulse, Shape};

/// Samples in the shorter of period and pulse; a peak between two is found by narrowing.
const SAMPLES: f64 = 48.0;
/// Periods of the oscillator in one pulse above which the mass simply follows its base.
const MOST_PERIODS: f64 = 1e4;
/// Peaks of the samples this close below the largest may in truth be the largest.
const NEARLY: f64 = 0.99;

/// Largest answer, during the pulse or after it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Answer {
    /// Largest magnitude of the acceleration of the mass \[m/s²\].
    pub acceleration: f64,
    /// Largest magnitude of its displacement relative to the base \[m\].
    pub stroke: f64,
}

/// State of an oscillator at rest before the base accelerates by `pulse` \[m/s²\], at `time` \[s\].
#[must_use]
pub fn state_at(oscillator: &Oscillator, pulse: &Pulse, time: f64) -> State {
    let mut state = State::default();
    let mut rest = time.max(0.0);
    for piece in pulse.pieces() {
        let within = rest.min(piece.duration);
        state = oscillator.forced(state, &piece, within);
        rest -= within;
    }
    oscillator.free(state, rest)
}

/// Largest answer of an oscillator to a pulse of base acceleration \[m/s²\].
///
/// `None` when more than 1e4 periods fit in the pulse: the mass then follows the base.
///
/// # Equation
///   largest of |a(t)| and |z(t)| over the pulse and half a swing after it,
///   each instant exact by `Oscillator::forced`
///
/// # Source
/// Derived: after the pulse a free vibration only shrinks, so its first peak is its largest.
#[must_use]
pub fn largest_answer(oscillator: &Oscillator, pulse: &Pulse) -> Option<Answer> {
    let (period, duration) = (1.0 / oscillator.frequency_hz(), pulse.duration());
    if duration > MOST_PERIODS * period {
        return None;
    }
    let half_swing = PI / oscillator.damped_rate();
    // Damping so high that half a swing lasts longer has ended the motion by then.
    let after = duration + half_swing.min(4.0 * period);
    let fine = period.min(duration) / SAMPLES;
    let windows = [(0.0, duration, fine), (duration, after, period / SAMPLES)];
    let most = |value: &dyn Fn(State) -> f64| {
        let at = |time: f64| value(state_at(oscillator, pulse, time)).abs();
        windows
            .iter()
            .map(|&(from, to, step)| largest(&at, from, to, step))
            .fold(0.0, f64::max)
    };
    Some(Answer {
        acceleration: most(&|state| oscillator.acceleration_of_mass(state)),
        stroke: most(&|state| state.displacement),
    })
}

/// Largest value of a function between two times, sampled and then narrowed down.
fn largest(at: &dyn Fn(f64) -> f64, from: f64, to: f64, step: f64) -> f64 {
    // Both ends stand twice, so that a peak beside an end has a sample on either side.
    let mut samples = vec![(from, at(from))];
    let mut place = 0.0;
    loop {
        let time = (from + place * step).min(to);
        samples.push((time, at(time)));
        if time >= to {
            samples.push((time, at(time)));
            break;
        }
        place += 1.0;
    }
    let best = samples
        .iter()
        .fold(0.0_f64, |most, (_, value)| most.max(*value));
    let mut most = best;
    for around in samples.windows(3) {
        if let [(left, low), (_, middle), (right, high)] = around
            && middle >= low
            && middle >= high
            && *middle >= NEARLY * best
        {
            most = most.max(narrowed(at, *left, *right));
        }
    }
    most
}

/// Largest value between two times that hold one peak, by golden section.
fn narrowed(at: &dyn Fn(f64) -> f64, mut from: f64, mut to: f64) -> f64 {
    let golden = (5.0_f64.sqrt() - 1.0) / 2.0;
    let mut most = 0.0_f64;
    for _ in 0..40 {
        let (left, right) = (to - golden * (to - from), from + golden * (to - from));
        let (low, high) = (at(left), at(right));
        most = most.max(low).max(high);
        if low > high {
            to = right;
        } else {
            from = left;
        }
    }
    most
}

/// Amplitude of the vibration that a pulse leaves behind, over the peak of the pulse; no damping.
///
/// # Equation
///   half sine    4 R cos(πR)/(1 − 4R²)        versed sine  sin(πR)/(1 − R²)
///   rectangle    2 sin(πR)                    triangle     4 sin²(πR/2)/(πR)
///
///   R  natural frequency times duration of the pulse
///
/// # Range
/// No damping, R ≥ 0.
///
/// # Source
/// Derived: ω times the magnitude of the Fourier transform of the pulse at ω.
#[must_use]
pub fn left_behind(shape: Shape, periods: f64) -> f64 {
    let r = periods;
    let found = match shape {
        Shape::HalfSine => TWICE_PI * r / (1.0 + 2.0 * r) * sinc(PI * (0.5 - r)),
        Shape::VersedSine => PI * r / (1.0 + r) * versed_factor(r),
        Shape::Rectangle => 2.0 * (PI * r).sin(),
        Shape::Triangle => PI * r * sinc(PI * r / 2.0).powi(2),
    };
    found.abs()
}

const TWICE_PI: f64 = 2.0 * PI;

/// sin(πR)/(πR (1 − R)), which is finite at 0 and at 1.
fn versed_factor(r: f64) -> f64 {
    if r < 0.5 {
        sinc(PI * r) / (1.0 - r)
    } else {
        sinc(PI * (1.0 - r)) / r
    }
}

/// sin(x)/x.
fn sinc(x: f64) -> f64 {
    if x.abs() < 1e-8 { 1.0 } else { x.sin() / x }
}

/// Largest acceleration of an undamped mass over the peak of a half-sine base acceleration.
///
/// # Equation
///   R < 1/2:  4 R cos(πR)/(1 − 4R²), after the pulse
///   else:     2R/(2R − 1) sin(2πk/(2R + 1)), the largest for whole k from 1, during the pulse
///
///   R  natural frequency times duration of the pulse
///
/// # Range
/// No damping, R > 0. The largest of all is 1.768 at R = 0.81.
///
/// # Source
/// Derived: the response during the pulse stands still where cos(πt/τ) = cos(2πRt/τ). C. M.
/// Harris (ed.), Shock and Vibration Handbook, chapter on pulses by R. S. Ayre, gives 1.77 for
/// the largest (from memory).
#[must_use]
pub fn half_sine_answer(periods: f64) -> f64 {
    let r = periods;
    if r < 0.5 {
        return left_behind(Shape::HalfSine, r);
    }
    // The sine is largest where its angle is nearest to a quarter turn.
    let near = ((2.0 * r + 1.0) / 4.0).floor();
    let during = |k: f64| {
        if k <= 1.0 {
            // sin(2π/(2R+1)) = sin(π(2R−1)/(2R+1)), so that R = 1/2 needs no division by zero.
            let x = PI * (2.0 * r - 1.0) / (2.0 * r + 1.0);
            TWICE_PI * r / (2.0 * r + 1.0) * sinc(x)
        } else {
            2.0 * r / (2.0 * r - 1.0) * (TWICE_PI * k / (2.0 * r + 1.0)).sin()
        }
    };
    during(near)
        .max(during(near + 1.0))
        .max(left_behind(Shape::HalfSine, r))
}

/// Largest acceleration of an undamped mass over that of a base that jumps for a while.
///
/// # Equation
///   R < 1/2:  2 sin(πR), after the pulse;   else 2
///
/// # Range
/// No damping, R > 0.
///
/// # Source
/// Derived. The same from memory: C. M. Harris (ed.), Shock and Vibration Handbook, chapter on
/// pulses by R. S. Ayre.
#[must_use]
pub fn rectangle_answer(periods: f64) -> f64 {
    if periods < 0.5 {
        left_behind(Shape::Rectangle, periods)
    } else {
        2.0
    }
}

/// Largest acceleration of an undamped mass after a pulse so short that its shape does not matter \[m/s²\].
///
/// # Equation
///   a = 2π f Δv
///
///   Δv  area of the pulse \[m/s\]
///
/// # Range
/// Duration below a tenth of the period: within 1 % for a half sine, 2 % for a rectangle.
///
/// # Source
/// Derived: the mass stands while the base has already gained the speed.
#[must_use]
pub fn short_pulse_answer(frequency_hz: f64, velocity_step: f64) -> f64 {
    TWICE_PI * frequency_hz * velocity_step.abs()
}

/// Largest deflection of a spring onto which a mass falls \[m\].
///
/// # Equation
///   x = d (1 + S),   S = √(1 + 2h/d)
///
///   d  deflection of the spring at rest under the mass \[m\]
///   h  free fall before it touches                     \[m\]
///
/// The spring then pushes with 1 + S times the weight; the mass is thrown back with S times gravity.
///
/// # Range
/// Linear spring, no damping, d > 0, h ≥ 0. No fall at all still gives twice the rest deflection.
///
/// # Source
/// Derived: m g (h + x) = k x²/2.
#[must_use]
pub fn drop_deflection(at_rest: f64, fall: f64) -> f64 {
    at_rest * (1.0 + (1.0 + 2.0 * fall / at_rest).sqrt())
}
