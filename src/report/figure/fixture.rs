//! Builds for the tests of the figures: invented, written as a user's file, read and evaluated as one.

use std::fmt::Write as _;

use crate::model::{Model, file};
use crate::rigid::failure::StaticsFailure;
use crate::spatial::Vec6;
use crate::study::evaluate::{Evaluation, evaluate};

/// What to build.
#[derive(Debug, Clone, Copy)]
pub(super) struct Wish {
    /// Fewer than 3 are evaluated as 3, since the build would not stand, and then cut.
    pub(super) mounts: usize,
    /// Beside the one at rest.
    pub(super) loads: usize,
    /// At most 3, each with a clearance.
    pub(super) points: usize,
    pub(super) engine: bool,
}

/// A build like those of the workshop.
pub(super) const USUAL: Wish = Wish {
    mounts: 4,
    loads: 11,
    points: 3,
    engine: true,
};

/// The load case without a position, when there are so many.
pub(super) const FAILED: usize = 10;

/// The first part is 40 mm off the middle and 600 x 400 x 500 mm large; asserted in a test of the layout.
const HEAD: &str = r#"
title = "Fixture"
[datum]
origin = "middle of the bulkhead foot"
fitted = "free"
[[part]]
name = "engine"
mass = "142 kg"
at = "20, 40, 300 mm"
box = "600, 400, 500 mm"
[[part]]
name = "gearbox"
mass = "46 kg"
at = "-530, 0, 170 mm"
cylinder = { diameter = "270 mm", length = "600 mm" }
turned = "0, -4, 0 deg"
[[part]]
name = "generator"
mass = "9 kg"
at = "-150, 270, 120 mm"
inertia = { xx = "0.09 kg m2", yy = "0.07 kg m2", zz = "0.11 kg m2", xy = "0.01 kg m2", xz = "0 kg m2", yz = "0 kg m2", products = "tensor" }
[isolator.block]
kind = "rates"
rates = "90, 70, 220 N/mm"
limits = { u = "6 mm", v = "6 mm", w = "8 mm" }
stops = { w = ["-9 mm", "12 mm"], rate = "2 kN/mm" }
"#;

const ENGINE: &str = r#"
[engine]
cycle = "four-stroke"
cylinders = 4
crank_direction = "-1, 0, 0.06"
crank_at = "0, 0, 180 mm"
torque = "210 N m"
idle = "812 rpm"
"#;

const MOUNTS: [(&str, &str, &str); 4] = [
    ("left engine", "120, 310, 210 mm", "0, -0.5, 1"),
    ("right engine", "120, -290, 200 mm", "0, 0.5, 1"),
    ("gearbox", "-780, 20, 80 mm", "0, 0, 1"),
    ("torque arm", "-300, -340, 420 mm", "1, 0, 0.2"),
];
const LOADS: [&str; 12] = [
    "full torque, first gear",
    "full torque, reverse",
    "braking",
    "cornering left",
    "cornering right",
    "bump",
    "rebound",
    "kerb strike, one wheel",
    "driveline shock",
    "towing",
    "rollover",
    "parked on a slope",
];
const POINTS: [(&str, &str, &str, &str); 3] = [
    ("fan hub", "330, 0, 360 mm", "1, 0, 0", "fan to radiator"),
    (
        "shift lever",
        "-620, 30, 300 mm",
        "0, 0, 1",
        "lever to tunnel",
    ),
    (
        "exhaust flange",
        "-100, -220, 120 mm",
        "0, -1, 0",
        "flange to steering shaft",
    ),
];

/// A build and its evaluation.
pub(super) fn build(wish: Wish) -> (Model, Evaluation) {
    let mut checked = file::read(text(wish).as_bytes()).unwrap();
    let mut evaluation = evaluate(&checked.model).unwrap();
    checked.model.mounts.truncate(wish.mounts);
    for result in &mut evaluation.loads {
        result.mounts.truncate(wish.mounts);
        if let Ok(equilibrium) = &mut result.outcome {
            equilibrium.mounts.truncate(wish.mounts);
        }
    }
    if let Some(result) = evaluation.loads.get_mut(FAILED) {
        result.outcome = Err(StaticsFailure::Unstable {
            rate: -1.0,
            iterations: 3,
        });
        result.points.fill(None);
        result.gaps.fill(None);
    }
    (checked.model, evaluation)
}

