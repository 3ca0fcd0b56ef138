//! The one assertion helper of the suite, and builders that keep the tests short.

use std::fmt::Debug;
use std::sync::Arc;

use bedplate::model::isolator::{Isolator, rates::Rates};
use bedplate::model::{Model, file};
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

/// The model of a text that is in order.
#[track_caller]
pub(crate) fn model(text: &str) -> Model {
    match file::read(text.as_bytes()) {
        Ok(checked) => checked.model,
        Err(problems) => panic!("the text has problems: {problems:#?}"),
    }
}

/// A build with one part, four equal mounts and whatever is appended.
pub(crate) fn four_mounts_and(more: &str) -> String {
    let mounts: String = [
        ("a", 300, 250),
        ("b", 300, -250),
        ("c", -300, 250),
        ("d", -300, -250),
    ]
    .iter()
    .map(|(name, x, y)| {
        format!("[[mount]]\nname = \"{name}\"\nat = \"{x}, {y}, -50 mm\"\nisolator = \"pad\"\n")
    })
    .collect();
    format!(
        "title = \"four mounts\"\n\
         [datum]\norigin = \"centre of gravity\"\nfitted = \"free\"\n\
         [[part]]\nname = \"block\"\nmass = \"150 kg\"\nat = \"0, 0, 0 mm\"\nbox = \"600, 500, 500 mm\"\n\
         [isolator.pad]\nkind = \"rates\"\nrates = \"200, 200, 400 N/mm\"\n\
         {mounts}\n{more}"
    )
}
