//! Section `[material.NAME]` and the listed materials: what rails, sleeves, plates and feet are made of.
//!
//! A part names a listed material, such as `"S355"` or `"6082-T6"`, or one of the file's own.
//! The strength of a listed one depends on the thickness, so it is looked up with it.
//!
//! Listed: `"S235"`, `"S355"`, `"1018 hot rolled"`, `"1018 cold drawn"`, `"4130 normalised"`,
//! `"DP600"`, `"DP780"`, `"DP980"`; stainless `"304"`, `"304L"`, `"316"`, `"316L"` as hot strip,
//! each also with `" cold rolled"`; aluminium extrusions `"5083-O"`, `"5083-H12"`, `"6005A-T6 open"`,
//! `"6005A-T6 hollow"`, `"6060-T5"`, `"6060-T6"`, `"6060-T66"`, `"6061-T4"`, `"6061-T6"`,
//! `"6063-T6"`, `"6063-T66"`, `"6082-T6"`; cast iron `"EN-GJL-250"`, `"EN-GJS-400-15"`;
//! polymers `"PA66"`, `"POM"`, `"PEEK"`, `"glass-epoxy laminate"`.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `family` | `"steel"`, `"stainless"`, `"aluminium"`, `"magnesium"`, `"cast iron"` or `"polymer"` | word | needed |
//! | `yield_strength` | yield or 0.2 % proof strength | pressure | needed |
//! | `tensile_strength` | tensile strength, not below the yield strength | pressure | needed |
//! | `youngs_modulus` | Young's modulus | pressure | by family; a polymer needs it |
//! | `poissons_ratio` | Poisson's ratio, 0 to 0.49 | ratio | by family |
//! | `expansion` | share by which a length grows for each kelvin | thermal expansion | by family; a polymer needs it |
//! | `density` | mass of a volume | density | by family; a polymer needs it |
//! | `anodic_index` | potential below gold in the list of anodic indices, 0 to 2 V: a number without unit | ratio | by family; a polymer has none |
//! | `head_pressure` | pressure that it bears under a bolt head | pressure | its yield strength |
//! | `long_term_modulus` | modulus that is left of a polymer after 1000 h under load, at most `youngs_modulus` | pressure | not known |
//! | `heat_affected` | the two keys below: strength beside a weld | table | not known |
//! | `heat_affected.yield_strength` | yield strength beside a weld | pressure | needed |
//! | `heat_affected.tensile_strength` | tensile strength beside a weld | pressure | needed |

mod catalogue;
mod own;
mod surface;
mod table;

pub(crate) use catalogue::Catalogue;
pub use surface::Surface;
pub(super) use surface::read_surface;

/// What sort of material it is; fixes how it corrodes, whether it is welded, whether it creeps.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Family {
    /// Carbon and low-alloy steel.
    Steel,
    /// Austenitic stainless steel.
    Stainless,
    /// Wrought aluminium.
    Aluminium,
    /// Magnesium.
    Magnesium,
    /// Grey and ductile iron.
    CastIron,
    /// Polymers and their laminates; they creep under a bolt.
    Polymer,
}

/// What is left of the strength beside a weld.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum HeatAffected {
    /// As strong as elsewhere, with matching filler.
    AsParent,
    /// Weaker.
    Weaker {
        /// Yield strength beside the weld \[Pa\].
        yield_strength: f64,
        /// Tensile strength beside the weld \[Pa\].
        tensile_strength: f64,
    },
    /// It is known to suffer, or not made to be welded; by how much is in no list used here.
    NotKnown,
}

/// Pressure that a material bears under a bolt head or nut.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeadPressure {
    /// For a bare wall, which nothing holds sideways \[Pa\].
    pub bare: f64,
    /// For a thick part, or a wall held by what stands below it \[Pa\].
    pub supported: f64,
    /// Where the two numbers come from, in words.
    pub basis: &'static str,
}

