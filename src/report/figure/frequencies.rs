//! Natural frequencies along one axis, with what excites them.

use super::axis::{AXIS_FOOT, Axis};
use super::canvas::{Canvas, LETTER, Lettering, Pen, Run, Spot, WIDTH, sheet};
use super::label::{clean, width};
use super::palette::{ACCENT_1, ACCENT_2, ACCENT_5, GRID, INK, MUTED};
use super::{Figure, FigureError};
use crate::model::Model;
use crate::rigid::modes::Mode;
use crate::study::evaluate::{Evaluation, ModesAt};
use crate::units::{Digits, Shown, show};
use plotters::style::text_anchor::HPos;
use std::f64::consts::SQRT_2;

const LEFT: f64 = 16.0;
const RIGHT: f64 = WIDTH - 20.0;
/// Lines of text above the rows for what excites.
const NOTES: f64 = LETTER * 3.9;
const HEAD: f64 = LETTER * 1.6;
const LANE: f64 = LETTER * 1.35;
/// A range wider than this is drawn on a logarithmic scale.
const WIDE: f64 = 16.0;
/// The scale shows at least this much \[Hz\].
const LEAST: f64 = 1.0;

/// Draws the natural frequencies of each position with idle firing, its insulation limit and the wheel-hop band.
///
/// # Errors
/// [`FigureError`] when there are no modes or a frequency is not finite.
pub fn frequencies(model: &Model, evaluation: &Evaluation) -> Result<Figure, FigureError> {
    let modes = || {
        evaluation
            .modes
            .iter()
            .flat_map(|at| at.solution.modes.iter())
    };
    if modes().next().is_none() {
        return Err(FigureError::NoPosition("natural frequencies"));
    }
    let idle = evaluation.idle.map(|idle| idle.frequency_hz);
    let hop = model.criteria.wheel_hop;
    let values: Vec<f64> = modes()
        .map(|m| m.frequency_hz)
        .chain(idle)
        .chain(hop)
        .collect();
    if !values.iter().all(|v| v.is_finite()) {
        return Err(FigureError::NotFinite("natural frequencies"));
    }
    let marks = Marks {
        axis: axis_for(&values),
        idle,
        idle_ratio: model.criteria.idle_ratio,
        hop,
    };
    let mut bottom = NOTES;
    let tops: Vec<f64> = evaluation
        .modes
        .iter()
        .map(|at| {
            let top = bottom;
            bottom += HEAD + LANE * at.solution.modes.len() as f64 + LETTER * 0.4;
            top
        })
        .collect();
    let alt = alt_text(model, evaluation);
    let svg = sheet("natural frequencies", bottom + AXIS_FOOT, &alt, |canvas| {
        marks.axis.draw(canvas, NOTES, bottom, "frequency");
        marks.draw(canvas, bottom);
        for (at, top) in evaluation.modes.iter().zip(tops) {
            draw_row(canvas, &marks.axis, model, at, top);
        }
    })?;
    Ok(Figure {
        svg,
        title: "Natural frequencies".to_owned(),
        alt,
        caption: caption(idle.map(|_| model.criteria.idle_ratio)),
    })
}

fn axis_for(values: &[f64]) -> Axis {
    let high = values.iter().copied().fold(0.0, f64::max) * 1.06;
    let above_zero = values.iter().copied().filter(|v| *v > 0.0);
    let low = above_zero.fold(f64::INFINITY, f64::min);
    let room = (LEFT, RIGHT);
    if low.is_finite() && high > low * WIDE {
        Axis::logarithmic((low * 0.8, high), room, Shown::Hertz)
    } else {
        Axis::straight((0.0, high), LEAST, room, Shown::Hertz)
    }
}

/// What the modes are compared with.
struct Marks {
    axis: Axis,
    idle: Option<f64>,
    /// By which idle firing must be above a mode.
    idle_ratio: f64,
    hop: [f64; 2],
}

impl Marks {
    fn draw(&self, canvas: &mut Canvas<'_>, bottom: f64) {
        let [from, to] = self.hop.map(|f| self.axis.place(f));
        let top = NOTES;
        canvas.block((from, top), (to, bottom), ACCENT_5, 0.14);
        canvas.hatch((from, top - 7.0), (to, top), Pen::new(ACCENT_5, 1.0));
        let text = format!(
            "wheel hop {} to {}",
            number(self.hop[0]),
            show(self.hop[1], Shown::Hertz, Digits::Significant(3))
        );
        note(canvas, ((from + to) / 2.0, LETTER * 2.9), &text, ACCENT_5);
        if let Some(idle) = self.idle {
            let limit = idle / self.idle_ratio;
            let below = format!("idle firing / {}", ratio_text(self.idle_ratio));
            for (frequency, words, line, run) in [
                (idle, "idle firing", LETTER * 0.7, Run::Solid),
                (limit, below.as_str(), LETTER * 1.8, Run::Dashed),
            ] {
                let x = self.axis.place(frequency);
                let from = (x, line + LETTER * 0.6);
                canvas.line(from, (x, bottom), Pen::new(ACCENT_2, 1.75).run(run));
                let value = show(frequency, Shown::Hertz, Digits::Significant(3));
                note(canvas, (x, line), &format!("{words} {value}"), ACCENT_2);
            }
        }
    }
}

