//! Stress of a tightened bolt under its working load.

use std::f64::consts::PI;

use super::tightening::FLANK;
use crate::model::fastener::Thread;

/// Share of the twist of tightening that is still in the bolt when it works.
///
/// # Source
/// VDI 2230-1:2003, section 5.5.2, from memory.
const TWIST_LEFT: f64 = 0.5;

/// Stress of the bolt under its largest preload and the share of the working load it takes \[Pa\].
///
/// # Equation
///   σ = √(σz² + 3 (k τ)²),   σz = (F + ΔF)/As
///   τ = F d2/2 (P/(π d2) + 1.155 μG)/(π d0³/16),   k = 0.5
///
///   F, ΔF  largest preload, what the working load adds  \[N\]
///   μG     friction in the thread; the low end goes with the largest preload
///
/// # Range
/// Compare with the yield strength. No bending of the bolt.
///
/// # Source
/// VDI 2230-1:2003, section 5.5.2, from memory.
#[must_use]
pub fn working_stress(thread: &Thread, preload: f64, added: f64, thread_friction: f64) -> f64 {
    let d2 = thread.pitch_diameter();
    let pull = (preload + added) / thread.stress_area();
    let moment = preload * d2 / 2.0 * (thread.pitch / (PI * d2) + FLANK * thread_friction);
    let twist = moment / (PI / 16.0 * thread.stress_diameter().powi(3));
    (pull * pull + 3.0 * (TWIST_LEFT * twist).powi(2)).sqrt()
}
