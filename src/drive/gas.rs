//! Gas torque of one cylinder at whole and half orders, from a working cycle.

use nalgebra::Complex;
use std::f64::consts::PI;

use super::crank::SliderCrank;

/// Highest order of the crank that is kept, in halves.
pub const HALF_ORDERS: usize = 24;

/// Exponent of compression and expansion.
///
/// # Source
/// Common practice: 1.25 to 1.35.
pub const EXPONENT: f64 = 1.32;

/// Pressure in the crankcase and in the exhaust \[Pa\], absolute.
///
/// # Source
/// Common practice: about one atmosphere.
pub const AMBIENT: f64 = 100e3;

/// Equal parts of a stroke over each of which is integrated.
const PARTS: usize = 16;

/// Places and weights of integration over −1 to 1.
///
/// # Source
/// Five-point Gauss-Legendre rule: M. Abramowitz, I. A. Stegun, Handbook of
/// Mathematical Functions, table 25.4 (from memory; checked by integrals of powers).
const GAUSS: [(f64, f64); 5] = [
    (-0.906_179_845_938_664, 0.236_926_885_056_189_1),
    (-0.538_469_310_105_683_1, 0.478_628_670_499_366_5),
    (0.0, 0.568_888_888_888_888_9),
    (0.538_469_310_105_683_1, 0.478_628_670_499_366_5),
    (0.906_179_845_938_664, 0.236_926_885_056_189_1),
];

/// State of one cylinder over a working cycle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WorkingCycle {
    /// Whether it fires every second turn; else every turn.
    pub four_stroke: bool,
    /// Swept volume \[m³\].
    pub swept: f64,
    /// Largest over smallest volume, above 1.
    pub compression: f64,
    /// Indicated mean effective pressure \[Pa\], gas exchange included; `None` for a cylinder that does not fire.
    pub effective: Option<f64>,
    /// Absolute pressure in the manifold \[Pa\].
    pub inlet: f64,
}

/// Torque on the crank by order: the place is twice the order, each means Re(T e^(i order θ)) [N m].
///
/// The first is the mean. Positive drives the crank.
pub type GasTorque = [Complex<f64>; HALF_ORDERS + 1];

/// Gas torque of one cylinder, θ from its firing top dead centre.
///
/// # Equation
///   T(θ) = (p − p_a) dV/dθ
///   expansion    0 to π:     p = p₃ (V_min/V)^n
///   exhaust      π to 2π:    p = p_a            (four-stroke)
///   intake       2π to 3π:   p = p_i            (four-stroke)
///   compression, the last π: p = p_i (V_max/V)^n
///   p₃ from the mean effective pressure, ∮ p dV = p_e V_d; without firing p₃ = p_i (V_max/V_min)^n
///   mean torque: p_e V_d / 4π (four-stroke), / 2π (two-stroke)
///
/// # Range
/// Burning all at once at the top, no delay of the valves, no heat lost: an
/// estimate, on the high side at high orders, since a real charge burns over
/// some 50°. Measured harmonics of the engine replace it.
///
/// # Source
/// Derived: work of the gas on the piston. The exponent is common practice.
#[must_use]
pub fn gas_torque(crank: &SliderCrank, cycle: &WorkingCycle) -> GasTorque {
    let smallest = 1.0 / (cycle.compression - 1.0);
    let mut torque = [Complex::new(0.0, 0.0); HALF_ORDERS + 1];
    // Work of a stroke over the swept volume: what p₃ = 1 gives, and what compression takes at p_i = 1.
    let (n, r) = (EXPONENT, cycle.compression);
    let given = smallest * (1.0 - r.powf(1.0 - n)) / (n - 1.0);
    let taken = smallest * r * (r.powf(n - 1.0) - 1.0) / (n - 1.0);
    let exchange = if cycle.four_stroke {
        cycle.inlet - AMBIENT
    } else {
        0.0
    };
    let top = match cycle.effective {
        Some(effective) => (effective + cycle.inlet * taken - exchange) / given,
        None => cycle.inlet * r.powf(n),
    };
    let top_height = crank.height(0.0);
    let period = if cycle.four_stroke { 4.0 } else { 2.0 } * PI;
    let half_width = PI / (2.0 * PARTS as f64);
    for part in 0..PARTS {
        for (place, weight) in GAUSS {
            let angle = half_width * (2.0 * part as f64 + 1.0 + place);
            let volume = smallest + (top_height - crank.height(angle)) / 2.0;
            // Growth of the swept share per radian on the way down; on the way up it is minus this.
            let growth = -crank.rise(angle) / 2.0;
            let share = weight * half_width * growth * cycle.swept / period;
            let power = (smallest / volume).powf(n);
            let down = share * (top * power - AMBIENT);
            let up = share * (cycle.inlet * (r.powf(n) * power) - AMBIENT);
            let intake = share * exchange;
            let step = Complex::from_polar(1.0, -angle / 2.0);
            let mut turned = Complex::new(1.0, 0.0);
            let mut way = 1.0;
            for amplitude in &mut torque {
                // Compression is the mirror image of expansion about the top; intake comes a turn later.
                *amplitude += turned * down - turned.conj() * up + turned * (way * intake);
                turned *= step;
                way = -way;
            }
        }
    }
    for amplitude in torque.iter_mut().skip(1) {
        *amplitude *= 2.0;
    }
    if !cycle.four_stroke {
        // A cycle of one turn has whole orders only.
        for amplitude in torque.iter_mut().skip(1).step_by(2) {
            *amplitude = Complex::new(0.0, 0.0);
        }
    }
    torque
}
