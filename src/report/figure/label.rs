//! Words on a drawing: names made fit for it, how wide they are, and where there is room for them.

use super::canvas::{Canvas, Lettering, Pen, Spot};
use super::palette::MUTED;
use plotters::style::text_anchor::HPos;

/// A name as it can stand on a drawing: no control or direction marks, single spaces, at most `most` characters with an ellipsis for the rest.
pub(super) fn clean(name: &str, most: usize) -> String {
    let sane: String = name
        .chars()
        .map(|c| if is_unprintable(c) { ' ' } else { c })
        .collect();
    let words: Vec<&str> = sane.split_whitespace().collect();
    let text = words.join(" ");
    if text.chars().count() <= most {
        return text;
    }
    let mut cut: String = text.chars().take(most.saturating_sub(1)).collect();
    cut.truncate(cut.trim_end().len());
    cut.push('…');
    cut
}

/// A name over several lines of at most `per_line` characters, broken between words where that is possible; the last line ends in an ellipsis when there is more.
pub(super) fn lines(name: &str, per_line: usize, most_lines: usize) -> Vec<String> {
    let text = clean(name, usize::MAX);
    let mut rest = text.as_str();
    let mut lines = Vec::new();
    while !rest.is_empty() && lines.len() < most_lines {
        let end = rest.char_indices().nth(per_line).map(|(at, _)| at);
        let last = lines.len() + 1 == most_lines;
        let Some(end) = end.filter(|_| !last) else {
            lines.push(clean(rest, per_line));
            break;
        };
        // A space just behind the last character breaks there.
        let space = rest
            .get(..=end)
            .and_then(|head| head.rfind(' '))
            .or_else(|| rest.get(..end)?.rfind(' '));
        let (line, next) = rest.split_at(space.unwrap_or(end));
        lines.push(line.to_owned());
        rest = next.trim_start();
    }
    lines
}

/// Control characters are no XML; direction marks would turn the text around them; the last two are no characters.
fn is_unprintable(c: char) -> bool {
    c.is_control()
        || matches!(c, '\u{200E}' | '\u{200F}' | '\u{202A}'..='\u{202E}' | '\u{2066}'..='\u{2069}')
        || matches!(c, '\u{FFFE}' | '\u{FFFF}')
}

/// Width of a text, estimated a little on the generous side: the page's font is not known.
pub(super) fn width(text: &str, size: f64) -> f64 {
    let ems: f64 =
        text.chars()
            .map(|c| match c {
                'i' | 'j' | 'l' | 't' | 'f' | 'I' | ' ' | '.' | ',' | ':' | ';' | '\'' | '|'
                | '/' => 0.3,
                'r' | '(' | ')' | '-' => 0.36,
                'm' | 'w' | 'M' | 'W' | '%' | '@' => 0.87,
                'A'..='Z' => 0.7,
                c if u32::from(c) < 0x1100 => 0.58,
                _ => 1.05,
            })
            .sum();
    ems * size
}

/// A rectangle on the sheet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Area {
    pub(super) left: f64,
    pub(super) top: f64,
    pub(super) right: f64,
    pub(super) bottom: f64,
}

impl Area {
    pub(super) fn around(at: Spot, half: f64) -> Self {
        Self {
            left: at.0 - half,
            top: at.1 - half,
            right: at.0 + half,
            bottom: at.1 + half,
        }
    }

    fn overlaps(&self, other: &Self) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.top < other.bottom
            && other.top < self.bottom
    }

    fn holds(&self, other: &Self) -> bool {
        self.left <= other.left
            && self.top <= other.top
            && other.right <= self.right
            && other.bottom <= self.bottom
    }
}

/// What is taken inside one panel.
pub(super) struct Placer {
    bounds: Area,
    taken: Vec<Area>,
}

impl Placer {
    pub(super) fn new(bounds: Area) -> Self {
        Self {
            bounds,
            taken: Vec::new(),
        }
    }

    /// Keeps labels away from a mark.
    pub(super) fn take(&mut self, area: Area) {
        self.taken.push(area);
    }

