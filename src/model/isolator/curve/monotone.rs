//! Smooth curve through measured points that never overshoots them.

use std::cmp::Ordering;

use crate::model::isolator::AxisPoint;

/// One measured point of the curve.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Knot {
    /// Deflection \[m\].
    x: f64,
    /// Force \[N\].
    force: f64,
    /// Slope of the curve here [N/m].
    slope: f64,
    /// Energy stored here \[J\].
    energy: f64,
}

/// Why points are no curve: each names the place of a point in the list.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CurveFault {
    /// Fewer than two points.
    TooFew,
    /// The deflection of this point is not above that of the one before.
    NotRising(usize),
    /// The force of this point is below that of the one before.
    Falling(usize),
    /// No point is at no deflection with no force.
    NotThroughZero,
}

/// Force against deflection along one axis, smooth through points, with its exact slope and integral.
#[derive(Debug, Clone, PartialEq)]
pub struct MonotoneCurve {
    knots: Vec<Knot>,
}

impl MonotoneCurve {
    /// The curve through points (deflection \[m\], force \[N\]), of which one is (0, 0).
    ///
    /// # Equation
    ///   h = xᵢ₊₁ − xᵢ,   δ = (fᵢ₊₁ − fᵢ)/h
    ///   between:   (w₁ + w₂)/d = w₁/δ₋ + w₂/δ₊,   w₁ = 2 h₊ + h₋,   w₂ = h₊ + 2 h₋;   d = 0 where δ₋ δ₊ = 0
    ///   at an end: d = ((2 h₁ + h₂) δ₁ − h₁ δ₂)/(h₁ + h₂), no less than 0;   δ₁ where there are two points
    ///
    ///   d  slope of the curve at a point [N/m]
    ///
    /// # Range
    /// Between two points the force lies between theirs, and never falls.
    ///
    /// # Source
    /// Published: F. N. Fritsch, J. Butland, A method for constructing local
    /// monotone piecewise cubic interpolants, SIAM J. Sci. Stat. Comput. 5 (1984)
    /// 300-304, after F. N. Fritsch, R. E. Carlson, Monotone piecewise cubic
    /// interpolation, SIAM J. Numer. Anal. 17 (1980) 238-246 (from memory; the
    /// tests compare with a library of the trade).
    ///
    /// # Errors
    /// [`CurveFault`], the first in the order of the list.
    pub fn through(points: &[[f64; 2]]) -> Result<Self, CurveFault> {
        if points.len() < 2 {
            return Err(CurveFault::TooFew);
        }
        for (place, pair) in (1..).zip(points.windows(2)) {
            let [[x, force], [next_x, next_force]] = *pair else {
                continue;
            };
            // What is not a number compares with nothing, and is refused as well.
            if next_x.partial_cmp(&x) != Some(Ordering::Greater) {
                return Err(CurveFault::NotRising(place));
            }
            if matches!(next_force.partial_cmp(&force), None | Some(Ordering::Less)) {
                return Err(CurveFault::Falling(place));
            }
        }
        let is_zero = |point: &[f64; 2]| point.iter().all(|number| number.abs() <= 0.0);
        let Some(zero) = points.iter().position(is_zero) else {
            return Err(CurveFault::NotThroughZero);
        };
        let mut knots: Vec<Knot> = points
            .iter()
            .zip(slopes(points))
            .map(|(&[x, force], slope)| Knot {
                x,
                force,
                slope,
                energy: 0.0,
            })
            .collect();
        let mut last: Option<Knot> = None;
        for knot in &mut knots {
            if let Some(last) = last {
                knot.energy = last.energy + between(&last, knot, knot.x).energy;
            }
            last = Some(*knot);
        }
        let at_zero = knots.get(zero).map_or(0.0, |knot| knot.energy);
        for knot in &mut knots {
            knot.energy -= at_zero;
        }
        Ok(Self { knots })
    }

