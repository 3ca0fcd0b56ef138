//! The bolts of one joint seen on its face, with what the governing load case does to each.

use plotters::style::text_anchor::HPos;
use std::f64::consts::FRAC_PI_3;

use super::canvas::{Canvas, LETTER, Lettering, Pen, Run, Spot, WIDTH, sheet};
use super::label::{Area, FAR, Placer, clean};
use super::palette::{ACCENT_1, ACCENT_2, GRID, INK, MUTED, PAPER};
use super::{Figure, FigureError, joint_at};
use crate::model::Model;
use crate::model::joint::{Base, Joint};
use crate::report::content::joints::{force, requirements};
use crate::report::content::names;
use crate::study::evaluate::Evaluation;
use crate::study::joint::sharing::LoadedJoint;

/// Most height of the face on the sheet.
const HIGH: f64 = 300.0;
/// Room at either side.
const ASIDE: f64 = 120.0;
/// Where the face begins, below its words.
const TOP: f64 = LETTER * 4.6;
/// The longest arrow of a bolt, and that of the whole.
const ARROW: f64 = 62.0;
const WHOLE: f64 = 90.0;
/// A force below this share of the largest is no arrow.
const NOTHING: f64 = 0.02;

/// Draws the bolts on the joint face, the plate and the rail below them, and the forces of the governing load case.
///
/// # Errors
/// [`FigureError`] when there is no joint with this place, or a number is not finite.
pub fn joint_face(
    model: &Model,
    evaluation: &Evaluation,
    place: usize,
) -> Result<Figure, FigureError> {
    let (joint, result) = joint_at(model, evaluation, place)?;
    let governing = requirements::governing_load(result);
    let loaded = result
        .loads
        .iter()
        .find(|loaded| Some(loaded.load) == governing);
    let name = clean(&joint.name, 40);
    let case = loaded.map(|loaded| clean(names::load(model, loaded.load), 40));
    let face = Face::new(joint, loaded);
    let alt = alt_text(&name, joint, loaded, case.as_deref());
    let svg = sheet("joint face", face.height(), &alt, |canvas| {
        face.draw(canvas, case.as_deref());
    })?;
    let axes = match joint.base {
        Base::Rail(_) => "x along the rail to the right, y across it upward",
        Base::Solid(_) => "x to the right, y upward",
    };
    let mut caption = format!("Seen from the bracket: {axes}. Dots in circles are bolts.");
    caption.push_str(match (&joint.foot, &joint.plate) {
        (Some(_), Some(_)) => {
            " The dark frame is the foot of the bracket, the tinted one the plate below it."
        }
        (Some(_), None) => " The dark frame is the foot of the bracket.",
        (None, _) => " The tinted frame is the plate that the bracket is welded to.",
    });
    if loaded.is_some() {
        caption.push_str(
            " The arrows show how each bolt is pushed along the face; pulled or relieved is said beside it, without preload. \
             The thick arrow is what the mount puts in along the face.",
        );
    }
    Ok(Figure {
        svg,
        title: format!("Face of {name}"),
        alt,
        caption,
    })
}

struct Face<'a> {
    joint: &'a Joint,
    loaded: Option<&'a LoadedJoint>,
    /// Half length along the rail and half width across it that are shown \[m\].
    half: [f64; 2],
    /// Units of the sheet for a metre.
    scale: f64,
}

impl<'a> Face<'a> {
    fn new(joint: &'a Joint, loaded: Option<&'a LoadedJoint>) -> Self {
        let head = joint.bolt.thread.flats;
        let reach = |axis: usize| {
            let places = joint.pattern.iter().filter_map(|place| place.get(axis));
            places.fold(0.0_f64, |far, place| far.max(place.abs())) + 1.2 * head
        };
        let mut half = [reach(0), reach(1)];
        let plate = joint
            .plate
            .as_ref()
            .map(|plate| [plate.length, plate.width]);
        let foot = joint.foot.as_ref().map(|foot| [foot.length, foot.width]);
        for size in [plate, foot].into_iter().flatten() {
            half = [half[0].max(size[0] / 2.0), half[1].max(size[1] / 2.0)];
        }
        if let Base::Rail(base) = &joint.base {
            half[1] = half[1].max(base.face_width / 2.0);
        }
        // The rail goes on at both sides.
        half[0] *= 1.15;
        let scale = (HIGH / (2.0 * half[1])).min((WIDTH - 2.0 * ASIDE) / (2.0 * half[0]));
        Self {
            joint,
            loaded,
            half,
            scale,
        }
    }

