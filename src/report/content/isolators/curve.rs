//! The force-deflection curve of an isolator along one axis, the other two at rest.

use crate::model::isolator::strain::Strains;
use crate::model::isolator::{Isolator, Tension};
use crate::report::content::quantity::round_step;
use crate::spatial::Vec3;

use super::bounds::{self, Bound, BoundKind};
use super::reach::range;

/// About so many rows in a table, in round steps.
const ROWS: f64 = 15.0;

/// What is to be said of a point of the curve.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mark {
    /// The free position.
    Free,
    /// A bound lies here.
    At(BoundKind),
    /// Beyond what the file allows for a long life.
    PastLimit,
    /// A stop is touched.
    OnStop,
    /// Beyond the deflections that were measured.
    BeyondMeasured,
    /// Pulled, which is to be avoided.
    Pulled,
    /// Lifted off its seat.
    LiftedOff,
}

impl Mark {
    /// Name for people and programs.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Free => "free",
            Self::At(kind) => kind.word(),
            Self::PastLimit => "past limit",
            Self::OnStop => "on stop",
            Self::BeyondMeasured => "beyond measured",
            Self::Pulled => "pulled: avoid",
            Self::LiftedOff => "lifted off",
        }
    }
}

/// One point.
#[derive(Debug, Clone, PartialEq)]
pub struct CurvePoint {
    /// Deflection along the axis \[m\].
    pub deflection: f64,
    /// Force that holds it, along the axis \[N\].
    pub force: f64,
    /// Static rate there [N/m].
    pub rate: f64,
    /// Strains of the rubber; `None` when its size is not known.
    pub strains: Option<Strains>,
    /// What is to be said of it.
    pub marks: Vec<Mark>,
}

/// A curve along one axis.
#[derive(Debug, Clone, PartialEq)]
pub struct Curve {
    /// Along which axis: 0 for u, 1 for v, 2 for w.
    pub axis: usize,
    /// Distance between its round deflections \[m\].
    pub step: f64,
    /// Points of rising deflection: round ones, and where a bound lies.
    pub points: Vec<CurvePoint>,
}

/// Force that holds a deflection along one axis \[N\] and static rate there [N/m], stops included.
#[must_use]
pub fn force_and_rate(isolator: &Isolator, axis: usize, deflection: f64) -> (f64, f64) {
    let mut x = Vec3::zeros();
    x[axis.min(2)] = deflection;
    let point = isolator.at(&x).point;
    (
        point.force[axis.min(2)],
        point.tangent[(axis.min(2), axis.min(2))],
    )
}

/// The curve along one axis in round steps, with a point at each bound; `None` where [`range`] has none.
#[must_use]
pub fn curve(isolator: &Isolator, axis: usize, weight: f64) -> Option<Curve> {
    let [low, high] = range(isolator, axis, weight)?;
    let step = round_step((high - low) / ROWS);
    // Outward to the next round one, at most some dozens.
    let (first, last) = ((low / step - 1e-6).floor(), (high / step + 1e-6).ceil());
    let count = (last - first).clamp(0.0, 10.0 * ROWS) as i32;
    let bounds = bounds::along(isolator, axis);
    let measured = isolator.measured.get(axis).copied().flatten();
    let round = (0..=count).map(|i| (first + f64::from(i)) * step);
    let strained = bounds.iter().filter(|bound| bound.kind.is_strain());
    let within = strained
        .map(|bound| bound.deflection)
        .filter(|x| (first * step..=last * step).contains(x));
    // What the file states has its row even far out, such as a stop that stands for none.
    let stated = bounds.iter().filter(|bound| !bound.kind.is_strain());
    let mut places: Vec<f64> = round
        .chain(within)
        .chain(stated.map(|bound| bound.deflection))
        .chain(measured.into_iter().flatten())
        .filter(|x| x.is_finite())
        .map(|x| if x.abs() < 1e-6 * step { 0.0 } else { x })
        .collect();
    places.sort_by(f64::total_cmp);
    places.dedup_by(|b, a| (*b - *a).abs() < 1e-6 * step);
    let points = places
        .into_iter()
        .map(|x| point(isolator, axis, x, &bounds, step))
        .collect();
    Some(Curve { axis, step, points })
}

