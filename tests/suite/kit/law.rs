//! Isolators written as in a file, and what every elastic law obeys.

use bedplate::model::file;
use bedplate::model::isolator::{Isolator, Law};
use bedplate::numeric::symmetric_eigen3;
use bedplate::spatial::{Mat3, Vec3};

use super::{assert_close, four_mounts_and, model};

/// A build on four isolators with these keys.
fn build(keys: &str) -> String {
    let plain = "kind = \"rates\"\nrates = \"200, 200, 400 N/mm\"\n";
    let text = four_mounts_and("");
    assert_eq!(text.matches(plain).count(), 1);
    text.replace(plain, &format!("{keys}\n"))
}

/// The isolator with these keys in its section.
#[track_caller]
pub(crate) fn described(keys: &str) -> Isolator {
    model(&build(keys)).isolators.remove(0)
}

/// What is taken for granted of it, as key and text.
#[track_caller]
pub(crate) fn assumed(keys: &str) -> Vec<(String, String)> {
    let of = "isolator.pad.";
    model(&build(keys))
        .assumptions
        .into_iter()
        .filter_map(|one| Some((one.key.strip_prefix(of)?.to_owned(), one.text)))
        .collect()
}

/// Codes of what is wrong with it.
pub(crate) fn refused(keys: &str) -> Vec<&'static str> {
    let problems = file::read(build(keys).as_bytes()).err().unwrap_or_default();
    problems.iter().map(|problem| problem.code.id()).collect()
}

/// Asserts that the law is elastic and convex at every place, and does no work on a way around them.
///
/// Independent route: differences of the energy against the force, of the force
/// against the tangent; Simpson's rule along straight ways for the work.
#[track_caller]
pub(crate) fn assert_elastic(law: &dyn Law, places: &[[f64; 3]]) {
    const STEP: f64 = 1e-8;
    for place in places {
        let x = Vec3::from(*place);
        let here = law.at(&x);
        let scale = here.tangent.amax() + 1.0;
        let (mut gradient, mut slope) = (Vec3::zeros(), Mat3::zeros());
        for axis in 0..3 {
            let mut step = Vec3::zeros();
            step[axis] = STEP;
            let (after, before) = (law.at(&(x + step)), law.at(&(x - step)));
            gradient[axis] = (after.energy - before.energy) / (2.0 * STEP);
            slope.set_column(axis, &((after.force - before.force) / (2.0 * STEP)));
        }
        let (found, expected) = (here.force.as_slice(), gradient.as_slice());
        let force = here.force.amax();
        assert_close((place, "force"), found, expected, 0.0, 1e-6 * force + 1e-4);
        let (found, expected) = (here.tangent.as_slice(), slope.as_slice());
        assert_close((place, "tangent"), found, expected, 0.0, 1e-5 * scale);
        let least = symmetric_eigen3(&here.tangent).unwrap().values[0];
        assert!(least >= -1e-9 * scale, "{place:?}: negative rate {least:e}");
    }
    let (mut around, mut moved) = (0.0, 0.0);
    for (i, from) in places.iter().enumerate() {
        let from = Vec3::from(*from);
        let to = Vec3::from(places[(i + 1) % places.len()]);
        let work = work_between(law, &from, &to);
        let stored = law.at(&to).energy - law.at(&from).energy;
        assert_close((i, "work"), &[work], &[stored], 1e-5, 1e-7);
        around += work;
        moved += work.abs();
    }
    assert!(moved > 0.0, "nothing was moved");
    assert_close("closed path", &[around], &[0.0], 0.0, 1e-5 * moved);
}

fn work_between(law: &dyn Law, from: &Vec3, to: &Vec3) -> f64 {
    const PIECES: u32 = 4000;
    let way = (to - from) / f64::from(PIECES);
    let push = |pieces: f64| law.at(&(from + way * pieces)).force.dot(&way);
    let of_piece = |i: u32| {
        let i = f64::from(i);
        (push(i) + 4.0 * push(i + 0.5) + push(i + 1.0)) / 6.0
    };
    (0..PIECES).map(of_piece).sum()
}
