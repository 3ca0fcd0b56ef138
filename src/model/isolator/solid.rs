//! Kind `solid`: a metal puck or sleeve in place of rubber, from its rates or from its shape.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `rates` | rates along u, v, w, or one for all three | linear rate | this or `puck` |
//! | `puck` | round piece along w: the four keys below | table | this or `rates` |
//! | `puck.diameter` | outer diameter | length | needed |
//! | `puck.bore` | hole along w | length | none |
//! | `puck.height` | height along w | length | needed |
//! | `puck.youngs_modulus` | Young's modulus, 1 MPa to 10 000 GPa | pressure | 70 GPa, aluminium alloy |

use std::f64::consts::PI;
use std::sync::Arc;

use super::rates::Rates;
use super::{Description, Kind, Tension, Usual};
use crate::diagnostic::{Code, Diagnostic};
use crate::model::reader::{Bound, Section};
use crate::spatial::Vec3;
use crate::units::{Digits, Quantity, Shown, show};

pub(super) const KIND: Kind = Kind {
    word: "solid",
    gloss: "metal on metal",
    others: &["metal", "rigid", "steel", "aluminium", "aluminum"],
    read,
};

fn usual() -> Usual {
    Usual {
        dynamic_ratio: 1.0,
        dynamic_ratio_large: 1.0,
        loss_factor: 0.01,
        scatter: 0.05,
        creep: 0.0,
        tension: Tension::Allowed,
        of: "bolted metal".to_owned(),
    }
}

/// Young's modulus of an aluminium alloy \[Pa\].
///
/// # Source
/// EN 1999-1-1:2007, 3.2.5: E = 70 000 N/mm².
const ALUMINIUM: f64 = 70e9;

/// Poisson's ratio of an aluminium alloy.
///
/// # Source
/// EN 1999-1-1:2007, 3.2.5: ν = 0.3.
const POISSON: f64 = 0.3;

/// Moduli of what a solid mount may be made of, from a soft plastic to far beyond steel \[Pa\].
const MODULUS: Bound = Bound::Stated(1e6, 1e13, "between 1 MPa and 10 000 GPa");

/// Young's modulus below which a puck is no solid one \[Pa\].
///
/// # Source
/// Common practice: polyamide and acetal have 2 to 3 GPa, soft polyethylene 1 GPa.
const LEAST_OF_PLASTIC: f64 = 1e9;

fn read(section: &Section<'_>) -> Option<Description> {
    if section.has("rates") && section.has("puck") {
        section.refuse(
            "puck",
            Code::Conflict,
            format!("{} is given beside `rates`", section.key_name("puck")),
            "keep `rates` when they were measured, else `puck`",
        );
        return None;
    }
    section.must_have_one_of(
        &["rates", "puck"],
        "rates along u, v, w, such as \"200 kN/mm\", or `puck = { diameter = \"60 mm\", bore = \"13 mm\", height = \"40 mm\" }`",
    );
    if !section.has("puck") {
        let rates = section.per_axis("rates", Quantity::LinearRate, Bound::RATE)?;
        return Some(Description::new(Arc::new(Rates { rates }), usual()));
    }
    let puck =
        read_puck(section.section_like("puck", "{ diameter = \"60 mm\", height = \"40 mm\" }")?)?;
    let rates = puck.rates();
    Some(Description {
        is_computed: true,
        ..Description::new(Arc::new(Rates { rates }), usual())
    })
}

fn read_puck(section: Section<'_>) -> Option<Puck> {
    section.must_have(&[
        ("diameter", "outer diameter, such as \"60 mm\""),
        ("height", "along w, such as \"40 mm\""),
    ]);
    let diameter = section.quantity("diameter", Quantity::Length, Bound::SIZE);
    let bore = section.quantity("bore", Quantity::Length, Bound::TRAVEL);
    if !section.has("bore") {
        section.assume("bore", "none");
    }
    let height = section.quantity("height", Quantity::Length, Bound::SIZE);
    let youngs_modulus = section.quantity("youngs_modulus", Quantity::Pressure, MODULUS);
    if !section.has("youngs_modulus") {
        section.assume("youngs_modulus", "70 GPa: aluminium alloy");
    }
    if let Some(modulus) = youngs_modulus
        && modulus < LEAST_OF_PLASTIC
    {
        section.note(
            Diagnostic::warning(
                Code::UnlikelyModulus,
                format!(
                    "{} is that of neither metal nor hard plastic: {}",
                    section.key_name("youngs_modulus"),
                    show(modulus, Shown::Megapascal, Digits::Significant(3))
                ),
                section.span_of("youngs_modulus"),
            )
            .label("is it GPa?")
            .help("aluminium has 70 GPa, steel 210 GPa, hard plastic 1 to 5 GPa; rubber is of another kind, such as \"block\""),
        );
    }
    if let (Some(bore), Some(diameter)) = (bore, diameter)
        && bore >= diameter
    {
        section.refuse(
            "bore",
            Code::InsideOut,
            format!(
                "{} is not smaller than `diameter`",
                section.key_name("bore")
            ),
            "give both diameters, the hole as `bore`",
        );
    }
    section.finish();
    Some(Puck {
        diameter: diameter?,
        bore: bore.unwrap_or(0.0),
        height: height?,
        youngs_modulus: youngs_modulus.unwrap_or(ALUMINIUM),
    })
}