    fn height(&self) -> f64 {
        TOP + 2.0 * self.half[1] * self.scale + LETTER * 2.2
    }

    fn at(&self, x: f64, y: f64) -> Spot {
        let middle = TOP + self.half[1] * self.scale;
        (WIDTH / 2.0 + x * self.scale, middle - y * self.scale)
    }

    fn draw(&self, canvas: &mut Canvas<'_>, case: Option<&str>) {
        if let (Some(loaded), Some(case)) = (self.loaded, case) {
            let [x, y, z] = [0, 1, 2].map(|axis| loaded.wrench.force[axis]);
            let side = if z > 0.0 {
                "pulls it off"
            } else {
                "presses it on"
            };
            canvas.text((8.0, LETTER * 0.8), case, Lettering::plain().bold());
            let text = format!(
                "the mount {side} with {} and pushes along the face with {}",
                force(z.abs()),
                force(x.hypot(y))
            );
            canvas.text((8.0, LETTER * 2.2), &text, Lettering::plain());
        }
        self.draw_base(canvas);
        let mut placer = Placer::new(Area {
            left: 4.0,
            top: LETTER * 3.0,
            right: WIDTH - 4.0,
            bottom: self.height() - 2.0,
        });
        for &[x, y] in &self.joint.pattern {
            self.draw_bolt(canvas, self.at(x, y));
            let half = self.joint.bolt.thread.flats / 2.0 * self.scale;
            placer.take(Area::around(self.at(x, y), half.max(6.0)));
        }
        if let Some(loaded) = self.loaded {
            self.draw_whole(canvas, loaded, &mut placer);
            self.draw_forces(canvas, loaded, &mut placer);
        }
        self.draw_axes(canvas);
    }

    fn draw_base(&self, canvas: &mut Canvas<'_>) {
        let edge = Pen::new(INK, 1.5);
        if let Base::Rail(base) = &self.joint.base {
            let half = base.face_width / 2.0;
            let (a, b) = (self.at(-self.half[0], half), self.at(self.half[0], -half));
            canvas.block(a, b, GRID, 0.45);
            canvas.line(a, (b.0, a.1), edge);
            canvas.line((a.0, b.1), b, edge);
            let wall = Pen::new(MUTED, 1.0).run(Run::Dashed);
            for side in [-1.0, 1.0] {
                let y = self.at(0.0, side * (half - base.wall)).1;
                canvas.line((a.0, y), (b.0, y), wall);
            }
        }
        if let Some(plate) = &self.joint.plate {
            let [x, y] = [plate.length / 2.0, plate.width / 2.0];
            let (a, b) = (self.at(-x, y), self.at(x, -y));
            canvas.block(a, b, ACCENT_1, 0.12);
            canvas.frame(a, b, Pen::new(ACCENT_1, 1.75));
        }
        if let Some(foot) = &self.joint.foot {
            let [x, y] = [foot.length / 2.0, foot.width / 2.0];
            canvas.frame(self.at(-x, y), self.at(x, -y), Pen::new(INK, 1.75));
        }
        let (a, b) = (self.at(-self.half[0], 0.0), self.at(self.half[0], 0.0));
        canvas.line(a, b, Pen::new(MUTED, 1.0).run(Run::DashDot));
    }

    fn draw_bolt(&self, canvas: &mut Canvas<'_>, at: Spot) {
        let half = self.joint.bolt.thread.flats / 2.0 * self.scale;
        // Corners of a hexagon stand farther out than its flats.
        let corner = half / (FRAC_PI_3 / 2.0).cos();
        let head: Vec<Spot> = (0..6)
            .map(|place| {
                let (sin, cos) = (FRAC_PI_3 * f64::from(place)).sin_cos();
                (at.0 + corner * cos, at.1 + corner * sin)
            })
            .collect();
        canvas.fill(&head, PAPER, 1.0);
        canvas.fill(&head, MUTED, 0.3);
        canvas.outline(&head, Pen::new(INK, 1.5));
        if let Some(washer) = &self.joint.washer {
            canvas.ring(at, washer.diameter / 2.0 * self.scale, Pen::new(INK, 1.0));
        }
        if let Some(sleeve) = &self.joint.sleeve {
            // Plotted rings are whole lines; a broken one tells that it lies below.
            let radius = sleeve.outer / 2.0 * self.scale;
            let ring = (0..=48).map(|step| {
                let (sin, cos) = (FRAC_PI_3 * f64::from(step) / 8.0).sin_cos();
                (at.0 + radius * cos, at.1 + radius * sin)
            });
            canvas.path(ring, Pen::new(ACCENT_2, 1.25).run(Run::Dotted));
        }
        canvas.ring(
            at,
            self.joint.bolt.thread.nominal / 2.0 * self.scale,
            Pen::new(INK, 1.25),
        );
        canvas.disc(at, 2.5, INK);
    }

