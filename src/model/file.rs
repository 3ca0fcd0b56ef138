//! The model file as a whole: bytes to a checked model, or every problem at once.

use toml::de::DeTable;

use super::load::{Context, Drive, LoadCase, LoadClass, LoadOrigin, usual};
use super::reader::{Other, Section, Sink};
use super::{Fitted, Model, criteria, drivetrain, isolator, load, mount, part, surroundings};
use crate::diagnostic::{Code, Diagnostic, Severity};
use crate::model::mass::MassProperties;

/// Largest file that is read [bytes]. A build with every section is some 10 kB.
pub const LARGEST_FILE: usize = 2_000_000;

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
    let text = std::str::from_utf8(bytes).map_err(|error| {
        vec![
            Diagnostic::error(
                Code::NotText,
                format!(
                    "the file is not UTF-8 text from byte {} on",
                    error.valid_up_to() + 1
                ),
                None,
            )
            .help("save it again as plain text in UTF-8"),
        ]
    })?;
    let (document, syntax) = DeTable::parse_recoverable(text);
    if !syntax.is_empty() {
        return Err(syntax.iter().map(syntax_problem).collect());
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

fn syntax_problem(error: &toml::de::Error) -> Diagnostic {
    let message = error.message().lines().next().unwrap_or_default();
    Diagnostic::error(Code::Syntax, message.to_owned(), error.span())
        .help("the file is TOML: `key = \"text\"`, sections headed `[name]` or `[[name]]`")
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
    let title = root.name("title");
    let notes = root.text("notes").map(str::to_owned);
    let datum = root.section("datum").map(read_datum);
    let vehicle = root.section("vehicle").map(surroundings::read_vehicle);
    let engine = root.section("engine").map(drivetrain::read_engine);
    let driveline = root
        .section("driveline")
        .map(|section| drivetrain::read_driveline(section, Other::from_read(&engine)));

    let part_sections = named(&root, "part", "part");
    let isolator_sections = root.named_sections("isolator");
    let mount_sections = named(&root, "mount", "mount");
    let point_sections = named(&root, "point", "point");
    let clearance_sections = named(&root, "clearance", "clearance");
    let load_sections = named(&root, "load", "load case");
    let names = |sections: &[Section<'_>]| -> Vec<String> {
        sections
            .iter()
            .map(|section| section.written_name().to_owned())
            .collect()
    };
    let (part_names, mount_names) = (names(&part_sections), names(&mount_sections));
    let point_names = names(&point_sections);
    let isolator_names: Vec<String> = isolator_sections
        .iter()
        .map(|(name, _)| name.clone())
        .collect();

    let parts = read_all(part_sections, part::read);
    let isolator_places: Vec<_> = isolator_sections
        .iter()
        .map(|(_, section)| section.place_of_section())
        .collect();
    let isolators: Vec<_> = isolator_sections
        .into_iter()
        .map(|(name, section)| isolator::read(&name, section))
        .collect();
    let known_isolators = as_slices(&isolator_names);
    let mounts = read_all(mount_sections, |section| {
        mount::read(section, &isolators, &known_isolators)
    });
    for (index, (name, place)) in isolator_names.iter().zip(isolator_places).enumerate() {
        let used = mounts
            .iter()
            .any(|mount| mount.as_ref().is_none_or(|m| m.isolator == index));
        if !used {
            root.note(Diagnostic::warning(
                Code::Unused,
                format!("no mount uses the isolator `{name}`"),
                Some(place),
            ));
        }
    }
    let known_points = as_slices(&point_names);
    let known_parts = as_slices(&part_names);
    let points = read_all(point_sections, |section| {
        surroundings::read_point(section, &known_parts)
    });
    let clearances = read_all(clearance_sections, |section| {
        surroundings::read_clearance(section, &known_points)
    });
    let known_mounts = as_slices(&mount_names);
    let context = Context {
        parts: &known_parts,
        mounts: &known_mounts,
        points: &known_points,
        engine: Other::from_read(&engine),
        driveline: Other::from_read(&driveline),
        vehicle: Other::from_read(&vehicle),
    };
    let own_loads = read_all(load_sections, |section| load::read(section, &context));
    let (loads, modes_at) = read_load_options(&root, own_loads, &context);
    let criteria = criteria::read(root.section("targets"));
    root.finish();

    let parts: Vec<_> = parts.into_iter().collect::<Option<_>>()?;
    let mass = MassProperties::combine(parts.iter().map(|part| &part.mass))?;
    let (origin, fitted) = datum??;
    Some(Model {
        title: title?,
        notes,
        origin,
        fitted,
        vehicle: optional(vehicle)?,
        parts,
        engine: optional(engine)?,
        driveline: optional(driveline)?,
        isolators: isolators.into_iter().collect::<Option<_>>()?,
        mounts: mounts.into_iter().collect::<Option<_>>()?,
        loads: loads?,
        modes_at: modes_at?,
        points: points.into_iter().collect::<Option<_>>()?,
        clearances: clearances.into_iter().collect::<Option<_>>()?,
        criteria,
        assumptions: Vec::new(),
        mass,
    })
}

/// Turns "absent or read or broken" into "absent or read", or `None` when broken.
fn optional<T>(read: Option<Option<T>>) -> Option<Option<T>> {
    match read {
        Some(None) => None,
        Some(Some(value)) => Some(Some(value)),
        None => Some(None),
    }
}

fn named<'a>(root: &Section<'a>, key: &'static str, sort: &str) -> Vec<Section<'a>> {
    let sections = root.sections(key);
    Section::refuse_duplicates(sort, &sections);
    sections
}

fn read_all<'a, T>(
    sections: Vec<Section<'a>>,
    read: impl Fn(Section<'a>) -> Option<T>,
) -> Vec<Option<T>> {
    sections.into_iter().map(read).collect()
}

fn as_slices(names: &[String]) -> Vec<&str> {
    names.iter().map(String::as_str).collect()
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

/// All load cases, the one at rest first, and the places of those about which modes are wanted.
fn read_load_options(
    root: &Section<'_>,
    own: Vec<Option<LoadCase>>,
    context: &Context<'_>,
) -> (Option<Vec<LoadCase>>, Option<Vec<usize>>) {
    let options = root.section("loads");
    let usual_wanted = match &options {
        Some(options) if options.has("usual") => options.flag("usual").unwrap_or(false),
        _ => {
            root.assume(
                "loads.usual",
                "true: the usual set of load cases is added (common practice)",
            );
            true
        }
    };
    let complete = own.iter().all(Option::is_some);
    let mut loads = vec![LoadCase::new(
        LoadCase::AT_REST,
        LoadClass::Service,
        LoadOrigin::AtRest,
    )];
    let own: Vec<LoadCase> = own.into_iter().flatten().collect();
    if usual_wanted {
        let set = usual::cases(context.engine, context.driveline, context.vehicle);
        loads.extend(
            set.into_iter()
                .filter(|case| own.iter().all(|own| own.name != case.name)),
        );
    }
    loads.extend(own);
    let modes_at = match options {
        Some(options) => {
            let names: Vec<&str> = loads.iter().map(|load| load.name.as_str()).collect();
            let given = options.has("modes");
            let wanted = options.references("modes", "load case", &names);
            options.finish();
            if given {
                wanted
            } else {
                Some(default_modes_at(&loads))
            }
        }
        None => Some(default_modes_at(&loads)),
    };
    (complete.then_some(loads), modes_at)
}

/// At rest, and under the largest steady forward torque.
fn default_modes_at(loads: &[LoadCase]) -> Vec<usize> {
    let drives_forward = |load: &LoadCase| match load.drive {
        Some(Drive::Gear { throttle, .. }) => throttle > 0.0,
        Some(Drive::OutputTorque(torque)) => torque > 0.0,
        None => false,
    };
    let full = loads
        .iter()
        .position(|load| load.name == usual::FULL_TORQUE)
        .or_else(|| {
            loads
                .iter()
                .position(|load| drives_forward(load) && !load.is_service_state())
        });
    std::iter::once(0).chain(full).collect()
}
