//! How far each isolator moves along its axes over all load cases, against its limits and stops.

use super::axis::{AXIS_FOOT, Axis};
use super::canvas::{Canvas, LETTER, Lettering, Pen, WIDTH, sheet};
use super::label::clean;
use super::mark::{mount_color, mount_mark};
use super::palette::{ACCENT_2, GRID, INK, MUTED};
use super::{Figure, FigureError};
use crate::model::Model;
use crate::model::isolator::AXIS_NAMES;
use crate::model::mount::Mount;
use crate::study::evaluate::Evaluation;
use crate::units::{Digits, Shown, show};
use plotters::style::RGBColor;
use plotters::style::text_anchor::HPos;

const LEFT: f64 = 34.0;
const RIGHT: f64 = WIDTH - 170.0;
const HEAD: f64 = LETTER * 1.7;
const ROW: f64 = LETTER * 1.5;
const KEY: f64 = LETTER * 1.9;
/// Limits and stops up to this many times the largest deflection are drawn; farther ones would squeeze the deflections.
const REACH: f64 = 3.0;
/// Ticks of load cases nearer than this fall together; with many load cases, at twice this.
const TICK: f64 = 2.0;
const MANY_CASES: usize = 24;
/// The scale shows at least this much \[m\].
const LEAST: f64 = 1e-3;

/// Draws for each mount and axis the range of the isolator's own deflection over all load cases, one tick for each, with limits and stops.
///
/// # Errors
/// [`FigureError`] when no load case has a position.
pub fn deflections(model: &Model, evaluation: &Evaluation) -> Result<Figure, FigureError> {
    let blocks: Vec<Block> = model
        .mounts
        .iter()
        .enumerate()
        .map(|(place, mount)| Block::of(model, evaluation, place, mount))
        .collect();
    let values = || {
        let rows = blocks.iter().flat_map(|block| block.rows.iter());
        rows.flat_map(|row| row.values.iter().copied())
    };
    if values().next().is_none() {
        return Err(FigureError::NoPosition("deflections"));
    }
    if !values().all(f64::is_finite) {
        return Err(FigureError::NotFinite("deflections"));
    }
    let largest = values().fold(0.0_f64, |most, v| most.max(v.abs()));
    let reach = (largest * REACH).max(LEAST);
    let bounds = blocks
        .iter()
        .flat_map(|b| b.rows.iter())
        .flat_map(Row::bounds);
    let (mut low, mut high) = (0.0_f64, 0.0_f64);
    let mut hides_some = false;
    for value in values().chain(bounds) {
        if value.abs() > reach {
            hides_some = true;
            continue;
        }
        (low, high) = (low.min(value), high.max(value));
    }
    // A little more than the outermost stop, so that its zone can be seen.
    let spare = (high - low) * 0.06;
    let axis = Axis::straight(
        (low - spare, high + spare),
        LEAST,
        (LEFT, RIGHT),
        Shown::Millimetre,
    );
    let rows: usize = blocks.iter().map(|block| block.rows.len()).sum();
    let bottom = KEY + HEAD * blocks.len() as f64 + ROW * rows as f64 + 4.0;
    let alt = alt_text(&blocks);
    let svg = sheet("deflections", bottom + AXIS_FOOT, &alt, |canvas| {
        draw_key(canvas);
        axis.draw(canvas, KEY, bottom, "deflection of the isolator");
        let zero = axis.place(0.0);
        canvas.line((zero, KEY), (zero, bottom), Pen::new(MUTED, 1.25));
        let mut y = KEY;
        for (mount, block) in blocks.iter().enumerate() {
            y = block.draw(canvas, &axis, mount, y);
        }
    })?;
    let mut caption =
        "Deflection of each isolator along its own axes u, v, w (w is its main axis), \
                       powertrain side against chassis side. The bar spans all load cases; each \
                       case is a tick on it. Brackets are limits for a long life, hatched zones \
                       begin where a stop is touched. Ticks of rare load cases (classes extreme \
                       and restraint) may lie beyond a bracket without failing."
            .to_owned();
    if hides_some {
        caption.push_str(" Limits and stops far outside the deflections are beyond the scale.");
    }
    Ok(Figure {
        svg,
        title: "Deflections of the isolators".to_owned(),
        alt,
        caption,
    })
}