    /// What the mount puts in along the face, beside it; labels keep clear of it.
    fn draw_whole(&self, canvas: &mut Canvas<'_>, loaded: &LoadedJoint, placer: &mut Placer) {
        let (x, y) = (loaded.wrench.force.x, loaded.wrench.force.y);
        let size = x.hypot(y);
        if size > 0.0 {
            let from = (WIDTH - ASIDE / 2.0, TOP + self.half[1] * self.scale);
            let half = WHOLE / 2.0;
            let (ux, uy) = (x / size, -y / size);
            let tail = (from.0 - half * ux, from.1 - half * uy);
            let tip = (from.0 + half * ux, from.1 + half * uy);
            canvas.arrow(tail, tip, Pen::new(ACCENT_2, 4.0));
            placer.take(Area {
                left: tail.0.min(tip.0) - 8.0,
                top: tail.1.min(tip.1) - 8.0,
                right: tail.0.max(tip.0) + 8.0,
                bottom: tail.1.max(tip.1) + 8.0,
            });
        }
    }

    fn draw_forces(&self, canvas: &mut Canvas<'_>, loaded: &LoadedJoint, placer: &mut Placer) {
        let shears = loaded.bolts.iter().map(|bolt| bolt.shear_size());
        let largest = shears.fold(0.0, f64::max);
        for (place, (bolt, &[x, y])) in loaded.bolts.iter().zip(&self.joint.pattern).enumerate() {
            let from = self.at(x, y);
            let size = bolt.shear_size();
            if size > NOTHING * largest && largest > 0.0 {
                let long = ARROW * size / largest;
                let [fx, fy] = bolt.shear;
                let to = (from.0 + long * fx / size, from.1 - long * fy / size);
                canvas.arrow(from, to, Pen::new(ACCENT_2, 2.0));
                placer.take(Area::around(to, 8.0));
            }
            let word = if bolt.axial > 0.0 {
                "pulled"
            } else {
                "relieved"
            };
            let text = format!("{}: {word} {}", place + 1, force(bolt.axial.abs()));
            let how = Lettering::plain();
            placer.label(canvas, from, &text, how, FAR);
        }
    }

    fn draw_axes(&self, canvas: &mut Canvas<'_>) {
        let corner = (26.0, self.height() - LETTER * 1.4);
        let pen = Pen::new(MUTED, 1.5);
        canvas.arrow(corner, (corner.0 + 34.0, corner.1), pen);
        canvas.arrow(corner, (corner.0, corner.1 - 34.0), pen);
        let how = Lettering::muted();
        canvas.text((corner.0 + 40.0, corner.1), "x", how);
        canvas.text((corner.0, corner.1 - 42.0), "y", how.align(HPos::Center));
    }
}

fn alt_text(name: &str, joint: &Joint, loaded: Option<&LoadedJoint>, case: Option<&str>) -> String {
    let mut text = format!(
        "Face of joint {name} with {} bolts {}.",
        joint.pattern.len(),
        joint.bolt.thread.name
    );
    if let (Some(loaded), Some(case)) = (loaded, case) {
        text.push_str(&format!(" In {case}"));
        let each: Vec<String> = loaded
            .bolts
            .iter()
            .enumerate()
            .map(|(place, bolt)| {
                let word = if bolt.axial > 0.0 {
                    "pulled"
                } else {
                    "relieved"
                };
                format!(
                    " bolt {} is {word} by {} and pushed along the face by {}",
                    place + 1,
                    force(bolt.axial.abs()),
                    force(bolt.shear_size())
                )
            })
            .collect();
        text.push_str(&each.join(","));
        text.push('.');
    }
    text
}
