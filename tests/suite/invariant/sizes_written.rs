//! Sizes found for a joint read back, from the keys that are told for the file, as they were judged.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use bedplate::model::Model;
use bedplate::model::joint::Joint;
use bedplate::report::content::joints::written;
use bedplate::study::check::Verdict;
use bedplate::study::evaluate::evaluate;
use proptest::prelude::*;
use proptest::test_runner::Config;

use crate::kit::{four_mounts_and, model};

/// Keys that the lines stand in place of, and those that ask for sizes.
const REPLACED: [&str; 7] = [
    "bolt", "pattern", "washer", "sleeve", "plate", "size", "choose",
];

/// The text of a build with one joint, whose keys have one line each, with these sizes in it.
pub(crate) fn pasted(text: &str, sized: &Joint) -> String {
    let mut lines: Vec<String> = Vec::new();
    let mut in_joint = false;
    for line in text.lines() {
        if line.starts_with('[') {
            in_joint = line == "[[joint]]";
        }
        let key = line.split(" = ").next().unwrap_or_default();
        if !(in_joint && REPLACED.contains(&key)) {
            lines.push(line.to_owned());
        }
        if line == "[[joint]]" {
            lines.extend(written::lines(sized));
        }
    }
    lines.join("\n")
}

const BASES: [&str; 5] = [
    "rail = \"box\"\nthrough = \"height\"\nedge = \"200 mm\"",
    "rail = \"box\"\nthrough = \"width\"",
    "rail = \"tube\"",
    "to = { thickness = \"14 mm\", material = \"6082-T6\" }",
    "to = { thickness = \"30 mm\", material = \"own \\\"cast\\\"\", tapped = true, engagement = \"22 mm\" }",
];

const BOLTS: [&str; 4] = [
    "{ size = \"M10\", class = \"10.9\", friction = [0.10, 0.16], torque = \"40 N m\" }",
    "{ size = \"M12\", class = \"8.8\", friction = \"greased\", hole = \"14 mm\", roughness = \"16 um\", coating = \"zinc plated\" }",
    "{ size = \"1/2-20 UNF\", class = \"grade 5\", threads = \"rolled after heat treatment\" }",
    "{ size = \"M10\", class = \"A4-70\", friction = \"stainless, oiled\", tightened = \"angle\" }",
];

const WASHERS: [&str; 2] = [
    "",
    "washer = { diameter = \"24.5 mm\", thickness = \"2.5 mm\" }",
];

const SLEEVES: [&str; 5] = [
    "",
    "sleeve = { outer = \"25 mm\", inner = \"14.2 mm\", material = \"S355\" }",
    "sleeve = { outer = \"25 mm\", inner = \"14.2 mm\", material = \"S355\", gap = \"0.05 mm\", hole = \"25.5 mm\", shoulder = { diameter = \"33 mm\", thickness = \"4 mm\" } }",
    "sleeve = { outer = \"25 mm\", inner = \"14.2 mm\", material = \"own \\\"cast\\\"\", gap = \"0.02 mm\", seat = \"inside\" }",
    "sleeve = { outer = \"25 mm\", inner = \"14.2 mm\", material = \"S235\", gap = \"-0.1 mm\", weld = { leg = \"4 mm\" } }",
];

const PLATES: [&str; 4] = [
    "",
    "plate = { thickness = \"8 mm\", material = \"S355\" }",
    "plate = { thickness = \"8 mm\", material = \"S355\", length = \"190 mm\", width = \"58 mm\", coating = \"painted\" }",
    "plate = { thickness = \"8 mm\", material = \"S355\", both_sides = true }",
];

