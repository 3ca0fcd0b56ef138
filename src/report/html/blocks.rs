//! Blocks of a section as HTML.

use maud::{Markup, PreEscaped, html};

use crate::report::content::finding::Finding;
use crate::report::content::{Block, Drawing, Line, Plate};
use crate::report::figure::{self, Figure, FigureError};
use crate::study::check::Verdict;

use super::{Source, table};

/// One block; `earlier` tables of its kind stand before it in the section.
pub(super) fn block(block: &Block, source: Source<'_>, earlier: usize) -> Markup {
    match block {
        Block::Heading(text) => html! { h3 { (text) } },
        Block::Paragraph(text) => html! { p { (inline(text)) } },
        Block::List(items) => html! { ul.prose { @for item in items { li { (inline(item)) } } } },
        Block::Lines(lines) => self::lines(lines),
        Block::Verbatim(lines) => html! {
            pre tabindex="0" { code { @for line in lines { (line) "\n" } } }
        },
        Block::Table(data) => table::table(data, earlier),
        Block::Findings(findings) => html! {
            ol.findings { @for finding in findings { (self::finding(finding)) } }
        },
        Block::Plates(plates) => html! {
            div.plates.several[plates.len() > 1] { @for plate in plates { (self::plate(plate, source)) } }
        },
    }
}

/// Text in which what stands between backticks is what a user types.
pub(super) fn inline(text: &str) -> Markup {
    let pieces: Vec<&str> = text.split('`').collect();
    // An odd backtick out is one of the text itself.
    if pieces.len().is_multiple_of(2) {
        return html! { (text) };
    }
    html! {
        @for (place, piece) in pieces.iter().enumerate() {
            @if place % 2 == 1 { code { (piece) } } @else { (piece) }
        }
    }
}

/// A verdict as a word in its colour.
pub(super) fn verdict(verdict: Verdict) -> Markup {
    html! { span class=(format!("verdict {}", class(verdict))) { (verdict.word()) } }
}

fn class(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Ok => "v-ok",
        Verdict::Close => "v-close",
        Verdict::Over => "v-over",
        Verdict::Fails => "v-fails",
        Verdict::NotChecked => "v-open",
    }
}

fn lines(lines: &[Line]) -> Markup {
    html! {
        dl.lines {
            @for line in lines {
                div {
                    dt { (line.label) }
                    dd { (inline(&line.value)) @if let Some(found) = line.verdict { " " (verdict(found)) } }
                }
            }
        }
    }
}

fn finding(finding: &Finding) -> Markup {
    let facts = [
        ("found", &finding.value),
        ("limit", &finding.limit),
        ("limit used", &finding.used),
        ("load case", &finding.load),
    ];
    html! {
        li class=(class(finding.verdict)) {
            p.finding-title { (verdict(finding.verdict)) " " strong { (finding.title) } }
            dl.facts {
                @for (label, value) in facts {
                    @if let Some(value) = value { div { dt { (label) } dd { (value) } } }
                }
            }
            @if let Some(cure) = &finding.cure { p.cure { strong { "What would mend it: " } (inline(cure)) } }
            p.basis {
                "Limit from: " (inline(&finding.basis))
                @if let Some(note) = &finding.note { " \u{2013} " (inline(note)) }
            }
        }
    }
}

fn plate(plate: &Plate, source: Source<'_>) -> Markup {
    html! {
        @match draw(plate.drawing, source) {
            Ok(drawn) => (self::drawn(&drawn, plate.text.as_deref())),
            Err(reason) => {
                div.not-drawn {
                    p { "This figure could not be drawn: " (reason.to_string()) }
                    @if let Some(text) = &plate.text { p { (text) } }
                }
            }
        }
    }
}

fn drawn(figure: &Figure, text: Option<&str>) -> Markup {
    html! {
        figure {
            div.drawing tabindex="0" role="region" aria-label=(figure.title) { (PreEscaped(&figure.svg)) }
            figcaption {
                strong { (figure.title) } " " (figure.caption)
                @if let Some(text) = text { p { (text) } }
            }
        }
    }
}

fn draw(drawing: Drawing, source: Source<'_>) -> Result<Figure, FigureError> {
    let Source { model, evaluation } = source;
    match drawing {
        Drawing::Layout => figure::layout(model, evaluation),
        Drawing::Reactions => figure::reactions(model, evaluation),
        Drawing::Deflections => figure::deflections(model, evaluation),
        Drawing::Isolator { isolator } => figure::isolator(model, evaluation, isolator),
        Drawing::JointSection { joint } => figure::joint_section(model, evaluation, joint),
        Drawing::JointFace { joint } => figure::joint_face(model, evaluation, joint),
        Drawing::ClampDiagram { joint } => figure::clamp_diagram(model, evaluation, joint),
        Drawing::Clearances => figure::clearances(model, evaluation),
        Drawing::Frequencies => figure::frequencies(model, evaluation),
        Drawing::ModeShape { position, mode } => {
            figure::mode_shape(model, evaluation, position, mode)
        }
    }
}
