//! Isolators, in the results document, and one of them with its curve in a document of its own.

use serde::Serialize;

use crate::model::Model;
use crate::model::isolator::fluid::Fluid;
use crate::model::isolator::strain::Strains;
use crate::model::isolator::{AXIS_NAMES, Isolator};
use crate::report::content::isolators::bounds::{self, Bound};
use crate::report::content::isolators::curve::{Curve, CurvePoint};
use crate::report::content::isolators::rates::{self, AtFrequency, Rates};
use crate::report::content::isolators::{sheet, tension_word};

use super::model::AssumptionOut;
use super::{FORMAT, TOOL, triple, written};

/// One isolator by itself; rates along or about u, v, w at the free position.
#[derive(Serialize)]
pub(super) struct IsolatorOut<'a> {
    name: &'a str,
    /// Word of the model file.
    kind: &'static str,
    /// Whether it acts along its own line `w` only and swings.
    is_rod: bool,
    static_rates_n_per_m: [f64; 3],
    /// Storage part, in vibration of micrometres; of a fluid at 10 Hz.
    dynamic_rates_n_per_m: [f64; 3],
    /// The same in vibration of a millimetre and more.
    dynamic_rates_large_n_per_m: [f64; 3],
    /// Static.
    rotational_rates_nm_per_rad: [f64; 3],
    /// Storage part, in vibration of micrometres.
    dynamic_rotational_rates_nm_per_rad: [f64; 3],
    loss_factor: f64,
    /// Half-width of the band of the real rate, as a share.
    scatter: f64,
    /// `allowed`, `avoid` or `none`.
    tension: &'static str,
    /// As a share of the deflection at rest.
    creep: f64,
    /// `null` for metal.
    heat_limit_c: Option<f64>,
    /// `null` for metal and where nothing is known.
    rubber: Option<&'static str>,
    /// `null` without a fluid.
    fluid: Option<FluidOut>,
    /// Sentences without their full stop.
    remarks: &'a [String],
}

#[derive(Serialize)]
struct FluidOut {
    upper_rate_n_per_m: f64,
    lower_rate_n_per_m: f64,
    mass_kg: f64,
    damping_n_s_per_m: f64,
    /// Natural frequency in the track while the rubber is held.
    track_frequency_hz: f64,
    /// Rubber and fluid together along w, in vibration of micrometres.
    at: Vec<AtFrequencyOut>,
}

#[derive(Serialize)]
struct AtFrequencyOut {
    frequency_hz: f64,
    storage_n_per_m: f64,
    loss_n_per_m: f64,
}

pub(super) fn all(model: &Model) -> Vec<IsolatorOut<'_>> {
    model.isolators.iter().map(IsolatorOut::of).collect()
}

impl<'a> IsolatorOut<'a> {
    fn of(isolator: &'a Isolator) -> Self {
        let rates = Rates::of(isolator);
        let fluid = isolator.dynamics.fluid;
        Self {
            name: &isolator.name,
            kind: isolator.kind,
            is_rod: isolator.is_rod,
            static_rates_n_per_m: triple(&rates.at_rest),
            dynamic_rates_n_per_m: triple(&rates.small),
            dynamic_rates_large_n_per_m: triple(&rates.large),
            rotational_rates_nm_per_rad: triple(&rates.turning),
            dynamic_rotational_rates_nm_per_rad: triple(&rates.turning_small),
            loss_factor: isolator.dynamics.loss_factor,
            scatter: isolator.scatter,
            tension: tension_word(isolator.tension),
            creep: isolator.creep,
            heat_limit_c: isolator.heat_limit,
            rubber: isolator.compound.map(|compound| compound.name),
            fluid: fluid.map(|fluid| FluidOut::of(&fluid, isolator)),
            remarks: &isolator.remarks,
        }
    }
}

impl FluidOut {
    fn of(fluid: &Fluid, isolator: &Isolator) -> Self {
        let at = |at: AtFrequency| AtFrequencyOut {
            frequency_hz: at.frequency_hz,
            storage_n_per_m: at.storage,
            loss_n_per_m: at.loss,
        };
        Self {
            upper_rate_n_per_m: fluid.upper,
            lower_rate_n_per_m: fluid.lower,
            mass_kg: fluid.mass,
            damping_n_s_per_m: fluid.damping,
            track_frequency_hz: fluid.track_frequency_hz(),
            at: rates::by_frequency(isolator).into_iter().map(at).collect(),
        }
    }
}

/// The document of one isolator of the model: what stands of it in the results
/// document, how far it may go, its curve, and what was assumed of it.
///
/// # Errors
/// An error of the writer; in memory none is expected.
pub fn isolator(model: &Model, isolator: &Isolator) -> Result<String, serde_json::Error> {
    let curves = sheet::curves(model, isolator);
    let along = |axis: usize| {
        let curve = curves.iter().find(|curve| curve.axis == axis);
        curve.map_or_else(Vec::new, points)
    };
    written(&Document {
        format: FORMAT,
        tool: TOOL,
        part: IsolatorOut::of(isolator),
        limits: bounds::all(isolator).into_iter().map(limit).collect(),
        assumptions: sheet::assumed_of(model, isolator)
            .into_iter()
            .map(AssumptionOut::of)
            .collect(),
        curve: CurveOut {
            u: along(0),
            v: along(1),
            w: along(2),
        },
    })
}

#[derive(Serialize)]
struct Document<'a> {
    format: u32,
    tool: &'static str,
    #[serde(flatten)]
    part: IsolatorOut<'a>,
    limits: Vec<LimitOut>,
    assumptions: Vec<AssumptionOut<'a>>,
    curve: CurveOut,
}

#[derive(Serialize)]
struct LimitOut {
    /// `u`, `v` or `w`.
    axis: &'static str,
    /// `limit`, `stop`, `most at rest`, `most in use` or `most in rare loads`.
    kind: &'static str,
    /// `below` or `above` the free position.
    sense: &'static str,
    /// Along the axis alone; negative below.
    deflection_m: f64,
    /// Where it comes from.
    basis: String,
}

fn limit(bound: Bound) -> LimitOut {
    LimitOut {
        axis: AXIS_NAMES.get(bound.axis).copied().unwrap_or_default(),
        kind: bound.kind.word(),
        sense: if bound.deflection < 0.0 {
            "below"
        } else {
            "above"
        },
        deflection_m: bound.deflection,
        basis: bound.basis,
    }
}

/// Points of rising deflection along each axis; none along an axis without a rate.
#[derive(Serialize)]
struct CurveOut {
    u: Vec<PointOut>,
    v: Vec<PointOut>,
    w: Vec<PointOut>,
}

#[derive(Serialize)]
struct PointOut {
    deflection_m: f64,
    /// What holds the deflection.
    force_n: f64,
    /// Static.
    rate_n_per_m: f64,
    /// `null` when the size of the rubber is not known.
    strain: Option<StrainOut>,
    /// What lies there, such as `free`, `limit`, `stop`, `on stop` or `beyond measured`.
    marks: Vec<&'static str>,
}

#[derive(Serialize)]
struct StrainOut {
    compression: f64,
    tension: f64,
    shear: f64,
}

fn points(curve: &Curve) -> Vec<PointOut> {
    let point = |point: &CurvePoint| PointOut {
        deflection_m: point.deflection,
        force_n: point.force,
        rate_n_per_m: point.rate,
        strain: point.strains.map(|strains: Strains| StrainOut {
            compression: strains.compression,
            tension: strains.tension,
            shear: strains.shear,
        }),
        marks: point.marks.iter().map(|mark| mark.word()).collect(),
    };
    curve.points.iter().map(point).collect()
}
