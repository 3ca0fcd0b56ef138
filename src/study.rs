//! Studies: what is computed from a checked model, wired together in one function.
//!
//! [`evaluate`](evaluate::evaluate) is the one way from a [`Model`](crate::model::Model) to an
//! [`Evaluation`](evaluate::Evaluation).

pub mod axes;
pub mod check;
pub mod creep;
pub mod envelope;
pub mod evaluate;
pub mod frame_twist;
pub mod joint;
mod resting;
mod scatter;
