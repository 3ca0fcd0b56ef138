//! How a working load is shared by a preloaded bolt and what it clamps.

/// Share Φ of an axial working load that adds to the bolt, 0 to 1.
///
/// # Equation
///   Φ = n δP/(δS + δP)
///
///   n       where the load enters: 1 under head and nut, 0 in the joint face
///   δS, δP  resilience of the bolt, the clamped parts  [m/N]
///
/// # Range
/// Load along the bolt, joint closed. For the stress of the bolt take n = 1, for the clamp that
/// is left the smallest n that is credible.
///
/// # Source
/// VDI 2230-1:2003, from memory.
#[must_use]
pub fn load_factor(entry: f64, bolt: f64, clamped: f64) -> f64 {
    entry * clamped / (bolt + clamped)
}

/// A preloaded joint under an axial working load per bolt.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Preloaded {
    /// Preload F \[N\].
    pub preload: f64,
    /// Load factor Φ, from 0 to below 1.
    pub load_factor: f64,
}

impl Preloaded {
    /// Force in the bolt \[N\] under a load that pulls the joint apart \[N\].
    ///
    /// # Equation
    ///   closed: F + Φ FA;   open: FA
    ///
    /// # Source
    /// VDI 2230-1:2003, from memory; after opening, equilibrium.
    #[must_use]
    pub fn bolt_force(&self, load: f64) -> f64 {
        (self.preload + self.load_factor * load).max(load)
    }

    /// Force that still clamps the parts \[N\]; zero when the joint is open.
    ///
    /// # Equation
    ///   FK = F − (1 − Φ) FA
    ///
    /// # Source
    /// VDI 2230-1:2003, from memory.
    #[must_use]
    pub fn clamp_force(&self, load: f64) -> f64 {
        (self.preload - (1.0 - self.load_factor) * load).max(0.0)
    }

    /// Working load at which the joint opens \[N\].
    ///
    /// # Equation
    ///   FA = F/(1 − Φ)
    ///
    /// # Source
    /// As [`Self::clamp_force`], at no clamp force.
    #[must_use]
    pub fn separation_load(&self) -> f64 {
        self.preload / (1.0 - self.load_factor)
    }
}

/// Least preload at assembly that leaves enough clamp in service \[N\].
///
/// # Equation
///   Fmin = FK + (1 − Φ) FA + FZ + FT
///
///   FK  clamp force needed: the largest of friction, sealing, one-sided opening   \[N\]
///   FA  axial working load per bolt, positive pulls                               \[N\]
///   FZ  preload lost by embedding                                                 \[N\]
///   FT  preload lost by heat or cold, positive when lost                          \[N\]
///
/// # Range
/// A bolt tightened with scatter αA needs αA Fmin, which must not exceed the permissible preload.
///
/// # Source
/// VDI 2230-1:2003, main equation, from memory.
#[must_use]
pub fn required_preload(
    clamp: f64,
    load: f64,
    load_factor: f64,
    embedding: f64,
    thermal_loss: f64,
) -> f64 {
    clamp + (1.0 - load_factor) * load + embedding + thermal_loss
}
