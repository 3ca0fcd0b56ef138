//! The results document: one JSON object, in SI, for programs; and those of one [`isolator`] and one [`joint`].
//!
//! Units stand in the key names. Positions, displacements and directions are
//! in vehicle axes (x forward, y left, z up), deflections and rates of mounts
//! along the mount axes u, v, w. Displacements count from the fitted position
//! of the file; rotations are rotation vectors in vehicle axes unless the name says roll, pitch, yaw.
//!
//! Every key is always there, except where an entry of a list is left out: a
//! mount, point or clearance that a load case takes away, and all of them in a
//! case without a position. What is unknown or not finite is `null`. Order is
//! that of the model file; checks stand the worst first. [`FORMAT`] grows when
//! a key changes its meaning, not when one is added.

mod checks;
mod isolators;
mod joints;
mod loads;
mod model;
mod modes;
mod service;

use serde::Serialize;

pub use isolators::isolator;
pub use joints::joint;

use crate::model::Model;
use crate::spatial::{Mat3, Vec3};
use crate::study::evaluate::Evaluation;

/// Version of the layout.
pub const FORMAT: u32 = 1;

/// Program and version, as every document names it.
const TOOL: &str = concat!("bedplate ", env!("CARGO_PKG_VERSION"));

/// The document as text, indented, with a line end.
///
/// # Errors
/// An error of the writer; in memory none is expected.
pub fn document(model: &Model, evaluation: &Evaluation) -> Result<String, serde_json::Error> {
    let results = Results {
        format: FORMAT,
        tool: TOOL,
        title: &model.title,
        build: model::BuildOut::of(model),
        isolators: isolators::all(model),
        joints: joints::all(model, evaluation),
        loads: evaluation
            .loads
            .iter()
            .map(|result| loads::LoadOut::of(model, result))
            .collect(),
        envelopes: loads::envelopes(model, evaluation),
        modes: modes::all(model, evaluation),
        axes: modes::AxesOut::of(&evaluation.axes),
        idle: evaluation.idle.map(|idle| IdleOut {
            order: idle.order,
            frequency_hz: idle.frequency_hz,
        }),
        creep: service::creep(model, evaluation),
        frame_twist: service::frame_twist(model, evaluation),
        verdicts: checks::Counts::of(evaluation),
        checks: checks::all(model, evaluation),
    };
    written(&results)
}

fn written(document: &impl Serialize) -> Result<String, serde_json::Error> {
    let mut text = serde_json::to_string_pretty(document)?;
    text.push('\n');
    Ok(text)
}

/// Top level of the document.
#[derive(Serialize)]
struct Results<'a> {
    format: u32,
    tool: &'static str,
    title: &'a str,
    #[serde(flatten)]
    build: model::BuildOut<'a>,
    isolators: Vec<isolators::IsolatorOut<'a>>,
    joints: Vec<joints::JointOut<'a>>,
    loads: Vec<loads::LoadOut<'a>>,
    envelopes: Vec<loads::EnvelopeOut<'a>>,
    modes: Vec<modes::ModesOut<'a>>,
    #[serde(flatten)]
    axes: modes::AxesOut,
    idle: Option<IdleOut>,
    creep: Option<service::CreepOut<'a>>,
    frame_twist: Vec<service::FrameTwistOut<'a>>,
    verdicts: checks::Counts,
    checks: Vec<checks::CheckOut<'a>>,
}

#[derive(Serialize)]
struct IdleOut {
    order: f64,
    frequency_hz: f64,
}

/// A number that JSON can hold.
fn finite(value: f64) -> Option<f64> {
    value.is_finite().then_some(value)
}

fn triple(v: &Vec3) -> [f64; 3] {
    [v.x, v.y, v.z]
}

fn rows(m: &Mat3) -> [[f64; 3]; 3] {
    [0, 1, 2].map(|row| [0, 1, 2].map(|column| m[(row, column)]))
}

#[cfg(test)]
mod tests;