/// One mount.
struct Block {
    name: String,
    isolator: String,
    rows: Vec<Row>,
}

/// One axis of a mount; lengths in m.
struct Row {
    axis: &'static str,
    values: Vec<f64>,
    limit: Option<f64>,
    lower_stop: Option<f64>,
    upper_stop: Option<f64>,
}

impl Block {
    fn of(model: &Model, evaluation: &Evaluation, place: usize, mount: &Mount) -> Self {
        let states: Vec<_> = evaluation
            .loads
            .iter()
            .filter_map(|result| {
                let equilibrium = result.outcome.as_ref().ok()?;
                let nth = result.mounts.iter().position(|&m| m == place)?;
                equilibrium.mounts.get(nth)
            })
            .collect();
        let isolator = model.isolators.get(mount.isolator);
        // A rod gives way along its own line only.
        let axes = if isolator.is_some_and(|isolator| isolator.is_rod) {
            2..3
        } else {
            0..3
        };
        let rows = axes.map(|i| Row {
            axis: AXIS_NAMES[i],
            values: states.iter().map(|s| s.isolator_deflection[i]).collect(),
            limit: isolator.and_then(|isolator| isolator.limits[i]),
            lower_stop: isolator.and_then(|isolator| isolator.stops[i].lower),
            upper_stop: isolator.and_then(|isolator| isolator.stops[i].upper),
        });
        let rows = rows.collect();
        Self {
            name: clean(&mount.name, 30),
            isolator: clean(isolator.map_or("", |isolator| isolator.name.as_str()), 26),
            rows,
        }
    }

    fn draw(&self, canvas: &mut Canvas<'_>, axis: &Axis, mount: usize, top: f64) -> f64 {
        canvas.line((0.0, top), (WIDTH, top), Pen::new(GRID, 1.0));
        let y = top + HEAD * 0.55;
        mount_mark(canvas, (10.0, y), 5.0, mount);
        canvas.plate((24.0, y), &self.name, Lettering::plain().bold());
        let right = Lettering::muted().align(HPos::Right);
        canvas.text((WIDTH, y), &self.isolator, right);
        for (i, row) in self.rows.iter().enumerate() {
            let y = top + HEAD + ROW * (i as f64 + 0.5);
            row.draw(canvas, axis, y, mount_color(mount));
        }
        top + HEAD + ROW * self.rows.len() as f64
    }
}

impl Row {
    fn bounds(&self) -> impl Iterator<Item = f64> + '_ {
        let limits = self.limit.into_iter().flat_map(|limit| [-limit, limit]);
        limits.chain(self.lower_stop).chain(self.upper_stop)
    }

    fn range(&self) -> Option<(f64, f64)> {
        let least = self.values.iter().copied().reduce(f64::min)?;
        let most = self.values.iter().copied().reduce(f64::max)?;
        Some((least, most))
    }

    fn draw(&self, canvas: &mut Canvas<'_>, axis: &Axis, y: f64, color: RGBColor) {
        let half = ROW * 0.4;
        canvas.text((14.0, y), self.axis, Lettering::plain());
        for (stop, end) in [(self.lower_stop, LEFT), (self.upper_stop, RIGHT)] {
            if let Some(stop) = stop.filter(|stop| axis.holds(*stop)) {
                draw_stop(canvas, axis.place(stop), end, y, half);
            }
        }
        for limit in self.limit.into_iter().flat_map(|limit| [-limit, limit]) {
            if axis.holds(limit) {
                draw_bracket(canvas, axis.place(limit), -limit.signum(), y, half);
            }
        }
        let text = match self.range() {
            Some((least, most)) => {
                self.draw_range(canvas, axis, y, color, (least, most));
                let digits = Digits::Decimals(1);
                let least = show(Shown::Millimetre.from_si(least), Shown::Number, digits);
                format!("{least} to {}", show(most, Shown::Millimetre, digits))
            }
            None => "no position found".to_owned(),
        };
        let right = Lettering::plain().align(HPos::Right);
        canvas.text((WIDTH, y), &text, right);
    }

    /// Bar with one spike for each load case, as one stroke.
    fn draw_range(
        &self,
        canvas: &mut Canvas<'_>,
        axis: &Axis,
        y: f64,
        color: RGBColor,
        (least, most): (f64, f64),
    ) {
        let (from, to) = (axis.place(least), axis.place(most));
        canvas.block((from, y - 2.5), (to.max(from + 1.0), y + 2.5), color, 0.45);
        let apart = if self.values.len() > MANY_CASES {
            2.0 * TICK
        } else {
            TICK
        };
        let mut ticks: Vec<i32> = self
            .values
            .iter()
            .map(|value| (axis.place(*value) / apart).round() as i32)
            .collect();
        ticks.sort_unstable();
        ticks.dedup();
        let spikes = ticks.into_iter().flat_map(|tick| {
            let x = f64::from(tick) * apart;
            [(x, y), (x, y - 6.0), (x, y)]
        });
        canvas.path(spikes, Pen::new(color, 1.5));
    }
}

