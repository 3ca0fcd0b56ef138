//! The results document has every key, and only finite numbers.

use std::collections::BTreeSet;

use serde_json::Value;

use super::*;
use crate::model::isolator::Isolator;
use crate::model::isolator::fluid::Fluid;
use crate::model::isolator::strain::StrainMeasure;
use crate::report::fixture;

/// Paths of all keys; entries of a list share one path, names of mounts are a star.
fn paths(value: &Value, at: &str, found: &mut BTreeSet<String>) {
    match value {
        Value::Object(map) => {
            for (key, inner) in map {
                let by_name = at.ends_with("mount_strain_share");
                let path = format!("{at}.{}", if by_name { "*" } else { key });
                let path = path.trim_start_matches('.').to_owned();
                paths(inner, &path, found);
                found.insert(path);
            }
        }
        Value::Array(items) => {
            for item in items {
                paths(item, &format!("{at}[]"), found);
            }
        }
        _ => {}
    }
}

fn parsed() -> Value {
    let (model, evaluation) = fixture::build();
    serde_json::from_str(&document(&model, &evaluation).unwrap()).unwrap()
}

/// Fails for each key that a document has and its list lacks, and the other way round.
fn assert_pinned(document: &Value, list: &str) {
    let mut found = BTreeSet::new();
    paths(document, "", &mut found);
    let listed = list.lines().map(str::to_owned).collect();
    let missing: Vec<_> = BTreeSet::difference(&listed, &found).collect();
    let unlisted: Vec<_> = found.difference(&listed).collect();
    assert!(missing.is_empty(), "no longer written: {missing:#?}");
    assert!(unlisted.is_empty(), "written, not listed: {unlisted:#?}");
}

#[test]
fn the_layouts_are_pinned() {
    assert_pinned(&parsed(), include_str!("keys.txt"));
    assert_pinned(&parsed_isolator(known), include_str!("isolator_keys.txt"));
}

/// Gives a part all that can be known of one.
fn known(part: &mut Isolator) {
    part.dynamics.fluid = Some(Fluid {
        upper: 2e5,
        lower: 1e3,
        mass: 50.0,
        damping: 100.0,
    });
    part.strain = Some(StrainMeasure::Block {
        height: 30e-3,
        lean: 0.0,
    });
    part.remarks.push("Invented".to_owned());
}

/// The document of a joint is its entry in the results document, with its checks.
#[test]
fn the_document_of_a_joint_is_its_entry_with_its_checks() {
    let (model, _) = fixture::build();
    let evaluation = crate::study::evaluate::evaluate(&model).unwrap();
    let whole: Value = serde_json::from_str(&document(&model, &evaluation).unwrap()).unwrap();
    for (place, (named, result)) in model.joints.iter().zip(&evaluation.joints).enumerate() {
        let alone = joint(&model, &evaluation, named, result).unwrap();
        let mut alone: Value = serde_json::from_str(&alone).unwrap();
        let map = alone.as_object_mut().unwrap();
        assert_eq!(map.remove("format"), Some(1.into()));
        assert!(map.remove("tool").is_some());
        let checks = map.remove("checks").unwrap();
        assert_eq!(alone, whole["joints"][place]);
        let all = whole["checks"].as_array().unwrap();
        let own = checks.as_array().unwrap();
        assert!(own.iter().all(|check| all.contains(check)));
        let required = result.requirements.len() + result.unjudged.len();
        assert_eq!(own.len(), required);
    }
}

/// Derived: 60 N m as the file says; M12 has 84.3 mm² (ISO 898-1); two bolts, six load cases less those without a position.
#[test]
fn a_joint_is_told_in_si() {
    let document = parsed();
    let joint = &document["joints"][0];
    assert_eq!(joint["name"], "right <to> rail");
    assert_eq!(joint["mount"], "front right");
    assert_eq!(joint["torque_nm"], 60.0);
    assert_eq!(joint["bolt"]["torque_is_stated"], true);
    let area = joint["bolt"]["stress_area_m2"].as_f64().unwrap();
    approx::assert_relative_eq!(area, 84.3e-6, max_relative = 1e-3);
    assert_eq!(joint["sleeve"]["gap_m"], 0.05e-3);
    for load in joint["bolts"].as_array().unwrap() {
        let force = load["wrench"]["force_n"][2].as_f64().unwrap();
        let pulls = load["forces"].as_array().unwrap();
        assert_eq!(pulls.len(), 2);
        let sum: f64 = pulls
            .iter()
            .map(|bolt| bolt["axial_n"].as_f64().unwrap())
            .sum();
        // What presses needs no bolt; what pulls is shared by them, and a lever on the edge adds to it.
        assert!(sum >= force - 1e-6, "{sum} for {force}");
    }
    let tube = &document["joints"][1];
    assert!(tube["sleeve"].is_null() && tube["rail"]["face_mechanism_n"].is_null());
    assert!(tube["sizing"].is_null());
    assert_eq!(tube["not_checked"][0]["id"], "fatigue");
}

fn parsed_isolator(change: impl FnOnce(&mut Isolator)) -> Value {
    let (mut model, _) = fixture::build();
    change(&mut model.isolators[0]);
    serde_json::from_str(&isolator(&model, &model.isolators[0]).unwrap()).unwrap()
}

