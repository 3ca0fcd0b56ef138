//! What a small patch, a cut end or a hole does to the squeeze of a rail.

use super::{BoxRail, Patch, RoundRail};

/// How far the wall in the middle of a patch is above the average of its effective length.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Peak {
    /// Bending moment across the rail over M_0/L.
    pub moment: f64,
    /// Von Mises stress on the surface over 6 M_0/(L t²): less, since the wall bends along the rail too.
    pub stress: f64,
}

/// Patch over middle width of the face, then peaks of moment and stress.
const BOX_PEAKS: [(f64, Peak); 5] = [
    (0.21, peak(1.62, 1.49)),
    (0.32, peak(1.45, 1.31)),
    (0.43, peak(1.36, 1.21)),
    (0.64, peak(1.25, 1.10)),
    (0.85, peak(1.20, 1.04)),
];

/// Patch over middle radius, then peaks of moment and stress.
const ROUND_PEAKS: [(f64, Peak); 4] = [
    (0.4, peak(1.94, 1.69)),
    (0.6, peak(1.50, 1.29)),
    (0.8, peak(1.18, 1.03)),
    (1.0, peak(1.01, 0.88)),
];

const fn peak(moment: f64, stress: f64) -> Peak {
    Peak { moment, stress }
}

/// Peaks under a patch on a box rail; none for patches smaller than the table.
///
/// # Equation
///   c/b        0.21  0.32  0.43  0.64  0.85
///   moment     1.62  1.45  1.36  1.25  1.20
///   stress     1.49  1.31  1.21  1.10  1.04
///
///   c = √(length × width) of the patch, b middle width of the face; straight
///   lines between, the last value beyond
///
/// # Range
/// As [`effective_length`](super::box_squeeze::effective_length). Patches longer than
/// wide lie up to 8 % lower than the table, twice as wide as long up to 4 % higher.
///
/// # Source
/// Computed independently, no published source: finite strips in harmonics along
/// the rail (thin plates); shells with shear gave 3 to 4 % less.
#[must_use]
pub fn box_peak(rail: &BoxRail, patch: &Patch) -> Option<Peak> {
    peak_at(
        &BOX_PEAKS,
        (patch.length * patch.width).sqrt() / rail.middle_width(),
    )
}

/// Peaks under a patch on a round tube; none for patches smaller than the table.
///
/// # Equation
///   c/R        0.4   0.6   0.8   1.0
///   moment     1.94  1.50  1.18  1.01
///   stress     1.69  1.29  1.03  0.88
///
///   c = √(length × width) of the patch, R middle radius; straight lines
///   between, the last value beyond
///
/// # Range
/// As [`effective_length`](super::round_squeeze::effective_length). Upper values: up to
/// a fifth too high for thick tubes, never more than 5 % too low.
///
/// # Source
/// Computed independently, no published source: finite strips in harmonics along the tube.
#[must_use]
pub fn round_peak(rail: &RoundRail, patch: &Patch) -> Option<Peak> {
    peak_at(
        &ROUND_PEAKS,
        (patch.length * patch.width).sqrt() / rail.middle_radius(),
    )
}

fn peak_at(table: &[(f64, Peak)], ratio: f64) -> Option<Peak> {
    let moments = table.iter().map(|(x, peak)| (*x, peak.moment));
    let stresses = table.iter().map(|(x, peak)| (*x, peak.stress));
    Some(Peak {
        moment: between(moments, ratio)?,
        stress: between(stresses, ratio)?,
    })
}

/// Distance of a patch from a cut end over middle width of the face, then the share of stiffness left.
const CUT_END: [(f64, f64); 5] = [
    (0.18, 0.53),
    (0.213, 0.56),
    (0.532, 0.885),
    (1.064, 0.985),
    (1.5, 1.0),
];

/// Share of the squeeze stiffness that is left near a cut end; none nearer than the table.
///
/// # Equation
///   x/b     0.18  0.213  0.532  1.064  1.5
///   share   0.53  0.56   0.885  0.985  1
///
///   x  from the middle of the patch to the end, b middle width of the face;
///   straight lines between
///
/// # Range
/// Patches of 0.3 b to 0.9 b that do not hang over the end, h/b 0.7 to 1.6:
/// within 4 %.
///
/// # Source
/// Computed independently, no published source: thin shells of a 50 × 50 × 3 mm
/// rail under 20 mm patches, then of three more rails with another kind of
/// element, which gave 0.54 to 0.62, 0.86 to 0.91 and 0.98 to 1.0.
#[must_use]
pub fn near_cut_end(rail: &BoxRail, distance: f64) -> Option<f64> {
    between(CUT_END.into_iter(), distance / rail.middle_width())
}

/// What a hole under a washer does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HoleEffect {
    /// Share of the squeeze stiffness that is left.
    pub stiffness: f64,
    /// Peak stress over that of the plain wall under the same ring.
    pub stress: f64,
}

/// Effect of a round hole of this diameter \[m\] through both faces, loaded by a ring on its edge.
///
/// # Equation
///   hole/b      0     0.234  0.426
///   stiffness   1     0.79   0.70
///   stress      1.75  1.75   1.70
///
///   b middle width of the face; straight lines between, none beyond
///
/// # Range
/// Rings 1.5 to 1.8 times the hole.
///
/// # Source
/// Computed independently, no published source: thin shells of a 50 × 50 × 3 mm rail,
/// ring 11 to 20 mm on a hole of 11 mm, ring 20 to 30 mm on a hole of 20 mm. The
/// stress of smaller holes is taken as that of the smallest computed.
#[must_use]
pub fn with_hole(rail: &BoxRail, hole: f64) -> Option<HoleEffect> {
    let ratio = hole / rail.middle_width();
    if ratio > 0.426 {
        return None;
    }
    let stiffness = [(0.0, 1.0), (0.234, 0.79), (0.426, 0.70)];
    let stress = [(0.0, 1.75), (0.234, 1.75), (0.426, 1.70)];
    Some(HoleEffect {
        stiffness: between(stiffness.into_iter(), ratio)?,
        stress: between(stress.into_iter(), ratio)?,
    })
}

/// Straight lines between rising points: none before the first, the last value after the last.
fn between(points: impl Iterator<Item = (f64, f64)>, x: f64) -> Option<f64> {
    let mut before: Option<(f64, f64)> = None;
    for (x2, y2) in points {
        if x <= x2 {
            let Some((x1, y1)) = before else {
                return (x >= x2).then_some(y2);
            };
            return Some(y1 + (y2 - y1) * (x - x1) / (x2 - x1));
        }
        before = Some((x2, y2));
    }
    before.filter(|_| x.is_finite()).map(|(_, y)| y)
}
