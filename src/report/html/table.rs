//! A table as HTML: scrolls on its own when the page is narrower.

use maud::{Markup, html};

use crate::report::content::table::{Align, Cell, Column, Group, Row, Stands, Table};

use super::blocks::{inline, verdict};

/// A table with more rows than this is folded on a screen when it goes through the load cases, so that a page of many can be read through.
const FOLDED_ABOVE: usize = 15;

/// The same for any other table.
const LONGEST: usize = 40;

/// A table; `earlier` ones of its kind stand before it.
pub(super) fn table(table: &Table, earlier: usize) -> Markup {
    let about = match earlier {
        0 => format!("{}-table", table.id),
        _ => format!("{}-table-{}", table.id, earlier + 1),
    };
    let rows: usize = table.groups.iter().map(|group| group.rows.len()).sum();
    let most = match table.groups.len() {
        0 | 1 => LONGEST,
        _ => FOLDED_ABOVE,
    };
    html! {
        div.table {
            // Beside the table and not its caption: a caption is as wide as the table and would scroll with it.
            @if rows > most {
                details {
                    summary { span.about id=(about) { (table.about) } " " span.count { (rows) " rows" } }
                    (whole(table, &about))
                }
            } @else {
                p.about id=(about) { (table.about) }
                (whole(table, &about))
            }
        }
    }
}

fn whole(table: &Table, about: &str) -> Markup {
    let all = shown(&table.columns).count() + 1;
    html! {
        div.scroll tabindex="0" role="region" aria-labelledby=(about) {
            table aria-labelledby=(about) {
                thead { tr {
                    th scope="col" { (table.item) }
                    @for (_, column) in shown(&table.columns) {
                        th scope="col" class=[side(column)] {
                            (column.head)
                            @if !column.unit.symbol().is_empty() { span.unit { " " (column.unit.symbol()) } }
                        }
                    }
                } }
                @for group in &table.groups { (self::group(group, &table.columns, all)) }
            }
        }
        @if let Some(note) = &table.note { p.note { (inline(note)) } }
    }
}

fn group(group: &Group, columns: &[Column], all: usize) -> Markup {
    html! {
        tbody {
            @if let Some(load) = &group.load {
                tr.group { th scope="rowgroup" colspan=(all) { span { bdi { (load) } } } }
            }
            @if let Some(remark) = &group.remark {
                tr.remark { td colspan=(all) { span { (remark) } } }
            }
            @for row in &group.rows { (self::row(row, columns)) }
        }
    }
}

fn row(row: &Row, columns: &[Column]) -> Markup {
    html! {
        tr {
            th scope="row" { bdi { (row.item) } }
            @for (place, column) in shown(columns) {
                td class=[side(column)] { (cell(row.cells.get(place).unwrap_or(&Cell::Empty), column)) }
            }
        }
    }
}

fn cell(cell: &Cell, column: &Column) -> Markup {
    html! {
        @match cell {
            Cell::Verdict(found) => (verdict(*found)),
            Cell::Empty => span.none { "\u{2013}" },
            other => (inline(&other.shown(column))),
        }
    }
}

/// Columns for people, with their places.
fn shown(columns: &[Column]) -> impl Iterator<Item = (usize, &Column)> {
    let columns = columns.iter().enumerate();
    columns.filter(|(_, column)| column.stands != Stands::Nowhere)
}

/// Class of a column of numbers; words keep the side of the page.
fn side(column: &Column) -> Option<&'static str> {
    match column.align {
        Align::Number => Some("number"),
        Align::Text => None,
    }
}
