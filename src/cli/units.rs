//! `units`: what values may be written in.

use bedplate::units::{Quantity, UnitRow};
use serde::Serialize;

use super::arguments::{ListFormat, Units};
use super::console::Console;
use super::exit::Exit;
use super::failure::Failure;

/// Version of the JSON layout.
const FORMAT: u32 = 1;

pub(crate) fn run(console: &Console, asked: &Units) -> Result<Exit, Failure> {
    let text = match asked.format {
        ListFormat::Text => text(),
        ListFormat::Json => json().map_err(|error| {
            Failure::plain(format!("the list cannot be written as JSON: {error}"))
        })?,
        ListFormat::Csv => csv().map_err(|error| {
            Failure::plain(format!("the list cannot be written as CSV: {error}"))
        })?,
    };
    console.print(&text)?;
    Ok(Exit::Success)
}

fn text() -> String {
    let spellings = |unit: &UnitRow| unit.spellings.join(", ");
    let mut text = String::new();
    for quantity in Quantity::ALL {
        text.push_str(&format!(
            "{}, such as \"{}\"\n",
            quantity.name(),
            quantity.example()
        ));
        let widest = quantity
            .units()
            .map(|unit| spellings(unit).chars().count())
            .max();
        let width = widest.unwrap_or_default();
        for unit in quantity.units() {
            text.push_str(&format!(
                "  {:width$}  {}\n",
                spellings(unit),
                unit.definition
            ));
        }
        text.push('\n');
    }
    text.push_str("A space in a unit may also be a hyphen, `·`, `*` or nothing.\n");
    text
}

#[derive(Serialize)]
struct Document {
    format: u32,
    tool: &'static str,
    quantities: Vec<QuantityOut>,
}

#[derive(Serialize)]
struct QuantityOut {
    name: &'static str,
    kept_in: &'static str,
    example: &'static str,
    units: Vec<UnitOut>,
}

/// Kept value = (reading − zero) × factor.
#[derive(Serialize)]
struct UnitOut {
    spellings: &'static [&'static str],
    factor: f64,
    zero: f64,
    any_case: bool,
    definition: &'static str,
    source: &'static str,
}

impl UnitOut {
    fn of(unit: &UnitRow) -> Self {
        Self {
            spellings: unit.spellings,
            factor: unit.factor(),
            zero: unit.zero(),
            any_case: unit.any_case,
            definition: unit.definition,
            source: unit.source,
        }
    }
}

fn json() -> Result<String, serde_json::Error> {
    let document = Document {
        format: FORMAT,
        tool: concat!("bedplate ", env!("CARGO_PKG_VERSION")),
        quantities: Quantity::ALL
            .into_iter()
            .map(|quantity| QuantityOut {
                name: quantity.name(),
                kept_in: quantity.kept_in(),
                example: quantity.example(),
                units: quantity.units().map(UnitOut::of).collect(),
            })
            .collect(),
    };
    Ok(serde_json::to_string_pretty(&document)? + "\n")
}

/// One spelling a line.
fn csv() -> Result<String, csv::Error> {
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record([
        "quantity",
        "spelling",
        "factor",
        "zero",
        "kept_in",
        "definition",
        "source",
    ])?;
    for quantity in Quantity::ALL {
        for unit in quantity.units() {
            for spelling in unit.spellings {
                writer.write_record([
                    quantity.name(),
                    spelling,
                    &unit.factor().to_string(),
                    &unit.zero().to_string(),
                    quantity.kept_in(),
                    unit.definition,
                    unit.source,
                ])?;
            }
        }
    }
    let bytes = writer
        .into_inner()
        .map_err(|error| csv::Error::from(error.into_error()))?;
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}
