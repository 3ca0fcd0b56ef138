//! Columns of words made narrower until a table fits the page.

use std::cmp::Reverse;

use super::{GAP, Strip, WIDTH};
use crate::report::content::table::Align;

/// Columns that fit the page side by side, narrowed where it costs the fewest lines; `None` when their words are too long for that.
pub(super) fn to_page(mut strips: Vec<Strip>) -> Option<Vec<Strip>> {
    let mut heights = of_each(&strips);
    while width(&strips) > WIDTH {
        let may = |strip: &Strip| strip.align == Align::Text && strip.width > strip.least;
        let narrower = strips.iter().enumerate().filter(|(_, strip)| may(strip));
        let narrower = narrower.map(|(place, strip)| {
            let own = strip.heights(strip.width - 1);
            (
                lines(&heights, Some((place, &own))),
                strip.width,
                place,
                own,
            )
        });
        // Of those that cost the same the widest.
        let (.., place, own) =
            narrower.min_by_key(|(lines, width, ..)| (*lines, Reverse(*width)))?;
        let strip = strips.get_mut(place)?;
        strip.set_width(strip.width - 1);
        *heights.get_mut(place)? = own;
    }
    Some(strips)
}

/// Lines that the rows take, with the columns side by side.
pub(super) fn height(strips: &[Strip]) -> usize {
    lines(&of_each(strips), None)
}

/// Lines of each cell, column by column.
fn of_each(strips: &[Strip]) -> Vec<Vec<usize>> {
    let heights = strips.iter().map(|strip| strip.heights(strip.width));
    heights.collect()
}

/// As [`height`], with the column at a place changed.
fn lines(heights: &[Vec<usize>], changed: Option<(usize, &[usize])>) -> usize {
    let rows = heights.first().map_or(0, Vec::len);
    let of = |place: usize, row: usize| match changed {
        Some((other, own)) if other == place => own.get(row).copied(),
        _ => heights.get(place).and_then(|own| own.get(row).copied()),
    };
    (0..rows)
        .map(|row| (0..heights.len()).filter_map(|place| of(place, row)).max())
        .map(Option::unwrap_or_default)
        .sum()
}

fn width(strips: &[Strip]) -> usize {
    let gaps = GAP * strips.len().saturating_sub(1);
    strips.iter().map(|strip| strip.width).sum::<usize>() + gaps
}
