//! Placeholder until the figures are merged.
#![allow(missing_docs, reason = "placeholder")]
use crate::model::Model;
use crate::study::evaluate::Evaluation;

pub const DARK_CSS: &str = "";

#[derive(Debug, Clone, PartialEq)]
pub struct Figure {
    pub svg: String,
    pub title: String,
    pub alt: String,
    pub caption: String,
}

#[derive(Debug, Clone, PartialEq)]
pub struct FigureError;

impl std::fmt::Display for FigureError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("figures are not merged yet")
    }
}

fn boxed(title: &str) -> Result<Figure, FigureError> {
    Ok(Figure {
        svg: "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 300 120\" role=\"img\"><rect x=\"5\" y=\"5\" width=\"290\" height=\"110\" fill=\"none\" stroke=\"currentColor\"/></svg>".to_owned(),
        title: title.to_owned(),
        alt: title.to_owned(),
        caption: "Caption in one sentence.".to_owned(),
    })
}

pub fn layout(_: &Model, _: &Evaluation) -> Result<Figure, FigureError> {
    boxed("layout")
}
pub fn reactions(_: &Model, _: &Evaluation) -> Result<Figure, FigureError> {
    boxed("reactions")
}
pub fn deflections(_: &Model, _: &Evaluation) -> Result<Figure, FigureError> {
    boxed("deflections")
}
pub fn clearances(_: &Model, _: &Evaluation) -> Result<Figure, FigureError> {
    Err(FigureError)
}
pub fn frequencies(_: &Model, _: &Evaluation) -> Result<Figure, FigureError> {
    boxed("frequencies")
}
pub fn mode_shape(
    _: &Model,
    _: &Evaluation,
    _: usize,
    mode_index: usize,
) -> Result<Figure, FigureError> {
    boxed(&format!("mode {}", mode_index + 1))
}
