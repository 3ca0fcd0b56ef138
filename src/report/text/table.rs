//! A table as text: head, rule, columns with their decimal points lined up.
//!
//! A table wider than the page has its columns of words narrowed, or is split
//! into several that repeat the names of the rows, whichever takes fewer lines.

mod narrow;

use crate::report::content::table::{Align, Cell, Column, Group, Stands, Table};
use crate::study::check::Verdict;

use super::layout::{visible, wrap};
use super::{Style, WIDTH, verdict_word};

/// Space between columns.
const GAP: usize = 2;

/// Widest column of row names before there is room to spare.
const NAMES: usize = 24;

/// Widest column of words before there is room to spare.
const WORDS: usize = 18;

/// Stands where there is nothing to say, so that a line splits into as many fields as its head.
const NOTHING: &str = "-";

/// A cell ready to be set: a number is split where it lines up with others.
#[derive(Clone)]
struct Piece {
    before: String,
    after: String,
    verdict: Option<Verdict>,
}

/// A column ready to be set.
#[derive(Clone)]
struct Strip {
    title: String,
    unit: String,
    /// Title and unit in lines.
    head: Vec<String>,
    align: Align,
    /// One piece a row, groups one after another.
    pieces: Vec<Piece>,
    before: usize,
    after: usize,
    width: usize,
    natural: usize,
    /// No narrower than its longest word.
    least: usize,
}

pub(super) fn lines(table: &Table, style: Style) -> Vec<String> {
    let mut lines = wrap(&table.about, WIDTH);
    for part in blocks(table) {
        lines.push(String::new());
        lines.extend(head(&part));
        lines.extend(body(&part, &table.groups, style));
    }
    for (place, column) in table.columns.iter().enumerate() {
        if column.stands == Stands::Below {
            lines.extend(below(table, place, column));
        }
    }
    if let Some(note) = &table.note {
        lines.push(String::new());
        lines.extend(wrap(note, WIDTH));
    }
    lines
}

/// The columns of each block, that of the names first.
fn blocks(table: &Table) -> Vec<Vec<Strip>> {
    let columns = table.columns.iter().enumerate();
    let beside = columns.filter(|(_, column)| column.stands == Stands::Beside);
    let strips: Vec<Strip> = beside
        .filter_map(|(place, _)| strip(table, place))
        .collect();
    let names = name_strip(table);
    let mut whole = vec![names.clone()];
    whole.extend(strips.iter().cloned());
    let mut split = parts(strips, names.width);
    for part in &mut split {
        part.insert(0, names.clone());
        widen(part);
    }
    if split.len() > 1
        && let Some(one) = narrow::to_page(whole)
        && narrow::height(&one) <= split.iter().map(|part| narrow::height(part)).sum()
    {
        return vec![one];
    }
    split
}

/// Sentences of one column, a line a row.
fn below(table: &Table, place: usize, column: &Column) -> Vec<String> {
    let mut head = column.head.to_owned();
    if let Some(first) = head.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    let mut lines = vec![String::new(), format!("{head}, in the same order:")];
    for row in rows(table) {
        if let Some(cell) = row.cells.get(place).filter(|cell| **cell != Cell::Empty) {
            let text = format!("{}: {}", row.item, cell.shown(column));
            lines.extend(super::indented("- ", 2, &text, WIDTH));
        }
    }
    lines
}

fn name_strip(table: &Table) -> Strip {
    let pieces = rows(table)
        .map(|row| Piece {
            before: visible(row.brief.unwrap_or(&row.item)),
            after: String::new(),
            verdict: None,
        })
        .collect();
    Strip::new(table.item, "", Align::Text, pieces, NAMES)
}

fn strip(table: &Table, place: usize) -> Option<Strip> {
    let column = table.columns.get(place)?;
    let pieces = rows(table)
        .map(|row| piece(column, row.cells.get(place).unwrap_or(&Cell::Empty)))
        .collect();
    Some(Strip::new(
        column.head,
        column.unit.symbol(),
        column.align,
        pieces,
        WORDS,
    ))
}

fn rows(table: &Table) -> impl Iterator<Item = &crate::report::content::table::Row> {
    table.groups.iter().flat_map(|group| &group.rows)
}

fn piece(column: &Column, cell: &Cell) -> Piece {
    let shown = match cell {
        Cell::Verdict(verdict) => verdict_word(*verdict).to_owned(),
        Cell::Empty => NOTHING.to_owned(),
        other => visible(&other.shown(column)),
    };
    // Numbers of one unit line up at their points, those of different units where the unit begins.
    let end = match cell {
        Cell::Number(_) => shown.find(|c: char| c != '-' && !c.is_ascii_digit()),
        Cell::Quantity(..) => shown.find(' '),
        _ => None,
    };
    let (before, after) = match end {
        Some(at) if at > 0 => {
            let (before, after) = shown.split_at(at);
            (before.to_owned(), after.to_owned())
        }
        _ => (shown, String::new()),
    };
    Piece {
        before,
        after,
        verdict: match cell {
            Cell::Verdict(verdict) => Some(*verdict),
            _ => None,
        },
    }
}

