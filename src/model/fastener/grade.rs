//! Strength of bolts by the marking on their heads.

use super::find_named;

/// What a bolt is made of, as far as stiffness and heat go.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Metal {
    /// Carbon or alloy steel.
    Steel,
    /// Austenitic stainless steel, A2 or A4.
    Stainless,
}

impl Metal {
    /// In words.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Steel => "steel",
            Self::Stainless => "stainless steel",
        }
    }

    /// Young's modulus \[Pa\].
    ///
    /// # Source
    /// Steel 205 GPa: VDI 2230-1:2003, from memory. Stainless 200 GPa: EN 1993-1-4, from memory.
    #[must_use]
    pub fn youngs_modulus(self) -> f64 {
        match self {
            Self::Steel => 205e9,
            Self::Stainless => 200e9,
        }
    }

    /// Thermal expansion [1/K].
    ///
    /// # Source
    /// Steel 12e-6: EN 1993-1-1, 3.2.6, from memory. Handbooks give 11 to 12e-6; this is the
    /// value of the rails too, so that steel on steel does not seem to lose preload when warm.
    /// Stainless 16e-6: EN 10088-1, from memory.
    #[must_use]
    pub fn thermal_expansion(self) -> f64 {
        match self {
            Self::Steel => 12e-6,
            Self::Stainless => 16e-6,
        }
    }
}

/// Least stresses a bolt of a grade bears, on the stress area.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// Proof stress: no lasting stretch \[Pa\].
    pub proof: f64,
    /// Yield strength, 0.2 % lasting stretch \[Pa\].
    pub yield_strength: f64,
    /// Tensile strength \[Pa\].
    pub tensile: f64,
}

/// A grade of bolts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Grade {
    /// Marking: "8.8", "A2-70", "grade 5".
    pub name: &'static str,
    /// What it is made of.
    pub metal: Metal,
    /// Whether it is quenched and tempered; the fatigue limits of rolled threads are known for such bolts only.
    pub heat_treated: bool,
    /// Limits up to a nominal diameter \[m\], in growing order.
    steps: &'static [(f64, Limits)],
}

const fn limits(unit: f64, proof: f64, yield_strength: f64, tensile: f64) -> Limits {
    Limits {
        proof: proof * unit,
        yield_strength: yield_strength * unit,
        tensile: tensile * unit,
    }
}

const MPA: f64 = 1e6;
/// 1000 pounds-force per square inch, both exact.
const KSI: f64 = 4_448.221_615_260_5 / (25.4e-3 * 25.4e-3);
/// Diameters of a list are met by threads converted from inches: one part in a million of slack.
const SLACK: f64 = 1.0 + 1e-6;

const fn grade(name: &'static str, heat_treated: bool, steps: &'static [(f64, Limits)]) -> Grade {
    Grade {
        name,
        metal: Metal::Steel,
        heat_treated,
        steps,
    }
}

const fn stainless(name: &'static str, steps: &'static [(f64, Limits)]) -> Grade {
    Grade {
        name,
        metal: Metal::Stainless,
        heat_treated: false,
        steps,
    }
}

/// The list for stainless bolts has no proof stress: the yield strength stands for it.
const CLASS_50: &[(f64, Limits)] = &[(39e-3, limits(MPA, 210.0, 210.0, 500.0))];
const CLASS_70: &[(f64, Limits)] = &[(24e-3, limits(MPA, 450.0, 450.0, 700.0))];
const CLASS_80: &[(f64, Limits)] = &[(24e-3, limits(MPA, 600.0, 600.0, 800.0))];

/// # Source
/// ISO 898-1 (the minimum columns: the digits of 10.9 and 12.9 promise less than they bear),
/// ISO 3506-1, SAE J429; all from memory.
const GRADES: [Grade; 12] = [
    grade(
        "8.8",
        true,
        &[
            (16e-3, limits(MPA, 580.0, 640.0, 800.0)),
            (39e-3, limits(MPA, 600.0, 660.0, 830.0)),
        ],
    ),
    grade("10.9", true, &[(39e-3, limits(MPA, 830.0, 940.0, 1040.0))]),
    grade("12.9", true, &[(39e-3, limits(MPA, 970.0, 1100.0, 1220.0))]),
    stainless("A2-50", CLASS_50),
    stainless("A2-70", CLASS_70),
    stainless("A2-80", CLASS_80),
    stainless("A4-50", CLASS_50),
    stainless("A4-70", CLASS_70),
    stainless("A4-80", CLASS_80),
    grade(
        "grade 2",
        false,
        &[
            (19.05e-3, limits(KSI, 55.0, 57.0, 74.0)),
            (38.1e-3, limits(KSI, 33.0, 36.0, 60.0)),
        ],
    ),
    grade(
        "grade 5",
        true,
        &[
            (25.4e-3, limits(KSI, 85.0, 92.0, 120.0)),
            (38.1e-3, limits(KSI, 74.0, 81.0, 105.0)),
        ],
    ),
    grade(
        "grade 8",
        true,
        &[(38.1e-3, limits(KSI, 120.0, 130.0, 150.0))],
    ),
];

impl Grade {
    /// The grade of a marking.
    #[must_use]
    pub fn find(text: &str) -> Option<Self> {
        find_named(&GRADES, |grade| grade.name, text)
    }

    /// Every marking known.
    #[must_use]
    pub fn names() -> Vec<&'static str> {
        GRADES.iter().map(|grade| grade.name).collect()
    }

    /// Limits of a bolt of this nominal diameter \[m\]; none above the diameters of the standard.
    ///
    /// Bolts that are hot-dip galvanised in M10 and below are cut undersize and bear less than this.
    #[must_use]
    pub fn limits(&self, nominal: f64) -> Option<Limits> {
        self.steps
            .iter()
            .find(|(up_to, _)| nominal <= up_to * SLACK)
            .map(|(_, limits)| *limits)
    }
}
