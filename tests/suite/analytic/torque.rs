//! Torque at the outputs and its cap by grip, worked by hand.

use bedplate::drive::torque::{OutputTorque, output_torque};
use bedplate::model::Model;

use crate::kit::{assert_close, four_mounts_and, model};

const REAR_DRIVE: &str = r#"
[vehicle]
mass = "1500 kg"
wheelbase = "2600 mm"
centre_of_gravity = "-1300, 0, 550 mm"
front_axle = "0, 0, 300 mm"
tyre_radius = "300 mm"
tyre_grip = 1.0
driven = "rear"
"#;

const PROPSHAFT: &str = r#"
[engine]
cycle = "four-stroke"
cylinders = 4
crank_direction = "-1, 0, 0"
torque = "300 N m"
[driveline]
output = "propshaft"
gears = { "1" = 3.60, reverse = 3.0 }
final_drive = 3.90
efficiency = 0.95
"#;

fn of_case(model: &Model, name: &str) -> OutputTorque {
    let case = model.loads.iter().find(|load| load.name == name).unwrap();
    output_torque(model, case).unwrap()
}

fn build(sections: &[&str], cases: &str) -> Model {
    model(&four_mounts_and(&format!("{}\n{cases}", sections.concat())))
}

/// Derived: 300 N m through 3.60 is 1080 N m at the gearbox output; the flange
/// turns about −x, so the powertrain feels +1080 N m about x and its left side lifts.
#[test]
fn a_propshaft_output_takes_the_gear_ratio_only() {
    let model = build(
        &[PROPSHAFT],
        "[[load]]\nname = \"pull\"\ngear = \"1\"\n[[load]]\nname = \"back\"\ngear = \"reverse\"\n\
         [[load]]\nname = \"coast\"\ngear = \"1\"\nthrottle = -0.5\n[[load]]\nname = \"shock\"\ngear = \"1\"\nfactor = 1.5\n",
    );
    for (case, torque) in [
        ("pull", 1080.0),
        ("back", -900.0),
        ("coast", -540.0),
        ("shock", 1620.0),
    ] {
        let found = of_case(&model, case);
        assert_close(case, &[found.delivered], &[torque], 1e-12, 0.0);
        assert_close(
            case,
            found.moment.as_slice(),
            &[torque, 0.0, 0.0],
            1e-12,
            1e-9,
        );
        assert_eq!(found.grip_cap, None);
    }
}

/// Derived: 300 · 3.60 · 3.90 · 0.95 = 4001.4 N m at the wheels together,
/// which turn about +y: the powertrain feels −4001.4 N m about y and its nose lifts.
#[test]
fn axle_shafts_take_ratio_final_drive_and_efficiency() {
    let shafts = PROPSHAFT.replace("propshaft", "axle-shafts");
    let coast = "[[load]]\nname = \"coast\"\ngear = \"1\"\nthrottle = -0.5\n";
    let model = build(
        &[&shafts],
        &format!("[[load]]\nname = \"pull\"\ngear = \"1\"\n{coast}"),
    );
    // Losses brake too: 150 · 3.60 · 3.90/0.95 = 2216.84 N m.
    assert_close(
        "coast",
        &[of_case(&model, "coast").delivered],
        &[-2216.842],
        1e-6,
        0.0,
    );
    let found = of_case(&model, "pull");
    assert_close("wheels", &[found.delivered], &[4001.4], 1e-12, 0.0);
    assert_close(
        "moment",
        found.moment.as_slice(),
        &[0.0, -4001.4, 0.0],
        1e-12,
        1e-9,
    );
}

/// Derived by hand from moments about the front contact line: a = 1.3, h = 0.55,
/// L = 2.6 m, μ = 1. The tyres push forward with F = μ m g a/(L − μ h) =
/// 1500 · 9.80665 · 1.3/2.05 = 9328.28 N, 2798.48 N m at the wheels, 2798.48/(3.9 · 0.95) =
/// 755.325 N m at the propshaft. Backward F = 1500 · 9.80665 · 1.3/3.15 = 6070.78 N, 491.561 N m.
/// The first example of front drive: F = m · 5.034 m/s² (below).
#[test]
fn grip_caps_the_torque_with_the_weight_that_moves() {
    let model = build(
        &[REAR_DRIVE, PROPSHAFT],
        "[[load]]\nname = \"pull\"\ngear = \"1\"\ngrip_limited = true\nfactor = 1.5\n\
         [[load]]\nname = \"back\"\ngear = \"reverse\"\ngrip_limited = true\n\
         [[load]]\nname = \"stated\"\ngear = \"1\"\ngrip_limited = true\nvehicle = \"0.4, 0, 0 g\"\n",
    );
    let pull = of_case(&model, "pull");
    assert_close("cap", &[pull.grip_cap.unwrap()], &[755.325], 1e-5, 0.0);
    assert_close(
        "shock after the cap",
        &[pull.delivered],
        &[1.5 * 755.325],
        1e-5,
        0.0,
    );
    let back = of_case(&model, "back");
    assert_close("backward", &[back.delivered], &[-491.561], 1e-5, 0.0);
    // N = m (g a + 0.4 g h)/L = 1500 · 9.80665 · (1.3 + 0.22)/2.6 = 8599.68 N, times 0.3/(3.9 · 0.95).
    let stated = of_case(&model, "stated");
    assert_close("stated", &[stated.delivered], &[696.331], 1e-5, 0.0);
}

/// Derived by hand: front drive, 1300 kg, L 2.55, h 0.53, r 0.31 m, 62 % of the
/// weight in front, μ 1: a = 9.80665 · 0.62/(1 + 0.53/2.55) = 5.0338 m/s²,
/// 1300 · 5.0338 · 0.31 = 2028.6 N m of the 4001.4 N m.
#[test]
fn front_drive_loses_grip_as_it_pulls() {
    let vehicle = r#"
[vehicle]
mass = "1300 kg"
wheelbase = "2550 mm"
centre_of_gravity = "-969, 0, 220 mm"
tyre_radius = "310 mm"
tyre_grip = 1.0
driven = "front"
"#;
    let shafts = PROPSHAFT.replace("propshaft", "axle-shafts");
    let model = build(
        &[vehicle, &shafts],
        "[[load]]\nname = \"pull\"\ngear = \"1\"\ngrip_limited = true\n",
    );
    assert_close(
        "cap",
        &[of_case(&model, "pull").delivered],
        &[2028.6],
        1e-4,
        0.0,
    );
}

/// Derived: with μ h above the wheelbase the front wheels lift and the rear
/// ones carry everything; with all wheels driven the cap is μ m g.
#[test]
fn the_cap_never_passes_the_whole_weight() {
    let tall = REAR_DRIVE
        .replace("-1300, 0, 550 mm", "-1300, 0, 2800 mm")
        .replace("tyre_grip = 1.0", "tyre_grip = 1.2");
    let whole = 1.2 * 1500.0 * 9.80665 * 0.3 / (3.9 * 0.95);
    for driven in ["rear", "all"] {
        let model = build(
            &[
                &tall.replace("\"rear\"", &format!("\"{driven}\"")),
                PROPSHAFT,
            ],
            "[[load]]\nname = \"pull\"\ngear = \"1\"\ngrip_limited = true\n",
        );
        let cap = of_case(&model, "pull").grip_cap.unwrap();
        assert_close(driven, &[cap], &[whole], 1e-12, 0.0);
    }
}
