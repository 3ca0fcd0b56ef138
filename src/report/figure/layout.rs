//! The build on paper: side, top and rear view and an isometric view, all at one scale.

mod panel;
mod scene;

use super::canvas::{Canvas, LETTER, Lettering, Pen, Run, Spot, WIDTH, sheet};
use super::label::Area;
use super::mark;
use super::palette::{ACCENT_2, ACCENT_3, ACCENT_4, INK, MUTED};
use super::view::{Panel, Picture, View};
use super::{Figure, FigureError};
use crate::model::Model;
use crate::study::evaluate::Evaluation;
use crate::units::{Digits, Shown, show};
use panel::draw_panel;
use scene::{LEAST_SIZE, Scene};

/// Room left of a panel for its numbers.
const NUMBERS: f64 = 54.0;
/// Room right of the last panel.
const EDGE: f64 = 18.0;
/// Room above a panel for its title.
const HEAD: f64 = LETTER * 1.7;
/// Room below a panel for its numbers and their title.
const FOOT: f64 = LETTER * 3.0;
/// Height of a line of the key.
const KEY_LINE: f64 = LETTER * 1.5;
/// Room left and right of the isometric view for names.
const NAMES: f64 = 90.0;
/// Room over and under it for arrows and names.
const MARGIN: f64 = 20.0;
/// Width of the key.
const KEY_WIDTH: f64 = 240.0;
/// No drawing is taller than this, whatever the build.
const TALLEST: f64 = 1200.0;

/// Draws parts, mounts, centre of gravity, axes, points and clearances of a build as it stands in the file.
///
/// # Errors
/// [`FigureError`] when a number of the build is not finite.
pub fn layout(model: &Model, evaluation: &Evaluation) -> Result<Figure, FigureError> {
    let scene = Scene::of(model, evaluation)?;
    let key = key_lines(&scene);
    let plan = Plan::of(&scene, key.len());
    let alt = alt_text(model, &scene);
    let mut named = vec![false; scene.names.len()];
    let svg = sheet("layout", plan.bottom, &alt, |canvas| {
        for (panel, area) in &plan.panels {
            draw_panel(canvas, &scene, panel, *area, &mut named);
        }
        for (i, entry) in key.iter().enumerate() {
            draw_key(canvas, plan.key_spot(i), *entry);
        }
    })?;
    Ok(Figure {
        svg,
        title: "Layout".to_owned(),
        alt,
        caption: caption(&scene, &named),
    })
}

/// Where the four panels and the key lie: top view over side view, rear view and key beside them, isometric view below.
struct Plan {
    panels: [(Panel, Area); 4],
    /// Where the columns of the key begin, and how many lines each has.
    key_columns: [Spot; 2],
    key_lines: usize,
    bottom: f64,
}

