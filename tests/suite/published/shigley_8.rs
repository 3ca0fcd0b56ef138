//! R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 8th ed., McGraw-Hill,
//! 2008, and the solutions manual to it.

use bedplate::strength::bolt::endurance::Endurance;
use bedplate::strength::bolt::stiffness_models::{Fitted, fitted_resilience};

use crate::kit::assert_close;

/// Published, solution 8-31, MPa.
#[test]
fn gerber_and_elliptic_amplitudes() {
    let lines = Endurance {
        limit: 129e6,
        tensile: 830e6,
        proof: 600e6,
        preload: 450e6,
    };
    assert_close(
        "amplitudes",
        &[lines.gerber(), lines.elliptic()],
        &[76.99e6, 65.87e6],
        2e-3,
        0.0,
    );
}

/// Published, solution 8-20, MN/m: M12 in 40 mm of steel, of cast iron, of half of each. The bolt
/// rate printed with it belongs to another length of thread and is not used.
#[test]
fn member_rates_by_the_fit() {
    let steel = fitted_resilience(Fitted::Steel, 12e-3, 40e-3, 207e9);
    let iron = fitted_resilience(Fitted::CastIron, 12e-3, 40e-3, 100e9);
    let rates = [1.0 / steel, 1.0 / iron, 2.0 / (steel + iron)];
    assert_close("rates", &rates, &[2361e6, 1124e6, 1523e6], 1e-2, 0.0);
}
