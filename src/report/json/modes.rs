//! Modes and axes, in the results document.

use serde::{Serialize, Serializer};

use crate::model::Model;
use crate::report::content::names;
use crate::rigid::axes::ElasticAxis;
use crate::rigid::modes::Mode;
use crate::spatial::Vec6;
use crate::study::axes::Axes;
use crate::study::evaluate::Evaluation;

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
    /// Share of the kinetic energy along and about x, y, z, adding to 1 with `fluid_share`.
    energy_share: [f64; 6],
    fluid_share: f64,
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
    /// `null` without an engine.
    torque_roll_axis: Option<AxisOut>,
    /// Centre of stiffness; `elastic_axes.meet` says whether pushes through it turn nothing at all.
    elastic_centre_m: [f64; 3],
    elastic_axes: ElasticOut,
    /// `null` unless the crank line is known.
    from_crank: Option<FromCrankOut>,
}

#[derive(Serialize)]
struct AxisOut {
    direction: [f64; 3],
    through_m: [f64; 3],
}

#[derive(Serialize)]
struct ElasticOut {
    /// Whether they meet in one point.
    meet: bool,
    stiffness_centre_m: [f64; 3],
    compliance_centre_m: [f64; 3],
    /// Along the principal directions of the stiffness, softest first.
    principal: [ElasticAxisOut; 3],
    /// Along x, y, z.
    along_vehicle: [ElasticAxisOut; 3],
}

#[derive(Serialize)]
struct ElasticAxisOut {
    direction: [f64; 3],
    through_m: [f64; 3],
    /// Moment along the axis per force along it.
    pitch_m: f64,
}

/// Distances.
#[derive(Serialize)]
struct FromCrankOut {
    torque_roll_axis_m: f64,
    elastic_centre_m: f64,
    principal_m: [f64; 3],
    centre_of_gravity_m: f64,
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
                        let torque = at.torque_share.as_ref().and_then(|s| s.get(place).copied());
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
        fluid_share: mode.fluid_share,
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
    pub(super) fn of(axes: &Axes) -> Self {
        let elastic = |axis: &ElasticAxis| ElasticAxisOut {
            direction: triple(&axis.direction),
            through_m: triple(&axis.through),
            pitch_m: axis.pitch,
        };
        Self {
            torque_roll_axis: axes.torque_roll.map(|direction| AxisOut {
                direction: triple(&direction),
                through_m: triple(&axes.centre_of_gravity),
            }),
            elastic_centre_m: triple(&axes.stiffness_centre),
            elastic_axes: ElasticOut {
                meet: axes.axes_meet,
                stiffness_centre_m: triple(&axes.stiffness_centre),
                compliance_centre_m: triple(&axes.compliance_centre),
                principal: axes.principal.each_ref().map(elastic),
                along_vehicle: axes.along_vehicle.each_ref().map(elastic),
            },
            from_crank: axes.from_crank.map(|from| FromCrankOut {
                torque_roll_axis_m: from.torque_roll,
                elastic_centre_m: from.stiffness_centre,
                principal_m: from.principal,
                centre_of_gravity_m: from.centre_of_gravity,
            }),
        }
    }
}
