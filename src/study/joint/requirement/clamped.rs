//! What is clamped: the faces that must not slip, what lies under the heads, sleeve, plate and weld.

use super::bolt::ring;
use super::{Case, Requirement, worst};
use crate::model::joint::{Base, PolymerRole, Weld, WeldRun};
use crate::model::load::LoadClass;
use crate::model::material::HeatAffected;
use crate::spatial::Wrench;
use crate::strength::bolt::resistance::SAFETY;
use crate::strength::column::Curve;
use crate::strength::plate::bearing::{self, Hole};
use crate::strength::sleeve::Sleeve as Tube;
use crate::strength::sleeve::stability::column_load;
use crate::strength::sleeve::stress::permissible_force;
use crate::strength::weld::strength as weld_strength;
use crate::strength::weld::{WeldGroup, shapes};
use crate::study::check::Sense;
use crate::study::joint::sharing::half_sizes;
use crate::units::Shown;

pub(super) fn requirements(case: &Case<'_>) -> Vec<Requirement> {
    let mut found = Vec::new();
    found.extend(slip(case));
    found.push(head_pressure(case));
    found.extend(polymer(case));
    found.extend(sleeve(case));
    found.extend(plate_bearing(case));
    found.extend(weld(case));
    found
}

/// Shear over what friction could hold, at the worst bolt, as the friction coefficient that is needed.
fn slip(case: &Case<'_>) -> Option<Requirement> {
    let needed = |loaded: &super::LoadedJoint| {
        let reserve = match case.class(loaded) {
            Some(LoadClass::Extreme) => 1.0,
            _ => case.joint.factors.slip,
        };
        reserve * loaded.slip_demand(|pull| case.clamp_left(pull))
    };
    let (load, value) = worst(case.lasting(), needed)?;
    Some(Requirement {
        id: "slip",
        title: "friction that the faces need so as not to slip, reserve included".to_owned(),
        load: Some(load),
        value,
        limit: case.joint.slip_friction,
        sense: Sense::AtMost,
        unit: Shown::Number,
        advisory: false,
        basis: "`slip_friction` of the joint: the low end for its materials and coatings".to_owned(),
        cure: "more clamp force, bare or blasted faces, bolts further apart, dowels that take the shear",
    })
}

/// Pressure under the head, on what it really presses.
fn head_pressure(case: &Case<'_>) -> Requirement {
    let joint = case.joint;
    let inner = joint.bolt.hole;
    let (material, is_bare) = match (&joint.foot, &joint.plate, &joint.base) {
        (Some(foot), _, _) => (&foot.material, false),
        (None, Some(plate), _) => (&plate.material, false),
        (None, None, Base::Solid(solid)) => (&solid.material, false),
        (None, None, Base::Rail(base)) => match case.model.rails.get(base.rail) {
            Some(rail) => (&rail.material, joint.sleeve.is_none()),
            None => return nothing("head-pressure"),
        },
    };
    // At the far side the nut presses on the wall itself when no plate is there.
    let far = match &joint.base {
        Base::Rail(base) if joint.plate.as_ref().is_none_or(|plate| !plate.both_sides) => {
            case.model.rails.get(base.rail).map(|rail| (&rail.material, joint.sleeve.is_none()))
        }
        _ => None,
    };
    let limit_of = |(material, is_bare): (&crate::model::material::Material, bool)| {
        if is_bare {
            material.head_pressure.bare
        } else {
            material.head_pressure.supported
        }
    };
    let near = limit_of((material, is_bare));
    let limit = far.map_or(near, |far| limit_of(far).min(near));
    Requirement {
        id: "head-pressure",
        title: "pressure under head and nut, tightened most".to_owned(),
        load: None,
        value: case.preload.hottest() / ring(case.stack.bearing, inner),
        limit,
        sense: Sense::AtMost,
        unit: Shown::Megapascal,
        advisory: false,
        basis: "pressure that the material bears: the lower list on a bare wall, the higher over a sleeve or a thick part (VDI 2230-1, from memory)".to_owned(),
        cure: "a hard washer or a flange head, a plate, a smaller preload",
    }
}