/// Text centred over a place, moved inward where it would leave the sheet.
fn note(canvas: &mut Canvas<'_>, (x, y): Spot, text: &str, color: plotters::style::RGBColor) {
    let half = width(text, LETTER) / 2.0;
    let x = x.min(WIDTH - half).max(half);
    let how = Lettering::plain().color(color).align(HPos::Center);
    canvas.plate((x, y), text, how);
}

fn draw_row(canvas: &mut Canvas<'_>, axis: &Axis, model: &Model, at: &ModesAt, top: f64) {
    canvas.line((0.0, top), (WIDTH, top), Pen::new(GRID, 1.0));
    let head = (4.0, top + HEAD * 0.55);
    canvas.plate(head, &position_name(model, at), Lettering::plain().bold());
    let foot = top + HEAD + LANE * at.solution.modes.len() as f64;
    canvas.line((LEFT, foot), (RIGHT, foot), Pen::new(MUTED, 1.25));
    for (i, mode) in at.solution.modes.iter().enumerate() {
        let spot = (
            axis.place(mode.frequency_hz),
            top + HEAD + LANE * (i as f64 + 0.5),
        );
        canvas.line(spot, (spot.0, foot), Pen::new(ACCENT_1, 1.0));
        draw_mode(canvas, spot, i, mode);
    }
}

fn draw_mode(canvas: &mut Canvas<'_>, spot: Spot, place: usize, mode: &Mode) {
    let text = format!("{}: {}", place + 1, mode_words(mode));
    if mode.growth_rate.is_some() {
        let half = 5.0;
        let outline = [
            (spot.0 - half, spot.1 - half),
            (spot.0 + half, spot.1 - half),
            (spot.0 + half, spot.1 + half),
            (spot.0 - half, spot.1 + half),
        ];
        canvas.fill(&outline, ACCENT_2, 1.0);
    } else {
        canvas.disc(spot, 5.0, ACCENT_1);
    }
    let how = Lettering::plain().color(INK);
    if spot.0 + 12.0 + width(&text, LETTER) <= WIDTH {
        canvas.plate((spot.0 + 12.0, spot.1), &text, how);
    } else {
        canvas.plate((spot.0 - 12.0, spot.1), &text, how.align(HPos::Right));
    }
}

/// Name and frequency of a mode, or how fast it grows.
pub(super) fn mode_words(mode: &Mode) -> String {
    let name = clean(&mode.name, 28);
    let frequency = show(mode.frequency_hz, Shown::Hertz, Digits::Decimals(1));
    match mode.growth_rate {
        Some(rate) => format!(
            "{name}, unstable, grows at {} 1/s",
            show(rate, Shown::Number, Digits::Significant(2))
        ),
        None => format!("{name}, {frequency}"),
    }
}

/// Name of the load case about whose position the modes are.
pub(super) fn position_name(model: &Model, at: &ModesAt) -> String {
    clean(
        model
            .loads
            .get(at.load)
            .map_or("", |load| load.name.as_str()),
        40,
    )
}

fn number(hertz: f64) -> String {
    show(hertz, Shown::Number, Digits::Significant(3))
}

fn ratio_text(ratio: f64) -> String {
    if (ratio - SQRT_2).abs() < 1e-9 {
        "√2".to_owned()
    } else {
        show(ratio, Shown::Number, Digits::Significant(3))
    }
}

fn caption(idle_ratio: Option<f64>) -> String {
    let mut text =
        "Each dot is one natural frequency of the powertrain on its mounts; a square is \
                    a mode that does not come back but grows."
            .to_owned();
    if let Some(ratio) = idle_ratio {
        text.push_str(&format!(
            " Modes that the torque excites should lie left of the dashed line, \
             idle firing divided by {}.",
            ratio_text(ratio)
        ));
    }
    text.push_str(
        " In the hatched band the wheels hop; only the bounce mode is judged against it.",
    );
    text
}

fn alt_text(model: &Model, evaluation: &Evaluation) -> String {
    let mut text = evaluation
        .modes
        .iter()
        .map(|at| {
            let modes: Vec<String> = at.solution.modes.iter().map(mode_words).collect();
            format!(
                "Position \"{}\": {}.",
                position_name(model, at),
                modes.join("; ")
            )
        })
        .collect::<Vec<_>>()
        .join(" ");
    if let Some(idle) = evaluation.idle {
        text.push_str(&format!(
            " Idle firing at {}.",
            show(idle.frequency_hz, Shown::Hertz, Digits::Decimals(1))
        ));
    }
    text
}