/// Round metal puck with a bore along w, bolted flat at both ends.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Puck {
    /// Outer diameter \[m\].
    diameter: f64,
    /// Bore \[m\].
    bore: f64,
    /// Height along w \[m\].
    height: f64,
    /// Young's modulus \[Pa\].
    youngs_modulus: f64,
}

impl Puck {
    /// Rates along u, v, w [N/m].
    ///
    /// # Equation
    ///   along w:      k = E A / h
    ///   across:       1/k = h³/(12 E I) + h/(κ G A),   G = E/(2 (1 + ν))
    ///   κ = 6 (1 + ν)(1 + m²)² / ((7 + 6 ν)(1 + m²)² + (20 + 12 ν) m²),   m = bore/diameter
    ///
    /// # Range
    /// Both ends stay flat and parallel. The bolt in the bore and the flex of
    /// the faces it sits on are left out; the bracket and chassis rates carry those.
    ///
    /// # Source
    /// Beam with shear, both ends held square: derived. κ: published, G. R.
    /// Cowper, The Shear Coefficient in Timoshenko's Beam Theory, J. Appl. Mech.
    /// 33 (1966) 335-340, hollow circle (from memory).
    fn rates(&self) -> Vec3 {
        let Self {
            diameter,
            bore,
            height,
            youngs_modulus: modulus,
        } = *self;
        let area = PI / 4.0 * (diameter.powi(2) - bore.powi(2));
        let second_moment = PI / 64.0 * (diameter.powi(4) - bore.powi(4));
        let shear_modulus = modulus / (2.0 * (1.0 + POISSON));
        let m2 = (bore / diameter).powi(2);
        let round = (1.0 + m2).powi(2);
        let kappa = 6.0 * (1.0 + POISSON) * round
            / ((7.0 + 6.0 * POISSON) * round + (20.0 + 12.0 * POISSON) * m2);
        let bending = height.powi(3) / (12.0 * modulus * second_moment);
        let shear = height / (kappa * shear_modulus * area);
        let across = 1.0 / (bending + shear);
        Vec3::new(across, across, modulus * area / height)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    /// Derived by hand: d 60, bore 0, h 40 mm, E 70 GPa, ν 0.3.
    /// A = 2827.43 mm², I = 636 172.5 mm⁴, along w 70 000 · 2827.43/40 = 4.9480e6 N/mm.
    /// κ = 6 · 1.3/8.8 = 0.886364, G = 26 923.08 MPa;
    /// h³/(12 E I) = 64 000/5.34385e11 = 1.19764e-7, h/(κGA) = 40/6.74731e7 = 5.92829e-7 mm/N;
    /// across 1/7.12593e-7 = 1.40333e6 N/mm.
    #[test]
    fn rates_of_a_plain_puck_by_hand() {
        let puck = Puck {
            diameter: 60e-3,
            bore: 0.0,
            height: 40e-3,
            youngs_modulus: 70e9,
        };
        let rates = puck.rates();
        assert_relative_eq!(rates.z, 4.9480e9, max_relative = 1e-4);
        assert_relative_eq!(rates.x, 1.40333e9, max_relative = 1e-4);
        assert_relative_eq!(rates.x, rates.y);
    }

    /// Published: Cowper's thin-walled limit, κ → 2 (1 + ν)/(4 + 3 ν).
    #[test]
    fn a_thin_tube_has_the_published_shear_coefficient() {
        let (d, t, h, e) = (60e-3, 1e-6, 1e-3, 70e9);
        let puck = Puck {
            diameter: d,
            bore: d - 2.0 * t,
            height: h,
            youngs_modulus: e,
        };
        // So short that bending is below 1e-3 of the whole.
        let kappa = 2.0 * (1.0 + POISSON) / (4.0 + 3.0 * POISSON);
        let area = PI * (d - t) * t;
        let shear_only = kappa * e / 2.6 * area / h;
        assert_relative_eq!(puck.rates().x, shear_only, max_relative = 1e-3);
    }
}
