//! What a sleeve must stand, and how well it must fit.

use super::clamped::needed;
use super::{Case, Governing, Requirement, shoulder, sleeve_weld, worst};
use crate::model::joint::{Joint, Seat, Sleeve};
use crate::strength::column::Curve;
use crate::strength::sleeve::Sleeve as Tube;
use crate::strength::sleeve::stability::column_load;
use crate::strength::sleeve::stress::permissible_force;
use crate::study::check::Sense;
use crate::study::joint::rail_clamp::{SleeveShare, is_loose};
use crate::study::joint::stack::clamped_polymer;
use crate::units::Shown;

pub(super) fn requirements(case: &Case<'_>) -> Vec<Requirement> {
    let Some(sleeve) = &case.joint.sleeve else {
        return Vec::new();
    };
    let tube = Tube {
        outer: sleeve.outer,
        inner: sleeve.inner,
        length: sleeve.length,
    };
    let share = case.rail.and_then(|rail| rail.sleeve);
    // In an open channel nothing but the sleeve holds the flanges apart.
    let force = share.map_or(case.preload.hottest(), |share| share.force);
    let mut found = vec![strength(case, sleeve, &tube, force)];
    found.extend(seat(case, sleeve, force / tube.area()));
    found.extend(share.map(|share| fit(sleeve, &share)));
    found.extend(dowel(case, sleeve));
    found.extend(shoulder::requirement(case, sleeve));
    found.extend(sleeve_weld::requirement(case, sleeve));
    found
}

fn strength(case: &Case<'_>, sleeve: &Sleeve, tube: &Tube, force: f64) -> Requirement {
    let material = &sleeve.material;
    let squash = permissible_force(tube, material.yield_strength);
    let column = column_load(
        tube,
        material.youngs_modulus,
        material.yield_strength,
        Curve::C,
    ) / case.joint.factors.yields;
    Requirement {
        id: "sleeve-stress",
        brief: "force in the sleeve",
        title: "force in the sleeve, tightened most and hottest".to_owned(),
        load: None,
        each: Vec::new(),
        value: force,
        limit: squash.min(column),
        sense: Sense::AtMost,
        unit: Shown::Newton,
        advisory: false,
        basis: "yield strength of the sleeve over 1.1, and buckling (common practice; EN 1993-1-1, from memory)".to_owned(),
        cure: "a larger or thicker sleeve, or a stronger one; a smaller preload",
    }
}

/// Pressure of the sleeve's ends on what they stand on.
fn seat(case: &Case<'_>, sleeve: &Sleeve, pressure: f64) -> Option<Requirement> {
    let (what, limit) = seats(case.model, case.joint, sleeve)
        .into_iter()
        .min_by(|a, b| a.1.total_cmp(&b.1))?;
    Some(Requirement {
        id: "sleeve-seat",
        brief: "pressure of sleeve",
        title: format!("pressure of the sleeve on the {what}"),
        load: None,
        each: Vec::new(),
        value: pressure,
        limit,
        sense: Sense::AtMost,
        unit: Shown::Megapascal,
        advisory: false,
        basis: "pressure that a supported part bears under a head (VDI 2230-1, from memory)"
            .to_owned(),
        cure: "a sleeve with a wider end, or a harder plate",
    })
}

fn seats(model: &crate::model::Model, joint: &Joint, sleeve: &Sleeve) -> Vec<(&'static str, f64)> {
    if sleeve.seat == Seat::Inside {
        let rail = joint
            .base
            .rail()
            .and_then(|base| model.rails.get(base.rail));
        return rail
            .map(|rail| ("walls", rail.material.head_pressure.supported))
            .into_iter()
            .collect();
    }
    let plate = joint.plate.as_ref();
    // A layer of polymer below the foot lies on the end of the sleeve.
    let polymer = clamped_polymer(joint).filter(|_| plate.is_none());
    if let Some(polymer) = polymer {
        return vec![("polymer", polymer.yield_strength)];
    }
    let foot = joint.foot.as_ref();
    let below = plate
        .map(|plate| ("plate", &plate.material))
        .or(foot.map(|foot| ("foot", &foot.material)));
    below
        .map(|(what, material)| (what, material.head_pressure.supported))
        .into_iter()
        .collect()
}

/// A loose sleeve carries the clamp force past the walls, so that the bracket is held on the rail by sleeves in their holes.
fn dowel(case: &Case<'_>, sleeve: &Sleeve) -> Option<Requirement> {
    let rail = case.rail.filter(|_| is_loose(sleeve))?;
    let Governing { load, value, each } =
        worst(case.lasting(), |loaded| needed(case, loaded, 0.0))?;
    Some(Requirement {
        id: "dowel",
        brief: "grip of the rail",
        title: "clamp force that the rail itself needs so as not to slip, past loose sleeves"
            .to_owned(),
        load: Some(load),
        each,
        value,
        limit: rail.gripped,
        sense: Sense::AtMost,
        unit: Shown::Newton,
        advisory: true,
        basis: format!(
            "what the walls take beside the sleeves; beyond it the sleeves are dowels and the bracket shifts by their play, {:.1} mm, until they bear on the walls, which is judged (derived)",
            (sleeve.hole - sleeve.outer) * 1e3
        ),
        cure: "weld the sleeves to the walls, or put them between the walls (`seat = \"inside\"`); as dowels drill their holes close and look for wear",
    })
}

fn fit(sleeve: &Sleeve, share: &SleeveShare) -> Requirement {
    if share.is_proud {
        return Requirement {
            id: "sleeve-gap",
            brief: "sleeve short or proud",
            title: "how far the sleeve stands proud of the rail".to_owned(),
            load: None,
            each: Vec::new(),
            value: -sleeve.gap,
            limit: 0.0,
            sense: Sense::AtMost,
            unit: Shown::Millimetre,
            // Loose and proud it leaves the rail without any clamp force.
            advisory: !is_loose(sleeve),
            basis: "a proud sleeve holds the bracket off the rail: less friction on the wall, none when it is loose and holds all (derived)".to_owned(),
            cure: "file the sleeve flush to slightly short",
        };
    }
    Requirement {
        id: "sleeve-gap",
        brief: "sleeve short or proud",
        title: "how much shorter the sleeve is than the rail".to_owned(),
        load: None,
        each: Vec::new(),
        value: sleeve.gap,
        limit: share.allowed_gap,
        sense: Sense::AtMost,
        unit: Shown::Millimetre,
        // A gap that closes dents the wall; one that stays open leaves the sleeve without work.
        advisory: share.carries,
        basis: "so that the walls do not yield before the sleeve carries, nor take 5 % of the least preload unless plates stand on both (derived)".to_owned(),
        cure: "a longer sleeve: flush to slightly short, faced square",
    }
}
