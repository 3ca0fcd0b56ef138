//! What of a build and its evaluation the layout shows, in vehicle axes.

use crate::model::Model;
use crate::report::figure::FigureError;
use crate::report::figure::label::clean;
use crate::report::figure::solid::Solid;
use crate::report::figure::view::Extent;
use crate::spatial::Vec3;
use crate::study::evaluate::Evaluation;

/// Longest name on the drawing.
const NAME: usize = 26;
/// A build is drawn as if it were at least this large \[m\], so that a lone point has a scale.
pub(super) const LEAST_SIZE: f64 = 0.1;

pub(super) struct Scene {
    pub(super) solids: Vec<Solid>,
    pub(super) part_names: Vec<String>,
    /// Place and direction of the main axis of each mount.
    pub(super) mounts: Vec<(Vec3, Vec3)>,
    /// The eyes of each rod, the powertrain's first, and which mount it is.
    pub(super) rods: Vec<([Vec3; 2], usize)>,
    pub(super) points: Vec<Vec3>,
    /// Place and direction of each clearance.
    pub(super) clearances: Vec<(Vec3, Vec3)>,
    /// Names of the mounts, the points and the clearances, in this order.
    pub(super) names: Vec<String>,
    pub(super) centre: Vec3,
    /// Stiffness-weighted mean of the elastic axes.
    pub(super) elastic_centre: Vec3,
    /// Whether that is an elastic centre: the axes meet there.
    pub(super) axes_meet: bool,
    /// Ends of the drawn piece of the axis.
    pub(super) torque_roll: Option<[Vec3; 2]>,
    pub(super) crank: Option<[Vec3; 2]>,
    pub(super) extent: Extent,
    /// All that is drawn, for the size of a picture; never empty.
    pub(super) shown: Vec<Vec3>,
}

impl Scene {
    pub(super) fn of(model: &Model, evaluation: &Evaluation) -> Result<Self, FigureError> {
        let solids: Vec<Solid> = model.parts.iter().map(Solid::of).collect();
        let mounts: Vec<(Vec3, Vec3)> = model
            .mounts
            .iter()
            .map(|mount| (mount.at, mount.axes.column(2).into_owned()))
            .collect();
        let rods: Vec<([Vec3; 2], usize)> = model
            .mounts
            .iter()
            .enumerate()
            .filter_map(|(place, mount)| Some(([mount.at, mount.rod_to?], place)))
            .collect();
        let points: Vec<Vec3> = model.points.iter().map(|point| point.at).collect();
        let clearances: Vec<(Vec3, Vec3)> = model
            .clearances
            .iter()
            .filter_map(|c| points.get(c.point).map(|at| (*at, c.toward)))
            .collect();
        let mount_names = model.mounts.iter().map(|m| m.name.as_str());
        let point_names = model.points.iter().map(|p| p.name.as_str());
        let clearance_names = model
            .clearances
            .iter()
            .filter(|c| c.point < points.len())
            .map(|c| c.name.as_str());
        let names = mount_names
            .chain(point_names)
            .chain(clearance_names)
            .map(|name| clean(name, NAME))
            .collect();
        let centre = model.mass.centre();
        let axes = &evaluation.axes;
        let elastic_centre = axes.stiffness_centre;
        let crank_at = model.engine.as_ref().and_then(|engine| engine.crank_at);
        let shown = solids
            .iter()
            .flat_map(Solid::corners)
            .chain(mounts.iter().map(|m| m.0))
            .chain(rods.iter().map(|([_, far], _)| *far))
            .chain(points.iter().copied())
            .chain([centre, elastic_centre]);
        let mut shown: Vec<Vec3> = shown.collect();
        if !shown.iter().all(|p| p.iter().all(|x| x.is_finite())) {
            return Err(FigureError::NotFinite("layout"));
        }
        let extent = Extent::of(shown.iter().copied())
            .ok_or(FigureError::Nothing("parts or mounts"))?
            .widened(0.1, LEAST_SIZE);
        let torque_roll = axes
            .torque_roll
            .and_then(|direction| extent.clip(&centre, &direction));
        let crank = model
            .engine
            .as_ref()
            .zip(crank_at)
            .and_then(|(engine, at)| extent.clip(&at, &engine.crank_direction));
        shown.extend([torque_roll, crank].into_iter().flatten().flatten());
        Ok(Self {
            solids,
            part_names: model.parts.iter().map(|p| clean(&p.name, 40)).collect(),
            mounts,
            rods,
            points,
            clearances,
            names,
            centre,
            elastic_centre,
            axes_meet: axes.axes_meet,
            torque_roll,
            crank,
            extent,
            shown,
        })
    }
}
