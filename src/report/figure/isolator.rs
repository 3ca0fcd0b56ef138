//! Force against deflection of one isolator, with what each mount on it does in each load case.

mod bound_line;
mod panel;
#[cfg(test)]
mod tests;

use super::axis::force_unit;
use super::canvas::{Canvas, LETTER, Lettering, Pen, Run, WIDTH, sheet};
use super::key::Key;
use super::label::{Area, clean, width};
use super::palette::{ACCENT_6, INK};
use super::{Figure, FigureError};
use crate::model::Model;
use crate::model::isolator::{AXIS_NAMES, Isolator};
use crate::model::load::LoadOrigin;
use crate::report::content::isolators::bounds::BoundKind;
use crate::report::content::quantity;
use crate::spatial::STANDARD_GRAVITY;
use crate::study::evaluate::Evaluation;
use crate::units::{Digits, Shown, show};
use panel::{Panel, RING, Work};

/// Height of the chart that takes the whole width, and of one beside another.
const WHOLE: f64 = 250.0;
const HALF: f64 = 180.0;
/// Room left of a chart for its numbers.
const NUMBERS: f64 = 62.0;
/// Room right of it for its last number.
const MARGIN: f64 = 12.0;
/// Between two charts that stand side by side.
const BETWEEN: f64 = 20.0;
/// More marks than this in a chart are a heap; then only those farthest out and those at rest are drawn.
const MOST_MARKS: usize = 150;

/// Draws the force-deflection curve of an isolator along each axis that works, with its scatter, limits and stops, and the working points of all its mounts.
///
/// # Errors
/// [`FigureError`] when there is no isolator with this place, when it has no
/// rate at all, or a number is not finite.
pub fn isolator(
    model: &Model,
    evaluation: &Evaluation,
    place: usize,
) -> Result<Figure, FigureError> {
    let part = model
        .isolators
        .get(place)
        .ok_or(FigureError::Nothing("isolator at this place"))?;
    let weight = model.mass.mass() * STANDARD_GRAVITY;
    let works = works(model, evaluation, place);
    let drawn = worth_drawing(&works);
    // The main axis first: it gets the whole width.
    let panels: Vec<Panel<'_>> = [2, 0, 1]
        .into_iter()
        .filter(|axis| !part.is_rod || *axis == 2)
        .filter_map(|axis| {
            let beside: &[usize] = if axis == 2 { &[2] } else { &[0, 1] };
            Panel::of(part, axis, beside, weight, &drawn)
        })
        .collect();
    let Some(largest) = panels.iter().map(Panel::largest_force).reduce(f64::max) else {
        return Err(FigureError::Nothing("rate in this isolator"));
    };
    if !largest.is_finite() {
        return Err(FigureError::NotFinite("isolator"));
    }
    let name = clean(&part.name, 30);
    let mounts = model.mounts.iter().enumerate();
    let users: Vec<(usize, String)> = mounts
        .filter(|(_, mount)| mount.isolator == place)
        .map(|(mount, named)| (mount, clean(&named.name, 24)))
        .collect();
    let alt = alt_text(&name, &panels, &users);
    let key = Key::of(users);
    let top = key.height + LETTER * 1.5;
    let (areas, bottom) = areas(&panels, top);
    let svg = sheet("isolator", bottom, &alt, |canvas| {
        key.draw(canvas);
        draw_key(canvas, key.height + LETTER * 0.5, part, &works);
        for (panel, (area, head)) in panels.iter().zip(areas) {
            panel.draw(canvas, area, head, force_unit(largest));
        }
    })?;
    Ok(Figure {
        svg,
        title: format!("Isolator {name}"),
        alt,
        caption: caption(part, &panels, drawn.len() < works.len()),
    })
}

/// Every mount on the isolator in every load case.
fn works(model: &Model, evaluation: &Evaluation, place: usize) -> Vec<Work> {
    let mut works = Vec::new();
    for result in &evaluation.loads {
        let Ok(equilibrium) = &result.outcome else {
            continue;
        };
        let load = model.loads.get(result.load);
        for (&mount, state) in result.mounts.iter().zip(&equilibrium.mounts) {
            if model.mounts.get(mount).map(|mount| mount.isolator) != Some(place) {
                continue;
            }
            works.push(Work {
                mount,
                load: clean(load.map_or("", |load| load.name.as_str()), 26),
                is_rest: load.is_some_and(|load| load.origin == LoadOrigin::AtRest),
                deflection: state.isolator_deflection.into(),
                force: state.isolator.point.force.into(),
            });
        }
    }
    works
}

/// All, or of a heap those at rest and the farthest each way of each mount.
fn worth_drawing(works: &[Work]) -> Vec<&Work> {
    if works.len() <= MOST_MARKS {
        return works.iter().collect();
    }
    let mut kept: Vec<usize> = Vec::new();
    kept.extend((0..works.len()).filter(|&i| works.get(i).is_some_and(|work| work.is_rest)));
    let mut mounts: Vec<usize> = works.iter().map(|work| work.mount).collect();
    mounts.sort_unstable();
    mounts.dedup();
    for mount in mounts {
        for axis in 0..3 {
            let of_mount = || {
                works
                    .iter()
                    .enumerate()
                    .filter(|(_, work)| work.mount == mount)
            };
            let by = |a: &(usize, &Work), b: &(usize, &Work)| {
                a.1.deflection[axis].total_cmp(&b.1.deflection[axis])
            };
            kept.extend(of_mount().min_by(by).map(|(i, _)| i));
            kept.extend(of_mount().max_by(by).map(|(i, _)| i));
        }
    }
    kept.sort_unstable();
    kept.dedup();
    kept.into_iter().filter_map(|i| works.get(i)).collect()
}

