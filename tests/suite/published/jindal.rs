//! U. C. Jindal, Machine Design, chapter 9 (edition to be confirmed).

use bedplate::strength::bolt::load_share::{Preloaded, load_factor};
use bedplate::strength::bolt::stiffness_models::cone_layer_resilience;

use crate::kit::assert_close;

/// Published, example 9-4: M20, 84 mm of full shank, 80 mm clamped with a cone of 45° from 1.5 d,
/// E 205 and 105 GPa, preload 105 MPa, load 20 kN.
#[test]
fn stress_of_a_bolt_with_a_steep_cone() {
    let (d, area) = (20e-3_f64, 245e-6);
    let bolt = 84e-3 / (205e9 * std::f64::consts::PI / 4.0 * d * d);
    let half = cone_layer_resilience(1.5 * d, d, 40e-3, std::f64::consts::FRAC_PI_4, 105e9);
    let joint = Preloaded {
        preload: 105e6 * area,
        load_factor: load_factor(1.0, bolt, 2.0 * half),
    };
    assert_close(
        "stress",
        &[joint.bolt_force(20e3) / area],
        &[123.28e6],
        1e-3,
        0.0,
    );
}
