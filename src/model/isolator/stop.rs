//! Stops of an isolator: free travel each way along an axis, then a stiff contact.
//!
//! Acts on the isolator's own deflection, in parallel to its law. Stiffening is
//! the same contact as part of the rubber: it stiffens in vibration and
//! scatters with it, and touching it is no stop.
//!
//! Key `stops` of an isolator:
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `u`, `v`, `w` | free travel `[lower, upper]` along the axis, one below and one above zero | 2 lengths | no stop |
//! | `rate` | rate of a touched stop | linear rate | 4 kN/mm |
//! | `blend` | travel over which the rate grows from zero to full; at most a tenth of the smallest free travel | length | 0.5 mm |

use std::sync::Arc;

use super::{AXIS_NAMES, AxisPoint, Law, LawPoint};
use crate::diagnostic::Code;
use crate::model::reader::{Bound, Ends, Section};
use crate::spatial::Vec3;
use crate::units::Quantity;

/// Rate of a stop where the file states none [N/m].
///
/// # Source
/// Common practice: a thin rubber-faced metal stop is some ten times stiffer than the mount.
const USUAL_RATE: f64 = 4e6;

/// Travel over which a stop's rate grows where the file states none \[m\].
///
/// # Source
/// Common practice: small against the free travel, large enough that the
/// contact is no kink.
const USUAL_BLEND: f64 = 0.5e-3;

/// The blend is at most this share of the smallest free travel.
const BLEND_SHARE: f64 = 0.1;

/// Free travel that a file may state \[m\].
const TRAVEL: Bound = Bound::Stated(-1.0, 1.0, "within 1 m either way");

/// How the two free travels are written: the signs are what is most often forgotten.
const TRAVELS: Ends<'_> = Ends {
    example: "[\"-12 mm\", \"10 mm\"]",
    order: "write how far it may be pushed, with a minus, then how far it may be pulled: \
            `[\"-12 mm\", \"10 mm\"]`, at least 0.01 mm each; where there is no stop, a travel \
            that is never reached",
};

/// Smallest free travel either way [m]: below it the contact is too abrupt to be followed.
const LEAST_TRAVEL: f64 = 0.01e-3;

/// Stops along one axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AxisStops {
    /// Deflection at which the lower stop is touched \[m\], below zero; `None` when there is no such stop.
    pub lower: Option<f64>,
    /// Deflection at which the upper stop is touched \[m\], above zero.
    pub upper: Option<f64>,
    /// Full rate of the stop [N/m].
    pub rate: f64,
    /// Travel over which the rate grows from zero to full \[m\].
    pub blend: f64,
}

impl AxisStops {
    /// No stop either way.
    pub const NONE: Self = Self {
        lower: None,
        upper: None,
        rate: 0.0,
        blend: 0.0,
    };

    /// What the stops add at deflection `x` \[m\]; `None` while none is touched.
    #[must_use]
    pub fn contact(&self, x: f64) -> Option<AxisPoint> {
        if let Some(upper) = self.upper
            && x > upper
        {
            return Some(penetrated(self.rate, self.blend, x - upper));
        }
        if let Some(lower) = self.lower
            && x < lower
        {
            let pushed = penetrated(self.rate, self.blend, lower - x);
            return Some(AxisPoint {
                force: -pushed.force,
                ..pushed
            });
        }
        None
    }
}

/// Contact law at penetration `g > 0`.
///
/// # Equation
///   0 < g < h:   ξ = g/h,   F = k h (ξ³ − ξ⁴/2),   F' = k (3 ξ² − 2 ξ³),   E = k h² (ξ⁴/4 − ξ⁵/10)
///   g ≥ h:       F = k (g − h/2),   F' = k,   E = k (g − h/2)²/2 + k h²/40
///
///   k  full rate            [N/m]   `k`
///   h  blend                \[m\]     `h`
///   g  penetration          \[m\]
///
/// # Range
/// Zero, with zero slope, at g = 0; the tangent and its slope are
/// continuous, so that Newton's method keeps its order. An untouched stop
/// changes no digit of any result.
///
/// # Source
/// Derived: the tangent is the cubic that rises from 0 to k with flat ends.
pub(super) fn penetrated(k: f64, h: f64, g: f64) -> AxisPoint {
    if g >= h {
        let full = g - h / 2.0;
        AxisPoint {
            force: k * full,
            tangent: k,
            energy: k * full * full / 2.0 + k * h * h / 40.0,
        }
    } else {
        let xi = g / h;
        let xi3 = xi * xi * xi;
        AxisPoint {
            force: k * h * (xi3 - xi3 * xi / 2.0),
            tangent: k * (3.0 * xi * xi - 2.0 * xi3),
            energy: k * h * h * (xi3 * xi / 4.0 - xi3 * xi * xi / 10.0),
        }
    }
}

