//! Metals of a joint that touch or are joined by its bolts: which of each two the wet eats, and what to do about it.

use std::f64::consts::PI;

use super::sharing::half_sizes;
use crate::model::Model;
use crate::model::fastener::Metal;
use crate::model::joint::{Base, Environment, Joint};
use crate::model::material::{Family, Surface};
use crate::strength::galvanic::{Exposure, Pair, Side, judge};

/// Two parts of a joint that conduct to each other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MetalPair {
    /// What they are called.
    pub parts: [&'static str; 2],
    /// Anodic index of what is outermost of each: volts below gold, larger for less noble \[V\].
    pub indices: [f64; 2],
    /// What comes of it; its places are those of `parts`.
    pub pair: Pair,
    /// Why nothing is to be done even where the difference is large; `None` where it counts.
    pub excuse: Option<Excuse>,
}

/// Why a pair does not count.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Excuse {
    /// The nobler part is coated: without a wet face of it no current flows.
    NoblerCoated,
    /// The less noble one is zinc on iron, which it is there to be eaten for.
    ZincOnSteel,
}

impl Excuse {
    /// Word for people and for the results document.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::NoblerCoated => "nobler side coated",
            Self::ZincOnSteel => "zinc protects steel",
        }
    }
}

impl MetalPair {
    /// The part that is eaten and the nobler one; `None` when they are alike.
    #[must_use]
    pub fn eaten_and_nobler(&self) -> Option<[&'static str; 2]> {
        let [first, second] = self.parts;
        match self.pair.eaten? {
            0 => Some([first, second]),
            _ => Some([second, first]),
        }
    }

    /// Whether something has to be done about it.
    #[must_use]
    pub fn counts(&self) -> bool {
        self.excuse.is_none()
    }
}

/// One of the parts that the bolts join electrically.
struct Part {
    name: &'static str,
    side: Side,
    /// Index of the metal below the surface \[V\].
    own: f64,
    /// Wetted area \[m²\].
    area: f64,
    insulated: bool,
}

/// Every two parts of a joint: those that do not lie on each other are joined by the bolts.
#[must_use]
pub(super) fn pairs(model: &Model, joint: &Joint) -> Vec<MetalPair> {
    let exposure = match joint.environment {
        Environment::Dry => Exposure::Controlled,
        Environment::Damp => Exposure::Normal,
        Environment::RoadSalt => Exposure::Harsh,
    };
    let parts = parts(model, joint);
    parts
        .iter()
        .enumerate()
        .flat_map(|(place, one)| {
            let others = parts.iter().skip(place + 1);
            others.map(move |other| judged(one, other, exposure))
        })
        .collect()
}

fn judged(one: &Part, other: &Part, exposure: Exposure) -> MetalPair {
    let pair = judge([one.side, other.side], [one.area, other.area], exposure);
    let excuse = pair.eaten.and_then(|eaten| {
        let (loser, nobler) = if eaten == 0 {
            (one, other)
        } else {
            (other, one)
        };
        let is_iron = Some(nobler.own) == Family::Steel.anodic_index();
        if loser.side.is_sacrificial && is_iron {
            Some(Excuse::ZincOnSteel)
        } else {
            nobler.insulated.then_some(Excuse::NoblerCoated)
        }
    });
    MetalPair {
        parts: [one.name, other.name],
        indices: [one.side.index, other.side.index],
        pair,
        excuse,
    }
}

fn parts(model: &Model, joint: &Joint) -> Vec<Part> {
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
            let rail = model.rails.get(base.rail);
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