/// The usual build with more in its file, such as a joint.
pub(super) fn jointed(more: &str) -> (Model, Evaluation) {
    let text = text(USUAL) + more;
    let checked = file::read(text.as_bytes()).unwrap_or_else(|problems| panic!("{problems:#?}"));
    let evaluation = evaluate(&checked.model).unwrap();
    (checked.model, evaluation)
}

fn text(wish: Wish) -> String {
    let mut text = HEAD.to_owned();
    if wish.engine {
        text.push_str(ENGINE);
    }
    for i in 0..wish.mounts.max(3) {
        let extra = (
            format!("mount {}", i + 1),
            format!(
                "{:.0}, {:.0}, 100 mm",
                400.0 - 70.0 * i as f64,
                400.0 * (i as f64).sin()
            ),
        );
        let (name, at, w) = MOUNTS
            .get(i)
            .copied()
            .unwrap_or((&extra.0, &extra.1, "0, 0, 1"));
        let _ = writeln!(
            text,
            "[[mount]]\nname = \"{name}\"\nat = \"{at}\"\nisolator = \"block\"\nw = \"{w}\"\nu = \"0, 1, 0.1\""
        );
    }
    let _ = writeln!(
        text,
        "[loads]\nusual = false\nmodes = [\"at rest\"{}]",
        if wish.loads > 0 {
            ", \"full torque, first gear\""
        } else {
            ""
        }
    );
    for i in 0..wish.loads {
        let extra = format!("case {}", i + 1);
        let name = LOADS.get(i).copied().unwrap_or(&extra);
        let swing = |k: f64| 1.4 * ((i + 1) as f64 * k).sin();
        let _ = writeln!(
            text,
            "[[load]]\nname = \"{name}\"\nclass = \"service\"\nvehicle = \"{:.3}, {:.3}, {:.3} g\"",
            swing(1.3),
            swing(2.1),
            swing(0.7)
        );
    }
    for (name, at, toward, clearance) in POINTS.iter().take(wish.points) {
        let _ = writeln!(
            text,
            "[[point]]\nname = \"{name}\"\nat = \"{at}\"\n[[clearance]]\nname = \"{clearance}\"\n\
             point = \"{name}\"\ntoward = \"{toward}\"\ngap = \"9 mm\"\nkeep = \"5 mm\""
        );
    }
    text
}

/// Names that would break a page or a drawing if they were taken as they are.
pub(super) fn with_bad_names(wish: Wish) -> (Model, Evaluation) {
    let (mut model, mut evaluation) = build(wish);
    let bad = "<script>alert('x')</script> & \"quoted\" \u{202E}naïve 漢字 \u{7}";
    let names = model.mounts.iter_mut().map(|m| &mut m.name);
    let names = names.chain(model.loads.iter_mut().map(|l| &mut l.name));
    let names = names.chain(model.points.iter_mut().map(|p| &mut p.name));
    let names = names.chain(model.parts.iter_mut().map(|p| &mut p.name));
    let names = names.chain(model.clearances.iter_mut().map(|c| &mut c.name));
    for name in names.chain(model.isolators.iter_mut().map(|i| &mut i.name)) {
        bad.clone_into(name);
    }
    for at in &mut evaluation.modes {
        for mode in &mut at.solution.modes {
            bad.clone_into(&mut mode.name);
        }
    }
    (model, evaluation)
}

/// Takes every motion, force and gap away.
pub(super) fn still(evaluation: &mut Evaluation) {
    for result in &mut evaluation.loads {
        if let Ok(equilibrium) = &mut result.outcome {
            for state in &mut equilibrium.mounts {
                state.isolator_deflection.fill(0.0);
                state.force_on_powertrain.fill(0.0);
            }
        }
        for gap in result.gaps.iter_mut().flatten() {
            *gap = 0.0;
        }
    }
    for at in &mut evaluation.modes {
        for mode in &mut at.solution.modes {
            mode.frequency_hz = 0.0;
            mode.shape = Vec6::zeros();
            mode.energy_share = Vec6::zeros();
        }
    }
}
