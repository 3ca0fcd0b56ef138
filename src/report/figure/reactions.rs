//! What each mount does in each load case: vertical force and resultant, side by side.

use super::axis::{AXIS_FOOT, Axis, force_unit};
use super::canvas::{Canvas, LETTER, Lettering, Pen, WIDTH, sheet};
use super::key::Key;
use super::label::{clean, lines};
use super::mark::{mount_color, mount_mark};
use super::palette::{GRID, MUTED};
use super::{Figure, FigureError};
use crate::model::Model;
use crate::spatial::Vec3;
use crate::study::evaluate::{Evaluation, LoadResult};
use crate::units::{Digits, Shown, show};

/// Room for the names of the load cases.
const NAMES: f64 = 172.0;
/// Longest name of a load case.
const NAME: usize = 40;
/// Longest line of it.
const NAME_LINE: usize = 20;
/// More marks than this in each half are a heap; then only the load cases with the largest forces are drawn.
const MOST_MARKS: usize = 160;
/// Room above the chart for the heads of its halves.
const HEAD: f64 = LETTER * 1.8;

/// Draws the force of each mount on the powertrain in each load case: its vertical part, up positive, and its size.
///
/// # Errors
/// [`FigureError`] when no load case has a position.
pub fn reactions(model: &Model, evaluation: &Evaluation) -> Result<Figure, FigureError> {
    let all: Vec<Row> = evaluation
        .loads
        .iter()
        .map(|result| Row::of(model, result))
        .collect();
    let Some((load, mount, largest)) = largest_of(&all) else {
        return Err(FigureError::NoPosition("mount forces"));
    };
    if !largest.is_finite() {
        return Err(FigureError::NotFinite("mount forces"));
    }
    let unit = force_unit(largest);
    let rows = worth_drawing(&all, model.mounts.len());
    let mount_name = |i: usize| {
        let name = model.mounts.get(i).map_or("", |m| m.name.as_str());
        clean(name, 24)
    };
    let alt = format!(
        "Forces of {} mounts in {} load cases. The largest is {} at {} under {}.",
        model.mounts.len(),
        all.len(),
        show(largest, unit, Digits::Significant(3)),
        mount_name(mount),
        load,
    );
    let mounts = 0..model.mounts.len();
    let key = Key::of(mounts.map(|mount| (mount, mount_name(mount))));
    let lane = lane(model.mounts.len());
    let top = key.height + HEAD;
    let bottom = top + rows.iter().map(|row| row.height(lane)).sum::<f64>();
    let svg = sheet("mount forces", bottom + AXIS_FOOT, &alt, |canvas| {
        key.draw(canvas);
        let chart = Chart {
            rows: &rows,
            top,
            bottom,
            lane,
            unit,
        };
        chart.draw(canvas);
    })?;
    let mut caption = "Force of each mount on the powertrain, up positive: a mount that carries \
                       weight is on the right of the zero line. The resultant is the size of the \
                       whole force in any direction."
        .to_owned();
    if rows.len() < all.len() {
        caption.push_str(&format!(
            " Drawn are the {} load cases with the largest forces of {}.",
            rows.len(),
            all.len()
        ));
    }
    Ok(Figure {
        svg,
        title: "Forces at the mounts".to_owned(),
        alt,
        caption,
    })
}

/// One load case.
struct Row {
    name: String,
    /// Mount and force on the powertrain; `None` when no position was found.
    forces: Option<Vec<(usize, Vec3)>>,
}

impl Row {
    fn of(model: &Model, result: &LoadResult) -> Self {
        let name = model
            .loads
            .get(result.load)
            .map_or("", |load| load.name.as_str());
        let forces = result.outcome.as_ref().ok().map(|equilibrium| {
            let states = equilibrium.mounts.iter();
            let forces = states.map(|state| state.force_on_powertrain);
            result.mounts.iter().copied().zip(forces).collect()
        });
        Self {
            name: clean(name, NAME),
            forces,
        }
    }

    /// Height of the row when each mount takes a lane.
    fn height(&self, lane: f64) -> f64 {
        let lanes = self.forces.as_ref().map_or(0, Vec::len);
        (lane * (lanes as f64 + 1.0)).max(LETTER * 2.5)
    }

    fn largest(&self) -> Option<(usize, f64)> {
        let forces = self.forces.as_ref()?;
        let sizes = forces.iter().map(|(mount, force)| (*mount, force.norm()));
        sizes.max_by(|a, b| a.1.total_cmp(&b.1))
    }
}

