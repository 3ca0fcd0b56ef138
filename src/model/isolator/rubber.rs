//! Rubber of an isolator: what it is, how hard it is, and which constants follow.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `rubber` | what it is: `"natural"`, `"epdm"`, `"chloroprene"`, `"styrene-butadiene"`, `"silicone"`, `"nitrile"`, `"butyl"` | word | `"natural"` |
//! | `hardness` | such as `"55 IRHD"` or `"60 Shore A"` | number and scale | this or `modulus` |
//! | `relation` | how the moduli follow from the hardness: `"table"`, `"indentation"`, `"base-10"`, `"probit"`: see [`Relation`] | word | `"table"` for natural rubber, else `"indentation"` |
//! | `modulus` | measured moduli in place of `hardness`: the four keys below | table | from `hardness` |
//! | `modulus.youngs` | Young's modulus of small strain | pressure | needed |
//! | `modulus.shear` | shear modulus | pressure | needed |
//! | `modulus.shape` | coefficient k of the shape factor in compression, 0.2 to 2 | ratio | 1 |
//! | `modulus.bulk` | modulus of bulk compression | pressure | 1000 MPa |

pub mod compound;
mod hardness;
mod modulus;
pub mod relation;
mod table;
mod usual;

use super::description::Usual;
use crate::diagnostic::Code;
use crate::model::reader::Section;
use crate::units::{Digits, Shown, show};

pub use compound::Compound;
pub(crate) use compound::read_compound;
pub(crate) use hardness::Hardness;
pub(crate) use modulus::Likely;
pub use relation::Relation;
pub(crate) use usual::dynamic_ratio_of_loss;

/// Keys of a rubber.
pub(crate) const KEYS: [&str; 4] = ["rubber", "hardness", "relation", "modulus"];

/// Elastic constants of a rubber for design formulas.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Moduli {
    /// Young's modulus of small strain E₀ \[Pa\].
    pub youngs: f64,
    /// Shear modulus G \[Pa\]; of filled rubber not a third of `youngs`.
    pub shear: f64,
    /// Coefficient k of the shape factor in compression, which belongs to this `youngs`.
    pub shape: f64,
    /// Modulus of bulk compression \[Pa\].
    pub bulk: f64,
}

/// The rubber of one isolator.
#[derive(Debug, Clone)]
pub(crate) struct Rubber {
    /// What it is.
    pub(crate) compound: &'static Compound,
    /// Its constants.
    pub(crate) moduli: Moduli,
    /// What is usual for it.
    pub(crate) usual: Usual,
    /// Where the constants come from, in sentences without their full stop.
    pub(crate) remarks: Vec<String>,
}

/// How stiff a rubber is, as the file says it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Stiffness {
    /// By its hardness.
    Hardness(Hardness),
    /// By its moduli.
    Moduli(Moduli),
}

/// What is expected of the moduli of rubber.
///
/// # Source
/// P. B. Lindley, Engineering Design with Natural Rubber, Table 3: G from 0.30
/// to 2.22 MPa for 30 to 75 IRHD, E₀/G from 3.07 to 4.27, bulk modulus 1000 MPa
/// for the soft ones; the ends are set a little wider (common practice).
const LIKELY: Likely = Likely {
    of: "rubber",
    shear: (0.2e6, 2.5e6),
    bulk: 1e9,
};

/// What helps with a hardness that a relation does not reach.
const OTHER_WAYS: &str = "measure `modulus` on the part, or use a `relation` that reaches so far: `indentation` from 20 to 90, `probit` from 30 to 95";

/// Reads `rubber`, `hardness`, `relation` and `modulus`.
pub(crate) fn read(section: &Section<'_>) -> Option<Rubber> {
    let compound = read_compound(section);
    let relation = relation::read(section, compound);
    let stiffness = read_stiffness(section, &LIKELY);
    if section.has("modulus") && section.has("relation") {
        refuse_beside_modulus(section, "relation");
        return None;
    }
    let (compound, relation) = (compound?, relation?);
    match stiffness? {
        Stiffness::Hardness(hardness) => {
            let moduli = hardness.by(section, relation, OTHER_WAYS)?;
            Some(Rubber {
                compound,
                moduli,
                usual: usual::of_hardness(compound, hardness.degrees),
                remarks: vec![
                    format!(
                        "{} of {hardness}: {}, by {}",
                        capital(compound.name),
                        moduli.in_words(),
                        relation.in_words()
                    ),
                    relation::spread_in_words(hardness.degrees),
                ],
            })
        }
        Stiffness::Moduli(moduli) => Some(Rubber {
            compound,
            moduli,
            usual: usual::of_modulus(compound, &moduli),
            remarks: vec![format!(
                "{} with the moduli of the file: {}",
                capital(compound.name),
                moduli.in_words()
            )],
        }),
    }
}

/// Reads `hardness` or `modulus`, of which one is needed.
pub(crate) fn read_stiffness(section: &Section<'_>, likely: &Likely) -> Option<Stiffness> {
    section.must_have_one_of(
        &["hardness", "modulus"],
        "hardness of the rubber, such as \"55 IRHD\" or \"60 Shore A\"",
    );
    let hardness = hardness::read(section);
    let moduli = modulus::read(section, likely);
    if !section.has("modulus") {
        return hardness.map(Stiffness::Hardness);
    }
    if section.has("hardness") {
        refuse_beside_modulus(section, "hardness");
        return None;
    }
    moduli.map(Stiffness::Moduli)
}

fn refuse_beside_modulus(section: &Section<'_>, key: &'static str) {
    section.refuse(
        key,
        Code::Conflict,
        format!("{} is given beside `modulus`", section.key_name(key)),
        format!("keep `modulus` when it was measured, and take `{key}` out"),
    );
}

impl Moduli {
    /// In one line for people.
    pub(crate) fn in_words(&self) -> String {
        let pressure = |value| show(value, Shown::Megapascal, Digits::Significant(3));
        format!(
            "Young's modulus {}, shear modulus {}, shape coefficient {:.2}, bulk modulus {}",
            pressure(self.youngs),
            pressure(self.shear),
            self.shape,
            pressure(self.bulk)
        )
    }
}

/// With its first letter as at the start of a sentence.
pub(crate) fn capital(name: &str) -> String {
    let mut letters = name.chars();
    letters
        .next()
        .map(|first| first.to_uppercase().chain(letters).collect())
        .unwrap_or_default()
}
