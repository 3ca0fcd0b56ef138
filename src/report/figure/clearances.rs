//! How much of each gap is left in the worst load case.

use super::axis::{AXIS_FOOT, Axis};
use super::canvas::{Canvas, LETTER, Lettering, Pen, Run, WIDTH, sheet};
use super::label::clean;
use super::palette::{ACCENT_1, ACCENT_2, GRID, INK, MUTED};
use super::{Figure, FigureError};
use crate::model::Model;
use crate::model::surroundings::Clearance;
use crate::study::evaluate::Evaluation;
use crate::units::{Digits, Shown, show};
use plotters::style::text_anchor::HPos;

const LEFT: f64 = 12.0;
const RIGHT: f64 = WIDTH - 24.0;
const TOP: f64 = LETTER * 1.9;
/// Name and numbers, then the bar.
const ROW: f64 = LETTER * 3.3;
/// The scale shows at least this much \[m\].
const LEAST: f64 = 1e-3;

/// Draws for each clearance the gap in the fitted state, the smallest gap over all load cases and the gap that must remain.
///
/// # Errors
/// [`FigureError`] when the build has no clearances or a gap is not finite.
pub fn clearances(model: &Model, evaluation: &Evaluation) -> Result<Figure, FigureError> {
    if model.clearances.is_empty() {
        return Err(FigureError::Nothing("clearances"));
    }
    let rows: Vec<Row> = model
        .clearances
        .iter()
        .enumerate()
        .map(|(place, clearance)| Row::of(model, evaluation, place, clearance))
        .collect();
    let ends = || {
        rows.iter().flat_map(|row| {
            let smallest = row.smallest.as_ref().map(|s| s.0);
            [row.gap, row.keep].into_iter().chain(smallest)
        })
    };
    if !ends().all(f64::is_finite) {
        return Err(FigureError::NotFinite("clearances"));
    }
    let low = ends().fold(0.0_f64, f64::min);
    let high = ends().fold(0.0_f64, f64::max);
    let axis = Axis::straight((low, high), LEAST, (LEFT, RIGHT), Shown::Millimetre);
    let bottom = TOP + ROW * rows.len() as f64;
    let alt = alt_text(&rows);
    let svg = sheet("clearances", bottom + AXIS_FOOT, &alt, |canvas| {
        draw_key(canvas);
        axis.draw(canvas, TOP, bottom, "gap");
        let zero = axis.place(0.0);
        canvas.line((zero, TOP), (zero, bottom), Pen::new(INK, 1.75));
        for (i, row) in rows.iter().enumerate() {
            row.draw(canvas, &axis, TOP + ROW * i as f64);
        }
    })?;
    Ok(Figure {
        svg,
        title: "Clearances".to_owned(),
        alt,
        caption: "The outlined bar is the gap in the fitted state, the filled bar what is left of \
                  it in the load case that takes most, the dashed line the gap that must remain. \
                  Hatching left of zero is overlap: the point has gone into the obstacle."
            .to_owned(),
    })
}

/// One clearance; lengths in m.
struct Row {
    name: String,
    gap: f64,
    keep: f64,
    /// Smallest gap and its load case; `None` when no load case gives one.
    smallest: Option<(f64, String)>,
}

impl Row {
    fn of(model: &Model, evaluation: &Evaluation, place: usize, clearance: &Clearance) -> Self {
        let smallest = evaluation
            .loads
            .iter()
            .filter_map(|result| {
                let gap = result.gaps.get(place).copied().flatten()?;
                Some((gap, result.load))
            })
            // Of equal gaps the first case, so that "at rest" is named when nothing moves.
            .reduce(|best, next| if next.0 < best.0 { next } else { best })
            .map(|(gap, load)| {
                let name = model.loads.get(load).map_or("", |l| l.name.as_str());
                (gap, clean(name, 26))
            });
        Self {
            name: clean(&clearance.name, 26),
            gap: clearance.gap,
            keep: clearance.keep,
            smallest,
        }
    }