/// A joint out of the lists, as far as its keys go together.
fn asked([base, bolt, washer, sleeve, plate]: [usize; 5], haul: f64) -> String {
    let in_rail = base < 3;
    let is_tapped = base == 4;
    let sleeve = if in_rail { SLEEVES[sleeve] } else { "" };
    let plate = match (PLATES[plate], base) {
        (both, _) if is_tapped => both.replace(", both_sides = true", ""),
        // A tube as well as its plate may be round.
        (plain, 2) => plain.replace("\"S355\"", "\"S355\", saddle = true"),
        (plain, _) => plain.to_owned(),
    };
    four_mounts_and(&format!(
        "[material.'own \"cast\"']\nfamily = \"steel\"\nyield_strength = \"300 MPa\"\ntensile_strength = \"420 MPa\"\n\
         [rail.box]\nsection = \"box\"\nwidth = \"80 mm\"\nheight = \"60 mm\"\nwall = \"3 mm\"\nmaterial = \"S355\"\n\
         [rail.tube]\nsection = \"round\"\ndiameter = \"76.1 mm\"\nwall = \"4 mm\"\nmaterial = \"S235\"\n\
         [[load]]\nname = \"haul\"\nclass = \"durability\"\nvehicle = \"{haul}, 1, -3 g\"\n\
         [[joint]]\nname = \"j\"\nmount = \"a\"\n{}\noffset = \"20, 10, 60 mm\"\n\
         pattern = [\"-60, -6 mm\", \"60, 6 mm\"]\nbolt = {}\n{}\n{sleeve}\n{plate}\n\
         bracket = {{ thickness = \"12 mm\", material = \"S355\", length = \"200 mm\" }}\n\
         size = true\nchoose = {{ counts = [1, 2, 3, 4], sleeves = [\"22 mm\", \"28 mm\"], plates = [\"6 mm\", \"12 mm\"] }}\n",
        BASES[base], BOLTS[bolt], WASHERS[washer]
    ))
}

/// Everything required of the only joint: name, value and limit; then its torque.
fn required(model: &Model) -> (Vec<(&'static str, [f64; 2])>, f64) {
    let joint = evaluate(model).unwrap().joints.remove(0);
    let all = joint.requirements.iter();
    let all = all.map(|one| (one.id, [one.value, one.limit]));
    (all.collect(), joint.preload.torque)
}

fn alike(a: f64, b: f64) -> bool {
    a.total_cmp(&b).is_eq() || (a - b).abs() <= 1e-9 * a.abs().max(b.abs()) + 1e-12
}

proptest! {
    #![proptest_config(Config { cases: 60, ..Config::default() })]

    /// Pasted in place of the old keys, what is told for the file reads as the joint that was judged.
    #[test]
    fn what_is_told_for_the_file_reads_back_as_it_was_judged(
        base in 0..BASES.len(), bolt in 0..BOLTS.len(), washer in 0..WASHERS.len(),
        sleeve in 0..SLEEVES.len(), plate in 0..PLATES.len(), haul in -6.0..6.0_f64,
    ) {
        let text = asked([base, bolt, washer, sleeve, plate], haul);
        let original = model(&text);
        let sizing = evaluate(&original).unwrap().joints.remove(0).sizing;
        prop_assume!(sizing.is_some());
        let sizing = sizing.unwrap();
        for trial in std::iter::once(&sizing.best).chain(&sizing.smaller) {
            let back = model(&pasted(&text, &trial.joint));
            let mut judged = original.clone();
            judged.joints[0] = trial.joint.clone();
            let ((expected, torque), (found, read)) = (required(&judged), required(&back));
            prop_assert_eq!(expected.len(), found.len());
            for (one, two) in expected.iter().zip(&found) {
                prop_assert_eq!(one.0, two.0);
                let same = (0..2).all(|side| alike(one.1[side], two.1[side]));
                prop_assert!(same, "{:?} {:?}\n{}", one, two, written::lines(&trial.joint).join("\n"));
            }
            prop_assert!(alike(torque, read) && alike(torque, trial.torque), "{} {} {}", torque, read, trial.torque);
        }
        if sizing.holds {
            let checks = evaluate(&model(&pasted(&text, &sizing.best.joint))).unwrap().checks;
            for check in checks {
                if check.id.starts_with("joint.j.") && !check.advisory && check.value.is_some() {
                    prop_assert_eq!(check.verdict, Verdict::Ok, "{}", check.id);
                }
            }
        }
    }
}

/// The joints above are not all hopeless: of those with a plate on both sides most are given sizes that hold.
#[test]
fn sizes_that_hold_are_found_in_most_strong_joints() {
    let joints = (0..2).flat_map(|base| (0..4).map(move |bolt| [base, bolt, 1, 2, 3]));
    let holds = joints.filter(|kind| {
        let sizing = evaluate(&model(&asked(*kind, 2.0)))
            .unwrap()
            .joints
            .remove(0)
            .sizing;
        sizing.is_some_and(|sizing| sizing.holds)
    });
    assert!(holds.count() > 4);
}
