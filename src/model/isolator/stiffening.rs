//! Key `stiffening` of an isolator: the rubber grows stiffer beyond a travel, before any stop.
//!
//! A direction of an engine mount is usually drawn as five straight pieces: a
//! soft centre and two harder ranges each way (published, abstract: Proc. IMechE
//! D, doi:10.1243/09544070JAUTO188). With `stiffening` for the first and `stops`
//! for the second that is what comes out, with the corners rounded.
//!
//! It belongs to the rubber: it stiffens in vibration, scatters and ages with
//! it, and touching it is no stop.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `u`, `v`, `w` | free travel `[lower, upper]` along the axis, one below and one above zero; `"none"` for an end without stiffening | 2 lengths | none |
//! | `rate` | what the rate grows by, or three for u, v, w | linear rate | needed |
//! | `blend` | travel over which it grows; at most half of the smallest free travel | length | 1 mm, or that half |

use std::sync::Arc;

use super::stop::AxisStops;
use super::stop::travel::{self, Blend};
use super::{Law, LawPoint};
use crate::model::reader::Section;
use crate::spatial::Vec3;

/// How the rate of rubber grows.
///
/// # Source
/// Common practice: rubber hardens over a millimetre or more, where a stop is
/// met within half of one.
const BLEND: Blend = Blend {
    usual: 1e-3,
    share: 0.5,
    share_in_words: "half",
};

/// A law that grows stiffer beyond given deflections.
#[derive(Debug)]
pub(super) struct Progressive {
    law: Arc<dyn Law>,
    beyond: [AxisStops; 3],
}

impl Progressive {
    pub(super) fn new(law: Arc<dyn Law>, beyond: [AxisStops; 3]) -> Self {
        Self { law, beyond }
    }
}

impl Law for Progressive {
    fn at(&self, x: &Vec3) -> LawPoint {
        let mut point = self.law.at(x);
        for (axis, beyond) in self.beyond.iter().enumerate() {
            if let Some(more) = beyond.contact(x[axis]) {
                point = point.plus(axis, more);
            }
        }
        point
    }
}

/// Reads `stiffening`; the inner `None` when the key is absent.
pub(super) fn read(section: &Section<'_>) -> Option<Option<[AxisStops; 3]>> {
    if !section.has("stiffening") {
        return Some(None);
    }
    let read = travel::read(section.section("stiffening")?, None, &BLEND);
    read.map(Some)
}
