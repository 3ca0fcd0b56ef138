//! T-stub: the European way to a flange that pries.

/// Flange of a T-stub with one row of bolts on each side of the web.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TStub {
    /// From the bolt to the hinge beside the web or its weld \[m\].
    pub to_web: f64,
    /// From the bolt to the tip of the flange \[m\]; counts up to 1.25 of `to_web`.
    pub to_tip: f64,
    /// Effective length for hinges along the flange \[m\].
    pub effective_length: f64,
    /// Thickness of the flange \[m\].
    pub thickness: f64,
}

/// Strength of a T-stub in each of its modes \[N\], of both sides together.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Modes {
    /// The flange yields at web and bolts.
    pub flange: f64,
    /// The flange yields at the web, the bolts break.
    pub both: f64,
    /// The bolts break.
    pub bolts: f64,
}

impl Modes {
    /// The smallest \[N\].
    #[must_use]
    pub fn smallest(&self) -> f64 {
        self.flange.min(self.both).min(self.bolts)
    }
}

impl TStub {
    /// Strength in the three modes.
    ///
    /// # Equation
    ///   F₁ = 4 M/m,   F₂ = (2 M + n ΣF_t)/(m + n),   F₃ = ΣF_t
    ///   M = l t² f/4,   n = min(e, 1.25 m)
    ///
    ///   ΣF_t  strength of all bolts of both sides  \[N\]
    ///   f     yield strength of the flange         \[Pa\]
    ///
    /// # Range
    /// Prying can develop: bolts not too long. M and ΣF_t characteristic or
    /// design values, both alike.
    ///
    /// # Source
    /// EN 1993-1-8:2005, table 6.2 (from memory).
    #[must_use]
    pub fn modes(&self, all_bolts: f64, yield_strength: f64) -> Modes {
        let m = self.to_web;
        let n = self.to_tip.min(1.25 * m);
        let hinge = self.effective_length * self.thickness.powi(2) * yield_strength / 4.0;
        Modes {
            flange: 4.0 * hinge / m,
            both: (2.0 * hinge + n * all_bolts) / (m + n),
            bolts: all_bolts,
        }
    }
}
