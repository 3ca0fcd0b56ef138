//! T. H. Wentzell, Machine Design, chapter 6 (edition to be confirmed).

use std::f64::consts::TAU;

use bedplate::strength::bolt::tightening::{nut_factor, preload_of_turn};

use crate::kit::assert_close;

/// Published, examples 6.1 and 6.2: 3/4-10, 0.334 in², 85 % of a proof stress of 85 ksi, K 0.2:
/// 3619.7 lbf in, and a turn of 43.35° of a bolt 5 in long with E 30e6 psi in stiff parts.
#[test]
fn torque_and_turn_of_a_nut() {
    let (area, preload) = (0.334, 0.85 * 85e3 * 0.334);
    assert_close("K", &[nut_factor(3619.7, preload, 0.75)], &[0.2], 1e-3, 0.0);
    let stretch = 5.0 / (area * 30e6);
    let found = preload_of_turn(43.35 / 360.0 * TAU, 0.1, stretch, 0.0);
    assert_close("preload", &[found], &[preload], 1e-3, 0.0);
}