impl Strip {
    fn new(head: &str, unit: &str, align: Align, pieces: Vec<Piece>, most: usize) -> Self {
        let longest =
            |part: fn(&Piece) -> &String| pieces.iter().map(|p| chars(part(p))).max().unwrap_or(0);
        let (before, after) = (longest(|p| &p.before), longest(|p| &p.after));
        let unit = if unit.is_empty() {
            String::new()
        } else {
            format!("({unit})")
        };
        let word = head.split_whitespace().map(chars).max().unwrap_or(0);
        let least = word.max(chars(&unit));
        let natural = (before + after).max(least);
        let width = match align {
            Align::Text => natural.min(most.max(least)),
            Align::Number => natural,
        };
        let words = pieces
            .iter()
            .flat_map(|piece| piece.before.split_whitespace());
        let mut strip = Self {
            title: head.to_owned(),
            unit,
            head: Vec::new(),
            align,
            least: words.map(chars).max().unwrap_or(0).max(least),
            pieces,
            before,
            after,
            width,
            natural,
        };
        strip.set_width(width);
        strip
    }

    fn set_width(&mut self, width: usize) {
        self.width = width;
        self.head = wrap(&self.title, width);
        if !self.unit.is_empty() {
            self.head.push(self.unit.clone());
        }
    }

    /// Lines of each cell with another width.
    fn heights(&self, width: usize) -> Vec<usize> {
        let lines = |piece: &Piece| match self.align {
            Align::Text => wrap(&piece.before, width).len(),
            Align::Number => 1,
        };
        self.pieces.iter().map(lines).collect()
    }

    /// Lines of one cell, each as wide as the column.
    fn cell(&self, row: usize, style: Style) -> Vec<String> {
        let Some(piece) = self.pieces.get(row) else {
            return Vec::new();
        };
        let texts = match self.align {
            Align::Text => wrap(&piece.before, self.width),
            Align::Number => vec![format!(
                "{:>before$}{:<after$}",
                piece.before,
                piece.after,
                before = self.before,
                after = self.after
            )],
        };
        texts
            .into_iter()
            .map(|text| {
                let set = self.set(&text);
                match piece.verdict {
                    Some(verdict) => set.replacen(&text, &style.paint(&text, verdict), 1),
                    None => set,
                }
            })
            .collect()
    }

    fn set(&self, text: &str) -> String {
        match self.align {
            Align::Text => format!("{text:<width$}", width = self.width),
            Align::Number => format!("{text:>width$}", width = self.width),
        }
    }
}

/// Columns in sheaves that fit the page beside the names.
fn parts(strips: Vec<Strip>, names: usize) -> Vec<Vec<Strip>> {
    let mut parts: Vec<Vec<Strip>> = Vec::new();
    let mut used = WIDTH;
    for strip in strips {
        let needed = GAP + strip.width;
        match parts.last_mut() {
            Some(part) if used + needed <= WIDTH => part.push(strip),
            _ => {
                parts.push(vec![strip]);
                used = names;
            }
        }
        used += needed;
    }
    parts
}

/// Gives columns of words the room that is left over.
fn widen(part: &mut [Strip]) {
    let used: usize = part.iter().map(|s| s.width).sum::<usize>() + GAP * (part.len().max(1) - 1);
    let mut left = WIDTH.saturating_sub(used);
    for strip in part.iter_mut().filter(|s| s.align == Align::Text) {
        let more = left.min(strip.natural - strip.width.min(strip.natural));
        strip.width += more;
        left -= more;
    }
}

fn head(part: &[Strip]) -> Vec<String> {
    let height = part.iter().map(|s| s.head.len()).max().unwrap_or(0);
    let mut lines: Vec<String> = (0..height)
        .map(|line| {
            let cells = part.iter().map(|strip| {
                let from = height - strip.head.len();
                let text = line.checked_sub(from).and_then(|at| strip.head.get(at));
                strip.set(text.map_or("", String::as_str))
            });
            across(cells)
        })
        .collect();
    lines.push(across(part.iter().map(|strip| "-".repeat(strip.width))));
    lines
}

fn body(part: &[Strip], groups: &[Group], style: Style) -> Vec<String> {
    let mut lines = Vec::new();
    let mut row = 0;
    for group in groups {
        if let Some(load) = &group.load {
            lines.extend(wrap(&format!("[{load}]"), WIDTH));
        }
        if let Some(remark) = &group.remark {
            lines.extend(super::indented("  ", 2, remark, WIDTH));
        }
        for _ in &group.rows {
            let cells: Vec<Vec<String>> = part.iter().map(|strip| strip.cell(row, style)).collect();
            let height = cells.iter().map(Vec::len).max().unwrap_or(0);
            for line in 0..height {
                let texts = cells
                    .iter()
                    .zip(part)
                    .map(|(cell, strip)| cell.get(line).cloned().unwrap_or_else(|| strip.set("")));
                lines.push(across(texts));
            }
            row += 1;
        }
    }
    lines
}

fn across(cells: impl Iterator<Item = String>) -> String {
    let line = cells.collect::<Vec<_>>().join(&" ".repeat(GAP));
    line.trim_end().to_owned()
}

fn chars(text: impl AsRef<str>) -> usize {
    text.as_ref().chars().count()
}
