//! Straight and logarithmic scales between values in SI and places on the sheet, with round ticks in the unit people read.

use super::canvas::{Canvas, LETTER, Lettering, Pen};
use super::palette::GRID;
use crate::report::content::quantity::round_step;
use crate::units::{Digits, Shown, show};
use plotters::style::text_anchor::HPos;

/// A scale along x.
#[derive(Debug, Clone, Copy)]
pub(super) struct Axis {
    low: f64,
    high: f64,
    left: f64,
    right: f64,
    unit: Shown,
    logarithmic: bool,
}

impl Axis {
    /// Straight scale that shows `low..high` (SI) between `left` and `right`; an empty range is widened to `least`.
    pub(super) fn straight(
        (low, high): (f64, f64),
        least: f64,
        (left, right): (f64, f64),
        unit: Shown,
    ) -> Self {
        let short = (least - (high - low)).max(0.0);
        Self {
            low: low - short * 0.5,
            high: high + short * 0.5,
            left,
            right,
            unit,
            logarithmic: false,
        }
    }

    /// Logarithmic scale; `low` must be above zero and below `high`.
    pub(super) fn logarithmic(
        (low, high): (f64, f64),
        (left, right): (f64, f64),
        unit: Shown,
    ) -> Self {
        let low = low.max(f64::MIN_POSITIVE);
        Self {
            low,
            high: high.max(low * 1.001),
            left,
            right,
            unit,
            logarithmic: true,
        }
    }

    /// Place of a value on the sheet; values outside the range lie at its ends.
    pub(super) fn place(&self, value: f64) -> f64 {
        let value = self.nearest(value);
        let share = if self.logarithmic {
            (value / self.low).ln() / (self.high / self.low).ln()
        } else {
            (value - self.low) / (self.high - self.low)
        };
        self.left + share * (self.right - self.left)
    }

    /// A value, or the end of the range beyond which it lies.
    pub(super) fn nearest(&self, value: f64) -> f64 {
        value.clamp(self.low, self.high)
    }

    /// Whether a value lies in the range.
    pub(super) fn holds(&self, value: f64) -> bool {
        (self.low..=self.high).contains(&value)
    }

    /// Round values in the range (SI) with their text, about one for each 45 units of length and two at least.
    pub(super) fn ticks(&self) -> Vec<(f64, String)> {
        let factor = self.unit.from_si(1.0);
        let (low, high) = (self.low * factor, self.high * factor);
        let most = ((self.right - self.left).abs() / 45.0).floor().max(2.0);
        if self.logarithmic {
            return decade_ticks(low, high)
                .into_iter()
                .map(|shown| (shown / factor, tick_text(shown, shown)))
                .collect();
        }
        // One number alone gives no scale: a finer step then.
        let finer = [1.0, 2.0, 4.0].map(|finer| round_ticks([low, high], most * finer));
        let [usual, ..] = &finer;
        let ticks = finer.iter().find(|ticks| ticks.len() > 1).unwrap_or(usual);
        ticks
            .iter()
            .map(|(shown, step)| (shown / factor, tick_text(*shown, *step)))
            .collect()
    }

    /// Grid lines from `top` to `bottom`, numbers below them, and the quantity with its unit under these.
    pub(super) fn draw(&self, canvas: &mut Canvas<'_>, top: f64, bottom: f64, quantity: &str) {
        for (value, text) in self.ticks() {
            let x = self.place(value);
            canvas.line((x, top), (x, bottom), Pen::new(GRID, 1.0));
            let how = Lettering::muted().align(HPos::Center);
            canvas.text((x, bottom + LETTER * 0.8), &text, how);
        }
        let middle = (self.left + self.right) / 2.0;
        let title = format!("{quantity}, {}", self.unit.symbol());
        let how = Lettering::muted().align(HPos::Center);
        canvas.text((middle, bottom + LETTER * 2.1), &title, how);
    }
}

