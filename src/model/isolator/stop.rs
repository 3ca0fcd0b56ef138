//! Stops of an isolator: free travel each way along an axis, then a stiff contact.
//!
//! Acts on the isolator's own deflection, in parallel to its law.
//!
//! Key `stops` of an isolator:
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `u`, `v`, `w` | free travel `[lower, upper]` along the axis, one below and one above zero; `"none"` for an end without a stop | 2 lengths | no stop |
//! | `rate` | rate of a touched stop, or three for the stops along u, v, w | linear rate | 4 kN/mm |
//! | `blend` | travel over which the rate grows from zero to full; at most a tenth of the smallest free travel | length | 0.5 mm, or that tenth |

pub(super) mod travel;

use super::AxisPoint;
use crate::model::reader::Section;
use travel::Blend;

/// Rate of a stop where the file states none [N/m].
///
/// # Source
/// Common practice: a thin rubber-faced metal stop is some ten times stiffer than the mount.
const USUAL_RATE: f64 = 4e6;

/// How the rate of a stop grows.
///
/// # Source
/// Common practice: small against the free travel, large enough that the
/// contact is no kink.
const BLEND: Blend = Blend {
    usual: 0.5e-3,
    share: 0.1,
    share_in_words: "a tenth",
};

/// Stops along one axis, or what is like them: a range of free travel with a contact at its ends.
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
    travel::read(
        section.section_like("stops", "{ w = [\"-12 mm\", \"10 mm\"] }")?,
        Some(USUAL_RATE),
        &BLEND,
    )
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
