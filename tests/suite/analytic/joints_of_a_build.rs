//! What the computed mount reactions of a build do to its bolted joints.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use bedplate::model::Model;
use bedplate::study::check::{Check, Verdict};
use bedplate::study::evaluate::{Evaluation, evaluate};
use bedplate::study::joint::JointResult;
use bedplate::study::joint::requirement::Requirement;

use crate::kit::{assert_close, four_mounts_and, model};

/// Weight on one of the four mounts, which stand evenly around the centre of gravity \[N\].
const WEIGHT: f64 = 150.0 * 9.80665 / 4.0;

const RAIL: &str = "[rail.r]\nsection = \"box\"\nwidth = \"50 mm\"\nheight = \"50 mm\"\nwall = \"3 mm\"\nmaterial = \"mild\"\n\
    [material.mild]\nfamily = \"steel\"\nyield_strength = \"235 MPa\"\ntensile_strength = \"360 MPa\"\nyoungs_modulus = \"205 GPa\"\nhead_pressure = \"490 MPa\"\n";

const BOLT: &str = "bolt = { size = \"M10\", class = \"10.9\", friction = [0.12, 0.12], tightened = \"torque wrench with measured friction\" }\n";

const SLEEVE: &str = "sleeve = { outer = \"20 mm\", inner = \"11 mm\", material = \"mild\", gap = \"0.1 mm\" }\n";

const PLATES: &str = "plate = { thickness = \"6 mm\", length = \"60 mm\", width = \"50 mm\", material = \"mild\", both_sides = true }\n";

/// A build whose first joint, at mount a, has these lines.
fn build(lines: &str) -> Model {
    model(&four_mounts_and(&format!(
        "{RAIL}[[joint]]\nname = \"Left, front\"\nmount = \"a\"\n{lines}"
    )))
}

/// Through the rail from above, tightened at the one temperature that it has.
fn golden(lines: &str) -> (Model, Evaluation) {
    let model = build(&format!(
        "rail = \"r\"\nthrough = \"height\"\ntemperature = [\"20 °C\", \"20 °C\"]\n{BOLT}{lines}"
    ));
    let evaluation = evaluate(&model).unwrap();
    (model, evaluation)
}

fn required<'a>(joint: &'a JointResult, id: &str) -> &'a Requirement {
    let found = joint.requirements.iter().find(|one| one.id == id);
    found.unwrap_or_else(|| panic!("no requirement {id}"))
}

fn check<'a>(evaluation: &'a Evaluation, id: &str) -> &'a Check {
    let name = format!("joint.left-front.{id}");
    let found = evaluation.checks.iter().find(|check| check.id == name);
    found.unwrap_or_else(|| panic!("no check {name}"))
}

#[test]
fn golden_prints() {
    for lines in [format!("{PLATES}{SLEEVE}"), PLATES.to_owned()] {
        let (_, e) = golden(&lines);
        let j = &e.joints[0];
        println!("{:#?} {:#?} {:#?}", j.stack, j.preload, j.rail);
        println!("{:#?}", j.loads);
        for r in &j.requirements {
            println!("{:16} {:12.5e} {:12.5e} {:.3} {} {}", r.id, r.value, r.limit, r.utilisation(), r.advisory, r.title);
        }
    }
    panic!("{}", WEIGHT);
}
