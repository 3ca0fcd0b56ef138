//! Reserves that a joint keeps, and from what sizes that hold are chosen.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `factors.yield` | yield strength over stress, 1 to 10 | ratio | 1.1 |
//! | `factors.slip` | friction over shear force, 1 to 10 | ratio | 1.25 |
//! | `factors.separation` | clamp force over what opens the joint, 1 to 10 | ratio | 1.2 |
//! | `factors.fatigue` | lasting stress amplitude over the one that is there, 1 to 10 | ratio | 1.2 |
//! | `choose.sizes` | list of threads | words | M8 to M16; of an inch thread 5/16 to 5/8 |
//! | `choose.classes` | list of strength classes | words | 8.8, 10.9; of inch threads grade 5, grade 8; of stainless bolts -70, -80 of their alloy |
//! | `choose.counts` | list of numbers of bolts, 1 to 24 | counts | as many as there are |
//! | `choose.sleeves` | list of outside diameters of sleeves; only in a rail | lengths | 16 to 40 mm |
//! | `choose.plates` | list of thicknesses of plates; only of a joint with a plate | lengths | 4 to 12 mm |
//!
//! The lists together make at most 20 000 combinations.

use super::{Base, Bolt, Joint, plate};
use crate::diagnostic::Code;
use crate::model::fastener::{Grade, Metal, Series, Thread};
use crate::model::reader::{Bound, Section};
use crate::units::{self, Digits, Quantity, Shown};

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

/// From what sizes that hold are to be found: only what this joint can have, lengths and counts rising,
/// nothing twice. No list is empty but `counts`, which then leaves the number of bolts as it is, `sleeves`
/// on a solid part, and `plates` where the joint has no plate.
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

impl Choices {
    /// What there is to choose from, in words.
    #[must_use]
    pub fn words(&self) -> String {
        let threads = names(&self.threads, |thread| thread.name);
        let grades = names(&self.grades, |grade| grade.name);
        let mut parts = vec![threads, format!("classes {grades}")];
        if !self.counts.is_empty() {
            let counts: Vec<String> = self.counts.iter().map(u32::to_string).collect();
            parts.push(format!("{} bolts", counts.join(", ")));
        }
        for (what, list) in [("sleeves", &self.sleeves), ("plates", &self.plates)] {
            if !list.is_empty() {
                parts.push(format!("{what} of {} mm", listed(list)));
            }
        }
        parts.join("; ")
    }

    /// Keeps each of a list once, lengths and counts in rising order.
    fn sorted(mut self) -> Self {
        for list in [&mut self.sleeves, &mut self.plates] {
            list.sort_by(f64::total_cmp);
            list.dedup_by(|a, b| (*a - *b).abs() < SAME);
        }
        self.counts.sort_unstable();
        self.counts.dedup();
        self.threads
            .sort_by(|a, b| a.nominal.total_cmp(&b.nominal).then(a.name.cmp(b.name)));
        self.threads.dedup_by_key(|thread| thread.name);
        self.grades.sort_by_key(|grade| grade.name);
        self.grades.dedup_by_key(|grade| grade.name);
        self.grades.sort_by(|a, b| {
            let [a, b] = [a, b].map(|grade| grade.limits(0.0).map_or(0.0, |limits| limits.tensile));
            a.total_cmp(&b)
        });
        self
    }

    /// How many combinations the lists make; `has_sleeve` says whether "no sleeve" is none of them.
    fn combinations(&self, has_sleeve: bool) -> usize {
        let without = usize::from(!has_sleeve && !self.sleeves.is_empty());
        [
            self.threads.len(),
            self.grades.len(),
            self.counts.len(),
            self.sleeves.len() + without,
            self.plates.len(),
        ]
        .into_iter()
        .fold(1, |product, list| product.saturating_mul(list.max(1)))
    }
}

/// Lengths in millimetres, without the unit.
fn listed(lengths: &[f64]) -> String {
    let numbers = lengths
        .iter()
        .map(|length| units::number(Shown::Millimetre.from_si(*length), Digits::Significant(3)));
    numbers.collect::<Vec<_>>().join(", ")
}

/// Lengths that differ by less are the same, written in other units \[m\].
const SAME: f64 = 1e-9;

/// Most combinations that are tried: some seconds on a slow machine.
const MOST_COMBINATIONS: usize = 20_000;

/// What of a joint decides which sizes it can have.
struct Sizable<'b> {
    bolt: Option<&'b Bolt>,
    in_rail: bool,
    has_sleeve: bool,
    has_plate: bool,
}

impl Joint {
    /// Asks for sizes that hold, out of the usual ones where the file names none.
    pub fn ask_for_sizes(&mut self) {
        let choices = usual(&Sizable {
            bolt: Some(&self.bolt),
            in_rail: self.base.rail().is_some(),
            has_sleeve: self.sleeve.is_some(),
            has_plate: self.plate.is_some(),
        });
        self.choices.get_or_insert(choices);
    }
}

