//! Force against elongation of one bolt and of what it clamps: the two springs that share a pull.

use plotters::style::text_anchor::HPos;

use super::axis::{AXIS_FOOT, Axis};
use super::canvas::{Canvas, LETTER, Lettering, Pen, Run, Spot, WIDTH, sheet};
use super::label::{Area, FAR, Placer, clean, width};
use super::palette::{ACCENT_1, ACCENT_2, ACCENT_3, GRID, INK, MUTED};
use super::{Figure, FigureError, joint_at};
use crate::model::Model;
use crate::report::content::joints::{force, requirements::pulled_most};
use crate::report::content::{names, quantity};
use crate::study::evaluate::Evaluation;
use crate::study::joint::JointResult;
use crate::units::Shown;

/// Height of the chart.
const HIGH: f64 = 330.0;
/// Room left of it for its numbers.
const NUMBERS: f64 = 62.0;
/// Room right of it.
const MARGIN: f64 = 16.0;
/// The scales show at least this much [m, N].
const LEAST: [f64; 2] = [1e-9, 1e-3];

/// The two springs, the preloads and the pull.
struct Springs {
    /// Elongation of the bolt, and of what it clamps, for a force [m/N].
    bolt: f64,
    parts: f64,
    load_factor: f64,
    most: f64,
    least: f64,
    clamp: f64,
    permissible: f64,
    /// Pull at the worst bolt in its load case.
    pull: Option<(f64, String)>,
}

/// Draws the bolt line and the lines of the clamped parts at the most and the least preload, the losses, and how the governing pull is shared.
///
/// # Errors
/// [`FigureError`] when there is no joint with this place, or a number is not finite.
pub fn clamp_diagram(
    model: &Model,
    evaluation: &Evaluation,
    place: usize,
) -> Result<Figure, FigureError> {
    let (joint, result) = joint_at(model, evaluation, place)?;
    let springs = Springs::of(model, result);
    if !springs.is_finite() {
        return Err(FigureError::NotFinite("clamp diagram"));
    }
    let name = clean(&joint.name, 40);
    let alt = springs.alt_text(&name);
    let top = LETTER * 6.4;
    let area = Area {
        left: NUMBERS,
        top,
        right: WIDTH - MARGIN,
        bottom: top + HIGH,
    };
    let svg = sheet(
        "clamp diagram",
        area.bottom + AXIS_FOOT + LETTER * 0.6,
        &alt,
        |canvas| {
            springs.draw_key(canvas);
            springs.draw(canvas, area);
        },
    )?;
    Ok(Figure {
        svg,
        title: format!("Clamp diagram of {name}"),
        alt,
        caption: springs.caption(),
    })
}

impl Springs {
    fn of(model: &Model, result: &JointResult) -> Self {
        let (stack, preload) = (&result.stack, &result.preload);
        Self {
            bolt: stack.bolt_resilience,
            parts: stack.parts_resilience,
            load_factor: stack.load_factor,
            most: preload.most,
            least: preload.least,
            clamp: preload.clamp(),
            permissible: preload.permissible,
            pull: pulled_most(result)
                .map(|(load, pull)| (pull, clean(names::load(model, load), 30))),
        }
    }

    fn is_finite(&self) -> bool {
        let numbers = [self.bolt, self.parts, self.most, self.least, self.clamp];
        numbers.iter().all(|number| number.is_finite()) && self.most > 0.0
    }

    /// Pull that opens the joint after all losses, with the load under head and nut \[N\].
    fn opens_at(&self) -> f64 {
        self.clamp / (1.0 - self.load_factor).max(f64::EPSILON)
    }

    fn draw_key(&self, canvas: &mut Canvas<'_>) {
        let entries = [
            (Pen::new(INK, 2.0), "bolt"),
            (Pen::new(ACCENT_1, 1.75), "clamped parts, most preload"),
            (
                Pen::new(ACCENT_3, 1.75).run(Run::Dashed),
                "clamped parts, least preload",
            ),
            (
                Pen::new(ACCENT_2, 2.0).run(Run::DashDot),
                "clamped parts, least preload after losses",
            ),
            (
                Pen::new(MUTED, 1.5).run(Run::Dotted),
                "most that the bolt bears while it is tightened",
            ),
        ];
        let (mut x, mut y) = (8.0, LETTER * 0.8);
        for (pen, text) in entries {
            let wide = width(text, LETTER) + 60.0;
            if x + wide > WIDTH && x > 8.0 {
                x = 8.0;
                y += LETTER * 1.4;
            }
            canvas.line((x, y), (x + 34.0, y), pen);
            canvas.text((x + 42.0, y), text, Lettering::plain());
            x += wide;
        }
    }

