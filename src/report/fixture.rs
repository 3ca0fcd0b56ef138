//! A small build with every kind of trouble in its results, for the tests of the writers.
//!
//! The build is read and evaluated as a user's file is; then some results are
//! replaced by ones that a writer must survive. Their numbers are invented.

use crate::model::{Model, file};
use crate::rigid::failure::StaticsFailure;
use crate::study::check::{Check, Sense, Subject, Verdict};
use crate::study::evaluate::{Evaluation, evaluate};
use crate::units::Shown;

/// A name that a careless table splits.
pub(crate) const COMMA_MOUNT: &str = "front left, \"upper\"";
/// Deflection of that mount along w at rest \[m\].
pub(crate) const DEFLECTION_W: f64 = -3.14e-3;
/// The case without a position.
pub(crate) const FAILED_LOAD: &str = "launch in first";

const FILE: &str = r#"
title = "Forestry pickup & <winch>"
notes = "Diesel on a ladder frame"
[datum]
origin = "the centre of the front axle"
fitted = "free"
[vehicle]
mass = "1720 kg"
wheelbase = "2850 mm"
centre_of_gravity = "-1320, 0, 250 mm"
tyre_radius = "356 mm"
tyre_grip = 0.9
driven = "rear"
[[part]]
name = "engine"
mass = "180 kg"
at = "-150, 5, 180 mm"
box = "700, 500, 600 mm"
[[part]]
name = "<script>alert('x')</script>"
mass = "41.3 kg"
at = "-850, 0, 50 mm"
box = "700, 300, 300 mm"
fill = 0.8
[engine]
cycle = "four-stroke"
cylinders = 4
crank_direction = "-1, 0, 0"
crank_at = "0, 0, 100 mm"
torque = "320 N m"
idle = "780 rpm"
[driveline]
output = "propshaft"
gears = { "1" = 4.12, reverse = 3.9 }
final_drive = 3.73
efficiency = 0.95
[isolator.wedge]
kind = "rates"
rates = "95, 95, 330 N/mm"
limits = { u = "6 mm", w = "7 mm" }
scatter = "15 %"
[[mount]]
name = 'front left, "upper"'
at = "-100, 300, 60 mm"
isolator = "wedge"
bracket = "40 kN/mm"
[[mount]]
name = "front right"
at = "-100, -300, 60 mm"
isolator = "wedge"
[[mount]]
name = "rear"
at = "-1050, 0, 60 mm"
isolator = "wedge"
[[mount]]
name = "middle"
at = "-600, 0, 40 mm"
isolator = "wedge"
[rail.main]
section = "box"
width = "60 mm"
height = "120 mm"
wall = "4 mm"
material = "S355"
[[joint]]
name = "right <to> rail"
mount = "front right"
rail = "main"
through = "width"
offset = "0, 60, 40 mm"
pattern = ["-45, 0 mm", "45, 0 mm"]
bolt = { size = "M12", class = "8.8", friction = [0.10, 0.16], torque = "60 N m" }
bracket = { thickness = "8 mm", material = "S355" }
plate = { thickness = "6 mm", material = "S355", both_sides = true }
sleeve = { outer = "25 mm", inner = "13 mm", gap = "0.05 mm", material = "S235" }
size = true
[[joint]]
name = "middle to tube"
mount = "middle"
rail = "tube"
pattern = ["0, 0 mm"]
bolt = { size = "M10", class = "10.9", threads = "cut" }
bracket = { thickness = "8 mm", material = "S355" }
[rail.tube]
section = "round"
diameter = "60 mm"
wall = "3 mm"
material = "S235"
[loads]
usual = false
[[load]]
name = "launch in first"
gear = "1"
throttle = 1.0
factor = 1.6
grip_limited = true
vehicle = "0.4, 0, 0 g"
class = "durability"
[[load]]
name = "tail held up"
without = { parts = ["<script>alert('x')</script>"], mounts = ["rear"] }
apply = [{ point = "tail", force = "0, 0, 80 N" }]
class = "service"
[[point]]
name = "fan tip"
at = "260, 0, 330 mm"
[[point]]
name = "tail"
at = "-900, 0, 100 mm"
[[clearance]]
name = "fan to radiator"
point = "fan tip"
toward = "1, 0, 0"
gap = "30 mm"
keep = "12 mm"
"#;

/// The build and its results.
pub(crate) fn build() -> (Model, Evaluation) {
    let model = file::read(FILE.as_bytes())
        .unwrap_or_else(|problems| panic!("{problems:#?}"))
        .model;
    let mut evaluation = evaluate(&model).unwrap();
    if let Ok(found) = &mut evaluation.loads[0].outcome {
        found.mounts[0].isolator_deflection.z = DEFLECTION_W;
    }
    let failed = &mut evaluation.loads[1];
    failed.outcome = Err(StaticsFailure::NotConverged {
        reached_share: 0.4,
        residual: 12.0,
        worst_mount: "rear".to_owned(),
        iterations: 60,
    });
    failed.points.fill(None);
    failed.gaps.fill(None);
    evaluation.modes[0].solution.modes[0].growth_rate = Some(0.7);
    evaluation.checks = checks();
    (model, evaluation)
}

/// Puts numbers that are not finite wherever an analysis could leave one.
pub(crate) fn spoil_numbers(evaluation: &mut Evaluation) {
    for result in &mut evaluation.loads {
        result.applied.force.x = f64::NAN;
        result.gaps.fill(Some(f64::INFINITY));
        if let Ok(found) = &mut result.outcome {
            found.residual = f64::INFINITY;
            found.displacement.z = f64::NAN;
            for mount in &mut found.mounts {
                mount.force_on_powertrain.y = f64::NEG_INFINITY;
                mount.isolator_deflection.z = f64::NAN;
            }
        }
    }
    for at in &mut evaluation.modes {
        for mode in &mut at.solution.modes {
            mode.frequency_hz = f64::NAN;
            mode.mount_strain_share.fill(f64::NAN);
        }
    }
    for check in &mut evaluation.checks {
        check.value = Some(f64::NAN);
        check.utilisation = Some(f64::INFINITY);
        check.uncertainty = f64::NAN;
    }
}

fn checks() -> Vec<Check> {
    let check = |id: &str, verdict: Verdict, used: Option<f64>| Check {
        id: id.to_owned(),
        subject: None,
        title: format!("check {id}"),
        load: Some(0),
        value: used.map(|u| u * 0.01),
        limit: used.map(|_| 0.01),
        sense: Sense::AtMost,
        unit: Shown::Millimetre,
        utilisation: used,
        uncertainty: 0.4e-3,
        advisory: false,
        verdict,
        basis: "common practice, `targets.sag`".to_owned(),
        note: (verdict == Verdict::NotChecked).then(|| "the file has no idle speed".to_owned()),
        cure: (verdict == Verdict::Fails).then(|| "a rate 30 % higher along w".to_owned()),
    };
    vec![
        check("sag.rear", Verdict::Fails, Some(1.3)),
        check("sag.front-left", Verdict::Fails, Some(1.1)),
        Check {
            subject: Some(Subject::Clearance(0)),
            ..check("clearance.fan-to-radiator", Verdict::Close, Some(0.97))
        },
        check("idle.ratio", Verdict::NotChecked, None),
        check("share.rear", Verdict::Ok, Some(0.5)),
        check("share.front-left", Verdict::Ok, Some(0.3)),
    ]
}
