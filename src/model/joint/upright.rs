//! What rises from the foot of a bracket, or from the plate that it is welded to.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `upright.arm` | from the middle of the bolts nearest to it to its face: what bends when they are pulled | length | needed |
//! | `upright.length` | along the rail where it is welded | length | needed with `weld` |
//! | `upright.width` | across the rail where it is welded | length | needed with `weld` |
//! | `upright.weld` | its weld to the foot, or to the plate: keys in [`weld`] | table | none: bent from the foot, or one piece |

use super::plate::SIDE;
use super::weld::{self, Weld};
use super::{Foot, Plate};
use crate::model::material::Family;
use crate::model::reader::Section;
use crate::units::Quantity;

/// What rises from the foot of a bracket.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct Upright {
    /// From the middle of the bolts nearest to it to its face \[m\], above zero.
    pub arm: f64,
    /// Its weld to the foot, or to the plate; `None` when it is one piece with it.
    pub weld: Option<UprightWeld>,
}

/// Weld of an upright, and the rectangle that it stands on.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct UprightWeld {
    /// The weld.
    pub weld: Weld,
    /// Size along the rail \[m\].
    pub length: f64,
    /// Size across the rail \[m\].
    pub width: f64,
}

/// Reads `upright`; the inner `None` says that there is none.
pub(super) fn read(
    section: &Section<'_>,
    foot: Option<&Option<Foot>>,
    plate: Option<&Option<Plate>>,
) -> Option<Option<Upright>> {
    // The foot when there is one, else the plate.
    let foot = foot.and_then(Option::as_ref).map(|foot| &foot.material);
    let plate = plate.and_then(Option::as_ref).map(|plate| &plate.material);
    let family = foot.or(plate).map(|material| material.family);
    let read = section.judged("upright", |inner| read_upright(inner, family));
    super::absent_or_read(read)
}

fn read_upright(section: Section<'_>, family: Option<Family>) -> Option<Upright> {
    section.must_have(&[(
        "arm",
        "from the middle of the nearest bolts to its face, such as \"25 mm\"",
    )]);
    let length = |key| section.quantity(key, Quantity::Length, SIDE);
    let (arm, along, across) = (length("arm"), length("length"), length("width"));
    if section.has("weld") {
        section.must_have(&[
            (
                "length",
                "along the rail where it is welded, such as \"80 mm\"",
            ),
            (
                "width",
                "across the rail where it is welded, such as \"40 mm\"",
            ),
        ]);
    }
    let weld = section.judged("weld", |inner| weld::read_run(inner, family));
    section.finish();
    let weld = match super::absent_or_read(weld)? {
        Some(weld) => Some(UprightWeld {
            weld,
            length: along?,
            width: across?,
        }),
        None => None,
    };
    Some(Upright { arm: arm?, weld })
}
