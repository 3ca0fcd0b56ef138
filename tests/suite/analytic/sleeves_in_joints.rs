//! Flanges, welds and holes of sleeves in the joints of a build, settling and metals that touch.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use bedplate::model::Model;
use bedplate::report::content::joints::tightening::lines;
use bedplate::strength::galvanic::Advice;
use bedplate::strength::rail::box_squeeze::BoxSqueeze;
use bedplate::strength::rail::local::box_peak;
use bedplate::strength::rail::{BoxRail, Patch};
use bedplate::study::evaluate::evaluate;
use bedplate::study::joint::JointResult;
use bedplate::study::joint::metals::{Excuse, MetalPair};
use bedplate::study::joint::requirement::Requirement;
use bedplate::study::joint::stack::LayerKind;

use crate::kit::{assert_close, four_mounts_and, model};

/// The mild steel bears 490 MPa under a head, also on a bare wall.
const RAIL: &str = "[rail.r]\nsection = \"box\"\nwidth = \"50 mm\"\nheight = \"50 mm\"\nwall = \"3 mm\"\nmaterial = \"mild\"\n\
    [material.mild]\nfamily = \"steel\"\nyield_strength = \"235 MPa\"\ntensile_strength = \"360 MPa\"\nyoungs_modulus = \"205 GPa\"\nhead_pressure = \"490 MPa\"\nheat_affected = { yield_strength = \"235 MPa\", tensile_strength = \"360 MPa\" }\n";

const FOOT: &str = "bracket = { thickness = \"8 mm\", material = \"S355\" }\n";

/// One M10 10.9 through a rail of 50 x 50 x 3 mm, tightened at the one temperature that it has.
fn built(lines: &str) -> Model {
    model(&four_mounts_and(&format!(
        "{RAIL}[[joint]]\nname = \"one\"\nmount = \"a\"\nrail = \"r\"\nthrough = \"height\"\ntemperature = [\"20 °C\", \"20 °C\"]\n\
         bolt = {{ size = \"M10\", class = \"10.9\", friction = [0.12, 0.12], tightened = \"torque wrench with measured friction\" }}\n{lines}"
    )))
}

fn through_rail(lines: &str) -> JointResult {
    evaluate(&built(lines)).unwrap().joints.remove(0)
}

fn sleeve(more: &str) -> String {
    format!("sleeve = {{ outer = \"20 mm\", inner = \"11 mm\", material = \"mild\"{more} }}\n")
}

fn required<'a>(joint: &'a JointResult, id: &str) -> &'a Requirement {
    let found = joint.requirements.iter().find(|one| one.id == id);
    found.unwrap_or_else(|| panic!("no requirement {id}"))
}

fn has(joint: &JointResult, id: &str) -> bool {
    joint.requirements.iter().any(|one| one.id == id)
}

/// Derived by hand: a flange of 30 x 4 mm on a sleeve of 20 mm in a hole of 20.5 mm bends at
/// 235/1.1/0.0149208 MPa/N = 14 318 N, shears at 31.0 kN, presses at 184.6 kN; one of 21.5 mm
/// presses on 32.987 mm² with 490 MPa: 16 163 N. What closes the gap presses it from the start,
/// and half of the pull of a rebound comes on top.
#[test]
fn the_flange_of_a_sleeve_takes_the_pull() {
    let shoulder = |diameter: &str| {
        through_rail(&format!(
            "{FOOT}{}",
            sleeve(&format!(
                ", hole = \"20.5 mm\", gap = \"0.05 mm\", shoulder = {{ diameter = \"{diameter}\", thickness = \"4 mm\" }}"
            ))
        ))
    };
    let wide = shoulder("30 mm");
    let flange = required(&wide, "shoulder");
    assert_close("bends", &[flange.limit], &[14_318.0], 1e-4, 0.0);
    assert!(flange.basis.contains("bending"));
    let pull = wide.loads.iter().map(|one| one.most_pulled());
    let pull = pull.fold(0.0, f64::max);
    assert!(pull > 150.0, "a rebound lifts with half of the weight");
    let walls = wide.rail.as_ref().unwrap().walls;
    assert_close("force", &[flange.value], &[walls + pull / 2.0], 1e-9, 0.0);
    let narrow = shoulder("21.5 mm");
    let flange = required(&narrow, "shoulder");
    assert_close("presses", &[flange.limit], &[16_163.0], 1e-4, 0.0);
    assert!(flange.basis.contains("pressure"));
    assert!(!has(
        &through_rail(&format!("{FOOT}{}", sleeve(""))),
        "shoulder"
    ));
}

