//! The one assertion helper of the suite, and builders that keep the tests short.

use std::fmt::Debug;
use std::sync::Arc;

use bedplate::model::isolator::{Isolator, rates::Rates};
use bedplate::rigid::mount_response::HeldMount;
use bedplate::spatial::{Mat3, Vec3};

/// Asserts `|found − expected| ≤ relative · |expected| + absolute` for every number.
#[track_caller]
pub(crate) fn assert_close(
    what: impl Debug,
    found: &[f64],
    expected: &[f64],
    relative: f64,
    absolute: f64,
) {
    assert!(
        (0.0..0.1).contains(&relative) && (0.0..f64::INFINITY).contains(&absolute),
        "tolerances must be sane"
    );
    assert_eq!(found.len(), expected.len(), "{what:?}: number of values");
    assert!(!found.is_empty(), "{what:?}: nothing to compare");
    for (place, (f, e)) in found.iter().zip(expected).enumerate() {
        let allowed = relative * e.abs() + absolute;
        assert!(
            (f - e).abs() <= allowed,
            "{what:?} [{place}]: found {f:e}, expected {e:e}, off by {:e}, allowed {allowed:e}",
            (f - e).abs()
        );
    }
}

/// Isolator with three constant rates [N/m] and nothing else.
pub(crate) fn linear(name: &str, rates: [f64; 3]) -> Isolator {
    let rates = Rates {
        rates: Vec3::from(rates),
    };
    Isolator::new(name, "rates", Arc::new(rates))
}

/// Mount fitted free, without bracket and chassis, axes along the vehicle.
pub(crate) fn plain_mount<'a>(name: &'a str, at: Vec3, isolator: &'a Isolator) -> HeldMount<'a> {
    HeldMount {
        name,
        at,
        anchor: at,
        axes: Mat3::identity(),
        compliance: Mat3::zeros(),
        isolator,
    }
}
