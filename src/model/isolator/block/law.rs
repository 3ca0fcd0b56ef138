//! Law of one block, or of several that lean against each other.

use super::compression::Bulge;
use crate::model::isolator::{AxisPoint, Law, LawPoint};
use crate::spatial::{Mat3, Vec3};

/// Rubber between plates square to w, or pieces of which half lean each way about u.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Block {
    /// Rates at the free position of all pieces together, along the axes of a piece that does not lean [N/m].
    pub rates: Vec3,
    /// Height of all rubber of a piece along its own w \[m\].
    pub height: f64,
    /// Which way the rubber bulges.
    pub bulge: Bulge,
    /// Angle by which half of the pieces lean one way about u and half the other \[rad\].
    pub lean: f64,
}

impl Law for Block {
    /// # Equation
    ///   f(x) = Σ R f₀(Rᵀ x)/2 over the two leans ±θ,   R turns by θ about u
    ///   f₀:  k_u x along u,   k_v x along v,   −k_w H s(−x/H) along w
    ///
    ///   H  height of the rubber \[m\],  s  stress of [`Bulge::at`]
    ///
    /// # Range
    /// Shear is linear to 75 % and more, and does not depend on the load along w
    /// (derived for a neo-Hookean block between parallel plates).
    ///
    /// # Source
    /// Derived: pieces side by side share the deflection, forces add.
    fn at(&self, x: &Vec3) -> LawPoint {
        if self.lean.abs() > 0.0 {
            self.leaning(x)
        } else {
            self.upright(x)
        }
    }
}

impl Block {
    fn upright(&self, x: &Vec3) -> LawPoint {
        let pressed = self.bulge.at(-x.z / self.height);
        let scale = self.rates.z * self.height;
        LawPoint::of_axes([
            AxisPoint::of_rate(self.rates.x, x.x),
            AxisPoint::of_rate(self.rates.y, x.y),
            AxisPoint {
                force: -scale * pressed.force,
                tangent: self.rates.z * pressed.tangent,
                energy: scale * self.height * pressed.energy,
            },
        ])
    }

    fn leaning(&self, x: &Vec3) -> LawPoint {
        let mut sum = LawPoint {
            force: Vec3::zeros(),
            tangent: Mat3::zeros(),
            energy: 0.0,
        };
        for lean in [self.lean, -self.lean] {
            let (sin, cos) = lean.sin_cos();
            let R = Mat3::new(1.0, 0.0, 0.0, 0.0, cos, -sin, 0.0, sin, cos);
            let piece = self.upright(&R.tr_mul(x));
            sum.force += R * piece.force / 2.0;
            sum.tangent += R * piece.tangent * R.transpose() / 2.0;
            sum.energy += piece.energy / 2.0;
        }
        sum
    }
}