    fn draw(&self, canvas: &mut Canvas<'_>, area: Area) {
        let longest = self.most * (self.bolt + self.parts);
        let pulled = self.pull.as_ref().map_or(0.0, |(pull, _)| *pull);
        let highest = self
            .most
            .max(self.permissible)
            .max(self.clamp + self.load_factor * pulled);
        let across = Axis::straight(
            (0.0, longest * 1.04),
            LEAST[0],
            (area.left, area.right),
            Shown::Millimetre,
        );
        let up = Axis::straight(
            (0.0, highest * 1.1),
            LEAST[1],
            (area.bottom, area.top),
            Shown::Kilonewton,
        );
        let at = |elongation: f64, force: f64| (across.place(elongation), up.place(force));
        across.draw(canvas, area.top, area.bottom, "elongation of the bolt");
        for (value, text) in up.ticks() {
            let y = up.place(value);
            canvas.line((area.left, y), (area.right, y), Pen::new(GRID, 1.0));
            let how = Lettering::muted().align(HPos::Right);
            canvas.text((area.left - 6.0, y), &text, how);
        }
        canvas.text(
            (8.0, area.top - LETTER),
            "force of one bolt, kN",
            Lettering::muted(),
        );
        let y = up.place(self.permissible);
        canvas.line(
            (area.left, y),
            (area.right, y),
            Pen::new(MUTED, 1.5).run(Run::Dotted),
        );
        let top = self.most.max(self.clamp + self.load_factor * pulled);
        canvas.line(at(0.0, 0.0), at(top * self.bolt, top), Pen::new(INK, 2.0));
        for (preload, pen) in [
            (self.most, Pen::new(ACCENT_1, 1.75)),
            (self.least, Pen::new(ACCENT_3, 1.75).run(Run::Dashed)),
            (self.clamp, Pen::new(ACCENT_2, 2.0).run(Run::DashDot)),
        ] {
            let tight = preload * self.bolt;
            canvas.line(
                at(tight, preload),
                at(tight + preload * self.parts, 0.0),
                pen,
            );
        }
        self.draw_words(canvas, area, &at);
    }

    fn draw_words(&self, canvas: &mut Canvas<'_>, area: Area, at: &dyn Fn(f64, f64) -> Spot) {
        let mut placer = Placer::new(Area {
            left: area.left + 2.0,
            top: area.top - LETTER,
            right: area.right - 2.0,
            bottom: area.bottom - 2.0,
        });
        let steps = 40;
        for step in 0..=steps {
            let share = f64::from(step) / f64::from(steps);
            placer.take(Area::around(
                at(share * self.most * self.bolt, share * self.most),
                4.0,
            ));
            for preload in [self.most, self.least, self.clamp] {
                let elongation = preload * (self.bolt + share * self.parts);
                placer.take(Area::around(at(elongation, preload * (1.0 - share)), 4.0));
            }
        }
        self.draw_pull(canvas, &mut placer, at);
        for (preload, word) in [
            (self.most, "most preload"),
            (self.least, "least preload"),
            (self.clamp, "after losses"),
        ] {
            let spot = at(preload * self.bolt, preload);
            canvas.disc(spot, 3.5, INK);
            let text = format!("{word} {}", force(preload));
            placer.label(canvas, spot, &text, Lettering::plain(), FAR);
        }
        let opens = (self.clamp * (self.bolt + self.parts), 0.0);
        let spot = at(opens.0, opens.1);
        canvas.ring(spot, 5.0, Pen::new(INK, 1.75));
        let text = format!("opens at a pull of {}", force(self.opens_at()));
        placer.label(canvas, spot, &text, Lettering::plain(), FAR);
    }

    /// The pull as a line from what the faces keep to what the bolt then bears.
    fn draw_pull(
        &self,
        canvas: &mut Canvas<'_>,
        placer: &mut Placer,
        at: &dyn Fn(f64, f64) -> Spot,
    ) {
        let Some((pull, load)) = &self.pull else {
            return;
        };
        // Beyond this the faces are apart and the bolt takes all.
        let shared = pull.min(self.opens_at());
        let bolt = self.clamp + self.load_factor * shared;
        let faces = (self.clamp - (1.0 - self.load_factor) * shared).max(0.0);
        let elongation = bolt * self.bolt;
        let (upper, lower) = (at(elongation, bolt), at(elongation, faces));
        canvas.line(lower, upper, Pen::new(ACCENT_2, 3.0));
        for end in [lower, upper] {
            canvas.line(
                (end.0 - 6.0, end.1),
                (end.0 + 6.0, end.1),
                Pen::new(ACCENT_2, 2.0),
            );
        }
        placer.take(Area {
            left: upper.0 - 7.0,
            top: upper.1 - 3.0,
            right: upper.0 + 7.0,
            bottom: lower.1 + 3.0,
        });
        let middle = (upper.0, f64::midpoint(upper.1, lower.1));
        let text = format!("pull of {}, {load}", force(*pull));
        placer.label(canvas, middle, &text, Lettering::plain(), FAR);
        let text = format!("faces keep {}", force(faces));
        placer.label(canvas, lower, &text, Lettering::plain(), FAR);
    }

    fn caption(&self) -> String {
        let mut text = "The bolt is stretched along its line, what it clamps is pressed along the falling ones; \
                        they meet at the preload."
            .to_owned();
        match &self.pull {
            Some((pull, _)) => text.push_str(&format!(
                " Of the pull on the worst bolt the bolt feels {} and the faces lose the rest, when it comes in under head and nut; \
                 the requirements take the worse case, in which the faces lose all {}.",
                quantity::share(self.load_factor),
                force(*pull)
            )),
            None => text.push_str(" No load case pulls at a bolt, so nothing is taken from the faces."),
        }
        text
    }

    fn alt_text(&self, name: &str) -> String {
        let mut text = format!(
            "Clamp diagram of {name}: preload of one bolt {} at most, {} at least, {} after losses. It opens at a pull of {}.",
            force(self.most),
            force(self.least),
            force(self.clamp),
            force(self.opens_at())
        );
        if let Some((pull, load)) = &self.pull {
            text.push_str(&format!(
                " The largest pull is {}, in {load}.",
                force(*pull)
            ));
        }
        text
    }
}
