//! The one assertion helper of the suite, and builders that keep the tests short.

pub(crate) mod fourier;
pub(crate) mod law;

use nalgebra::UnitQuaternion;
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
        preset: Vec3::zeros(),
        untwisted: UnitQuaternion::identity(),
        far_eye: None,
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

/// The text of a build with four equal mounts whose isolator has these keys.
pub(crate) fn four_mounts_on(keys: &str) -> String {
    let rates = "kind = \"rates\"\nrates = \"200, 200, 400 N/mm\"\n";
    let plain = four_mounts_and("");
    assert_eq!(plain.matches(rates).count(), 1);
    plain.replace(rates, &format!("{keys}\n"))
}

/// The isolator of a file that has these keys.
#[track_caller]
pub(crate) fn isolator_of(keys: &str) -> Isolator {
    model(&four_mounts_on(keys)).isolators.remove(0)
}

/// Compares a file of the project with what it should hold now, or writes it when `BEDPLATE_RENEW` is set.
///
/// The file holds our own earlier output: this is regression, it guards against
/// forgetting to renew and proves nothing else. Numbers may differ by one in
/// their last digit, since the last bit of a sine differs between machines.
#[track_caller]
pub(crate) fn assert_renewed(path: &str, fresh: &str) {
    let whole = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join(path);
    if std::env::var_os("BEDPLATE_RENEW").is_some() {
        std::fs::write(&whole, fresh).unwrap();
        return;
    }
    let held = std::fs::read_to_string(&whole).unwrap_or_default();
    if let Some(place) = first_difference(&held, fresh) {
        panic!(
            "{path} is not what the program writes now, from here on: {place}\nlook at the change, then \
             renew it with `BEDPLATE_RENEW=1 cargo test --test suite renew`"
        );
    }
}

/// The fresh text from the first place on at which the two differ by more than one in the last digit of a number.
fn first_difference(held: &str, fresh: &str) -> Option<String> {
    let (held, fresh) = (words_and_numbers(held), words_and_numbers(fresh));
    let differ = held.iter().zip(&fresh).position(|(a, b)| !same(a, b));
    let place = match differ {
        Some(place) => place,
        None if held.len() == fresh.len() => return None,
        None => held.len().min(fresh.len()),
    };
    let from = place.saturating_sub(6).min(fresh.len());
    let to = (place + 8).min(fresh.len());
    Some(fresh[from..to].concat())
}

fn same(a: &str, b: &str) -> bool {
    let decimals = |text: &str| text.split_once('.').map_or(0, |(_, after)| after.len());
    let (Ok(x), Ok(y)) = (a.parse::<f64>(), b.parse::<f64>()) else {
        return a == b;
    };
    decimals(a) == decimals(b) && (x - y).abs() < 1.5 * 0.1_f64.powf(decimals(a) as f64)
}

/// Runs of digits and points, and what stands between them.
fn words_and_numbers(text: &str) -> Vec<&str> {
    let mut pieces = Vec::new();
    let mut rest = text;
    while let Some(first) = rest.chars().next() {
        let numeric = |c: char| c.is_ascii_digit() || c == '.';
        let end = rest
            .find(|c| numeric(c) != numeric(first))
            .unwrap_or(rest.len());
        let (piece, after) = rest.split_at(end);
        pieces.push(piece);
        rest = after;
    }
    pieces
}
