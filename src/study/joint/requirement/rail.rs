//! What a hollow rail must stand: the clamp force on its walls, and the reaction of the mount itself.

use super::sleeve_weld::WALLS;
use super::weld::beside;
use super::{Case, Governing, Requirement, round_rail, worst};
use crate::model::joint::{Joint, Plate};
use crate::model::material::Material;
use crate::model::rail::Profile;
use crate::spatial::Wrench;
use crate::strength::bolt::resistance::SAFETY;
use crate::strength::column::Curve;
use crate::strength::rail::couple::under_plate;
use crate::strength::rail::face::{self, LOOSE_WASHER};
use crate::strength::rail::punching;
use crate::strength::rail::side_wall::{self, Loading};
use crate::strength::rail::{BoxRail, Patch};
use crate::study::check::Sense;
use crate::study::joint::LoadedJoint;
use crate::study::joint::rail_clamp::{
    RailClamp, beam, box_rail, far_hold, far_plate, left_at_end, stands_on_side_walls, to_cut_end,
    wall_hole,
};
use crate::study::joint::sharing::half_sizes;
use crate::units::Shown;

const HELPED: &str =
    "a sleeve around each bolt between the walls, or a plate on both faces; a smaller preload";

/// Nothing but a block or sleeves keeps the flanges of an open channel apart.
fn spacer(case: &Case<'_>) -> Option<Requirement> {
    let joint = case.joint;
    let rail = case.model.rails.get(joint.base.rail()?.rail)?;
    let is_open = matches!(rail.profile, Profile::Channel { .. });
    let is_filled = joint.spacer || joint.sleeve.is_some();
    (is_open && !is_filled).then(|| Requirement {
        id: "spacer",
        brief: "nothing in channel",
        title: "clamp force on the open channel, whose flanges nothing keeps apart".to_owned(),
        load: None,
        each: Vec::new(),
        value: case.preload.most,
        limit: 0.0,
        sense: Sense::AtMost,
        unit: Shown::Newton,
        advisory: false,
        basis: "an open channel folds under its bolts; every other line is computed as if a rigid block filled it (derived)".to_owned(),
        cure: "a spacer block between the flanges (`spacer = true`), or a sleeve around each bolt",
    })
}

pub(super) fn requirements(case: &Case<'_>) -> Vec<Requirement> {
    if let Some(spacer) = spacer(case) {
        return vec![spacer];
    }
    let (Some(rail), Some(base)) = (case.rail, case.joint.base.rail()) else {
        return Vec::new();
    };
    let Some(material) = case.model.rails.get(base.rail).map(|rail| &rail.material) else {
        return Vec::new();
    };
    let hollow = box_rail(case.joint).filter(|_| rail.face.is_some());
    let mut found = vec![wall_yield(case, rail)];
    found.extend(collapse(case, rail));
    found.extend(hollow.and_then(|hollow| plate_bending(case, rail, &hollow)));
    found.extend(
        hollow
            .iter()
            .flat_map(|hollow| local_loads(case, rail, hollow, material)),
    );
    found.extend(round_rail::requirements(case, rail, material));
    found.extend(pull_through(case, hollow.as_ref(), material));
    found
}

fn wall_yield(case: &Case<'_>, rail: &RailClamp) -> Requirement {
    let reserve = case.joint.factors.yields;
    let sleeve = rail.sleeve.filter(|share| share.carries);
    let range = if rail.is_within_range {
        ""
    } else {
        "; outside the sizes it was fitted to"
    };
    Requirement {
        id: "wall-yield",
        brief: "bending of the wall",
        title: match sleeve {
            Some(_) => "force that bends the worse wall, sleeve beside it",
            None => "force that bends the worse wall of the hollow rail, nothing beside it",
        }
        .to_owned(),
        load: None,
        each: Vec::new(),
        value: rail.face_share * rail.walls,
        limit: rail.first_yield / reserve,
        sense: Sense::AtMost,
        unit: Shown::Newton,
        // With a sleeve the wall is dented by the gap at most.
        advisory: sleeve.is_some(),
        basis: format!(
            "first yield of the squeezed section over {reserve}, {:.0} mm of rail working (derived; length fitted to shell calculations{range})",
            rail.effective_length * 1e3
        ),
        cure: if sleeve.is_some() {
            "a sleeve that is flush to slightly short"
        } else {
            HELPED
        },
    }
}