/// Stands for a requirement of a thing that is not in the model, which no checked model has; it is dropped.
fn nothing(id: &'static str) -> Requirement {
    Requirement {
        id,
        title: String::new(),
        load: None,
        value: 0.0,
        limit: 0.0,
        sense: Sense::AtMost,
        unit: Shown::Number,
        advisory: true,
        basis: String::new(),
        cure: "",
    }
}

fn polymer(case: &Case<'_>) -> Vec<Requirement> {
    let Some(polymer) = &case.joint.polymer else {
        return Vec::new();
    };
    let PolymerRole::Clamped { diameter } = polymer.role else {
        return Vec::new();
    };
    let pressure = case.preload.most / ring(diameter, case.joint.bolt.hole);
    let cure = "no polymer in the way of the clamp force: let it locate only, beside a metal sleeve";
    vec![
        Requirement {
            id: "polymer-pressure",
            title: "pressure on the polymer in the way of the clamp force".to_owned(),
            load: None,
            value: pressure,
            limit: polymer.material.yield_strength,
            sense: Sense::AtMost,
            unit: Shown::Megapascal,
            advisory: false,
            basis: "its short-term strength (common practice): beyond it is squeezed out".to_owned(),
            cure,
        },
        Requirement {
            id: "polymer-creep",
            title: "preload that the polymer leaves after a thousand hours".to_owned(),
            load: None,
            value: case.preload.retained,
            limit: 0.9,
            sense: Sense::AtLeast,
            unit: Shown::Percent,
            advisory: true,
            basis: "a joint that loses more than a tenth of its preload does not stay tight (common practice)".to_owned(),
            cure,
        },
    ]
}

fn sleeve(case: &Case<'_>) -> Vec<Requirement> {
    let (Some(sleeve), Some(share)) = (
        &case.joint.sleeve,
        case.rail.and_then(|rail| rail.sleeve),
    ) else {
        return Vec::new();
    };
    let tube = Tube {
        outer: sleeve.outer,
        inner: sleeve.inner,
        length: sleeve.length,
    };
    let material = &sleeve.material;
    let squash = permissible_force(&tube, material.yield_strength);
    let column = column_load(
        &tube,
        material.youngs_modulus,
        material.yield_strength,
        Curve::C,
    ) / case.joint.factors.yields;
    let mut found = vec![
        Requirement {
            id: "sleeve-stress",
            title: "force in the sleeve, tightened most and hottest".to_owned(),
            load: None,
            value: share.force,
            limit: squash.min(column),
            sense: Sense::AtMost,
            unit: Shown::Newton,
            advisory: false,
            basis: "yield strength of the sleeve over 1.1, and buckling (common practice; EN 1993-1-1, from memory)".to_owned(),
            cure: "a larger or thicker sleeve, or a stronger one",
        },
    ];
    if share.is_proud {
        found.push(Requirement {
            id: "sleeve-gap",
            title: "how far the sleeve stands proud of the rail".to_owned(),
            load: None,
            value: -sleeve.gap,
            limit: 1e-6,
            sense: Sense::AtMost,
            unit: Shown::Millimetre,
            advisory: true,
            basis: "a proud sleeve holds the bracket off the rail: no friction at the wall (derived)".to_owned(),
            cure: "file the sleeve flush to slightly short",
        });
    } else {
        found.push(Requirement {
            id: "sleeve-gap",
            title: "how much shorter the sleeve is than the rail".to_owned(),
            load: None,
            value: sleeve.gap,
            limit: share.allowed_gap,
            sense: Sense::AtMost,
            unit: Shown::Millimetre,
            advisory: true,
            basis: "so that the walls take at most 5 % of the least clamp force and do not yield (derived)".to_owned(),
            cure: "a longer sleeve: flush to slightly short, faced square",
        });
    }
    found
}

