//! Supports that lie loose on their seat: they push but do not pull.

use std::sync::Arc;

use super::stop::penetrated;
use super::{Law, LawPoint};
use crate::spatial::Vec3;

/// Travel along w over which a loose support takes or loses its load \[m\].
///
/// # Source
/// Common practice: small against any sag, large enough that the contact is no kink.
pub(super) const BLEND: f64 = 0.2e-3;

/// A law that carries no tension along w: where it would be pulled it lifts off.
///
/// # Equation
///   φ'(u, v, w) = φ(u, v, y(w)),   y = −r(h/2 − w)
///
///   r  travel of a contact: 0 before it, g − h/2 beyond the blend h
///
/// # Range
/// Pushed by more than h/2 it is the law itself, to the last digit; pulled by
/// more than h/2 its force along w is exactly zero. Across w the law keeps its
/// rates: a bolt or a spigot locates it.
///
/// # Source
/// Derived: a potential of a potential's argument stays a potential.
#[derive(Debug)]
pub(super) struct LiftsOff {
    law: Arc<dyn Law>,
}

impl LiftsOff {
    pub(super) fn new(law: Arc<dyn Law>) -> Self {
        Self { law }
    }
}

impl Law for LiftsOff {
    fn at(&self, x: &Vec3) -> LawPoint {
        let contact = penetrated(1.0, BLEND, (BLEND / 2.0 - x.z).max(0.0));
        let mut point = self.law.at(&Vec3::new(x.x, x.y, -contact.force));
        // y' = r' and y'' = −r''; r'' is the slope of the contact's tangent.
        let slope = contact.tangent;
        let bend = -bend_of_contact((BLEND / 2.0 - x.z).max(0.0));
        let pull = point.force.z;
        for across in 0..2 {
            point.tangent[(across, 2)] *= slope;
            point.tangent[(2, across)] *= slope;
        }
        point.tangent[(2, 2)] = point.tangent[(2, 2)] * slope * slope + pull * bend;
        point.force.z = pull * slope;
        point
    }
}

/// Second derivative of the contact's travel [1/m].
fn bend_of_contact(g: f64) -> f64 {
    if g >= BLEND {
        return 0.0;
    }
    let xi = g / BLEND;
    6.0 * (xi - xi * xi) / BLEND
}
