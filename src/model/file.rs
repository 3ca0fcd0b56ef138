//! The model file as a whole: bytes to a checked model, or every problem at once.
//!
//! TOML in UTF-8, at most 1 MB and 500 items of a sort. Every value with a
//! dimension is text with its unit, a vector one text with one unit at its end.
//! Each section has its keys in the documentation of its own module.
//!
//! | key | meaning | kind | default |
//! |---|---|---|---|
//! | `title` | title for the report, one line | words | needed |
//! | `notes` | free notes | text | none |
//! | `datum` | see below | table | needed |
//! | `vehicle`, `point`, `clearance` | what is around the powertrain | [`surroundings`] | none |
//! | `part` | what is supported | [`part`] | needed |
//! | `engine`, `driveline` | what drives it | [`drivetrain`] | none |
//! | `isolator` | what it rests on | [`isolator`](super::isolator) | needed |
//! | `mount` | where it rests | [`mount`](super::mount) | needed |
//! | `material`, `rail`, `joint` | how it is bolted | [`material`](super::material), [`rail`](super::rail), [`joint`](super::joint) | none |
//! | `loads`, `load` | what it must stand | [`load`](super::load) | the usual set |
//! | `targets` | what the checks compare with | [`criteria`] | common practice |
//!
//! `[datum]`, what the positions mean:
//!
//! | key | meaning | kind | default |
//! |---|---|---|---|
//! | `origin` | where the origin is, printed in the report | text | needed |
//! | `fitted` | `"free"`: positions with the rubber unloaded; `"settled"`: resting on it | word | needed |

mod joints;
mod loads;
mod supports;
mod syntax;

use toml::de::DeTable;

use super::criteria::Criteria;
use super::load::Context;
use super::part::Part;
use super::reader::{Items, Other, Section, Sink};
use super::surroundings::Vehicle;
use super::{Fitted, Model, criteria, drivetrain, part, surroundings};
use crate::diagnostic::{Code, Diagnostic, Severity};
use crate::model::mass::MassProperties;

/// Largest file that is read \[bytes\]. A build with every section is some 10 kB;
/// the limit keeps the answer to a hostile file quick.
pub const LARGEST_FILE: usize = 1_000_000;

/// A model and what its reader should know about it.
#[derive(Debug, Clone)]
pub struct Checked {
    /// The model.
    pub model: Model,
    /// Warnings, in the order of the file.
    pub warnings: Vec<Diagnostic>,
}

/// Reads a model file.
///
/// # Errors
/// Every problem of the file, in the order of the file, with at least one error among them.
pub fn read(bytes: &[u8]) -> Result<Checked, Vec<Diagnostic>> {
    if bytes.len() > LARGEST_FILE {
        return Err(vec![
            Diagnostic::error(
                Code::TooLarge,
                format!("the file is larger than {} MB", LARGEST_FILE / 1_000_000),
                None,
            )
            .help("a model file is text of a few kilobytes; is this the right file?"),
        ]);
    }
    let text = std::str::from_utf8(bytes).map_err(|error| not_text(error.valid_up_to()))?;
    if let Some(at) = text.find('\0') {
        return Err(not_text(at));
    }
    let (document, unread) = DeTable::parse_recoverable(text);
    if !unread.is_empty() {
        return Err(syntax::problems(text, &unread));
    }
    let sink = Sink::new(text);
    let model = read_sections(Section::root(document.get_ref(), &sink));
    let (diagnostics, assumptions) = sink.into_parts();
    match model {
        Some(mut model) if diagnostics.iter().all(|d| d.severity < Severity::Error) => {
            model.assumptions = assumptions;
            Ok(Checked {
                model,
                warnings: diagnostics,
            })
        }
        _ => Err(diagnostics),
    }
}

/// A file that is no UTF-8 text from a byte on; zero bytes are what UTF-16 text looks like.
fn not_text(good_bytes: usize) -> Vec<Diagnostic> {
    vec![
        Diagnostic::error(
            Code::NotText,
            format!("the file is not UTF-8 text from byte {} on", good_bytes + 1),
            None,
        )
        .help("save it again as plain text in UTF-8"),
    ]
}

