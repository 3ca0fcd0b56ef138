//! Reads one `[isolator.NAME]`: its kind first, then what every kind has.

use std::ops::Range;
use std::sync::Arc;

use super::altered::{MeasuredAs, Scaled};
use super::description::Description;
use super::one_sided::LiftsOff;
use super::stiffening::{self, Progressive};
use super::strain::StrainMeasure;
use super::{
    AXIS_NAMES, Isolator, KINDS, Kind, Tension, dynamic, limit, reach, rod, service, stop,
};
use crate::diagnostic::{Code, Diagnostic, did_you_mean};
use crate::model::reader::{Bound, Section, quoted};
use crate::spatial::Vec3;
use crate::units::{Digits, Quantity, Shown, show};

/// What its law takes for granted of a part that lifts off.
const LIFTS_OFF: &str = "Pulled along w it lifts off its seat and holds nothing; across w it is taken to be located by a bolt or a spigot, also while it is lifted";

/// Reads one `[isolator.NAME]`; `None` when something in it is wrong.
pub(in crate::model) fn read(name: &str, section: Section<'_>) -> Option<Isolator> {
    section.must_have(&[("kind", "how the isolator is described, such as \"rates\"")]);
    // Without its kind nobody knows which keys it takes, so they are not judged.
    let kind = read_kind(name, &section)?;
    let described = match (kind.read)(&section) {
        Some(as_described) => measured(&section, as_described),
        None => {
            // Asked for, so that it is no unknown key while another one is wrong.
            let _ = section.has("measured_rates");
            None
        }
    };
    let described = described.as_ref();
    let is_rod = kind.word == rod::KIND.word;
    let rotational = read_rotational(&section, is_rod);
    let service = service::read(&section, described);
    let dynamics = dynamic::read(&section, described);
    let stiffening = stiffening::read(&section);
    let stops = stop::read(&section);
    let limits = limit::read(&section);
    let scatter = section.ratio("scatter", Bound::Within(0.0, 0.9));
    let tension = read_tension(&section, is_rod, described);
    let has_fluid = described.is_some_and(|described| described.fluid.is_some());
    if has_fluid && tension == Some(Tension::None) {
        section.refuse(
            "tension",
            Code::Conflict,
            format!(
                "{} says that it lifts off, but the chambers hold it both ways",
                section.key_name("tension")
            ),
            "a mount with fluid inside is bolted on both sides: write `\"avoid\"` or `\"allowed\"`",
        );
    }
    if is_rod {
        refuse_across_a_rod(&section);
    }
    if let (Some(stops), Some(limits)) = (&stops, &limits) {
        limit::warn_of_idle(&section, stops, limits);
    }
    reach::warn(&section, stops.as_ref(), stiffening.as_ref(), described);
    let has_rotational = !is_rod && section.has("rotational_rates");
    if let (false, Some(described)) = (section.has("scatter"), described) {
        section.assume(
            "scatter",
            format!(
                "{}: scatter of the rate usual for {} (common practice)",
                described.usual.scatter, described.usual.of
            ),
        );
    }
    section.finish();
    let (described, service) = (described?, service?);
    let tension = tension.unwrap_or(described.usual.tension);
    let lifts_off = tension == Tension::None;
    let mut remarks = described.remarks.clone();
    if lifts_off {
        remarks.extend_from_slice(&described.when_loose);
        remarks.push(LIFTS_OFF.to_owned());
    } else {
        remarks.extend_from_slice(&described.when_held);
    }
    let mut law = Arc::clone(&described.law);
    if (service.rate_factor - 1.0).abs() > 0.0 {
        law = Arc::new(Scaled::new(law, service.rate_factor));
    }
    if let Some(stiffening) = stiffening? {
        law = Arc::new(Progressive::new(law, stiffening));
    }
    if lifts_off {
        law = Arc::new(LiftsOff::new(law));
    }
    let as_new = if has_rotational {
        rotational?
    } else {
        described.rotational
    };
    let rotational = as_new * service.rate_factor;
    let mut dynamics = dynamics?;
    dynamics.fluid = described
        .fluid
        .map(|fluid| fluid.with_rubber(service.rate_factor));
    Some(Isolator {
        rotational,
        is_rod: described.is_rod,
        stops: stops?,
        limits: limits?,
        strain: described.strain.map(|strain| {
            if lifts_off {
                strain.lifting_off()
            } else {
                strain
            }
        }),
        measured: described.measured,
        dynamics,
        scatter: scatter.unwrap_or(described.usual.scatter),
        tension,
        creep: service.creep,
        compound: described.compound,
        heat_limit: service.heat_limit,
        remarks,
        ..Isolator::new(name, kind.word, law)
    })
}

/// Stated rates about u, v, w.
fn read_rotational(section: &Section<'_>, is_rod: bool) -> Option<Vec3> {
    if is_rod {
        section.refuse_foreign(
            "rotational_rates",
            "is given to a rod, whose eyes turn freely",
            "take it out: a rod pushes and pulls along its line only",
        );
        return None;
    }
    section.per_axis(
        "rotational_rates",
        Quantity::AngularRate,
        Bound::Stated(0.0, 1e9, "between 0 and 1e9 N m/rad"),
    )
}

