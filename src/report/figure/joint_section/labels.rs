//! Words and dimensions of a section: layers at the left, rail, sleeve and bolt at the right, widths below.

use plotters::style::text_anchor::HPos;

use super::{MIDDLE, Sheet, hundredths, millimetres};
use crate::model::joint::Base;
use crate::report::figure::canvas::{Canvas, LETTER, Lettering, Pen, Spot, WIDTH};
use crate::report::figure::palette::{INK, MUTED};

/// Words at one side stand at least so far apart.
const LINE: f64 = LETTER * 1.25;
/// Where the words of the left end, and those of the right begin.
const LEFT: f64 = 158.0;
const RIGHT: f64 = WIDTH - 158.0;

/// Words with the place that their line ends at.
struct Word {
    lines: Vec<String>,
    to: Spot,
    /// Middle of its first line.
    y: f64,
}

impl Word {
    fn new(lines: Vec<String>, to: Spot) -> Self {
        Self { lines, to, y: to.1 }
    }
}

pub(super) fn draw(sheet: &Sheet<'_>, canvas: &mut Canvas<'_>) {
    let room = [LETTER * 2.0, sheet.height() - LETTER];
    let mut left = left(sheet);
    spread(&mut left, room);
    for word in &left {
        write(canvas, word, LEFT, HPos::Right);
    }
    let mut right = right(sheet);
    spread(&mut right, room);
    for word in &right {
        write(canvas, word, RIGHT, HPos::Left);
    }
    if let Base::Rail(base) = &sheet.joint.base {
        depth(sheet, canvas, base.depth);
        let half = base.face_width / 2.0;
        let below = sheet.at(0.0, sheet.pieces.heights[0]).1 + LETTER * 1.6;
        let (a, b) = (sheet.at(-half, -base.depth), sheet.at(half, -base.depth));
        dimension(canvas, (a, b), below, &millimetres(base.face_width));
    }
}

fn left(sheet: &Sheet<'_>) -> Vec<Word> {
    let labels = sheet
        .pieces
        .cut
        .iter()
        .filter_map(|piece| piece.label.as_ref());
    labels
        .map(|label| {
            let text = format!("{} {}", label.what, millimetres(label.thickness));
            Word::new(vec![text], sheet.at(label.at[0], label.at[1]))
        })
        .collect()
}

fn right(sheet: &Sheet<'_>) -> Vec<Word> {
    let (joint, pieces) = (sheet.joint, sheet.pieces);
    let bolt = &joint.bolt;
    let last = pieces.bolts.last().copied().unwrap_or(0.0);
    let head = sheet.at(
        last + bolt.thread.flats / 2.0,
        pieces.under_head + pieces.head / 2.0,
    );
    let mut words = vec![Word::new(
        vec![
            format!("{} of {}", bolt.thread.name, bolt.grade.name),
            format!("{} long", millimetres(sheet.result.stack.bolt_length)),
        ],
        head,
    )];
    let (thickness, half) = match &joint.base {
        Base::Rail(base) => (base.wall, base.face_width / 2.0),
        Base::Solid(solid) => (solid.thickness, pieces.reach),
    };
    words.push(match &joint.base {
        Base::Rail(_) => Word::new(
            vec![format!("wall {}", millimetres(thickness))],
            sheet.at(half - thickness / 2.0, -half.min(0.3 * pieces_depth(sheet))),
        ),
        Base::Solid(_) => Word::new(
            vec![format!("solid part {}", millimetres(thickness))],
            sheet.at(half, -thickness / 2.0),
        ),
    });
    if let Some(sleeve) = &joint.sleeve {
        let fit = if sleeve.gap < 0.0 {
            format!("{} proud", hundredths(-sleeve.gap))
        } else {
            format!("{} short", hundredths(sleeve.gap))
        };
        words.push(Word::new(
            vec![
                format!("sleeve {}", diameters(sleeve.outer, sleeve.inner)),
                format!("{} long", hundredths(sleeve.length)),
                fit,
            ],
            sheet.at(
                last + f64::midpoint(sleeve.inner, sleeve.outer) / 2.0,
                pieces.sleeve_end + 0.35 * sleeve.length,
            ),
        ));
    }
    if let Some([low, high]) = pieces.nut {
        words.push(Word::new(
            vec!["nut".to_owned()],
            sheet.at(last + bolt.thread.flats / 2.0, f64::midpoint(low, high)),
        ));
    }
    words
}

fn pieces_depth(sheet: &Sheet<'_>) -> f64 {
    match &sheet.joint.base {
        Base::Rail(base) => base.depth,
        Base::Solid(solid) => solid.thickness,
    }
}

fn diameters(outer: f64, inner: f64) -> String {
    let inner = millimetres(inner);
    let outer = millimetres(outer);
    format!("{} × {inner}", outer.trim_end_matches(" mm"))
}

/// Moves words apart and into the sheet, in the order of what they speak of.
fn spread(words: &mut [Word], [top, bottom]: [f64; 2]) {
    words.sort_by(|a, b| a.to.1.total_cmp(&b.to.1));
    let mut free = top;
    for word in words.iter_mut() {
        word.y = word.y.max(free);
        free = word.y + LINE * word.lines.len() as f64;
    }
    let mut end = bottom;
    for word in words.iter_mut().rev() {
        let high = LINE * word.lines.len() as f64;
        word.y = word.y.min(end - high + LINE);
        end = word.y - LINE;
    }
}

fn write(canvas: &mut Canvas<'_>, word: &Word, x: f64, align: HPos) {
    let aside = match align {
        HPos::Right => 4.0,
        _ => -4.0,
    };
    canvas.line((x + aside, word.y), word.to, Pen::new(MUTED, 0.9));
    canvas.disc(word.to, 2.25, INK);
    for (place, line) in word.lines.iter().enumerate() {
        let y = word.y + LINE * place as f64;
        canvas.text((x, y), line, Lettering::plain().align(align));
    }
}

/// The depth of the rail between two arrows, right of the cut.
fn depth(sheet: &Sheet<'_>, canvas: &mut Canvas<'_>, depth: f64) {
    let reach = sheet.pieces.reach;
    let x = sheet.at(-reach, 0.0).0 - 20.0;
    let (near, far) = (sheet.at(-reach, 0.0), sheet.at(-reach, -depth));
    let pen = Pen::new(INK, 1.0);
    for end in [near, far] {
        canvas.line((end.0 - 3.0, end.1), (x - 4.0, end.1), Pen::new(MUTED, 0.9));
    }
    let middle = f64::midpoint(near.1, far.1);
    canvas.arrow((x, middle), (x, near.1), pen);
    canvas.arrow((x, middle), (x, far.1), pen);
    let how = Lettering::plain().align(HPos::Right);
    canvas.plate(
        (x - 6.0, middle),
        &format!("rail {}", millimetres(depth)),
        how,
    );
}

/// A width between two arrows below the cut.
fn dimension(canvas: &mut Canvas<'_>, (a, b): (Spot, Spot), y: f64, text: &str) {
    for end in [a, b] {
        canvas.line((end.0, end.1 + 3.0), (end.0, y + 4.0), Pen::new(MUTED, 0.9));
    }
    let pen = Pen::new(INK, 1.0);
    canvas.arrow((MIDDLE, y), (a.0, y), pen);
    canvas.arrow((MIDDLE, y), (b.0, y), pen);
    let how = Lettering::plain().align(HPos::Center);
    canvas.plate((MIDDLE, y), text, how);
}
