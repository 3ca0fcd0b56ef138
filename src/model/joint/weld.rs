//! Fillet weld of the plate to the rail.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `weld.throat` | throat of the fillet | length | this or `leg` |
//! | `weld.leg` | leg of the fillet, both alike | length | this or `throat` |
//! | `weld.length` | length of all runs together | length | this or `around` |
//! | `weld.around` | `true`: all around the plate | flag | this or `length` |
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
    /// All around the plate.
    Around,
    /// Runs of this length together \[m\].
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

/// A fillet weld, checked.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct Weld {
    /// Throat \[m\].
    pub throat: f64,
    /// Where it runs.
    pub run: WeldRun,
    /// What it is filled with.
    pub filler: Filler,
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
        && sleeve.welded
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
    let weld = section.judged("weld", |inner| read_fillet(inner, family));
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

fn read_fillet(section: Section<'_>, family: Option<Family>) -> Option<Weld> {
    section.must_have_one_of(
        &["throat", "leg"],
        "throat of the fillet, such as \"3 mm\"; or `leg`",
    );
    section.must_have_one_of(
        &["length", "around"],
        "length of all runs together, such as \"160 mm\"; or `around = true`",
    );
    for (key, other) in [("leg", "throat"), ("around", "length")] {
        if section.has(key) && section.has(other) {
            section.refuse(
                key,
                Code::Conflict,
                format!("{} stands beside `{other}`", section.key_name(key)),
                "keep one of them",
            );
        }
    }
    let length = |key, bound| section.quantity(key, Quantity::Length, bound);
    let throat =
        length("throat", FILLET).or_else(|| length("leg", FILLET).map(|leg| leg * FRAC_1_SQRT_2));
    let run = length("length", Bound::SIZE).map(WeldRun::Length);
    let around = section.flag("around");
    if around == Some(false) {
        section.must_have(&[("length", "length of all runs together, such as \"160 mm\"")]);
    }
    let filler = read_filler(&section, family);
    section.finish();
    Some(Weld {
        throat: throat?,
        run: run.or_else(|| (around?).then_some(WeldRun::Around))?,
        filler: filler?,
    })
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
