//! What the bolts of a joint clamp, from head to nut.

use crate::report::content::quantity;
use crate::report::content::table::{Cell, Column, Group, Row, Table};
use crate::study::joint::JointResult;
use crate::units::{Digits, Shown};

/// Newtons in a kilonewton times micrometres in a metre: m/N as micrometres a kilonewton.
const MICROMETRES_A_KILONEWTON: f64 = 1e9;

/// One row a layer.
#[must_use]
pub fn table(result: &JointResult) -> Table {
    let stack = &result.stack;
    let gives = |resilience: f64| {
        quantity::with_digits(
            resilience * MICROMETRES_A_KILONEWTON,
            Shown::Number,
            Digits::Decimals(2),
        )
    };
    Table {
        id: "joint_stack",
        about: "What is clamped, from the head down.".to_owned(),
        item: "layer",
        columns: vec![
            Column::number("thickness", "thickness", Shown::Millimetre),
            Column::text("material", "material"),
            Column::number("youngs_modulus", "Young's modulus", Shown::Gigapascal),
        ],
        groups: vec![Group::plain(
            stack
                .layers
                .iter()
                .map(|layer| {
                    Row::new(
                        layer.kind.word(),
                        vec![
                            Cell::Number(layer.thickness),
                            Cell::Text(layer.material.clone()),
                            Cell::Number(layer.youngs_modulus),
                        ],
                    )
                })
                .collect(),
        )],
        note: Some(format!(
            "Together {}. The bolt gives {} µm for a kilonewton, what it clamps {} µm.",
            quantity::with_unit(stack.grip, Shown::Millimetre),
            gives(stack.bolt_resilience),
            gives(stack.parts_resilience),
        )),
    }
}