/// Derived: the nut stands on the flange, so the bolt clamps 4 mm more; the flange is one piece
/// with the sleeve, so no face more settles. Below the nut it keeps the far wall from being pulled
/// through: 0.6 π 30 · 3 · 360/1.25 N, were the face not softer.
#[test]
fn a_flange_lies_below_the_nut() {
    let plain = through_rail(&format!("{FOOT}{}", sleeve("")));
    let flanged = through_rail(&format!(
        "{FOOT}{}",
        sleeve(", shoulder = { diameter = \"30 mm\", thickness = \"4 mm\" }")
    ));
    let grown = flanged.stack.grip - plain.stack.grip;
    assert_close("grip", &[grown], &[4e-3], 1e-12, 0.0);
    assert_eq!(flanged.stack.inner_faces, plain.stack.inner_faces);
    let kinds: Vec<LayerKind> = flanged.stack.layers.iter().map(|one| one.kind).collect();
    assert_eq!(kinds, [LayerKind::Foot, LayerKind::Rail, LayerKind::Flange]);
    // A nut of 14.63 mm falls through a hole of 20 mm.
    let fallen = required(&plain, "pull-through").limit;
    assert_close("falls", &[fallen], &[0.0], 0.0, 0.0);
    assert!(required(&flanged, "pull-through").limit > 10e3);
}

/// Derived: between the bracket on one end of a proud sleeve and the flange below the other the
/// walls are loose; only a weld brings the clamp force into them.
#[test]
fn a_flange_does_not_grip_the_rail_for_a_proud_sleeve() {
    let proud =
        sleeve(", gap = \"-0.2 mm\", shoulder = { diameter = \"30 mm\", thickness = \"4 mm\" }");
    let joint = through_rail(&format!("{FOOT}{proud}"));
    let gripped = required(&joint, "dowel").limit;
    assert_close("gripped", &[gripped], &[0.0], 0.0, 0.0);
}

/// By hand: a ring of 20 mm, throat 3 mm: 188.496 mm²; pull halved between two walls, force along
/// the face on one; f_w = 360/(√3 · 0.8 · 1.25) = 207.85 MPa. The walls around it: the face under
/// 20 x 20 mm, 0.85 · 13 742/1.1 N, twice.
#[test]
fn a_welded_sleeve_is_judged_by_its_weld_and_the_walls_around() {
    let joint = through_rail(&format!(
        "{FOOT}{}",
        sleeve(", weld = { throat = \"3 mm\" }")
    ));
    let weld = required(&joint, "sleeve-weld");
    assert_close("strength", &[weld.limit], &[207.85e6], 1e-4, 0.0);
    let stress = |[x, y]: [f64; 2], pull: f64| x.hypot(y).hypot(pull / 2.0) / 188.496e-6;
    let worst = joint
        .loads
        .iter()
        .flat_map(|loaded| &loaded.bolts)
        .map(|bolt| stress(bolt.shear, bolt.axial))
        .fold(0.0, f64::max);
    assert!(worst > 1e6);
    assert_close("stress", &[weld.value], &[worst], 1e-5, 0.0);
    let pulled = required(&joint, "pull-through");
    let walls = 2.0 * 0.85 * 13_742.0 / 1.1;
    assert_close("walls", &[pulled.limit], &[walls], 1e-4, 0.0);
    assert!(weld.holds() && pulled.holds());
}

/// Derived: a washer of 18 mm, pressed whole since 14.63 + 1.6 · 3 is more, on a hole of 11 mm leaves the far face 0.79 of its
/// stiffness, so the whole rail 2 · 0.79/1.79, and yields at 1/1.75 of the force. The near face lies
/// under the foot. Wider rings were not computed, which is told.
#[test]
fn a_bare_nut_on_the_rim_of_a_hole_softens_the_far_wall() {
    let washer = |diameter: &str| {
        format!("washer = {{ diameter = \"{diameter}\", thickness = \"3 mm\" }}\n")
    };
    let joint = through_rail(&format!("{FOOT}{}", washer("18 mm")));
    let clamp = joint.rail.as_ref().unwrap();
    let rail = BoxRail {
        face: 50e-3,
        height: 50e-3,
        wall: 3e-3,
    };
    let patch = Patch {
        length: 18e-3,
        width: 18e-3,
    };
    let plain = BoxSqueeze::under(rail, patch);
    let peak = box_peak(&rail, &patch).unwrap().stress;
    assert_close(
        "rate and yield",
        &[clamp.squeeze_rate, clamp.first_yield, clamp.plastic],
        &[
            plain.stiffness(205e9) * 2.0 * 0.79 / 1.79,
            plain.first_yield(235e6) / peak / 1.75,
            plain.plastic_load(235e6),
        ],
        2e-4,
        0.0,
    );
    assert!(clamp.is_within_range);
    let wide = washer("30 mm").replace("3 mm\" }", "10 mm\" }");
    let wide = through_rail(&format!("{FOOT}{wide}"));
    assert!(!wide.rail.unwrap().is_within_range);
    // A plate on both faces spreads the force past the hole.
    let plates = "plate = { thickness = \"6 mm\", length = \"60 mm\", width = \"50 mm\", material = \"mild\", both_sides = true }\n";
    let spread = through_rail(plates).rail.unwrap();
    let patch = Patch {
        length: 26.63e-3,
        width: 26.63e-3,
    };
    let plain = BoxSqueeze::under(rail, patch).stiffness(205e9);
    assert_close("plates", &[spread.squeeze_rate], &[plain], 1e-4, 0.0);
    assert!(spread.is_within_range);
}

