//! Section: the build as it is described, with its mass properties.

use crate::model::Model;
use crate::model::part::Part;
use crate::spatial::{STANDARD_GRAVITY, Vec3};
use crate::units::{Digits, Shown};

use super::table::{Cell, Column, Group, Row, Table};
use super::{Block, Drawing, Line, Section, names, quantity};

/// The drawing of the build, its mass properties, its parts and its mounts.
#[must_use]
pub fn section(model: &Model) -> Section {
    let mut blocks = vec![Block::plate(Drawing::Layout), Block::Lines(lines(model))];
    if let Some(notes) = &model.notes {
        blocks.insert(0, Block::paragraph(notes));
    }
    blocks.push(Block::Table(parts(model)));
    blocks.push(Block::Table(mounts(model)));
    Section {
        id: "build",
        heading: "The build",
        blocks,
    }
}

/// Mass properties of all parts together.
#[must_use]
pub fn lines(model: &Model) -> Vec<Line> {
    let mass = &model.mass;
    let inertia = mass.inertia();
    let [xx, yy, zz, xy, xz, yz] = [(0, 0), (1, 1), (2, 2), (0, 1), (0, 2), (1, 2)]
        .map(|place| quantity::number(inertia[place], Shown::KilogramSquareMetre));
    let (principal, axes) = mass.principal();
    let [small, middle, large] =
        [0, 1, 2].map(|i| quantity::number(principal[i], Shown::KilogramSquareMetre));
    let easiest: Vec3 = axes.column(0).into_owned();
    let easiest = if easiest.x < 0.0 { -easiest } else { easiest };
    vec![
        Line::new(
            "mass of all parts",
            format!(
                "{}, weighing {}",
                quantity::with_unit(mass.mass(), Shown::Kilogram),
                quantity::with_unit(mass.mass() * STANDARD_GRAVITY, Shown::Newton)
            ),
        ),
        Line::new("centre of gravity", quantity::place(&mass.centre())),
        Line::new(
            "inertia about it",
            format!("xx {xx}, yy {yy}, zz {zz}, xy {xy}, xz {xz}, yz {yz} kg m2"),
        ),
        Line::new(
            "sign of xy, xz, yz",
            "minus the integrals (tensor elements)",
        ),
        Line::new(
            "principal inertias",
            format!("{small}, {middle}, {large} kg m2"),
        ),
        Line::new("easiest to turn about", names::direction(&easiest)),
    ]
}

/// One row a part.
#[must_use]
pub fn parts(model: &Model) -> Table {
    Table {
        id: "parts",
        about: "What is supported: each part with its mass and its centre of gravity.".to_owned(),
        item: "part",
        columns: vec![
            Column::number("mass", "mass", Shown::Kilogram).digits(Digits::Decimals(1)),
            coordinate("x", "forward x"),
            coordinate("y", "left y"),
            coordinate("z", "up z"),
            Column::text("inertia", "inertia from"),
        ],
        groups: vec![Group::plain(model.parts.iter().map(part_row).collect())],
        note: None,
    }
}

/// One row a mount.
#[must_use]
pub fn mounts(model: &Model) -> Table {
    let rows = model
        .mounts
        .iter()
        .map(|mount| {
            let isolator = model.isolators.get(mount.isolator);
            let held = [(mount.bracket, "bracket"), (mount.chassis, "chassis")].map(
                |(stiffness, what)| match stiffness {
                    Some(k) => format!(
                        "{what} {} along w",
                        quantity::with_unit(k.z, Shown::KilonewtonPerMillimetre)
                    ),
                    None => format!("{what} taken as rigid"),
                },
            );
            Row::new(
                &mount.name,
                vec![
                    isolator.map_or(Cell::Empty, |i| {
                        Cell::Text(format!("{} ({})", i.name, i.kind))
                    }),
                    Cell::Number(mount.at.x),
                    Cell::Number(mount.at.y),
                    Cell::Number(mount.at.z),
                    Cell::Text(names::axes(&mount.axes)),
                    Cell::Text(held.join(", ")),
                ],
            )
        })
        .collect();
    Table {
        id: "mounts",
        about: "What it rests on: each mount with its isolator, its place and its own axes."
            .to_owned(),
        item: "mount",
        columns: vec![
            Column::text("isolator", "isolator (kind)"),
            coordinate("x", "forward x"),
            coordinate("y", "left y"),
            coordinate("z", "up z"),
            Column::text("axes", "its axes u, v, w point"),
            Column::text("held_by", "held by"),
        ],
        groups: vec![Group::plain(rows)],
        note: None,
    }
}

fn coordinate(key: &'static str, head: &'static str) -> Column {
    Column::number(key, head, Shown::Millimetre).digits(Digits::Decimals(0))
}

fn part_row(part: &Part) -> Row {
    let inertia = match part.fill {
        Some(fill) => format!("its shape, {} of it", quantity::share(fill)),
        None => "the file".to_owned(),
    };
    let at = part.mass.centre();
    Row::new(
        &part.name,
        vec![
            Cell::Number(part.mass.mass()),
            Cell::Number(at.x),
            Cell::Number(at.y),
            Cell::Number(at.z),
            Cell::Text(inertia),
        ],
    )
}
