//! Key `limits` of an isolator: how far it may be deflected for a long life.

use super::AXIS_NAMES;
use super::stop::AxisStops;
use crate::diagnostic::{Code, Diagnostic};
use crate::model::reader::{Bound, Section};
use crate::units::Quantity;

/// Limits along u, v, w; none when the key is absent.
pub(super) fn read(section: &Section<'_>) -> Option<[Option<f64>; 3]> {
    if !section.has("limits") {
        return Some([None; 3]);
    }
    let limits = section.section_like("limits", "{ u = \"9 mm\", v = \"9 mm\", w = \"12 mm\" }")?;
    let read = AXIS_NAMES.map(|axis| limits.quantity(axis, Quantity::Length, Bound::SIZE));
    limits.finish();
    Some(read)
}

/// A limit that lies beyond the stops on both sides limits little.
pub(super) fn warn_of_idle(
    section: &Section<'_>,
    stops: &[AxisStops; 3],
    limits: &[Option<f64>; 3],
) {
    for ((axis, stops), limit) in AXIS_NAMES.into_iter().zip(stops).zip(limits) {
        let (Some(lower), Some(upper), Some(limit)) = (stops.lower, stops.upper, *limit) else {
            continue;
        };
        if limit <= upper.max(-lower) {
            continue;
        }
        let place = section
            .section("limits")
            .and_then(|limits| limits.span_of(axis));
        section.note(
            Diagnostic::warning(
                Code::LimitBeyondStop,
                format!(
                    "{} is beyond both stops along {axis}: {:.1} mm, stops at {:.1} mm and {:.1} mm",
                    section.key_name("limits"),
                    limit * 1e3,
                    lower * 1e3,
                    upper * 1e3
                ),
                place,
            )
            .label("the stop comes first")
            .help("give the deflection that the rubber bears for a long life, or check the stops"),
        );
    }
}
