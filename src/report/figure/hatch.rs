//! Slanted lines over a shape with holes, as a cut face of a material is drawn.

use std::f64::consts::FRAC_PI_4;

use super::canvas::{Canvas, Pen, Spot};
use super::palette::ACCENTS;

/// Opacity of the ground below the lines.
const GROUND: f64 = 0.16;
/// No shape gets more lines than this.
const MOST: f64 = 400.0;

/// How the cut faces of one material are drawn; told apart by slant and distance first, colour second.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Hatch {
    angle: f64,
    step: f64,
    place: usize,
}

/// Slants and distances of the lines, in the order in which materials get them.
const STYLES: [(f64, f64); 6] = [
    (FRAC_PI_4, 8.0),
    (-FRAC_PI_4, 8.0),
    (FRAC_PI_4, 4.0),
    (-FRAC_PI_4, 4.0),
    (0.0, 5.0),
    (2.0 * FRAC_PI_4, 5.0),
];

impl Hatch {
    /// Of the material with this place in the key.
    pub(super) fn of(place: usize) -> Self {
        let (angle, step) = STYLES
            .get(place % STYLES.len())
            .copied()
            .unwrap_or((0.0, 8.0));
        Self { angle, step, place }
    }

    fn pen(self) -> Pen {
        let color = ACCENTS.get(self.place % ACCENTS.len()).copied();
        Pen::new(color.unwrap_or(super::palette::INK), 1.0)
    }

    /// Fills closed rings, of which an inner one is a hole, and draws their outlines.
    pub(super) fn draw(self, canvas: &mut Canvas<'_>, rings: &[Vec<Spot>]) {
        let pen = self.pen();
        canvas.fill(&seamed(rings), pen.color(), GROUND);
        for (from, to) in lines(rings, self.angle, self.step) {
            canvas.line(from, to, pen);
        }
        for ring in rings {
            canvas.outline(ring, Pen::new(pen.color(), 1.75));
        }
    }
}

/// Corners of a rectangle.
pub(super) fn rectangle(a: Spot, b: Spot) -> Vec<Spot> {
    vec![a, (b.0, a.1), b, (a.0, b.1)]
}

/// All rings as one line that goes back and forth along a seam, which fills as a shape with holes does.
fn seamed(rings: &[Vec<Spot>]) -> Vec<Spot> {
    let Some((first, holes)) = rings.split_first() else {
        return Vec::new();
    };
    let mut whole = first.clone();
    let start = first.first().copied();
    for hole in holes {
        whole.extend(start);
        // The other way round, so that the hole is one by either rule of filling.
        whole.extend(hole.first().copied());
        whole.extend(hole.iter().rev().copied());
        whole.extend(start);
    }
    whole
}

/// Pieces of parallel lines that lie inside an odd number of rings.
fn lines(rings: &[Vec<Spot>], angle: f64, step: f64) -> Vec<(Spot, Spot)> {
    let (sin, cos) = angle.sin_cos();
    let turned: Vec<Vec<Spot>> = rings
        .iter()
        .map(|ring| {
            ring.iter()
                .map(|(x, y)| (cos * x + sin * y, cos * y - sin * x))
                .collect()
        })
        .collect();
    let back = |(x, y): Spot| (cos * x - sin * y, sin * x + cos * y);
    let heights = turned.iter().flatten().map(|spot| spot.1);
    let (low, high) = heights.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), y| {
        (low.min(y), high.max(y))
    });
    if !(low.is_finite() && high.is_finite() && step > 0.0) {
        return Vec::new();
    }
    // On a common raster, so that neighbours of one material run on.
    let first = (low / step).ceil();
    let count = ((high / step).floor() - first).clamp(-1.0, MOST);
    let mut pieces = Vec::new();
    let mut line = 0.0;
    while line <= count {
        // Off the raster by a hair, so that no corner lies on a line.
        let y = (first + line) * step + 1e-6;
        let mut cuts: Vec<f64> = turned.iter().flat_map(|ring| crossings(ring, y)).collect();
        cuts.sort_by(f64::total_cmp);
        for pair in cuts.chunks_exact(2) {
            if let [from, to] = pair {
                pieces.push((back((*from, y)), back((*to, y))));
            }
        }
        line += 1.0;
    }
    pieces
}

/// Where a level line crosses a closed ring.
fn crossings(ring: &[Spot], y: f64) -> Vec<f64> {
    let next = ring.iter().cycle().skip(1);
    ring.iter()
        .zip(next)
        .filter(|(a, b)| (a.1 > y) != (b.1 > y))
        .map(|(a, b)| a.0 + (b.0 - a.0) * (y - a.1) / (b.1 - a.1))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    /// Derived: over a 10 x 6 rectangle level lines 2 apart are 10 long; a hole of 4 x 2 takes 4 from those through it.
    #[test]
    fn lines_end_at_the_edges_and_leave_the_hole_free() {
        let outer = rectangle((0.0, 0.1), (10.0, 6.1));
        let whole = lines(std::slice::from_ref(&outer), 0.0, 2.0);
        assert_eq!(whole.len(), 3);
        for (from, to) in &whole {
            assert_relative_eq!((to.0 - from.0).abs(), 10.0);
        }
        let holed = lines(&[outer, rectangle((3.0, 1.5), (7.0, 3.5))], 0.0, 2.0);
        let length: f64 = holed.iter().map(|(a, b)| (b.0 - a.0).abs()).sum();
        assert_eq!(holed.len(), 4);
        assert_relative_eq!(length, 26.0);
    }

    /// Derived: on lines at 45 degrees both coordinates change alike.
    #[test]
    fn a_slant_is_kept() {
        let pieces = lines(&[rectangle((0.0, 0.0), (40.0, 20.0))], FRAC_PI_4, 5.0);
        assert!(pieces.len() > 5);
        for (from, to) in pieces {
            assert_relative_eq!(to.0 - from.0, to.1 - from.1, epsilon = 1e-9);
        }
    }

    #[test]
    fn no_two_materials_look_alike_without_colour() {
        for a in 0..STYLES.len() {
            for b in 0..a {
                let (a, b) = (Hatch::of(a), Hatch::of(b));
                assert!(
                    a.angle.to_bits() != b.angle.to_bits() || a.step.to_bits() != b.step.to_bits()
                );
            }
        }
    }
}
