//! A strip of plate bent by one force.

/// How a strip is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Held {
    /// At one end, the force at the other.
    OneEnd,
    /// Resting on both ends, the force in the middle.
    Resting,
    /// Clamped at both ends, the force in the middle.
    BothEnds,
}

/// Strip of plate bent by one force.
///
/// # Equation
///   held           moment   stiffness
///   one end        F a      3 E I/a³
///   resting        F a/4    48 E I/a³
///   both ends      F a/8    192 E I/a³
///   I = w t³/12
///
///   a     free length: force to support, or between supports  \[m\]
///   w, t  width and thickness of the strip  \[m\]
///
/// # Range
/// Long beside its thickness, small deflections. A plate on the side walls of a
/// rail: `Resting`, a their distance between middles, w the engaged length.
///
/// # Source
/// Derived: beams.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Strip {
    /// Free length \[m\].
    pub span: f64,
    /// Width \[m\].
    pub width: f64,
    /// Thickness \[m\].
    pub thickness: f64,
    /// How it is held.
    pub held: Held,
}

impl Strip {
    /// Largest moment under a force [N m].
    #[must_use]
    pub fn moment(&self, force: f64) -> f64 {
        force * self.span / self.divisors().0
    }

    /// Bending stress under a force \[Pa\]: 6 M/(w t²).
    #[must_use]
    pub fn stress(&self, force: f64) -> f64 {
        6.0 * self.moment(force) / (self.width * self.thickness.powi(2))
    }

    /// Force for each metre of deflection under it [N/m].
    #[must_use]
    pub fn stiffness(&self, youngs_modulus: f64) -> f64 {
        let second_moment = self.width * self.thickness.powi(3) / 12.0;
        self.divisors().1 * youngs_modulus * second_moment / self.span.powi(3)
    }

    /// Force at first yield \[N\].
    #[must_use]
    pub fn first_yield(&self, yield_strength: f64) -> f64 {
        yield_strength / self.stress(1.0)
    }

    /// Force at which hinges let the strip collapse \[N\].
    ///
    /// # Equation
    ///   M_p/a, 4 M_p/a, 8 M_p/a,   M_p = f w t²/4
    ///
    /// # Source
    /// Derived: hinges at the supports that hold and under the force.
    #[must_use]
    pub fn plastic_load(&self, yield_strength: f64) -> f64 {
        let hinge = yield_strength * self.width * self.thickness.powi(2) / 4.0;
        hinge * self.divisors().0 / self.span
    }

    /// F a over the moment, and stiffness over E I/a³.
    fn divisors(&self) -> (f64, f64) {
        match self.held {
            Held::OneEnd => (1.0, 3.0),
            Held::Resting => (4.0, 48.0),
            Held::BothEnds => (8.0, 192.0),
        }
    }
}

/// Width of a plate that bends with a force on it \[m\].
///
/// # Equation
///   w = d + 2 a,   at most twice the distance to the nearer edge or to half way to the next bolt
///
///   d  bearing diameter under the head   \[m\]
///   a  from the force to the line that bends  \[m\]
///
/// # Source
/// Common practice: spread at 45 degrees to each side.
#[must_use]
pub fn spread_width(bearing: f64, distance: f64, nearest_edge: f64) -> f64 {
    (bearing + 2.0 * distance).min(2.0 * nearest_edge)
}
