//! Fatigue damage of a load history, or of the spectrum of a random one.
//!
//! Knows neither what is loaded nor in which unit: stress, force or deflection
//! in, the same unit out.

pub mod damage;
pub mod rainflow;
pub mod spectrum;
