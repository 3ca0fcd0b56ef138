//! The bolts of a joint.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `bolt.size` | thread, such as `"M10"`, `"M12x1.5"`, `"3/8-16 UNC"`: see [`Thread`] | word | needed |
//! | `bolt.class` | marking on the head, such as `"8.8"`, `"A2-70"`, `"grade 5"`: see [`Grade`] | word | needed |
//! | `bolt.count` | how many, 1 to 50; must agree with `pattern` | count | as `pattern` |
//! | `bolt.friction` | of thread and head: how it is lubricated, see [`Lubrication`], or two numbers `[0.10, 0.16]` | word or 2 ratios | `"as delivered"` |
//! | `bolt.tightened` | how it is tightened: see [`Tightening`] | word | `"torque wrench"` |
//! | `bolt.torque` | torque that it is tightened with | torque | what the bolt bears |
//! | `bolt.length` | below the head, with a plain shank as usual for it | length | the shortest that reaches, in steps of 5 mm |
//! | `bolt.hole` | diameter of the holes | length | usual for the thread |
//! | `bolt.roughness` | roughness Rz of the faces that settle, 0.1 to 500 um | length | 25 um |
//! | `bolt.threads` | `"rolled before heat treatment"`, `"rolled after heat treatment"` or `"cut"` | word | `"rolled before heat treatment"` |
//! | `bolt.coating` | `"bare"`, `"zinc plated"`, `"hot-dip zinc"`, `"painted"`, `"powder coated"`, `"anodised"` | word | `"bare"` |

use crate::diagnostic::Code;
use crate::model::fastener::{Band, Grade, Limits, Lubrication, Thread, Tightening};
use crate::model::material::{Surface, read_surface};
use crate::model::rail::millimetres;
use crate::model::reader::{Bound, Section};
use crate::units::Quantity;

/// How threads were made, which decides how long they last.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Threads {
    /// Rolled, then quenched and tempered: the usual bolt.
    RolledBeforeHeatTreatment,
    /// Quenched and tempered, then rolled.
    RolledAfterHeatTreatment,
    /// Cut.
    Cut,
}

/// A bolt, checked.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Bolt {
    /// Its thread.
    pub thread: Thread,
    /// Its strength class.
    pub grade: Grade,
    /// Stresses that this class bears in this size.
    pub limits: Limits,
    /// How slippery thread and head are.
    pub lubrication: Lubrication,
    /// How it is tightened.
    pub tightening: Tightening,
    /// Torque that it is tightened with [N m]; `None` for what the bolt bears.
    pub torque: Option<f64>,
    /// Length below the head \[m\]; `None` for the shortest that reaches.
    pub length: Option<f64>,
    /// Diameter of the holes \[m\], not below that of the bolt.
    pub hole: f64,
    /// Roughness Rz of the faces that settle \[m\].
    pub roughness: f64,
    /// How its threads were made.
    pub threads: Threads,
    /// What covers it.
    pub surface: Surface,
}

/// Roughness of machined or as-rolled faces, the middle of the usual band \[m\].
///
/// # Source
/// Common practice: Rz 10 to 40 µm.
const ROUGHNESS: f64 = 25e-6;

