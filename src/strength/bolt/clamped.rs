//! How far the clamped parts give.

use std::f64::consts::PI;

/// How the bolt passes the parts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fit {
    /// Head on one side, nut on the other.
    Through,
    /// Screwed into the last part.
    Tapped,
}

/// Round body clamped by one bolt.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Clamped {
    /// Outer diameter dW of the bearing face of the head \[m\].
    pub head_bearing: f64,
    /// Hole dh \[m\], smaller than the bearing face.
    pub hole: f64,
    /// Outer diameter DA of the parts, or twice the distance to the nearest edge \[m\].
    pub outer: f64,
    /// Clamped length lK \[m\].
    pub length: f64,
    /// Young's modulus E \[Pa\].
    pub youngs_modulus: f64,
}

impl Clamped {
    /// Resilience of the parts between head and nut, δP [m/N].
    ///
    /// # Equation
    ///   w = 1 through, 2 tapped;   y = DA/dW,   b = lK/dW,   D = dW + w lK tan φ
    ///   tan φ = 0.362 + 0.032 ln(b/2) + 0.153 ln y   through
    ///   tan φ = 0.348 + 0.013 ln b + 0.193 ln y      tapped
    ///   DA ≥ D:        δ = 2 ln\[(dW+dh)(D−dh)/((dW−dh)(D+dh))\]/(w E π dh tan φ)
    ///   dW < DA < D:   δ = {2/(w dh tan φ) ln\[(dW+dh)(DA−dh)/((dW−dh)(DA+dh))\]
    ///                       + 4 (lK − (DA−dW)/(w tan φ))/(DA² − dh²)}/(π E)
    ///   DA ≤ dW:       δ = 4 lK/(π E (DA² − dh²))
    ///
    /// # Range
    /// Solid parts of one modulus, clamped length at least a tenth of dW. DA is a real size: an enormous one leaves the range of the fit
    /// of tan φ. No hollow inside: see [`with_hollow`].
    ///
    /// # Source
    /// VDI 2230-1:2003, from memory.
    #[must_use]
    pub fn resilience(&self, fit: Fit) -> f64 {
        let Self {
            head_bearing: dw,
            hole: dh,
            outer: da,
            length,
            youngs_modulus,
        } = *self;
        if da <= dw {
            return tube_resilience(da, dh, length, youngs_modulus);
        }
        let (b, y) = (length / dw, da / dw);
        let (w, slope) = match fit {
            Fit::Through => (1.0, 0.362 + 0.032 * (b / 2.0).ln() + 0.153 * y.ln()),
            Fit::Tapped => (2.0, 0.348 + 0.013 * b.ln() + 0.193 * y.ln()),
        };
        let cone_end = dw + w * length * slope;
        // The cone ends where it meets its own mirror image, or the edge of the parts.
        let end = da.min(cone_end);
        let ratio = (dw + dh) * (end - dh) / ((dw - dh) * (end + dh));
        let cone = 2.0 / (w * dh * slope) * ratio.ln();
        let straight = (length - (end - dw) / (w * slope)).max(0.0);
        let sleeve = 4.0 * straight / (da * da - dh * dh);
        (cone + sleeve) / (PI * youngs_modulus)
    }
}

/// Resilience of a tube pressed along its axis [m/N].
///
/// # Equation
///   δ = l/(E A),   A = π/4 (D² − d²)
///
/// # Source
/// Hooke's law.
#[must_use]
pub fn tube_resilience(outer: f64, inner: f64, length: f64, youngs_modulus: f64) -> f64 {
    4.0 * length / (PI * youngs_modulus * (outer * outer - inner * inner))
}

/// Resilience of plates on a hollow rail with a sleeve inside [m/N].
///
/// # Equation
///   δ = δplates + 1/(1/δsleeve + k)
///
///   δplates  both plates, with what of the walls is pressed through   [m/N]
///   δsleeve  the sleeve alone                                         [m/N]
///   k        stiffness of the rail against being squeezed; 0 is safe  [N/m]
///
/// # Range
/// The sleeve touches both sides. No cone spreads inside the hollow.
///
/// # Source
/// Derived: plates in series with sleeve and rail, which are pressed by the same amount.
#[must_use]
pub fn with_hollow(plates: f64, sleeve: f64, squeeze: f64) -> f64 {
    plates + 1.0 / (1.0 / sleeve + squeeze)
}
