//! How far each point moves over all load cases.

use super::evaluate::LoadResult;
use crate::model::Model;
use crate::spatial::Vec3;

/// Motion of a point from the fitted state over all load cases in which it is there and a position was found.
#[derive(Debug, Clone, PartialEq)]
pub struct Envelope {
    /// Smallest motion along x, y, z \[m\].
    pub least: Vec3,
    /// Largest motion along x, y, z \[m\].
    pub most: Vec3,
    /// Load cases of the smallest motions, as places in `Model::loads`.
    pub least_at: [usize; 3],
    /// Load cases of the largest motions.
    pub most_at: [usize; 3],
}

/// Envelope of every point of the model.
pub(super) fn envelopes(model: &Model, loads: &[LoadResult]) -> Vec<Envelope> {
    (0..model.points.len())
        .map(|point| {
            let mut envelope = Envelope {
                least: Vec3::repeat(f64::INFINITY),
                most: Vec3::repeat(f64::NEG_INFINITY),
                least_at: [0; 3],
                most_at: [0; 3],
            };
            let motions = loads
                .iter()
                .filter_map(|load| Some((load.load, load.points[point]?)));
            for (load, motion) in motions {
                envelope.widen(load, &motion);
            }
            envelope
        })
        .collect()
}

impl Envelope {
    fn widen(&mut self, load: usize, motion: &Vec3) {
        for axis in 0..3 {
            if motion[axis] < self.least[axis] {
                self.least[axis] = motion[axis];
                self.least_at[axis] = load;
            }
            if motion[axis] > self.most[axis] {
                self.most[axis] = motion[axis];
                self.most_at[axis] = load;
            }
        }
    }
}
