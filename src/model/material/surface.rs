//! What covers a part: bare metal, zinc, paint.

use super::Family;
use crate::model::reader::Section;

/// What covers a part.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Surface {
    /// Bare metal where the parts meet; paint elsewhere may have been stripped there.
    Bare,
    /// Electroplated zinc.
    ZincPlated,
    /// Zinc from the bath.
    HotDipZinc,
    /// Wet paint.
    Painted,
    /// Baked powder.
    PowderCoated,
    /// Oxide grown on aluminium.
    Anodised,
}

impl Surface {
    /// Words of the file, each with its meaning.
    pub(crate) const WORDS: [(&'static str, Self); 6] = [
        ("bare", Self::Bare),
        ("zinc plated", Self::ZincPlated),
        ("hot-dip zinc", Self::HotDipZinc),
        ("painted", Self::Painted),
        ("powder coated", Self::PowderCoated),
        ("anodised", Self::Anodised),
    ];

    /// What it is called.
    #[must_use]
    pub fn word(self) -> &'static str {
        Self::WORDS
            .iter()
            .find(|(_, surface)| *surface == self)
            .map_or("", |(word, _)| *word)
    }

    /// Potential below gold of what is outermost \[V\]; `base` is that of the metal below.
    ///
    /// Paint and oxide keep the metal from the wet as long as they are whole; where they are not,
    /// the metal below counts, so its own index is given.
    ///
    /// # Source
    /// Zinc: anodic index of MIL-STD-889 and of the lists made after MIL-F-14072 (from memory).
    #[must_use]
    pub fn anodic_index(self, base: Option<f64>) -> Option<f64> {
        match self {
            Self::ZincPlated => Some(1.25),
            Self::HotDipZinc => Some(1.20),
            Self::Bare | Self::Painted | Self::PowderCoated | Self::Anodised => base,
        }
    }

    /// Whether it is zinc, which is meant to be eaten in place of the metal below.
    #[must_use]
    pub fn is_sacrificial(self) -> bool {
        matches!(self, Self::ZincPlated | Self::HotDipZinc)
    }

    /// Whether it keeps the metal from the wet.
    #[must_use]
    pub fn insulates(self) -> bool {
        matches!(self, Self::Painted | Self::PowderCoated | Self::Anodised)
    }

    /// Whether it creeps under a bolt, so that its thickness is lost from the clamped length.
    #[must_use]
    pub fn creeps(self) -> bool {
        matches!(self, Self::Painted | Self::PowderCoated)
    }

    /// Lowest usual friction coefficient of a face of this material and surface on its like.
    ///
    /// # Source
    /// Common practice, the low end of what is found: untreated steel 0.15, untreated aluminium
    /// 0.12. For zinc, paint, powder and oxide no dependable number was found: 0.10.
    #[must_use]
    pub fn slip_friction(self, family: Family) -> f64 {
        match (self, family) {
            (Self::Bare, Family::Steel | Family::Stainless | Family::CastIron) => 0.15,
            (Self::Bare, Family::Aluminium | Family::Magnesium) => 0.12,
            _ => 0.10,
        }
    }
}

/// Reads `coating`; bare when it is absent, which is told.
pub(in crate::model) fn read_surface(section: &Section<'_>) -> Option<Surface> {
    if section.has("coating") {
        return section.choice("coating", &Surface::WORDS);
    }
    section.assume("coating", "bare metal where the parts meet");
    Some(Surface::Bare)
}
