//! One chart: the curve along one axis with its scatter, bounds and working points.

mod line;

use plotters::style::text_anchor::HPos;

use super::bound_line;
use crate::model::isolator::{AXIS_NAMES, Isolator};
use crate::report::content::isolators::bounds::{self, Bound, BoundKind};
use crate::report::content::isolators::reach::range;
use crate::report::content::{names, quantity};
use crate::report::figure::axis::{AXIS_FOOT, Axis};
use crate::report::figure::canvas::{Canvas, LETTER, Lettering, Pen, Run, Spot};
use crate::report::figure::label::{Area, FAR, Placer, width};
use crate::report::figure::mark::mount_mark;
use crate::report::figure::palette::{ACCENT_6, GRID, INK, MUTED};
use crate::units::Shown;
use line::Sample;

/// Radius of the ring around a mark at rest.
pub(super) const RING: f64 = 8.0;
/// Opacity of the band of the scatter.
pub(super) const BAND: f64 = 0.25;
/// Room below a chart for the numbers and the title of its axis.
pub(super) const FOOT: f64 = AXIS_FOOT + LETTER * 0.6;

/// Half size of a mark.
const MARK: f64 = 4.5;
/// A mark farther than this from the curve is beside it \[share of the largest force\].
const BESIDE: f64 = 0.02;
/// Working points are a heap where the chart is so many times as wide or as high as they are, and then shown in one that
/// is only so much wider or higher.
const HEAP: f64 = 8.0;
const SHOWN: f64 = 3.0;
/// The scales show at least this much [m, N].
const LEAST: [f64; 2] = [1e-9, 1e-3];
/// Below this a deflection is not worth a name \[m\].
const NOTHING: f64 = 0.05e-3;

/// One mount in one load case.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Work {
    pub(super) mount: usize,
    pub(super) load: String,
    pub(super) is_rest: bool,
    /// Along u, v, w \[m\].
    pub(super) deflection: [f64; 3],
    /// That holds it, along u, v, w \[N\].
    pub(super) force: [f64; 3],
}

/// One chart.
pub(super) struct Panel<'a> {
    pub(super) axis: usize,
    is_rod: bool,
    is_pushed_along_w: bool,
    range: [f64; 2],
    samples: Vec<Sample>,
    /// Forces that the chart shows, the least first \[N\].
    forces: [f64; 2],
    bounds: Vec<Bound>,
    /// Bounds that were left out to show the working points larger.
    hidden: Vec<Bound>,
    measured: Option<[f64; 2]>,
    works: Vec<&'a Work>,
}

impl<'a> Panel<'a> {
    /// `None` along an axis that neither has a rate nor carries anything. Charts beside it show the axes in `beside`:
    /// what is a heap is decided for all of them alike.
    pub(super) fn of(
        part: &Isolator,
        axis: usize,
        beside: &[usize],
        weight: f64,
        works: &[&'a Work],
    ) -> Option<Self> {
        let whole = range(part, axis, weight);
        let of_works = |of: fn(&Work) -> [f64; 3]| {
            let along = beside.iter().flat_map(|axis| {
                works
                    .iter()
                    .filter_map(move |work| of(work).get(*axis).copied())
            });
            along.fold(0.0, |most, x: f64| f64::max(most, x.abs()))
        };
        let farthest = of_works(|work| work.deflection);
        let known = whole.map(|whole| not_a_heap(whole, farthest));
        if known.is_none() && works.iter().all(|work| work.force[axis].abs() <= 0.0) {
            return None;
        }
        let [mut low, mut high] = known.unwrap_or_default();
        for work in works {
            // Room for the mark itself.
            low = low.min(work.deflection[axis] * 1.03);
            high = high.max(work.deflection[axis] * 1.03);
        }
        let (bounds, hidden): (Vec<Bound>, Vec<Bound>) = bounds::along(part, axis)
            .into_iter()
            .partition(|bound| (low..=high).contains(&bound.deflection));
        let samples = line::samples(part, axis, [low, high]);
        let scattered = samples.iter().flat_map(|sample| sample.scattered);
        let curve = least_and_most(scattered);
        let [least, most] = not_a_heap(curve, of_works(|work| work.force));
        let worked = works.iter().map(|work| work.force[axis]);
        Some(Self {
            axis,
            is_rod: part.is_rod,
            is_pushed_along_w: part.is_pushed_along_w(),
            range: [low, high],
            samples,
            forces: least_and_most(worked.chain([least, most])),
            bounds,
            hidden,
            measured: part.measured.get(axis).copied().flatten(),
            works: works.to_vec(),
        })
    }

    /// Largest force in the chart \[N\].
    pub(super) fn largest_force(&self) -> f64 {
        let [low, high] = self.forces;
        high.max(-low)
    }

    /// Limits, stops and strains that the chart does not reach, in words; nothing when it reaches all.
    pub(super) fn beyond_the_scale(&self) -> Option<String> {
        let has_opposite = |one: &Bound| {
            let opposite = |other: &Bound| (one.deflection + other.deflection).abs() <= LEAST[0];
            let mut alike = self.hidden.iter().filter(|other| other.kind == one.kind);
            alike.any(opposite)
        };
        let said: Vec<String> = self
            .hidden
            .iter()
            .filter(|bound| bound.deflection > 0.0 || !has_opposite(bound))
            .map(|bound| {
                let sign = if has_opposite(bound) { "±" } else { "" };
                let at = quantity::with_unit(bound.deflection, Shown::Millimetre);
                format!("{} at {sign}{at}", bound.kind.word())
            })
            .collect();
        let name = AXIS_NAMES.get(self.axis).copied().unwrap_or_default();
        (!said.is_empty()).then(|| format!("along {name} {}", names::and(&said)))
    }

    /// Whether a bound of a kind is drawn.
    pub(super) fn has(&self, kind: BoundKind) -> bool {
        self.bounds.iter().any(|bound| bound.kind == kind)
    }

    /// The working point with the largest deflection.
    pub(super) fn farthest(&self) -> Option<&'a Work> {
        let size = |work: &Work| work.deflection[self.axis].abs();
        let farthest = self.works.iter().copied();
        farthest.max_by(|a, b| size(a).total_cmp(&size(b)))
    }

