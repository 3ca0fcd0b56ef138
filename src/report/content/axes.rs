//! Section: the axes about which the powertrain wants to turn, and those that its mounts give it.

use crate::rigid::axes::ElasticAxis;
use crate::spatial::Vec3;
use crate::study::axes::Axes;
use crate::study::evaluate::Evaluation;
use crate::units::{Digits, Shown};

use super::table::{Cell, Column, Group, Row, Table};
use super::{Block, Line, Section, quantity};

/// Centres, and the table of axes.
#[must_use]
pub fn section(evaluation: &Evaluation) -> Section {
    let axes = &evaluation.axes;
    let centre = centre_word(axes);
    Section {
        id: "axes",
        heading: "Axes and centres",
        blocks: vec![
            Block::Paragraph(format!(
                "Torque pulses turn a free powertrain about its torque roll axis, which leans away from the crank. \
                 The elastic axes are the lines along which a push moves the powertrain without turning it. \
                 The nearer the {centre} lies to the torque roll axis, the less torque pulses shake anything but roll.",
            )),
            Block::Lines(lines(axes)),
            Block::Table(table(axes)),
        ],
    }
}

/// What the trade calls the mean of the elastic axes: an elastic centre only where they meet.
fn centre_word(axes: &Axes) -> &'static str {
    if axes.axes_meet {
        "elastic centre"
    } else {
        "stiffness centre"
    }
}

/// Centres and distances, at rest.
#[must_use]
pub fn lines(axes: &Axes) -> Vec<Line> {
    let mut lines = vec![Line::new(
        "centre of gravity at rest",
        quantity::place(&axes.centre_of_gravity),
    )];
    let centre = quantity::place(&axes.stiffness_centre);
    if axes.axes_meet {
        lines.push(Line::new(centre_word(axes), centre));
    } else {
        lines.push(Line::new(
            centre_word(axes),
            format!(
                "{centre}; the best one point, since the elastic axes do not meet: a push through it still turns the powertrain a little"
            ),
        ));
        lines.push(Line::new(
            "the same from the compliance",
            quantity::place(&axes.compliance_centre),
        ));
    }
    if let Some(from_crank) = axes.from_crank {
        let distances = [
            ("torque roll axis", from_crank.torque_roll),
            (centre_word(axes), from_crank.stiffness_centre),
            ("centre of gravity", from_crank.centre_of_gravity),
        ];
        lines.extend(distances.map(|(what, distance)| {
            Line::new(
                format!("{what} from the crank line"),
                quantity::with_digits(distance, Shown::Millimetre, Digits::Decimals(0)),
            )
        }));
    }
    lines
}

/// One row an axis.
#[must_use]
pub fn table(axes: &Axes) -> Table {
    let distances = axes.from_crank;
    let mut rows = Vec::new();
    if let Some(direction) = axes.torque_roll {
        let through = &axes.centre_of_gravity;
        let distance = distances.map(|d| d.torque_roll);
        rows.push(row("torque roll axis", &direction, through, None, distance));
    }
    let principal = [
        "softest elastic axis",
        "middle elastic axis",
        "stiffest elastic axis",
    ];
    for (place, (name, axis)) in principal.into_iter().zip(&axes.principal).enumerate() {
        let distance = distances.and_then(|d| d.principal.get(place).copied());
        rows.push(elastic_row(name, axis, distance));
    }
    let along = [
        "elastic axis forward",
        "elastic axis left",
        "elastic axis up",
    ];
    for (name, axis) in along.into_iter().zip(&axes.along_vehicle) {
        rows.push(elastic_row(name, axis, None));
    }
    Table {
        id: "axes",
        about: "Each axis at rest: its direction, a point on it, and how far it passes from the crank line.".to_owned(),
        item: "axis",
        columns: vec![
            component("direction_x", "forward x"),
            component("direction_y", "left y"),
            component("direction_z", "up z"),
            coordinate("through_x", "through x"),
            coordinate("through_y", "through y"),
            coordinate("through_z", "through z"),
            Column::number("pitch", "moment per force", Shown::Millimetre),
            coordinate("from_crank", "from crank line"),
        ],
        groups: vec![Group::plain(rows)],
        note: Some(
            "The direction has length one. Moment per force: what is left of a turning effect along the axis itself when pushed along it; \
             zero for a layout that is the same left and right."
                .to_owned(),
        ),
    }
}

fn elastic_row(name: &str, axis: &ElasticAxis, from_crank: Option<f64>) -> Row {
    row(
        name,
        &axis.direction,
        &axis.through,
        Some(axis.pitch),
        from_crank,
    )
}

fn component(key: &'static str, head: &'static str) -> Column {
    Column::number(key, head, Shown::Number).digits(Digits::Decimals(2))
}

fn coordinate(key: &'static str, head: &'static str) -> Column {
    Column::number(key, head, Shown::Millimetre).digits(Digits::Decimals(0))
}

fn row(
    name: &str,
    direction: &Vec3,
    through: &Vec3,
    pitch: Option<f64>,
    from_crank: Option<f64>,
) -> Row {
    let mut cells: Vec<Cell> = direction
        .iter()
        .chain(through.iter())
        .copied()
        .map(Cell::Number)
        .collect();
    cells.extend([Cell::maybe(pitch), Cell::maybe(from_crank)]);
    Row::new(name, cells)
}