impl Plan {
    fn of(scene: &Scene, key_lines: usize) -> Self {
        let size = scene.extent.most - scene.extent.least;
        let iso = Picture::of(&scene.shown, View::Isometric, LEAST_SIZE);
        let fixed = 2.0 * (HEAD + FOOT) + HEAD + 2.0 * MARGIN;
        let across = (WIDTH - 2.0 * NUMBERS - EDGE) / (size.x + size.y);
        let down = (TALLEST - fixed) / (size.y + size.z + iso.high);
        // Names beside the outermost marks need room too.
        let iso_across = (WIDTH - 2.0 * NAMES) / iso.wide;
        let scale = across.min(down).min(iso_across);
        let (left, right) = (NUMBERS, NUMBERS * 2.0 + size.x * scale);
        // Beside the top view when it leaves room, else in two columns under all.
        let beside = right + KEY_WIDTH <= WIDTH;
        let key_lines = if beside {
            key_lines
        } else {
            key_lines.div_ceil(2)
        };
        let key_height = KEY_LINE * key_lines as f64;
        // The top view stands on the side view, with the spare height over it.
        let upper_end = HEAD
            + if beside {
                (size.y * scale).max(key_height - FOOT)
            } else {
                size.y * scale
            };
        let lower = upper_end + FOOT + HEAD;
        let iso_top = lower + size.z * scale + FOOT + HEAD;
        let iso_end = iso_top + iso.high * scale + 2.0 * MARGIN;
        let (key_columns, bottom) = if beside {
            ([(right, HEAD - KEY_LINE * 0.5); 2], iso_end)
        } else {
            let top = iso_end + LETTER;
            ([(EDGE, top), (WIDTH / 2.0, top)], top + key_height)
        };
        let panel = |view: View, corner: Spot, wide: f64, high: f64| {
            let middle = match view {
                View::Isometric => iso.middle,
                _ => view.flat(&((scene.extent.least + scene.extent.most) / 2.0)),
            };
            let area = Area {
                left: corner.0,
                top: corner.1,
                right: corner.0 + wide,
                bottom: corner.1 + high,
            };
            let centre = (
                (area.left + area.right) / 2.0,
                (area.top + area.bottom) / 2.0,
            );
            let panel = Panel {
                view,
                scale,
                middle,
                centre,
            };
            (panel, area)
        };
        let upper = upper_end - size.y * scale;
        let (wide, broad, tall) = (size.x * scale, size.y * scale, size.z * scale);
        Self {
            panels: [
                panel(View::Top, (left, upper), wide, broad),
                panel(View::Side, (left, lower), wide, tall),
                panel(View::Rear, (right, lower), broad, tall),
                panel(
                    View::Isometric,
                    (left, iso_top),
                    WIDTH - left - EDGE,
                    iso.high * scale + 2.0 * MARGIN,
                ),
            ],
            key_columns,
            key_lines,
            bottom,
        }
    }

    /// Start and middle height of a line of the key.
    fn key_spot(&self, line: usize) -> Spot {
        let [first, second] = self.key_columns;
        let (column, place) = if line < self.key_lines {
            (first, line)
        } else {
            (second, line - self.key_lines)
        };
        (column.0, column.1 + KEY_LINE * (place as f64 + 0.5))
    }
}

/// A line of the key.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Key {
    Mount,
    Rod,
    Centre,
    TorqueRoll,
    ElasticCentre,
    StiffnessCentre,
    Crank,
    Point,
    Clearance,
    StandIn,
}

fn key_lines(scene: &Scene) -> Vec<Key> {
    [
        (Key::Mount, true),
        (Key::Rod, !scene.rods.is_empty()),
        (Key::Centre, true),
        (Key::TorqueRoll, scene.torque_roll.is_some()),
        (Key::ElasticCentre, scene.axes_meet),
        (Key::StiffnessCentre, !scene.axes_meet),
        (Key::Crank, scene.crank.is_some()),
        (Key::Point, !scene.points.is_empty()),
        (Key::Clearance, !scene.clearances.is_empty()),
        (Key::StandIn, scene.solids.iter().any(|s| s.is_stand_in)),
    ]
    .into_iter()
    .filter_map(|(key, present)| present.then_some(key))
    .collect()
}

