//! Where to support a powertrain in a chassis that was not made for it, on
//! what, and what comes of it.
//!
//! One model file describes a build. Reading it gives a checked
//! [`Model`](model::Model) in SI; evaluating the model gives every result; the
//! report writes them for people and for programs.
//!
//! ```
//! use bedplate::model::file;
//! use bedplate::study::evaluate::evaluate;
//!
//! let text = include_str!("../models/forestry-pickup.toml");
//! let checked = file::read(text.as_bytes()).map_err(|problems| format!("{problems:?}"))?;
//! let evaluation = evaluate(&checked.model)?;
//!
//! // The mounts carry the 300 kg at rest.
//! let rest = evaluation.loads[0].outcome.as_ref().map_err(Clone::clone)?;
//! let lift: f64 = rest.mounts.iter().map(|mount| mount.force_on_powertrain.z).sum();
//! assert!((lift - 300.0 * 9.80665).abs() < 1e-6);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! # Conventions
//!
//! SI inside (kg, m, s, N, rad). Axes x forward, y left, z up (ISO 8855), one
//! frame for the whole file. Six-vectors are translation first, then rotation.
//! `force_on_powertrain` is what a mount does to the powertrain. Accelerations
//! of a load case are those of the vehicle, gravity not included. Frames and
//! letters: [`spatial`].
//!
//! # Reading order
//!
//! [`units`], [`spatial`], [`numeric`], [`diagnostic`]; then [`model`]; then
//! [`rigid`], [`drive`], [`strength`], [`road`] and [`history`]; then [`study`]; then
//! `report`. A module uses those before it, never those after.
//!
//! The library never prints, never ends the process and never reads the
//! environment.
#![allow(
    non_snake_case,
    reason = "frame letters in names of vectors and rotations: see `spatial`"
)]

pub mod diagnostic;
pub mod drive;
pub mod history;
pub mod model;
pub mod numeric;
pub mod report;
pub mod rigid;
pub mod road;
pub mod spatial;
pub mod strength;
pub mod study;
pub mod units;

/// The programs on the front page are run with the documentation tests.
#[cfg(doctest)]
#[doc = include_str!("../README.md")]
struct FrontPage;