fn largest_of(rows: &[Row]) -> Option<(&str, usize, f64)> {
    rows.iter()
        .filter_map(|row| {
            let (mount, force) = row.largest()?;
            Some((row.name.as_str(), mount, force))
        })
        .max_by(|a, b| a.2.total_cmp(&b.2))
}

/// The rows to draw, in their order: those without a position, and of the others all or those with the largest forces.
fn worth_drawing(rows: &[Row], mounts: usize) -> Vec<&Row> {
    let most = (MOST_MARKS / mounts.max(1)).max(4);
    let mut by_force: Vec<(usize, f64)> = rows
        .iter()
        .enumerate()
        .filter_map(|(place, row)| Some((place, row.largest()?.1)))
        .collect();
    by_force.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
    by_force.truncate(most);
    let drawn = |place: usize| by_force.iter().any(|(kept, _)| *kept == place);
    rows.iter()
        .enumerate()
        .filter(|(place, row)| row.largest().is_none() || drawn(*place))
        .map(|(_, row)| row)
        .collect()
}

/// Height of one mount's lane in a row: close, but no two marks on one another.
fn lane(mounts: usize) -> f64 {
    (90.0 / mounts.max(1) as f64).clamp(7.0, 11.0)
}

struct Chart<'a> {
    rows: &'a [&'a Row],
    top: f64,
    bottom: f64,
    lane: f64,
    unit: Shown,
}

impl Chart<'_> {
    fn draw(&self, canvas: &mut Canvas<'_>) {
        let half = (WIDTH - NAMES - 12.0) / 2.0;
        let left = (NAMES, NAMES + half - 16.0);
        let right = (NAMES + half + 16.0, WIDTH - 12.0);
        let forces = || {
            let rows = self.rows.iter().filter_map(|row| row.forces.as_ref());
            rows.flatten().map(|(_, force)| force)
        };
        let spread = |of: &dyn Fn(&Vec3) -> f64| {
            forces()
                .map(of)
                .fold((0.0_f64, 0.0_f64), |(least, most), value| {
                    (least.min(value), most.max(value))
                })
        };
        let vertical = Axis::straight(spread(&|f| f.z), 1.0, left, self.unit);
        let resultant = Axis::straight(spread(&|f| f.norm()), 1.0, right, self.unit);
        let head = self.top - LETTER * 0.9;
        let bold = Lettering::plain().bold();
        canvas.text((left.0, head), "Vertical, up positive", bold);
        canvas.text((right.0, head), "Resultant", bold);
        vertical.draw(canvas, self.top, self.bottom, "force");
        resultant.draw(canvas, self.top, self.bottom, "force");
        for axis in [&vertical, &resultant] {
            let zero = axis.place(0.0);
            canvas.line((zero, self.top), (zero, self.bottom), Pen::new(MUTED, 1.25));
        }
        let mut top = self.top;
        for row in self.rows {
            self.draw_row(canvas, row, top, &vertical, &resultant);
            top += row.height(self.lane);
        }
        let end = (WIDTH - 12.0, self.bottom);
        canvas.line((0.0, self.bottom), end, Pen::new(GRID, 1.0));
    }

    fn draw_row(
        &self,
        canvas: &mut Canvas<'_>,
        row: &Row,
        top: f64,
        vertical: &Axis,
        resultant: &Axis,
    ) {
        canvas.line((0.0, top), (WIDTH - 12.0, top), Pen::new(GRID, 1.0));
        let height = row.height(self.lane);
        let middle = top + height / 2.0;
        let most_lines = if height < LETTER * 2.4 { 1 } else { 2 };
        let names = lines(&row.name, NAME_LINE, most_lines);
        for (i, line) in names.iter().enumerate() {
            let offset = i as f64 - (names.len() as f64 - 1.0) / 2.0;
            let at = (2.0, middle + offset * LETTER * 1.15);
            canvas.text(at, line, Lettering::plain());
        }
        let Some(forces) = &row.forces else {
            let at = (NAMES + 8.0, middle);
            canvas.plate(at, "no position found", Lettering::muted());
            return;
        };
        let used = self.lane * (forces.len() as f64 - 1.0);
        for (i, (mount, force)) in forces.iter().enumerate() {
            let y = middle - used / 2.0 + self.lane * i as f64;
            for (axis, value) in [(vertical, force.z), (resultant, force.norm())] {
                let x = axis.place(value);
                let pen = Pen::new(mount_color(*mount), 1.5);
                canvas.line((axis.place(0.0), y), (x, y), pen);
                mount_mark(canvas, (x, y), self.lane * 0.4, *mount);
            }
        }
    }
}
