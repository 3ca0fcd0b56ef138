//! A sheet to draw on, in units of the figure, over the drawing library's SVG backend.
//!
//! Units: 720 across the page width, x to the right, y down. The first number
//! that is not finite and the first refusal of the library are kept and make
//! the whole figure an error, so that drawing code stays free of error paths.

use plotters::backend::{DrawingBackend, SVGBackend};
use plotters::style::text_anchor::{HPos, Pos, VPos};
use plotters::style::{Color, FontStyle, IntoFont, RGBAColor, RGBColor, ShapeStyle, TextStyle};

use super::FigureError;
use super::palette::{INK, MUTED, PAPER};
use super::svg::{DASH_CODE, FINENESS, finish};

/// Width of every figure.
pub(super) const WIDTH: f64 = 720.0;
/// Size of ordinary lettering.
pub(super) const LETTER: f64 = 16.0;

/// Numbers beyond this are drawn at it: far off the sheet, yet safe as a whole number.
const FAR: f64 = 1e6;

/// A place on the sheet.
pub(super) type Spot = (f64, f64);

/// How a line runs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Run {
    Solid,
    Dashed,
    DashDot,
    Dotted,
}

/// Colour, width and run of a line.
#[derive(Debug, Clone, Copy)]
pub(super) struct Pen {
    color: RGBColor,
    width: f64,
    run: Run,
}

impl Pen {
    pub(super) fn new(color: RGBColor, width: f64) -> Self {
        Self {
            color,
            width,
            run: Run::Solid,
        }
    }

    pub(super) fn run(self, run: Run) -> Self {
        Self { run, ..self }
    }

    pub(super) fn color(self) -> RGBColor {
        self.color
    }

    fn style(self) -> ShapeStyle {
        let code = match self.run {
            Run::Solid => 0,
            Run::Dashed => 1,
            Run::DashDot => 2,
            Run::Dotted => 3,
        };
        // At most a few units wide, so the rounding is exact.
        let width = (self.width * FINENESS).round() as u32;
        ShapeStyle {
            color: self.color.to_rgba(),
            filled: false,
            stroke_width: code * DASH_CODE + width.clamp(1, DASH_CODE - 1),
        }
    }
}

/// Colour, size and alignment of text; the height given is always its middle.
#[derive(Clone, Copy)]
pub(super) struct Lettering {
    pub(super) color: RGBColor,
    pub(super) size: f64,
    pub(super) align: HPos,
    pub(super) bold: bool,
}

impl Lettering {
    pub(super) fn plain() -> Self {
        Self {
            color: INK,
            size: LETTER,
            align: HPos::Left,
            bold: false,
        }
    }

    pub(super) fn muted() -> Self {
        Self {
            color: MUTED,
            ..Self::plain()
        }
    }

    pub(super) fn bold(self) -> Self {
        Self { bold: true, ..self }
    }

    pub(super) fn align(self, align: HPos) -> Self {
        Self { align, ..self }
    }

    pub(super) fn color(self, color: RGBColor) -> Self {
        Self { color, ..self }
    }
}

/// The sheet.
pub(super) struct Canvas<'a> {
    backend: SVGBackend<'a>,
    subject: &'static str,
    broken: Option<FigureError>,
}

