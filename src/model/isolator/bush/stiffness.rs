//! Rates of a bonded bush in every direction.

use std::f64::consts::PI;

use super::{Bush, conical, radial};
use crate::model::isolator::rubber::Moduli;
use crate::spatial::Vec3;

/// Length, in walls, by which shear along w falls short at the free ends.
///
/// # Source
/// Computed independently: finite elements, incompressible; L/(b − a) 1 and more.
const END: f64 = 0.23;

impl Bush {
    /// Rate across, of rubber that keeps its volume [N/m]; not a number for sizes that are no bush.
    ///
    /// # Equation
    ///   k = G L f(b/a, L/a), where f solves six equations: see the source of `bush/radial.rs`
    ///
    ///   G  shear modulus            \[Pa\]    `shear`
    ///   a  inner radius, b outer, L length  \[m\]
    ///
    /// # Range
    /// Small strain. Against finite elements −10 % to +8 % over b/a 1.25 to 4
    /// and L/(b − a) 0.25 to 16; over b/a 1.05 to 6 and L/(b − a) 0.05 to 64
    /// −17 % to +9 %.
    ///
    /// # Source
    /// Derived: equilibrium averaged over the length.
    #[must_use]
    pub fn radial_rate(&self, shear: f64) -> f64 {
        let (a, b, length) = self.of_outer_radius();
        let share = radial::share(a, b, length).unwrap_or(f64::NAN);
        shear * self.length * share
    }

    /// Rates across, of a bush as short as a disc and of one without ends [N/m].
    ///
    /// # Equation
    ///   short: k = 80 π G L (a² + b²)/(25 (a² + b²) ln(b/a) − 9 (b² − a²))
    ///   long:  k = 4 π G L/(ln(b/a) − (b² − a²)/(b² + a²))
    ///
    /// # Range
    /// As of [`Self::radial_rate`], which lies between them. An ordinary bush
    /// is far from both: the long one is two to six times too stiff and more.
    ///
    /// # Source
    /// J. E. Adkins, A. N. Gent, Load-deflexion relations of rubber bush
    /// mountings, Br. J. Appl. Phys. 5 (1954) 354-358 (from memory).
    #[must_use]
    pub fn radial_bounds(&self, shear: f64) -> [f64; 2] {
        let (a, b, _) = self.of_outer_radius();
        radial::bounds(a, b).map(|share| shear * self.length * share)
    }

    /// Rate along w [N/m].
    ///
    /// # Equation
    ///   k = η k₀,   k₀ = 2 π G L/ln(b/a)
    ///   1/η = 1 + ∛((k₀/k_p)³ + (0.23 (b − a)/L)³)
    ///   k_p = 16 π G L³/(3 b² (1 − β² − 4 β² ln² β/(1 − β²))),   β = a/b
    ///
    ///   k₀   the wall in shear alone         [N/m]
    ///   k_p  the wall as a plate that bends  [N/m]
    ///
    /// # Range
    /// Small strain. Over b/a 1.05 to 6 and L/(b − a) 0.05 to 64 within 3.5 %
    /// of finite elements, from L/(b − a) 1 on within 1.1 %. There 1/η is close
    /// to 1 + 0.23 (b − a)/L, which alone would fail for a short bush.
    ///
    /// # Source
    /// k₀ derived: the same force passes every cylinder. k_p derived: ring
    /// plate clamped at both edges, of bending stiffness G L³/3. How the two
    /// losses join, and 0.23: computed independently, by finite elements.
    #[must_use]
    pub fn axial_rate(&self, shear: f64) -> f64 {
        2.0 * PI * shear * self.length / self.ratio().ln() * self.share_of_shear()
    }

    /// What free ends leave of the shear of the wall along w.
    fn share_of_shear(&self) -> f64 {
        let (_, outer, length) = self.of_outer_radius();
        let (ln, square) = (self.ratio().ln(), self.ratio().powi(-2));
        let in_shear = 2.0 * PI * length / ln;
        let plate = 16.0 * PI * length.powi(3)
            / (3.0 * outer * outer * (1.0 - square - 4.0 * square * ln * ln / (1.0 - square)));
        let end = END / self.slenderness();
        1.0 / (1.0 + ((in_shear / plate).powi(3) + end.powi(3)).cbrt())
    }

