//! Results as comma-separated values: one long table, one value a line.
//!
//! | column | meaning |
//! |---|---|
//! | `table` | `reactions`, `deflections`, `isolators`, `joints`, `joint_preload`, `joint_requirements`, `joint_sizes`, `joint_bolts`, `clearances`, `envelopes`, `modes`, `axes`, `checks`, `loads`, `parts` or `mounts` |
//! | `load` | load case, empty where there is none |
//! | `item` | mount, clearance, point and direction, number of the mode, check, part, isolator, joint, `JOINT: REQUIREMENT`, `JOINT: bolt 1` |
//! | `quantity` | what the value is, such as `deflection_w` |
//! | `value` | number with all its digits, or words |
//! | `unit` | unit of the number, empty for plain numbers and words |
//!
//! A load case without a position has the quantity `not solved` with the
//! reason as its value. A number that is not finite has no line. Every line
//! stands alone, so one filter picks any table, case or mount.
//!
//! The curve of one isolator is a table of its own: see [`CURVE_HEADS`].

mod joints;

use crate::model::Model;
use crate::model::isolator::{AXIS_NAMES, Isolator};
use crate::study::evaluate::Evaluation;
use crate::units::Shown;

use super::content::isolators::{self, curve_table, sheet};
use super::content::table::{Cell, Column, Row, Table};
use super::content::{axes, checks, clearances, deflections, frequencies, loads, mass, reactions};

/// Heads of the columns.
pub const HEADS: [&str; 6] = ["table", "load", "item", "quantity", "value", "unit"];

/// Quantity of the line that says why a load case has no values.
const NOT_SOLVED: &str = "not solved";

/// The document.
///
/// # Errors
/// An error of the writer; in memory none is expected.
pub fn document(model: &Model, evaluation: &Evaluation) -> Result<String, csv::Error> {
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(HEADS)?;
    let tables = [
        reactions::table(model, evaluation),
        deflections::table(model, evaluation),
        isolators::table(model),
        clearances::gaps(model, evaluation),
        clearances::envelopes(model, evaluation),
        frequencies::table(model, evaluation),
        axes::table(&evaluation.axes),
        checks::table(model, evaluation),
        loads::table(model, evaluation),
        mass::parts(model),
        mass::mounts(model),
    ];
    for table in tables
        .iter()
        .chain(&joints::tables(model, evaluation, None))
    {
        write(&mut writer, table)?;
    }
    finished(writer)
}

/// One joint, with its place in `Evaluation::joints`, in the columns of the document.
///
/// # Errors
/// An error of the writer; in memory none is expected.
pub fn joint(model: &Model, evaluation: &Evaluation, place: usize) -> Result<String, csv::Error> {
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(HEADS)?;
    for table in &joints::tables(model, evaluation, Some(place)) {
        write(&mut writer, table)?;
    }
    finished(writer)
}

/// Heads of the columns of a curve: one point a line, in SI, with `u`, `v` or `w` in the first.
///
/// `mark` says what lies there, such as `free`, `limit` or `stop`, several with
/// commas between. A strain is empty where the size of the rubber is not known.
pub const CURVE_HEADS: [&str; 8] = [
    "axis",
    "deflection_m",
    "force_n",
    "rate_n_per_m",
    "compression",
    "tension",
    "shear",
    "mark",
];

/// The force-deflection curve of one isolator of the model.
///
/// # Errors
/// An error of the writer; in memory none is expected.
pub fn isolator(model: &Model, isolator: &Isolator) -> Result<String, csv::Error> {
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(CURVE_HEADS)?;
    let shown = |number: Option<f64>| {
        let finite = number.filter(|number| number.is_finite());
        finite.map(|number| number.to_string()).unwrap_or_default()
    };
    for curve in sheet::curves(model, isolator) {
        let axis = AXIS_NAMES.get(curve.axis).copied().unwrap_or_default();
        for point in &curve.points {
            let strains = point.strains;
            writer.write_record([
                axis,
                &shown(Some(point.deflection)),
                &shown(Some(point.force)),
                &shown(Some(point.rate)),
                &shown(strains.map(|strains| strains.compression)),
                &shown(strains.map(|strains| strains.tension)),
                &shown(strains.map(|strains| strains.shear)),
                &curve_table::marks(&point.marks),
            ])?;
        }
    }
    finished(writer)
}

