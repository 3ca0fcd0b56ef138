//! One mode: the build still and displaced, and where its kinetic energy is.

use super::axis::{AXIS_FOOT, Axis};
use super::canvas::{Canvas, LETTER, Lettering, Pen, Run, Spot, sheet};
use super::frequencies::{mode_words, position_name};
use super::label::{Area, FAR, Placer, clean};
use super::mark;
use super::palette::{ACCENT_1, INK, MUTED};
use super::solid::{Solid, SolidStyle};
use super::view::{Panel, Picture, View};
use super::{Figure, FigureError};
use crate::model::Model;
use crate::report::content::names;
use crate::rigid::equilibrium::StaticEquilibrium;
use crate::rigid::modes::Mode;
use crate::spatial::{Pose, Vec3, Vec6};
use crate::study::evaluate::Evaluation;
use crate::units::{Digits, Shown, show};
use plotters::style::text_anchor::HPos;

/// Largest motion of a mount on the sheet.
const SHOWN_MOTION: f64 = 44.0;
/// Largest motion of a corner, as a multiple of that.
const WIDEST: f64 = 1.5;
/// Largest drawn turn \[rad\].
const LARGEST_TURN: f64 = 0.35;
/// The drawing and the bars beside it.
const DRAWING: f64 = 430.0;
const HEIGHT: f64 = 380.0;
const BARS_LEFT: f64 = 556.0;
const BARS_RIGHT: f64 = 664.0;
const BAR: f64 = 40.0;
const BARS_TOP: f64 = 52.0;
/// Free of drawing on every side, for marks and letters.
const MARGIN: f64 = 12.0;
/// A build is drawn as if it were at least this large \[m\].
const LEAST_SIZE: f64 = 0.1;

const _: () = assert!(
    BARS_TOP + BAR * SHARES.len() as f64 + AXIS_FOOT < HEIGHT,
    "the bars and their axis end on the sheet"
);

/// The shares in the order of [`names::energy`].
const SHARES: [&str; 7] = [
    "x fore-aft",
    "y lateral",
    "z up-down",
    "roll",
    "pitch",
    "yaw",
    "fluid",
];

/// Draws mode `mode` of `Evaluation::modes[position]`: parts still and displaced, motion of mounts and centre of gravity, shares of the kinetic energy.
///
/// # Errors
/// [`FigureError`] when there is no such mode or a number of it is not finite.
pub fn mode_shape(
    model: &Model,
    evaluation: &Evaluation,
    position: usize,
    mode: usize,
) -> Result<Figure, FigureError> {
    let at = evaluation.modes.get(position);
    let (at, shown) = at
        .and_then(|at| Some((at, at.solution.modes.get(mode)?)))
        .ok_or(FigureError::NoSuchMode { position, mode })?;
    let title = format!("Mode {}: {}", mode + 1, mode_words(shown));
    let result = evaluation
        .loads
        .iter()
        .find(|result| result.load == at.load);
    let equilibrium = result.and_then(|result| result.outcome.as_ref().ok());
    let motion = Motion::of(model, equilibrium, shown)?;
    let place = position_name(model, at);
    let alt = alt_text(&title, &place, shown);
    let svg = sheet("mode shape", HEIGHT, &alt, |canvas| {
        motion.draw(canvas);
        draw_shares(canvas, shown);
    })?;
    let caption = motion
        .leader()
        .map_or_else(String::new, |(leader, length)| {
            format!(
                "Largest motion of a mount: {leader}, drawn as {}.",
                show(length, Shown::Millimetre, Digits::Significant(2))
            )
        });
    Ok(Figure {
        svg,
        title,
        alt,
        caption,
    })
}

/// The build and how it moves.
struct Motion {
    still: Vec<Solid>,
    /// Name, place and drawn motion of each mount.
    mounts: Vec<(String, Vec3, Vec3)>,
    centre: Vec3,
    /// Drawn motion at the centre of gravity, translation first.
    q: Vec6,
    panel: Panel,
}

