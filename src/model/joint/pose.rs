//! Where a joint face stands and how it is turned.

use super::Base;
use crate::diagnostic::Code;
use crate::model::rail::Through;
use crate::model::reader::{Bound, Section};
use crate::spatial::Vec3;
use crate::units::Quantity;

/// Largest lean of `face` against the plane square to `along`: the sine of 10°.
const MOST_LEAN: f64 = 0.174;

/// Shorter sideways distances do not tell on which side of a rail a mount is \[m\].
const ASIDE: f64 = 1e-3;

/// Mounts stand near their joints.
const NEAR: Bound = Bound::Stated(-2.0, 2.0, "within 2 m of the middle of the joint face");

/// Reads `offset`.
pub(super) fn read_offset(section: &Section<'_>) -> Option<Vec3> {
    if section.has("offset") {
        return section.vector("offset", Quantity::Length, NEAR);
    }
    section.assume(
        "offset",
        "nothing: the mount is in the middle of the joint face",
    );
    Some(Vec3::zeros())
}

/// Reads `face` and `along`: unit vectors, square to each other.
pub(super) fn read_axes(
    section: &Section<'_>,
    base: Option<&Base>,
    offset: Option<Vec3>,
    mount: Option<Vec3>,
) -> Option<(Vec3, Vec3)> {
    let given = section.direction("face");
    let along = if section.has("along") {
        section.direction("along")
    } else {
        section.assume("along", "forward (1, 0, 0)");
        Some(Vec3::x())
    };
    let along = along?;
    if !section.has("face") {
        let (face, words) = usual_face(section, base?, &along, &offset?, mount)?;
        section.assume("face", words);
        return Some((face, along));
    }
    let face = given?;
    let lean = face.dot(&along);
    let square = (face - along * lean).try_normalize(1e-6);
    if lean.abs() > MOST_LEAN || square.is_none() {
        section.refuse(
            "face",
            Code::NoDirection,
            format!(
                "{} must stand square on `along`: {:.0}° away from that",
                section.key_name("face"),
                lean.abs().min(1.0).asin().to_degrees()
            ),
            "it points out of the rail, towards the bracket; `along` is forward when it is not given",
        );
        return None;
    }
    Some((square?, along))
}

/// Up; through the width of a rail sideways, to where the mount is.
fn usual_face(
    section: &Section<'_>,
    base: &Base,
    along: &Vec3,
    offset: &Vec3,
    mount: Option<Vec3>,
) -> Option<(Vec3, &'static str)> {
    let through_width = base
        .rail()
        .is_some_and(|rail| rail.through == Through::Width);
    let left = Vec3::z().cross(along).try_normalize(0.5);
    let Some(left) = left else {
        section.must_have(&[(
            "face",
            "direction out of the rail towards the bracket: the rail stands upright, so it cannot be guessed",
        )]);
        return None;
    };
    if !through_width {
        return Some((along.cross(&left), "up, made square to `along`"));
    }
    let aside = offset.dot(&left);
    if aside.abs() > ASIDE {
        return Some((left * aside.signum(), "sideways, to where the mount is"));
    }
    let inboard = -mount?.y;
    if inboard.abs() > ASIDE && left.y.abs() > MOST_LEAN {
        let side = (inboard * left.y).signum();
        return Some((left * side, "sideways, to the middle of the vehicle"));
    }
    section.must_have(&[(
        "face",
        "direction out of the rail towards the bracket, such as \"0, 1, 0\": it cannot be guessed here",
    )]);
    None
}
