//! Modes and axes, in the results document.

use serde::{Serialize, Serializer};

use crate::model::Model;
use crate::report::content::names;
use crate::rigid::axes::ElasticAxes;
use crate::rigid::modes::Mode;
use crate::spatial::Vec6;
use crate::study::Evaluation;

use super::triple;

#[derive(Serialize)]
pub(super) struct ModesOut<'a> {
    /// Load case about whose position these modes swing.
    at: &'a str,
    modes: Vec<ModeOut<'a>>,
}

#[derive(Serialize)]
struct ModeOut<'a> {
    frequency_hz: f64,
    /// Set when the motion grows instead of swinging; the frequency is then zero.
    growth_rate_per_s: Option<f64>,
    damping_ratio: f64,
    name: &'a str,
    /// Translation of the centre of gravity, then rotation, with unit modal mass.
    shape: [f64; 6],
    /// Share of the kinetic energy along and about x, y, z, adding to 1.
    energy_share: [f64; 6],
    /// Share of the strain energy by mount; with `geometric_strain_share` they add to 1.
    mount_strain_share: ByName<'a>,
    geometric_strain_share: f64,
    /// Share of the motion about the torque roll axis.
    torque_share: Option<f64>,
}

/// Numbers by name, in the order of the file.
struct ByName<'a>(Vec<(&'a str, f64)>);

impl Serialize for ByName<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.iter().copied())
    }
}

#[derive(Serialize)]
pub(super) struct AxesOut {
    torque_roll_axis: Option<AxisOut>,
    /// Centre of stiffness; `elastic_axes.is_centre` says whether pushes through it turn nothing at all.
    elastic_centre_m: Option<[f64; 3]>,
    elastic_axes: Option<ElasticOut>,
    torque_roll_from_crank_m: Option<f64>,
    elastic_centre_from_crank_m: Option<f64>,
}

#[derive(Serialize)]
struct AxisOut {
    direction: [f64; 3],
    through_m: [f64; 3],
}

#[derive(Serialize)]
struct ElasticOut {
    is_centre: bool,
    stiffness_centre_m: [f64; 3],
    compliance_centre_m: [f64; 3],
    axes: Vec<ElasticAxisOut>,
}

#[derive(Serialize)]
struct ElasticAxisOut {
    direction: [f64; 3],
    through_m: [f64; 3],
    /// Moment along the axis per force along it.
    pitch_m: f64,
}

pub(super) fn all<'a>(model: &'a Model, evaluation: &'a Evaluation) -> Vec<ModesOut<'a>> {
    evaluation
        .modes
        .iter()
        .map(|at| {
            let held: &[usize] = evaluation
                .loads
                .iter()
                .find(|result| result.load == at.load)
                .map_or(&[], |result| &result.mounts);
            ModesOut {
                at: names::load(model, at.load),
                modes: at
                    .solution
                    .modes
                    .iter()
                    .enumerate()
                    .map(|(place, found)| {
                        let torque = at.torque_share.and_then(|s| s.get(place).copied());
                        mode(model, held, found, torque)
                    })
                    .collect(),
            }
        })
        .collect()
}

fn mode<'a>(
    model: &'a Model,
    held: &[usize],
    mode: &'a Mode,
    torque_share: Option<f64>,
) -> ModeOut<'a> {
    ModeOut {
        frequency_hz: mode.frequency_hz,
        growth_rate_per_s: mode.growth_rate,
        damping_ratio: mode.damping_ratio,
        name: &mode.name,
        shape: six(&mode.shape),
        energy_share: six(&mode.energy_share),
        mount_strain_share: ByName(
            held.iter()
                .map(|&place| names::mount(model, place))
                .zip(mode.mount_strain_share.iter().copied())
                .collect(),
        ),
        geometric_strain_share: mode.geometric_strain_share,
        torque_share,
    }
}

fn six(v: &Vec6) -> [f64; 6] {
    [0, 1, 2, 3, 4, 5].map(|i| v[i])
}

impl AxesOut {
    pub(super) fn of(evaluation: &Evaluation) -> Self {
        let axes = evaluation.axes.as_ref();
        Self {
            torque_roll_axis: axes.and_then(|axes| {
                Some(AxisOut {
                    direction: triple(&axes.torque_roll?),
                    through_m: triple(&axes.centre_of_gravity),
                })
            }),
            elastic_centre_m: axes.map(|axes| triple(&axes.elastic.stiffness_centre)),
            elastic_axes: axes.map(|axes| ElasticOut::of(&axes.elastic)),
            torque_roll_from_crank_m: axes.and_then(|axes| axes.torque_roll_from_crank),
            elastic_centre_from_crank_m: axes.and_then(|axes| axes.elastic_centre_from_crank),
        }
    }
}

impl ElasticOut {
    fn of(elastic: &ElasticAxes) -> Self {
        Self {
            is_centre: elastic.is_centre,
            stiffness_centre_m: triple(&elastic.stiffness_centre),
            compliance_centre_m: triple(&elastic.compliance_centre),
            axes: elastic
                .axes
                .iter()
                .map(|axis| ElasticAxisOut {
                    direction: triple(&axis.direction),
                    through_m: triple(&axis.through),
                    pitch_m: axis.pitch,
                })
                .collect(),
        }
    }
}
