//! Amplitude a bolt bears by lines of failure between endurance and strength.
//!
//! A second school beside [`fatigue`](super::fatigue): the endurance limit here holds the notch of
//! the thread and comes from its own tables. Never put a limit of one school into the other.

/// A bolt's strength for lines of failure, with the stress its preload gives.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Endurance {
    /// Endurance limit Se of the thread, fully corrected \[Pa\]; 18.6 ksi for SAE grade 5, 129 MPa for class 8.8.
    pub limit: f64,
    /// Tensile strength Su \[Pa\].
    pub tensile: f64,
    /// Proof stress Sp \[Pa\].
    pub proof: f64,
    /// Stress σi from preload \[Pa\].
    pub preload: f64,
}

impl Endurance {
    /// Amplitude on the straight line of Goodman \[Pa\].
    ///
    /// # Equation
    ///   Sa = Se (Su − σi)/(Su + Se)
    ///
    /// # Range
    /// Load from zero to its peak, so that the mean stress is σi + Sa.
    ///
    /// # Source
    /// R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th ed., section 8-11.
    #[must_use]
    pub fn goodman(&self) -> f64 {
        self.limit * (self.tensile - self.preload) / (self.tensile + self.limit)
    }

    /// Amplitude on the parabola of Gerber \[Pa\].
    ///
    /// # Equation
    ///   Sa = (Su √(Su² + 4 Se (Se + σi)) − Su² − 2 σi Se)/(2 Se)
    ///
    /// # Range
    /// As [`Self::goodman`].
    ///
    /// # Source
    /// As [`Self::goodman`].
    #[must_use]
    pub fn gerber(&self) -> f64 {
        let (se, su, si) = (self.limit, self.tensile, self.preload);
        (su * (su * su + 4.0 * se * (se + si)).sqrt() - su * su - 2.0 * si * se) / (2.0 * se)
    }

    /// Amplitude on the ellipse between endurance and proof stress \[Pa\].
    ///
    /// # Equation
    ///   Sa = Se (Sp √(Sp² + Se² − σi²) − σi Se)/(Sp² + Se²)
    ///
    /// # Range
    /// As [`Self::goodman`].
    ///
    /// # Source
    /// As [`Self::goodman`].
    #[must_use]
    pub fn elliptic(&self) -> f64 {
        let (se, sp, si) = (self.limit, self.proof, self.preload);
        se * (sp * (sp * sp + se * se - si * si).sqrt() - si * se) / (sp * sp + se * se)
    }
}
