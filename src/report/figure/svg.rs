//! From the drawing library's output to an element that stands in a page: the one place that touches SVG text.
//!
//! Names are already escaped by the drawing library, quotes too; so a pattern
//! with a quote in it matches only the library's own attributes.

use std::fmt::Write as _;

use super::FigureError;

/// Units of the drawing library per unit of the figure: its coordinates are whole numbers, and whole units would be too coarse for slanted lines.
pub(super) const FINENESS: f64 = 4.0;

/// The library has no dashed lines; a stroke width of `code * DASH_CODE + width` asks for them.
pub(super) const DASH_CODE: u32 = 1000;

/// Dash patterns by code, in the library's units; code 0 is a solid line.
const DASHES: [&str; 4] = ["", "20 14", "48 12 8 12", "4 12"];

/// Wraps the drawing as an inline element with a name for readers who do not see it.
pub(super) fn finish(raw: &str, width: f64, height: f64, alt: &str) -> Result<String, FigureError> {
    let strange =
        || FigureError::Drawing("the drawing library gave an unknown document".to_owned());
    let (_, inside) = raw.split_once('>').ok_or_else(strange)?;
    let inside = inside
        .trim_end()
        .strip_suffix("</svg>")
        .ok_or_else(strange)?;
    let mut out = String::with_capacity(inside.len());
    let _ = write!(
        out,
        "<svg class=\"fig\" role=\"img\" aria-label=\"{}\" xmlns=\"http://www.w3.org/2000/svg\" \
         viewBox=\"0 0 {width:.0} {height:.0}\"><g transform=\"scale({})\" font-family=\"sans-serif\" \
         fill=\"none\" stroke-linejoin=\"round\">",
        escape(alt),
        1.0 / FINENESS
    );
    out.push_str(&dashed(&shorter(inside)));
    out.push_str("</g></svg>");
    Ok(out)
}

/// Drops what is the default or stands on the group.
fn shorter(inside: &str) -> String {
    inside
        .replace(" opacity=\"1\"", "")
        .replace(" fill=\"none\"", "")
        .replace(" stroke=\"none\"", "")
        .replace(" font-family=\"sans-serif\"", "")
        .replace(" \"", "\"")
        .replace('\n', "")
}

/// Turns coded stroke widths into widths and dash patterns.
fn dashed(inside: &str) -> String {
    const KEY: &str = "stroke-width=\"";
    let mut out = String::with_capacity(inside.len());
    let mut pieces = inside.split(KEY);
    out.push_str(pieces.next().unwrap_or_default());
    for piece in pieces {
        let (number, rest) = piece.split_once('"').unwrap_or((piece, ""));
        let coded: u32 = number.parse().unwrap_or(0);
        let _ = write!(out, "{KEY}{}\"", coded % DASH_CODE);
        let pattern = usize::try_from(coded / DASH_CODE)
            .ok()
            .and_then(|code| DASHES.get(code))
            .copied()
            .unwrap_or_default();
        if !pattern.is_empty() {
            let _ = write!(out, " stroke-dasharray=\"{pattern}\"");
        }
        out.push_str(rest);
    }
    out
}

fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '&' => out.push_str("&amp;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&apos;"),
            other => out.push(other),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn coded_widths_become_dashes_and_plain_widths_stay() {
        let out = dashed("<a stroke-width=\"1005\" x=\"1\"/><b stroke-width=\"5\"/>");
        assert_eq!(
            out,
            "<a stroke-width=\"5\" stroke-dasharray=\"20 14\" x=\"1\"/><b stroke-width=\"5\"/>"
        );
    }

    #[test]
    fn what_is_not_a_drawing_is_an_error() {
        assert!(matches!(
            finish("<svg>", 1.0, 1.0, ""),
            Err(FigureError::Drawing(_))
        ));
    }

    #[test]
    fn the_spoken_name_is_escaped() {
        let out = finish("<svg></svg>", 10.0, 20.0, "a \"b\" <c> & 'd'").unwrap();
        assert!(out.contains("aria-label=\"a &quot;b&quot; &lt;c&gt; &amp; &apos;d&apos;\""));
        assert!(out.contains("viewBox=\"0 0 10 20\""));
    }
}
