//! What people are shown of the energy of a mode is all of it, also where a fluid swings along.

use bedplate::model::Model;
use bedplate::model::file;
use bedplate::report::content::table::Cell;
use bedplate::report::content::{Block, frequencies, shapes};
use bedplate::report::figure::mode_shape;
use bedplate::study::evaluate::{Evaluation, evaluate};

/// Shares are shown in whole per cent: half of one for each of seven.
const ROUNDING: f64 = 3.5;

/// Shares below 5 % are left out of sentences: up to six beside the largest.
const LEFT_OUT: f64 = 30.0;

fn with_a_fluid() -> (Model, Evaluation) {
    let text = std::fs::read("models/coastal-hatchback.toml").unwrap();
    let model = file::read(&text).unwrap().model;
    let evaluation = evaluate(&model).unwrap();
    let mut modes = evaluation.modes.iter().flat_map(|at| &at.solution.modes);
    // Without a share larger than what rounding and leaving out take this file would prove nothing.
    assert!(modes.any(|mode| mode.fluid_share > 0.4));
    (model, evaluation)
}

/// All numbers that stand before a per cent sign, added.
fn per_cents(text: &str) -> f64 {
    let ends = text.match_indices(" %").map(|(end, _)| end);
    let numbers = ends.filter_map(|end| text[..end].rsplit(' ').next()?.parse::<f64>().ok());
    numbers.sum()
}

/// Derived: the shares of a mode add to one.
#[test]
fn the_columns_of_the_table_add_to_a_hundred_per_cent() {
    let (model, evaluation) = with_a_fluid();
    let table = frequencies::table(&model, &evaluation);
    for row in table.groups.iter().flat_map(|group| &group.rows) {
        let cells = table.columns.iter().zip(&row.cells);
        let shares = cells.filter_map(|(column, cell)| match cell {
            Cell::Number(share) if column.key?.starts_with("energy_") => Some(share),
            _ => None,
        });
        let whole: f64 = shares.sum();
        approx::assert_relative_eq!(whole, 1.0, epsilon = 1e-9);
    }
}

/// Derived: the shares of a mode add to one, less what rounding takes.
#[test]
fn the_bars_of_the_figure_add_to_a_hundred_per_cent() {
    let (model, evaluation) = with_a_fluid();
    for (position, at) in evaluation.modes.iter().enumerate() {
        for mode in 0..at.solution.modes.len() {
            let figure = mode_shape(&model, &evaluation, position, mode).unwrap();
            let drawing = roxmltree::Document::parse(&figure.svg).unwrap();
            let texts = drawing.descendants().filter(|node| node.is_text());
            let whole: f64 = texts.filter_map(|node| node.text()).map(per_cents).sum();
            assert!((whole - 100.0).abs() <= ROUNDING, "{whole}: {}", figure.alt);
        }
    }
}

/// Derived: the shares of a mode add to one, less what is too small to be said.
#[test]
fn the_sentences_name_the_fluid() {
    let (model, evaluation) = with_a_fluid();
    let blocks = shapes::section(&model, &evaluation).blocks;
    let plates = blocks.into_iter().flat_map(|block| match block {
        Block::Plates(plates) => plates,
        _ => Vec::new(),
    });
    let mut named = 0;
    for text in plates.filter_map(|plate| plate.text) {
        let energy = text.split(". Strain").next().unwrap_or_default();
        let whole = per_cents(energy);
        assert!((whole - 100.0).abs() <= LEFT_OUT, "{text}");
        named += usize::from(energy.contains("fluid"));
    }
    assert!(named > 0);
}
