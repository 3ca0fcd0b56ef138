//! Where the bolts of a joint are.

use super::{Base, Bolt};
use crate::diagnostic::Code;
use crate::model::rail::millimetres;
use crate::model::reader::{Bound, Section};
use crate::units::Quantity;

const NEAR: Bound = Bound::Stated(-2.0, 2.0, "within 2 m of the middle of the joint face");

/// Reads `pattern`; never empty, in agreement with the count, no two bolts in one place, all of them in the hollow.
pub(super) fn read(
    section: &Section<'_>,
    base: Option<&Base>,
    bolt: Option<&Bolt>,
    count: Option<u32>,
) -> Option<Vec<[f64; 2]>> {
    let given = section.places("pattern", Quantity::Length, NEAR);
    let pattern = if section.has("pattern") {
        given?
    } else if let Some(count) = count.filter(|count| *count > 1) {
        section.must_have(&[(
            "pattern",
            &format!(
                "where the {count} bolts are, such as [\"-40, 0 mm\", \"40, 0 mm\"]: x along the rail, y across it"
            ),
        )]);
        return None;
    } else {
        section.assume("pattern", "one bolt in the middle of the joint face");
        vec![[0.0, 0.0]]
    };
    if let Some(count) = count
        && usize::try_from(count) != Ok(pattern.len())
    {
        section.refuse(
            "pattern",
            Code::Conflict,
            format!(
                "{} does not have the {count} places that `bolt.count` says: {}",
                section.key_name("pattern"),
                pattern.len()
            ),
            "make them agree, or take `count` out",
        );
        return None;
    }
    let bolt = bolt?;
    are_apart(section, &pattern, bolt.thread.head_bearing)?;
    if let Some(rail) = base?.rail() {
        let room = rail.face_width / 2.0 - rail.wall - bolt.hole / 2.0;
        if let Some([_, y]) = pattern.iter().find(|[_, y]| y.abs() > room) {
            section.refuse(
                "pattern",
                Code::OutOfRange,
                format!(
                    "a bolt of {} leaves the hollow of the rail, {} wide: y = {}",
                    section.key_name("pattern"),
                    millimetres(rail.face_width - 2.0 * rail.wall),
                    millimetres(*y)
                ),
                "y is across the rail, from the middle of its face; holes and bolts must clear the walls beside them",
            );
            return None;
        }
    }
    Some(pattern)
}

/// `None`, and said, when two bolts are closer than a distance \[m\].
fn are_apart(section: &Section<'_>, pattern: &[[f64; 2]], least: f64) -> Option<()> {
    let nearest = nearest(pattern);
    if nearest < least {
        section.refuse(
            "pattern",
            Code::OutOfRange,
            format!(
                "two bolts of {} are closer than their heads are wide, {}: {}",
                section.key_name("pattern"),
                millimetres(least),
                millimetres(nearest)
            ),
            "move them apart, or take smaller bolts",
        );
        return None;
    }
    Some(())
}

/// `None`, and said, when a hole of this diameter \[m\] opens into the cut end of the rail.
pub(super) fn judge_edge(
    section: &Section<'_>,
    base: Option<&Base>,
    pattern: Option<&[[f64; 2]]>,
    hole: Option<f64>,
) -> Option<()> {
    let (Some(edge), Some(pattern), Some(hole)) =
        (base.and_then(|base| base.rail()?.edge), pattern, hole)
    else {
        return Some(());
    };
    let reach = pattern.iter().fold(0.0_f64, |far, [x, _]| far.max(x.abs()));
    let least = reach + hole / 2.0;
    if edge > least {
        return Some(());
    }
    section.refuse(
        "edge",
        Code::OutOfRange,
        format!(
            "{} lets a hole open into the cut end of the rail: the holes reach {} from the middle of the joint face, the end is at {}",
            section.key_name("edge"),
            millimetres(least),
            millimetres(edge)
        ),
        "it is the distance from the middle of the joint face to the nearest cut end; two hole diameters beyond the last bolt are usual",
    );
    None
}

/// Smallest distance between two bolts \[m\]; infinite for one.
#[must_use]
pub fn nearest(pattern: &[[f64; 2]]) -> f64 {
    let mut nearest = f64::INFINITY;
    for (place, [x, y]) in pattern.iter().enumerate() {
        for [other_x, other_y] in pattern.iter().skip(place + 1) {
            nearest = nearest.min((x - other_x).hypot(y - other_y));
        }
    }
    nearest
}