    /// Whether a mark stands beside the curve, since the axes act on each other.
    pub(super) fn has_marks_off_its_curve(&self) -> bool {
        let allowed = BESIDE * self.largest_force();
        self.works.iter().any(|work| {
            let x = work.deflection[self.axis];
            let pair = self
                .samples
                .windows(2)
                .find(|pair| pair[0].deflection <= x && x <= pair[1].deflection);
            pair.is_some_and(|pair| {
                let share = (x - pair[0].deflection) / (pair[1].deflection - pair[0].deflection);
                let force = pair[0].force + (pair[1].force - pair[0].force) * share;
                (work.force[self.axis] - force).abs() > allowed
            })
        })
    }

    /// Height of the title and of the words above a chart of a width.
    pub(super) fn head(&self, width: f64) -> f64 {
        let room = (0.0, width);
        LETTER * 1.6 + bound_line::words_height(&self.bounds, &self.scale(room), room)
    }

    fn scale(&self, (left, right): (f64, f64)) -> Axis {
        let [low, high] = self.range;
        Axis::straight((low, high), LEAST[0], (left, right), Shown::Millimetre)
    }

    /// Draws the chart in its area, with its title at the top of a head of a height.
    pub(super) fn draw(&self, canvas: &mut Canvas<'_>, area: Area, head: f64, unit: Shown) {
        let across = self.scale((area.left, area.right));
        let [low, high] = self.forces;
        let spare = (high - low) * 0.03;
        let up = Axis::straight(
            (low - spare, high + spare),
            LEAST[1],
            (area.bottom, area.top),
            unit,
        );
        self.draw_title(canvas, (area.left, area.top - head + LETTER * 0.8), unit);
        self.draw_scales(canvas, area, &across, &up);
        bound_line::draw(canvas, &self.bounds, area, &across);
        self.draw_curve(canvas, &across, &up);
        self.draw_works(canvas, area, &across, &up);
    }

    fn draw_title(&self, canvas: &mut Canvas<'_>, at: Spot, unit: Shown) {
        let name = AXIS_NAMES.get(self.axis).copied().unwrap_or_default();
        let title = if self.is_rod {
            "Along the rod".to_owned()
        } else {
            format!("Along {name}")
        };
        canvas.text(at, &title, Lettering::plain().bold());
        let beside = at.0 + width(&title, LETTER) * 1.15 + 12.0;
        let force = format!("force, {}", unit.symbol());
        canvas.text((beside, at.1), &force, Lettering::muted());
    }