/// A material with the strength that it has at the thickness of a part.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Material {
    /// Name in the list or in the file.
    pub name: String,
    /// What sort it is.
    pub family: Family,
    /// Yield or 0.2 % proof strength \[Pa\]; of a polymer the short-term strength in compression.
    pub yield_strength: f64,
    /// Tensile strength \[Pa\], not below `yield_strength`.
    pub tensile_strength: f64,
    /// What is left beside a weld.
    pub heat_affected: HeatAffected,
    /// Young's modulus \[Pa\].
    pub youngs_modulus: f64,
    /// Modulus after 1000 h under load \[Pa\]; `None` when it is a metal or not known.
    pub long_term_modulus: Option<f64>,
    /// Poisson's ratio.
    pub poissons_ratio: f64,
    /// Density [kg/m³].
    pub density: f64,
    /// Thermal expansion [1/K].
    pub expansion: f64,
    /// Potential below gold in the list of anodic indices \[V\], larger for less noble; `None` when it does not conduct.
    pub anodic_index: Option<f64>,
    /// Pressure that it bears under a bolt head.
    pub head_pressure: HeadPressure,
    /// Where its numbers come from.
    pub source: &'static str,
}

/// Why a listed material is not given.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum NotListed {
    /// No material has this name.
    Unknown,
    /// It is listed only for thinner parts.
    TooThick {
        /// Largest thickness listed \[m\].
        up_to: f64,
    },
}

impl Material {
    /// A listed material for a part of a thickness \[m\].
    ///
    /// # Errors
    /// When the name is not listed, or not for this thickness.
    pub fn find(name: &str, thickness: f64) -> Result<Self, NotListed> {
        let row = table::ROWS
            .iter()
            .find(|row| row.name == name)
            .ok_or(NotListed::Unknown)?;
        row.at(thickness)
    }

    /// The same material for a part of another thickness \[m\].
    ///
    /// # Errors
    /// When it is listed, but not for this thickness.
    pub fn at(&self, thickness: f64) -> Result<Self, NotListed> {
        match Self::find(&self.name, thickness) {
            // One of the file's own, which has no listed name, is as strong at any thickness.
            Err(NotListed::Unknown) => Ok(self.clone()),
            listed => listed,
        }
    }

    /// Names of the listed materials, in their order.
    pub fn names() -> impl Iterator<Item = &'static str> {
        table::ROWS.iter().map(|row| row.name)
    }
}

impl Family {
    /// Words of the file, each with its meaning.
    pub(crate) const WORDS: [(&'static str, Self); 6] = [
        ("steel", Self::Steel),
        ("stainless", Self::Stainless),
        ("aluminium", Self::Aluminium),
        ("magnesium", Self::Magnesium),
        ("cast iron", Self::CastIron),
        ("polymer", Self::Polymer),
    ];

    /// Whether parts of the two are welded to each other in a workshop.
    #[must_use]
    pub fn welds_to(self, other: Self) -> bool {
        let is_steel = |family| matches!(family, Self::Steel | Self::Stainless);
        match self {
            Self::Steel | Self::Stainless => is_steel(other),
            Self::Aluminium | Self::Magnesium => self == other,
            Self::CastIron | Self::Polymer => false,
        }
    }

    /// Potential below gold in the list of anodic indices \[V\]; `None` for what does not conduct.
    ///
    /// Stainless is that with 18 % chromium, aluminium wrought and not of the 2000 series.
    ///
    /// # Source
    /// Anodic index of MIL-STD-889 and of the lists made after MIL-F-14072 (from memory).
    #[must_use]
    pub fn anodic_index(self) -> Option<f64> {
        match self {
            Self::Stainless => Some(0.50),
            Self::Steel | Self::CastIron => Some(0.85),
            Self::Aluminium => Some(0.90),
            Self::Magnesium => Some(1.75),
            Self::Polymer => None,
        }
    }
}
