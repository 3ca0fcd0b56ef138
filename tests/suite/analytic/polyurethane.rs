//! Polyurethane between plates.

use bedplate::model::isolator::Tension;
use bedplate::spatial::Vec3;

use crate::kit::{assert_close, isolator_of};

fn keys(more: &str) -> String {
    format!(
        "kind = \"polyurethane\"\ncylinder = {{ diameter = \"60 mm\", height = \"30 mm\" }}\n{more}"
    )
}

/// Derived: E of the indentation relation at 80 Shore A, 9.351 MPa (computed independently),
/// S = 60/(4 · 30) = 0.5, so E (1 + 2 · 0.25) behind a bulk modulus of 2000 MPa; a third of E in
/// shear, with 1 + (4/9)/4 for bending. Pushed, since it lies loose and lifts off; it beds in by 0.05 mm first.
#[test]
fn rates_are_those_of_an_elastomer_without_filler() {
    let part = isolator_of(&keys("hardness = \"80 Shore A\""));
    let (area, height) = (std::f64::consts::PI * 0.03 * 0.03, 0.03);
    let modulus = 9.351e6 * 1.5;
    let along = modulus / (1.0 + modulus / 2e9) * area / height;
    let across = 9.351e6 / 3.0 * area / height / (1.0 + 1.0 / 9.0);
    let rates = [part.free_rate(0), part.free_rate(1)];
    assert_close("across", &rates, &[across; 2], 1e-4, 0.0);
    let bedded_in = 0.05e-3;
    let pressed = Vec3::new(0.0, 0.0, -0.1 * height - bedded_in);
    let pressed = part.at(&pressed).point.force.z;
    assert_close("10 %", &[pressed], &[-along * height * 0.11], 1e-4, 0.0);
    assert_eq!(part.tension, Tension::None);
    let pulled = part.at(&Vec3::new(0.0, 0.0, 2e-3)).point.force.z;
    assert_close("pulled", &[pulled], &[0.0], 0.0, 1e-12);
}

/// Bonded, it pulls as it is told to; a measured modulus takes the place of the hardness.
#[test]
fn bonded_and_measured() {
    let part = isolator_of(&keys(
        "modulus = { youngs = \"30 MPa\", shear = \"10 MPa\" }\ntension = \"allowed\"",
    ));
    let pulled = part.at(&Vec3::new(0.0, 0.0, 1e-4)).point.force.z;
    let modulus = 45e6 / (1.0 + 45e6 / 2e9);
    let along = modulus * std::f64::consts::PI * 0.03 * 0.03 / 0.03;
    assert_close("pulled", &[pulled], &[along * 1e-4], 5e-3, 0.0);
}

/// Usual values, common practice, and warnings that are true of this part.
#[test]
fn usual_values_and_warnings() {
    let part = isolator_of(&keys("hardness = \"80 Shore A\""));
    // Loss between 0.05 at 60 and 0.20 at 95: 0.1357; the ratio that goes with it, 10^(3 (2/π) 0.139).
    assert_close("loss", &[part.dynamics.loss_factor], &[0.14], 1e-12, 0.0);
    assert_close("ratio", &[part.dynamics.ratio.x], &[1.84], 0.003, 0.0);
    assert_close(
        "large",
        part.dynamics.ratio_large.as_slice(),
        part.dynamics.ratio.as_slice(),
        1e-12,
        0.0,
    );
    assert_eq!(part.heat_limit, Some(80.0));
    let remarks = part.remarks.join("\n");
    for words in ["linear only to", "slip where", "here 1.00", "squeak"] {
        assert!(remarks.contains(words), "{words}: {remarks}");
    }
    assert!(!remarks.contains("relax to zero") && !remarks.contains("tears from inside"));
    // Tall and narrow, it holds.
    let tall = isolator_of(
        "kind = \"polyurethane\"\nhardness = \"80 Shore A\"\nblock = \"20, 20, 25 mm\"",
    );
    assert!(tall.remarks.join("\n").contains("faces hold while"));
}

/// Derived: the rates of a bush follow its shear modulus, a third of Young's modulus here; an
/// insert that slides resists no turn about w, and none the less pulls as it pushes.
#[test]
fn an_insert_between_tubes() {
    let sizes = "bush = { inner = \"16 mm\", outer = \"34 mm\", length = \"40 mm\" }";
    let part = isolator_of(&format!(
        "kind = \"polyurethane\"\n{sizes}\nhardness = \"80 Shore A\""
    ));
    let rubber = isolator_of(&format!(
        "kind = \"bush\"\n{sizes}\nmodulus = {{ youngs = \"9.351 MPa\", shear = \"3.117 MPa\", shape = 1.0, bulk = \"2000 MPa\" }}"
    ));
    for axis in 0..3 {
        let (found, expected) = (part.free_rate(axis), rubber.free_rate(axis));
        assert_close("rate", &[found], &[expected], 1e-4, 0.0);
    }
    assert_close(
        "tilt",
        &[part.rotational.x],
        &[rubber.rotational.x],
        1e-4,
        0.0,
    );
    assert!(rubber.rotational.z > 0.0);
    assert_close("turn", &[part.rotational.z], &[0.0], 0.0, 0.0);
    assert_eq!(part.tension, Tension::Allowed);
}
