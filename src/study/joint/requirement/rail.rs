//! What a hollow rail must stand: the clamp force on its walls, and the reaction of the mount itself.

use super::{Case, Requirement, worst};
use crate::strength::rail::couple::under_plate;
use crate::study::check::Sense;
use crate::study::joint::sharing::half_sizes;
use crate::units::Shown;

pub(super) fn requirements(case: &Case<'_>) -> Vec<Requirement> {
    let Some(rail) = case.rail else {
        return Vec::new();
    };
    let reserve = case.joint.factors.yields;
    let sleeved = rail.sleeve.is_some();
    let cure = "a sleeve around each bolt between the walls, or a plate on both faces; a smaller preload";
    let mut found = vec![Requirement {
        id: "wall-yield",
        title: if sleeved {
            "clamp force that the walls take before the sleeve carries"
        } else {
            "clamp force on the walls of the hollow rail, no sleeve"
        }
        .to_owned(),
        load: None,
        value: rail.sleeve.map_or(rail.walls, |share| share.gap_force),
        limit: rail.first_yield / reserve,
        sense: Sense::AtMost,
        unit: Shown::Newton,
        advisory: sleeved,
        basis: format!(
            "first yield of the squeezed section over {reserve}, {:.0} mm of rail working (derived; length fitted to shell calculations)",
            rail.effective_length * 1e3
        ),
        cure: if sleeved {
            "a sleeve that is flush to slightly short"
        } else {
            cure
        },
    }];
    if !sleeved {
        let collapse = [rail.face.map(|one_face| 2.0 * one_face), Some(rail.plastic)]
            .into_iter()
            .flatten()
            .fold(f64::INFINITY, f64::min);
        found.push(crushed(case, "wall-collapse", "folds", collapse, "8 plastic moments over the width of the face, and the face mechanism (EN 1993-1-8 table 7.11, from memory; derived)", cure));
        found.push(crushed(case, "punching", "is punched", rail.punching, "punching shear 0.6 π d t f_u over 1.25 (EN 1993-1-8 table 3.4, from memory)", cure));
        if let Some(side) = rail.side_walls {
            found.push(crushed(case, "side-walls", "has its side walls crushed", side, "both side walls, buckling included (EN 1993-1-8 table 7.11, from memory)", cure));
        }
    }
    found.extend(local_push(case));
    found
}

fn crushed(
    case: &Case<'_>,
    id: &'static str,
    how: &str,
    strength: f64,
    basis: &str,
    cure: &'static str,
) -> Requirement {
    Requirement {
        id,
        title: format!("clamp force against that at which the rail {how}"),
        load: None,
        value: case.preload.hottest(),
        limit: strength / 1.25,
        sense: Sense::AtMost,
        unit: Shown::Newton,
        advisory: false,
        basis: basis.to_owned(),
        cure,
    }
}

/// The mount reaction as a push on the near face, its moments as couples over the plate.
fn local_push(case: &Case<'_>) -> Option<Requirement> {
    let rail = case.rail?;
    let one_face = rail.face?;
    // With sleeves through the rail the moment is held by both faces and the push goes down the sleeves.
    let shared = if rail.sleeve.is_some() { 2.0 } else { 1.0 };
    let [half_length, half_width] = half_sizes(case.joint);
    let (load, value) = worst(case.lasting(), |loaded| {
        let push = -loaded.wrench.force.z;
        let along = under_plate(push, loaded.wrench.moment.y, 2.0 * half_length).pressed;
        let across = under_plate(push, loaded.wrench.moment.x, 2.0 * half_width).pressed;
        along.max(across).max(0.0)
    })?;
    Some(Requirement {
        id: "local-push",
        title: "mount reaction and its moment, as a push of one end of the foot on the wall".to_owned(),
        load: Some(load),
        value,
        limit: shared * one_face / case.joint.factors.yields,
        sense: Sense::AtMost,
        unit: Shown::Newton,
        advisory: false,
        basis: format!(
            "face mechanism of the wall {} (EN 1993-1-8 table 7.11, from memory) over {}; a couple over two thirds of the plate (derived)",
            if shared > 1.0 { "at both faces, which the sleeves join" } else { "at one face" },
            case.joint.factors.yields
        ),
        cure: "a longer and wider plate, sleeves, a plate on both faces, a mount nearer to the rail",
    })
}
