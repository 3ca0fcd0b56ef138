//! One view of the layout.

use super::scene::Scene;
use super::{clearance_pen, crank_pen, torque_roll_pen};
use crate::report::content::quantity::round_step;
use crate::report::figure::axis::tick_text;
use crate::report::figure::canvas::{Canvas, LETTER, Lettering, Pen, Spot};
use crate::report::figure::label::{Area, FAR, NEAR, Placer};
use crate::report::figure::mark;
use crate::report::figure::palette::{ACCENT_3, GRID, MUTED};
use crate::report::figure::solid::SolidStyle;
use crate::report::figure::view::{Panel, View};
use crate::spatial::Vec3;
use crate::units::Shown;
use plotters::style::text_anchor::HPos;

/// Length of the arrow along a mount's axis that lies in the paper.
const ARROW: f64 = 26.0;
/// Half size of a mount's mark.
const MARK: f64 = 5.0;

/// Draws one view; `named` collects which names of the scene have been written in any view.
pub(super) fn draw_panel(
    canvas: &mut Canvas<'_>,
    scene: &Scene,
    panel: &Panel,
    area: Area,
    named: &mut [bool],
) {
    let title_at = (area.left, area.top - LETTER * 0.8);
    canvas.text(title_at, panel.view.title(), Lettering::plain().bold());
    draw_axes(canvas, scene, panel, area);
    let to_eye = panel.view.to_eye();
    let mut far_first: Vec<_> = scene.solids.iter().collect();
    far_first.sort_by(|a, b| a.nearness(&to_eye).total_cmp(&b.nearness(&to_eye)));
    for solid in far_first {
        solid.draw(canvas, panel, SolidStyle::of(solid));
    }
    if let Some([a, b]) = scene.crank {
        canvas.line(panel.place(&a), panel.place(&b), crank_pen());
    }
    if let Some([a, b]) = scene.torque_roll {
        canvas.line(panel.place(&a), panel.place(&b), torque_roll_pen());
    }
    let mut placer = Placer::new(Area {
        left: area.left + 2.0,
        top: area.top + 2.0,
        right: area.right - 2.0,
        bottom: area.bottom - 2.0,
    });
    draw_marks(canvas, scene, panel, &mut placer);
    draw_names(canvas, scene, panel, &mut placer, named);
}

fn draw_marks(canvas: &mut Canvas<'_>, scene: &Scene, panel: &Panel, placer: &mut Placer) {
    for (at, toward) in &scene.clearances {
        let from = panel.place(at);
        canvas.arrow(from, arrow_tip(panel, from, toward), clearance_pen());
    }
    for at in &scene.points {
        let spot = panel.place(at);
        mark::point(canvas, spot, 3.5);
        placer.take(Area::around(spot, 5.0));
    }
    for ([near, far], mount) in &scene.rods {
        let [near, far] = [panel.place(near), panel.place(far)];
        let color = mark::mount_color(*mount);
        canvas.line(near, far, Pen::new(color, 2.5));
        canvas.ring(far, MARK * 0.8, Pen::new(color, 1.75));
        placer.take(Area::around(far, MARK + 2.0));
    }
    let is_rod = |place| scene.rods.iter().any(|(_, mount)| *mount == place);
    for (mount, (at, w)) in scene.mounts.iter().enumerate() {
        let spot = panel.place(at);
        if is_rod(mount) {
            mark::mount_mark(canvas, spot, MARK, mount);
            placer.take(Area::around(spot, MARK + 2.0));
            continue;
        }
        let tip = arrow_tip(panel, spot, w);
        canvas.arrow(spot, tip, Pen::new(mark::mount_color(mount), 1.75));
        mark::mount_mark(canvas, spot, MARK, mount);
        placer.take(Area::around(spot, MARK + 2.0));
        placer.take(Area::around(tip, 3.0));
    }
    let spot = panel.place(&scene.elastic_centre);
    mark::elastic_centre(canvas, spot, 5.0, ACCENT_3);
    placer.take(Area::around(spot, 6.0));
    let spot = panel.place(&scene.centre);
    mark::centre_of_gravity(canvas, spot, 7.0);
    placer.take(Area::around(spot, 8.0));
}

/// End of an arrow of fixed length in space, so that it is short where it points at the reader.
fn arrow_tip(panel: &Panel, from: Spot, direction: &Vec3) -> Spot {
    let (right, up) = panel.view.flat(direction);
    (from.0 + right * ARROW, from.1 - up * ARROW)
}

