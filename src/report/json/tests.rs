//! The results document has every key, and only finite numbers.

use std::collections::BTreeSet;

use serde_json::Value;

use super::*;
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

#[test]
fn the_layout_is_pinned() {
    let mut found = BTreeSet::new();
    paths(&parsed(), "", &mut found);
    let listed = include_str!("keys.txt")
        .lines()
        .map(str::to_owned)
        .collect();
    let missing: Vec<_> = BTreeSet::difference(&listed, &found).collect();
    let unlisted: Vec<_> = found.difference(&listed).collect();
    assert!(missing.is_empty(), "no longer written: {missing:#?}");
    assert!(unlisted.is_empty(), "written, not listed: {unlisted:#?}");
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
    assert!(document.get("joints").is_none());
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