fn draw_key(canvas: &mut Canvas<'_>, (x, y): Spot, entry: Key) {
    let middle = (x + 18.0, y);
    let (from, to) = ((x, y), (x + 36.0, y));
    let words = match entry {
        Key::Mount => {
            canvas.arrow(from, to, Pen::new(mark::mount_color(0), 1.75));
            mark::mount_mark(canvas, middle, 5.0, 0);
            "mount, arrow along its w"
        }
        Key::Rod => {
            canvas.line(from, to, Pen::new(mark::mount_color(0), 2.5));
            canvas.ring(to, 4.0, Pen::new(mark::mount_color(0), 1.75));
            mark::mount_mark(canvas, from, 5.0, 0);
            "torque rod, ring at the chassis eye"
        }
        Key::Centre => {
            mark::centre_of_gravity(canvas, middle, 7.0);
            "centre of gravity (CG)"
        }
        Key::TorqueRoll => {
            canvas.line(from, to, torque_roll_pen());
            "torque roll axis"
        }
        Key::ElasticCentre => {
            mark::elastic_centre(canvas, middle, 6.0, ACCENT_3);
            "elastic centre"
        }
        Key::StiffnessCentre => {
            mark::elastic_centre(canvas, middle, 6.0, ACCENT_3);
            "stiffness centre"
        }
        Key::Crank => {
            canvas.line(from, to, crank_pen());
            "crank line"
        }
        Key::Point => {
            mark::point(canvas, middle, 4.0);
            "point"
        }
        Key::Clearance => {
            canvas.arrow((x + 6.0, y), (x + 30.0, y), clearance_pen());
            "clearance"
        }
        Key::StandIn => {
            let pen = Pen::new(INK, 1.25).run(Run::Dashed);
            canvas.frame((x + 4.0, y - 6.0), (x + 32.0, y + 6.0), pen);
            "part of unknown shape"
        }
    };
    canvas.text((x + 44.0, y), words, Lettering::plain());
}

fn torque_roll_pen() -> Pen {
    Pen::new(ACCENT_2, 1.75).run(Run::DashDot)
}

fn crank_pen() -> Pen {
    Pen::new(MUTED, 1.5).run(Run::Dotted)
}

fn clearance_pen() -> Pen {
    Pen::new(ACCENT_4, 1.5)
}

fn alt_text(model: &Model, scene: &Scene) -> String {
    let mm = |v: f64| show(v, Shown::Millimetre, Digits::Decimals(0));
    let c = scene.centre;
    let mut text = format!(
        "Side, top, rear and isometric view of {} on {}. Centre of gravity at x {}, y {}, z {}, total {}.",
        counted(model.parts.len(), "part"),
        counted(model.mounts.len(), "mount"),
        mm(c.x),
        mm(c.y),
        mm(c.z),
        show(model.mass.mass(), Shown::Kilogram, Digits::Decimals(1)),
    );
    let e = scene.elastic_centre;
    text.push_str(&format!(
        " {} centre at x {}, y {}, z {}.",
        if scene.axes_meet {
            "Elastic"
        } else {
            "Stiffness"
        },
        mm(e.x),
        mm(e.y),
        mm(e.z)
    ));
    text
}

/// "1 part", "3 parts".
fn counted(count: usize, noun: &str) -> String {
    if count == 1 {
        format!("1 {noun}")
    } else {
        format!("{count} {noun}s")
    }
}

fn caption(scene: &Scene, named: &[bool]) -> String {
    let mut text = "All four views have one scale; numbers are millimetres from the origin of the \
                    build, x forward, y left, z up, in the state in which the file gives them. \
                    Lengths along x, y and z are true in the isometric view too. Arrows have no scale."
        .to_owned();
    if !scene.axes_meet {
        text.push_str(
            " The elastic axes do not meet in one point; the stiffness centre is their mean, \
             weighted by stiffness.",
        );
    }
    let stand_ins: Vec<&str> = scene
        .part_names
        .iter()
        .zip(&scene.solids)
        .filter(|(_, solid)| solid.is_stand_in)
        .map(|(name, _)| name.as_str())
        .collect();
    if !stand_ins.is_empty() {
        text.push_str(&format!(
            " The file gives no shape for {}: drawn dashed as the box with the same mass and inertia.",
            stand_ins.join(", ")
        ));
    }
    let missing: Vec<&str> = scene
        .names
        .iter()
        .zip(named)
        .filter(|(_, named)| !**named)
        .map(|(name, _)| name.as_str())
        .collect();
    if !missing.is_empty() {
        text.push_str(&format!(
            " No room for the names of {}.",
            missing.join(", ")
        ));
    }
    text
}
