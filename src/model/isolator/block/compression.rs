//! How rubber between two plates answers when it is pressed far, against how it begins.

use crate::model::isolator::AxisPoint;

/// Which way rubber bulges when it is pressed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Bulge {
    /// On all sides, as a disc does.
    AllRound,
    /// On two sides only, as a long strip or the wall of a ring does.
    TwoSides,
}

/// Compressive strain up to which the measured form of rubber springs is taken.
const MEASURED_TO: f64 = 0.2;

/// Compressive strain from which on the theory of large strain is taken.
const THEORY_FROM: f64 = 0.3;

/// Compressive strain beyond which the rate no longer grows: nothing is known there, and at 1 theory is infinite.
const STRAIGHT_FROM: f64 = 0.8;

impl Bulge {
    /// Stress, its slope and energy for a modulus of 1 at a compressive strain `e`, below zero when pulled.
    ///
    /// # Equation
    ///   e ≤ 0:           theory
    ///   0 to 0.2:        e (1 + e) all round,   e (1 + 1.5 e) to two sides
    ///   0.2 to 0.3:      the cubic with the values and slopes of both neighbours
    ///   0.3 to 0.8:      theory
    ///   beyond:          straight on
    ///   theory:          (λ⁻² − λ)/3 all round,   (λ⁻³ − λ)/4 to two sides,   λ = 1 − e
    ///
    /// # Range
    /// Stress rises everywhere, with a continuous slope; at e = 0 the second
    /// derivatives agree as well. Theory is that of a free neo-Hookean body; the
    /// shape factor is taken to multiply it as a whole.
    ///
    /// # Source
    /// Up to 0.2 published: P. B. Lindley, Engineering Design with Natural
    /// Rubber, pp. 26-28 and 45-46. Theory: derived from the neo-Hookean energy,
    /// incompressible, in uniaxial stress and in plane strain. The bridge: derived.
    #[must_use]
    pub fn at(self, e: f64) -> AxisPoint {
        let measured = |e: f64| {
            let c = self.growth();
            AxisPoint {
                force: e + c * e * e,
                tangent: 1.0 + 2.0 * c * e,
                energy: e * e / 2.0 + c * e * e * e / 3.0,
            }
        };
        if e <= 0.0 {
            return self.theory(e);
        }
        if e <= MEASURED_TO {
            return measured(e);
        }
        let (from, to) = (measured(MEASURED_TO), self.theory(THEORY_FROM));
        if e < THEORY_FROM {
            return bridge(from, to, e);
        }
        // The bridge stores another energy than theory does, so beyond it theory is shifted.
        let shift = bridge(from, to, THEORY_FROM).energy - to.energy;
        let inside = self.theory(e.min(STRAIGHT_FROM));
        let beyond = (e - STRAIGHT_FROM).max(0.0);
        AxisPoint {
            force: inside.force + inside.tangent * beyond,
            tangent: inside.tangent,
            energy: inside.energy
                + shift
                + inside.force * beyond
                + inside.tangent * beyond * beyond / 2.0,
        }
    }

    fn growth(self) -> f64 {
        match self {
            Self::AllRound => 1.0,
            Self::TwoSides => 1.5,
        }
    }

    /// Theory, written so that no digits cancel at small strain.
    fn theory(self, e: f64) -> AxisPoint {
        let l = 1.0 - e;
        match self {
            Self::AllRound => AxisPoint {
                force: e * (1.0 + l + l * l) / (3.0 * l * l),
                tangent: (2.0 / (l * l * l) + 1.0) / 3.0,
                energy: e * e * (l + 2.0) / (6.0 * l),
            },
            Self::TwoSides => AxisPoint {
                force: e * (1.0 + l) * (1.0 + l * l) / (4.0 * l * l * l),
                tangent: (3.0 / (l * l * l * l) + 1.0) / 4.0,
                energy: (e * (1.0 + l) / l).powi(2) / 8.0,
            },
        }
    }
}

/// Cubic between the strains of the two forms.
fn bridge(from: AxisPoint, to: AxisPoint, e: f64) -> AxisPoint {
    let h = THEORY_FROM - MEASURED_TO;
    let t = (e - MEASURED_TO) / h;
    let rise = to.force - from.force;
    let linear = h * from.tangent;
    let square = 3.0 * rise - h * (2.0 * from.tangent + to.tangent);
    let cube = h * (from.tangent + to.tangent) - 2.0 * rise;
    AxisPoint {
        force: from.force + t * (linear + t * (square + t * cube)),
        tangent: (linear + t * (2.0 * square + t * 3.0 * cube)) / h,
        energy: from.energy
            + h * t * (from.force + t * (linear / 2.0 + t * (square / 3.0 + t * cube / 4.0))),
    }
}