/// Reads `bolt`, with `count` when it is given.
pub(super) fn read(section: Section<'_>) -> Option<(Bolt, Option<u32>)> {
    section.must_have(&[
        ("size", "its thread, such as \"M10\""),
        ("class", "its strength class, such as \"8.8\""),
    ]);
    let thread = section.word("size", &Thread::names(), Thread::find);
    let grade = section.word("class", &Grade::names(), Grade::find);
    let limits = thread
        .zip(grade)
        .and_then(|(thread, grade)| limits_of(&section, &thread, &grade));
    let count = section.count("count", 1, 50);
    let lubrication = read_lubrication(&section);
    let tightening = read_tightening(&section);
    let torque = section.quantity(
        "torque",
        Quantity::Torque,
        Bound::Stated(0.1, 1e5, "between 0.1 N m and 1e5 N m"),
    );
    let length = section.quantity("length", Quantity::Length, Bound::SIZE);
    let hole = read_hole(&section, thread.as_ref());
    let roughness = section.quantity(
        "roughness",
        Quantity::Length,
        Bound::Stated(1e-7, 5e-4, "between 0.1 um and 500 um"),
    );
    if !section.has("roughness") {
        section.assume(
            "roughness",
            "Rz 25 um, usual for machined and rolled faces (common practice)",
        );
    }
    let threads = section.choice(
        "threads",
        &[
            (
                "rolled before heat treatment",
                Threads::RolledBeforeHeatTreatment,
            ),
            (
                "rolled after heat treatment",
                Threads::RolledAfterHeatTreatment,
            ),
            ("cut", Threads::Cut),
        ],
    );
    let surface = read_surface(&section);
    let has_length = section.has("length");
    section.finish();
    let bolt = Bolt {
        thread: thread?,
        grade: grade?,
        limits: limits?,
        lubrication: lubrication?,
        tightening: tightening?,
        torque,
        length: if has_length { Some(length?) } else { None },
        hole: hole?,
        roughness: roughness.unwrap_or(ROUGHNESS),
        threads: threads.unwrap_or(Threads::RolledBeforeHeatTreatment),
        surface: surface?,
    };
    Some((bolt, count))
}

fn limits_of(section: &Section<'_>, thread: &Thread, grade: &Grade) -> Option<Limits> {
    let limits = grade.limits(thread.nominal);
    if limits.is_none() {
        section.refuse(
            "class",
            Code::OutOfRange,
            format!(
                "{} is not made in this size: {}",
                section.key_name("class"),
                thread.name
            ),
            format!(
                "choose a smaller size than {}, or another class",
                thread.name
            ),
        );
    }
    limits
}

fn read_lubrication(section: &Section<'_>) -> Option<Lubrication> {
    if section.is_list("friction") {
        let [low, high] = section.ratio_band("friction", Bound::Within(0.02, 0.6))?;
        return Some(stated(low, high));
    }
    if section.is_bare_number("friction") {
        section.refuse(
            "friction",
            Code::WrongKind,
            format!("{} needs both ends, found one number", section.key_name("friction")),
            "friction is never known as one number: write a low and a high one such as `[0.10, 0.16]`, or how it is lubricated",
        );
        return None;
    }
    if section.has("friction") {
        return section.word("friction", &Lubrication::names(), Lubrication::find);
    }
    let usual = Lubrication::find("as delivered")?;
    section.assume(
        "friction",
        format!(
            "as delivered: {} to {}",
            usual.friction.low, usual.friction.high
        ),
    );
    Some(usual)
}

/// Friction by numbers, in the class whose band it does not leave upwards.
fn stated(low: f64, high: f64) -> Lubrication {
    let class = match (low, high) {
        (0.08.., ..=0.16) => 'B',
        (_, ..=0.10) => 'A',
        (_, ..=0.24) => 'C',
        (_, ..=0.35) => 'D',
        _ => 'E',
    };
    Lubrication {
        name: "as stated",
        class,
        friction: Band { low, high },
    }
}

fn read_tightening(section: &Section<'_>) -> Option<Tightening> {
    if section.has("tightened") {
        return section.word("tightened", &Tightening::names(), Tightening::find);
    }
    section.assume("tightened", "torque wrench");
    Tightening::find("torque wrench")
}

/// Diameter of the holes: the bolt must go through, and its head must not.
fn read_hole(section: &Section<'_>, thread: Option<&Thread>) -> Option<f64> {
    let hole = section.quantity("hole", Quantity::Length, Bound::SIZE);
    let thread = thread?;
    if !section.has("hole") {
        return Some(thread.hole);
    }
    let hole = hole?;
    if hole < thread.nominal || hole >= thread.head_bearing {
        section.refuse(
            "hole",
            Code::OutOfRange,
            format!(
                "{} must be from the {} of the bolt to below the {} of its head: {}",
                section.key_name("hole"),
                millimetres(thread.nominal),
                millimetres(thread.head_bearing),
                millimetres(hole)
            ),
            format!("usual for this thread: {}", millimetres(thread.hole)),
        );
        return None;
    }
    Some(hole)
}
