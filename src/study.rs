//! Studies: what is computed from a checked model, wired together in one function.
//!
//! [`evaluate`](evaluate::evaluate) is the one way from a [`Model`](crate::model::Model) to an [`Evaluation`].

pub mod check;
pub mod evaluate;

pub use evaluate::{Axes, Envelope, Evaluation, Idle, LoadResult, ModesAt};
