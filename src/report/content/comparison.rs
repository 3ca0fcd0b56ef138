//! Rows of values held against limits: checks, and what is required of a joint.

use crate::study::check::{Check, Sense, Verdict};
use crate::study::joint::requirement::Requirement;
use crate::units::Shown;

use super::table::{Cell, Column, Row};

/// One value against one limit, with its outcome.
pub(super) struct Comparison<'a> {
    pub(super) verdict: Verdict,
    /// Governing load case.
    pub(super) load: Option<&'a str>,
    pub(super) value: Option<f64>,
    pub(super) limit: Option<f64>,
    pub(super) sense: Sense,
    pub(super) advisory: bool,
    pub(super) unit: Shown,
    pub(super) utilisation: Option<f64>,
    pub(super) basis: &'a str,
}

/// Columns of [`Comparison::row`].
///
/// People read the limit as one, "at most 12.0 mm"; programs read its parts.
pub(super) fn columns() -> Vec<Column> {
    vec![
        Column::text("verdict", "verdict"),
        Column::words("load case"),
        Column::number("value", "value", Shown::Number),
        Column::text("sense", "limit is").for_programs(),
        Column::number("limit", "limit", Shown::Number).for_programs(),
        Column::words("limit"),
        Column::number("utilisation", "limit used", Shown::Percent),
        Column::text("basis", "where the limit comes from").below(),
    ]
}

/// Words before a limit. A rule of good practice only advises.
pub(super) fn side(sense: Sense, advisory: bool) -> String {
    let words = sense.words();
    if advisory {
        format!("advised {words}")
    } else {
        words.to_owned()
    }
}

impl<'a> Comparison<'a> {
    pub(super) fn of_check(check: &'a Check, load: Option<&'a str>) -> Self {
        Self {
            verdict: check.verdict,
            load,
            value: check.value,
            limit: check.limit,
            sense: check.sense,
            advisory: check.advisory,
            unit: check.unit,
            utilisation: check.utilisation,
            basis: &check.basis,
        }
    }

    pub(super) fn of_requirement(
        required: &'a Requirement,
        verdict: Verdict,
        load: Option<&'a str>,
    ) -> Self {
        Self {
            verdict,
            load,
            value: Some(required.value),
            limit: Some(required.limit),
            sense: required.sense,
            advisory: required.advisory,
            unit: required.unit,
            utilisation: Some(required.utilisation()),
            basis: &required.basis,
        }
    }

    /// What could not be judged; the reason stands in place of a limit's origin.
    pub(super) fn open(reason: &'a str) -> Self {
        Self {
            verdict: Verdict::NotChecked,
            load: None,
            value: None,
            limit: None,
            sense: Sense::AtMost,
            advisory: false,
            unit: Shown::Number,
            utilisation: None,
            basis: reason,
        }
    }

    /// The row of `item`, with a cell for each of [`columns`].
    pub(super) fn row(self, item: impl Into<String>) -> Row {
        let [value, limit] = Cell::compared(self.value, self.limit, self.unit);
        let side = side(self.sense, self.advisory);
        let (sense, words) = match &limit {
            Cell::Quantity(limit, unit, digits) => {
                let shown = super::quantity::with_digits(*limit, *unit, *digits);
                (
                    Cell::Text(side.clone()),
                    Cell::Text(format!("{side} {shown}")),
                )
            }
            _ => (Cell::Empty, Cell::Empty),
        };
        let load = self.load.map(str::to_owned);
        Row {
            cells: vec![
                Cell::Verdict(self.verdict),
                load.clone().map_or(Cell::Empty, Cell::Text),
                value,
                sense,
                limit,
                words,
                Cell::maybe(self.utilisation),
                Cell::Text(self.basis.to_owned()),
            ],
            load,
            ..Row::new(item, Vec::new())
        }
    }
}
