//! A cut across the rail through one joint: rail, sleeve, plates, foot, washers, bolt with head and nut, to scale.

mod labels;
mod pieces;
mod shapes;
#[cfg(test)]
mod tests;

use super::canvas::{Canvas, LETTER, Lettering, Pen, Run, Spot, WIDTH, sheet};
use super::hatch::{Hatch, rectangle};
use super::label::{clean, width};
use super::palette::{INK, MUTED, PAPER};
use super::{Figure, FigureError, joint_at};
use crate::model::Model;
use crate::model::joint::{Base, Joint};
use crate::report::content::quantity;
use crate::study::evaluate::Evaluation;
use crate::study::joint::JointResult;
use crate::units::{Digits, Shown};
use pieces::{Piece, Pieces};

/// Most height and width of the cut on the sheet.
const HIGH: f64 = 430.0;
const WIDE: f64 = 300.0;
/// Where its middle stands.
const MIDDLE: f64 = WIDTH * 0.5;
/// Room below it for the width of the rail.
const FOOT: f64 = LETTER * 3.4;
/// A gap narrower than this on the sheet is drawn so wide.
const LEAST_GAP: f64 = 3.0;

/// Draws the cut across the rail through the bolts of one joint.
///
/// # Errors
/// [`FigureError`] when there is no joint with this place, or a size is not finite.
pub fn joint_section(
    model: &Model,
    evaluation: &Evaluation,
    place: usize,
) -> Result<Figure, FigureError> {
    let (joint, result) = joint_at(model, evaluation, place)?;
    let pieces = Pieces::of(model, joint, result);
    if !pieces.is_finite() {
        return Err(FigureError::NotFinite("joint section"));
    }
    let name = clean(&joint.name, 40);
    let alt = alt_text(&name, joint, result, &pieces);
    let drawn = Sheet::new(joint, result, &pieces);
    let svg = sheet("joint section", drawn.height(), &alt, |canvas| {
        drawn.draw(canvas);
    })?;
    Ok(Figure {
        svg,
        title: format!("Section of {name}"),
        alt,
        caption: caption(joint, &pieces, drawn.is_gap_enlarged()),
    })
}

/// The cut on its sheet.
struct Sheet<'a> {
    joint: &'a Joint,
    result: &'a JointResult,
    pieces: &'a Pieces,
    /// Units of the sheet for a metre.
    scale: f64,
    /// Where the near face of the rail stands.
    zero: f64,
    /// Names of the materials with their places on the sheet.
    key: Vec<(Spot, String)>,
}

impl<'a> Sheet<'a> {
    fn new(joint: &'a Joint, result: &'a JointResult, pieces: &'a Pieces) -> Self {
        let [low, high] = pieces.heights;
        let scale = (HIGH / (high - low)).min(WIDE / (2.0 * pieces.reach));
        let (mut x, mut y) = (8.0, LETTER * 0.8);
        let key: Vec<(Spot, String)> = pieces
            .materials
            .iter()
            .map(|material| {
                let text = clean(material, 24);
                let wide = width(&text, LETTER) + 62.0;
                if x + wide > WIDTH && x > 8.0 {
                    x = 8.0;
                    y += LETTER * 1.5;
                }
                let at = (x, y);
                x += wide;
                (at, text)
            })
            .collect();
        Self {
            joint,
            result,
            pieces,
            scale,
            zero: y + LETTER * 2.4 + high * scale,
            key,
        }
    }

    fn height(&self) -> f64 {
        self.zero - self.pieces.heights[0] * self.scale + FOOT
    }

    /// Across the rail and out of it, on the sheet.
    fn at(&self, y: f64, z: f64) -> Spot {
        (MIDDLE + y * self.scale, self.zero - z * self.scale)
    }

    /// Whether the gap of the sleeve is drawn wider than it is.
    fn is_gap_enlarged(&self) -> bool {
        self.joint
            .sleeve
            .as_ref()
            .is_some_and(|sleeve| sleeve.gap > 0.0 && sleeve.gap * self.scale < LEAST_GAP)
    }

    fn draw(&self, canvas: &mut Canvas<'_>) {
        for (place, (at, text)) in self.key.iter().enumerate() {
            let swatch = rectangle((at.0, at.1 - 9.0), (at.0 + 36.0, at.1 + 9.0));
            Hatch::of(place).draw(canvas, &[swatch]);
            canvas.text((at.0 + 44.0, at.1), text, Lettering::plain());
        }
        for (place, piece) in self.pieces.cut.iter().enumerate() {
            if place == self.pieces.of_base {
                self.draw_bores(canvas);
            }
            self.draw_piece(canvas, piece);
        }
        self.draw_sleeve_gap(canvas);
        for &bolt in &self.pieces.bolts {
            self.draw_bolt(canvas, bolt);
        }
        labels::draw(self, canvas);
    }

    fn draw_piece(&self, canvas: &mut Canvas<'_>, piece: &Piece) {
        let rings: Vec<Vec<Spot>> = piece
            .rings
            .iter()
            .map(|ring| ring.iter().map(|&[y, z]| self.at(y, z)).collect())
            .collect();
        Hatch::of(piece.material).draw(canvas, &rings);
    }

    /// Holes in the walls of a rail, wide enough to clear its outline too.
    fn draw_bores(&self, canvas: &mut Canvas<'_>) {
        let Some(half) = self.pieces.bore else {
            return;
        };
        for &y in &self.pieces.bolts {
            let (a, b) = (
                self.at(y - half, -self.pieces.depth),
                self.at(y + half, 0.0),
            );
            canvas.block((a.0, a.1 + 1.5), (b.0, b.1 - 1.5), PAPER, 1.0);
        }
    }

