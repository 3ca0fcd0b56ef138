//! Rubber compounds: what is usual for each.

use super::Tension;
use super::description::Usual;
use crate::model::reader::Section;

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

/// Reads `rubber` and `hardness`.
pub(crate) fn read(section: &Section<'_>) -> Option<Rubber> {
    let compound = read_compound(section)?;
    Some(Rubber {
        compound,
        moduli: Moduli {
            youngs: 3.25e6,
            shear: 0.81e6,
            shape: 0.64,
            bulk: 1.09e9,
        },
        usual: Usual {
            dynamic_ratio: 1.3,
            dynamic_ratio_large: 1.1,
            loss_factor: compound.loss_factor,
            scatter: 0.15,
            creep: 0.3,
            tension: Tension::Allowed,
            of: compound.name.to_owned(),
        },
        remarks: Vec::new(),
    })
}

/// One kind of rubber.
#[derive(Debug, PartialEq)]
pub struct Compound {
    /// Word of the file.
    pub word: &'static str,
    /// Name for people.
    pub name: &'static str,
    /// Hottest it lasts at \[°C\].
    pub heat_limit: f64,
    /// Loss factor in vibration.
    pub loss_factor: f64,
    /// Rate at a temperature \[°C\] over the rate at 20 °C, rising in temperature; empty when nothing is known.
    pub rate_at: &'static [(f64, f64)],
}

/// Natural rubber.
pub(crate) const NATURAL: Compound = Compound {
    word: "natural",
    name: "natural rubber",
    heat_limit: 80.0,
    loss_factor: 0.1,
    rate_at: &[(-40.0, 3.0), (-20.0, 1.35), (20.0, 1.0), (70.0, 0.9)],
};

/// Reads `rubber`; natural when the file is silent.
pub(crate) fn read_compound(section: &Section<'_>) -> Option<&'static Compound> {
    if !section.has("rubber") {
        section.assume("rubber", "natural");
        return Some(&NATURAL);
    }
    section.choice("rubber", &[(NATURAL.word, &NATURAL)])
}
