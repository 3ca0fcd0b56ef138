//! Key `modulus`: measured moduli in place of a hardness.

use super::Moduli;
use crate::diagnostic::{Code, Diagnostic};
use crate::model::reader::{Bound, Section};
use crate::units::{Digits, Quantity, Shown, show};

/// What the moduli of a material usually are.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Likely {
    /// Name of the material.
    pub(crate) of: &'static str,
    /// Smallest and largest shear modulus \[Pa\].
    pub(crate) shear: (f64, f64),
    /// Modulus of bulk compression where the file gives none \[Pa\].
    pub(crate) bulk: f64,
}

/// Ratio of Young's modulus to shear modulus that a rubber has: 3 for a soft gum, about 4 when filled.
///
/// # Source
/// P. B. Lindley, Engineering Design with Natural Rubber, Table 3: 3.07 to 4.27;
/// the ends are set a little wider (common practice).
const RATIO: (f64, f64) = (2.5, 4.6);

/// Largest share of Young's modulus that a shear modulus is.
///
/// # Source
/// Derived: G = E/(2 (1 + ν)) with a ratio ν of Poisson that is not below zero.
const MOST_SHEAR: f64 = 0.5;

/// Moduli of what an isolator may be made of, from a gel to a hard plastic \[Pa\].
const MODULUS: Bound = Bound::Stated(1e4, 1e10, "between 0.01 MPa and 10 GPa");

/// Moduli of bulk compression \[Pa\].
const BULK: Bound = Bound::Stated(1e7, 1e11, "between 10 MPa and 100 GPa");

/// Reads `modulus`; `None` when it is absent or wrong.
pub(super) fn read(section: &Section<'_>, likely: &Likely) -> Option<Moduli> {
    if !section.has("modulus") {
        return None;
    }
    let modulus =
        section.section_like("modulus", "{ youngs = \"3.2 MPa\", shear = \"0.8 MPa\" }")?;
    modulus.must_have(&[
        (
            "youngs",
            "Young's modulus of small strain, such as \"3.2 MPa\"",
        ),
        ("shear", "shear modulus, such as \"0.8 MPa\""),
    ]);
    let youngs = modulus.quantity("youngs", Quantity::Pressure, MODULUS);
    let shear = modulus.quantity("shear", Quantity::Pressure, MODULUS);
    let shape = modulus.ratio("shape", Bound::Within(0.2, 2.0));
    let bulk = modulus.quantity("bulk", Quantity::Pressure, BULK);
    if !modulus.has("shape") {
        modulus.assume("shape", "1: theory without filler (Gent and Lindley 1959)");
    }
    if !modulus.has("bulk") {
        let usual = show(likely.bulk, Shown::Megapascal, Digits::Decimals(0));
        modulus.assume("bulk", format!("{usual}: usual for {}", likely.of));
    }
    let moduli = (youngs.zip(shear)).map(|(youngs, shear)| Moduli {
        youngs,
        shear,
        shape: shape.unwrap_or(1.0),
        bulk: bulk.unwrap_or(likely.bulk),
    });
    if let Some(moduli) = &moduli {
        likely.warn(&modulus, moduli);
    }
    modulus.finish();
    moduli
}

impl Likely {
    fn warn(&self, modulus: &Section<'_>, moduli: &Moduli) {
        let pressure = |value| show(value, Shown::Megapascal, Digits::Significant(3));
        if moduli.shear > MOST_SHEAR * moduli.youngs {
            modulus.note(
                Diagnostic::warning(
                    Code::UnlikelyModulus,
                    format!(
                        "{} is more than half of Young's modulus, as in no body: {} beside {}",
                        modulus.key_name("shear"),
                        pressure(moduli.shear),
                        pressure(moduli.youngs)
                    ),
                    modulus.span_of("shear"),
                )
                .label("of rubber it is a third or a quarter")
                .help("look at both numbers again; were they interchanged?"),
            );
            return;
        }
        let (softest, hardest) = self.shear;
        if !(softest..=hardest).contains(&moduli.shear) {
            modulus.note(
                Diagnostic::warning(
                    Code::UnlikelyModulus,
                    format!(
                        "{} is not that of {}: {}",
                        modulus.key_name("shear"),
                        self.of,
                        pressure(moduli.shear)
                    ),
                    modulus.span_of("shear"),
                )
                .label(format!("{} has {} to {}", self.of, pressure(softest), pressure(hardest)))
                .help("look at the number and its unit again; was the area or the number of pieces right that it was computed with?"),
            );
            return;
        }
        let ratio = moduli.youngs / moduli.shear;
        if !(RATIO.0..=RATIO.1).contains(&ratio) {
            modulus.note(
                Diagnostic::warning(
                    Code::UnlikelyModulus,
                    format!(
                        "{} is {ratio:.1} times the shear modulus, which is not so for {}",
                        modulus.key_name("youngs"),
                        self.of
                    ),
                    modulus.span_of("youngs"),
                )
                .label("3 to 4.3 times is usual")
                .help(
                    "look at both numbers again; without filler it is 3 times, with filler about 4",
                ),
            );
        }
    }
}
