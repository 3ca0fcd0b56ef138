//! A layer of polymer in a joint, against corrosion or noise.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `polymer.material` | a polymer, listed or `[material.NAME]` | name | needed |
//! | `polymer.thickness` | of the layer | length | needed |
//! | `polymer.in_path` | `true`: the force of the bolt goes through it; `false`: it only keeps parts in place or apart | flag | needed |
//! | `polymer.diameter` | outside, of what is pressed around each bolt; only in the path | length | needed there |

use super::{Bolt, plate};
use crate::diagnostic::Code;
use crate::model::material::{Catalogue, Family, Material};
use crate::model::rail::millimetres;
use crate::model::reader::{Bound, Section, quoted};
use crate::units::Quantity;

/// What a layer of polymer does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum PolymerRole {
    /// It keeps parts in place or apart; the bolt force goes past it.
    Locates,
    /// The bolt force goes through it.
    Clamped {
        /// Outside diameter of what is pressed around each bolt \[m\], above the hole.
        diameter: f64,
    },
}

/// A layer of polymer, checked.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Polymer {
    /// What it is made of; of the family of polymers.
    pub material: Material,
    /// Thickness \[m\].
    pub thickness: f64,
    /// What it does.
    pub role: PolymerRole,
}

/// Reads `polymer`.
pub(super) fn read(
    section: Section<'_>,
    materials: &Catalogue<'_>,
    bolt: Option<&Bolt>,
) -> Option<Polymer> {
    section.must_have(&[
        ("material", "which polymer, such as \"PA66\""),
        ("thickness", "of the layer, such as \"2 mm\""),
        (
            "in_path",
            "`true` when the force of the bolt goes through it, `false` when it goes past it",
        ),
    ]);
    let thickness = section.quantity("thickness", Quantity::Length, plate::THICKNESS);
    let material = materials.pick(&section, thickness);
    if let Some(metal) = material
        .as_ref()
        .filter(|one| one.family != Family::Polymer)
    {
        section.refuse(
            "material",
            Code::Conflict,
            format!(
                "{} is a metal: {}",
                section.key_name("material"),
                quoted(&metal.name)
            ),
            "name a polymer, such as \"PA66\"; a metal layer is a `plate` or a `washer`",
        );
    }
    let in_path = section.flag("in_path");
    let diameter = section.quantity("diameter", Quantity::Length, Bound::SIZE);
    match in_path {
        Some(true) => section.must_have(&[(
            "diameter",
            "outside, of what is pressed around each bolt, such as \"24 mm\"",
        )]),
        Some(false) if section.has("diameter") => section.refuse(
            "diameter",
            Code::NeedsOther,
            format!("{} needs `in_path = true`", section.key_name("diameter")),
            "nothing presses a layer that the bolt force goes past; take it out",
        ),
        _ => {}
    }
    if let (Some(diameter), Some(bolt)) = (diameter, bolt)
        && diameter <= bolt.hole
    {
        section.refuse(
            "diameter",
            Code::OutOfRange,
            format!(
                "{} must be above the hole of the bolt, {}: {}",
                section.key_name("diameter"),
                millimetres(bolt.hole),
                millimetres(diameter)
            ),
            "give the outside diameter of the ring that is pressed",
        );
    }
    section.finish();
    Some(Polymer {
        material: material?,
        thickness: thickness?,
        role: match in_path? {
            true => PolymerRole::Clamped {
                diameter: diameter?,
            },
            false => PolymerRole::Locates,
        },
    })
}
