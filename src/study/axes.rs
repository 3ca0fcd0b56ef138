//! Axes of the powertrain and of its mounts at rest, and how far they lie from the crank line.

use crate::model::Model;
use crate::model::mass::{MassProperties, turned};
use crate::numeric::NumericError;
use crate::rigid::axes::{
    ElasticAxis, compliance_centre, distance_of_lines, distance_to_line, elastic_axis,
    elastic_centre, principal_elastic_axes, stiffness_centre, torque_roll_axis,
};
use crate::rigid::equilibrium::StaticEquilibrium;
use crate::rigid::failure::StaticsFailure;
use crate::rigid::modes::ModalSolution;
use crate::spatial::Vec3;

/// Distance below which the elastic axes count as meeting in one point \[m\].
///
/// # Source
/// Common practice: a workshop places mounts to a few millimetres.
const MEETING: f64 = 2e-3;

/// Axes of the powertrain and of its mounts, at rest, with dynamic rates.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Axes {
    /// Unit vector about which the free powertrain starts to turn under engine torque, vehicle axes; through the centre of gravity. `None` without an engine.
    pub torque_roll: Option<Vec3>,
    /// Centre of gravity of the powertrain at rest \[m\].
    pub centre_of_gravity: Vec3,
    /// Elastic axes along the principal directions of the translational stiffness, softest first.
    pub principal: [ElasticAxis; 3],
    /// Elastic axes of a translation along x, y and z of the vehicle.
    pub along_vehicle: [ElasticAxis; 3],
    /// Stiffness-weighted mean of the elastic axes \[m\]: the elastic centre where there is one.
    pub stiffness_centre: Vec3,
    /// The same from the compliance \[m\]; apart from `stiffness_centre` where there is no elastic centre.
    pub compliance_centre: Vec3,
    /// Whether the elastic axes meet in one point, within 2 mm: only then does one point uncouple translation from rotation.
    pub axes_meet: bool,
    /// Distances from the crank line; `None` without an engine whose `crank_at` is known.
    pub from_crank: Option<FromCrank>,
}

/// Distances from the crank line \[m\].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FromCrank {
    /// Of the torque roll axis.
    pub torque_roll: f64,
    /// Of the stiffness centre.
    pub stiffness_centre: f64,
    /// Of the three principal elastic axes.
    pub principal: [f64; 3],
    /// Of the centre of gravity.
    pub centre_of_gravity: f64,
}

impl Axes {
    /// Axes about the rest position.
    pub(super) fn at_rest(
        model: &Model,
        rest: &StaticEquilibrium,
        modes: &ModalSolution,
    ) -> Result<Self, StaticsFailure> {
        let centre = rest.pose.position;
        let stiffness = &modes.stiffness;
        let torque_roll = torque_roll(model, &model.mass, rest)?;
        let along = |direction: Vec3| elastic_axis(stiffness, &centre, &direction);
        let mut axes = Self {
            torque_roll,
            centre_of_gravity: centre,
            principal: principal_elastic_axes(stiffness, &centre)?,
            along_vehicle: [along(Vec3::x())?, along(Vec3::y())?, along(Vec3::z())?],
            stiffness_centre: stiffness_centre(stiffness, &centre)?,
            compliance_centre: compliance_centre(stiffness, &centre)?,
            axes_meet: elastic_centre(stiffness, &centre, MEETING)?.is_some(),
            from_crank: None,
        };
        axes.from_crank = axes.distances_from_crank(model, rest);
        Ok(axes)
    }

    fn distances_from_crank(&self, model: &Model, rest: &StaticEquilibrium) -> Option<FromCrank> {
        let engine = model.engine.as_ref()?;
        let fitted = engine.crank_at?;
        let at = fitted + rest.displacement_of(fitted);
        let along = rest.rotation * engine.crank_direction;
        let torque_roll = self.torque_roll?;
        let of_line = |through: &Vec3, direction: &Vec3| {
            distance_of_lines((&at, &along), (through, direction))
        };
        Some(FromCrank {
            torque_roll: of_line(&self.centre_of_gravity, &torque_roll),
            stiffness_centre: distance_to_line(&self.stiffness_centre, &at, &along),
            principal: self
                .principal
                .map(|axis| of_line(&axis.through, &axis.direction)),
            centre_of_gravity: distance_to_line(&self.centre_of_gravity, &at, &along),
        })
    }
}

/// Unit vector about which the free powertrain starts to turn under engine torque in a loaded position; `None` without an engine.
///
/// The inertia and the crank have turned with the powertrain.
pub(super) fn torque_roll(
    model: &Model,
    mass: &MassProperties,
    loaded: &StaticEquilibrium,
) -> Result<Option<Vec3>, NumericError> {
    let R_VP = loaded.rotation.to_rotation_matrix();
    let inertia = turned(&mass.inertia(), &R_VP);
    model
        .engine
        .as_ref()
        .map(|engine| torque_roll_axis(&inertia, &(R_VP * engine.crank_direction)))
        .transpose()
}