    /// Force, slope and energy at a deflection \[m\]; outside of the points the last slope goes on.
    #[must_use]
    pub fn at(&self, x: f64) -> AxisPoint {
        let after = self.knots.partition_point(|knot| knot.x <= x);
        let before = after
            .checked_sub(1)
            .and_then(|before| self.knots.get(before));
        match (before, self.knots.get(after)) {
            (Some(before), Some(after)) => {
                let mut point = between(before, after, x);
                point.energy += before.energy;
                point
            }
            (Some(end), None) | (None, Some(end)) => {
                let beyond = AxisPoint::of_rate(end.slope, x - end.x);
                AxisPoint {
                    force: end.force + beyond.force,
                    tangent: end.slope,
                    energy: end.energy + end.force * (x - end.x) + beyond.energy,
                }
            }
            (None, None) => AxisPoint::of_rate(0.0, x),
        }
    }

    /// Deflections of the first and the last point \[m\].
    #[must_use]
    pub fn range(&self) -> [f64; 2] {
        let end = |knot: Option<&Knot>| knot.map_or(0.0, |knot| knot.x);
        [end(self.knots.first()), end(self.knots.last())]
    }
}

/// Cubic between two knots: force, slope, and the integral of the force from the first on.
///
/// # Equation
///   t = (x − x₁)/h:   f = f₁ + h d₁ t + (3 Δ − 2 h d₁ − h d₂) t² + (h d₁ + h d₂ − 2 Δ) t³,   Δ = f₂ − f₁
///
/// # Source
/// Derived: the cubic with the force and slope of both knots, and its integral.
fn between(one: &Knot, other: &Knot, x: f64) -> AxisPoint {
    let h = other.x - one.x;
    let t = (x - one.x) / h;
    let rise = other.force - one.force;
    let (d1, d2) = (h * one.slope, h * other.slope);
    let square = 3.0 * rise - 2.0 * d1 - d2;
    let cube = d1 + d2 - 2.0 * rise;
    AxisPoint {
        force: one.force + t * (d1 + t * (square + t * cube)),
        tangent: (d1 + t * (2.0 * square + t * 3.0 * cube)) / h,
        energy: h * t * (one.force + t * (d1 / 2.0 + t * (square / 3.0 + t * cube / 4.0))),
    }
}

/// Slope at every point; the equation stands at [`MonotoneCurve::through`].
fn slopes(points: &[[f64; 2]]) -> Vec<f64> {
    let pieces: Vec<(f64, f64)> = points
        .windows(2)
        .map(|pair| {
            let [[x, force], [next_x, next_force]] = *pair else {
                return (0.0, 0.0);
            };
            (next_x - x, (next_force - force) / (next_x - x))
        })
        .collect();
    let inner = pieces.windows(2).map(|pair| {
        let [(h1, rate1), (h2, rate2)] = *pair else {
            return 0.0;
        };
        if rate1 <= 0.0 || rate2 <= 0.0 {
            return 0.0;
        }
        let (w1, w2) = (2.0 * h2 + h1, h2 + 2.0 * h1);
        (w1 + w2) / (w1 / rate1 + w2 / rate2)
    });
    let first = end_slope(pieces.first(), pieces.get(1));
    let mut backwards = pieces.iter().rev();
    let last = end_slope(backwards.next(), backwards.next());
    std::iter::once(first)
        .chain(inner)
        .chain(std::iter::once(last))
        .collect()
}

/// Slope at an end from the piece there and the next one inwards.
fn end_slope(piece: Option<&(f64, f64)>, next: Option<&(f64, f64)>) -> f64 {
    match (piece, next) {
        (Some(&(h1, rate1)), Some(&(h2, rate2))) => {
            (((2.0 * h1 + h2) * rate1 - h1 * rate2) / (h1 + h2)).max(0.0)
        }
        (Some(&(_, rate)), None) => rate,
        (None, _) => 0.0,
    }
}
