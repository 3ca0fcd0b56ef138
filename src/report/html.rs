//! The report as one HTML page that needs nothing else: no address outside, no script, no font.
//!
//! Every name of the file is escaped. Only the drawings of
//! [`figure`](super::figure), which escape what they hold, and the style sheet
//! go in as they are.

mod blocks;
mod table;

use maud::{DOCTYPE, Markup, PreEscaped, html};

use crate::model::Model;
use crate::study::evaluate::Evaluation;

use super::content::{self, Block, Section, cautions};
use super::figure::DARK_CSS;

/// Looks of the page, light, dark and on paper.
const PAGE_CSS: &str = include_str!("page.css");

/// What the blocks of a page are drawn from.
#[derive(Clone, Copy)]
struct Source<'a> {
    model: &'a Model,
    evaluation: &'a Evaluation,
}

/// The whole page.
#[must_use]
pub fn document(model: &Model, evaluation: &Evaluation) -> String {
    let page = content::page(model, evaluation);
    let source = Source { model, evaluation };
    html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="color-scheme" content="light dark";
                meta name="generator" content=(concat!("bedplate ", env!("CARGO_PKG_VERSION")));
                title { (page.title) " \u{2013} powertrain mounting" }
                style { (PreEscaped(PAGE_CSS)) (PreEscaped(DARK_CSS)) }
            }
            body {
                a.skip href="#main" { "Skip to the results" }
                header {
                    h1 { bdi { (page.title) } }
                    p.subtitle { (page.subtitle) }
                    p.caution { strong { "Caution. " } (cautions::IN_ONE_LINE) " " a href="#cautions" { "All cautions" } }
                }
                (contents(&page.sections))
                main #main tabindex="-1" {
                    @for part in &page.sections { (section(part, source)) }
                }
                footer { p { "Written by bedplate " (env!("CARGO_PKG_VERSION")) ". Lengths in mm, forces in N, frequencies in Hz; x forward, y left, z up." } }
            }
        }
    }
    .into_string()
}

fn contents(sections: &[Section]) -> Markup {
    html! {
        nav aria-label="Contents" {
            ol { @for section in sections { li { a href=(format!("#{}", section.id)) { (section.heading) } } } }
        }
    }
}

fn section(section: &Section, source: Source<'_>) -> Markup {
    let heading = format!("{}-heading", section.id);
    html! {
        section id=(section.id) aria-labelledby=(heading) {
            h2 id=(heading) { (section.heading) }
            @for (place, block) in section.blocks.iter().enumerate() {
                (blocks::block(block, source, earlier(&section.blocks, place)))
            }
        }
    }
}

/// How many tables of the same kind stand before this block, so that no two get one name.
fn earlier(blocks: &[Block], place: usize) -> usize {
    let id = |block: &Block| match block {
        Block::Table(table) => Some(table.id),
        _ => None,
    };
    let own = blocks.get(place).and_then(id);
    let before = blocks.iter().take(place);
    before
        .filter(|block| own.is_some() && id(block) == own)
        .count()
}

#[cfg(test)]
mod tests;
