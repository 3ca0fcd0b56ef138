//! A box rail squeezed by equal loads on two opposite faces.

use super::{BoxRail, Patch};

/// A piece of box rail bent as a closed frame by two opposite loads.
///
/// # Equation
///   corner    M_c = m/(1 + h/b),   m = F (3 b² − c²)/(24 b)
///   middle    M_0 = F (b/4 − c/8) − M_c
///   closing   Δ = 2 (F (8 b³ − 4 b c² + c³)/384 − M_c b²/8)/(E I),   I = L t³/12
///
///   F        load on each of the two faces                   \[N\]
///   b, h     face and height between the middles of walls    \[m\]
///   c        width of the patch, 0 for a line along the rail \[m\]
///   t, L     wall, effective length of rail                  \[m\]
///   M_c, M_0 moments of the whole length L                   \[N m\]
///
/// # Range
/// Both faces loaded alike, one wall thickness, sharp corners, c ≤ b. Small
/// deflections. Stretch and shear of the walls are left out, and so is the
/// bulge of a moment beside a patch: see [`local::Peak`](super::local::Peak).
///
/// # Source
/// Derived: slope deflection of a frame with two planes of symmetry, whose
/// corners turn alike.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BoxSqueeze {
    /// The rail.
    pub rail: BoxRail,
    /// Width of the loaded strip across the face \[m\].
    pub patch_width: f64,
    /// Length of rail that bends as one frame \[m\].
    pub effective_length: f64,
}

impl BoxSqueeze {
    /// The rail under a patch, with the length of [`effective_length`].
    #[must_use]
    pub fn under(rail: BoxRail, patch: Patch) -> Self {
        Self {
            rail,
            patch_width: patch.width,
            effective_length: effective_length(&rail, &patch).length,
        }
    }

    /// Moment in the corners for each newton, negative sense of the middle [N m/N].
    #[must_use]
    pub fn corner_moment(&self) -> f64 {
        let (b, h, c) = self.sizes();
        (3.0 * b * b - c * c) / (24.0 * b) / (1.0 + h / b)
    }

    /// Moment under the middle of the load for each newton [N m/N].
    #[must_use]
    pub fn middle_moment(&self) -> f64 {
        let (b, _, c) = self.sizes();
        b / 4.0 - c / 8.0 - self.corner_moment()
    }

    /// Load for each metre by which the two faces come nearer [N/m].
    #[must_use]
    pub fn stiffness(&self, youngs_modulus: f64) -> f64 {
        let (b, _, c) = self.sizes();
        let free = (8.0 * b.powi(3) - 4.0 * b * c * c + c.powi(3)) / 384.0;
        let held = self.corner_moment() * b * b / 8.0;
        let second_moment = self.effective_length * self.rail.wall.powi(3) / 12.0;
        youngs_modulus * second_moment / (2.0 * (free - held))
    }

    /// Load at which the frame first yields \[N\].
    ///
    /// # Equation
    ///   F = f L t²/(6 max(M_0, M_c)/F)
    ///
    /// # Range
    /// An average along L. Beside a small patch the wall yields up to a third earlier.
    ///
    /// # Source
    /// Derived: bending stress 6 M/(L t²) of the larger moment.
    #[must_use]
    pub fn first_yield(&self, yield_strength: f64) -> f64 {
        let largest = self.middle_moment().max(self.corner_moment());
        yield_strength * self.effective_length * self.rail.wall.powi(2) / (6.0 * largest)
    }

    /// Load at which hinges in the corners and the middle let the faces collapse \[N\].
    ///
    /// # Equation
    ///   F = 16 M_p/(2 b − c),   M_p = f L t²/4
    ///
    /// # Source
    /// Derived: F (b/4 − c/8) = 2 M_p. A line load gives 8 M_p/b.
    #[must_use]
    pub fn plastic_load(&self, yield_strength: f64) -> f64 {
        let (b, _, c) = self.sizes();
        let hinge = yield_strength * self.effective_length * self.rail.wall.powi(2) / 4.0;
        16.0 * hinge / (2.0 * b - c)
    }

    /// b, h and c; a patch wider than the face counts as the face.
    fn sizes(&self) -> (f64, f64, f64) {
        let b = self.rail.middle_width();
        (b, self.rail.middle_height(), self.patch_width.min(b))
    }
}

/// A length of rail from a fit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fitted {
    /// Length \[m\].
    pub length: f64,
    /// Whether the rail and the patch are like those the fit was made on.
    pub is_within_range: bool,
}

/// How far below the truth the length of [`effective_length`] may lie, as a share.
///
/// # Source
/// Computed independently: see there.
pub const FIT_BELOW: f64 = 0.06;

/// How far above the truth the length of [`effective_length`] may lie, as a share.
///
/// # Source
/// Computed independently: see there.
pub const FIT_ABOVE: f64 = 0.05;

/// Length of a long box rail that a pair of patches squeezes as one frame.
///
/// # Equation
///   L = √(c_x² + (1.2 b (h/b)^0.2)²)
///
///   c_x   length of the patch along the rail  \[m\]
///
/// # Range
/// h/b 0.45 to 2.1, b/t 9 to 50, patch 0.2 b to 4.3 b long and not wider than
/// b, both ends of the rail further than 1.5 b away. The stiffness is then
/// within −6 and +5 %, see [`FIT_BELOW`] and [`FIT_ABOVE`]. The trade's "patch plus b"
/// is a third too long for long patches.
///
/// # Source
/// Computed independently, no published source: fitted to thin shells of six
/// sections under patches of 15 to 100 mm; a second calculation by finite
/// strips in harmonics along the rail gives lengths 0 to 6 % longer than the fit.
#[must_use]
pub fn effective_length(rail: &BoxRail, patch: &Patch) -> Fitted {
    let (b, h) = (rail.middle_width(), rail.middle_height());
    let long = patch.length / b;
    let is_within_range = (0.45..=2.1).contains(&(h / b))
        && (9.0..=50.0).contains(&(b / rail.wall))
        && (0.2..=4.3).contains(&long)
        && patch.width <= b;
    Fitted {
        length: patch.length.hypot(1.2 * b * (h / b).powf(0.2)),
        is_within_range,
    }
}