/// Whether it may be pulled, as the file says; a bush and a rod hold both ways, so that nothing can be chosen.
fn read_tension(
    section: &Section<'_>,
    is_rod: bool,
    described: Option<&Description>,
) -> Option<Tension> {
    let in_tubes = described
        .is_some_and(|described| matches!(described.strain, Some(StrainMeasure::Bush { .. })));
    if is_rod || in_tubes {
        section.refuse_foreign(
            "tension",
            "is given to a part that is captive both ways",
            "take it out: a bush and a rod hold pushed and pulled alike",
        );
        return None;
    }
    section.choice_like(
        "tension",
        &[
            ("allowed", Tension::Allowed),
            ("avoid", Tension::Avoid),
            ("none", Tension::None),
        ],
        &[("yes", "allowed"), ("ok", "allowed")],
        "`\"allowed\"` where it may be pulled along w, `\"avoid\"` where it should not be, `\"none\"` where it lifts off",
    )
}

/// A rod acts along w only, so nothing of it can be met or limited across.
fn refuse_across_a_rod(section: &Section<'_>) {
    for key in ["stops", "stiffening", "limits"] {
        // One that is no table was told already.
        let Some(table) = section
            .has_table(key)
            .then(|| section.section(key))
            .flatten()
        else {
            continue;
        };
        for axis in ["u", "v"] {
            table.refuse_foreign(
                axis,
                "is given to a rod, which acts along w only",
                "take it out, and give what lies along the rod as `w`",
            );
        }
    }
}

fn read_kind(name: &str, section: &Section<'_>) -> Option<&'static Kind> {
    let word = section.text("kind")?;
    let kind = KINDS.iter().find(|kind| kind.word == word);
    if kind.is_none() {
        section.note(unknown_kind(name, word, section.span_of("kind")));
    }
    kind
}

/// The kind that was probably meant, then all of them with what each is.
fn unknown_kind(name: &str, word: &str, place: Option<Range<usize>>) -> Diagnostic {
    let lower = word.trim().to_lowercase();
    let meant = KINDS
        .iter()
        .find(|kind| kind.others.contains(&lower.as_str()))
        .map(|kind| kind.word)
        .or_else(|| did_you_mean(word, KINDS.iter().map(|kind| kind.word)));
    let all: Vec<String> = KINDS
        .iter()
        .map(|kind| format!("{} ({})", quoted(kind.word), kind.gloss))
        .collect();
    let message = format!("unknown kind of isolator `{name}`: {}", quoted(word));
    let problem = Diagnostic::error(Code::UnknownIsolatorKind, message, place).label("not a kind");
    let problem = match meant {
        Some(meant) => problem.help(format!("did you mean {}?", quoted(meant))),
        None => problem,
    };
    problem.help(format!("kinds: {}", all.join(", ")))
}

/// Puts measured rates in the place of computed ones, and says how far they differ.
fn measured(section: &Section<'_>, mut description: Description) -> Option<Description> {
    if !description.is_computed {
        let refused = section.refuse_foreign(
            "measured_rates",
            "stands beside rates that are no formula's",
            "these rates are taken as they are written; take `measured_rates` out",
        );
        return (!refused).then_some(description);
    }
    if !section.has("measured_rates") {
        return Some(description);
    }
    let rates = rates_of(section, "measured_rates", &description)?;
    let tangent = description.law.at(&Vec3::zeros()).tangent;
    let computed = Vec3::new(tangent[(0, 0)], tangent[(1, 1)], tangent[(2, 2)]);
    for (axis, name) in AXIS_NAMES.into_iter().enumerate() {
        if (rates[axis] > 0.0) != (computed[axis] > 0.0) {
            section.refuse(
                "measured_rates",
                Code::OutOfRange,
                format!(
                    "{} must be above zero along the axes that have a rate, and only there: along {name}",
                    section.key_name("measured_rates")
                ),
                "give the rates along u, v, w as they were measured",
            );
            return None;
        }
        if computed[axis] > 0.0 {
            description.remarks.push(format!(
                "Along {name} the measured rate {} stands in place of {} from the formula ({:+.0} %)",
                in_words(rates[axis]),
                in_words(computed[axis]),
                (rates[axis] / computed[axis] - 1.0) * 100.0
            ));
        }
    }
    let share = rates.zip_map(&computed, |measured, computed| {
        if computed > 0.0 {
            measured / computed
        } else {
            1.0
        }
    });
    description.law = Arc::new(MeasuredAs::new(description.law, share));
    Some(description)
}

/// Rates along u, v, w, or the one of a rod along its line.
pub(super) fn rates_of(
    section: &Section<'_>,
    key: &'static str,
    description: &Description,
) -> Option<Vec3> {
    if description.is_rod && section.holds_one_number(key) {
        let along = section.quantity(key, Quantity::LinearRate, Bound::RATE_OR_NONE)?;
        return Some(Vec3::new(0.0, 0.0, along));
    }
    section.per_axis(key, Quantity::LinearRate, Bound::RATE_OR_NONE)
}

fn in_words(rate: f64) -> String {
    show(rate, Shown::NewtonPerMillimetre, Digits::Significant(3))
}