    /// Rate about w [N m/rad].
    ///
    /// # Equation
    ///   k = 4 π G L a² b²/(b² − a²)
    ///
    /// # Range
    /// Any size. Of a neo-Hookean rubber linear to any angle, since it is in simple shear.
    ///
    /// # Source
    /// Derived: the same torque passes every cylinder; free ends stay flat and
    /// free of stress, so that it is exact.
    #[must_use]
    pub fn torsional_rate(&self, shear: f64) -> f64 {
        let (a, b) = (self.inner / 2.0, self.outer / 2.0);
        4.0 * PI * shear * self.length * (a * b).powi(2) / (b * b - a * a)
    }

    /// Rate about u or v, one tube tilting in the other, of rubber that keeps its volume [N m/rad].
    ///
    /// # Equation
    ///   k = G L³ f(b/a, L/(b − a)), f from a table: see the source of `bush/conical.rs`
    ///
    /// # Range
    /// Small strain; b/a 1.05 to 6, L/(b − a) 0.05 to 64, within 0.7 % of the
    /// finite elements that made the table. A rod with the rate across spread
    /// evenly along it, k L²/12, is no stand-in: short bushes resist tilting
    /// by shear of the wall, long ones give way at the ends.
    ///
    /// # Source
    /// Computed independently: finite elements, incompressible, first harmonic round the axis.
    #[must_use]
    pub fn conical_rate(&self, shear: f64) -> f64 {
        shear * self.length.powi(3) * conical::share(self.ratio(), self.slenderness())
    }

    /// Rates along u, v, w [N/m] of rubber that gives way in bulk too.
    ///
    /// # Equation
    ///   1/k = 1/k_radial + 1/k_bulk,   k_bulk = π √(a b) K L/(b − a)
    ///
    ///   K  bulk modulus  \[Pa\]
    ///
    /// # Range
    /// Against finite elements with K/G 600 and 1350, −10 % to +9 % over b/a
    /// 1.25 to 4, −14 % down to b/a 1.05; L/(b − a) up to 64, where
    /// compression takes off up to 80 %.
    ///
    /// # Source
    /// Derived: a wall without ends is pushed as a column that cannot spread, in
    /// series with the wall that flows. Lindley joins the two in the same way
    /// for a block.
    #[must_use]
    pub fn rates(&self, moduli: &Moduli) -> Vec3 {
        let across = in_series(self.radial_rate(moduli.shear), self.bulk_rate(moduli));
        Vec3::new(across, across, self.axial_rate(moduli.shear))
    }

    /// Rates about u, v, w [N m/rad] of rubber that gives way in bulk too.
    ///
    /// # Equation
    ///   k_conical = s + 1/(1/p + 12/(k_bulk L²)),   p = k_conical,0 − s
    ///   s = η π G L a² (a² + b²)/(b² − a²)
    ///
    ///   s  the wall in shear along w, which keeps its volume; η as of [`Self::axial_rate`]
    ///   p  the rest, by pressure
    ///
    /// # Range
    /// Against the same finite elements within 4 % from b/a 1.25 on; for thinner
    /// walls within 2 % up to L/(b − a) 16, beyond up to 16 % too much.
    ///
    /// # Source
    /// Derived: shear of a ring whose inner edge moves along w as the cosine
    /// round it; the pressure acts as a wall without ends does at each place.
    #[must_use]
    pub fn rotational(&self, moduli: &Moduli) -> Vec3 {
        let whole = self.conical_rate(moduli.shear);
        let (a2, b2) = ((self.inner / 2.0).powi(2), (self.outer / 2.0).powi(2));
        let sheared = PI * moduli.shear * self.length * a2 * (a2 + b2) / (b2 - a2);
        let sheared = (sheared * self.share_of_shear()).min(whole);
        let confined = self.bulk_rate(moduli) * self.length.powi(2) / 12.0;
        let tilted = sheared + in_series(whole - sheared, confined);
        Vec3::new(tilted, tilted, self.torsional_rate(moduli.shear))
    }

    /// Rate across of a wall that cannot flow [N/m].
    fn bulk_rate(&self, moduli: &Moduli) -> f64 {
        let middle = (self.inner * self.outer).sqrt() / 2.0;
        PI * middle * moduli.bulk * self.slenderness()
    }

    /// Inner and outer radius and length as multiples of the outer radius.
    fn of_outer_radius(&self) -> (f64, f64, f64) {
        (self.inner / self.outer, 1.0, 2.0 * self.length / self.outer)
    }
}

/// Rate of two springs one behind the other; the second is above zero.
pub(in crate::model::isolator) fn in_series(first: f64, second: f64) -> f64 {
    first / (1.0 + first / second)
}
