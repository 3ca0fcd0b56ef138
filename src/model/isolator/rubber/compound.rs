//! What each rubber bears and loses.

use super::table::{hundredths, interpolated};
use crate::diagnostic::Code;
use crate::model::reader::{Section, quoted};

/// One kind of rubber.
///
/// # Source
/// All values common practice of low authority, heat of long service and loss
/// factor at 10 Hz to 100 Hz: a compound may lie outside, and the maker's data
/// are always better.
#[derive(Debug, PartialEq)]
pub struct Compound {
    /// Word of the file.
    pub word: &'static str,
    /// Name for people.
    pub name: &'static str,
    /// Hottest it lasts at \[°C\].
    pub heat_limit: f64,
    /// Loss factor in vibration at a hardness \[IRHD\]: the softest and the hardest in use.
    pub loss_at: [(f64, f64); 2],
    /// Rate at a temperature \[°C\] over the rate at 20 °C, rising in temperature; empty when nothing is known.
    pub rate_at: &'static [(f64, f64)],
}

impl Compound {
    /// Loss factor in vibration at a hardness \[IRHD\]; more filler, more loss. To two digits behind the point.
    #[must_use]
    pub fn loss_factor(&self, hardness: f64) -> f64 {
        hundredths(interpolated(&self.loss_at, hardness))
    }
}

/// Natural rubber.
pub(crate) const NATURAL: Compound = Compound {
    word: "natural",
    name: "natural rubber",
    heat_limit: 80.0,
    loss_at: [(40.0, 0.05), (80.0, 0.15)],
    rate_at: &[(-40.0, 3.0), (-20.0, 1.35), (20.0, 1.0), (70.0, 0.9)],
};

const EPDM: Compound = Compound {
    word: "epdm",
    name: "EPDM rubber",
    heat_limit: 130.0,
    loss_at: [(50.0, 0.05), (80.0, 0.15)],
    rate_at: &[],
};

const CHLOROPRENE: Compound = Compound {
    word: "chloroprene",
    name: "chloroprene rubber",
    heat_limit: 100.0,
    loss_at: [(40.0, 0.08), (80.0, 0.20)],
    rate_at: &[],
};

const STYRENE_BUTADIENE: Compound = Compound {
    word: "styrene-butadiene",
    name: "styrene-butadiene rubber",
    heat_limit: 90.0,
    loss_at: [(50.0, 0.10), (80.0, 0.25)],
    rate_at: &[],
};

const SILICONE: Compound = Compound {
    word: "silicone",
    name: "silicone rubber",
    heat_limit: 180.0,
    loss_at: [(30.0, 0.10), (80.0, 0.30)],
    rate_at: &[],
};

const NITRILE: Compound = Compound {
    word: "nitrile",
    name: "nitrile rubber",
    heat_limit: 100.0,
    loss_at: [(50.0, 0.10), (90.0, 0.30)],
    rate_at: &[],
};

const BUTYL: Compound = Compound {
    word: "butyl",
    name: "butyl rubber",
    heat_limit: 110.0,
    loss_at: [(40.0, 0.20), (70.0, 0.50)],
    rate_at: &[],
};

/// Every rubber that a file can name.
const ALL: [&Compound; 7] = [
    &NATURAL,
    &EPDM,
    &CHLOROPRENE,
    &STYRENE_BUTADIENE,
    &SILICONE,
    &NITRILE,
    &BUTYL,
];

/// Abbreviations (ISO 1629) and other names, and the word of the file.
const OTHER_WORDS: [(&str, &str); 13] = [
    ("nr", "natural"),
    ("natural rubber", "natural"),
    ("natural-rubber", "natural"),
    ("nbr", "nitrile"),
    ("nitrile rubber", "nitrile"),
    ("sbr", "styrene-butadiene"),
    ("cr", "chloroprene"),
    ("neoprene", "chloroprene"),
    ("polychloroprene", "chloroprene"),
    ("epm", "epdm"),
    ("vmq", "silicone"),
    ("iir", "butyl"),
    ("butyl rubber", "butyl"),
];

/// Reads `rubber`; natural when the file is silent.
pub(crate) fn read_compound(section: &Section<'_>) -> Option<&'static Compound> {
    if !section.has("rubber") {
        section.assume("rubber", "natural");
        return Some(&NATURAL);
    }
    let written = section.word_of("rubber").unwrap_or_default();
    if ["polyurethane", "urethane", "pu", "pur"].contains(&written.trim().to_lowercase().as_str()) {
        section.refuse(
            "rubber",
            Code::UnknownWord,
            format!(
                "unknown word for {}: {}",
                section.key_name("rubber"),
                quoted(written)
            ),
            "polyurethane is a kind of isolator: write `kind = \"polyurethane\"` and take `rubber` out",
        );
        return None;
    }
    section.choice_like(
        "rubber",
        &ALL.map(|compound| (compound.word, compound)),
        &OTHER_WORDS,
        "",
    )
}
