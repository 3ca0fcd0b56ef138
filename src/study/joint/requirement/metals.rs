//! Metals that touch: which of them the wet eats.

use super::{Case, Requirement};
use crate::model::joint::Environment;
use crate::model::material::{Family, Surface};
use crate::strength::galvanic::{Advice, Exposure, Side, judge};
use crate::study::check::Sense;
use crate::units::Shown;

/// One touching side: what it is, its index, whether its cover is there to be spent, and its wetted area \[m²\].
struct Touching {
    name: String,
    side: Side,
    area: f64,
    insulated: bool,
}

pub(super) fn requirements(case: &Case<'_>) -> Vec<Requirement> {
    let exposure = match case.joint.environment {
        Environment::Dry => Exposure::Controlled,
        Environment::Damp => Exposure::Normal,
        Environment::RoadSalt => Exposure::Harsh,
    };
    let sides = sides(case);
    let mut worst: Option<(String, crate::strength::galvanic::Pair, bool)> = None;
    for (place, one) in sides.iter().enumerate() {
        for other in sides.iter().skip(place + 1) {
            let pair = judge([one.side, other.side], [one.area, other.area], exposure);
            let insulated = one.insulated || other.insulated;
            let words = match pair.eaten {
                Some(0) => format!("{} with {}: {} is eaten", one.name, other.name, one.name),
                Some(_) => format!("{} with {}: {} is eaten", one.name, other.name, other.name),
                None => format!("{} with {}", one.name, other.name),
            };
            if worst
                .as_ref()
                .is_none_or(|(_, most, _)| pair.difference > most.difference)
            {
                worst = Some((words, pair, insulated));
            }
        }
    }
    let Some((words, pair, insulated)) = worst else {
        return Vec::new();
    };
    vec![Requirement {
        id: "metals",
        title: format!("potential between touching metals ({words})"),
        load: None,
        value: if insulated { 0.0 } else { pair.difference },
        limit: pair.allowed,
        sense: Sense::AtMost,
        unit: Shown::Number,
        advisory: true,
        basis: "volts of the anodic index that are usual in this environment (MIL-STD-889 style list, from memory): a first look, not a rate".to_owned(),
        cure: match pair.advice {
            Advice::ZincSpent => "expect the zinc to be spent: look at it each year, or coat both",
            Advice::Avoid => "other metals, or coat both and keep the wet out; never coat only the less noble one",
            Advice::Coat | Advice::Fine => "coat both, or the more noble one; sealant in the gap",
        },
    }]
}

fn sides(case: &Case<'_>) -> Vec<Touching> {
    let joint = case.joint;
    let head = joint.stack_area();
    let mut sides = Vec::new();
    let mut push = |name: String, family: Option<f64>, surface: Surface, area: f64| {
        if let Some(index) = surface.anodic_index(family) {
            sides.push(Touching {
                name,
                side: Side {
                    index,
                    is_sacrificial: surface.is_sacrificial(),
                },
                area,
                insulated: surface.insulates(),
            });
        }
    };
    let _ = Family::Steel;
    push(
        format!("bolt {}", joint.bolt.grade.name),
        Some(joint.bolt.grade.metal.anodic_index()),
        joint.bolt.surface,
        head,
    );
    if let Some(foot) = &joint.foot {
        push(format!("foot of {}", foot.material.name), foot.material.anodic_index, foot.surface, 10.0 * head);
    }
    if let Some(plate) = &joint.plate {
        push(format!("plate of {}", plate.material.name), plate.material.anodic_index, plate.surface, plate.length * plate.width);
    }
    sides
}