    fn draw_scales(&self, canvas: &mut Canvas<'_>, area: Area, across: &Axis, up: &Axis) {
        let quantity = if self.is_rod {
            "deflection, positive is pulled"
        } else if self.axis == 2 && self.is_pushed_along_w {
            "deflection, negative is compressed"
        } else {
            "deflection"
        };
        across.draw(canvas, area.top, area.bottom, quantity);
        for (value, text) in up.ticks() {
            let y = up.place(value);
            canvas.line((area.left, y), (area.right, y), Pen::new(GRID, 1.0));
            let how = Lettering::muted().align(HPos::Right);
            canvas.text((area.left - 6.0, y), &text, how);
        }
        let zero = Pen::new(MUTED, 1.25);
        let (x, y) = (across.place(0.0), up.place(0.0));
        canvas.line((x, area.top), (x, area.bottom), zero);
        canvas.line((area.left, y), (area.right, y), zero);
    }

    fn draw_curve(&self, canvas: &mut Canvas<'_>, across: &Axis, up: &Axis) {
        let edge = |end: usize| {
            self.samples.iter().map(move |sample| {
                (
                    across.place(sample.deflection),
                    up.place(sample.scattered[end]),
                )
            })
        };
        let band: Vec<Spot> = edge(1).chain(edge(0).rev()).collect();
        canvas.fill(&band, ACCENT_6, BAND);
        let [from, to] = self.measured.unwrap_or([f64::NEG_INFINITY, f64::INFINITY]);
        for (is_drawn, run) in [
            ((f64::NEG_INFINITY, from), Run::Dashed),
            ((from, to), Run::Solid),
            ((to, f64::INFINITY), Run::Dashed),
        ] {
            let piece: Vec<Spot> = self
                .samples
                .iter()
                .filter(|sample| (is_drawn.0..=is_drawn.1).contains(&sample.deflection))
                .map(|sample| (sample.deflection, sample.force))
                .collect();
            for piece in line::within(&piece, up) {
                let spots = piece
                    .into_iter()
                    .map(|(x, force)| (across.place(x), up.place(force)));
                canvas.path(spots, Pen::new(INK, 1.75).run(run));
            }
        }
    }

    fn draw_works(&self, canvas: &mut Canvas<'_>, area: Area, across: &Axis, up: &Axis) {
        let spot = |work: &Work| {
            let place = self.axis;
            (
                across.place(work.deflection[place]),
                up.place(work.force[place]),
            )
        };
        let mut placer = Placer::new(Area {
            left: area.left + 2.0,
            top: area.top + 2.0,
            right: area.right - 2.0,
            bottom: area.bottom - 2.0,
        });
        for sample in &self.samples {
            let on_curve = (across.place(sample.deflection), up.place(sample.force));
            placer.take(Area::around(on_curve, 3.0));
        }
        let zero = (across.place(0.0), up.place(0.0));
        placer.take(Area {
            left: zero.0 - 1.0,
            right: zero.0 + 1.0,
            ..area
        });
        placer.take(Area {
            top: zero.1 - 1.0,
            bottom: zero.1 + 1.0,
            ..area
        });
        for work in &self.works {
            mount_mark(canvas, spot(work), MARK, work.mount);
            placer.take(Area::around(spot(work), MARK + 1.0));
        }
        for work in self.works.iter().filter(|work| work.is_rest) {
            canvas.ring(spot(work), RING, Pen::new(INK, 1.5));
            placer.take(Area::around(spot(work), RING));
        }
        for sense in [-1.0, 1.0] {
            let reach = |work: &Work| sense * work.deflection[self.axis];
            let farthest = self
                .works
                .iter()
                .max_by(|a, b| reach(a).total_cmp(&reach(b)));
            if let Some(work) = farthest.filter(|work| reach(work) > NOTHING) {
                let how = Lettering::plain();
                placer.label(canvas, spot(work), &work.load, how, FAR);
            }
        }
    }
}

/// A range, or less of it where working points, none beyond `farthest`, would be one heap in the middle.
fn not_a_heap([low, high]: [f64; 2], farthest: f64) -> [f64; 2] {
    if farthest > 0.0 && farthest * HEAP < high.max(-low) {
        [low.max(-SHOWN * farthest), high.min(SHOWN * farthest)]
    } else {
        [low, high]
    }
}

/// The least and the most of some numbers and nothing.
fn least_and_most(numbers: impl Iterator<Item = f64>) -> [f64; 2] {
    numbers.fold([0.0, 0.0], |[low, high], x| {
        [f64::min(low, x), f64::max(high, x)]
    })
}
