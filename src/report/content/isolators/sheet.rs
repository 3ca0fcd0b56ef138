//! All that is known of one isolator, to judge a part by before it is bought.

use crate::model::isolator::{AXIS_NAMES, Isolator, Tension};
use crate::model::{Assumption, Model};
use crate::report::content::table::{Cell, Column, Group, Row, Table};
use crate::report::content::{Block, Line, assumptions, cautions, names, quantity};
use crate::spatial::{STANDARD_GRAVITY, Vec3};
use crate::units::{Digits, Shown};

use super::bounds::{self, Bound, BoundKind};
use super::curve::{self, Curve};
use super::curve_table::curve_table;
use super::rates::{self, Rates};
use super::{sentence, used_by, when_loose};

/// Name and kind.
#[must_use]
pub fn title(isolator: &Isolator) -> String {
    format!("{}: isolator of kind {}", isolator.name, isolator.kind)
}

/// Everything, in reading order.
#[must_use]
pub fn blocks(model: &Model, isolator: &Isolator) -> Vec<Block> {
    let mut blocks = vec![Block::Lines(what_it_is(model, isolator))];
    if !isolator.remarks.is_empty() {
        let remarks = isolator.remarks.iter().map(|remark| sentence(remark));
        blocks.push(Block::List(remarks.collect()));
    }
    blocks.push(heading("Rates at the free position"));
    blocks.push(Block::Table(rates_along(isolator)));
    if isolator.rotational.amax() > 0.0 {
        blocks.push(Block::Table(rates_about(isolator)));
    }
    if isolator.dynamics.fluid.is_some() {
        blocks.push(Block::Table(by_frequency(isolator)));
    }
    blocks.push(heading("In service"));
    blocks.push(Block::Lines(in_service(isolator)));
    blocks.push(heading("How far it may go"));
    blocks.extend(how_far(isolator));
    blocks.push(heading("Force and deflection"));
    blocks.extend(force_and_deflection(model, isolator));
    blocks.push(heading("What was assumed of it"));
    let assumed = assumed_of(model, isolator);
    blocks.push(if assumed.is_empty() {
        Block::paragraph("Nothing: the file says it all.")
    } else {
        Block::Table(assumptions::table_of(assumed))
    });
    blocks.push(Block::paragraph(cautions::IN_ONE_LINE));
    blocks
}

fn heading(text: &str) -> Block {
    Block::Heading(text.to_owned())
}

/// What was taken for granted of one isolator.
pub fn assumed_of<'a>(model: &'a Model, isolator: &Isolator) -> Vec<&'a Assumption> {
    let starts = |name: &str, key: &str| {
        key.strip_prefix("isolator.")
            .and_then(|rest| rest.strip_prefix(name))
            .is_some_and(|rest| rest.starts_with('.'))
    };
    // A name may hold a point; the longest one that fits is the owner.
    let owner = |key: &str| {
        let fitting = model.isolators.iter().map(|other| other.name.as_str());
        fitting
            .filter(|name| starts(name, key))
            .max_by_key(|name| name.len())
    };
    model
        .assumptions
        .iter()
        .filter(|assumption| owner(&assumption.key) == Some(isolator.name.as_str()))
        .collect()
}

fn what_it_is(model: &Model, isolator: &Isolator) -> Vec<Line> {
    let mut lines = Vec::new();
    if let Some(compound) = isolator.compound {
        lines.push(Line::new("rubber", compound.name));
    }
    if isolator.is_rod {
        lines.push(Line::new(
            "acts",
            "along the line between its two eyes, and swings with them",
        ));
    }
    let users = used_by(model, isolator);
    lines.push(Line::new(
        "used by",
        if users.is_empty() {
            "no mount".to_owned()
        } else {
            names::and(&users)
        },
    ));
    lines
}