fn draw_names(
    canvas: &mut Canvas<'_>,
    scene: &Scene,
    panel: &Panel,
    placer: &mut Placer,
    named: &mut [bool],
) {
    let centre = panel.place(&scene.centre);
    placer.label(canvas, centre, "CG", Lettering::plain().bold(), FAR);
    let mounts = scene.mounts.len();
    let places = scene.mounts.iter().map(|m| m.0);
    let places = places.chain(scene.points.iter().copied());
    let places = places.chain(scene.clearances.iter().map(|c| {
        // Beside the arrow, not beside the point, which has a name of its own.
        let (right, up) = panel.view.flat(&c.1);
        let reach = ARROW / panel.scale;
        c.0 + c.1 * if right.hypot(up) > 0.3 { reach } else { 0.0 }
    }));
    for (i, ((at, name), named)) in places.zip(&scene.names).zip(named).enumerate() {
        let how = if i < mounts {
            Lettering::plain()
        } else {
            Lettering::muted()
        };
        // A second mention may not reach far: it would cost more clearness than it gives.
        let farthest = if i < mounts || !*named { FAR } else { NEAR };
        *named |= placer.label(canvas, panel.place(&at), name, how, farthest);
    }
}

/// Frame, grid and numbers; the isometric view has the three directions instead.
fn draw_axes(canvas: &mut Canvas<'_>, scene: &Scene, panel: &Panel, area: Area) {
    let (across, up, words) = match panel.view {
        View::Side => (0, 2, ["x, mm, front on the left", "z, mm"]),
        View::Top => (0, 1, ["x, mm, front on the left", "y, mm"]),
        View::Rear => (1, 2, ["y, mm, left on the left", "z, mm"]),
        View::Isometric => return draw_directions(canvas, panel, area),
    };
    let factor = Shown::Millimetre.from_si(1.0);
    let step = round_step(44.0 / panel.scale * factor);
    let values = |axis: usize| {
        let (low, high) = (
            scene.extent.least[axis] * factor,
            scene.extent.most[axis] * factor,
        );
        let first = (low / step).ceil();
        let count = ((high / step).floor() - first).clamp(0.0, 30.0) as usize;
        let holds_any = high / step >= first;
        (0..=count)
            .filter(move |_| holds_any)
            .map(move |i| (first + i as f64) * step)
            .collect::<Vec<f64>>()
    };
    let spot_of = |axis: usize, shown: f64| {
        let mut p_V = scene.extent.least;
        p_V[axis] = shown / factor;
        panel.place(&p_V)
    };
    for shown in values(across) {
        let (x, _) = spot_of(across, shown);
        canvas.line((x, area.top), (x, area.bottom), Pen::new(GRID, 1.0));
        let how = Lettering::muted().align(HPos::Center);
        canvas.text(
            (x, area.bottom + LETTER * 0.8),
            &tick_text(shown, step),
            how,
        );
    }
    for shown in values(up) {
        let (_, y) = spot_of(up, shown);
        canvas.line((area.left, y), (area.right, y), Pen::new(GRID, 1.0));
        let how = Lettering::muted().align(HPos::Right);
        canvas.text((area.left - 5.0, y), &tick_text(shown, step), how);
    }
    canvas.frame(
        (area.left, area.top),
        (area.right, area.bottom),
        Pen::new(MUTED, 0.75),
    );
    let foot = ((area.left + area.right) / 2.0, area.bottom + LETTER * 2.0);
    canvas.text(foot, words[0], Lettering::muted().align(HPos::Center));
    let corner = (area.left - 5.0, area.top - LETTER * 0.8);
    canvas.text(corner, words[1], Lettering::muted().align(HPos::Right));
}

/// The three directions of the build, in the lower left corner.
fn draw_directions(canvas: &mut Canvas<'_>, panel: &Panel, area: Area) {
    let origin = (area.left + 20.0, area.bottom - 34.0);
    for (direction, word) in [
        (Vec3::x(), "x front"),
        (Vec3::y(), "y left"),
        (Vec3::z(), "z up"),
    ] {
        let tip = arrow_tip(panel, origin, &direction);
        canvas.arrow(origin, tip, Pen::new(MUTED, 1.25));
        let (dx, dy) = (tip.0 - origin.0, tip.1 - origin.1);
        let at = (tip.0 + dx * 0.25, tip.1 + dy * 0.5);
        let how = Lettering::muted().align(if dx < -1.0 {
            HPos::Right
        } else if dx > 1.0 {
            HPos::Left
        } else {
            HPos::Center
        });
        canvas.text(at, word, how);
    }
}