    fn verdict(&self) -> String {
        let mm = |v: f64| show(v, Shown::Millimetre, Digits::Decimals(1));
        match &self.smallest {
            None => "no position found".to_owned(),
            Some((gap, load)) if *gap < 0.0 => {
                format!("overlap {}, {load}", mm(-gap))
            }
            Some((gap, load)) => format!("{} left, {load}", mm(*gap)),
        }
    }

    fn head(&self) -> String {
        let keep = show(self.keep, Shown::Millimetre, Digits::Decimals(1));
        format!("{}, keep {keep}", self.name)
    }

    fn draw(&self, canvas: &mut Canvas<'_>, axis: &Axis, top: f64) {
        canvas.line((0.0, top), (WIDTH, top), Pen::new(GRID, 1.0));
        let words = top + LETTER * 0.95;
        canvas.plate((4.0, words), &self.head(), Lettering::plain().bold());
        let right = Lettering::plain().align(HPos::Right);
        canvas.plate((WIDTH - 4.0, words), &self.verdict(), right);
        let (upper, lower) = (top + LETTER * 1.85, top + LETTER * 2.85);
        let zero = axis.place(0.0);
        canvas.frame(
            (zero, upper),
            (axis.place(self.gap), lower),
            Pen::new(MUTED, 1.25),
        );
        if let Some((gap, _)) = &self.smallest {
            let (upper, lower) = (upper + 3.0, lower - 3.0);
            let end = axis.place(*gap);
            if *gap < 0.0 {
                canvas.hatch((end, upper), (zero, lower), Pen::new(ACCENT_2, 1.25));
                canvas.frame((end, upper), (zero, lower), Pen::new(ACCENT_2, 1.75));
            } else {
                canvas.block((zero, upper), (end, lower), ACCENT_1, 0.75);
            }
        }
        draw_keep(canvas, axis.place(self.keep), upper - 5.0, lower + 5.0);
    }
}

fn draw_keep(canvas: &mut Canvas<'_>, x: f64, top: f64, bottom: f64) {
    let pen = Pen::new(ACCENT_2, 2.0).run(Run::Dashed);
    canvas.line((x, top), (x, bottom), pen);
}

fn draw_key(canvas: &mut Canvas<'_>) {
    let y = LETTER * 0.8;
    canvas.frame((4.0, y - 7.0), (34.0, y + 7.0), Pen::new(MUTED, 1.25));
    canvas.text((42.0, y), "fitted state", Lettering::plain());
    canvas.block((170.0, y - 5.0), (200.0, y + 5.0), ACCENT_1, 0.75);
    canvas.text((208.0, y), "smallest left", Lettering::plain());
    draw_keep(canvas, 340.0, y - 10.0, y + 10.0);
    canvas.text((350.0, y), "must remain", Lettering::plain());
    canvas.hatch((490.0, y - 6.0), (520.0, y + 6.0), Pen::new(ACCENT_2, 1.25));
    canvas.frame((490.0, y - 6.0), (520.0, y + 6.0), Pen::new(ACCENT_2, 1.75));
    canvas.text((528.0, y), "overlap", Lettering::plain());
}

fn alt_text(rows: &[Row]) -> String {
    let mm = |v: f64| show(v, Shown::Millimetre, Digits::Decimals(1));
    let tightest = rows
        .iter()
        .filter_map(|row| row.smallest.as_ref().map(|(gap, load)| (row, *gap, load)))
        .min_by(|a, b| (a.1 - a.0.keep).total_cmp(&(b.1 - b.0.keep)));
    match tightest {
        Some((row, gap, load)) => {
            let left = if gap < 0.0 {
                format!("overlap of {}", mm(-gap))
            } else {
                format!("{} of {} left", mm(gap), mm(row.gap))
            };
            format!(
                "Remaining gaps at {} places. The tightest is {}: {left} under {load}, {} must remain.",
                rows.len(),
                row.name,
                mm(row.keep)
            )
        }
        None => format!(
            "Gaps at {} places; no load case has a position.",
            rows.len()
        ),
    }
}