/// Derived: 95 and 330 N/mm, 1.3 times that in vibration of micrometres, 7 mm of limit and a tenth more.
#[test]
fn the_document_of_an_isolator_holds_its_rates_and_its_curve() {
    let part = parsed_isolator(|_| {});
    assert_eq!(part["format"], 1);
    assert_eq!(part["name"], "wedge");
    assert_eq!(
        part["static_rates_n_per_m"],
        serde_json::json!([95e3, 95e3, 330e3])
    );
    let dynamic = part["dynamic_rates_n_per_m"][2].as_f64().unwrap();
    approx::assert_relative_eq!(dynamic, 1.3 * 330e3, max_relative = 1e-12);
    assert!(part["fluid"].is_null());
    let w = part["curve"]["w"].as_array().unwrap();
    let limit = w.iter().find(|point| point["marks"][0] == "limit").unwrap();
    approx::assert_relative_eq!(limit["deflection_m"].as_f64().unwrap(), -7e-3);
    approx::assert_relative_eq!(
        limit["force_n"].as_f64().unwrap(),
        -2310.0,
        max_relative = 1e-12
    );
    assert!(limit["strain"].is_null());
    let limits = part["limits"].as_array().unwrap();
    assert_eq!(limits[0]["axis"], "u");
    assert_eq!(limits[0]["sense"], "below");
    assert_eq!(limits[0]["basis"], "`limits.u` of isolator wedge");
    let metal = parsed_isolator(|part| {
        part.heat_limit = None;
        part.limits[2] = Some(f64::INFINITY);
    });
    assert!(metal["heat_limit_c"].is_null());
}

/// A name may start with another one and a point.
#[test]
fn an_isolator_has_its_own_assumptions_alone() {
    let (mut model, _) = fixture::build();
    let mut other = model.isolators[0].clone();
    other.name = "wedge.soft".to_owned();
    model.isolators.push(other);
    for key in ["isolator.wedge.soft.creep", "isolator.wedges.creep"] {
        model.assumptions.push(crate::model::Assumption {
            key: key.to_owned(),
            text: "x".to_owned(),
        });
    }
    let keys = |place: usize| -> Vec<String> {
        let text = isolator(&model, &model.isolators[place]).unwrap();
        let part: Value = serde_json::from_str(&text).unwrap();
        let list = part["assumptions"].as_array().unwrap().clone();
        list.iter()
            .map(|a| a["key"].as_str().unwrap().to_owned())
            .collect()
    };
    assert_eq!(keys(1), ["isolator.wedge.soft.creep"]);
    assert!(keys(0).iter().any(|key| key == "isolator.wedge.creep"));
    assert!(
        keys(0)
            .iter()
            .all(|key| !key.contains("soft") && !key.contains("wedges"))
    );
}

#[test]
fn the_version_comes_first_and_mounts_keep_the_order_of_the_file() {
    let (model, evaluation) = fixture::build();
    let text = document(&model, &evaluation).unwrap();
    assert!(text.starts_with("{\n  \"format\": 1,\n  \"tool\": \"bedplate "));
    let shares = text.split("\"mount_strain_share\"").nth(1).unwrap();
    assert!(shares.find("upper").unwrap() < shares.find("front right").unwrap());
    assert!(shares.find("front right").unwrap() < shares.find("rear").unwrap());
}

#[test]
fn values_are_si_and_the_chassis_feels_the_opposite() {
    let document = parsed();
    let mount = &document["loads"][0]["mounts"][0];
    assert_eq!(mount["isolator_deflection_m"][2], fixture::DEFLECTION_W);
    let [there, back] =
        ["force_on_powertrain_n", "force_on_chassis_n"].map(|key| mount[key][2].as_f64().unwrap());
    assert!(there > 100.0);
    approx::assert_relative_eq!(there, -back);
    assert_eq!(document["checks"][0]["verdict"], "fails");
    assert_eq!(document["checks"][0]["unit"], "m");
    approx::assert_relative_eq!(
        document["checks"][0]["margin"].as_f64().unwrap(),
        -0.003,
        max_relative = 1e-9
    );
}

#[test]
fn a_case_without_a_position_says_why_and_what_is_taken_away_is_left_out() {
    let document = parsed();
    let failed = &document["loads"][1];
    assert_eq!(failed["converged"], false);
    assert!(!failed["failure"].as_str().unwrap().is_empty());
    assert_eq!(failed["mounts"].as_array().unwrap().len(), 0);
    assert!(failed["displacement_m"].is_null());
    assert_eq!(document["loads"][2]["mounts"].as_array().unwrap().len(), 3);
}

#[test]
fn what_is_not_finite_is_null() {
    let (model, mut evaluation) = fixture::build();
    fixture::spoil_numbers(&mut evaluation);
    let text = document(&model, &evaluation).unwrap();
    let document: Value = serde_json::from_str(&text).unwrap();
    assert!(document["loads"][0]["displacement_m"][2].is_null());
    assert!(document["checks"][0]["value"].is_null());
    assert!(document["checks"][0]["margin"].is_null());
    assert!(document["modes"][0]["modes"][1]["frequency_hz"].is_null());
}