/// Where each chart stands and how high its head is, the first over the whole width, the others in pairs; and where the sheet ends.
fn areas(panels: &[Panel<'_>], top: f64) -> (Vec<(Area, f64)>, f64) {
    let mut areas = Vec::new();
    let mut bottom = top;
    for (row, of_row) in rows(panels).into_iter().enumerate() {
        let (wide, high) = if row == 0 {
            (WIDTH, WHOLE)
        } else {
            ((WIDTH - BETWEEN) / 2.0, HALF)
        };
        let inside = wide - NUMBERS - MARGIN;
        let heads = of_row.iter().map(|panel| panel.head(inside));
        let head = heads.fold(0.0, f64::max);
        let upper = bottom + head;
        for column in 0..of_row.len() {
            let left = (wide + BETWEEN) * column as f64 + NUMBERS;
            let area = Area {
                left,
                top: upper,
                right: left + inside,
                bottom: upper + high,
            };
            areas.push((area, head));
        }
        bottom = upper + high + panel::FOOT;
    }
    (areas, bottom)
}

fn rows<'a, 'b>(panels: &'a [Panel<'b>]) -> Vec<&'a [Panel<'b>]> {
    match panels {
        [first, others @ ..] => {
            let mut rows = vec![std::slice::from_ref(first)];
            rows.extend(others.chunks(2));
            rows
        }
        [] => Vec::new(),
    }
}

/// What the ring and the band mean.
fn draw_key(canvas: &mut Canvas<'_>, y: f64, part: &Isolator, works: &[Work]) {
    let mut x = 8.0;
    let mut entry = |canvas: &mut Canvas<'_>, wide: f64, text: &str| {
        canvas.text((x + wide + 8.0, y), text, Lettering::plain());
        let at = x;
        x += wide + width(text, LETTER) + 34.0;
        at
    };
    if works.iter().any(|work| work.is_rest) {
        let at = entry(canvas, 2.0 * RING, "at rest");
        canvas.ring((at + RING, y), RING, Pen::new(INK, 1.5));
    }
    if part.scatter > 0.0 {
        let text = format!("scatter ±{}", quantity::share(part.scatter));
        let at = entry(canvas, 30.0, &text);
        canvas.block((at, y - 6.0), (at + 30.0, y + 6.0), ACCENT_6, panel::BAND);
        canvas.line((at, y), (at + 30.0, y), Pen::new(INK, 1.75));
    }
    if part.measured.iter().any(Option::is_some) {
        let at = entry(canvas, 30.0, "beyond what was measured");
        let pen = Pen::new(INK, 1.75).run(Run::Dashed);
        canvas.line((at, y), (at + 30.0, y), pen);
    }
}

fn caption(part: &Isolator, panels: &[Panel<'_>], thinned: bool) -> String {
    let mut text = if part.is_rod {
        "Static force along the rod that holds a deflection, positive when pulled.".to_owned()
    } else {
        "Static force that holds a deflection along each axis, the other two at rest; it has the \
         sign of the deflection."
            .to_owned()
    };
    text.push_str(" Each mark is a mount in a load case, in a ring at rest.");
    let has = |kind: BoundKind| panels.iter().any(|panel| panel.has(kind));
    if has(BoundKind::Limit) {
        text.push_str(" Brackets are limits for a long life.");
    }
    if has(BoundKind::Stop) {
        text.push_str(" Shaded zones begin where a stop is touched.");
    }
    if [
        BoundKind::StrainAtRest,
        BoundKind::StrainInUse,
        BoundKind::StrainRare,
    ]
    .into_iter()
    .any(has)
    {
        text.push_str(
            " Broken lines are the most that rubber bears at rest, in the peaks of use, and in rare loads.",
        );
    }
    let beyond: Vec<String> = panels.iter().filter_map(Panel::beyond_the_scale).collect();
    if !beyond.is_empty() {
        text.push_str(&format!(" Beyond the scale: {}.", beyond.join("; ")));
    }
    if panels.iter().any(Panel::has_marks_off_its_curve) {
        text.push_str(" A mark beside the curve is deflected along another axis too.");
    }
    if thinned {
        text.push_str(
            " Of many load cases only those at rest and the farthest of each mount are drawn.",
        );
    }
    text
}

fn alt_text(name: &str, panels: &[Panel<'_>], users: &[(usize, String)]) -> String {
    let user = |mount: usize| {
        let found = users.iter().find(|(place, _)| *place == mount);
        found.map_or("", |(_, name)| name.as_str())
    };
    let mut text = format!("Force against deflection of isolator {name}.");
    for panel in panels {
        let axis = AXIS_NAMES.get(panel.axis).copied().unwrap_or_default();
        match panel.farthest() {
            Some(work) => text.push_str(&format!(
                " Along {axis} the farthest is {} at {}: {}, {}.",
                show(
                    work.deflection[panel.axis],
                    Shown::Millimetre,
                    Digits::Decimals(1)
                ),
                show(
                    work.force[panel.axis],
                    Shown::Newton,
                    Digits::Significant(3)
                ),
                user(work.mount),
                work.load
            )),
            None => text.push_str(&format!(" Along {axis} nothing works on it.")),
        }
    }
    text
}
