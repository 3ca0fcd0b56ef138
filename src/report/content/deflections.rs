//! Section: how far each isolator gives way, against its limits and stops.

use crate::model::isolator::{AXIS_NAMES, Isolator, Tension};
use crate::model::{Fitted, Model};
use crate::rigid::equilibrium::{MountState, StaticEquilibrium};
use crate::spatial::roll_pitch_yaw;
use crate::study::evaluate::{Evaluation, LoadResult};
use crate::units::Shown;

use super::reactions::{at_rest, each_load, held_by};
use super::table::{Cell, Column, Row, Table};
use super::{Block, Drawing, Line, Section, quantity};

/// Below this a deflection is shown as none \[m\]: it rounds to 0.0 mm.
const NOTHING: f64 = 0.05e-3;

/// How the powertrain sinks, the figure and the table of isolator deflections.
#[must_use]
pub fn section(model: &Model, evaluation: &Evaluation) -> Section {
    let mut blocks = Vec::new();
    let motion = motion_at_rest(model, evaluation);
    if !motion.is_empty() {
        blocks.push(Block::Lines(motion));
    }
    blocks.push(Block::plate(Drawing::Deflections));
    blocks.push(Block::Table(table(model, evaluation)));
    Section {
        id: "deflections",
        heading: "Isolator deflections",
        blocks,
    }
}

/// One row a load case and mount.
#[must_use]
pub fn table(model: &Model, evaluation: &Evaluation) -> Table {
    Table {
        id: "deflections",
        about: "How far each isolator itself is deflected, without its bracket and the chassis."
            .to_owned(),
        item: "mount",
        columns: vec![
            Column::number("deflection_u", "along u", Shown::Millimetre),
            Column::number("deflection_v", "along v", Shown::Millimetre),
            Column::number("deflection_w", "along w", Shown::Millimetre),
            Column::words("the way it carries"),
            Column::number("limit_used", "long-life limit used", Shown::Percent),
            Column::text("stop", "stop touched"),
        ],
        groups: each_load(model, evaluation, deflection_rows),
        note: Some(format!(
            "u, v, w are the mount's own axes; w is the isolator's main axis. {} \
             The long-life limit is shown for the direction that uses most of it; whether it counts depends on the class of the load case.",
            signs_along_w(model)
        )),
    }
}

/// What the sign of a deflection along w means for the isolators that mounts use.
fn signs_along_w(model: &Model) -> String {
    let uses = |is_such: fn(&Isolator) -> bool| {
        model.mounts.iter().any(|mount| {
            let isolator = model.isolators.get(mount.isolator);
            isolator.is_some_and(is_such)
        })
    };
    let signs = [
        (
            uses(Isolator::is_pushed_along_w),
            "Negative along w is compressed.",
        ),
        (
            uses(|isolator| !isolator.is_rod && !isolator.is_pushed_along_w()),
            "Of a bush w is the centre line.",
        ),
        (
            uses(|isolator| isolator.is_rod),
            "Of a rod w is its own line, negative is pushed.",
        ),
    ];
    let said: Vec<&str> = signs
        .into_iter()
        .filter_map(|(is_used, words)| is_used.then_some(words))
        .collect();
    said.join(" ")
}

/// Sag and tilt from the fitted position to rest; that the file gives the position at rest when it does.
#[must_use]
pub fn motion_at_rest(model: &Model, evaluation: &Evaluation) -> Vec<Line> {
    let Some((_, found)) = at_rest(evaluation) else {
        return Vec::new();
    };
    if model.fitted == Fitted::Settled {
        return vec![Line::new("sag", "The file gives the position at rest")];
    }
    let [x, y, z] = [0, 1, 2].map(|i| found.displacement[i]);
    let across = [(x, "forward", "back"), (y, "left", "right")]
        .iter()
        .filter(|(d, ..)| d.abs() >= NOTHING)
        .map(|(d, plus, minus)| {
            let way = if *d > 0.0 { plus } else { minus };
            format!("{} {way}", quantity::with_unit(d.abs(), Shown::Millimetre))
        })
        .collect::<Vec<_>>();
    let vertical = if z > 0.0 { "rises" } else { "sinks" };
    let mut moved = format!(
        "{vertical} {}",
        quantity::with_unit(z.abs(), Shown::Millimetre)
    );
    for part in &across {
        moved.push_str(", ");
        moved.push_str(part);
    }
    let [roll, pitch, yaw] =
        roll_pitch_yaw(&found.rotation).map(|a| quantity::with_unit(a, Shown::Degree));
    vec![
        Line::new("centre of gravity, from fitted to rest", moved),
        Line::new(
            "tilt, from fitted to rest",
            format!(
                "roll {roll} (left side up is positive), pitch {pitch} (nose down is positive), yaw {yaw} (nose left is positive)"
            ),
        ),
    ]
}

