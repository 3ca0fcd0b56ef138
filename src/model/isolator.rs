//! What the powertrain rests on: laws of isolators, and what is known beside the law.
//!
//! A kind is one file below this one and one line in `KINDS`. A kind makes a
//! [`Law`] (force and tangent at a deflection) of its keys, and says what is
//! usual for it. What every kind has lives here and in [`stop`], [`service`],
//! [`dynamic`].
//!
//! Section `[isolator.NAME]`, keys of every kind; those of one kind are in its file:
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `kind` | how it is described: `"rates"`, `"block"`, `"bush"`, `"curve"`, `"rod"`, `"hydraulic"`, `"polyurethane"`, `"solid"` | word | needed |
//! | `measured_rates` | static rates at the free position, measured or from a catalogue, in place of those of a formula; rates about its axes stay those of the formula | linear rate | from the formula |
//! | `rotational_rates` | static rates about u, v, w, or one for all three | angular rate | by kind |
//! | `stiffening` | deflections beyond which it grows stiffer: see [`stiffening`] | table | none |
//! | `stops` | free travel and rate of its stops: see [`stop`] | table | none |
//! | `limits` | `{ u, v, w }`: largest deflection either way for a long life | lengths | not checked |
//! | `dynamic_ratio` | rate in vibration of micrometres over static rate, 0.5 to 10 | ratio | by kind |
//! | `dynamic_ratio_large` | the same in vibration of a millimetre and more | ratio | by kind |
//! | `dynamic_rates` | rates in vibration of micrometres along u, v, w, of the rubber alone where there is fluid, in place of `dynamic_ratio` | linear rate | from `dynamic_ratio` |
//! | `loss_factor` | loss factor in vibration, 0 to 2 | ratio | by kind |
//! | `scatter` | half-width of the band of the real rate, 0 to 0.9 | ratio | by kind |
//! | `tension` | whether it may be pulled along `w`: `"allowed"`, `"avoid"`, or `"none"` when it lifts off | word | by kind |
//! | `temperature`, `temperature_factor`, `age_factor`, `creep`, `heat_limit` | what heat, age and time do to it: see [`service`] | | by kind |

pub mod altered;
pub mod block;
pub mod bush;
pub mod curve;
mod description;
pub mod dynamic;
pub mod fluid;
pub mod hydraulic;
pub mod law;
mod limit;
mod one_sided;
pub mod polyurethane;
pub mod rates;
pub mod rod;
pub mod rubber;
mod section;
pub mod service;
pub mod solid;
pub mod stiffening;
pub mod stop;
pub mod strain;

use std::sync::Arc;

use crate::spatial::Vec3;

pub(crate) use description::{Description, Kind, Usual};
pub use dynamic::{Amplitude, Dynamics, Vibration};
pub use law::{AxisPoint, Law, LawPoint};
use rubber::Compound;
pub(super) use section::read;
use stop::AxisStops;
use strain::StrainMeasure;

/// Every kind that a file can name.
const KINDS: &[Kind] = &[
    rates::KIND,
    block::KIND,
    bush::KIND,
    curve::KIND,
    rod::KIND,
    hydraulic::KIND,
    polyurethane::KIND,
    solid::KIND,
];

/// Whether an isolator may be pulled along its own axis.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tension {
    /// Pulling is as good as pushing (a bush, a captive mount).
    Allowed,
    /// The maker or the design wants it pushed only; pulling is a failed check.
    Avoid,
    /// It lies loose on its seat and lifts off; its law gives no force when pulled.
    None,
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
    /// Static law of the rubber or metal in service, without stops.
    pub law: Arc<dyn Law>,
    /// Static rates about u, v, w [N m/rad].
    pub rotational: Vec3,
    /// Whether it is a rod between two eyes: it acts along its own line and swings.
    pub is_rod: bool,
    /// Stops along u, v, w, in parallel to the law.
    pub stops: [AxisStops; 3],
    /// Largest deflection either way for a long life, along u, v, w \[m\].
    pub limits: [Option<f64>; 3],
    /// How a deflection strains the rubber; `None` when its size is not known.
    pub strain: Option<StrainMeasure>,
    /// Deflections that the law was measured for, along u, v, w \[m\]; `None` where it needs no measuring.
    pub measured: [Option<[f64; 2]>; 3],
    /// What it has in vibration.
    pub dynamics: Dynamics,
    /// Half-width of the band the real rate lies in, as a share of the rate.
    pub scatter: f64,
    /// Whether it may be pulled along `w`.
    pub tension: Tension,
    /// Creep in service, as a share of the deflection at rest.
    pub creep: f64,
    /// What it is made of; `None` for metal and where nothing is known.
    pub compound: Option<&'static Compound>,
    /// Hottest it lasts at \[°C\]; `None` for metal.
    pub heat_limit: Option<f64>,
    /// How its numbers came about and what to keep in mind, each a sentence without its full stop.
    pub remarks: Vec<String>,
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
            rotational: Vec3::zeros(),
            is_rod: false,
            stops: [AxisStops::NONE; 3],
            limits: [None; 3],
            strain: None,
            measured: [None; 3],
            dynamics: Dynamics::STATIC,
            scatter: 0.0,
            tension: Tension::Allowed,
            creep: 0.0,
            compound: None,
            heat_limit: None,
            remarks: Vec::new(),
        }
    }

    /// Whether w is the axis that a weight pushes it along: not of a rod, nor of a bush, whose w is its centre line.
    #[must_use]
    pub fn is_pushed_along_w(&self) -> bool {
        !self.is_rod && !matches!(self.strain, Some(StrainMeasure::Bush { .. }))
    }

    /// Force, tangent and energy at the isolator's own deflection `x` \[m\], stops included.
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
            state.point = state.point.plus(axis, contact);
            state.stop_tangent[axis] = contact.tangent;
            state.on_stop[axis] = true;
        }
        state
    }
}
