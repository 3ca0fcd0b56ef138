//! Joints against a second program in another language.
//!
//! Cross-checked: it takes the same published formulas and the same choices as the documentation
//! of each, and shares no line. It proves arithmetic, units and wiring, not the choices.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use bedplate::study::evaluate::evaluate;
use bedplate::study::joint::JointResult;

use crate::kit::{assert_close, four_mounts_and, model};

fn joint(lines: &str) -> JointResult {
    let text = four_mounts_and(&format!("[[joint]]\nname = \"j\"\nmount = \"a\"\n{lines}"));
    evaluate(&model(&text)).unwrap().joints.remove(0)
}

fn limit(joint: &JointResult, id: &str) -> f64 {
    let mut found = joint.requirements.iter();
    found.find(|one| one.id == id).unwrap().limit
}

/// Three M10 8.8 with dry zinc, driven by an impact wrench into an iron casting.
#[test]
fn screws_in_an_iron_casting() {
    let found = joint(
        "to = { thickness = \"30 mm\", material = \"EN-GJS-400-15\", tapped = true, engagement = \"18 mm\" }\n\
         pattern = [\"-45, -20 mm\", \"45, -20 mm\", \"0, 40 mm\"]\n\
         bolt = { size = \"M10\", class = \"8.8\", friction = \"zinc, dry\", coating = \"zinc plated\", tightened = \"impact wrench\", roughness = \"5 um\" }\n\
         bracket = { thickness = \"10 mm\", material = \"S355\" }\nupright = { arm = \"22 mm\" }\n",
    );
    let (stack, preload) = (&found.stack, &found.preload);
    assert_close(
        "torque, most, least, embedding, clamp",
        &[
            preload.torque,
            preload.most,
            preload.least,
            preload.embedding,
            preload.clamp(),
        ],
        &[67.819_42, 26_404.458, 6601.1145, 3823.8623, 2777.2522],
        1e-7,
        0.0,
    );
    assert_close(
        "resilience of bolt and parts, load factor",
        &[
            stack.bolt_resilience,
            stack.parts_resilience,
            stack.load_factor,
        ],
        &[1.833_730_5e-9, 2.583_950_1e-10, 0.123_508_37],
        1e-7,
        0.0,
    );
    assert_close(
        "thread, prying, head through the foot, fatigue",
        &[
            limit(&found, "engagement"),
            limit(&found, "prying"),
            limit(&found, "head-punching"),
            limit(&found, "fatigue"),
        ],
        &[0.011_940_292, 29_953.576, 103_689.15, 42.5e6],
        1e-6,
        0.0,
    );
    let pressed = found
        .requirements
        .iter()
        .find(|one| one.id == "head-pressure");
    assert_close(
        "pressure",
        &[pressed.unwrap().value],
        &[361_353_400.0],
        1e-7,
        0.0,
    );
}

/// Stainless bolts through an aluminium rail with aluminium sleeves, from −20 to 90 °C.
#[test]
fn stainless_in_an_aluminium_rail() {
    let found = joint(
        "rail = \"main\"\nthrough = \"width\"\nface = \"0, -1, 0\"\n\
         pattern = [\"-50, 30 mm\", \"50, 30 mm\", \"-50, -30 mm\", \"50, -30 mm\"]\n\
         bolt = { size = \"M10\", class = \"A2-70\", friction = \"stainless, oiled\", tightened = \"torque wrench\" }\n\
         bracket = { thickness = \"8 mm\", material = \"6082-T6\", length = \"140 mm\", width = \"100 mm\" }\n\
         upright = { arm = \"25 mm\", length = \"60 mm\", width = \"60 mm\", weld = { throat = \"4 mm\", around = true, filler = \"5356\" } }\n\
         sleeve = { outer = \"22 mm\", inner = \"11 mm\", gap = \"0.05 mm\", material = \"6082-T6\" }\n\
         [rail.main]\nsection = \"box\"\nwidth = \"60 mm\"\nheight = \"120 mm\"\nwall = \"5 mm\"\nmaterial = \"6082-T6\"\n",
    );
    let preload = &found.preload;
    assert_close(
        "torque, most, least",
        &[preload.torque, preload.most, preload.least],
        &[47.685_53, 18_565.635, 7426.2538],
        1e-7,
        0.0,
    );
    assert_close(
        "prying, upright weld, net section of the parts, sleeve",
        &[
            limit(&found, "prying"),
            limit(&found, "upright-weld"),
            limit(&found, "foot-bending"),
            limit(&found, "sleeve-stress"),
        ],
        &[6900.0, 96_994_845.0, 125e6, 67_387.162],
        1e-6,
        0.0,
    );
}