/// What the clamp force does to a rail that has no sleeve, beyond the first yield.
fn collapse(case: &Case<'_>, rail: &RailClamp) -> Vec<Requirement> {
    let reserve = case.joint.factors.yields;
    let crushed =
        |[id, brief]: [&'static str; 2], how: &str, value: f64, limit: f64, basis: String| {
            Requirement {
                id,
                brief,
                title: format!("clamp force against that at which the rail {how}"),
                load: None,
                each: Vec::new(),
                value,
                limit,
                sense: Sense::AtMost,
                unit: Shown::Newton,
                advisory: false,
                basis,
                cure: HELPED,
            }
        };
    let on_face = rail.face_share * rail.walls;
    let fold = rail.folds();
    let mut found = vec![
        crushed(
            ["wall-collapse", "folding of the rail"],
            "folds",
            on_face,
            fold / reserve,
            format!(
                "hinges of the section, and of the face of a box (derived; EN 1993-1-8, table 7.11, from memory), over {reserve}"
            ),
        ),
        crushed(
            ["punching", "punching of the rail"],
            "is punched",
            on_face,
            rail.punching / SAFETY,
            format!("0.6 pi d t f_u over {SAFETY} (EN 1993-1-8, table 3.4, from memory)"),
        ),
    ];
    found.extend(rail.side_walls.map(|strength| {
        crushed(
            ["side-walls", "side walls crushed"],
            "has its side walls crushed",
            rail.walls,
            strength / reserve,
            format!("both side walls, buckling included (EN 1993-1-8, table 7.11, from memory), over {reserve}"),
        )
    }));
    found
}

/// A plate that stands on the side walls bends like a beam as it closes the gap, or carries the bolt.
fn plate_bending(case: &Case<'_>, rail: &RailClamp, hollow: &BoxRail) -> Option<Requirement> {
    let joint = case.joint;
    let plate = joint
        .plate
        .as_ref()
        .filter(|plate| stands_on_side_walls(plate, hollow))?;
    let strip = beam(plate, hollow, joint.pattern.len());
    let on_plate = rail.walls * rail.plate_share?;
    let sleeved = rail.sleeve.is_some_and(|share| share.carries);
    Some(Requirement {
        id: "plate-bending",
        brief: "bending of the plate",
        title: "bending of the plate from side wall to side wall".to_owned(),
        load: None,
        each: Vec::new(),
        value: strip.stress(on_plate),
        limit: plate.material.yield_strength / joint.factors.yields,
        sense: Sense::AtMost,
        unit: Shown::Megapascal,
        advisory: sleeved,
        basis: format!(
            "yield strength of the plate over {}; a beam that rests on the side walls, beside the face (derived)",
            joint.factors.yields
        ),
        cure: if sleeved {
            "a sleeve that is flush to slightly short"
        } else {
            HELPED
        },
    })
}

/// Whether sleeves join both walls, so that they share a load on one: only what is welded to both does.
pub(super) fn joins_walls(joint: &Joint, rail: &RailClamp) -> bool {
    let welded = joint.sleeve.as_ref().is_some_and(|one| one.weld.is_some());
    welded && rail.sleeve.is_some_and(|share| share.carries)
}