    /// What the sleeve lacks at its far end, at the near one where it ends in a flange; never too narrow to be seen.
    fn draw_sleeve_gap(&self, canvas: &mut Canvas<'_>) {
        let Some(sleeve) = self.joint.sleeve.as_ref().filter(|sleeve| sleeve.gap > 0.0) else {
            return;
        };
        let open = (sleeve.gap * self.scale).max(LEAST_GAP);
        let (end, inwards) = match sleeve.shoulder {
            Some(_) => (0.0, open),
            None => (self.pieces.sleeve_end, -open),
        };
        for &bolt in &self.pieces.bolts {
            for side in [-1.0, 1.0] {
                let inner = self.at(bolt + side * sleeve.inner / 2.0, end);
                let outer = self.at(bolt + side * sleeve.outer / 2.0, end);
                canvas.block(inner, (outer.0, outer.1 + inwards), PAPER, 1.0);
                canvas.line(
                    (inner.0, inner.1 + inwards),
                    (outer.0, outer.1 + inwards),
                    Pen::new(INK, 1.25),
                );
            }
        }
    }

    /// Head, shank with its thread, and nut; a bolt is not hatched, as is usual.
    fn draw_bolt(&self, canvas: &mut Canvas<'_>, y: f64) {
        let bolt = &self.joint.bolt;
        let pieces = self.pieces;
        let pen = Pen::new(INK, 1.75);
        let mut solid = |half: f64, low: f64, high: f64| {
            let (a, b) = (self.at(y - half, low), self.at(y + half, high));
            canvas.block(a, b, PAPER, 1.0);
            canvas.block(a, b, MUTED, 0.3);
            canvas.frame(a, b, pen);
        };
        let half = bolt.thread.nominal / 2.0;
        let top = pieces.under_head;
        solid(half, pieces.bolt_end, top);
        solid(bolt.thread.flats / 2.0, top, top + pieces.head);
        if let Some([low, high]) = pieces.nut {
            solid(bolt.thread.flats / 2.0, low, high);
        }
        let root = bolt.thread.root_diameter() / 2.0;
        let from = (pieces.bolt_end + pieces.threaded).min(top);
        for side in [-1.0, 1.0] {
            let line = [pieces.bolt_end, from].map(|z| self.at(y + side * root, z));
            canvas.line(line[0], line[1], Pen::new(INK, 1.0).run(Run::Dashed));
        }
        let axis = [pieces.heights[0], pieces.heights[1]].map(|z| self.at(y, z));
        canvas.line(
            (axis[0].0, axis[0].1 + 6.0),
            (axis[1].0, axis[1].1 - 6.0),
            Pen::new(MUTED, 1.0).run(Run::DashDot),
        );
    }
}

fn millimetres(length: f64) -> String {
    let decimals = if (length * 1e3 - (length * 1e3).round()).abs() < 1e-6 {
        Digits::Decimals(0)
    } else {
        Digits::Decimals(1)
    };
    quantity::with_digits(length, Shown::Millimetre, decimals)
}

/// Lengths where hundredths of a millimetre matter.
fn hundredths(length: f64) -> String {
    quantity::with_digits(length, Shown::Millimetre, Digits::Decimals(2))
}

fn caption(joint: &Joint, pieces: &Pieces, enlarged: bool) -> String {
    let way = match joint.base {
        Base::Rail(_) => "across the rail ",
        Base::Solid(_) => "",
    };
    let mut text = format!(
        "Cut {way}through the bolts, to scale, the bracket on top; slants tell the materials apart."
    );
    if let Some(sleeve) = &joint.sleeve {
        if enlarged {
            text.push_str(&format!(
                " The gap at the end of the sleeve is drawn larger than it is: it is {}.",
                hundredths(sleeve.gap)
            ));
        } else if sleeve.gap < 0.0 {
            text.push_str(&format!(
                " The sleeve stands {} proud, which is too little to be seen.",
                hundredths(-sleeve.gap)
            ));
        }
    }
    if joint
        .foot
        .as_ref()
        .is_some_and(|foot| foot.follows_bolts[1])
    {
        text.push_str(" How wide the foot of the bracket is the file does not say; it is drawn with a usual width.");
    }
    if pieces.bolts.len() < joint.pattern.len() {
        text.push_str(" Bolts behind each other are drawn once.");
    }
    if pieces.is_channel {
        text.push_str(
            " What keeps the flanges of the open channel apart is not drawn, unless it is a sleeve.",
        );
    }
    text
}

fn alt_text(name: &str, joint: &Joint, result: &JointResult, pieces: &Pieces) -> String {
    let layers: Vec<String> = result
        .stack
        .layers
        .iter()
        .map(|layer| {
            format!(
                "{} {} of {}",
                layer.kind.word(),
                millimetres(layer.thickness),
                clean(&layer.material, 24)
            )
        })
        .collect();
    let mut text = format!(
        "Section through joint {name}: {} × {} through {}.",
        joint.pattern.len(),
        joint.bolt.thread.name,
        layers.join(", ")
    );
    if let Base::Rail(base) = &joint.base {
        text.push_str(&format!(
            " The rail is {} deep and {} wide with a wall of {}.",
            millimetres(base.depth),
            millimetres(base.face_width),
            millimetres(base.wall)
        ));
    }
    if let Some(sleeve) = &joint.sleeve {
        text.push_str(&format!(
            " Sleeve {} outside, {} inside, {} long.",
            millimetres(sleeve.outer),
            millimetres(sleeve.inner),
            hundredths(sleeve.length)
        ));
    }
    if pieces.nut.is_none() {
        text.push_str(" The bolt ends in the tapped part.");
    }
    text
}