/// `None` when something is wrong; the sink knows what.
fn read_sections(root: Section<'_>) -> Option<Model> {
    root.must_have(&[
        ("title", "a title for the report"),
        (
            "datum",
            "`[datum]` with `origin` in words and `fitted = \"free\"` or `\"settled\"`",
        ),
        ("part", "`[[part]]`, at least one thing that has weight"),
        ("isolator", "`[isolator.NAME]`, what the mounts are made of"),
        ("mount", "`[[mount]]`, at least one"),
    ]);
    root.refuse_empty("part", "`[[part]]`, at least one thing that has weight");
    root.refuse_empty("isolator", "`[isolator.NAME]`, what the mounts are made of");
    root.refuse_empty("mount", "`[[mount]]`, at least one");
    let title = root.name("title");
    let notes = root.text("notes").map(str::to_owned);
    let datum = root.judged("datum", read_datum);
    let vehicle = root.judged("vehicle", surroundings::read_vehicle);
    let engine = root.judged("engine", drivetrain::read_engine);
    let driveline = root.judged("driveline", |section| {
        drivetrain::read_driveline(section, Other::from_read(&engine))
    });

    let Items {
        sections,
        names: part_names,
    } = root.items("part", "part");
    let parts = read_all(sections, part::read);
    let (isolators, mounts, mount_names) = supports::read_supports(&root);
    let (rails, joints) = joints::read_joints(&root, &mounts, &mount_names);
    let Items {
        sections,
        names: point_names,
    } = root.items("point", "point");
    let points = read_all(sections, |section| {
        surroundings::read_point(section, &part_names)
    });
    let clearances = read_all(root.items("clearance", "clearance").sections, |section| {
        surroundings::read_clearance(section, &point_names)
    });
    let context = Context {
        parts: &part_names,
        mounts: &mount_names,
        point_names: &point_names,
        points: &points,
        engine: Other::from_read(&engine),
        driveline: Other::from_read(&driveline),
        vehicle: Other::from_read(&vehicle),
    };
    let (loads, modes_at) = loads::read_loads(&root, &context);
    let criteria = root
        .section("targets")
        .map_or_else(Criteria::default, criteria::read);

    let parts: Option<Vec<_>> = parts.into_iter().collect();
    let mass = parts
        .as_ref()
        .and_then(|parts| total_mass(&root, parts, Other::from_read(&vehicle)));
    root.finish();

    let (origin, fitted) = datum??;
    Some(Model {
        title: title?,
        notes,
        origin,
        fitted,
        vehicle: optional(vehicle)?,
        parts: parts?,
        engine: optional(engine)?,
        driveline: optional(driveline)?,
        isolators: isolators.into_iter().collect::<Option<_>>()?,
        mounts: mounts.into_iter().collect::<Option<_>>()?,
        loads: loads?,
        modes_at: modes_at?,
        points: points.into_iter().collect::<Option<_>>()?,
        clearances: clearances.into_iter().collect::<Option<_>>()?,
        rails: rails.into_iter().collect::<Option<_>>()?,
        joints: joints.into_iter().collect::<Option<_>>()?,
        criteria,
        assumptions: Vec::new(),
        mass: mass?,
    })
}

/// Mass properties of all parts together; they must fit into the vehicle.
fn total_mass(
    root: &Section<'_>,
    parts: &[Part],
    vehicle: Other<'_, Vehicle>,
) -> Option<MassProperties> {
    let Some(total) = MassProperties::combine(parts.iter().map(|part| &part.mass)) else {
        // Without parts that has been said; with parts only rounding can do it.
        if !parts.is_empty() {
            root.refuse(
                "part",
                Code::ImpossibleInertia,
                "the parts together have no usable inertia",
                "check their places, masses and inertias",
            );
        }
        return None;
    };
    if let Other::Read(vehicle) = vehicle
        && vehicle.mass < total.mass()
    {
        root.refuse(
            "vehicle",
            Code::OutOfRange,
            format!(
                "`vehicle.mass` is below the {:.1} kg of its own powertrain: {:.1} kg",
                total.mass(),
                vehicle.mass
            ),
            "give the mass of the whole vehicle, powertrain included",
        );
        return None;
    }
    Some(total)
}

/// Turns "absent or read or broken" into "absent or read", or `None` when broken.
fn optional<T>(read: Option<Option<T>>) -> Option<Option<T>> {
    match read {
        Some(None) => None,
        Some(Some(value)) => Some(Some(value)),
        None => Some(None),
    }
}

fn read_all<'a, T>(
    sections: Vec<Section<'a>>,
    read: impl Fn(Section<'a>) -> Option<T>,
) -> Vec<Option<T>> {
    sections.into_iter().map(read).collect()
}

fn read_datum(section: Section<'_>) -> Option<(String, Fitted)> {
    section.must_have(&[
        ("origin", "where the origin of all positions is, in words"),
        (
            "fitted",
            "\"free\" when the positions are those with the rubber unloaded, \"settled\" when they were measured with the powertrain resting on it",
        ),
    ]);
    let origin = section.text("origin").map(str::to_owned);
    let fitted = section.choice(
        "fitted",
        &[("free", Fitted::Free), ("settled", Fitted::Settled)],
    );
    section.finish();
    Some((origin?, fitted?))
}
