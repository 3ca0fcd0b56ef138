//! Reserves that a joint keeps, and from what sizes that hold are chosen.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `factors.yield` | yield strength over stress, 1 to 10 | ratio | 1.1 |
//! | `factors.slip` | friction over shear force, 1 to 10 | ratio | 1.25 |
//! | `factors.separation` | clamp force over what opens the joint, 1 to 10 | ratio | 1.2 |
//! | `factors.fatigue` | lasting stress amplitude over the one that is there, 1 to 10 | ratio | 1.2 |
//! | `choose.sizes` | list of threads | words | M8 to M16 |
//! | `choose.classes` | list of strength classes | words | 8.8, 10.9 |
//! | `choose.counts` | list of numbers of bolts, 1 to 24 | counts | as many as there are |
//! | `choose.sleeves` | list of outside diameters of sleeves; only in a rail | lengths | 16 to 40 mm |
//! | `choose.plates` | list of thicknesses of plates | lengths | 4 to 12 mm |

use super::{Base, Joint, plate};
use crate::diagnostic::Code;
use crate::model::fastener::{Grade, Thread};
use crate::model::reader::{Bound, Section};
use crate::units::Quantity;

/// Reserves that a joint keeps: strength over demand, none below 1.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct Factors {
    /// Yield strength over stress.
    pub yields: f64,
    /// Friction over shear force.
    pub slip: f64,
    /// Clamp force over what opens the joint.
    pub separation: f64,
    /// Lasting stress amplitude over the one that is there.
    pub fatigue: f64,
}

impl Default for Factors {
    /// # Source
    /// Common practice: 1.1 as for yield of members, 1.25 as for bolts in shear, in Eurocode 3;
    /// 1.2 as is usual in VDI 2230-1 for one-sided and lasting loads (from memory).
    fn default() -> Self {
        Self {
            yields: 1.1,
            slip: 1.25,
            separation: 1.2,
            fatigue: 1.2,
        }
    }
}

/// From what sizes that hold are to be found. No list is empty but `counts`, which then leaves
/// the number of bolts as it is, and `sleeves` on a solid part.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Choices {
    /// Threads.
    pub threads: Vec<Thread>,
    /// Strength classes.
    pub grades: Vec<Grade>,
    /// Numbers of bolts.
    pub counts: Vec<u32>,
    /// Outside diameters of sleeves \[m\].
    pub sleeves: Vec<f64>,
    /// Thicknesses of plates \[m\].
    pub plates: Vec<f64>,
}

impl Joint {
    /// Asks for sizes that hold, out of the usual ones where the file names none.
    pub fn ask_for_sizes(&mut self) {
        let in_rail = self.base.rail().is_some();
        self.choices.get_or_insert_with(|| usual(in_rail));
    }
}

const THREADS: [&str; 5] = ["M8", "M10", "M12", "M14", "M16"];
const GRADES: [&str; 2] = ["8.8", "10.9"];

/// Outside diameters of precision tube that is usually at hand \[mm\].
const SLEEVES: [f64; 9] = [16.0, 18.0, 20.0, 22.0, 25.0, 28.0, 30.0, 35.0, 40.0];

/// Thicknesses of flat bar and plate that are usually at hand \[mm\].
const PLATES: [f64; 6] = [4.0, 5.0, 6.0, 8.0, 10.0, 12.0];

/// Reads `factors`.
pub(super) fn read_factors(section: &Section<'_>) -> Option<Factors> {
    let usual = Factors::default();
    let read = section.judged("factors", |inner| {
        let factor = |key, usual| {
            let given = inner.ratio(key, Bound::Within(1.0, 10.0));
            if inner.has(key) { given } else { Some(usual) }
        };
        let yields = factor("yield", usual.yields);
        let slip = factor("slip", usual.slip);
        let separation = factor("separation", usual.separation);
        let fatigue = factor("fatigue", usual.fatigue);
        inner.finish();
        Some(Factors {
            yields: yields?,
            slip: slip?,
            separation: separation?,
            fatigue: fatigue?,
        })
    });
    if read.is_none() {
        section.assume(
            "factors",
            format!(
                "yield {}, slip {}, separation {}, fatigue {} (common practice)",
                usual.yields, usual.slip, usual.separation, usual.fatigue
            ),
        );
    }
    read.unwrap_or(Some(usual))
}

/// Reads `size` and `choose`; the inner `None` says that sizes are not asked for.
pub(super) fn read_choices(section: &Section<'_>, base: Option<&Base>) -> Option<Option<Choices>> {
    let wanted = match section.has("size") {
        true => section.flag("size"),
        false => Some(false),
    };
    if section.has("choose") && wanted == Some(false) {
        section.refuse(
            "choose",
            Code::NeedsOther,
            format!("{} needs `size = true`", section.key_name("choose")),
            "add `size = true` to find sizes that hold, or take `choose` out",
        );
        return None;
    }
    let in_rail = matches!(base, Some(Base::Rail(_)));
    let given = section.judged("choose", |inner| read_lists(inner, in_rail));
    if !wanted? {
        return Some(None);
    }
    if given.is_none() {
        section.assume(
            "choose",
            "M8 to M16 in 8.8 and 10.9, sleeves of 16 to 40 mm, plates of 4 to 12 mm, as many bolts as there are",
        );
    }
    given.unwrap_or_else(|| Some(usual(in_rail))).map(Some)
}

fn usual(in_rail: bool) -> Choices {
    let metres = |list: &[f64]| list.iter().map(|mm| mm * 1e-3).collect();
    Choices {
        threads: THREADS.into_iter().filter_map(Thread::find).collect(),
        grades: GRADES.into_iter().filter_map(Grade::find).collect(),
        counts: Vec::new(),
        sleeves: if in_rail {
            metres(&SLEEVES)
        } else {
            Vec::new()
        },
        plates: metres(&PLATES),
    }
}

fn read_lists(section: Section<'_>, in_rail: bool) -> Option<Choices> {
    let usual = usual(in_rail);
    let threads = section.words("sizes", "[\"M8\", \"M10\"]", &Thread::names(), Thread::find);
    let grades = section.words(
        "classes",
        "[\"8.8\", \"10.9\"]",
        &Grade::names(),
        Grade::find,
    );
    let counts = section.counts("counts", 1, 24);
    let sleeves = section.quantities("sleeves", Quantity::Length, Bound::SIZE);
    let plates = section.quantities("plates", Quantity::Length, plate::THICKNESS);
    let lists = Choices {
        threads: threads.unwrap_or(usual.threads),
        grades: grades.unwrap_or(usual.grades),
        counts: counts.unwrap_or(usual.counts),
        sleeves: sleeves.unwrap_or(usual.sleeves),
        plates: plates.unwrap_or(usual.plates),
    };
    section.finish();
    Some(lists)
}
