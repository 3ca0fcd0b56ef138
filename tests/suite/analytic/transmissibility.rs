//! Steady vibration of one mass on a spring.

use bedplate::road::transmissibility::{Damping, magnification, peak_ratio, transmissibility};

use crate::kit::assert_close;

/// Computed independently from the closed forms; √(1 + 4ζ²)/(2ζ) at resonance.
#[test]
fn viscous_damping() {
    let expected = [
        (0.05, 10.0499, 0.130412, 0.997522),
        (0.1, 5.09902, 0.145366, 0.990334),
        (0.2, 2.69258, 0.193096, 0.964730),
    ];
    for (zeta, resonance, three, peak) in expected {
        let at = |r: f64| transmissibility(Damping::Ratio(zeta), r).norm();
        let found = [at(1.0), at(3.0), peak_ratio(zeta)];
        assert_close(zeta, &found, &[resonance, three, peak], 4e-6, 0.0);
        let (below, top, above) = (at(peak - 1e-3), at(peak_ratio(zeta)), at(peak + 1e-3));
        assert!(top > below && top > above, "{zeta}");
    }
}

/// Computed independently: η = 0.1 isolates better at three times the frequency than ζ = 0.05,
/// with which it is alike at resonance.
#[test]
fn damping_of_the_material() {
    let at = |r: f64| transmissibility(Damping::LossFactor(0.1), r).norm();
    assert_close(
        "loss factor",
        &[at(1.0), at(3.0)],
        &[10.0499, 0.125_614],
        4e-6,
        0.0,
    );
}

/// Derived: |T| = 1 at √2 for any damping; quasi-static 1; phases −atan2(2ζr, 1 − r²).
#[test]
fn what_damping_does_not_change() {
    for damping in [
        Damping::Ratio(0.0),
        Damping::Ratio(0.7),
        Damping::LossFactor(0.4),
    ] {
        let found = transmissibility(damping, std::f64::consts::SQRT_2).norm();
        assert_close(damping, &[found], &[1.0], 1e-12, 0.0);
        assert_close(
            damping,
            &[transmissibility(damping, 0.0).norm()],
            &[1.0],
            1e-12,
            0.0,
        );
    }
    let (zeta, r) = (0.15, 1.7_f64);
    let phase = -(2.0 * zeta * r).atan2(1.0 - r * r);
    let answer = magnification(Damping::Ratio(zeta), r);
    let size = 1.0 / ((1.0 - r * r).powi(2) + (2.0 * zeta * r).powi(2)).sqrt();
    assert_close(
        "answer",
        &[answer.norm(), answer.arg()],
        &[size, phase],
        1e-12,
        0.0,
    );
    assert_close("no damping", &[peak_ratio(0.0)], &[1.0], 1e-15, 0.0);
}
