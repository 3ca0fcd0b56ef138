//! A force-deflection curve as a table.

use crate::model::isolator::AXIS_NAMES;
use crate::model::isolator::strain::Strains;
use crate::report::content::table::{Cell, Column, Group, Row, Table};
use crate::units::{Digits, Shown};

use super::curve::{Curve, CurvePoint, Mark};

/// A strain as a column.
struct StrainColumn {
    word: &'static str,
    of: fn(&Strains) -> f64,
}

const STRAINS: [StrainColumn; 3] = [
    StrainColumn {
        word: "compression",
        of: |strains| strains.compression,
    },
    StrainColumn {
        word: "tension",
        of: |strains| strains.tension,
    },
    StrainColumn {
        word: "shear",
        of: |strains| strains.shear,
    },
];

/// One row a point; strains where the size of the rubber is known.
#[must_use]
pub fn curve_table(curve: &Curve) -> Table {
    let name = AXIS_NAMES.get(curve.axis).copied().unwrap_or_default();
    let strains = || {
        curve
            .points
            .iter()
            .filter_map(|point| point.strains.as_ref())
    };
    let strained: Vec<StrainColumn> = STRAINS
        .into_iter()
        .filter(|column| strains().any(|strains| (column.of)(strains) > 0.0))
        .collect();
    let mut columns = vec![
        Column::number("deflection", "deflection", Shown::Millimetre)
            .digits(decimals_of(curve.step)),
        Column::number("force", "force", Shown::Newton),
        Column::number("rate", "rate", Shown::NewtonPerMillimetre),
    ];
    columns.extend(
        strained
            .iter()
            .map(|column| Column::number(column.word, column.word, Shown::Percent)),
    );
    columns.push(Column::text("mark", "mark"));
    let row = |point: &CurvePoint| {
        let mut cells = [point.deflection, point.force, point.rate]
            .map(Cell::Number)
            .to_vec();
        cells.extend(
            strained
                .iter()
                .map(|column| Cell::maybe(point.strains.as_ref().map(column.of))),
        );
        cells.push(if point.marks.is_empty() {
            Cell::Empty
        } else {
            Cell::Text(marks(&point.marks))
        });
        Row::new(name, cells)
    };
    Table {
        id: "curve",
        about: format!("Along {name}, static."),
        item: "axis",
        columns,
        groups: vec![Group::plain(curve.points.iter().map(row).collect())],
        note: None,
    }
}

/// Marks of a point in words.
#[must_use]
pub fn marks(marks: &[Mark]) -> String {
    let words: Vec<&str> = marks.iter().map(|mark| mark.word()).collect();
    words.join(", ")
}

/// Decimals that tell apart two lengths that are `step` \[m\] apart.
fn decimals_of(step: f64) -> Digits {
    let needed = 1.0 - Shown::Millimetre.from_si(step).log10().floor();
    // From a tenth of a millimetre, as elsewhere, to a picometre.
    Digits::Decimals(needed.clamp(1.0, 9.0) as u8)
}
