//! Key `hardness`: a number and its scale.

use std::fmt;

use super::{Moduli, Relation};
use crate::diagnostic::Code;
use crate::model::reader::{Section, quoted};

/// Scale of a hardness of soft rubber.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Scale {
    /// International rubber hardness degrees.
    Irhd,
    /// The hand-held gauge with a blunt cone.
    ShoreA,
}

impl fmt::Display for Scale {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Irhd => "IRHD",
            Self::ShoreA => "Shore A",
        })
    }
}

/// Hardness of a rubber.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Hardness {
    /// Number on the scale.
    pub(crate) degrees: f64,
    /// What it was measured with.
    pub(crate) scale: Scale,
}

impl fmt::Display for Hardness {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.degrees, self.scale)
    }
}

/// What a hardness looks like in a file.
const EXAMPLE: &str =
    "write the number and its scale as one text, such as \"55 IRHD\" or \"60 Shore A\"";

/// Reads `hardness`; `None` when it is absent or wrong.
pub(super) fn read(section: &Section<'_>) -> Option<Hardness> {
    if section.is_bare_number("hardness") {
        refuse(section, Code::BareNumber, "has no scale", EXAMPLE);
        return None;
    }
    let text = section.text("hardness")?;
    let end = text
        .find(|c: char| !(c.is_ascii_digit() || " .,+-".contains(c)))
        .unwrap_or(text.len());
    let (number, scale) = text.split_at_checked(end)?;
    let degrees = number.trim().parse::<f64>();
    let scale = scale.trim();
    let problem = |code, complaint: String, help: &str| {
        refuse(section, code, &complaint, help);
        None
    };
    let Ok(degrees) = degrees else {
        return problem(
            Code::NotAQuantity,
            format!("is not a number with a scale: {}", quoted(text)),
            "write the number, with a decimal point, and its scale as one text, such as \"55 IRHD\" or \"60 Shore A\"",
        );
    };
    let scale = match scale.to_lowercase().as_str() {
        "irhd" => Scale::Irhd,
        "shore a" => Scale::ShoreA,
        "" => return problem(Code::BareNumber, "has no scale".to_owned(), EXAMPLE),
        "a" | "sha" | "sh a" | "sh. a" | "shore" | "shorea" | "shore-a" | "a shore" | "°sh a"
        | "° shore a" | "°" | "deg" => {
            return problem(
                Code::UnknownUnit,
                format!("is on an unknown scale: {}", quoted(scale)),
                &format!(
                    "write `\"{degrees} Shore A\"`, or `\"{degrees} IRHD\"` when it was measured so"
                ),
            );
        }
        other if other.starts_with("shore ") => {
            return problem(
                Code::WrongUnit,
                format!(
                    "is on a scale that is not for soft rubber: {}",
                    quoted(scale)
                ),
                "measure it in Shore A or IRHD, or give `modulus`; no simple rule leads from one scale to another",
            );
        }
        _ => {
            return problem(
                Code::UnknownUnit,
                format!("is on an unknown scale: {}", quoted(scale)),
                EXAMPLE,
            );
        }
    };
    Some(Hardness { degrees, scale })
}

impl Hardness {
    /// The moduli that a relation gives for it; says what is assumed, and notes a hardness that the relation does not reach.
    ///
    /// `other_ways` is what helps then.
    pub(crate) fn by(
        &self,
        section: &Section<'_>,
        relation: Relation,
        other_ways: &str,
    ) -> Option<Moduli> {
        let Some(moduli) = relation.moduli(self.degrees) else {
            let [low, high] = relation.range();
            let help = if (0.0..100.0).contains(&self.degrees) {
                other_ways
            } else {
                "read it off the part again: both scales run from 0 to 100"
            };
            refuse(
                section,
                Code::OutOfRange,
                &format!(
                    "must be between {low} and {high} for {}: {self}",
                    relation.in_words()
                ),
                help,
            );
            return None;
        };
        if self.scale != relation.scale() {
            section.assume(
                "hardness",
                format!(
                    "{self} is taken as {} {} (common practice: the two scales differ by a few degrees)",
                    self.degrees,
                    relation.scale()
                ),
            );
        }
        Some(moduli)
    }
}

fn refuse(section: &Section<'_>, code: Code, complaint: &str, help: &str) {
    section.refuse(
        "hardness",
        code,
        format!("{} {complaint}", section.key_name("hardness")),
        help,
    );
}
