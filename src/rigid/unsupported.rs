//! Motions that nothing holds, in words a fabricator can act on.

use crate::numeric::{Eigen, NumericError, symmetric_eigen3};
use crate::spatial::{Mat3, Mat6, Vec3, Vec6};

/// Eigenvalue, as a share of the largest, below which a motion counts as held by nothing.
pub(crate) const UNHELD: f64 = 1e-9;

/// Eigenvalue, as a share of the largest, below which a motion counts as barely held.
///
/// # Source
/// Common practice.
pub(crate) const BARELY_HELD: f64 = 1e-4;

/// Cosine of the angle within which a direction is called by the name of a vehicle axis (20°).
///
/// # Source
/// Common practice.
const NAMED_COSINE: f64 = 0.939_692_620_785_908_4;

/// Distance of a mount from a line, in arm lengths, within which the line goes through the mount.
const ON_LINE: f64 = 1e-6;

/// How a free motion goes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum FreePath {
    /// Every point moves the same way.
    Slide {
        /// Unit vector in vehicle axes.
        direction: Vec3,
    },
    /// A turn about a line, with a slide along it when the pitch is not zero.
    Turn {
        /// Unit vector along the line, in vehicle axes.
        axis: Vec3,
        /// Point of the line nearest to the centre of gravity, in vehicle axes from the datum \[m\].
        through: Vec3,
        /// Slide along the line per turn angle [m/rad].
        pitch: f64,
    },
}

/// A motion of the powertrain that nothing holds, or nearly nothing.
#[derive(Debug, Clone, PartialEq)]
pub struct FreeMotion {
    /// How it goes.
    pub path: FreePath,
    /// As a noun phrase, e.g. "sliding sideways".
    pub words: String,
}

impl std::fmt::Display for FreeMotion {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.words)
    }
}

/// A place a line may be named by.
#[derive(Debug, Clone, Copy)]
pub(crate) struct NamedPoint<'a> {
    pub(crate) name: &'a str,
    /// In vehicle axes from the datum \[m\].
    pub(crate) at: Vec3,
}

/// Which part of a spectrum is meant.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Softness {
    Unheld,
    BarelyHeld,
}

