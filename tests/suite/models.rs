//! Every demo build loads without a word, has a position in every load case, and is in balance.

use std::fs;
use std::path::PathBuf;

use bedplate::model::{Model, file};
use bedplate::report::json;
use bedplate::rigid::equilibrium::StaticEquilibrium;
use bedplate::spatial::{Vec3, rotation_from_roll_pitch_yaw};
use bedplate::study::check::Verdict;
use bedplate::study::evaluate::{Evaluation, evaluate};

use nalgebra::Rotation3;
use serde_json::Value;

use crate::kit::assert_close;

/// Title of the file, checks that fail, lowest and highest frequency at rest [Hz].
///
/// The failing checks are part of the demonstration; the frequencies are regression.
const DEMOS: [(&str, &[&str], [f64; 2]); 5] = [
    (
        "coastal-hatchback",
        &[
            "joint.gearbox-side-to-rail.punching",
            "joint.gearbox-side-to-rail.wall-collapse",
            "joint.gearbox-side-to-rail.wall-yield",
        ],
        [7.1, 21.9],
    ),
    ("delivery-van-electric", &[], [14.7, 53.3]),
    ("forestry-pickup", &[], [6.5, 12.7]),
    (
        "hillclimb-single-seater",
        &["deflection.upper-left.u", "deflection.upper-right.u"],
        [10.5, 22.9],
    ),
    (
        "hillclimb-single-seater-solid",
        &["frequency.idle"],
        [52.0, 109.3],
    ),
];

fn path(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("models")
        .join(format!("{name}.toml"))
}

fn load(name: &str) -> (Model, Evaluation) {
    let checked = file::read(&fs::read(path(name)).unwrap()).unwrap();
    assert_eq!(checked.warnings, [], "{name} is read without a warning");
    let evaluation = evaluate(&checked.model).unwrap();
    (checked.model, evaluation)
}

#[test]
fn the_list_of_demos_is_the_folder() {
    let mut found: Vec<String> = fs::read_dir(path("x").parent().unwrap())
        .unwrap()
        .map(|entry| {
            entry
                .unwrap()
                .path()
                .file_stem()
                .unwrap()
                .to_string_lossy()
                .into_owned()
        })
        .collect();
    found.sort();
    let listed: Vec<&str> = DEMOS.iter().map(|(name, ..)| *name).collect();
    assert_eq!(found, listed);
}

#[test]
fn verdicts_and_frequencies_are_those_of_the_demonstration() {
    for (name, failing, [low, high]) in DEMOS {
        let (_, evaluation) = load(name);
        let mut fails: Vec<&str> = evaluation
            .checks
            .iter()
            .filter(|check| check.verdict == Verdict::Fails)
            .map(|check| check.id.as_str())
            .collect();
        fails.sort_unstable();
        assert_eq!(fails, failing, "{name}");
        let modes = &evaluation.modes[0].solution.modes;
        let ends = [&modes[0], &modes[modes.len() - 1]].map(|mode| mode.frequency_hz);
        assert_close(name, &ends, &[low, high], 0.0, 0.06);
    }
}

/// Invariant: weight, inertia forces, applied forces and mount reactions add to
/// nothing, in force and in moment about the datum, to 1e-9 of the largest.
#[test]
fn every_load_case_of_every_demo_is_in_balance() {
    for (name, ..) in DEMOS {
        let (model, evaluation) = load(name);
        for result in &evaluation.loads {
            let case = &model.loads[result.load].name;
            let found = result
                .outcome
                .as_ref()
                .unwrap_or_else(|failure| panic!("{name}, {case}: {failure}"));
            let (force, moment, scale) = unbalanced(found);
            assert!(
                force.norm() <= 1e-9 * scale,
                "{name}, {case}: {force:?} of {scale}"
            );
            assert!(
                moment.norm() <= 1e-9 * scale,
                "{name}, {case}: {moment:?} of {scale}"
            );
        }
    }
}

/// What is left of all forces, of all moments about the datum, and the largest force.
fn unbalanced(found: &StaticEquilibrium) -> (Vec3, Vec3, f64) {
    let centre = found.pose.position;
    let mut force = found.applied.force;
    let mut moment = found.applied.moment + centre.cross(&found.applied.force);
    let mut scale = found.applied.force.norm();
    for mount in &found.mounts {
        force += mount.force_on_powertrain;
        moment += (centre + mount.arm).cross(&mount.force_on_powertrain);
        moment += mount.moment_on_powertrain;
        scale = scale.max(mount.force_on_powertrain.norm());
    }
    (force, moment, scale)
}

/// Invariant, from outside: what the results document says of each load case adds up by itself,
/// and its rotation vector is that of the rotation it also gives as roll, pitch and yaw.
#[test]
fn the_results_document_of_every_demo_is_in_balance_by_itself() {
    let triple = |value: &Value| Vec3::from_fn(|axis, _| value[axis].as_f64().unwrap());
    for (name, ..) in DEMOS {
        let (model, evaluation) = load(name);
        let text = json::document(&model, &evaluation).unwrap();
        let document: Value = serde_json::from_str(&text).unwrap();
        for case in document["loads"].as_array().unwrap() {
            let centre = triple(&case["centre_of_gravity_m"]);
            let mut force = triple(&case["applied_wrench"]["force_n"]);
            let mut moment = triple(&case["applied_wrench"]["moment_nm"]);
            let mut scale = force.norm();
            for mount in case["mounts"].as_array().unwrap() {
                let held = triple(&mount["force_on_powertrain_n"]);
                force += held;
                moment += (triple(&mount["acts_at_m"]) - centre).cross(&held);
                moment += triple(&mount["moment_on_powertrain_nm"]);
                scale = scale.max(held.norm());
            }
            assert!(
                force.norm() <= 1e-9 * scale,
                "{name}, {}: {force:?}",
                case["name"]
            );
            assert!(
                moment.norm() <= 1e-9 * scale,
                "{name}, {}: {moment:?}",
                case["name"]
            );

            let vector = triple(&case["rotation_rad"]);
            let [roll, pitch, yaw] = triple(&case["roll_pitch_yaw_rad"]).into();
            let from_vector = Rotation3::from_scaled_axis(vector);
            let from_angles = rotation_from_roll_pitch_yaw(roll, pitch, yaw);
            let apart = from_vector.rotation_to(&from_angles).angle();
            assert!(apart <= 1e-7, "{name}, {}: {apart}", case["name"]);
        }
    }
}
