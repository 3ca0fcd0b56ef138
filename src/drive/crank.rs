//! Slider-crank of one cylinder: what its reciprocating mass does over a turn, order by order.

/// Highest whole order of the crank that is kept.
pub const HIGHEST: usize = 12;

/// Points of a half turn at which the mechanism is sampled.
const HALF_TURN: usize = 64;

/// Largest ratio of crank radius to rod for which the sampling is exact to rounding.
const LARGEST_RATIO: f64 = 0.85;

/// Crank and rod of one cylinder, without pin offset.
///
/// Angles are those of the crank from the top dead centre of this cylinder \[rad\].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SliderCrank {
    ratio: f64,
}

/// Fourier coefficients of one cylinder, without dimension; the index is the order.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Coefficients {
    /// Of the pull on the block over m r ω²: cosines, outward along the cylinder positive.
    pub pull: [f64; HIGHEST + 1],
    /// Of the torque on the crank over m r² ω²: sines, driving positive.
    pub torque: [f64; HIGHEST + 1],
}

impl SliderCrank {
    /// From crank radius over rod length, above 0 and at most 0.85; `None` outside.
    #[must_use]
    pub fn new(ratio: f64) -> Option<Self> {
        (ratio > 0.0 && ratio <= LARGEST_RATIO).then_some(Self { ratio })
    }

    /// Height of the piston pin above the crank line, over the crank radius.
    ///
    /// # Equation
    ///   y/r = cos θ + √(1 − λ² sin² θ) / λ
    ///
    /// # Source
    /// Derived: projection of crank and rod on the cylinder axis.
    #[must_use]
    pub fn height(&self, angle: f64) -> f64 {
        angle.cos() + self.slant(angle.sin()) / self.ratio
    }

    /// Derivative of [`Self::height`] by the crank angle, per radian.
    ///
    /// # Equation
    ///   y'/r = −sin θ (1 + λ cos θ / √(1 − λ² sin² θ))
    ///
    /// # Source
    /// Derived: [`Self::height`] differentiated.
    #[must_use]
    pub fn rise(&self, angle: f64) -> f64 {
        let (s, c) = angle.sin_cos();
        self.rise_at(s, c)
    }

    /// Pull of the reciprocating mass on the block, outward along the cylinder, over m r ω².
    ///
    /// # Equation
    ///   −y''/r = cos θ + λ cos 2θ / S + λ³ sin² θ cos² θ / S³,   S = √(1 − λ² sin² θ)
    ///
    /// # Source
    /// Derived: [`Self::rise`] differentiated; the block feels minus mass times acceleration.
    #[must_use]
    pub fn pull(&self, angle: f64) -> f64 {
        let (s, c) = angle.sin_cos();
        self.pull_at(s, c)
    }

    fn slant(&self, s: f64) -> f64 {
        (1.0 - (self.ratio * s).powi(2)).sqrt()
    }

    fn rise_at(&self, s: f64, c: f64) -> f64 {
        -s * (1.0 + self.ratio * c / self.slant(s))
    }

    fn pull_at(&self, s: f64, c: f64) -> f64 {
        let slant = self.slant(s);
        let tilt = self.ratio / slant;
        c + tilt * (c * c - s * s) + tilt.powi(3) * (s * c).powi(2)
    }

    /// Orders 0 to 12 of pull and torque of one cylinder.
    ///
    /// # Equation
    ///   pull(θ) = m r ω² Σ A_k cos kθ
    ///   torque(θ) = pull y' = m r² ω² Σ T_k sin kθ
    ///
    ///   m  reciprocating mass: piston set and the small-end share of the rod \[kg\]
    ///   r  crank radius \[m\],  ω  crank speed [rad/s]
    ///
    /// # Range
    /// Steady speed, rod as two masses at its ends. The sum over 128 points of a
    /// turn is exact to rounding, since the coefficients of a smooth periodic
    /// function fall as a geometric series: at λ = 0.85 order 116, the first to
    /// be mistaken for order 12, is below 1e-20.
    ///
    /// # Source
    /// Derived: Fourier integrals of the exact mechanism; the torque from the
    /// power of the inertia force. To λ³ also in J. P. Den Hartog, Mechanical
    /// Vibrations, chapter 5 (from memory).
    #[must_use]
    pub fn coefficients(&self) -> Coefficients {
        let mut pull = [0.0; HIGHEST + 1];
        let mut torque = [0.0; HIGHEST + 1];
        for step in 0..=HALF_TURN {
            let (s, c) = (std::f64::consts::PI * step as f64 / HALF_TURN as f64).sin_cos();
            // Even and odd functions: half a turn stands for the other, its ends count half.
            let weight = if step == 0 || step == HALF_TURN {
                1.0
            } else {
                2.0
            };
            let here = weight * self.pull_at(s, c) / HALF_TURN as f64;
            let drive = here * self.rise_at(s, c);
            // cos kθ and sin kθ one after the other, by turning on.
            let (mut cos, mut sin) = (1.0, 0.0);
            for (a, t) in pull.iter_mut().zip(&mut torque) {
                *a += here * cos;
                *t += drive * sin;
                (cos, sin) = (cos * c - sin * s, sin * c + cos * s);
            }
        }
        pull[0] /= 2.0;
        Coefficients { pull, torque }
    }
}
