//! Coats on the clamped faces, which flow away and take preload with them.

use crate::model::joint::{Base, Joint};
use crate::model::material::Surface;

/// Thickness of a coat that flows away under a clamped face \[m\]: wet paint, baked powder.
///
/// # Source
/// Common practice: usual thicknesses of one coat.
const COATS: [(Surface, f64); 2] = [(Surface::Painted, 50e-6), (Surface::PowderCoated, 80e-6)];

/// Thickness of all coats that flow away from the clamped faces of one bolt \[m\].
pub(super) fn thickness(joint: &Joint) -> f64 {
    faces(joint)
        .into_iter()
        .filter_map(|surface| COATS.iter().find(|(coat, _)| *coat == surface))
        .map(|(_, thickness)| thickness)
        .sum()
}

/// Surfaces that are clamped on each other, both sides of every part.
fn faces(joint: &Joint) -> Vec<Surface> {
    let mut faces = Vec::new();
    let mut part = |surface: Surface, sides: usize| {
        faces.extend(std::iter::repeat_n(surface, sides));
    };
    if let Some(foot) = &joint.foot {
        part(foot.surface, 2);
    }
    if let Some(plate) = &joint.plate {
        // The nuts press on the plate of the far side.
        part(plate.surface, if plate.both_sides { 4 } else { 2 });
    }
    let (_, surface) = joint.base.face();
    let sides = match &joint.base {
        Base::Solid(solid) if solid.engagement.is_some() => 1,
        _ => 2,
    };
    part(surface, sides);
    faces
}