fn rates_along(isolator: &Isolator) -> Table {
    let rates = Rates::of(isolator);
    let fluid = if isolator.dynamics.fluid.is_some() {
        " With the fluid, the rates in vibration along w are those at 10 Hz."
    } else {
        ""
    };
    Table {
        id: "rates",
        about: "Rates along its axes, w being its main axis.".to_owned(),
        item: "rate",
        columns: AXIS_NAMES
            .into_iter()
            .zip(["along u", "along v", "along w"])
            .map(|(key, head)| Column::number(key, head, Shown::NewtonPerMillimetre))
            .collect(),
        groups: vec![Group::plain(vec![
            rate_row("static", &rates.at_rest),
            rate_row("in small vibration", &rates.small),
            rate_row("in large vibration", &rates.large),
        ])],
        note: Some(format!(
            "Small: micrometres to a tenth of a millimetre, as an engine at idle. \
             Large: a millimetre and more, as roads, starts and stops.{fluid}{}",
            when_loose([isolator])
        )),
    }
}

fn rates_about(isolator: &Isolator) -> Table {
    let rates = Rates::of(isolator);
    Table {
        id: "rotational_rates",
        about: "Rates about its axes.".to_owned(),
        item: "rate",
        columns: AXIS_NAMES
            .into_iter()
            .zip(["about u", "about v", "about w"])
            .map(|(key, head)| Column::number(key, head, Shown::NewtonMetrePerDegree))
            .collect(),
        groups: vec![Group::plain(vec![
            rate_row("static", &rates.turning),
            rate_row("in small vibration", &rates.turning_small),
            rate_row("in large vibration", &rates.turning_large),
        ])],
        note: None,
    }
}

fn rate_row(name: &str, rates: &Vec3) -> Row {
    Row::new(name, rates.iter().copied().map(Cell::Number).collect())
}

fn by_frequency(isolator: &Isolator) -> Table {
    let track = isolator
        .dynamics
        .fluid
        .map(|fluid| quantity::with_unit(fluid.track_frequency_hz(), Shown::Hertz));
    Table {
        id: "fluid",
        about: "Rubber and fluid together along w, by the frequency of a small vibration."
            .to_owned(),
        item: "frequency",
        columns: vec![
            Column::number("storage", "storage rate", Shown::NewtonPerMillimetre),
            Column::number("loss", "loss rate", Shown::NewtonPerMillimetre),
            Column::number("loss_factor", "loss over storage", Shown::Number),
        ],
        groups: vec![Group::plain(
            rates::by_frequency(isolator)
                .iter()
                .map(|at| {
                    let name =
                        quantity::with_digits(at.frequency_hz, Shown::Hertz, Digits::Decimals(0));
                    let cells = [at.storage, at.loss, at.loss / at.storage];
                    Row::new(name, cells.map(Cell::Number).to_vec())
                })
                .collect(),
        )],
        note: track.map(|track| {
            format!("With the rubber held, the fluid swings in its track at {track}.")
        }),
    }
}

fn in_service(isolator: &Isolator) -> Vec<Line> {
    let share = quantity::share;
    let rate_of = |factor: f64| share(1.0 + factor * isolator.scatter);
    let mut lines = vec![
        Line::new(
            "loss factor",
            format!(
                "{} (how strongly it damps: steel some 0.01, rubber some 0.1)",
                quantity::with_unit(isolator.dynamics.loss_factor, Shown::Number)
            ),
        ),
        Line::new(
            "scatter",
            format!(
                "{}: the rate of a piece lies between {} and {} of the numbers here",
                share(isolator.scatter),
                rate_of(-1.0),
                rate_of(1.0)
            ),
        ),
        Line::new(
            "creep",
            if isolator.creep > 0.0 {
                format!(
                    "{} of the deflection at rest further over the years",
                    share(isolator.creep)
                )
            } else {
                "none".to_owned()
            },
        ),
        Line::new(
            "stands heat up to",
            match isolator.heat_limit {
                Some(limit) => quantity::with_digits(limit, Shown::Celsius, Digits::Decimals(0)),
                None => "no limit stated".to_owned(),
            },
        ),
    ];
    lines.push(Line::new(
        "pulled along w",
        match isolator.tension {
            Tension::Allowed => "allowed",
            Tension::Avoid => "to be avoided: a pull is a failed check",
            Tension::None => "lifts off its seat and holds nothing",
        },
    ));
    lines
}

