//! Reads free travels along u, v, w and what is met at their ends.

use super::AxisStops;
use crate::diagnostic::Code;
use crate::model::isolator::AXIS_NAMES;
use crate::model::reader::{Bound, Ends, Section};
use crate::spatial::Vec3;
use crate::units::{Digits, Quantity, Shown, show};

/// Free travel that a file may state \[m\].
const TRAVEL: Bound = Bound::Stated(-1.0, 1.0, "within 1 m either way");

/// How the two free travels are written: the signs are what is most often forgotten.
const TRAVELS: Ends<'_> = Ends {
    example: "[\"-12 mm\", \"10 mm\"]",
    order: "write how far it may be pushed, with a minus, then how far it may be pulled: \
            `[\"-12 mm\", \"10 mm\"]`, at least 0.01 mm each; where it is free for good, `\"none\"`",
};

/// Smallest free travel either way [m]: below it the contact is too abrupt to be followed.
const LEAST_TRAVEL: f64 = 0.01e-3;

/// Over which travel the rate at an end grows from zero to full.
pub(in crate::model::isolator) struct Blend {
    /// Where the file states none \[m\].
    pub(in crate::model::isolator) usual: f64,
    /// Largest share of the smallest free travel.
    pub(in crate::model::isolator) share: f64,
    /// The same in words.
    pub(in crate::model::isolator) share_in_words: &'static str,
}

/// Free travels of the axes that have any, with the rate there; `None` when something in the table is wrong.
///
/// `usual_rate` stands where the table states none [N/m]; without it the table must state one.
pub(in crate::model::isolator) fn read(
    table: Section<'_>,
    usual_rate: Option<f64>,
    blend: &Blend,
) -> Option<[AxisStops; 3]> {
    table.must_have_one_of(
        &["w", "u", "v"],
        "free travel along one axis at least, such as `w = [\"-12 mm\", \"10 mm\"]`",
    );
    let travels = AXIS_NAMES.map(|axis| read_travel(&table, axis));
    let rates = table.per_axis("rate", Quantity::LinearRate, Bound::RATE);
    let has_rate = table.has("rate");
    match usual_rate {
        Some(usual) if !has_rate => table.assume(
            "rate",
            format!(
                "{} (common practice)",
                show(
                    usual,
                    Shown::KilonewtonPerMillimetre,
                    Digits::Significant(1)
                )
            ),
        ),
        Some(_) => {}
        None => table.must_have(&[(
            "rate",
            "what the rate grows by, such as \"600 N/mm\", or three for u, v, w",
        )]),
    }
    let smallest = travels
        .iter()
        .flatten()
        .flatten()
        .flatten()
        .map(|end| end.abs())
        .fold(f64::INFINITY, f64::min);
    let blend = read_blend(&table, blend, blend.share * smallest);
    table.finish();
    let [u, v, w] = travels;
    let travels = [u?, v?, w?];
    let blend = blend?;
    let rates = match usual_rate {
        Some(usual) if !has_rate => Vec3::repeat(usual),
        _ => rates?,
    };
    let [u, v, w] = travels;
    Some(
        [(u, rates.x), (v, rates.y), (w, rates.z)].map(|(travel, rate)| match travel {
            [None, None] => AxisStops::NONE,
            [lower, upper] => AxisStops {
                lower,
                upper,
                rate,
                blend,
            },
        }),
    )
}

/// Travel over which the rate grows, at most `most` \[m\] so that it stays small against the free travel.
fn read_blend(table: &Section<'_>, blend: &Blend, most: f64) -> Option<f64> {
    let in_mm = |length| show(length, Shown::Millimetre, Digits::Decimals(2));
    if !table.has("blend") {
        let taken = blend.usual.min(most);
        table.assume("blend", format!("{} (common practice)", in_mm(taken)));
        return Some(taken);
    }
    let stated = table.quantity("blend", Quantity::Length, Bound::Positive)?;
    if stated > most {
        table.refuse(
            "blend",
            Code::OutOfRange,
            format!(
                "{} must be at most {} of the smallest free travel: {}",
                table.key_name("blend"),
                blend.share_in_words,
                in_mm(most)
            ),
            "a blend this long would be a spring of its own; make it shorter or leave it out",
        );
        return None;
    }
    Some(stated)
}

/// Free travel along one axis: below zero one way, above zero the other, no end where it is free for good.
fn read_travel(table: &Section<'_>, axis: &'static str) -> Option<[Option<f64>; 2]> {
    if !table.has(axis) {
        return Some([None; 2]);
    }
    let travel = table.open_span(axis, Quantity::Length, TRAVEL, &TRAVELS)?;
    let [lower, upper] = travel;
    let is_free = lower.is_none_or(|lower| lower <= -LEAST_TRAVEL)
        && upper.is_none_or(|upper| upper >= LEAST_TRAVEL);
    if !is_free {
        let in_mm = |end: Option<f64>| {
            end.map_or("none".to_owned(), |end| {
                show(end, Shown::Millimetre, Digits::Decimals(2))
            })
        };
        table.refuse(
            axis,
            Code::InsideOut,
            format!(
                "{} must lie on both sides of the free position: {}, {}",
                table.key_name(axis),
                in_mm(lower),
                in_mm(upper)
            ),
            TRAVELS.order,
        );
        return None;
    }
    Some(travel)
}
