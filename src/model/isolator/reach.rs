//! Stops and stiffening of which a deflection never comes to speak: beyond the rubber, or one behind the other.

use super::AXIS_NAMES;
use super::description::Description;
use super::stop::AxisStops;
use crate::diagnostic::{Code, Diagnostic};
use crate::model::reader::Section;
use crate::units::{Digits, Shown, show};

/// Share of its thickness beyond which nothing is known of pressed rubber.
///
/// # Source
/// That of [`Bulge::at`](super::block::compression::Bulge::at).
const MOST_PRESSED: f64 = 0.8;

/// Free travels along u, v, w with what is met at their ends.
type Travels = [AxisStops; 3];

/// Warns of ends that the rubber is pressed flat before, and of stiffening behind a stop.
pub(super) fn warn(
    section: &Section<'_>,
    stops: Option<&Travels>,
    stiffening: Option<&Option<Travels>>,
    described: Option<&Description>,
) {
    let stiffening = stiffening.and_then(Option::as_ref);
    for (key, travels) in [("stops", stops), ("stiffening", stiffening)] {
        if let (Some(travels), Some(described)) = (travels, described) {
            warn_of_flat_rubber(section, key, travels, described);
        }
    }
    if let (Some(stops), Some(stiffening)) = (stops, stiffening) {
        warn_of_stiffening_behind(section, stops, stiffening);
    }
}

fn warn_of_flat_rubber(
    section: &Section<'_>,
    key: &'static str,
    travels: &Travels,
    described: &Description,
) {
    let Some(strain) = &described.strain else {
        return;
    };
    for (place, axis) in AXIS_NAMES.into_iter().enumerate() {
        let ends = [travels[place].lower, travels[place].upper];
        let flat = ends.into_iter().flatten().find_map(|end| {
            let thickness = strain.pressed_thickness(place, end)?;
            (end.abs() >= MOST_PRESSED * thickness).then_some((end, thickness))
        });
        let Some((end, thickness)) = flat else {
            continue;
        };
        let at = section.section(key).and_then(|table| table.span_of(axis));
        section.note(
            Diagnostic::warning(
                Code::BeyondRubber,
                format!(
                    "{} along {axis} is met at {}, where {} of rubber is all but flat",
                    section.key_name(key),
                    in_mm(end),
                    in_mm(thickness)
                ),
                at,
            )
            .label("too far for this rubber")
            .help(format!(
                "give the free travel, at most {:.0} % of the rubber, or look at the size of the rubber again",
                MOST_PRESSED * 100.0
            )),
        );
    }
}

fn warn_of_stiffening_behind(section: &Section<'_>, stops: &Travels, stiffening: &Travels) {
    for ((axis, stops), stiffening) in AXIS_NAMES.into_iter().zip(stops).zip(stiffening) {
        let behind = [
            (stiffening.lower, stops.lower),
            (stiffening.upper, stops.upper),
        ]
        .into_iter()
        .filter_map(|(begins, stop)| begins.zip(stop))
        .find(|(begins, stop)| begins.abs() >= stop.abs());
        let Some((begins, stop)) = behind else {
            continue;
        };
        let at = section
            .section("stiffening")
            .and_then(|table| table.span_of(axis));
        section.note(
            Diagnostic::warning(
                Code::LimitBeyondStop,
                format!(
                    "{} along {axis} begins at {}, behind the stop at {}",
                    section.key_name("stiffening"),
                    in_mm(begins),
                    in_mm(stop)
                ),
                at,
            )
            .label("the stop comes first")
            .help("let the rubber stiffen before its stop is met, or leave one of them out"),
        );
    }
}

fn in_mm(length: f64) -> String {
    show(length, Shown::Millimetre, Digits::Decimals(1))
}