impl Motion {
    fn of(
        model: &Model,
        equilibrium: Option<&StaticEquilibrium>,
        mode: &Mode,
    ) -> Result<Self, FigureError> {
        let loaded = |p: &Vec3| equilibrium.map_or(*p, |e| p + e.displacement_of(*p));
        let centre = equilibrium.map_or(model.mass.centre(), |e| e.pose.position);
        let still: Vec<Solid> = model
            .parts
            .iter()
            .map(|part| Solid::of(part).moved(loaded))
            .collect();
        let mounts: Vec<Vec3> = model.mounts.iter().map(|m| loaded(&m.at)).collect();
        let shown = still.iter().flat_map(Solid::corners);
        let shown: Vec<Vec3> = shown
            .chain(mounts.iter().copied())
            .chain([centre])
            .collect();
        let finite = |p: &Vec3| p.iter().all(|x| x.is_finite());
        if !(shown.iter().all(finite) && mode.shape.iter().all(|x| x.is_finite())) {
            return Err(FigureError::NotFinite("mode shape"));
        }
        let picture = Picture::of(&shown, View::Isometric, LEAST_SIZE);
        // Room for the motion on every side.
        let room = (DRAWING - 2.2 * SHOWN_MOTION, HEIGHT - 2.2 * SHOWN_MOTION);
        let mut panel = Panel {
            view: View::Isometric,
            scale: (room.0 / picture.wide).min(room.1 / picture.high),
            middle: picture.middle,
            centre: (DRAWING / 2.0, HEIGHT / 2.0),
        };
        let q = mode.shape * scale_of(mode, &centre, &mounts, &shown, SHOWN_MOTION / panel.scale);
        // Corners may move farther than mounts, and farther to one side: the sheet holds where they end too.
        let displaced = shown.iter().map(|p| p + motion_at(&q, &centre, p));
        let covered: Vec<Vec3> = shown.iter().copied().chain(displaced).collect();
        let picture = Picture::of(&covered, View::Isometric, LEAST_SIZE);
        let inside = (DRAWING - 2.0 * MARGIN, HEIGHT - 2.0 * MARGIN);
        panel.middle = picture.middle;
        panel.scale = panel
            .scale
            .min(inside.0 / picture.wide)
            .min(inside.1 / picture.high);
        let mounts: Vec<(String, Vec3, Vec3)> = model
            .mounts
            .iter()
            .zip(mounts)
            .map(|(mount, at)| (clean(&mount.name, 18), at, motion_at(&q, &centre, &at)))
            .collect();
        Ok(Self {
            still,
            mounts,
            centre,
            q,
            panel,
        })
    }

    /// The mount with the largest drawn motion, and this motion \[m\].
    fn leader(&self) -> Option<(&str, f64)> {
        let moved = self.mounts.iter().map(|m| (m.0.as_str(), m.2.norm()));
        moved.reduce(|best, next| if next.1 > best.1 { next } else { best })
    }

    fn draw(&self, canvas: &mut Canvas<'_>) {
        let still = Pen::new(MUTED, 0.75).run(Run::Dashed);
        let faint = SolidStyle {
            tint: None,
            outline: still,
            inner: still,
        };
        let to_eye = self.panel.view.to_eye();
        let mut far_first: Vec<&Solid> = self.still.iter().collect();
        far_first.sort_by(|a, b| a.nearness(&to_eye).total_cmp(&b.nearness(&to_eye)));
        for solid in &far_first {
            solid.draw(canvas, &self.panel, faint);
        }
        let clear = SolidStyle {
            tint: Some(ACCENT_1),
            outline: Pen::new(INK, 1.5),
            inner: Pen::new(INK, 0.75),
        };
        for solid in &far_first {
            let displaced = solid.moved(|p| p + motion_at(&self.q, &self.centre, p));
            displaced.draw(canvas, &self.panel, clear);
        }
        let mut placer = Placer::new(Area {
            left: 0.0,
            top: 0.0,
            right: DRAWING,
            bottom: HEIGHT,
        });
        for (i, (_, at, motion)) in self.mounts.iter().enumerate() {
            let pen = Pen::new(mark::mount_color(i), 2.25);
            let (from, to) = self.draw_arrow(canvas, at, motion, pen);
            mark::mount_mark(canvas, from, 5.0, i);
            placer.take(Area::around(from, 6.0));
            placer.take(Area::around(to, 5.0));
        }
        let motion = motion_at(&self.q, &self.centre, &self.centre);
        let (from, to) = self.draw_arrow(canvas, &self.centre, &motion, Pen::new(INK, 2.25));
        mark::centre_of_gravity(canvas, from, 7.0);
        placer.take(Area::around(from, 8.0));
        placer.take(Area::around(to, 5.0));
        placer.label(canvas, from, "CG", Lettering::plain().bold(), FAR);
        for (name, at, _) in &self.mounts {
            let spot = self.panel.place(at);
            placer.label(canvas, spot, name, Lettering::plain(), FAR);
        }
    }