const METRIC: [&str; 5] = ["M8", "M10", "M12", "M14", "M16"];
const COARSE: [&str; 5] = [
    "5/16-18 UNC",
    "3/8-16 UNC",
    "7/16-14 UNC",
    "1/2-13 UNC",
    "5/8-11 UNC",
];
const FINE: [&str; 5] = [
    "5/16-24 UNF",
    "3/8-24 UNF",
    "7/16-20 UNF",
    "1/2-20 UNF",
    "5/8-18 UNF",
];

/// Outside diameters of precision tube that is usually at hand \[mm\].
const SLEEVES: [f64; 9] = [16.0, 18.0, 20.0, 22.0, 25.0, 28.0, 30.0, 35.0, 40.0];

/// Thicknesses of flat bar and plate that are usually at hand \[mm\].
const PLATES: [f64; 6] = [4.0, 5.0, 6.0, 8.0, 10.0, 12.0];

/// Usual threads of the system of a bolt, fine where an inch bolt is.
fn usual_threads(bolt: Option<&Bolt>) -> Vec<Thread> {
    let names = match bolt.map(|bolt| bolt.thread) {
        Some(thread) if thread.series == Series::Unified => {
            if thread.name.ends_with("UNF") {
                FINE
            } else {
                COARSE
            }
        }
        _ => METRIC,
    };
    names.into_iter().filter_map(Thread::find).collect()
}

/// Usual classes of the metal of a bolt: stainless of its own alloy, steel by the system of its thread.
fn usual_grades(bolt: Option<&Bolt>) -> Vec<Grade> {
    let names = match bolt {
        Some(bolt) if bolt.grade.metal == Metal::Stainless => {
            if bolt.grade.name.starts_with("A4") {
                ["A4-70", "A4-80"]
            } else {
                ["A2-70", "A2-80"]
            }
        }
        Some(bolt) if bolt.thread.series == Series::Unified => ["grade 5", "grade 8"],
        _ => ["8.8", "10.9"],
    };
    names.into_iter().filter_map(Grade::find).collect()
}

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
pub(super) fn read_choices(
    section: &Section<'_>,
    base: Option<&Base>,
    bolt: Option<&Bolt>,
) -> Option<Option<Choices>> {
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
    let sizable = Sizable {
        bolt,
        in_rail: matches!(base, Some(Base::Rail(_))),
        has_sleeve: section.has("sleeve"),
        has_plate: section.has("plate"),
    };
    let given = section.judged("choose", |inner| read_lists(inner, &sizable));
    if !wanted? {
        return Some(None);
    }
    if given.is_none() {
        let usual = usual(&sizable).words();
        section.assume("choose", format!("{usual}; as many bolts as there are"));
    }
    let choices = given.unwrap_or_else(|| Some(usual(&sizable)))?;
    let count = choices.combinations(sizable.has_sleeve);
    if count > MOST_COMBINATIONS {
        section.refuse(
            "choose",
            Code::WrongNumberOfItems,
            format!(
                "{} makes {count} combinations; at most {MOST_COMBINATIONS} are tried",
                section.key_name("choose")
            ),
            "every size is tried with every class, count, sleeve and plate; shorten the longest lists",
        );
        return None;
    }
    Some(Some(choices))
}

fn usual(sizable: &Sizable<'_>) -> Choices {
    let metres = |list: &[f64], wanted: bool| match wanted {
        true => list.iter().map(|mm| mm * 1e-3).collect(),
        false => Vec::new(),
    };
    Choices {
        threads: usual_threads(sizable.bolt),
        grades: usual_grades(sizable.bolt),
        counts: Vec::new(),
        sleeves: metres(&SLEEVES, sizable.in_rail),
        plates: metres(&PLATES, sizable.has_plate),
    }
}

fn read_lists(section: Section<'_>, sizable: &Sizable<'_>) -> Option<Choices> {
    let usual = usual(sizable);
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
    for (key, why_not, words) in [
        ("sizes", None, names(&usual.threads, |thread| thread.name)),
        ("classes", None, names(&usual.grades, |grade| grade.name)),
        (
            "sleeves",
            (!sizable.in_rail).then_some("a solid part takes no sleeve"),
            format!("{} mm", listed(&usual.sleeves)),
        ),
        (
            "plates",
            (!sizable.has_plate).then_some("the joint has no `plate`"),
            format!("{} mm", listed(&usual.plates)),
        ),
    ] {
        match (section.has(key), why_not) {
            (true, Some(why)) => section.assume(key, format!("not tried: {why}")),
            (false, None) => section.assume(key, words),
            _ => {}
        }
    }
    let lists = Choices {
        threads: threads.unwrap_or(usual.threads),
        grades: grades.unwrap_or(usual.grades),
        counts: counts.unwrap_or(usual.counts),
        sleeves: sleeves.filter(|_| sizable.in_rail).unwrap_or(usual.sleeves),
        plates: plates.filter(|_| sizable.has_plate).unwrap_or(usual.plates),
    };
    section.finish();
    Some(lists.sorted())
}

fn names<T>(list: &[T], name: impl Fn(&T) -> &'static str) -> String {
    list.iter().map(name).collect::<Vec<_>>().join(", ")
}
