//! A polymer that the force of a bolt goes through: what is left of the force, and what presses it out.
//!
//! No polymer in the path of a preload is the rule. What is left to do with one: let it
//! keep parts in place while the force goes past it, or reckon without the friction and the
//! fatigue life that a preload gives.

/// Shares and stresses of a clamped layer of polymer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Layer {
    /// Thickness \[m\].
    pub thickness: f64,
    /// Area that is pressed \[m²\].
    pub area: f64,
    /// Young's modulus when it is tightened \[Pa\].
    pub youngs_modulus: f64,
    /// Strength in short compression \[Pa\].
    pub yield_strength: f64,
}

impl Layer {
    /// Share of the preload that is left when the layer has crept, 0 to 1.
    ///
    /// # Equation
    ///   F(t)/F₀ = (δ + h/(E₀ A))/(δ + h/(E(t) A))
    ///
    /// δ is the resilience of bolt and metal parts together \[m/N\], h the thickness, A the
    /// area, E₀ the modulus when tightened and E(t) the creep modulus after the time in
    /// question \[Pa\].
    ///
    /// # Range
    /// Stress well below what presses the layer out; E(t) at most E₀, else it is taken as E₀.
    /// Not a number when a modulus or the area is not above zero.
    ///
    /// # Source
    /// Derived: after tightening the clamped length stays as it is, so the strains of bolt,
    /// metal and polymer add up to a constant.
    #[must_use]
    pub fn retained(&self, resilience: f64, creep_modulus: f64) -> f64 {
        let moduli = [creep_modulus, self.youngs_modulus];
        // A comparison with what is not a number is false, so that it is refused too.
        let usable = moduli.iter().all(|modulus| *modulus > 0.0);
        if !(usable && self.area > 0.0 && resilience >= 0.0) {
            return f64::NAN;
        }
        let softer = creep_modulus.min(self.youngs_modulus);
        let own = |modulus: f64| self.thickness / (modulus * self.area);
        let (before, after) = (
            resilience + own(self.youngs_modulus),
            resilience + own(softer),
        );
        if after > 0.0 { before / after } else { 1.0 }
    }

    /// Pressure over strength: from 1 on the layer is pressed out.
    ///
    /// # Equation
    ///   u = F/(A σ)
    ///
    /// F is the largest bolt force \[N\], A the area, σ the strength in short compression.
    ///
    /// # Source
    /// Common practice; a thin layer between rough faces bears more for a while.
    #[must_use]
    pub fn utilisation(&self, force: f64) -> f64 {
        force / (self.area * self.yield_strength)
    }
}