/// By hand: bolt 5.2815e-9, parts 1.5197e-9 m/N: 10 um cost 1470.3 N.
#[test]
fn what_settles_later_costs_preload() {
    let plates = "plate = { thickness = \"6 mm\", length = \"60 mm\", width = \"50 mm\", material = \"mild\", both_sides = true }\n";
    let model = built(&format!("{plates}{}", sleeve("")));
    let evaluation = evaluate(&model).unwrap();
    let result = &evaluation.joints[0];
    let lost = result.preload.loss_per_settling * 10e-6;
    assert_close("lost", &[lost], &[1470.3], 1e-4, 0.0);
    let told = lines(&model, &evaluation, &model.joints[0], result);
    let words =
        "each 10 µm, also of a gap of the sleeve that closes only then, costs 1.5 kN of each bolt";
    assert!(told.iter().any(|line| line.value == words));
}

/// A joint to a thick part, bolts and faces as told.
fn metals(bolt: &str, part: &str, foot: &str) -> Vec<MetalPair> {
    let model = model(&four_mounts_and(&format!(
        "[[joint]]\nname = \"one\"\nmount = \"a\"\nbolt = {{ size = \"M10\", {bolt} }}\n\
         to = {{ thickness = \"15 mm\", {part} }}\nbracket = {{ thickness = \"8 mm\", {foot} }}\n"
    )));
    evaluate(&model).unwrap().joints.remove(0).metals
}

/// From memory of the list of anodic indices: stainless 0.50, steel 0.85, aluminium 0.90, zinc plate
/// 1.25 V; on the road 0.15 V are allowed. Each two parts are one pair.
#[test]
fn every_two_metals_are_told() {
    let found = metals(
        "class = \"A2-70\"",
        "material = \"6082-T6\"",
        "material = \"S355\"",
    );
    let told: Vec<_> = found
        .iter()
        .map(|one| (one.parts, one.eaten_and_nobler(), one.pair.advice))
        .collect();
    assert_eq!(
        told,
        [
            (["bolt", "foot"], Some(["foot", "bolt"]), Advice::Coat),
            (["bolt", "part"], Some(["part", "bolt"]), Advice::Coat),
            (["foot", "part"], Some(["part", "foot"]), Advice::Fine),
        ]
    );
    let differences: Vec<f64> = found.iter().map(|one| one.pair.difference).collect();
    assert_close("V", &differences, &[0.35, 0.40, 0.05], 0.0, 1e-12);
    assert_close("allowed", &[found[0].pair.allowed], &[0.15], 0.0, 1e-12);
    assert!(found.iter().all(MetalPair::counts));
    // The foot is twice 20 mm wide and long each way of the hole, the part counts twice that.
    assert!(found[0].pair.area_ratio < 1.0);
}

/// Common practice: a coat on the nobler part stops the current, one on the other does not; zinc on a
/// steel bolt is eaten for the steel, on aluminium it is spent.
#[test]
fn coats_and_zinc_excuse_a_pair_where_they_help() {
    let excuse = |bolt: &str, part: &str| {
        let found = metals(bolt, part, "material = \"S355\", coating = \"painted\"");
        let pair = found.iter().find(|one| one.parts == ["bolt", "part"]);
        let pair = *pair.unwrap();
        (pair.excuse, pair.pair.advice)
    };
    let (painted, _) = excuse(
        "class = \"A2-70\", coating = \"painted\"",
        "material = \"6082-T6\"",
    );
    assert_eq!(painted, Some(Excuse::NoblerCoated));
    let (lesser, advice) = excuse(
        "class = \"A2-70\"",
        "material = \"6082-T6\", coating = \"painted\"",
    );
    assert_eq!((lesser, advice), (None, Advice::Coat));
    let zinc = "class = \"10.9\", coating = \"zinc plated\"";
    let (on_steel, _) = excuse(zinc, "material = \"S355\"");
    assert_eq!(on_steel, Some(Excuse::ZincOnSteel));
    let (on_aluminium, advice) = excuse(zinc, "material = \"6082-T6\"");
    assert_eq!((on_aluminium, advice), (None, Advice::ZincSpent));
}