/// Round values in a range with the step between them, about `most` of them.
fn round_ticks([low, high]: [f64; 2], most: f64) -> Vec<(f64, f64)> {
    let step = round_step((high - low) / most);
    if !(step.is_finite() && step > 0.0) {
        return Vec::new();
    }
    let first = (low / step - 1e-9).ceil();
    let count = ((high / step + 1e-9).floor() - first).clamp(0.0, 40.0) as usize;
    (0..=count)
        .map(|i| ((first + i as f64) * step, step))
        .collect()
}

/// Forces from here on are shown in kN \[N\].
const KILONEWTONS_FROM: f64 = 5e3;

/// Unit for forces of which the largest is this one \[N\].
pub(super) fn force_unit(largest: f64) -> Shown {
    if largest >= KILONEWTONS_FROM {
        Shown::Kilonewton
    } else {
        Shown::Newton
    }
}

/// Height that the numbers and the title of an axis take below it.
pub(super) const AXIS_FOOT: f64 = LETTER * 2.9;

/// A tick's number, with the decimals that its step needs.
pub(super) fn tick_text(shown: f64, step: f64) -> String {
    let size = step.abs().log10().floor();
    let digits = if shown.abs() >= 1e6 {
        Digits::Significant(3)
    } else if size >= 0.0 || !size.is_finite() {
        Digits::Decimals(0)
    } else if size >= -1.0 {
        Digits::Decimals(1)
    } else if size >= -2.0 {
        Digits::Decimals(2)
    } else {
        Digits::Significant(2)
    };
    show(shown, Shown::Number, digits)
}

/// 1, 2, 5 in each decade of the range; only the tens when these are many.
fn decade_ticks(low: f64, high: f64) -> Vec<f64> {
    let (first, last) = (low.log10().floor(), high.log10().ceil());
    let decades = (last - first).clamp(1.0, 30.0) as i32;
    let leads: &[f64] = if decades > 3 {
        &[1.0]
    } else {
        &[1.0, 2.0, 5.0]
    };
    (0..=decades)
        .flat_map(|i| {
            leads
                .iter()
                .map(move |lead| lead * 10f64.powf(first + f64::from(i)))
        })
        .filter(|v| *v >= low * (1.0 - 1e-9) && *v <= high * (1.0 + 1e-9))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    #[test]
    fn ticks_are_round_in_the_shown_unit() {
        let axis = Axis::straight((-0.0042, 0.0131), 1e-3, (0.0, 500.0), Shown::Millimetre);
        let texts: Vec<String> = axis.ticks().into_iter().map(|t| t.1).collect();
        assert_eq!(texts, ["-4", "-2", "0", "2", "4", "6", "8", "10", "12"]);
    }

    #[test]
    fn a_value_lies_in_proportion_and_outside_values_at_the_ends() {
        let axis = Axis::straight((0.0, 10.0), 0.0, (100.0, 200.0), Shown::Newton);
        assert_relative_eq!(axis.place(2.5), 125.0);
        assert_relative_eq!(axis.place(99.0), 200.0);
        let log = Axis::logarithmic((1.0, 100.0), (0.0, 200.0), Shown::Hertz);
        assert_relative_eq!(log.place(10.0), 100.0);
    }

    /// Two numbers at least on any straight axis, however short and wherever zero lies.
    #[test]
    fn an_axis_has_two_numbers_at_least() {
        for length in [100.0, 135.0, 180.0, 258.0] {
            for low in [0.0, -0.1, -0.9, -1.9, -3.7, -7.3] {
                for high in [0.05, 0.3, 0.99, 1.9, 4.9, 9.1] {
                    let axis = Axis::straight((low, high), 0.0, (0.0, length), Shown::Number);
                    assert!(axis.ticks().len() > 1, "{low} to {high} on {length}");
                }
            }
        }
    }

    #[test]
    fn an_empty_or_huge_range_gives_finite_places() {
        for (low, high) in [(0.0, 0.0), (-1e300, 1e300), (5.0, 5.0)] {
            let axis = Axis::straight((low, high), 1e-3, (0.0, 100.0), Shown::Newton);
            assert!(axis.place(0.0).is_finite());
            assert!(axis.ticks().len() < 50);
        }
    }
}
