//! Kind `curve`: force against deflection as a press measured it, axis by axis.
//!
//! Write the loading branch, after the part has been worked in. A part that is
//! measured one way only is taken as the same the other way, so that numbers
//! without a minus will do; one that differs is written with both ways in one
//! list, pushed along `w` with minus signs.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `curve` | measured points of one axis at least: the keys below | table | needed |
//! | `curve.u`, `curve.v`, `curve.w` | 2 to 200 pairs `["2 mm", "0.7 kN"]` in order of deflection, the force never falling, `["0 mm", "0 N"]` among them | lists of length and force | rate of `rates` |
//! | `rates` | static rates along the axes without points, 0 along the others | linear rate | needed while an axis has no points |
//! | `rubber` | what the rubber is: see [`rubber`](super::rubber) | word | `"natural"` |

pub mod monotone;

use std::sync::Arc;

use super::rates;
use super::rubber::read_compound;
use super::{AXIS_NAMES, AxisPoint, Description, Kind, Law, LawPoint};
use crate::diagnostic::{Code, Diagnostic};
use crate::model::reader::{Bound, Column, Pair, Section};
use crate::spatial::Vec3;
use crate::units::{Digits, Quantity, Shown, show};
use monotone::{CurveFault, MonotoneCurve};

pub(super) const KIND: Kind = Kind {
    word: "curve",
    gloss: "measured force against deflection",
    others: &["measured", "table", "points"],
    read,
};

/// Most points of one axis: a press writes thousands, of which every tenth or hundredth says the same.
const MOST_POINTS: usize = 200;

/// Least distance of two points \[m\]: far below what a press resolves, and a rate between nearer ones is noise.
const NEAREST: f64 = 1e-6;

/// Share by which a distance may miss that for the rounding of both ends.
const ROUNDING: f64 = 1e-6;

/// Deflection and force of a point.
const COLUMNS: [Column; 2] = [
    Column {
        quantity: Quantity::Length,
        bound: Bound::Stated(-1.0, 1.0, "within 1 m either way"),
    },
    Column {
        quantity: Quantity::Force,
        bound: Bound::FORCE,
    },
];

/// How a curve is written.
const EXAMPLE: &str = "w = [[\"0 mm\", \"0 N\"], [\"2 mm\", \"0.7 kN\"], [\"5 mm\", \"2.1 kN\"]]";

/// What is known along one axis.
#[derive(Debug, Clone, PartialEq)]
pub enum Axis {
    /// A constant rate [N/m], none negative.
    Rate(f64),
    /// A measured curve.
    Measured(MonotoneCurve),
}

/// Three axes that know nothing of each other, each with a curve or a rate.
#[derive(Debug, Clone, PartialEq)]
pub struct Curves {
    /// Along u, v, w.
    pub axes: [Axis; 3],
}

impl Law for Curves {
    fn at(&self, x: &Vec3) -> LawPoint {
        LawPoint::of_axes([0, 1, 2].map(|axis| match &self.axes[axis] {
            Axis::Rate(rate) => AxisPoint::of_rate(*rate, x[axis]),
            Axis::Measured(curve) => curve.at(x[axis]),
        }))
    }
}

fn read(section: &Section<'_>) -> Option<Description> {
    section.must_have(&[(
        "curve",
        "measured points, such as `curve = { w = [[\"0 mm\", \"0 N\"], [\"5 mm\", \"2.1 kN\"]] }`",
    )]);
    let compound = read_compound(section);
    let table = section.section("curve");
    // Asked for even when the curves are wrong, so that `rates` is a known key.
    let has_rates = section.has("rates");
    let table = table?;
    table.must_have_one_of(
        &["w", "u", "v"],
        &format!("points along one axis at least, such as `{EXAMPLE}`"),
    );
    let mut remarks = Vec::new();
    let mut measured = [None; 3];
    let read = [0, 1, 2].map(|axis| {
        let key = AXIS_NAMES[axis];
        if !table.has(key) {
            return Some(None);
        }
        let (curve, count) = read_axis(&table, key)?;
        let [low, high] = curve.range();
        measured[axis] = Some([low, high]);
        remarks.push(format!(
            "Along {key} the force follows a curve through {count} measured points from {} to {}, beyond which its last rate goes on",
            in_mm(low),
            in_mm(high)
        ));
        Some(Some(curve))
    });
    table.finish();
    let [u, v, w] = read;
    let curves = [u?, v?, w?];
    let is_measured = curves.each_ref().map(Option::is_some);
    if !is_measured.contains(&true) {
        return None;
    }
    let rates = read_rates(section, is_measured, has_rates)?;
    let [u, v, w] = curves;
    let axes = [(u, rates.x), (v, rates.y), (w, rates.z)]
        .map(|(curve, rate)| curve.map_or(Axis::Rate(rate), Axis::Measured));
    Some(Description {
        measured,
        compound: Some(compound?),
        remarks,
        ..Description::new(Arc::new(Curves { axes }), rates::usual())
    })
}

