//! Prying: a flange that bends, bears on its tip and loads its bolt more than the pull.

/// One bolt of a flange with its strip.
///
/// # Equation
///   b' = b − d/2,   a' = a + d/2 with a ≤ 1.25 b,   ρ = b'/a',   δ = 1 − d'/p
///
/// # Source
/// W. A. Thornton, Prying action, a general treatment, Engineering Journal AISC 22 (1985).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Flange {
    /// Bolt \[m\].
    pub bolt: f64,
    /// Hole \[m\], d' of the equations.
    pub hole: f64,
    /// From the bolt to the face of the stem \[m\], b.
    pub to_stem: f64,
    /// From the bolt to the tip of the flange \[m\], a.
    pub to_tip: f64,
    /// Length of flange that belongs to the bolt \[m\], p, above the hole.
    pub length: f64,
    /// Thickness \[m\], t.
    pub thickness: f64,
}

/// How a flange with its bolts fails.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Governs {
    /// The bolt; the flange is too thick to pry.
    Bolt,
    /// The bolt with prying, hinges at the stem and partly at the bolt line.
    BoltAndFlange,
    /// The flange, hinges at the stem and at the bolt line.
    Flange,
}

/// What one bolt and its strip of flange carry.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Carried {
    /// Pull on the flange for each bolt \[N\].
    pub pull: f64,
    /// What limits it.
    pub governs: Governs,
}

/// What a pull does to the bolt.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pried {
    /// Force at the tip of the flange for each bolt \[N\].
    pub prying: f64,
    /// Force in the bolt \[N\]: pull and prying.
    pub bolt: f64,
    /// Whether the flange carries the pull at all.
    pub flange_holds: bool,
}

impl Flange {
    /// b', ρ and δ.
    fn shape(&self) -> (f64, f64, f64) {
        let near = self.to_stem - self.bolt / 2.0;
        let far = self.to_tip.min(1.25 * self.to_stem) + self.bolt / 2.0;
        (near, near / far, 1.0 - self.hole / self.length)
    }

    /// Thickness from which on nothing pries \[m\].
    ///
    /// # Equation
    ///   t_c = √(4 B b'/(p f))
    ///
    ///   B  strength of the bolt in tension \[N\]
    ///   f  strength of the flange in bending \[Pa\]: design value, in the source
    ///      0.9 of the tensile strength
    ///
    /// # Source
    /// As [`Flange`].
    #[must_use]
    pub fn thickness_without_prying(&self, bolt_strength: f64, strength: f64) -> f64 {
        let (near, ..) = self.shape();
        (4.0 * bolt_strength * near / (self.length * strength)).sqrt()
    }

    /// Pull that one bolt with its flange carries.
    ///
    /// # Equation
    ///   α = ((t_c/t)² − 1)/(δ (1 + ρ))
    ///   α < 0: T = B;   0 to 1: T = B (t/t_c)² (1 + δ α);   α > 1: T = B (t/t_c)² (1 + δ)
    ///
    /// # Range
    /// Bolt outside the face of the stem by more than half its diameter.
    ///
    /// # Source
    /// As [`Flange`].
    #[must_use]
    pub fn carries(&self, bolt_strength: f64, strength: f64) -> Carried {
        let (_, rho, delta) = self.shape();
        let square =
            (self.thickness / self.thickness_without_prying(bolt_strength, strength)).powi(2);
        let alpha = (1.0 / square - 1.0) / (delta * (1.0 + rho));
        let (share, governs) = if alpha < 0.0 {
            (1.0, Governs::Bolt)
        } else if alpha <= 1.0 {
            (square * (1.0 + delta * alpha), Governs::BoltAndFlange)
        } else {
            (square * (1.0 + delta), Governs::Flange)
        };
        Carried {
            pull: bolt_strength * share,
            governs,
        }
    }

    /// Force in the bolt under a pull for each bolt.
    ///
    /// # Equation
    ///   δ α = T b'/M − 1, from 0 to δ,   Q = δ α M/a',   M = p t² f/4
    ///
    /// # Range
    /// Flange at its plastic moment at the stem, which gives the least prying
    /// that is in equilibrium. A flange that does not hold is told, with the
    /// prying of both hinges.
    ///
    /// # Source
    /// Derived from the equilibrium of [`Flange`]: M = T b' − Q a'.
    #[must_use]
    pub fn under(&self, pull: f64, strength: f64) -> Pried {
        let (near, rho, delta) = self.shape();
        let hinge = self.length * self.thickness.powi(2) * strength / 4.0;
        let asked = pull * near / hinge - 1.0;
        let prying = asked.clamp(0.0, delta) * hinge * rho / near;
        Pried {
            prying,
            bolt: pull + prying,
            flange_holds: asked <= delta,
        }
    }
}
