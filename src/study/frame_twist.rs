//! What a frame that twists puts into the mounts: a powertrain on stiff mounts becomes part of the frame.

use crate::rigid::equilibrium::solve_equilibrium;
use crate::rigid::loading::Loading;
use crate::rigid::supported::Supported;
use crate::spatial::Vec3;

use super::resting::Resting;

/// The chassis raised at one mount, against all others.
#[derive(Debug, Clone, PartialEq)]
pub struct FrameTwist {
    /// At which mount the chassis gives way, as a place in `Model::mounts`.
    pub at: usize,
    /// The mount whose force changes most.
    pub most_at: usize,
    /// By how much it changes \[N\].
    pub most: f64,
}

/// Raises the chassis at one mount after the other by the amount that the model's targets state, and rests the build again.
///
/// Exact: each is the whole nonlinear statics. A place without a rest is left out.
pub(super) fn frame_twist(build: &Resting<'_>) -> Vec<FrameTwist> {
    let model = build.model;
    let raised = Vec3::new(0.0, 0.0, model.criteria.frame_twist);
    let weight = Loading::weight(model.mass.mass());
    (0..build.held.len())
        .filter_map(|at| {
            let mut held = build.held.clone();
            held[at] = held[at].shifted(&raised);
            let body = Supported::new(model.mass, held).ok()?;
            let twisted = solve_equilibrium(&body, &weight, Some(&build.rest)).ok()?;
            let changes = build.rest.mounts.iter().zip(&twisted.mounts);
            let (most_at, most) = changes
                .map(|(before, after)| {
                    (after.force_on_powertrain - before.force_on_powertrain).norm()
                })
                .enumerate()
                .max_by(|a, b| a.1.total_cmp(&b.1))?;
            Some(FrameTwist { at, most_at, most })
        })
        .collect()
}