fn finished(writer: csv::Writer<Vec<u8>>) -> Result<String, csv::Error> {
    let bytes = writer
        .into_inner()
        .map_err(|error| csv::Error::from(error.into_error()))?;
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}

fn write(writer: &mut csv::Writer<Vec<u8>>, table: &Table) -> Result<(), csv::Error> {
    for group in &table.groups {
        let load = group.load.as_deref().unwrap_or_default();
        if let Some(remark) = &group.remark {
            writer.write_record([table.id, load, "", NOT_SOLVED, remark, ""])?;
        }
        for row in &group.rows {
            write_row(writer, table, load, row)?;
        }
    }
    Ok(())
}

fn write_row(
    writer: &mut csv::Writer<Vec<u8>>,
    table: &Table,
    group_load: &str,
    row: &Row,
) -> Result<(), csv::Error> {
    let load = row.load.as_deref().unwrap_or(group_load);
    for (column, cell) in table.columns.iter().zip(&row.cells) {
        if let (Some(key), Some((value, unit))) = (column.key, value(column, cell)) {
            writer.write_record([table.id, load, &row.item, key, &value, unit])?;
        }
    }
    Ok(())
}

fn value(column: &Column, cell: &Cell) -> Option<(String, &'static str)> {
    let number = |value: f64, unit: Shown| {
        value
            .is_finite()
            .then(|| (unit.from_si(value).to_string(), unit.symbol()))
    };
    match cell {
        Cell::Number(si) => number(*si, column.unit),
        Cell::Quantity(si, unit, _) => number(*si, *unit),
        Cell::Text(text) => Some((text.clone(), "")),
        Cell::Verdict(verdict) => Some((verdict.word().to_owned(), "")),
        Cell::Empty => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::fixture;

    fn records(document: &str) -> Vec<Vec<String>> {
        csv::Reader::from_reader(document.as_bytes())
            .records()
            .map(|record| record.unwrap().iter().map(str::to_owned).collect())
            .collect()
    }

    #[test]
    fn every_line_reads_back_with_six_fields_and_the_name_with_a_comma_whole() {
        let (model, evaluation) = fixture::build();
        let records = records(&document(&model, &evaluation).unwrap());
        assert!(records.iter().all(|record| record.len() == HEADS.len()));
        let found = records
            .iter()
            .find(|r| {
                r[0] == "deflections"
                    && r[1] == "at rest"
                    && r[2] == fixture::COMMA_MOUNT
                    && r[3] == "deflection_w"
            })
            .unwrap();
        let value: f64 = found[4].parse().unwrap();
        approx::assert_relative_eq!(value, fixture::DEFLECTION_W * 1e3, max_relative = 1e-12);
        assert_eq!(found[5], "mm");
    }

    #[test]
    fn a_case_without_a_position_says_why_and_nothing_is_infinite() {
        let (model, mut evaluation) = fixture::build();
        fixture::spoil_numbers(&mut evaluation);
        let document = document(&model, &evaluation).unwrap();
        assert!(
            records(&document)
                .iter()
                .any(|r| r[0] == "reactions" && r[1] == fixture::FAILED_LOAD && r[3] == NOT_SOLVED)
        );
        for word in ["NaN", "inf"] {
            assert!(
                records(&document)
                    .iter()
                    .all(|r| r[4] != word && r[4] != format!("-{word}")),
                "{word}"
            );
        }
    }

    /// Derived: 330 N/mm times 7 mm.
    #[test]
    fn a_curve_is_one_point_a_line() {
        let (model, _) = fixture::build();
        let records = records(&isolator(&model, &model.isolators[0]).unwrap());
        assert!(records.iter().all(|r| r.len() == CURVE_HEADS.len()));
        let found = records
            .iter()
            .find(|r| r[0] == "w" && r[7] == "limit")
            .unwrap();
        let number = |at: usize| -> f64 { found[at].parse().unwrap() };
        approx::assert_relative_eq!(number(1), -7e-3);
        approx::assert_relative_eq!(number(2), -2310.0, max_relative = 1e-12);
        approx::assert_relative_eq!(number(3), 330e3, max_relative = 1e-12);
        assert_eq!(found[4], "", "the size of the rubber is not known");
        for axis in ["u", "v", "w"] {
            assert!(
                records.iter().filter(|r| r[0] == axis).count() > 5,
                "{axis}"
            );
        }
    }
}
