//! How the bolts of a joint share a mount reaction.

use crate::model::Model;
use crate::model::joint::Joint;
use crate::spatial::{Mat3, Vec3, Wrench};
use crate::strength::pattern::{BoltForce, Pattern};
use crate::study::evaluate::LoadResult;

use super::rail_clamp::RailClamp;
use super::touch::Touch;

/// One load case at a joint.
#[derive(Debug, Clone, PartialEq)]
pub struct LoadedJoint {
    /// Which load case, as a place in `Model::loads`.
    pub load: usize,
    /// On the chassis, about the middle of the joint face, in its axes: x along the rail, y across, z out of it.
    pub wrench: Wrench,
    /// What each bolt takes, in the order of `Joint::pattern`; a pull along it is positive.
    pub bolts: Vec<BoltForce>,
    /// Pull of each bolt when the foot turns about the middle of the pattern, which may be less than in `bolts` \[N\].
    pub centred: Vec<f64>,
    /// Moments about x, y, z that the pattern cannot take by itself [N m].
    pub untaken: [f64; 3],
}

impl LoadedJoint {
    /// Pull on the bolt that is pulled most \[N\].
    #[must_use]
    pub fn most_pulled(&self) -> f64 {
        self.bolts.iter().map(|b| b.axial).fold(f64::MIN, f64::max)
    }

    /// Largest shear of a bolt \[N\].
    #[must_use]
    pub fn most_sheared(&self) -> f64 {
        self.bolts
            .iter()
            .map(BoltForce::shear_size)
            .fold(0.0, f64::max)
    }
}

/// Distance from a line that counts as none \[m\].
const ON_LINE: f64 = 1e-6;

/// The joint in every load case in which its mount takes part and a position was found.
///
/// # Equation
///   F on the chassis = −force on the powertrain,   M = o × F + M of the mount
///
///   o  from the middle of the joint face to where the mount acts in this load case: as drawn, and
///      moved with the powertrain \[m\]
///
/// Where bolts in one row hold something flat on a round tube they take no moment about it.
///
/// # Source
/// Derived: equilibrium.
pub(super) fn loaded(
    model: &Model,
    joint: &Joint,
    rail: Option<&RailClamp>,
    loads: &[LoadResult],
) -> Vec<LoadedJoint> {
    let mount = model.mounts.get(joint.mount);
    let (Some(pattern), Some(mount)) = (Pattern::new(&joint.pattern), mount) else {
        return Vec::new();
    };
    let touch = Touch::of(joint, rail);
    let tips = touch == Some(Touch::Line) && is_row(joint);
    let outline = outline(joint, touch);
    let to_joint = Mat3::from_columns(&[joint.along, joint.across(), joint.face]).transpose();
    loads
        .iter()
        .filter_map(|result| {
            let found = result.outcome.as_ref().ok()?;
            let place = result.mounts.iter().position(|&m| m == joint.mount)?;
            let state = found.mounts.get(place)?;
            let force = to_joint * -state.force_on_powertrain;
            let moment = to_joint * -state.moment_on_powertrain;
            let moved = found.pose.position + state.arm - mount.at;
            let offset = to_joint * (joint.offset + moved);
            let wrench = Wrench {
                force,
                moment: moment + offset.cross(&force),
            };
            let mut at_centre = at(&wrench, pattern.centre());
            let tipping = if tips { at_centre.moment.x } else { 0.0 };
            at_centre.moment.x -= tipping;
            let shared = pattern.worst(&at_centre, &outline);
            let [about_x, about_y, about_z] = shared.untaken;
            Some(LoadedJoint {
                load: result.load,
                wrench,
                bolts: shared.bolts,
                centred: pattern
                    .about_centre(&at_centre)
                    .bolts
                    .iter()
                    .map(|bolt| bolt.axial)
                    .collect(),
                untaken: [about_x + tipping, about_y, about_z],
            })
        })
        .collect()
}

/// The same wrench about another point of the face.
fn at(wrench: &Wrench, [x, y]: [f64; 2]) -> Wrench {
    let arm = Vec3::new(x, y, 0.0);
    Wrench {
        force: wrench.force,
        moment: wrench.moment - arm.cross(&wrench.force),
    }
}

/// Corners of what bears on the face: the plate, or the foot; on a round tube as far across as it touches.
fn outline(joint: &Joint, touch: Option<Touch>) -> [[f64; 2]; 4] {
    let [x, half_width] = half_sizes(joint);
    let y = match touch {
        None => half_width,
        Some(Touch::Saddle) => joint
            .base
            .rail()
            .map_or(half_width, |rail| half_width.min(rail.face_width / 2.0)),
        Some(Touch::SleeveEnds { rim }) => rim,
        Some(Touch::Line) => 0.0,
    };
    [[x, y], [-x, y], [-x, -y], [x, -y]]
}

/// Whether all bolts stand on the middle line of the face.
fn is_row(joint: &Joint) -> bool {
    joint.pattern.iter().all(|[_, y]| y.abs() < ON_LINE)
}

/// Half length along and half width across of what the plate, or the foot, bears on \[m\]: nothing bears beyond the rail.
pub(super) fn half_sizes(joint: &Joint) -> [f64; 2] {
    let plate = joint
        .plate
        .as_ref()
        .map(|plate| [plate.length, plate.width]);
    let foot = || joint.foot.as_ref().map(|foot| [foot.length, foot.width]);
    // A joint without either is refused when it is read.
    let [length, width] = plate.or_else(foot).unwrap_or_default();
    let [end, side] = joint.base.rail().map_or([f64::INFINITY; 2], |rail| {
        [rail.edge.unwrap_or(f64::INFINITY), rail.face_width / 2.0]
    });
    [(length / 2.0).min(end), (width / 2.0).min(side)]
}
