//! How one cylinder of an engine stands on its crank.

/// A cylinder and its crank pin.
///
/// Angles count in the sense in which the crank turns.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cylinder {
    /// Angle of its crank pin on the crank \[rad\], from a mark common to all.
    pub pin: f64,
    /// Angle of the cylinder from the upright of the engine \[rad\].
    pub bank: f64,
    /// Place along the crank, in crank direction, from the middle of the cylinders \[m\].
    pub place: f64,
}

impl Cylinder {
    /// Crank angle from the top dead centre of this cylinder when `first` is at its own \[rad\].
    ///
    /// # Equation
    ///   φ = (p − p₁) − (b − b₁),   p pin, b bank
    ///
    /// # Source
    /// Derived: at top dead centre the pin points along the cylinder.
    #[must_use]
    pub fn phase(&self, first: &Self) -> f64 {
        (self.pin - first.pin) - (self.bank - first.bank)
    }
}
