//! What a joint is bolted to: a rail, or a solid part.
//!
//! `to`, a solid part in place of a rail:
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `to.thickness` | of the part where it is bolted | length | needed |
//! | `to.material` | listed or `[material.NAME]` | name | needed |
//! | `to.coating` | `"bare"`, `"zinc plated"`, `"hot-dip zinc"`, `"painted"`, `"powder coated"`, `"anodised"` | word | `"bare"` |
//! | `to.tapped` | `true`: the bolts are screwed into it; else they go through, with a nut | flag | `false` |
//! | `to.engagement` | length of thread in it, at most its thickness; only when tapped | length | needed when tapped |

use super::Context;
use crate::diagnostic::Code;
use crate::model::material::{Catalogue, Family, Material, Surface, read_surface};
use crate::model::rail::{Profile, Rail, Through, millimetres};
use crate::model::reader::{Bound, Section, quoted};
use crate::units::Quantity;

/// What a joint is bolted to.
#[derive(Debug, Clone, PartialEq)]
pub enum Base {
    /// Through a hollow or open rail.
    Rail(RailBase),
    /// To a part without a hollow.
    Solid(Solid),
}

/// A rail, and how the bolts cross it.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct RailBase {
    /// Which one, as a place in `Model::rails`.
    pub rail: usize,
    /// Which size the bolts cross.
    pub through: Through,
    /// That size, outside \[m\].
    pub depth: f64,
    /// Outside size of the face they enter by, across the rail \[m\].
    pub face_width: f64,
    /// Thickness of the wall \[m\].
    pub wall: f64,
    /// Whether something may be welded to it.
    pub weldable: bool,
    /// What the rail is made of.
    pub family: Family,
    /// What covers it.
    pub surface: Surface,
    /// From the middle of the joint face to the nearest cut end \[m\]; `None` when that is far away.
    pub edge: Option<f64>,
}

/// A solid part.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Solid {
    /// Thickness where it is bolted \[m\].
    pub thickness: f64,
    /// What it is made of.
    pub material: Material,
    /// What covers it.
    pub surface: Surface,
    /// Length of thread in it \[m\], at most `thickness`; `None` when the bolts go through to a nut.
    pub engagement: Option<f64>,
}

impl Base {
    /// The rail, if it is one.
    #[must_use]
    pub fn rail(&self) -> Option<&RailBase> {
        match self {
            Self::Rail(rail) => Some(rail),
            Self::Solid(_) => None,
        }
    }

    /// Material and surface of the face that the bracket or plate lies on.
    #[must_use]
    pub fn face(&self) -> (Family, Surface) {
        match self {
            Self::Rail(rail) => (rail.family, rail.surface),
            Self::Solid(solid) => (solid.material.family, solid.surface),
        }
    }
}

/// Reads `rail` with `through` and `edge`, or `to`.
pub(super) fn read(section: &Section<'_>, context: &Context<'_, '_>) -> Option<Base> {
    if section.has("to") {
        for (key, words) in [
            ("rail", "one joint is bolted to one thing"),
            ("through", "only a rail has a size to cross"),
            ("edge", "only a rail has a cut end"),
        ] {
            if section.has(key) {
                section.refuse(
                    key,
                    Code::Conflict,
                    format!("{} stands beside `to`", section.key_name(key)),
                    format!("take one of them out: {words}"),
                );
                return None;
            }
        }
        let solid = section.judged("to", |inner| read_solid(inner, context.materials));
        return solid.flatten().map(Base::Solid);
    }
    let place = section.reference("rail", context.rail_names);
    let rail = place.and_then(|place| context.rails.get(place)?.as_ref());
    let through = read_through(section, rail);
    let edge = section.quantity("edge", Quantity::Length, Bound::TRAVEL);
    if !section.has("edge") && rail.is_some() {
        section.assume("edge", "the rail goes on far beyond the joint, either way");
    }
    let (rail, through) = (rail?, through?);
    let (depth, face_width) = rail.profile.crossed(through)?;
    if section.has("edge") {
        edge?;
    }
    Some(Base::Rail(RailBase {
        rail: place?,
        through,
        depth,
        face_width,
        wall: rail.wall,
        weldable: rail.weldable,
        family: rail.material.family,
        surface: rail.surface,
        edge,
    }))
}

