//! Reads one `[material.NAME]`.

use super::{Family, HeadPressure, HeatAffected, Material};
use crate::diagnostic::Code;
use crate::model::reader::{Bound, Section};
use crate::units::{Digits, Quantity, Shown, show};

/// Strengths of anything that holds \[Pa\].
const STRENGTH: Bound = Bound::Stated(1e5, 1e10, "between 0.1 MPa and 10 GPa");

/// Moduli of anything that holds \[Pa\].
const MODULUS: Bound = Bound::Stated(1e6, 1e12, "between 1 MPa and 1000 GPa");

const DENSITY: Bound = Bound::Stated(10.0, 3e4, "between 10 and 30 000 kg/m3");

const EXPANSION: Bound = Bound::Stated(-1e-5, 1e-3, "between -10 and 1000 um/m/K");

/// What a family has in common.
struct Usual {
    /// Young's modulus \[Pa\].
    youngs: f64,
    /// Density [kg/m³].
    density: f64,
    /// Thermal expansion [1/K].
    expansion: f64,
}

impl Family {
    /// Poisson's ratio when the file states none.
    fn poissons_ratio(self) -> f64 {
        match self {
            Self::Steel | Self::Stainless => 0.30,
            Self::Aluminium => 0.33,
            Self::Magnesium => 0.35,
            Self::CastIron => 0.26,
            Self::Polymer => 0.40,
        }
    }

    /// Handbook values; `None` for polymers, which differ too much.
    fn usual(self) -> Option<Usual> {
        let of = |youngs: f64, density, expansion: f64| {
            Some(Usual {
                youngs: youngs * 1e9,
                density,
                expansion: expansion * 1e-6,
            })
        };
        match self {
            Self::Steel => of(210.0, 7850.0, 12.0),
            Self::Stainless => of(200.0, 7900.0, 16.0),
            Self::Aluminium => of(70.0, 2700.0, 23.0),
            Self::Magnesium => of(45.0, 1780.0, 26.0),
            Self::CastIron => of(103.0, 7200.0, 11.7),
            Self::Polymer => None,
        }
    }
}

/// `None` when something in it is wrong.
pub(super) fn read(name: &str, section: Section<'_>) -> Option<Material> {
    section.must_have(&[
        ("family", "what sort it is, such as \"steel\""),
        ("yield_strength", "such as \"355 MPa\""),
        ("tensile_strength", "such as \"470 MPa\""),
    ]);
    let family = section.choice("family", &Family::WORDS);
    let [yields, breaks] = ["yield_strength", "tensile_strength"]
        .map(|key| section.quantity(key, Quantity::Pressure, STRENGTH));
    let ordered = is_ordered(&section, yields, breaks);
    let heat_affected = section.judged("heat_affected", |inner| {
        read_heat_affected(inner, yields, breaks)
    });
    let usual = family.and_then(Family::usual);
    if family == Some(Family::Polymer) {
        section.must_have(&[
            (
                "youngs_modulus",
                "polymers differ too much to guess it, such as \"1.5 GPa\"",
            ),
            (
                "expansion",
                "polymers differ too much to guess it, such as \"80 um/m/K\"",
            ),
            (
                "density",
                "polymers differ too much to guess it, such as \"1140 kg/m3\"",
            ),
        ]);
    }
    let value = |key, quantity, bound, usual: Option<f64>, shown: &dyn Fn(f64) -> String| {
        if section.has(key) {
            return section.quantity(key, quantity, bound);
        }
        let usual = usual?;
        section.assume(key, format!("{}: usual for the family", shown(usual)));
        Some(usual)
    };
    let youngs = value(
        "youngs_modulus",
        Quantity::Pressure,
        MODULUS,
        usual.as_ref().map(|usual| usual.youngs),
        &|value| show(value, Shown::Gigapascal, Digits::Significant(3)),
    );
    let density = value(
        "density",
        Quantity::Density,
        DENSITY,
        usual.as_ref().map(|usual| usual.density),
        &|value| format!("{value:.0} kg/m3"),
    );
    let expansion = value(
        "expansion",
        Quantity::Expansion,
        EXPANSION,
        usual.as_ref().map(|usual| usual.expansion),
        &|value| format!("{:.1} um/m/K", value * 1e6),
    );
    let poisson = section.ratio("poissons_ratio", Bound::Within(0.0, 0.49));
    let index = section.ratio("anodic_index", Bound::Within(0.0, 2.0));
    let head = section.quantity("head_pressure", Quantity::Pressure, STRENGTH);
    let long_term = read_long_term(&section, family, youngs);
    let has_head = section.has("head_pressure");
    if !has_head {
        section.assume(
            "head_pressure",
            "its yield strength: more may be borne, but nothing is known",
        );
    }
    section.finish();
    let (family, yield_strength) = (family?, yields?);
    let allowed = head.unwrap_or(yield_strength);
    ordered.then_some(())?;
    Some(Material {
        name: name.to_owned(),
        family,
        yield_strength,
        tensile_strength: breaks?,
        heat_affected: heat_affected.unwrap_or(Some(HeatAffected::NotKnown))?,
        youngs_modulus: youngs?,
        long_term_modulus: long_term?,
        poissons_ratio: poisson.unwrap_or(family.poissons_ratio()),
        density: density?,
        expansion: expansion?,
        anodic_index: index.or(family.anodic_index()),
        head_pressure: HeadPressure {
            bare: allowed,
            supported: allowed,
            basis: if has_head {
                "`head_pressure` of the material"
            } else {
                "yield strength, since no `head_pressure` is given"
            },
        },
        source: "the model file",
    })
}

