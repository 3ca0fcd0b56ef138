//! Damping, growth and names of modes.

use bedplate::rigid::equilibrium::solve_equilibrium;
use bedplate::rigid::loading::Loading;
use bedplate::rigid::modes::{ModalSolution, mode_name, solve_modes};
use bedplate::rigid::supported::Supported;
use bedplate::spatial::Vec6;
use nalgebra::{Complex, Matrix6, Vector6};

use super::powertrain_on_mounts::{isolators, mass, mounts};
use super::rest_and_torque::{body_of, corners};
use crate::kit::{assert_close, linear};

/// Complex eigenvalue nearest to a real mode, by Rayleigh quotient iteration on K* x = λ M x.
fn complex_eigenvalue(modes: &ModalSolution, place: usize) -> Complex<f64> {
    let complex = |re: f64, im: f64| Complex::new(re, im);
    let K: Matrix6<Complex<f64>> = modes.stiffness.zip_map(&modes.loss, complex);
    let M: Matrix6<Complex<f64>> = modes.mass.map(|x| complex(x, 0.0));
    let mut x: Vector6<Complex<f64>> = modes.modes[place].shape.map(|x| complex(x, 0.0));
    let quotient = |x: &Vector6<Complex<f64>>| (x.dot(&(K * x))) / (x.dot(&(M * x)));
    let mut lambda = quotient(&x);
    for _ in 0..6 {
        #[expect(
            clippy::disallowed_methods,
            reason = "complex; numbers known to be finite"
        )]
        let solved = (K - M * lambda).lu().solve(&(M * x));
        let Some(next) = solved else {
            break;
        };
        x = next / complex(next.norm(), 0.0);
        lambda = quotient(&x);
    }
    lambda
}

/// Cross-checked: damping from the strain energy against that of the complex modes. The
/// expected numbers of both come from an independent calculation; here the second
/// is computed again by another method.
#[test]
fn strain_energy_damping_is_close_to_that_of_the_complex_modes() {
    let isolators = isolators();
    let body = Supported::new(mass(), mounts(&isolators)).unwrap();
    let rest = solve_equilibrium(&body, &Loading::weight(240.0), None).unwrap();
    let modes = solve_modes(&body, &rest).unwrap();
    let lambda: Vec<Complex<f64>> = (0..6).map(|j| complex_eigenvalue(&modes, j)).collect();
    let damping: Vec<f64> = lambda.iter().map(|l| l.im / l.re / 2.0).collect();
    let expected = [
        0.0447214, 0.0449960, 0.0446588, 0.0440231, 0.0444868, 0.0450378,
    ];
    assert_close("complex modes", &damping, &expected, 2e-6, 0.0);
    for ((mode, damping), lambda) in modes.modes.iter().zip(&damping).zip(&lambda) {
        assert_close(
            "strain energy",
            &[mode.damping_ratio],
            &[*damping],
            1e-4,
            0.0,
        );
        let frequency = lambda.re.sqrt() / std::f64::consts::TAU;
        assert_close("frequency", &[mode.frequency_hz], &[frequency], 1e-4, 0.0);
    }
}

/// Derived: four mounts level with the centre of gravity, 4 k b² in roll. A turning stiffness of
/// −2·4 k b² added by hand leaves −4 k b², and the roll grows at √(4 k b²/J).
#[test]
fn a_motion_that_grows_has_a_rate_and_no_frequency() {
    let (k, b, jx) = (1e5, 0.25, 3.0);
    let isolator = linear("even", [k; 3]);
    let body = Supported::new(
        body_of(100.0, [jx, 5.0, 6.0]),
        corners(&isolator, 0.4, b, 0.0),
    );
    let body = body.unwrap();
    let mut rest = solve_equilibrium(&body, &Loading::none(), None).unwrap();
    rest.geometric[(3, 3)] -= 8.0 * k * b * b;
    let modes = solve_modes(&body, &rest).unwrap();
    let rate = (4.0 * k * b * b / jx).sqrt();
    let first = &modes.modes[0];
    assert_close("rate", &[first.growth_rate.unwrap()], &[rate], 1e-12, 0.0);
    assert_close(
        "frequency",
        &[first.frequency_hz, first.damping_ratio],
        &[0.0; 2],
        0.0,
        0.0,
    );
    assert_eq!(first.name, "roll");
    assert!(
        modes.modes[1..]
            .iter()
            .all(|mode| mode.growth_rate.is_none())
    );
}

#[test]
fn names_follow_the_energy() {
    for (share, name) in [
        ([0.0, 0.0, 0.61, 0.39, 0.0, 0.0], "bounce"),
        ([0.0, 0.0, 0.45, 0.0, 0.55, 0.0], "pitch + bounce"),
        ([0.97, 0.0, 0.0, 0.0, 0.03, 0.0], "fore-aft"),
        ([0.0, 0.9, 0.0, 0.1, 0.0, 0.0], "lateral"),
        ([0.0, 0.3, 0.0, 0.4, 0.0, 0.3001], "roll + yaw"),
    ] {
        assert_eq!(mode_name(&Vec6::from(share), 0.0), name);
    }
}
