//! Builds and loads at the edge of sense: an answer or a reason, never a hang and never a wrong number.

use std::sync::Arc;

use bedplate::model::isolator::Isolator;
use bedplate::rigid::equilibrium::solve_equilibrium;
use bedplate::rigid::failure::StaticsFailure;
use bedplate::rigid::loading::Loading;
use bedplate::rigid::supported::Supported;
use bedplate::spatial::{Mat3, STANDARD_GRAVITY, Vec3};

use super::rest_and_torque::{PushOnly, assert_balanced, body_of, corners, stops};
use crate::kit::linear;

/// Builds at the edge of sense: each must give a balanced answer or a reason, in bounded work.
#[test]
fn hard_builds_converge_or_say_why() {
    let mut stopped = linear("stopped", [80e3, 80e3, 250e3]);
    stopped.stops = [stops(5e-3, 4e6), stops(5e-3, 4e6), stops(6e-3, 4e6)];
    let solid = linear("solid", [10e6; 3]);
    let soft = linear("soft", [2e3, 2e3, 5e3]);
    let mut soft_stopped = soft.clone();
    soft_stopped.stops = [stops(8e-3, 4e6); 3];
    let pad = Isolator::new("pad", "test", Arc::new(PushOnly { shear: 1e5, k: 4e5 }));
    let mut thin = linear("thin", [1e3, 1e3, 10e6]);
    thin.stops[0] = stops(1e-3, 4e7);
    let mut answers = 0;
    for isolator in [&stopped, &solid, &soft, &soft_stopped, &pad, &thin] {
        for (far, softness) in [(0.0, 0.0), (0.0, 1e-6), (1.5, 0.0), (1.5, 1e-7)] {
            let mut mounts = corners(isolator, 0.4, 0.25, -0.2);
            for mount in &mut mounts {
                mount.at.x += far;
                mount.preset = Vec3::zeros();
                mount.compliance = Mat3::identity() * softness;
            }
            let body = Supported::new(body_of(250.0, [9.0, 20.0, 18.0]), mounts).unwrap();
            let weight = 250.0 * STANDARD_GRAVITY;
            for g in [
                [0.0, 0.0, 0.0],
                [0.0, 0.0, -20.0],
                [20.0, 0.0, 0.0],
                [-20.0, 8.0, -3.0],
                [3.0, -20.0, 6.0],
            ] {
                for moment in [0.0, 4000.0, -12_000.0] {
                    let mut loading = Loading::weight(250.0);
                    loading.at_centre += Vec3::from(g) * weight;
                    loading.moment.x = moment;
                    match solve_equilibrium(&body, &loading, None) {
                        Ok(loaded) => {
                            answers += 1;
                            assert_balanced(&loaded, weight * 25.0);
                            assert!(loaded.iterations < 2000);
                        }
                        Err(failure) => {
                            // Without stops 4 k b² is far below these moments, and pads lift off.
                            assert!(
                                ["soft", "pad"].contains(&isolator.name.as_str()),
                                "{} {far} {softness} {g:?} {moment}: {failure}",
                                isolator.name
                            );
                            assert!(
                                !matches!(failure, StaticsFailure::Numeric(_)),
                                "{failure:?}"
                            );
                        }
                    }
                }
            }
        }
    }
    assert!(answers >= 300, "{answers} of 360");
}

#[test]
fn numbers_that_are_not_finite_are_refused_before_the_solver() {
    let isolator = linear("even", [1e5; 3]);
    let body = Supported::new(
        body_of(100.0, [3.0, 5.0, 6.0]),
        corners(&isolator, 0.4, 0.3, 0.0),
    )
    .unwrap();
    for broken in [f64::NAN, f64::INFINITY, 1e300] {
        let mut loading = Loading::weight(100.0);
        loading.at_centre.x = broken;
        assert_eq!(loading.check().is_err(), !broken.is_finite());
        let failure = solve_equilibrium(&body, &loading, None).unwrap_err();
        assert!(
            matches!(
                failure,
                StaticsFailure::Numeric(_) | StaticsFailure::NotConverged { .. }
            ),
            "{failure:?}"
        );
    }
    let undefined = linear("undefined", [1e5, f64::NAN, 1e5]);
    let body = Supported::new(
        body_of(100.0, [3.0, 5.0, 6.0]),
        corners(&undefined, 0.4, 0.3, 0.0),
    )
    .unwrap();
    let failure = solve_equilibrium(&body, &Loading::weight(100.0), None).unwrap_err();
    assert!(matches!(failure, StaticsFailure::Numeric(_)), "{failure:?}");
}