    /// Writes a label beside a mark where there is room within `farthest`, far ones with a thin line to the mark; `false` when there is none.
    pub(super) fn label(
        &mut self,
        canvas: &mut Canvas<'_>,
        mark: Spot,
        text: &str,
        how: Lettering,
        farthest: f64,
    ) -> bool {
        let size = (width(text, how.size), how.size * 1.1);
        let Some((area, reach)) = self.room(mark, size, farthest) else {
            return false;
        };
        let middle = (area.top + area.bottom) / 2.0;
        if reach > NEAR {
            let end = (
                mark.0.clamp(area.left, area.right),
                mark.1.clamp(area.top, area.bottom),
            );
            canvas.line(mark, end, Pen::new(MUTED, 0.75));
        }
        canvas.plate((area.left, middle), text, how.align(HPos::Left));
        self.taken.push(area);
        true
    }

    fn room(&self, mark: Spot, (width, height): Spot, farthest: f64) -> Option<(Area, f64)> {
        REACHES
            .into_iter()
            .filter(|reach| *reach <= farthest)
            .flat_map(|reach| DIRECTIONS.into_iter().map(move |d| (d, reach)))
            .map(|((dx, dy), reach)| {
                // The label's near edge or corner lies at the reach from the mark.
                let centre_x = mark.0 + dx * (reach + width / 2.0);
                let centre_y = mark.1 + dy * (reach + height / 2.0);
                let area = Area {
                    left: centre_x - width / 2.0,
                    top: centre_y - height / 2.0,
                    right: centre_x + width / 2.0,
                    bottom: centre_y + height / 2.0,
                };
                (area, reach)
            })
            .find(|(area, _)| {
                self.bounds.holds(area) && !self.taken.iter().any(|t| t.overlaps(area))
            })
    }
}

/// Farther labels get a line to their mark.
pub(super) const NEAR: f64 = 14.0;
/// No label goes farther.
pub(super) const FAR: f64 = 56.0;
const REACHES: [f64; 5] = [10.0, 14.0, 24.0, 38.0, FAR];
const DIRECTIONS: [Spot; 12] = [
    (1.0, 0.0),
    (-1.0, 0.0),
    (0.0, -1.0),
    (0.0, 1.0),
    (1.0, -1.0),
    (-1.0, -1.0),
    (1.0, 1.0),
    (-1.0, 1.0),
    (0.6, -1.0),
    (-0.6, -1.0),
    (0.6, 1.0),
    (-0.6, 1.0),
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::figure::canvas::sheet;

    #[test]
    fn long_names_end_in_an_ellipsis_and_marks_that_turn_text_are_gone() {
        assert_eq!(clean("left front mount", 20), "left front mount");
        assert_eq!(clean("left front mount", 11), "left front…");
        assert_eq!(clean("a\u{202E}b\n\t\u{0}c", 20), "a b c");
        assert_eq!(clean("éöü漢字", 4), "éöü…");
    }

    #[test]
    fn names_break_between_words() {
        assert_eq!(
            lines("full torque, first gear", 20, 2),
            ["full torque, first", "gear"]
        );
        assert_eq!(lines("full torque", 11, 2), ["full torque"]);
        assert_eq!(lines("abcd efgh ijkl", 4, 2), ["abcd", "efg…"]);
        assert_eq!(lines("abcdefgh", 5, 2), ["abcde", "fgh"]);
        assert_eq!(lines("漢字漢字 漢字", 4, 2), ["漢字漢字", "漢字"]);
        assert!(lines("", 5, 2).is_empty());
    }

    #[test]
    fn labels_at_one_place_do_not_cover_each_other_and_stay_inside() {
        let bounds = Area {
            left: 0.0,
            top: 0.0,
            right: 300.0,
            bottom: 200.0,
        };
        let mut placer = Placer::new(bounds);
        let _ = sheet("thing", 200.0, "", |canvas| {
            for _ in 0..6 {
                assert!(placer.label(canvas, (150.0, 100.0), "gearbox", Lettering::plain(), FAR));
            }
        });
        for (i, a) in placer.taken.iter().enumerate() {
            assert!(bounds.holds(a));
            assert!(placer.taken[i + 1..].iter().all(|b| !a.overlaps(b)));
        }
    }

    #[test]
    fn a_label_without_room_is_not_drawn() {
        let mut placer = Placer::new(Area::around((0.0, 0.0), 20.0));
        let _ = sheet("thing", 50.0, "", |canvas| {
            assert!(!placer.label(
                canvas,
                (0.0, 0.0),
                "far too long a name",
                Lettering::plain(),
                FAR
            ));
        });
    }
}
