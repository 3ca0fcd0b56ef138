//! What the powertrain rests on: laws of isolators, and what is known beside the law.
//!
//! A kind is one file below this one and one line in [`KINDS`]. A kind gives a
//! [`Law`] (force and tangent at a deflection); stops, limits, dynamic ratio,
//! loss factor and scatter are the same for every kind and live here.

pub mod rates;
pub mod solid;
pub mod stop;

use std::sync::Arc;

use crate::spatial::{Mat3, Vec3};
use stop::AxisStops;

/// Force, tangent and energy of a law at one deflection, in mount axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LawPoint {
    /// Gradient of the energy [N]: force that holds the deflection, so the powertrain feels its negative.
    pub force: Vec3,
    /// Derivative of the force [N/m], symmetric.
    pub tangent: Mat3,
    /// Stored energy [J], zero at no deflection.
    pub energy: f64,
}

/// Elastic law of one isolator kind in its own axes u, v, w.
pub trait Law: std::fmt::Debug + Send + Sync {
    /// Force, tangent and energy at the isolator's own deflection `x` [m], powertrain side minus chassis side.
    fn at(&self, x: &Vec3) -> LawPoint;
}

/// Whether an isolator may be pulled along its own axis.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tension {
    /// Pulling is as good as pushing (a bush, a captive mount).
    Allowed,
    /// The maker or the design wants it pushed only; pulling is a failed check.
    Avoid,
}

/// Which direction of the list below a limit or a verdict speaks of.
pub const AXIS_NAMES: [&str; 3] = ["u", "v", "w"];

/// One isolator of the file: a law and what belongs to the part beside it.
#[derive(Debug, Clone)]
#[non_exhaustive]
pub struct Isolator {
    /// Name in the file.
    pub name: String,
    /// Kind as written in the file.
    pub kind: &'static str,
    /// Static law of the rubber or metal, without stops.
    pub law: Arc<dyn Law>,
    /// Stops along u, v, w, in parallel to the law.
    pub stops: [AxisStops; 3],
    /// Largest deflection either way for a long life, along u, v, w [m].
    pub limits: [Option<f64>; 3],
    /// Ratio of the rate in vibration to the static rate.
    pub dynamic_ratio: f64,
    /// Loss factor in vibration (imaginary part over real part of the dynamic rate).
    pub loss_factor: f64,
    /// Half-width of the band the real rate lies in, as a share of the rate.
    pub scatter: f64,
    /// Whether it may be pulled along `w`.
    pub tension: Tension,
}

/// What an isolator does at a deflection, stops included.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct IsolatorState {
    /// Law and stops together.
    pub point: LawPoint,
    /// Part of the tangent that the stops give [N/m], a diagonal.
    pub stop_tangent: Vec3,
    /// Whether a stop is touched, along u, v, w.
    pub on_stop: [bool; 3],
}

impl Isolator {
    /// An isolator with a law and nothing else: no stops, no limits, dynamic rate equal to the static one, no loss, no scatter.
    #[must_use]
    pub fn new(name: impl Into<String>, kind: &'static str, law: Arc<dyn Law>) -> Self {
        Self {
            name: name.into(),
            kind,
            law,
            stops: [AxisStops::NONE; 3],
            limits: [None; 3],
            dynamic_ratio: 1.0,
            loss_factor: 0.0,
            scatter: 0.0,
            tension: Tension::Allowed,
        }
    }

    /// Force, tangent and energy at the isolator's own deflection `x` [m], stops included.
    #[must_use]
    pub fn at(&self, x: &Vec3) -> IsolatorState {
        let mut state = IsolatorState {
            point: self.law.at(x),
            stop_tangent: Vec3::zeros(),
            on_stop: [false; 3],
        };
        for (axis, stops) in self.stops.iter().enumerate() {
            let Some(contact) = stops.contact(x[axis]) else {
                continue;
            };
            state.point.force[axis] += contact.force;
            state.point.tangent[(axis, axis)] += contact.tangent;
            state.point.energy += contact.energy;
            state.stop_tangent[axis] = contact.tangent;
            state.on_stop[axis] = true;
        }
        state
    }

    /// Storage and loss parts of the dynamic rate [N/m] about the deflection of `state`.
    ///
    /// The dynamic ratio and the loss factor belong to the law, not to the stops.
    #[must_use]
    pub fn dynamic_rate(&self, state: &IsolatorState) -> (Mat3, Mat3) {
        let stops = Mat3::from_diagonal(&state.stop_tangent);
        let of_law = (state.point.tangent - stops) * self.dynamic_ratio;
        (of_law + stops, of_law * self.loss_factor)
    }
}
