//! What holds for the vibrations of every build.

use bedplate::numeric::{solve6, symmetric_eigen6};
use bedplate::rigid::equilibrium::solve_equilibrium;
use bedplate::rigid::modes::{ModalSolution, solve_modes};
use bedplate::spatial::{Mat3, Mat6, Vec6};

use super::build::{RandomBuild, any_build, for_all, vector};
use crate::kit::assert_close;

fn modes(build: &RandomBuild) -> ModalSolution {
    let body = build.supported();
    let at = solve_equilibrium(&body, &build.loading, None).unwrap();
    solve_modes(&body, &at).unwrap()
}

fn shapes(solution: &ModalSolution) -> Mat6 {
    let mut all = Mat6::zeros();
    for (j, mode) in solution.modes.iter().enumerate() {
        all.set_column(j, &mode.shape);
    }
    all
}

/// Φ' M Φ = I and Φ' K Φ = Λ, and every pair solves the equation of motion.
#[test]
fn shapes_are_orthonormal_and_solve_the_equation() {
    for_all(32, 41, &any_build(), |build| {
        let found = modes(&build);
        let all = shapes(&found);
        let unit = all.transpose() * found.mass * all;
        assert_close(
            "mass",
            unit.as_slice(),
            Mat6::identity().as_slice(),
            0.0,
            1e-11,
        );
        let mut last = 0.0;
        for mode in &found.modes {
            assert!(mode.frequency_hz >= last);
            last = mode.frequency_hz;
            let squared = (mode.frequency_hz * std::f64::consts::TAU).powi(2);
            let left = found.stiffness * mode.shape - found.mass * mode.shape * squared;
            let allowed = 1e-11 * found.stiffness.amax() * mode.shape.norm();
            assert_close("motion", left.as_slice(), &[0.0; 6], 0.0, allowed);
        }
    });
}

/// Rows and columns of the kinetic shares sum to one, translations to three; strain shares sum to one.
#[test]
fn shares_sum_to_one() {
    for_all(32, 42, &any_build(), |build| {
        let found = modes(&build);
        let mut rows = Vec6::zeros();
        for mode in &found.modes {
            assert_close("column", &[mode.energy_share.sum()], &[1.0], 0.0, 1e-12);
            rows += mode.energy_share;
            let strain: f64 = mode.mount_strain_share.iter().sum();
            let whole = strain + mode.geometric_strain_share;
            assert_close("strain", &[whole], &[1.0], 0.0, 1e-10);
            let (largest, _) = mode.energy_share.argmax();
            assert!(mode.shape[largest] > 0.0);
        }
        assert_close("rows", rows.as_slice(), &[1.0; 6], 0.0, 1e-11);
    });
}

#[test]
fn shares_of_any_motion_sum_to_one() {
    for_all(
        24,
        43,
        &(any_build(), vector(1.0), vector(1.0)),
        |(build, a, b)| {
            let share = modes(&build).motion_share(&bedplate::spatial::stack(&a, &b));
            assert_close("sum", &[share.iter().sum()], &[1.0], 0.0, 1e-11);
            assert!(share.iter().all(|s| (0.0..=1.0).contains(s)));
        },
    );
}

/// The damping of a mode lies between those of the least and the most lossy mount.
#[test]
fn damping_lies_within_that_of_the_mounts() {
    for_all(24, 44, &any_build(), |mut build| {
        // Without brackets, stops, load: the loss is the rubber's alone.
        for mount in &mut build.mounts {
            mount.compliance = Mat3::zeros();
        }
        let mut build = build.linear();
        build.loading = bedplate::rigid::loading::Loading::none();
        let eta = build.mounts.iter().map(|m| m.isolator.dynamics.loss_factor);
        let low = eta.clone().fold(f64::INFINITY, f64::min) / 2.0;
        let high = eta.fold(0.0, f64::max) / 2.0;
        for mode in modes(&build).modes {
            assert!((low - 1e-12..=high + 1e-12).contains(&mode.damping_ratio));
            let by_mount: f64 = mode
                .mount_strain_share
                .iter()
                .zip(&build.mounts)
                .map(|(share, mount)| share * mount.isolator.dynamics.loss_factor / 2.0)
                .sum();
            assert_close(
                "strain energy",
                &[mode.damping_ratio],
                &[by_mount],
                1e-10,
                0.0,
            );
        }
    });
}

/// Independent route: natural frequencies as the roots of det(K − ω² M), found by counting
/// negative eigenvalues of K − ω² M just below and above each (Sylvester's law of inertia).
#[test]
fn frequencies_are_where_the_determinant_changes_sign() {
    for_all(24, 45, &any_build(), |build| {
        let found = modes(&build);
        for (j, mode) in found.modes.iter().enumerate() {
            let below = |share: f64| {
                let omega = mode.frequency_hz * std::f64::consts::TAU * share;
                let shifted = found.stiffness - found.mass * (omega * omega);
                let values = symmetric_eigen6(&shifted).unwrap().values;
                values.iter().filter(|value| **value < 0.0).count()
            };
            assert_eq!((below(1.0 - 1e-9), below(1.0 + 1e-9)), (j, j + 1));
        }
    });
}

/// The modal sum of the flexibility is the inverse of the stiffness.
#[test]
fn modal_sum_is_the_static_flexibility() {
    for_all(
        24,
        46,
        &(any_build(), vector(1.0), vector(1.0)),
        |(build, f, m)| {
            let found = modes(&build);
            let load = bedplate::spatial::stack(&f, &m);
            let direct = solve6(&found.stiffness, &load).unwrap();
            let mut sum = Vec6::zeros();
            for mode in &found.modes {
                let omega = mode.frequency_hz * std::f64::consts::TAU;
                sum += mode.shape * (mode.shape.dot(&load) / (omega * omega));
            }
            let allowed = 1e-10 * direct.norm();
            assert_close(
                "flexibility",
                sum.as_slice(),
                direct.as_slice(),
                0.0,
                allowed,
            );
        },
    );
}