/// How far an isolator is deflected the way it carries, in words: along its own axis, or across the centre line of a bush.
#[must_use]
pub fn the_way_it_carries(state: &MountState, isolator: Option<&Isolator>) -> String {
    let x = state.isolator_deflection;
    let (how, length) = match isolator {
        Some(isolator) if !isolator.is_rod && !isolator.is_pushed_along_w() => {
            ("pushed across", f64::hypot(x.x, x.y))
        }
        Some(isolator) if isolator.is_rod && x.z < 0.0 => ("pushed", -x.z),
        Some(isolator) if isolator.is_rod => ("pulled", x.z),
        Some(isolator) if isolator.tension == Tension::None && x.z > 0.0 => ("lifted", x.z),
        _ if x.z < 0.0 => ("compressed", -x.z),
        _ => ("stretched", x.z),
    };
    if length < NOTHING {
        return "not deflected".to_owned();
    }
    format!("{how} {}", quantity::with_unit(length, Shown::Millimetre))
}

fn deflection_rows(model: &Model, result: &LoadResult, found: &StaticEquilibrium) -> Vec<Row> {
    held_by(model, result, found)
        .map(|(place, name, state)| {
            let isolator = model
                .mounts
                .get(place)
                .and_then(|mount| model.isolators.get(mount.isolator));
            let x = state.isolator_deflection;
            Row::new(
                name,
                vec![
                    Cell::Number(x.x),
                    Cell::Number(x.y),
                    Cell::Number(x.z),
                    Cell::Text(the_way_it_carries(state, isolator)),
                    Cell::maybe(isolator.and_then(|isolator| limit_used(state, isolator))),
                    Cell::Text(stops_touched(state)),
                ],
            )
        })
        .collect()
}

/// Largest share of a long-life limit that a deflection uses; `None` without limits.
fn limit_used(state: &MountState, isolator: &Isolator) -> Option<f64> {
    state
        .isolator_deflection
        .iter()
        .zip(&isolator.limits)
        .filter_map(|(x, limit)| limit.map(|limit| x.abs() / limit))
        .max_by(f64::total_cmp)
}

fn stops_touched(state: &MountState) -> String {
    let touched: Vec<&str> = AXIS_NAMES
        .into_iter()
        .zip(state.on_stop)
        .filter_map(|(axis, on)| on.then_some(axis))
        .collect();
    if touched.is_empty() {
        "none".to_owned()
    } else {
        touched.join(", ")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::isolator::strain::StrainMeasure;
    use crate::report::fixture;

    #[test]
    fn each_sort_of_part_moves_in_its_own_words() {
        let (model, evaluation) = fixture::build();
        let found = evaluation.loads[0].outcome.as_ref().unwrap();
        let mut state = found.mounts[0];
        let mut part = model.isolators[0].clone();
        let words = |x: f64, part: &Isolator, state: &mut MountState| {
            state.isolator_deflection.z = x;
            the_way_it_carries(state, Some(part))
        };
        assert_eq!(words(-1e-3, &part, &mut state), "compressed 1.0 mm");
        assert_eq!(words(1e-3, &part, &mut state), "stretched 1.0 mm");
        part.tension = Tension::None;
        assert_eq!(words(1e-3, &part, &mut state), "lifted 1.0 mm");
        assert_eq!(words(-1e-3, &part, &mut state), "compressed 1.0 mm");
        part.is_rod = true;
        assert_eq!(words(1e-3, &part, &mut state), "pulled 1.0 mm");
        assert_eq!(words(-1e-3, &part, &mut state), "pushed 1.0 mm");
    }

    #[test]
    fn compressed_is_said_of_parts_that_are_pushed_along_w() {
        let (mut model, _) = fixture::build();
        assert_eq!(signs_along_w(&model), "Negative along w is compressed.");
        for part in &mut model.isolators {
            part.strain = Some(StrainMeasure::Bush { wall: 10e-3 });
        }
        assert_eq!(signs_along_w(&model), "Of a bush w is the centre line.");
    }
}