/// Bearing of the bolt in the thinnest of what the shear goes through, once the faces have slipped.
fn plate_bearing(case: &Case<'_>) -> Option<Requirement> {
    let joint = case.joint;
    let bolt = &joint.bolt;
    let plies: Vec<(f64, f64, &str)> = joint
        .foot
        .iter()
        .map(|foot| (foot.thickness, foot.material.tensile_strength, "foot"))
        .chain(joint.plate.iter().map(|plate| {
            (
                plate.thickness,
                plate.material.tensile_strength,
                "plate",
            )
        }))
        .collect();
    let (end, edge) = edge_distances(case)?;
    let strength = |(thickness, tensile, name): (f64, f64, &'static str)| {
        let hole = Hole {
            bolt: bolt.thread.nominal,
            hole: bolt.hole,
            thickness,
            end,
            edge,
            pitch: None,
            gauge: None,
        };
        (bearing::strength(&hole, tensile, bolt.limits.tensile) / SAFETY, name)
    };
    let named = plies.into_iter().map(|(thickness, tensile, name)| {
        strength((thickness, tensile, if name == "foot" { "bracket foot" } else { "plate" }))
    });
    let (limit, name) = named.min_by(|a, b| a.0.total_cmp(&b.0))?;
    let (load, value) = worst(case.loads.iter(), |loaded| {
        loaded
            .bolts
            .iter()
            .map(crate::strength::pattern::BoltForce::shear_size)
            .fold(0.0, f64::max)
    })?;
    Some(Requirement {
        id: "bearing",
        title: format!("bolt against the hole of the {name}, once the faces slip"),
        load: Some(load),
        value,
        limit,
        sense: Sense::AtMost,
        unit: Shown::Newton,
        advisory: false,
        basis: format!(
            "EN 1993-1-8, table 3.4 (from memory), safety factor 1.25, {:.0} mm to the end and {:.0} mm to the edge",
            end * 1e3,
            edge * 1e3
        ),
        cure: "a thicker plate, more edge, or larger bolts",
    })
}

/// Smallest distances of a hole from the ends and the edges of the plate; of a foot of unknown size twice the hole.
fn edge_distances(case: &Case<'_>) -> Option<(f64, f64)> {
    let joint = case.joint;
    let usual = 2.0 * joint.bolt.hole;
    if joint.plate.is_none() {
        return Some((usual, usual));
    }
    let [half_length, half_width] = half_sizes(joint);
    let left = |half: f64, axis: usize| {
        joint
            .pattern
            .iter()
            .map(|place| half - place[axis].abs())
            .fold(f64::INFINITY, f64::min)
    };
    Some((
        left(half_length, 0).min(usual),
        left(half_width, 1).min(usual),
    ))
}

fn weld(case: &Case<'_>) -> Option<Requirement> {
    let (weld, plate) = (case.joint.weld.as_ref()?, case.joint.plate.as_ref()?);
    let group = weld_group(weld, plate.length, plate.width)?;
    let stress = |wrench: &Wrench| {
        group
            .stress(weld.throat, wrench)
            .map_or(f64::INFINITY, |found| found.stress)
    };
    let (load, value) = worst(case.loads.iter(), |loaded| stress(&loaded.wrench))?;
    let base = case.joint.base.rail()?;
    let rail = case.model.rails.get(base.rail)?;
    let weaker = if rail.material.tensile_strength < plate.material.tensile_strength {
        &rail.material
    } else {
        &plate.material
    };
    let softened = match weaker.heat_affected {
        HeatAffected::Weaker {
            tensile_strength, ..
        } => tensile_strength,
        _ => weaker.tensile_strength,
    };
    let limit = match weld.filler {
        crate::model::joint::Filler::Matching => weld_strength::steel(
            softened,
            weld_strength::correlation(weaker.yield_strength),
            SAFETY,
        ),
        _ => weld_strength::aluminium(softened, softened, SAFETY).throat,
    };
    Some(Requirement {
        id: "weld",
        title: "weld of the plate to the rail".to_owned(),
        load: Some(load),
        value,
        limit,
        sense: Sense::AtMost,
        unit: Shown::Megapascal,
        advisory: false,
        basis: "EN 1993-1-8 4.5.3.3, EN 1999-1-1 8.6.3 with the strength beside the weld (from memory), safety factor 1.25".to_owned(),
        cure: "a thicker or longer weld, a larger plate; have it made by a qualified welder",
    })
}

/// The run of a weld as lines round the plate.
fn weld_group(weld: &Weld, length: f64, width: f64) -> Option<WeldGroup> {
    match weld.run {
        WeldRun::Around => shapes::rectangle(length, width),
        // Two runs along the rail, each half of the whole.
        WeldRun::Length(run) => shapes::two_horizontals(run / 2.0, width),
    }
}