fn read_heat_affected(
    section: Section<'_>,
    yields: Option<f64>,
    breaks: Option<f64>,
) -> Option<HeatAffected> {
    section.must_have(&[
        ("yield_strength", "beside a weld, such as \"125 MPa\""),
        ("tensile_strength", "beside a weld, such as \"185 MPa\""),
    ]);
    let strength = |key| section.quantity(key, Quantity::Pressure, STRENGTH);
    let (weak_yields, weak_breaks) = (strength("yield_strength"), strength("tensile_strength"));
    let mut ordered = is_ordered(&section, weak_yields, weak_breaks);
    for (key, weak, parent) in [
        ("yield_strength", weak_yields, yields),
        ("tensile_strength", weak_breaks, breaks),
    ] {
        if let (Some(weak), Some(parent)) = (weak, parent)
            && weak > parent
        {
            section.refuse(
                key,
                Code::OutOfRange,
                format!(
                    "{} is above that away from the weld: {}",
                    section.key_name(key),
                    in_words(weak)
                ),
                "a weld weakens what is beside it, or leaves it as it is",
            );
            ordered = false;
        }
    }
    section.finish();
    ordered.then_some(HeatAffected::Weaker {
        yield_strength: weak_yields?,
        tensile_strength: weak_breaks?,
    })
}

/// The inner `None` is a metal, or a polymer of which it is not known.
fn read_long_term(
    section: &Section<'_>,
    family: Option<Family>,
    youngs: Option<f64>,
) -> Option<Option<f64>> {
    if !section.has("long_term_modulus") {
        return Some(None);
    }
    let modulus = section.quantity("long_term_modulus", Quantity::Pressure, MODULUS)?;
    if family? != Family::Polymer {
        section.refuse(
            "long_term_modulus",
            Code::Conflict,
            format!(
                "{} is given for a metal",
                section.key_name("long_term_modulus")
            ),
            "take it out: only polymers creep under a bolt at these temperatures",
        );
        return None;
    }
    if modulus > youngs? {
        section.refuse(
            "long_term_modulus",
            Code::OutOfRange,
            format!(
                "{} is above `youngs_modulus`: {}",
                section.key_name("long_term_modulus"),
                in_words(modulus)
            ),
            "under load a polymer only becomes softer",
        );
        return None;
    }
    Some(Some(modulus))
}

/// Whether the strengths are in order; says so when they are not.
fn is_ordered(section: &Section<'_>, yields: Option<f64>, breaks: Option<f64>) -> bool {
    let (Some(yields), Some(breaks)) = (yields, breaks) else {
        return true;
    };
    if yields > breaks {
        section.refuse(
            "yield_strength",
            Code::InsideOut,
            format!(
                "{} is above `tensile_strength`: {}",
                section.key_name("yield_strength"),
                in_words(yields)
            ),
            "exchange the two, or check their units",
        );
    }
    yields <= breaks
}

fn in_words(stress: f64) -> String {
    show(stress, Shown::Megapascal, Digits::Significant(3))
}
