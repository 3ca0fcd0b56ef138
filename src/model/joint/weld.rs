//! Fillet welds: of the plate to the rail, of the upright to its foot, of a sleeve to the walls.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `weld.throat` | throat of the fillet | length | this or `leg` |
//! | `weld.leg` | leg of the fillet, both alike | length | this or `throat` |
//! | `weld.length` | length of all runs together, which lie along the rail on both sides; not of a sleeve | length | this or `around` |
//! | `weld.around` | `true`: all around what is welded; not of a sleeve, which always is | flag | this or `length` |
//! | `weld.filler` | `"matching"` the parent metal, or `"5356"` or `"4043A"` for aluminium | word | `"matching"` for steel; aluminium needs it |

use std::f64::consts::FRAC_1_SQRT_2;

use super::{Base, Plate, Sleeve};
use crate::diagnostic::Code;
use crate::model::material::Family;
use crate::model::reader::{Bound, Section};
use crate::units::Quantity;

/// Where a weld runs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum WeldRun {
    /// All around what is welded.
    Around,
    /// Two runs along the rail, of this length together \[m\].
    Length(f64),
}

/// What a weld is filled with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Filler {
    /// At least as strong as the parent metal.
    Matching,
    /// Aluminium with 5 % magnesium.
    Al5356,
    /// Aluminium with 5 % silicon.
    Al4043A,
}

/// A fillet, wherever it runs.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct Fillet {
    /// Throat \[m\].
    pub throat: f64,
    /// What it is filled with.
    pub filler: Filler,
}

/// A fillet weld on a flat face, checked.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct Weld {
    /// Its section.
    pub fillet: Fillet,
    /// Where it runs.
    pub run: WeldRun,
}

const FILLET: Bound = Bound::Stated(5e-4, 0.05, "between 0.5 mm and 50 mm");

/// Reads `weld`, and judges whether what is welded can be; the inner `None` says that there is none.
pub(super) fn read(
    section: &Section<'_>,
    base: Option<&Base>,
    plate: Option<&Option<Plate>>,
    sleeve: Option<&Option<Sleeve>>,
) -> Option<Option<Weld>> {
    if let (Some(base), Some(Some(sleeve))) = (base, sleeve)
        && sleeve.weld.is_some()
    {
        may_be_welded(section, "sleeve", base, sleeve.material.family)?;
    }
    if !section.has("weld") {
        return Some(None);
    }
    if plate.is_none() {
        section.refuse(
            "weld",
            Code::NeedsOther,
            format!("{} needs a `plate`", section.key_name("weld")),
            "add the plate that is welded to the rail, or take `weld` out",
        );
        return None;
    }
    let family = plate
        .and_then(Option::as_ref)
        .map(|plate| plate.material.family);
    let weld = section.judged("weld", |inner| read_run(inner, family));
    may_be_welded(section, "weld", base?, family?)?;
    weld?.map(Some)
}

/// `None`, and said, when the rail or the pair of metals cannot be welded.
fn may_be_welded(
    section: &Section<'_>,
    key: &'static str,
    base: &Base,
    other: Family,
) -> Option<()> {
    let (own, _) = base.face();
    let (problem, cure) = if base.rail().is_some_and(|rail| !rail.weldable) {
        (
            "welds to a rail that is `weldable = false`",
            "bolt it, or check whether the rail may be welded after all",
        )
    } else if own.welds_to(other) {
        return Some(());
    } else {
        (
            "joins materials that are not welded to each other",
            "make both of the same sort of metal, or leave the weld out",
        )
    };
    section.refuse(
        key,
        Code::Conflict,
        format!("{} {problem}", section.key_name(key)),
        cure,
    );
    None
}

/// Reads a weld on a flat face.
pub(super) fn read_run(section: Section<'_>, family: Option<Family>) -> Option<Weld> {
    section.must_have_one_of(
        &["length", "around"],
        "length of all runs together, such as \"160 mm\"; or `around = true`",
    );
    exclude(&section, "around", "length");
    let run = section
        .quantity("length", Quantity::Length, Bound::SIZE)
        .map(WeldRun::Length);
    let around = section.flag("around");
    if around == Some(false) {
        section.must_have(&[("length", "length of all runs together, such as \"160 mm\"")]);
    }
    let fillet = read_section(&section, family);
    section.finish();
    Some(Weld {
        fillet: fillet?,
        run: run.or_else(|| (around?).then_some(WeldRun::Around))?,
    })
}

/// Reads the weld of a sleeve, which runs around it on both walls.
pub(super) fn read_ring(section: Section<'_>, family: Option<Family>) -> Option<Fillet> {
    let fillet = read_section(&section, family);
    section.finish();
    fillet
}

fn read_section(section: &Section<'_>, family: Option<Family>) -> Option<Fillet> {
    section.must_have_one_of(
        &["throat", "leg"],
        "throat of the fillet, such as \"3 mm\"; or `leg`",
    );
    exclude(section, "leg", "throat");
    let length = |key| section.quantity(key, Quantity::Length, FILLET);
    let throat = length("throat").or_else(|| length("leg").map(|leg| leg * FRAC_1_SQRT_2));
    let filler = read_filler(section, family);
    Some(Fillet {
        throat: throat?,
        filler: filler?,
    })
}

/// Says so when both of two keys are given that tell the same.
fn exclude(section: &Section<'_>, key: &'static str, other: &'static str) {
    if section.has(key) && section.has(other) {
        section.refuse(
            key,
            Code::Conflict,
            format!("{} stands beside `{other}`", section.key_name(key)),
            "keep one of them",
        );
    }
}

fn read_filler(section: &Section<'_>, family: Option<Family>) -> Option<Filler> {
    let given = section.choice(
        "filler",
        &[
            ("matching", Filler::Matching),
            ("5356", Filler::Al5356),
            ("4043A", Filler::Al4043A),
        ],
    );
    let aluminium = family? == Family::Aluminium;
    if !section.has("filler") {
        if aluminium {
            section.must_have(&[("filler", "wire of an aluminium weld: \"5356\" or \"4043A\"")]);
            return None;
        }
        section.assume("filler", "matching: at least as strong as the parent metal");
        return Some(Filler::Matching);
    }
    let filler = given?;
    if aluminium != (filler != Filler::Matching) {
        section.refuse(
            "filler",
            Code::Conflict,
            format!("{} is not for this metal", section.key_name("filler")),
            "\"5356\" or \"4043A\" for aluminium, \"matching\" for steel",
        );
        return None;
    }
    Some(filler)
}