/// Rates of the axes without a curve; zero along the others.
fn read_rates(section: &Section<'_>, is_measured: [bool; 3], has_rates: bool) -> Option<Vec3> {
    let without: Vec<&str> = (0..3)
        .filter(|axis| !is_measured[*axis])
        .map(|axis| AXIS_NAMES[axis])
        .collect();
    let zeros = is_measured.map(|measured| if measured { "0" } else { "80" });
    let example = format!("`rates = \"{} N/mm\"`", zeros.join(", "));
    if !has_rates {
        if without.is_empty() {
            return Some(Vec3::zeros());
        }
        section.must_have(&[(
            "rates",
            &format!(
                "static rates along {}, where no curve is given, such as {example}; a plain block of \
                 rubber has across about a quarter to a fifth of its rate along w (common practice)",
                without.join(" and ")
            ),
        )]);
        return None;
    }
    let rates = section.per_axis("rates", Quantity::LinearRate, Bound::RATE_OR_NONE)?;
    for (axis, name) in AXIS_NAMES.into_iter().enumerate() {
        if is_measured[axis] && rates[axis] > 0.0 {
            section.refuse(
                "rates",
                Code::Conflict,
                format!(
                    "{} holds a rate along {name}, which has a curve",
                    section.key_name("rates")
                ),
                if without.is_empty() {
                    "every axis has a curve: take `rates` out".to_owned()
                } else {
                    format!("write 0 along each axis with a curve, such as {example}")
                },
            );
            return None;
        }
    }
    Some(rates)
}

/// The curve of one axis and the number of points it was made of.
fn read_axis(table: &Section<'_>, key: &'static str) -> Option<(MonotoneCurve, usize)> {
    let mut pairs = table.pairs(key, COLUMNS)?;
    let count = pairs.len();
    if count > MOST_POINTS {
        table.refuse(
            key,
            Code::WrongNumberOfItems,
            format!("too many points in {}: {count}", table.key_name(key)),
            format!("at most {MOST_POINTS} are taken: keep every tenth or so"),
        );
        return None;
    }
    let deflection = |pair: Option<&Pair>| pair.map_or(0.0, |pair| pair.values[0]);
    if deflection(pairs.first()) > deflection(pairs.last()) {
        // Written from the free position on down.
        pairs.reverse();
    }
    let one_sided = deflection(pairs.first()) >= 0.0 || deflection(pairs.last()) <= 0.0;
    let measured: Vec<[f64; 2]> = pairs.iter().map(|pair| pair.values).collect();
    let found = MonotoneCurve::through(&measured);
    if let Err(fault) = found {
        refuse(table, key, &pairs, fault);
        return None;
    }
    if let Some(place) = (1..pairs.len()).find(|place| {
        deflection(pairs.get(*place)) - deflection(pairs.get(place - 1))
            < NEAREST * (1.0 - ROUNDING)
    }) {
        table.note(
            Diagnostic::error(
                Code::ImpossibleCurve,
                format!(
                    "{} has two points nearer than {} at {}",
                    table.key_name(key),
                    show(NEAREST, Shown::Millimetre, Digits::Decimals(3)),
                    in_mm(deflection(pairs.get(place)))
                ),
                pairs.get(place).map(|pair| pair.place.clone()),
            )
            .label("this point")
            .help("no press tells such points apart: leave one of them out"),
        );
        return None;
    }
    if deflection(pairs.last()) - deflection(pairs.first()) > 0.0
        && measured.iter().all(|[_, force]| force.abs() <= 0.0)
    {
        table.refuse(
            key,
            Code::ImpossibleCurve,
            format!("{} has no force at any point", table.key_name(key)),
            "give the forces as measured; an axis that moves freely has a rate of 0 in `rates`",
        );
        return None;
    }
    if !one_sided {
        return Some((found.ok()?, count));
    }
    table.assume(
        key,
        "measured one way, taken the same the other way".to_owned(),
    );
    let mirrored = measured.iter().map(|[x, force]| [-x, -force]);
    let mut both: Vec<[f64; 2]> = mirrored
        .chain(measured.iter().copied())
        .filter(|[x, _]| x.abs() > 0.0)
        .chain(std::iter::once([0.0, 0.0]))
        .collect();
    both.sort_by(|[a, _], [b, _]| a.total_cmp(b));
    Some((MonotoneCurve::through(&both).ok()?, count))
}

fn in_mm(x: f64) -> String {
    show(x, Shown::Millimetre, Digits::Significant(3))
}

/// Says what is wrong with a curve, at the point where it is.
fn refuse(table: &Section<'_>, key: &'static str, pairs: &[Pair], fault: CurveFault) {
    let name = table.key_name(key);
    let at = |place: usize| pairs.get(place).map_or([0.0; 2], |pair| pair.values);
    let (place, message, help) = match fault {
        CurveFault::TooFew => {
            table.refuse(
                key,
                Code::WrongNumberOfItems,
                format!("{name} needs two points at least"),
                format!("give points from the free position on, such as `{EXAMPLE}`"),
            );
            return;
        }
        CurveFault::NotThroughZero => {
            table.refuse(
                key,
                Code::ImpossibleCurve,
                format!("{name} has no point at the free position"),
                "add [\"0 mm\", \"0 N\"], and count deflection and force from there",
            );
            return;
        }
        CurveFault::NotRising(place) => {
            let ([before, _], [x, _]) = (at(place - 1), at(place));
            let message = if x < before {
                format!(
                    "the points of {name} are not in order of deflection at {}",
                    in_mm(x)
                )
            } else {
                format!("{name} has two points at one deflection: {}", in_mm(x))
            };
            let help = "write the loading branch alone, each deflection once, in order";
            (place, message, help)
        }
        CurveFault::Falling(place) => {
            let ([_, before], [x, force]) = (at(place - 1), at(place));
            let newtons = |force| show(force, Shown::Newton, Digits::Significant(5));
            let message = format!(
                "the force of {name} falls from {} to {} at {}",
                newtons(before),
                newtons(force),
                in_mm(x)
            );
            let help = "a force has the sign of its deflection, and grows with it; where the part \
                        gives way, end the curve before";
            (place, message, help)
        }
    };
    table.note(
        Diagnostic::error(
            Code::ImpossibleCurve,
            message,
            pairs.get(place).map(|pair| pair.place.clone()),
        )
        .label("this point")
        .help(help),
    );
}
