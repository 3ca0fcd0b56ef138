//! Marks: one for each mount, told apart by shape first and colour second, and the customary ones of a drawing.

use super::canvas::{Canvas, Pen, Spot};
use super::palette::{ACCENTS, INK, PAPER};
use plotters::style::RGBColor;
use std::f64::consts::{FRAC_PI_2, TAU};

/// Colour of a mount, by its place in the model.
pub(super) fn mount_color(mount: usize) -> RGBColor {
    ACCENTS.get(mount % ACCENTS.len()).copied().unwrap_or(INK)
}

/// Mark of a mount, by its place in the model: six shapes, filled, then hollow, then again.
pub(super) fn mount_mark(canvas: &mut Canvas<'_>, at: Spot, half: f64, mount: usize) {
    let color = mount_color(mount);
    let hollow = (mount / ACCENTS.len()) % 2 == 1;
    let outline = match mount % ACCENTS.len() {
        0 => {
            if hollow {
                canvas.disc(at, half, PAPER);
                canvas.ring(at, half, Pen::new(color, 1.75));
            } else {
                canvas.disc(at, half, color);
            }
            return;
        }
        1 => polygon(at, half * 1.2, 4, FRAC_PI_2 / 2.0),
        2 => polygon(at, half * 1.35, 3, -FRAC_PI_2),
        3 => polygon(at, half * 1.35, 4, 0.0),
        4 => polygon(at, half * 1.35, 3, FRAC_PI_2),
        _ => polygon(at, half * 1.2, 5, -FRAC_PI_2),
    };
    if hollow {
        canvas.fill(&outline, PAPER, 1.0);
        canvas.outline(&outline, Pen::new(color, 1.75));
    } else {
        canvas.fill(&outline, color, 1.0);
    }
}

fn polygon((x, y): Spot, radius: f64, corners: u32, first: f64) -> Vec<Spot> {
    (0..corners)
        .map(|i| {
            let angle = first + TAU * f64::from(i) / f64::from(corners);
            (x + radius * angle.cos(), y + radius * angle.sin())
        })
        .collect()
}

/// Centre of gravity: the circle with two dark quarters.
pub(super) fn centre_of_gravity(canvas: &mut Canvas<'_>, at: Spot, radius: f64) {
    canvas.disc(at, radius, PAPER);
    for start in [0.0, 2.0 * FRAC_PI_2] {
        let arc = (0..=6).map(|i| {
            let angle = start + FRAC_PI_2 * f64::from(i) / 6.0;
            (at.0 + radius * angle.cos(), at.1 + radius * angle.sin())
        });
        let quarter: Vec<Spot> = std::iter::once(at).chain(arc).collect();
        canvas.fill(&quarter, INK, 1.0);
    }
    canvas.ring(at, radius, Pen::new(INK, 1.25));
}

/// Elastic centre: a ring with a point in it.
pub(super) fn elastic_centre(canvas: &mut Canvas<'_>, at: Spot, radius: f64, color: RGBColor) {
    canvas.disc(at, radius, PAPER);
    canvas.ring(at, radius, Pen::new(color, 1.75));
    canvas.disc(at, radius * 0.36, color);
}

/// A point whose motion matters: a small cross.
pub(super) fn point(canvas: &mut Canvas<'_>, (x, y): Spot, half: f64) {
    let pen = Pen::new(INK, 1.25);
    canvas.line((x - half, y - half), (x + half, y + half), pen);
    canvas.line((x - half, y + half), (x + half, y - half), pen);
}