/// The size of a rail that the bolts cross; that of a round tube goes without saying.
fn read_through(section: &Section<'_>, rail: Option<&Rail>) -> Option<Through> {
    let through = section.choice(
        "through",
        &[
            ("width", Through::Width),
            ("height", Through::Height),
            ("diameter", Through::Diameter),
        ],
    );
    let rail = rail?;
    if !section.has("through") {
        if let Profile::Round { .. } = rail.profile {
            return Some(Through::Diameter);
        }
        section.must_have(&[(
            "through",
            "which size of the rail the bolts cross: \"width\" or \"height\"",
        )]);
        return None;
    }
    let through = through?;
    if let (Profile::Channel { .. }, Through::Width) = (rail.profile, through) {
        section.refuse(
            "through",
            Code::Conflict,
            format!(
                "{} crosses the open side of the channel {}, where nothing holds a nut",
                section.key_name("through"),
                quoted(&rail.name)
            ),
            format!(
                "to bolt through its web alone, take `rail` out and write `to = {{ thickness = \"{}\", material = \"{}\" }}`; \"height\" crosses both flanges",
                millimetres(rail.wall),
                rail.material.name
            ),
        );
        return None;
    }
    if rail.profile.crossed(through).is_none() {
        section.refuse(
            "through",
            Code::Conflict,
            format!(
                "{} is no size of the rail {}",
                section.key_name("through"),
                quoted(&rail.name)
            ),
            "a box or channel has \"width\" and \"height\", a round tube \"diameter\"",
        );
        return None;
    }
    Some(through)
}

/// Reads `spacer`.
pub(super) fn read_spacer(
    section: &Section<'_>,
    base: Option<&Base>,
    context: &Context<'_, '_>,
) -> Option<bool> {
    if !section.has("spacer") {
        return Some(false);
    }
    let spacer = section.flag("spacer")?;
    let rail = base?
        .rail()
        .and_then(|base| context.rails.get(base.rail)?.as_ref());
    let is_channel = rail.is_some_and(|rail| matches!(rail.profile, Profile::Channel { .. }));
    if spacer && !is_channel {
        section.refuse(
            "spacer",
            Code::Conflict,
            format!("{} is for an open channel", section.key_name("spacer")),
            "nothing else has flanges to keep apart; a hollow rail takes a `sleeve`",
        );
        return None;
    }
    Some(spacer)
}

fn read_solid(section: Section<'_>, materials: &Catalogue<'_>) -> Option<Solid> {
    section.must_have(&[
        ("thickness", "where it is bolted, such as \"20 mm\""),
        ("material", "what it is made of, such as \"S355\""),
    ]);
    let thickness = section.quantity("thickness", Quantity::Length, Bound::SIZE);
    let material = materials.pick(&section, thickness);
    let surface = read_surface(&section);
    let tapped = match section.has("tapped") {
        true => section.flag("tapped"),
        false => Some(false),
    };
    let engagement = section.quantity("engagement", Quantity::Length, Bound::SIZE);
    match tapped {
        Some(true) => section.must_have(&[(
            "engagement",
            "length of thread in the part, such as \"18 mm\"",
        )]),
        Some(false) if section.has("engagement") => section.refuse(
            "engagement",
            Code::NeedsOther,
            format!("{} needs `tapped = true`", section.key_name("engagement")),
            "add `tapped = true`, or take it out when the bolts go through to a nut",
        ),
        _ => {}
    }
    if let (Some(engaged), Some(thickness)) = (engagement, thickness)
        && engaged > thickness
    {
        section.refuse(
            "engagement",
            Code::OutOfRange,
            format!(
                "{} is above the thickness of the part, {}: {}",
                section.key_name("engagement"),
                millimetres(thickness),
                millimetres(engaged)
            ),
            "only thread that is in the part holds",
        );
    }
    section.finish();
    Some(Solid {
        thickness: thickness?,
        material: material?,
        surface: surface?,
        engagement: if tapped? { Some(engagement?) } else { None },
    })
}
