//! Reads one `[isolator.NAME]`: its kind first, then what every kind has.

use std::sync::Arc;

use super::altered::{MeasuredAs, Scaled};
use super::description::Description;
use super::one_sided::LiftsOff;
use super::stiffening::{self, Progressive};
use super::{AXIS_NAMES, Isolator, KINDS, Kind, Tension, dynamic, limit, service, stop};
use crate::diagnostic::Code;
use crate::model::reader::{Bound, Section, quoted, unknown_name};
use crate::spatial::Vec3;
use crate::units::{Digits, Quantity, Shown, show};

/// Reads one `[isolator.NAME]`; `None` when something in it is wrong.
pub(in crate::model) fn read(name: &str, section: Section<'_>) -> Option<Isolator> {
    section.must_have(&[("kind", "how the isolator is described, such as \"rates\"")]);
    // Without its kind nobody knows which keys it takes, so they are not judged.
    let kind = read_kind(name, &section)?;
    let described = (kind.read)(&section).and_then(|as_described| measured(&section, as_described));
    let described = described.as_ref();
    let rotational = section.per_axis(
        "rotational_rates",
        Quantity::AngularRate,
        Bound::Stated(0.0, 1e9, "between 0 and 1e9 N m/rad"),
    );
    let service = service::read(&section, described);
    let dynamics = dynamic::read(&section, described);
    let stiffening = stiffening::read(&section);
    let stops = stop::read(&section);
    let limits = limit::read(&section);
    let scatter = section.ratio("scatter", Bound::Within(0.0, 0.9));
    let tension = section.choice(
        "tension",
        &[
            ("allowed", Tension::Allowed),
            ("avoid", Tension::Avoid),
            ("none", Tension::None),
        ],
    );
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
    if let (Some(stops), Some(limits)) = (&stops, &limits) {
        limit::warn_of_idle(&section, stops, limits);
    }
    let (has_scatter, has_rotational) = (section.has("scatter"), section.has("rotational_rates"));
    if let (false, Some(described)) = (has_scatter, described) {
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
    let mut law = Arc::clone(&described.law);
    if (service.rate_factor - 1.0).abs() > 0.0 {
        law = Arc::new(Scaled::new(law, service.rate_factor));
    }
    if let Some(stiffening) = stiffening? {
        law = Arc::new(Progressive::new(law, stiffening));
    }
    if tension == Tension::None {
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
        strain: described.strain,
        measured: described.measured,
        dynamics,
        scatter: scatter.unwrap_or(described.usual.scatter),
        tension,
        creep: service.creep,
        compound: described.compound,
        heat_limit: service.heat_limit,
        remarks: described.remarks.clone(),
        ..Isolator::new(name, kind.word, law)
    })
}

fn read_kind(name: &str, section: &Section<'_>) -> Option<&'static Kind> {
    let word = section.text("kind")?;
    let kind = KINDS.iter().find(|kind| kind.word == word);
    if kind.is_none() {
        let words: Vec<&str> = KINDS.iter().map(|kind| kind.word).collect();
        section.note(
            unknown_name(
                Code::UnknownIsolatorKind,
                format!("unknown kind of isolator `{name}`: {}", quoted(word)),
                section.span_of("kind"),
                word,
                &words,
            )
            .label("not a kind"),
        );
    }
    kind
}

/// Puts measured rates in the place of computed ones, and says how far they differ.
fn measured(section: &Section<'_>, mut description: Description) -> Option<Description> {
    if !section.has("measured_rates") {
        return Some(description);
    }
    let rates = section.per_axis("measured_rates", Quantity::LinearRate, Bound::RATE_OR_NONE)?;
    if !description.is_computed {
        section.refuse(
            "measured_rates",
            Code::Conflict,
            format!(
                "{} stands beside rates that are no formula's",
                section.key_name("measured_rates")
            ),
            "this kind takes its rates as they are written; take `measured_rates` out",
        );
        return None;
    }
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

fn in_words(rate: f64) -> String {
    show(rate, Shown::NewtonPerMillimetre, Digits::Significant(3))
}
