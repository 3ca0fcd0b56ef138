//! Metals that touch: which of them the wet eats.

use std::f64::consts::PI;

use super::{Case, Requirement};
use crate::model::fastener::Metal;
use crate::model::joint::{Base, Environment};
use crate::model::material::{Family, Surface};
use crate::strength::galvanic::{Advice, Exposure, Pair, Side, judge};
use crate::study::check::Sense;
use crate::study::joint::sharing::half_sizes;
use crate::units::Shown;

/// One of the parts that the bolt joins electrically.
struct Part {
    name: &'static str,
    side: Side,
    /// Index of the metal below the surface \[V\].
    own: f64,
    /// Wetted area \[m²\].
    area: f64,
    insulated: bool,
}

/// The worst pair of all that touch, or are joined by the bolt.
pub(super) fn requirements(case: &Case<'_>) -> Option<Requirement> {
    let exposure = match case.joint.environment {
        Environment::Dry => Exposure::Controlled,
        Environment::Damp => Exposure::Normal,
        Environment::RoadSalt => Exposure::Harsh,
    };
    let parts = parts(case);
    let pairs = parts.iter().enumerate().flat_map(|(place, one)| {
        parts
            .iter()
            .skip(place + 1)
            .filter_map(move |other| judged(one, other, exposure))
    });
    let (words, pair) = pairs.max_by(|a, b| a.1.difference.total_cmp(&b.1.difference))?;
    Some(Requirement {
        id: "metals",
        title: format!("potential in V between {words}"),
        load: None,
        each: Vec::new(),
        value: pair.difference,
        limit: pair.allowed,
        sense: Sense::AtMost,
        unit: Shown::Number,
        advisory: true,
        basis: format!(
            "anodic indices and what is usual in this environment (MIL-STD-889 style list, from memory): a first look, not a rate; nobler over other area {:.1}",
            pair.area_ratio
        ),
        cure: match pair.advice {
            Advice::ZincSpent => "expect the zinc to be spent: look at it each year, or coat both",
            Advice::Avoid => {
                "other metals, or coat both and keep the wet out; never coat only the less noble one"
            }
            Advice::Coat | Advice::Fine => "coat both, or the nobler one; sealant in the gap",
        },
    })
}

/// A pair that counts: not one whose nobler side is coated, nor zinc on the iron it is there for.
fn judged(one: &Part, other: &Part, exposure: Exposure) -> Option<(String, Pair)> {
    let pair = judge([one.side, other.side], [one.area, other.area], exposure);
    let Some(eaten) = pair.eaten else {
        return Some((format!("{} and {}", one.name, other.name), pair));
    };
    let (loser, nobler) = if eaten == 0 {
        (one, other)
    } else {
        (other, one)
    };
    let protects = loser.side.is_sacrificial && Some(nobler.own) == Family::Steel.anodic_index();
    (!nobler.insulated && !protects).then(|| {
        let words = format!(
            "{} and {}: the {} is eaten",
            loser.name, nobler.name, loser.name
        );
        (words, pair)
    })
}

fn parts(case: &Case<'_>) -> Vec<Part> {
    let joint = case.joint;
    let [half_length, half_width] = half_sizes(joint);
    let outline = 4.0 * half_length * half_width;
    let bolts = joint.pattern.len() as f64;
    let mut parts = Vec::new();
    let mut part = |name, own: Option<f64>, surface: Surface, area: f64| {
        if let Some((own, index)) = own.zip(surface.anodic_index(own)) {
            parts.push(Part {
                name,
                side: Side {
                    index,
                    is_sacrificial: surface.is_sacrificial(),
                },
                own,
                area,
                insulated: surface.insulates(),
            });
        }
    };
    let bolt = match joint.bolt.grade.metal {
        Metal::Steel => Family::Steel,
        Metal::Stainless => Family::Stainless,
    };
    let heads = 2.0 * bolts * PI / 4.0 * joint.bolt.thread.flats.powi(2);
    part("bolt", bolt.anodic_index(), joint.bolt.surface, heads);
    if let Some(foot) = &joint.foot {
        part("foot", foot.material.anodic_index, foot.surface, outline);
    }
    if let Some(plate) = &joint.plate {
        let area = plate.length * plate.width;
        part("plate", plate.material.anodic_index, plate.surface, area);
    }
    if let Some(sleeve) = &joint.sleeve {
        let area = bolts * PI * sleeve.outer * sleeve.length;
        part("sleeve", sleeve.material.anodic_index, Surface::Bare, area);
    }
    match &joint.base {
        Base::Rail(base) => {
            let rail = case.model.rails.get(base.rail);
            let index = rail.and_then(|rail| rail.material.anodic_index);
            part("rail", index, base.surface, 2.0 * outline);
        }
        Base::Solid(solid) => part(
            "part",
            solid.material.anodic_index,
            solid.surface,
            2.0 * outline,
        ),
    }
    parts
}