    fn draw_arrow(
        &self,
        canvas: &mut Canvas<'_>,
        at: &Vec3,
        motion: &Vec3,
        pen: Pen,
    ) -> (Spot, Spot) {
        let from = self.panel.place(at);
        let to = self.panel.place(&(at + motion));
        canvas.arrow(from, to, pen);
        (from, to)
    }
}

/// By how much a mode is exaggerated: the largest motion of a mount becomes `length` \[m\], or less where the corners of the parts or the turn would grow too large; zero when nothing moves.
fn scale_of(mode: &Mode, centre: &Vec3, mounts: &[Vec3], shown: &[Vec3], length: f64) -> f64 {
    let translation: Vec3 = mode.shape.fixed_rows::<3>(0).into_owned();
    let turn: Vec3 = mode.shape.fixed_rows::<3>(3).into_owned();
    let largest = |places: &[Vec3]| {
        let motions = places
            .iter()
            .map(|p| (translation + turn.cross(&(p - centre))).norm());
        motions.fold(0.0, f64::max)
    };
    let scale = (length / largest(mounts))
        .min(WIDEST * length / largest(shown))
        .min(LARGEST_TURN / turn.norm());
    if scale.is_finite() { scale } else { 0.0 }
}

/// Motion of a place for a motion `q` of the centre of gravity.
///
/// The turn is taken as finite, so that an exaggerated box stays a box.
fn motion_at(q: &Vec6, centre: &Vec3, p: &Vec3) -> Vec3 {
    let moved = Pose::upright(*centre).moved_by(q);
    moved.position + moved.rotation * (p - centre) - p
}

fn draw_shares(canvas: &mut Canvas<'_>, mode: &Mode) {
    let axis = Axis::straight((0.0, 1.0), 1.0, (BARS_LEFT, BARS_RIGHT), Shown::Percent);
    let shares: Vec<(&str, f64)> = shares(mode).collect();
    let bottom = BARS_TOP + BAR * shares.len() as f64;
    let head = (BARS_LEFT - 104.0, BARS_TOP - LETTER * 1.1);
    canvas.text(head, "Kinetic energy", Lettering::plain().bold());
    axis.draw(canvas, BARS_TOP, bottom, "share");
    let zero = axis.place(0.0);
    canvas.line((zero, BARS_TOP), (zero, bottom), Pen::new(MUTED, 1.25));
    for (i, (name, share)) in shares.into_iter().enumerate() {
        let y = BARS_TOP + BAR * (i as f64 + 0.5);
        let right = Lettering::plain().align(HPos::Right);
        canvas.text((zero - 8.0, y), name, right);
        let end = axis.place(share);
        canvas.block((zero, y - BAR * 0.28), (end, y + BAR * 0.28), ACCENT_1, 0.8);
        let text = show(share, Shown::Percent, Digits::Decimals(0));
        canvas.text((end + 6.0, y), &text, Lettering::plain());
    }
}

fn shares(mode: &Mode) -> impl Iterator<Item = (&'static str, f64)> {
    let energies = names::energy(mode).map(|(share, _)| share);
    SHARES.into_iter().zip(energies)
}

fn alt_text(title: &str, place: &str, mode: &Mode) -> String {
    let mut shares: Vec<(&str, f64)> = shares(mode).collect();
    shares.sort_by(|a, b| b.1.total_cmp(&a.1));
    let words: Vec<String> = shares
        .iter()
        .filter(|(_, share)| *share >= 0.05)
        .map(|(name, share)| {
            format!(
                "{name} {}",
                show(*share, Shown::Percent, Digits::Decimals(0))
            )
        })
        .collect();
    format!(
        "{title}, about the position \"{place}\". Kinetic energy: {}.",
        words.join(", ")
    )
}
