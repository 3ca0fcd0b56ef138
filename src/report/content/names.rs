//! Names of the model's things by their place in its lists.

use crate::model::Model;
use crate::spatial::Vec3;

/// Said where a place points past the end of a list, which no checked model does.
const NOT_IN_THE_MODEL: &str = "(not in the model)";

/// Motions of the powertrain along and about x, y, z in the words of the trade.
pub(crate) const MOTIONS: [&str; 6] = ["fore-aft", "lateral", "bounce", "roll", "pitch", "yaw"];

pub(crate) fn load(model: &Model, place: usize) -> &str {
    model
        .loads
        .get(place)
        .map_or(NOT_IN_THE_MODEL, |load| &load.name)
}

pub(crate) fn mount(model: &Model, place: usize) -> &str {
    model
        .mounts
        .get(place)
        .map_or(NOT_IN_THE_MODEL, |mount| &mount.name)
}

/// Direction in words of vehicle axes, for a unit vector.
pub(crate) fn direction(unit: &Vec3) -> String {
    let [x, y, z] = [unit.x, unit.y, unit.z].map(|c| {
        let rounded = format!("{c:.2}");
        if rounded == "-0.00" {
            "0.00".to_owned()
        } else {
            rounded
        }
    });
    format!("{x} forward, {y} left, {z} up")
}

/// Joins names to `a, b and c`.
pub(crate) fn and<S: AsRef<str>>(names: &[S]) -> String {
    match names {
        [] => String::new(),
        [only] => only.as_ref().to_owned(),
        [first @ .., last] => {
            let first: Vec<&str> = first.iter().map(AsRef::as_ref).collect();
            format!("{} and {}", first.join(", "), last.as_ref())
        }
    }
}