fn point(isolator: &Isolator, axis: usize, x: f64, bounds: &[Bound], step: f64) -> CurvePoint {
    let (force, rate) = force_and_rate(isolator, axis, x);
    let mut place = Vec3::zeros();
    place[axis] = x;
    let on_stop = isolator.at(&place).on_stop[axis];
    let mut marks = Vec::new();
    if x.abs() < 1e-6 * step {
        marks.push(Mark::Free);
    }
    let here = bounds
        .iter()
        .filter(|bound| (bound.deflection - x).abs() < 1e-6 * step);
    marks.extend(here.map(|bound| Mark::At(bound.kind)));
    let past = |limit: f64| x.abs() > limit * (1.0 + 1e-9);
    if on_stop {
        marks.push(Mark::OnStop);
    } else if isolator.limits[axis].is_some_and(past) {
        marks.push(Mark::PastLimit);
    }
    if isolator.measured[axis].is_some_and(|[lower, upper]| x < lower || x > upper) {
        marks.push(Mark::BeyondMeasured);
    }
    if axis == 2 && x > 0.0 {
        match isolator.tension {
            Tension::Allowed => {}
            Tension::Avoid => marks.push(Mark::Pulled),
            Tension::None => marks.push(Mark::LiftedOff),
        }
    }
    CurvePoint {
        deflection: x,
        force,
        rate,
        strains: bounds::strains(isolator, &place),
        marks,
    }
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use approx::assert_relative_eq;

    use super::*;
    use crate::model::isolator::rates::Rates;
    use crate::model::isolator::stop::AxisStops;
    use crate::model::isolator::strain::StrainMeasure;

    /// What three mounts of a light powertrain carry \[N\].
    const WEIGHT: f64 = 3000.0;

    fn pad() -> Isolator {
        let rates = Vec3::new(0.0, 2e5, 3e5);
        Isolator::new("pad", "rates", Arc::new(Rates { rates }))
    }

    fn stops(lower: f64, upper: f64) -> AxisStops {
        AxisStops {
            lower: Some(lower),
            upper: Some(upper),
            rate: 4e6,
            blend: 0.5e-3,
        }
    }

    fn found(isolator: &Isolator) -> [f64; 2] {
        range(isolator, 2, WEIGHT).unwrap()
    }

    /// Derived: a tenth beyond each stop, and when a stop is told to be out of reach, beyond the limit.
    #[test]
    fn a_curve_ends_a_little_beyond_what_ends_the_motion() {
        let mut part = pad();
        // Three times 3000 N at 300 N/mm is 30 mm; 20 mm at most.
        assert_relative_eq!(found(&part)[0], -20e-3, max_relative = 1e-12);
        assert_relative_eq!(found(&part)[1], 20e-3, max_relative = 1e-12);
        part.strain = Some(StrainMeasure::Block {
            height: 30e-3,
            lean: 0.0,
        });
        // 40 % of 30 mm, and across 100 %.
        assert_relative_eq!(found(&part)[0], -12e-3, max_relative = 1e-12);
        assert_relative_eq!(
            range(&part, 1, WEIGHT).unwrap()[1],
            30e-3,
            max_relative = 1e-12
        );
        part.measured[2] = Some([-10e-3, 0.0]);
        assert_relative_eq!(found(&part)[0], -11e-3, max_relative = 1e-12);
        // Loose on its seat: a fifth of that far up.
        part.tension = Tension::None;
        assert_relative_eq!(found(&part)[1], 2.2e-3, max_relative = 1e-12);
        part.tension = Tension::Allowed;
        part.limits[2] = Some(8e-3);
        assert_relative_eq!(found(&part)[0], -11e-3, max_relative = 1e-12);
        assert_relative_eq!(found(&part)[1], 8.8e-3, max_relative = 1e-12);
        part.stops[2] = stops(-9e-3, 500e-3);
        // Measured farther than the stop.
        assert_relative_eq!(found(&part)[0], -11e-3, max_relative = 1e-12);
        assert_relative_eq!(found(&part)[1], 8.8e-3, max_relative = 1e-12);
        part.measured[2] = None;
        assert_relative_eq!(found(&part)[0], -9.9e-3, max_relative = 1e-12);
        let curve = curve(&part, 2, WEIGHT).unwrap();
        let last = curve.points.last().unwrap();
        assert_relative_eq!(last.deflection, 500e-3);
        assert_eq!(last.marks[0], Mark::At(BoundKind::Stop));
        assert!(curve.points.len() < 30);
    }

    /// Derived: a tenth beyond a washer 3 mm over a loose pad, and the row of the washer.
    #[test]
    fn the_stop_over_a_loose_pad_is_reached() {
        let mut part = pad();
        part.tension = Tension::None;
        part.limits[2] = Some(2e-3);
        part.stops[2] = stops(-4e-3, 3e-3);
        assert_relative_eq!(found(&part)[0], -4.4e-3, max_relative = 1e-12);
        assert_relative_eq!(found(&part)[1], 3.3e-3, max_relative = 1e-12);
        let curve = curve(&part, 2, WEIGHT).unwrap();
        let at_stop = curve
            .points
            .iter()
            .find(|point| (point.deflection - 3e-3).abs() < 1e-9);
        assert_eq!(
            at_stop.unwrap().marks,
            [Mark::At(BoundKind::Stop), Mark::PastLimit, Mark::LiftedOff]
        );
    }

    #[test]
    fn axes_without_a_rate_and_across_a_rod_have_no_curve() {
        let mut part = pad();
        assert_eq!(range(&part, 0, WEIGHT), None);
        assert!(range(&part, 1, WEIGHT).is_some());
        part.is_rod = true;
        assert_eq!(range(&part, 1, WEIGHT), None);
        assert!(range(&part, 2, WEIGHT).is_some());
        assert_eq!(range(&part, 7, WEIGHT), None);
        // Nothing but a stop along u.
        part.is_rod = false;
        part.stops[0] = stops(-2e-3, 2e-3);
        assert!(range(&part, 0, WEIGHT).is_some());
    }

    /// Derived: 300 N/mm times the deflection; beyond the stop at -9 mm by 1 mm,
    /// 4 kN/mm times (1 - 0.25) mm more.
    #[test]
    fn points_are_round_and_stand_where_a_bound_lies() {
        let mut part = pad();
        part.stops[2] = stops(-9e-3, 6e-3);
        part.limits[2] = Some(7.5e-3);
        part.measured[2] = Some([-8e-3, 8e-3]);
        part.tension = Tension::Avoid;
        let curve = curve(&part, 2, WEIGHT).unwrap();
        let at = |mm: f64| {
            let mut near = curve.points.iter();
            near.find(|p| (p.deflection - mm * 1e-3).abs() < 1e-9)
                .unwrap_or_else(|| panic!("no point at {mm} mm"))
        };
        assert_relative_eq!(curve.step, 2e-3, max_relative = 1e-9);
        assert_eq!(at(0.0).marks, [Mark::Free]);
        assert_eq!(at(-4.0).marks, []);
        assert_eq!(at(-7.5).marks, [Mark::At(BoundKind::Limit)]);
        assert_eq!(at(-8.0).marks, [Mark::PastLimit]);
        assert_eq!(
            at(-9.0).marks,
            [
                Mark::At(BoundKind::Stop),
                Mark::PastLimit,
                Mark::BeyondMeasured
            ]
        );
        assert_eq!(at(-10.0).marks, [Mark::OnStop, Mark::BeyondMeasured]);
        assert_eq!(at(2.0).marks, [Mark::Pulled]);
        assert_relative_eq!(at(-4.0).force, -1200.0, max_relative = 1e-9);
        assert_relative_eq!(at(-10.0).force, -6000.0, max_relative = 1e-9);
        assert_relative_eq!(at(-10.0).rate, 4.3e6, max_relative = 1e-9);
        assert!(
            curve
                .points
                .windows(2)
                .all(|pair| pair[0].deflection < pair[1].deflection)
        );
    }

    /// A solid puck goes some micrometres; its table is as long as any.
    #[test]
    fn stiff_parts_have_curves_of_some_rows_too() {
        for rate in [1.0, 1e3, 1e6, 5e9, 1e12] {
            let rates = Vec3::repeat(rate);
            let part = Isolator::new("puck", "solid", Arc::new(Rates { rates }));
            let curve = curve(&part, 2, WEIGHT).unwrap();
            assert!(
                (7..=20).contains(&curve.points.len()),
                "{rate}: {}",
                curve.points.len()
            );
        }
    }
}