/// Motions that belong to the small eigenvalues of a scaled symmetric stiffness.
///
/// `centre` is the centre of gravity the stiffness is about, `length` the arm length of its scaling.
///
/// # Source
/// Derived. The null space is split by its projector P: a pure slide `(t, 0)`
/// lies in it when `P_tt t = t`; what is left turns, and `P (0, e)` is the
/// motion in it that turns about e. A motion `(t, om)` is a screw about
/// `om/|om|` through `c + om × t/|om|²` with pitch `t·om/|om|²`.
pub(crate) fn free_motions(
    spectrum: &Eigen<Vec6, Mat6>,
    softness: Softness,
    centre: &Vec3,
    length: f64,
    points: &[NamedPoint<'_>],
) -> Result<Vec<FreeMotion>, NumericError> {
    let largest = spectrum.values.amax();
    let mut projector = Mat6::zeros();
    for (value, column) in spectrum.values.iter().zip(spectrum.vectors.column_iter()) {
        let inside = match softness {
            Softness::Unheld => value.abs() <= UNHELD * largest,
            Softness::BarelyHeld => {
                value.abs() > UNHELD * largest && value.abs() <= BARELY_HELD * largest
            }
        };
        if inside {
            projector += column * column.transpose();
        }
    }
    // Nothing mixes exactly into a true null space; a soft motion is called a
    // slide when its axis is more than 20 arm lengths away.
    let mixing: f64 = match softness {
        Softness::Unheld => 1e-10,
        Softness::BarelyHeld => 1.0 / 400.0,
    };
    let mut motions = Vec::new();
    let slides = projector.fixed_view::<3, 3>(0, 0).into_owned();
    for direction in directions_in(&range_projector(&slides, 1.0 - mixing)?) {
        motions.push(slide(&direction));
    }
    let turns = projector.fixed_view::<3, 3>(3, 3).into_owned();
    let eigen = symmetric_eigen3(&turns)?;
    for axis in directions_in(&range_projector(&turns, mixing)?) {
        let mut source = Vec3::zeros();
        for (value, column) in eigen.values.iter().zip(eigen.vectors.column_iter()) {
            if *value > mixing {
                source += column * (column.dot(&axis) / value);
            }
        }
        // Scaled rotation `axis`, that is a turn of 1/length.
        let moved = projector.fixed_view::<3, 3>(0, 3) * source;
        let through = centre + axis.cross(&moved) * length;
        let pitch = moved.dot(&axis) * length;
        motions.push(turn(&axis, &through, pitch, length, points));
    }
    Ok(motions)
}

/// Projector on the eigenvectors of a symmetric matrix with eigenvalues above a bound.
fn range_projector(a: &Mat3, above: f64) -> Result<Mat3, NumericError> {
    let eigen = symmetric_eigen3(a)?;
    let mut projector = Mat3::zeros();
    for (value, column) in eigen.values.iter().zip(eigen.vectors.column_iter()) {
        if *value > above {
            projector += column * column.transpose();
        }
    }
    Ok(projector)
}

/// Unit vectors that span the range of a projector, along vehicle axes where the range allows it.
fn directions_in(projector: &Mat3) -> Vec<Vec3> {
    let mut left = *projector;
    let mut found = Vec::new();
    while left.trace() > 0.5 && found.len() < 3 {
        let mut best = Vec3::zeros();
        for column in left.column_iter() {
            // A hair of preference keeps the first axis among equals.
            if column.norm_squared() > best.norm_squared() * (1.0 + 1e-9) {
                best = column.into_owned();
            }
        }
        let Some(unit) = best.try_normalize(0.0) else {
            break;
        };
        left -= unit * unit.transpose();
        found.push(unit);
    }
    found
}

fn slide(direction: &Vec3) -> FreeMotion {
    let words = match named_axis(direction) {
        Some(0) => "sliding fore-aft".to_owned(),
        Some(1) => "sliding sideways".to_owned(),
        Some(_) => "moving up and down".to_owned(),
        None => format!("sliding along {}", components(direction)),
    };
    FreeMotion {
        path: FreePath::Slide {
            direction: *direction,
        },
        words,
    }
}

fn turn(
    axis: &Vec3,
    through: &Vec3,
    pitch: f64,
    length: f64,
    points: &[NamedPoint<'_>],
) -> FreeMotion {
    let on_line: Vec<&NamedPoint<'_>> = points
        .iter()
        .filter(|point| (point.at - through).cross(axis).norm() <= ON_LINE * length)
        .collect();
    let verb = match named_axis(axis) {
        Some(0) => "rolling",
        Some(1) => "pitching",
        Some(_) => "yawing",
        None => "turning",
    };
    let mut words = match (on_line.as_slice(), named_axis(axis)) {
        ([.., _, _], _) => {
            let names: Vec<String> = on_line
                .iter()
                .map(|point| format!("`{}`", point.name))
                .collect();
            names
                .split_last()
                .map_or_else(String::new, |(last, before)| {
                    format!(
                        "turning about the line through {} and {last}",
                        before.join(", ")
                    )
                })
        }
        ([only], Some(_)) => format!("{verb} about `{}`", only.name),
        ([only], None) => format!(
            "turning about a line along {} through `{}`",
            components(axis),
            only.name
        ),
        ([], Some(_)) => format!("{verb} about a line through {}", millimetres(through)),
        ([], None) => format!(
            "turning about a line along {} through {}",
            components(axis),
            millimetres(through)
        ),
    };
    if pitch.abs() > ON_LINE * length {
        words.push_str(&format!(
            " while sliding along it {:.0} mm per turn",
            pitch.abs() * std::f64::consts::TAU * 1e3
        ));
    }
    FreeMotion {
        path: FreePath::Turn {
            axis: *axis,
            through: *through,
            pitch,
        },
        words,
    }
}

/// Vehicle axis within 20° of a unit vector, either way.
fn named_axis(direction: &Vec3) -> Option<usize> {
    direction.iter().position(|x| x.abs() >= NAMED_COSINE)
}

fn components(v: &Vec3) -> String {
    let [x, y, z] = [v.x, v.y, v.z].map(|x| rounded(x, 100.0));
    format!("({x:.2}, {y:.2}, {z:.2})")
}

fn millimetres(p: &Vec3) -> String {
    let [x, y, z] = [p.x, p.y, p.z].map(|x| rounded(x * 1e3, 1.0));
    format!("({x:.0}, {y:.0}, {z:.0}) mm")
}

/// Rounded to `1/steps`, without the sign of a zero.
fn rounded(x: f64, steps: f64) -> f64 {
    (x * steps).round() / steps + 0.0
}
