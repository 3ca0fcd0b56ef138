//! Lines of limits, stops and strains in a chart, with their words above it.

use plotters::style::text_anchor::HPos;

use crate::report::content::isolators::bounds::{Bound, BoundKind};
use crate::report::figure::axis::Axis;
use crate::report::figure::canvas::{Canvas, LETTER, Lettering, Pen, Run};
use crate::report::figure::deflections::draw_bracket;
use crate::report::figure::label::{Area, width};
use crate::report::figure::palette::{ACCENT_2, ACCENT_4, INK, MUTED};

/// Height of one line of words above a chart.
const LANE: f64 = LETTER * 1.15;
/// A word may stand out of the chart by so much.
const SPILL: f64 = 10.0;

/// The word of a bound above a chart.
struct Word {
    kind: BoundKind,
    /// Where the bound is.
    at: f64,
    /// Where the middle of its word is: not beyond the chart.
    middle: f64,
    /// In which line, the lowest being 0.
    line: usize,
}

/// Height of the words above a chart that stands between two edges.
pub(super) fn words_height(bounds: &[Bound], scale: &Axis, edges: (f64, f64)) -> f64 {
    let words = words(bounds, scale, edges);
    let lines = words.iter().map(|word| word.line + 1).max();
    LANE * lines.unwrap_or(0) as f64
}

/// Words of each bound, in as many lines above the chart as keep them apart.
fn words(bounds: &[Bound], scale: &Axis, (left, right): (f64, f64)) -> Vec<Word> {
    let mut bounds: Vec<&Bound> = bounds.iter().collect();
    bounds.sort_by(|a, b| a.deflection.total_cmp(&b.deflection));
    // Where the last word of each line ends.
    let mut ends: Vec<f64> = Vec::new();
    bounds
        .into_iter()
        .map(|bound| {
            let half = width(bound.kind.word(), LETTER) / 2.0;
            let at = scale.place(bound.deflection);
            let middle = at.min(right + SPILL - half).max(left - SPILL + half);
            let free = ends.iter().position(|end| middle - half > end + 6.0);
            let line = free.unwrap_or(ends.len());
            ends.resize(ends.len().max(line + 1), f64::NEG_INFINITY);
            if let Some(end) = ends.get_mut(line) {
                *end = middle + half;
            }
            Word {
                kind: bound.kind,
                at,
                middle,
                line,
            }
        })
        .collect()
}

/// Draws each bound over the whole height of the chart, with its word above.
pub(super) fn draw(canvas: &mut Canvas<'_>, bounds: &[Bound], area: Area, across: &Axis) {
    let (middle, half) = (
        (area.top + area.bottom) / 2.0,
        (area.bottom - area.top) / 2.0,
    );
    for bound in bounds {
        let x = across.place(bound.deflection);
        let outward = bound.deflection.signum();
        match bound.kind {
            BoundKind::Limit => draw_bracket(canvas, x, -outward, middle, half),
            BoundKind::Stop => {
                let end = if outward < 0.0 { area.left } else { area.right };
                draw_stop(canvas, x, end, area);
            }
            kind => canvas.line((x, area.top), (x, area.bottom), pen_of(kind)),
        }
    }
    let words = words(bounds, across, (area.left, area.right));
    let height = |word: &Word| area.top - LANE * (word.line as f64 + 0.5);
    // All lines before all words, so that no line crosses a word.
    for word in words.iter().filter(|word| word.line > 0) {
        let foot = (word.at, area.top);
        canvas.line((word.at, height(word)), foot, Pen::new(MUTED, 0.75));
    }
    for word in &words {
        let color = pen_of(word.kind).color();
        let how = Lettering::plain().color(color).align(HPos::Center);
        canvas.plate((word.middle, height(word)), word.kind.word(), how);
    }
}

/// Line of a bound.
fn pen_of(kind: BoundKind) -> Pen {
    match kind {
        BoundKind::Limit => Pen::new(ACCENT_2, 2.0),
        BoundKind::Stop => Pen::new(INK, 1.5),
        BoundKind::StrainAtRest => Pen::new(ACCENT_4, 1.5).run(Run::Dotted),
        BoundKind::StrainInUse => Pen::new(ACCENT_4, 1.5).run(Run::Dashed),
        BoundKind::StrainRare => Pen::new(ACCENT_4, 1.5).run(Run::DashDot),
    }
}

/// Zone from where a stop is touched to the end of the scale, hatched along its edges.
fn draw_stop(canvas: &mut Canvas<'_>, at: f64, end: f64, area: Area) {
    const STRIP: f64 = 12.0;
    canvas.block((at, area.top), (end, area.bottom), MUTED, 0.1);
    for top in [area.top, area.bottom - STRIP] {
        canvas.hatch((at, top), (end, top + STRIP), Pen::new(MUTED, 0.75));
    }
    canvas.line((at, area.top), (at, area.bottom), Pen::new(INK, 1.5));
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Shown;

    #[test]
    fn words_of_one_line_keep_apart_and_inside_the_sheet() {
        let bounds: Vec<Bound> = BoundKind::ALL
            .into_iter()
            .cycle()
            .zip(0..20)
            .map(|(kind, place)| Bound {
                axis: 2,
                kind,
                deflection: f64::from(place % 7 - 3) * 1e-3,
                basis: String::new(),
            })
            .collect();
        let (left, right) = (62.0, 320.0);
        let scale = Axis::straight((-3e-3, 3e-3), 0.0, (left, right), Shown::Millimetre);
        let words = words(&bounds, &scale, (left, right));
        assert_eq!(words.len(), 20);
        let sides = |word: &Word| {
            let half = width(word.kind.word(), LETTER) / 2.0;
            (word.middle - half, word.middle + half)
        };
        for (i, one) in words.iter().enumerate() {
            let (from, to) = sides(one);
            assert!(from >= left - SPILL - 1e-9 && to <= right + SPILL + 1e-9);
            for other in words[i + 1..].iter().filter(|other| other.line == one.line) {
                assert!(sides(other).0 > to || sides(other).1 < from);
            }
        }
    }
}
