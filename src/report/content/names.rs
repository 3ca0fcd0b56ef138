//! Names of the model's things by their place in its lists.

use crate::model::Model;
use crate::model::isolator::AXIS_NAMES;
use crate::rigid::modes::{MOTION_NAMES, Mode};
use crate::spatial::{Mat3, Vec3};

/// Said where a place points past the end of a list, which no checked model does.
const NOT_IN_THE_MODEL: &str = "(not in the model)";

/// Shares of a mode's kinetic energy that add to 1, each with its word: the motions, then the fluid where there is any.
pub(crate) fn energy(mode: &Mode) -> impl Iterator<Item = (f64, &'static str)> {
    let fluid = (mode.fluid_share > 0.0).then_some((mode.fluid_share, "fluid"));
    let motions = mode.energy_share.iter().copied().zip(MOTION_NAMES);
    motions.chain(fluid)
}

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

/// An axis nearer than this to an axis of the vehicle is said in one word \[rad\].
const ONE_WORD: f64 = 5.0 * std::f64::consts::PI / 180.0;

/// Where each of a mount's own axes u, v, w (columns) points.
pub(crate) fn axes(axes: &Mat3) -> String {
    let words: Vec<Option<&str>> = axes
        .column_iter()
        .map(|a| one_word(&a.into_owned()))
        .collect();
    let said: Vec<String> = AXIS_NAMES
        .iter()
        .zip(axes.column_iter().zip(&words))
        .map(|(name, (axis, word))| match word {
            Some(word) => format!("{name} {word}"),
            None => format!("{name} {}", direction(&axis.into_owned())),
        })
        .collect();
    // Components have commas of their own.
    let between = if words.contains(&None) { "; " } else { ", " };
    said.join(between)
}

fn one_word(unit: &Vec3) -> Option<&'static str> {
    let least = ONE_WORD.cos();
    [("forward", "back"), ("left", "right"), ("up", "down")]
        .into_iter()
        .zip(unit.iter())
        .find_map(|((plus, minus), along)| {
            (along.abs() >= least).then_some(if *along > 0.0 { plus } else { minus })
        })
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn axes_near_those_of_the_vehicle_are_words() {
        let turned = |degrees: f64| {
            *nalgebra::Rotation3::from_axis_angle(&Vec3::x_axis(), degrees.to_radians()).matrix()
        };
        assert_eq!(axes(&turned(4.9)), "u forward, v left, w up");
        assert_eq!(axes(&turned(180.0)), "u forward, v right, w down");
        assert_eq!(
            axes(&turned(45.0)),
            "u forward; v 0.00 forward, 0.71 left, 0.71 up; w 0.00 forward, -0.71 left, 0.71 up"
        );
    }
}
