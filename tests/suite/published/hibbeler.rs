//! R. C. Hibbeler, Mechanics of Materials, chapter 4 (edition to be confirmed).

use std::f64::consts::PI;

use bedplate::strength::bolt::clamped::tube_resilience;
use bedplate::strength::bolt::tightening::preload_of_turn;

use crate::kit::assert_close;

/// Published, example 4.8 (moduli from memory): bolt of radius 0.25 in, 10.6e3 ksi, in a tube of
/// radii 0.5 and 0.25 in, 6.48e3 ksi, 3 in long, tightened by half a turn of 20 threads per inch.
#[test]
fn bolt_in_a_tube() {
    let bolt_area = PI * 0.25 * 0.25;
    let tube_area = PI * (0.5 * 0.5 - 0.25 * 0.25);
    let bolt = 3.0 / (10.6e3 * bolt_area);
    let tube = tube_resilience(1.0, 0.5, 3.0, 6.48e3);
    let force = preload_of_turn(PI, 0.05, bolt, tube);
    let found = [force, force / bolt_area, force / tube_area];
    assert_close("kip and ksi", &found, &[11.22, 57.1, 19.0], 5e-3, 0.0);
}