/// Reads `stops`; no stops when the key is absent, `None` when something in it is wrong.
pub(super) fn read(section: &Section<'_>) -> Option<[AxisStops; 3]> {
    if !section.has("stops") {
        return Some([AxisStops::NONE; 3]);
    }
    let stops = section.section("stops")?;
    let travels = AXIS_NAMES.map(|axis| read_travel(&stops, axis));
    let rate = stops.quantity("rate", Quantity::LinearRate, Bound::RATE);
    if !stops.has("rate") {
        stops.assume("rate", "4 kN/mm (common practice)");
    }
    let [u, v, w] = travels;
    let smallest = travels
        .iter()
        .flatten()
        .flatten()
        .map(|travel| travel[1].min(-travel[0]))
        .fold(f64::INFINITY, f64::min);
    let blend = read_blend(&stops, BLEND_SHARE * smallest);
    let has_rate = stops.has("rate");
    stops.finish();
    let travels = [u?, v?, w?];
    let blend = blend?;
    let rate = if has_rate { rate? } else { USUAL_RATE };
    Some(travels.map(|travel| {
        travel.map_or(AxisStops::NONE, |[lower, upper]| AxisStops {
            lower: Some(lower),
            upper: Some(upper),
            rate,
            blend,
        })
    }))
}

/// Travel over which the rate grows, at most `most` \[m\] so that it stays small against the free travel.
fn read_blend(stops: &Section<'_>, most: f64) -> Option<f64> {
    if !stops.has("blend") {
        let blend = USUAL_BLEND.min(most);
        stops.assume("blend", format!("{:.2} mm (common practice)", blend * 1e3));
        return Some(blend);
    }
    let blend = stops.quantity("blend", Quantity::Length, Bound::Positive)?;
    if blend > most {
        stops.refuse(
            "blend",
            Code::OutOfRange,
            format!(
                "`blend` must be at most a tenth of the smallest free travel: {:.2} mm",
                most * 1e3
            ),
            "a blend this long would be a spring of its own; make it shorter or leave it out",
        );
        return None;
    }
    Some(blend)
}

/// Free travel along one axis: below zero one way, above zero the other. The inner `None` is an axis without stops.
fn read_travel(stops: &Section<'_>, axis: &'static str) -> Option<Option<[f64; 2]>> {
    if !stops.has(axis) {
        return Some(None);
    }
    let travel = stops.span(axis, Quantity::Length, TRAVEL, &TRAVELS)?;
    if travel[0] > -LEAST_TRAVEL || travel[1] < LEAST_TRAVEL {
        stops.refuse(
            axis,
            Code::InsideOut,
            format!(
                "{} must lie on both sides of the free position: {:.2} mm, {:.2} mm",
                stops.key_name(axis),
                travel[0] * 1e3,
                travel[1] * 1e3
            ),
            TRAVELS.order,
        );
        return None;
    }
    Some(Some(travel))
}

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
pub(super) fn read_stiffening(section: &Section<'_>) -> Option<Option<[AxisStops; 3]>> {
    if !section.has("stiffening") {
        return Some(None);
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    /// Derived: the equation above at k = 4e6 N/m, h = 0.5 mm, worked by hand.
    /// g = 0.25 mm: ξ = 1/2, F = 2000 (1/8 − 1/32) = 187.5 N, F' = 4e6 (3/4 − 1/4) = 2e6.
    #[test]
    fn contact_law_at_hand_worked_penetrations() {
        let stops = AxisStops {
            lower: Some(-6e-3),
            upper: Some(4e-3),
            rate: 4e6,
            blend: 0.5e-3,
        };
        for (g, force, tangent, energy) in [
            (0.1e-3, 14.4, 416e3, 0.000_368),
            (0.25e-3, 187.5, 2.0e6, 0.0125),
            (0.4e-3, 614.4, 3.584e6, 0.069_632),
            (0.5e-3, 1000.0, 4.0e6, 0.15),
            (1.0e-3, 3000.0, 4.0e6, 1.15),
        ] {
            let up = stops.contact(4e-3 + g).unwrap();
            let down = stops.contact(-6e-3 - g).unwrap();
            assert_relative_eq!(up.force, force, max_relative = 1e-9);
            assert_relative_eq!(down.force, -force, max_relative = 1e-9);
            assert_relative_eq!(up.tangent, tangent, max_relative = 1e-9);
            assert_relative_eq!(up.energy, energy, max_relative = 1e-9);
        }
        assert!(stops.contact(4e-3).is_none());
        assert!(stops.contact(-6e-3).is_none());
    }
}