/// Zone from where a stop is touched to the end of the scale.
fn draw_stop(canvas: &mut Canvas<'_>, at: f64, end: f64, y: f64, half: f64) {
    canvas.hatch((at, y - half), (end, y + half), Pen::new(MUTED, 0.75));
    canvas.line((at, y - half), (at, y + half), Pen::new(INK, 1.5));
}

/// Bracket that opens toward zero; `inward` is +1 to the right.
pub(super) fn draw_bracket(canvas: &mut Canvas<'_>, at: f64, inward: f64, y: f64, half: f64) {
    let lip = at + inward * 6.0;
    let spots = [
        (lip, y - half),
        (at, y - half),
        (at, y + half),
        (lip, y + half),
    ];
    canvas.path(spots, Pen::new(ACCENT_2, 2.0));
}

fn draw_key(canvas: &mut Canvas<'_>) {
    let y = LETTER * 0.8;
    let half = ROW * 0.4;
    canvas.block((4.0, y - 2.5), (34.0, y + 2.5), INK, 0.45);
    let spikes = [8.0, 20.0, 30.0]
        .into_iter()
        .flat_map(|x| [(x, y), (x, y - 6.0), (x, y)]);
    canvas.path(spikes, Pen::new(INK, 1.5));
    canvas.text((42.0, y), "range, a tick a load case", Lettering::plain());
    draw_bracket(canvas, 290.0, 1.0, y, half);
    draw_bracket(canvas, 312.0, -1.0, y, half);
    canvas.text((322.0, y), "limit for long life", Lettering::plain());
    draw_stop(canvas, 500.0, 530.0, y, half);
    canvas.text((538.0, y), "stop touched", Lettering::plain());
}

fn alt_text(blocks: &[Block]) -> String {
    let widest = blocks
        .iter()
        .flat_map(|block| block.rows.iter().map(move |row| (block, row)))
        .filter_map(|(block, row)| {
            let largest = row
                .values
                .iter()
                .copied()
                .max_by(|a, b| a.abs().total_cmp(&b.abs()))?;
            Some((block, row, largest))
        })
        .max_by(|a, b| a.2.abs().total_cmp(&b.2.abs()));
    let touched: Vec<&str> = blocks
        .iter()
        .filter(|block| block.rows.iter().any(Row::touches_stop))
        .map(|block| block.name.as_str())
        .collect();
    let mut text = format!(
        "Deflections of {} isolators over all load cases.",
        blocks.len()
    );
    if let Some((block, row, value)) = widest {
        text.push_str(&format!(
            " The largest is {} along {} at {}.",
            show(value, Shown::Millimetre, Digits::Decimals(1)),
            row.axis,
            block.name
        ));
    }
    if !touched.is_empty() {
        text.push_str(&format!(" A stop is touched at {}.", touched.join(", ")));
    }
    text
}

impl Row {
    fn touches_stop(&self) -> bool {
        let Some((least, most)) = self.range() else {
            return false;
        };
        self.lower_stop.is_some_and(|stop| least < stop)
            || self.upper_stop.is_some_and(|stop| most > stop)
    }
}
