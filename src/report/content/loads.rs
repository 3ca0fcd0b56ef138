//! Section: the load cases with their numbers and where they come from.

use crate::model::Model;
use crate::model::load::{Drive, LoadCase, LoadOrigin};
use crate::study::evaluate::{Evaluation, LoadResult};
use crate::units::Shown;

use super::table::{Cell, Column, Group, Row, Table};
use super::{Block, Section, names, quantity};

/// The table of load cases.
#[must_use]
pub fn section(model: &Model, evaluation: &Evaluation) -> Section {
    Section {
        id: "loads",
        heading: "Load cases",
        blocks: vec![
            Block::paragraph(
                "The class says how serious a case is. Service: everyday, no stop may be touched. \
                 Durability: hard use many times in a life, the long-life limits hold. \
                 Extreme: rare, nothing may break (strength is not checked here). Restraint: once, the powertrain stays attached.",
            ),
            Block::paragraph(
                "A case from the usual set is common practice and not measured on this vehicle; a [[load]] of the same name in the file replaces it.",
            ),
            Block::Table(table(model, evaluation)),
        ],
    }
}

/// Word for where a load case comes from, in the results document too.
#[must_use]
pub fn origin_word(origin: LoadOrigin) -> &'static str {
    match origin {
        LoadOrigin::AtRest => "at rest",
        LoadOrigin::File => "file",
        LoadOrigin::Usual => "usual",
    }
}

/// One row a load case.
#[must_use]
pub fn table(model: &Model, evaluation: &Evaluation) -> Table {
    Table {
        id: "loads",
        about: "Each load case: what is done to the powertrain beside its weight, and whether a position was found."
            .to_owned(),
        item: "load case",
        columns: vec![
            Column::text("class", "class"),
            Column::text("origin", "from"),
            Column::number("vehicle_x", "vehicle forward", Shown::Gee),
            Column::number("vehicle_y", "vehicle left", Shown::Gee),
            Column::number("vehicle_z", "vehicle up", Shown::Gee),
            Column::number("output_torque", "torque delivered", Shown::NewtonMetre),
            Column::text("made_of", "made of"),
            Column::text("result", "result"),
        ],
        groups: vec![Group::plain(
            evaluation
                .loads
                .iter()
                .filter_map(|result| {
                    let load = model.loads.get(result.load)?;
                    Some(row(model, load, result))
                })
                .collect(),
        )],
        note: Some(
            "The vehicle columns are the acceleration of the vehicle in multiples of free fall; gravity comes on top. Torque delivered includes the driveline shock."
                .to_owned(),
        ),
    }
}

fn row(model: &Model, load: &LoadCase, result: &LoadResult) -> Row {
    let along = |axis: usize| Cell::maybe(load.vehicle_acceleration.map(|a| a[axis]));
    let outcome = match &result.outcome {
        Ok(found) => {
            let noun = if found.iterations == 1 {
                "step"
            } else {
                "steps"
            };
            format!("found in {} {noun}", found.iterations)
        }
        Err(failure) => format!("No loaded position: {failure}"),
    };
    let cells = vec![
        Cell::Text(load.class.word().to_owned()),
        Cell::Text(
            match load.origin {
                LoadOrigin::AtRest => "always there",
                LoadOrigin::File => "your file",
                LoadOrigin::Usual => "usual set",
            }
            .to_owned(),
        ),
        along(0),
        along(1),
        along(2),
        Cell::maybe(result.torque.map(|torque| torque.delivered)),
        Cell::Text(made_of(model, load, result)),
        Cell::Text(outcome),
    ];
    Row {
        load: Some(load.name.clone()),
        ..Row::new(&load.name, cells)
    }
}

/// Steady torque \[N m\] to which the tyres hold a case whose engine would deliver more.
fn grip_that_acts(load: &LoadCase, result: &LoadResult) -> Option<f64> {
    let torque = result.torque?;
    let cap = torque.grip_cap?;
    let whole = cap * load.factor.abs();
    (torque.delivered.abs() >= whole * (1.0 - 1e-12)).then_some(cap)
}

fn made_of(model: &Model, load: &LoadCase, result: &LoadResult) -> String {
    let mut said = Vec::new();
    match &load.drive {
        Some(Drive::Gear { gear, throttle }) => {
            let name = model
                .driveline
                .as_ref()
                .and_then(|driveline| driveline.gears.get(*gear))
                .map_or("unknown", |gear| &gear.name);
            said.push(format!(
                "gear {name} at {} throttle",
                quantity::share(*throttle)
            ));
        }
        Some(Drive::OutputTorque(torque)) => said.push(format!(
            "{} stated at the outputs",
            quantity::with_unit(*torque, Shown::NewtonMetre)
        )),
        None => {}
    }
    if let Some(cap) = grip_that_acts(load, result)
        && let Some(drive) = said.last_mut()
    {
        drive.push_str(&format!(
            "; held to {} by the tyres",
            quantity::with_unit(cap, Shown::NewtonMetre)
        ));
    }
    if load.drive.is_some() && (load.factor - 1.0).abs() > f64::EPSILON {
        let factor = quantity::number(load.factor, Shown::Number);
        // After what it multiplies, so that the torque delivered can be worked out from left to right.
        said.push(format!("x {factor} shock"));
    }
    let drive = said.join(", ");
    let mut said: Vec<String> = (!drive.is_empty()).then_some(drive).into_iter().collect();
    for applied in &load.applied {
        let point = model
            .points
            .get(applied.point)
            .map_or("a point", |point| &point.name);
        let [f, m] = [
            (applied.wrench.force, Shown::Newton),
            (applied.wrench.moment, Shown::NewtonMetre),
        ]
        .map(|(v, unit)| {
            let [x, y, z] = [v.x, v.y, v.z].map(|c| quantity::number(c, unit));
            (v.norm() > 0.0).then(|| format!("{x}, {y}, {z} {}", unit.symbol()))
        });
        let pushed: Vec<String> = f.into_iter().chain(m).collect();
        if !pushed.is_empty() {
            said.push(format!("{} at {point}", names::and(&pushed)));
        }
    }
    let gone: Vec<&str> = load
        .without_parts
        .iter()
        .filter_map(|&part| model.parts.get(part).map(|part| part.name.as_str()))
        .chain(load.without_mounts.iter().map(|&m| names::mount(model, m)))
        .collect();
    if !gone.is_empty() {
        said.push(format!("without {}", names::and(&gone)));
    }
    if said.is_empty() {
        match load.vehicle_acceleration {
            Some(_) => "weight and the vehicle's motion".to_owned(),
            None => "weight alone".to_owned(),
        }
    } else {
        said.join("; ")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::fixture;

    #[test]
    fn a_case_says_what_holds_its_torque_only_when_it_does() {
        let (mut model, mut evaluation) = fixture::build();
        let result = &mut evaluation.loads[1];
        let cap = result.torque.unwrap().grip_cap.unwrap();
        let said = made_of(&model, &model.loads[1], result);
        let held = quantity::with_unit(cap, Shown::NewtonMetre);
        assert_eq!(
            said,
            format!("gear 1 at 100 % throttle; held to {held} by the tyres, x 1.60 shock")
        );
        if let Some(torque) = &mut result.torque {
            torque.delivered = 0.9 * cap * 1.6;
        }
        let said = made_of(&model, &model.loads[1], result);
        assert_eq!(said, "gear 1 at 100 % throttle, x 1.60 shock");
        model.loads[1].without_mounts = vec![2];
        let said = made_of(&model, &model.loads[1], result);
        assert_eq!(said, "gear 1 at 100 % throttle, x 1.60 shock; without rear");
    }
}