/// The mount reaction and its moments as a load on one end of what bears on the face, along the rail and across it.
fn local_loads(
    case: &Case<'_>,
    rail: &RailClamp,
    hollow: &BoxRail,
    material: &Material,
) -> Vec<Requirement> {
    let [length, width] = half_sizes(case.joint).map(|half| 2.0 * half);
    let width = width.min(hollow.face);
    let (faces, words) = if joins_walls(case.joint, rail) {
        (2.0, "both faces, which the welded sleeves join")
    } else {
        (1.0, "one face")
    };
    let reserve = case.joint.factors.yields;
    let one_way = |[id, brief]: [&'static str; 2],
                   way: &str,
                   size: f64,
                   patch: [f64; 2],
                   moment: fn(&Wrench) -> f64| {
        let Governing { load, value, each } = worst(case.lasting(), |loaded| {
            under_plate(loaded.wrench.force.z.abs(), moment(&loaded.wrench), size).pressed
        })?;
        let push = push_strength(case.joint, hollow, material, patch);
        Some(Requirement {
            id,
            brief,
            title: format!(
                "mount reaction and its moment {way} the rail, as a load of one end of the foot on the wall"
            ),
            load: Some(load),
            each,
            value,
            limit: faces * push.force / reserve,
            sense: Sense::AtMost,
            unit: Shown::Newton,
            advisory: false,
            basis: format!(
                "face mechanism or side walls, {words} (EN 1993-1-8, table 7.11, from memory{}), over {reserve}; a couple over two thirds of the foot (derived); stress along the rail not counted",
                push.range
            ),
            cure: "a longer and wider plate, sleeves, a plate on both faces, a mount nearer to the rail",
        })
    };
    let along = one_way(
        ["local-along", "foot along the rail"],
        "along",
        length,
        [length / 3.0, width],
        |w| w.moment.y,
    );
    let across = one_way(
        ["local-across", "foot across the rail"],
        "across",
        width,
        [length, width / 3.0],
        |w| w.moment.x,
    );
    [along, across].into_iter().flatten().collect()
}

/// Push that one face bears, and what lies outside the range of its formula, in words.
struct Push {
    force: f64,
    range: &'static str,
}

/// Push that one face bears on a patch of this length and width: the face, or the side walls under a plate that stands on them.
///
/// Near a cut end the face keeps the share of its strength that it keeps of its stiffness: our
/// own reasoning, no source. Where it is welded it is as weak as beside a weld.
fn push_strength(
    joint: &Joint,
    hollow: &BoxRail,
    material: &Material,
    [length, width]: [f64; 2],
) -> Push {
    let stands = |plate: &Plate| {
        width >= hollow.face - 2.0 * hollow.wall && stands_on_side_walls(plate, hollow)
    };
    let is_welded =
        joint.weld.is_some() || joint.sleeve.as_ref().is_some_and(|one| one.weld.is_some());
    let [yields, _] = match is_welded {
        true => beside(material),
        false => [material.yield_strength, material.tensile_strength],
    };
    let end = joint.base.rail().and_then(|rail| rail.edge).map(|edge| {
        let [half_length, _] = half_sizes(joint);
        edge - (half_length - length / 2.0)
    });
    let kept = end.map_or(1.0, |end| left_at_end(hollow, end));
    if joint.plate.as_ref().is_some_and(stands) {
        let force = side_wall::strength(
            hollow,
            length,
            material.youngs_modulus,
            yields,
            Loading::PushOneFace,
            Curve::C,
        );
        return Push {
            force: force * kept,
            range: "",
        };
    }
    let found = face::strength(hollow, &Patch { length, width }, yields, 1.0);
    Push {
        force: found.force * kept,
        range: if found.outside.is_empty() {
            ""
        } else {
            "; outside the sizes it was made for"
        },
    }
}

/// What holds the bolts when they are pulled out of the rail: the nut, its washer or a flange on the far wall; a sleeve that is welded in holds on both walls.
fn pull_through(
    case: &Case<'_>,
    hollow: Option<&BoxRail>,
    material: &Material,
) -> Option<Requirement> {
    let joint = case.joint;
    let base = joint.base.rail()?;
    if far_plate(joint).is_some() {
        return None;
    }
    let welded = joint.sleeve.as_ref().filter(|sleeve| sleeve.weld.is_some());
    let hole = wall_hole(joint);
    let (held, on, walls, [yields, tears]) = match welded {
        Some(sleeve) => (
            sleeve.outer,
            "the weld of a sleeve on both walls".to_owned(),
            WALLS,
            beside(material),
        ),
        None => (
            far_hold(joint),
            format!("the far wall with a hole of {:.1} mm", hole * 1e3),
            1.0,
            [material.yield_strength, material.tensile_strength],
        ),
    };
    let goes_through = welded.is_none() && held <= hole;
    let limit = if goes_through {
        0.0
    } else {
        let punched = punching::round(held, base.wall, tears) / SAFETY;
        let patch = Patch {
            length: held,
            width: held.min(base.face_width),
        };
        let folded = hollow.map_or(f64::INFINITY, |hollow| {
            face::strength(hollow, &patch, yields, LOOSE_WASHER).force / joint.factors.yields
        });
        let end = to_cut_end(joint).zip(hollow);
        let kept = end.map_or(1.0, |(end, hollow)| left_at_end(hollow, end));
        walls * punched.min(folded * kept)
    };
    let Governing { load, value, each } = worst(case.lasting(), LoadedJoint::most_pulled)?;
    Some(Requirement {
        id: "pull-through",
        brief: "pull on far wall",
        title: match welded {
            Some(_) => "pull of a bolt on the walls around its welded sleeve",
            None => "pull of a bolt on the far wall of the rail",
        }
        .to_owned(),
        load: Some(load),
        each,
        value: value.max(0.0),
        limit,
        sense: Sense::AtMost,
        unit: Shown::Newton,
        advisory: false,
        basis: if goes_through {
            format!(
                "the nut passes through the hole of {:.1} mm: nothing bears on the wall",
                hole * 1e3
            )
        } else {
            format!(
                "punching over {SAFETY} and face mechanism over {}, {:.1} mm wide, {on} (EN 1993-1-8, tables 3.4 and 7.11, from memory)",
                joint.factors.yields,
                held * 1e3,
            )
        },
        cure: "a plate on both faces, a wide washer, a sleeve with a shoulder on the far wall",
    })
}
