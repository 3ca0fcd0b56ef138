//! S. S. Bhavikatti, a text on strength of materials, chapter 2 (title and edition to be confirmed).

use std::f64::consts::PI;

use bedplate::strength::bolt::clamped::tube_resilience;
use bedplate::strength::bolt::tightening::preload_of_turn;

use crate::kit::assert_close;

/// Published, example 2.2.26: bolt of 16 mm, 200 GPa, in a tube 30/20 mm, 120 GPa, both 500 mm
/// long, a quarter turn of 2 mm pitch.
#[test]
fn long_bolt_in_a_tube() {
    let (bolt_area, tube_area) = (PI / 4.0 * 16.0_f64.powi(2), PI / 4.0 * 500.0);
    let tube = tube_resilience(30.0, 20.0, 500.0, 120e3);
    let force = preload_of_turn(PI / 2.0, 2.0, 500.0 / (200e3 * bolt_area), tube);
    let found = [force / bolt_area, force / tube_area];
    assert_close("MPa", &found, &[107.91, 55.25], 1e-3, 0.0);
}