fn how_far(isolator: &Isolator) -> Vec<Block> {
    let bounds = bounds::all(isolator);
    let is_metal = isolator.compound.is_none() && isolator.strain.is_none();
    if bounds.is_empty() && is_metal {
        return vec![Block::paragraph(
            "It holds no rubber, and the file states neither `limits` nor `stops`: \
             what is bolted to it gives way first.",
        )];
    }
    if bounds.is_empty() {
        return vec![Block::paragraph(
            "The file states neither `limits` nor `stops`, and the size of the rubber is not known: \
             nothing tells how far it may go. Ask the maker.",
        )];
    }
    let mut blocks = vec![Block::Table(bounds_table(&bounds))];
    if isolator.strain.is_none() && !is_metal {
        blocks.push(Block::paragraph(
            "The size of the rubber is not known, so nothing is said of its strain.",
        ));
    }
    blocks
}

/// What the words of the file mean.
const MEANING: &str = "Limit: for a long life. Stop: it is touched there.";

fn bounds_table(bounds: &[Bound]) -> Table {
    let mut rows = Vec::new();
    for axis in 0..3 {
        for kind in BoundKind::ALL {
            let of = |sense: f64| {
                let mut found = bounds.iter().filter(|b| b.axis == axis && b.kind == kind);
                found.find(|b| b.deflection * sense > 0.0)
            };
            // One row for both sides where both have the same source.
            match (of(-1.0), of(1.0)) {
                (Some(below), Some(above)) if below.basis == above.basis => {
                    rows.push(bound_row(below, [Some(below), Some(above)]));
                }
                (below, above) => {
                    rows.extend(below.map(|bound| bound_row(bound, [below, None])));
                    rows.extend(above.map(|bound| bound_row(bound, [None, above])));
                }
            }
        }
    }
    Table {
        id: "bounds",
        about: "Deflections along one axis alone, the others at rest.".to_owned(),
        item: "bound",
        columns: vec![
            Column::text("axis", "axis"),
            Column::number("below", "lower", Shown::Millimetre),
            Column::number("above", "upper", Shown::Millimetre),
            Column::text("basis", "from"),
        ],
        groups: vec![Group::plain(rows)],
        note: Some(if bounds.iter().any(|bound| bound.kind.is_strain()) {
            format!(
                "{MEANING} Most: what rubber bears day and night at rest, in the peaks of use, \
                 and a few times in its life in rare loads; where rare loads are not named, as in use."
            )
        } else {
            MEANING.to_owned()
        }),
    }
}

/// A bound on one side or alike on both, below and above.
fn bound_row(bound: &Bound, sides: [Option<&Bound>; 2]) -> Row {
    let axis = AXIS_NAMES.get(bound.axis).copied().unwrap_or_default();
    let mut cells = vec![Cell::Text(axis.to_owned())];
    cells.extend(sides.map(|side| Cell::maybe(side.map(|side| side.deflection))));
    cells.push(Cell::Text(bound.basis.clone()));
    Row::new(bound.kind.word(), cells)
}

fn force_and_deflection(model: &Model, isolator: &Isolator) -> Vec<Block> {
    let curves = curves(model, isolator);
    let signs = if isolator.is_rod {
        "Positive is pulled, negative is pushed."
    } else if isolator.is_pushed_along_w() {
        "Negative along w is compressed. Each curve is that of one axis, the other two at rest."
    } else {
        "w is the centre line of the bush, u and v lie across it. \
         Each curve is that of one axis, the other two at rest."
    };
    let mut blocks = vec![Block::paragraph(signs)];
    blocks.extend(curves.iter().map(|curve| Block::Table(curve_table(curve))));
    blocks
}

/// The curves along all axes that have one.
#[must_use]
pub fn curves(model: &Model, isolator: &Isolator) -> Vec<Curve> {
    let weight = model.mass.mass() * STANDARD_GRAVITY;
    (0..3)
        .filter_map(|axis| curve::curve(isolator, axis, weight))
        .collect()
}
