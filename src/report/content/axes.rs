//! Section: the axes about which the powertrain wants to turn, and those that its mounts give it.

use crate::spatial::Vec3;
use crate::study::{Axes, Evaluation};
use crate::units::show::{Digits, Shown};

use super::table::{Cell, Column, Group, Row, Table};
use super::{Block, Line, Section, quantity};

/// Centres, and the table of axes.
#[must_use]
pub fn section(evaluation: &Evaluation) -> Section {
    let blocks = match &evaluation.axes {
        None => vec![Block::paragraph(
            "The rest position was not found, so there are no axes.",
        )],
        Some(axes) => vec![
            Block::paragraph(
                "Torque pulses turn a free powertrain about its torque roll axis, which leans away from the crank. \
                 The elastic axes are the three lines along which a push moves the powertrain without turning it. \
                 The nearer the elastic centre lies to the torque roll axis, the less torque pulses shake anything but roll.",
            ),
            Block::Lines(lines(axes)),
            Block::Table(table(axes)),
        ],
    };
    Section {
        id: "axes",
        heading: "Axes and centres",
        blocks,
    }
}

/// Centres and distances, at rest.
#[must_use]
pub fn lines(axes: &Axes) -> Vec<Line> {
    let mut lines = vec![Line::new(
        "centre of gravity at rest",
        quantity::place(&axes.centre_of_gravity),
    )];
    let stiffness_centre = quantity::place(&axes.elastic.stiffness_centre);
    if axes.elastic.is_centre {
        lines.push(Line::new("elastic centre", stiffness_centre));
    } else {
        lines.push(Line::new(
            "elastic centre",
            format!(
                "{stiffness_centre}; the best one point, since the elastic axes do not meet: a push through it still turns the powertrain a little"
            ),
        ));
        lines.push(Line::new(
            "the same from the compliance",
            quantity::place(&axes.elastic.compliance_centre),
        ));
    }
    let distances = [
        (
            "torque roll axis from the crank line",
            axes.torque_roll_from_crank,
        ),
        (
            "elastic centre from the crank line",
            axes.elastic_centre_from_crank,
        ),
    ];
    for (label, distance) in distances {
        if let Some(distance) = distance {
            let text = quantity::with_digits(distance, Shown::Millimetre, Digits::Decimals(0));
            lines.push(Line::new(label, text));
        }
    }
    lines
}

/// One row an axis.
#[must_use]
pub fn table(axes: &Axes) -> Table {
    let mut rows = Vec::new();
    if let Some(direction) = axes.torque_roll {
        rows.push(row(
            "torque roll axis",
            &direction,
            &axes.centre_of_gravity,
            None,
        ));
    }
    for (name, axis) in ["elastic axis 1", "elastic axis 2", "elastic axis 3"]
        .into_iter()
        .zip(&axes.elastic.axes)
    {
        rows.push(row(name, &axis.direction, &axis.through, Some(axis.pitch)));
    }
    Table {
        id: "axes",
        about: "Each axis: its direction and a point on it.".to_owned(),
        item: "axis",
        columns: vec![
            component("direction_x", "forward x"),
            component("direction_y", "left y"),
            component("direction_z", "up z"),
            coordinate("through_x", "through x"),
            coordinate("through_y", "through y"),
            coordinate("through_z", "through z"),
            Column::number("pitch", "moment per force", Shown::Millimetre),
        ],
        groups: vec![Group::plain(rows)],
        note: Some(
            "Moment per force: what is left of a turning effect along the axis itself when pushed along it; zero for a layout that is the same left and right."
                .to_owned(),
        ),
    }
}

fn component(key: &'static str, head: &'static str) -> Column {
    Column::number(key, head, Shown::Number).digits(Digits::Decimals(2))
}

fn coordinate(key: &'static str, head: &'static str) -> Column {
    Column::number(key, head, Shown::Millimetre).digits(Digits::Decimals(0))
}

fn row(name: &str, direction: &Vec3, through: &Vec3, pitch: Option<f64>) -> Row {
    let mut cells: Vec<Cell> = direction
        .iter()
        .chain(through.iter())
        .copied()
        .map(Cell::Number)
        .collect();
    cells.push(Cell::maybe(pitch));
    Row::new(name, cells)
}