/// Draws a sheet of this height and wraps it; `subject` names the figure in an error.
pub(super) fn sheet(
    subject: &'static str,
    height: f64,
    alt: &str,
    draw: impl FnOnce(&mut Canvas<'_>),
) -> Result<String, FigureError> {
    if !height.is_finite() {
        return Err(FigureError::NotFinite(subject));
    }
    let height = height.ceil().clamp(1.0, FAR / FINENESS);
    let mut raw = String::with_capacity(16 * 1024);
    let size = ((WIDTH * FINENESS) as u32, (height * FINENESS) as u32);
    let mut canvas = Canvas {
        backend: SVGBackend::with_string(&mut raw, size),
        subject,
        broken: None,
    };
    draw(&mut canvas);
    let presented = canvas.backend.present();
    canvas.note(presented);
    let broken = canvas.broken.take();
    drop(canvas);
    match broken {
        Some(error) => Err(error),
        None => finish(&raw, WIDTH, height, alt),
    }
}

impl Canvas<'_> {
    fn note<E: std::fmt::Display>(&mut self, outcome: Result<(), E>) {
        if let Err(error) = outcome {
            self.broken
                .get_or_insert_with(|| FigureError::Drawing(error.to_string()));
        }
    }

    fn at(&mut self, (x, y): Spot) -> (i32, i32) {
        if !(x.is_finite() && y.is_finite()) {
            self.broken
                .get_or_insert(FigureError::NotFinite(self.subject));
        }
        let whole = |v: f64| (v * FINENESS).round().clamp(-FAR, FAR) as i32;
        (whole(x), whole(y))
    }

    pub(super) fn line(&mut self, from: Spot, to: Spot, pen: Pen) {
        let (from, to) = (self.at(from), self.at(to));
        let drawn = self.backend.draw_line(from, to, &pen.style());
        self.note(drawn);
    }

    pub(super) fn path(&mut self, spots: impl IntoIterator<Item = Spot>, pen: Pen) {
        let whole: Vec<_> = spots.into_iter().map(|spot| self.at(spot)).collect();
        let drawn = self.backend.draw_path(whole, &pen.style());
        self.note(drawn);
    }

    /// Closed outline.
    pub(super) fn outline(&mut self, spots: &[Spot], pen: Pen) {
        self.path(spots.iter().chain(spots.first()).copied(), pen);
    }

    pub(super) fn fill(&mut self, spots: &[Spot], color: RGBColor, opacity: f64) {
        let whole: Vec<_> = spots.iter().map(|&spot| self.at(spot)).collect();
        let style = tinted(color, opacity);
        let drawn = self.backend.fill_polygon(whole, &style);
        self.note(drawn);
    }

    /// Filled rectangle between two corners in any order.
    pub(super) fn block(&mut self, a: Spot, b: Spot, color: RGBColor, opacity: f64) {
        let upper_left = self.at((a.0.min(b.0), a.1.min(b.1)));
        let lower_right = self.at((a.0.max(b.0), a.1.max(b.1)));
        let style = tinted(color, opacity);
        let drawn = self
            .backend
            .draw_rect(upper_left, lower_right, &style, true);
        self.note(drawn);
    }

    pub(super) fn frame(&mut self, a: Spot, b: Spot, pen: Pen) {
        self.outline(&[a, (b.0, a.1), b, (a.0, b.1)], pen);
    }

    pub(super) fn disc(&mut self, centre: Spot, radius: f64, color: RGBColor) {
        let (centre, style) = (self.at(centre), tinted(color, 1.0));
        let radius = (radius * FINENESS).round().clamp(1.0, FAR) as u32;
        let drawn = self.backend.draw_circle(centre, radius, &style, true);
        self.note(drawn);
    }

    pub(super) fn ring(&mut self, centre: Spot, radius: f64, pen: Pen) {
        let centre = self.at(centre);
        let radius = (radius * FINENESS).round().clamp(1.0, FAR) as u32;
        let drawn = self
            .backend
            .draw_circle(centre, radius, &pen.style(), false);
        self.note(drawn);
    }

    /// Slanted lines over a rectangle, as one stroke that turns at its upper and lower edge.
    pub(super) fn hatch(&mut self, a: Spot, b: Spot, pen: Pen) {
        const STEP: f64 = 8.0;
        let (left, right) = (a.0.min(b.0), a.0.max(b.0));
        let (top, bottom) = (a.1.min(b.1), a.1.max(b.1));
        let count = ((right - left) / STEP).floor().clamp(1.0, 200.0) as usize;
        let step = (right - left) / count as f64;
        let mut stroke = Vec::with_capacity(2 * count + 1);
        for i in 0..count {
            let x = left + step * i as f64;
            stroke.push((x, bottom));
            stroke.push((x + step, top));
        }
        stroke.push((right, bottom));
        self.path(stroke, pen);
    }

    pub(super) fn text(&mut self, at: Spot, text: &str, how: Lettering) {
        let at = self.at(at);
        // The library divides by this when it writes the size.
        let size = how.size * FINENESS * 1.24;
        let weight = if how.bold {
            FontStyle::Bold
        } else {
            FontStyle::Normal
        };
        let font = ("sans-serif", size).into_font().style(weight);
        let style = TextStyle::from(font)
            .color(&how.color)
            .pos(Pos::new(how.align, VPos::Center));
        let drawn = self.backend.draw_text(text, &style, at);
        self.note(drawn);
    }

    /// Text on a ground that covers lines beneath it.
    pub(super) fn plate(&mut self, at: Spot, text: &str, how: Lettering) {
        let width = super::label::width(text, how.size);
        let left = match how.align {
            HPos::Left => at.0,
            HPos::Center => at.0 - width / 2.0,
            HPos::Right => at.0 - width,
        };
        let half = how.size * 0.55;
        self.block(
            (left - 1.0, at.1 - half),
            (left + width + 1.0, at.1 + half),
            PAPER,
            0.8,
        );
        self.text(at, text, how);
    }

    /// Line with a filled head at its end; only the head when the line is shorter than it.
    pub(super) fn arrow(&mut self, from: Spot, to: Spot, pen: Pen) {
        const HEAD: f64 = 8.0;
        let (dx, dy) = (to.0 - from.0, to.1 - from.1);
        let length = dx.hypot(dy);
        if length < 1.0 {
            return;
        }
        let (ux, uy) = (dx / length, dy / length);
        let head = HEAD.min(length);
        let neck = (to.0 - ux * head, to.1 - uy * head);
        let half = head * 0.36;
        self.line(from, neck, pen);
        let barbs = [
            to,
            (neck.0 - uy * half, neck.1 + ux * half),
            (neck.0 + uy * half, neck.1 - ux * half),
        ];
        self.fill(&barbs, pen.color, 1.0);
    }
}

fn tinted(color: RGBColor, opacity: f64) -> RGBAColor {
    color.mix(opacity)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_that_is_not_finite_makes_the_figure_an_error() {
        let drawn = sheet("thing", 10.0, "", |canvas| {
            canvas.line((0.0, 0.0), (f64::NAN, 1.0), Pen::new(INK, 1.0));
        });
        assert_eq!(drawn, Err(FigureError::NotFinite("thing")));
    }

    #[test]
    fn text_from_the_model_is_escaped_by_the_drawing_library() {
        let drawn = sheet("thing", 10.0, "", |canvas| {
            canvas.text((0.0, 0.0), "<script>\"&'", Lettering::plain());
        })
        .unwrap();
        assert!(drawn.contains("&lt;script&gt;&quot;&amp;&apos;"));
        assert!(!drawn.contains("<script"));
    }

    #[test]
    fn coordinates_keep_a_quarter_of_a_unit() {
        let drawn = sheet("thing", 10.0, "", |canvas| {
            canvas.line((0.25, 1.0), (2.5, 3.0), Pen::new(INK, 1.5));
        })
        .unwrap();
        assert!(drawn.contains("stroke-width=\"6\" x1=\"1\" y1=\"4\" x2=\"10\" y2=\"12\""));
    }
}
