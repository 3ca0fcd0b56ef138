//! A single pulse of given shape against time.

use std::f64::consts::{PI, TAU};

use nalgebra::Complex;

/// Shape of a pulse of height 1, `s` from 0 to 1 along it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shape {
    /// sin(π s).
    HalfSine,
    /// (1 − cos 2π s)/2, which begins and ends without a kink.
    VersedSine,
    /// 1 throughout.
    Rectangle,
    /// 1 − |2 s − 1|.
    Triangle,
}

/// One stretch of a pulse: `constant + slope t + Re(harmonic e^(i rate t))`, `t` from where it begins.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Piece {
    /// How long it lasts \[s\].
    pub duration: f64,
    /// Part that stays.
    pub constant: f64,
    /// Part that grows \[1/s\].
    pub slope: f64,
    /// Amplitude and phase of the part that swings.
    pub harmonic: Complex<f64>,
    /// Angular frequency of that part \[rad/s\].
    pub rate: f64,
}

impl Piece {
    /// A straight line.
    #[must_use]
    pub fn line(duration: f64, constant: f64, slope: f64) -> Self {
        Self {
            duration,
            constant,
            slope,
            harmonic: Complex::new(0.0, 0.0),
            rate: 0.0,
        }
    }

    /// Value, first and second derivative at a time from where the piece begins.
    fn at(&self, time: f64) -> [f64; 3] {
        let swing = self.harmonic * Complex::cis(self.rate * time);
        [
            self.constant + self.slope * time + swing.re,
            self.slope - self.rate * swing.im,
            -self.rate * self.rate * swing.re,
        ]
    }
}

/// A pulse with a beginning at time 0 and an end; nothing before and after.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pulse {
    shape: Shape,
    peak: f64,
    duration: f64,
}

impl Pulse {
    /// A pulse of a shape, its largest value with sign, and how long it lasts \[s\].
    ///
    /// `None` when it lasts no time or a number is not finite.
    #[must_use]
    pub fn new(shape: Shape, peak: f64, duration: f64) -> Option<Self> {
        (peak.is_finite() && duration.is_finite() && duration > 0.0).then_some(Self {
            shape,
            peak,
            duration,
        })
    }

    /// Its shape.
    #[must_use]
    pub fn shape(&self) -> Shape {
        self.shape
    }

    /// Its largest value, with sign.
    #[must_use]
    pub fn peak(&self) -> f64 {
        self.peak
    }

    /// How long it lasts \[s\].
    #[must_use]
    pub fn duration(&self) -> f64 {
        self.duration
    }

    /// The pulse as pieces that follow each other.
    #[must_use]
    pub fn pieces(&self) -> Vec<Piece> {
        let (p, long) = (self.peak, self.duration);
        match self.shape {
            Shape::HalfSine => vec![Piece {
                harmonic: Complex::new(0.0, -p),
                rate: PI / long,
                ..Piece::line(long, 0.0, 0.0)
            }],
            Shape::VersedSine => vec![Piece {
                harmonic: Complex::new(-p / 2.0, 0.0),
                rate: TAU / long,
                ..Piece::line(long, p / 2.0, 0.0)
            }],
            Shape::Rectangle => vec![Piece::line(long, p, 0.0)],
            Shape::Triangle => {
                let slope = 2.0 * p / long;
                vec![
                    Piece::line(long / 2.0, 0.0, slope),
                    Piece::line(long / 2.0, p, -slope),
                ]
            }
        }
    }

    /// Value, first and second derivative at `time` \[s\]; zero outside.
    ///
    /// At a kink the derivatives are those after it, at the very end those before it.
    #[must_use]
    pub fn at(&self, time: f64) -> [f64; 3] {
        if !(0.0..=self.duration).contains(&time) {
            return [0.0; 3];
        }
        let mut rest = time;
        let mut found = [0.0; 3];
        for piece in self.pieces() {
            found = piece.at(rest);
            if rest < piece.duration {
                break;
            }
            rest -= piece.duration;
        }
        found
    }

    /// Area under the pulse \[unit of the value times s\]; of an acceleration, the step of velocity.
    ///
    /// # Equation
    ///   half sine 2/π,   versed sine 1/2,   rectangle 1,   triangle 1/2   of peak times duration
    ///
    /// # Source
    /// Derived: integrals of the shapes.
    #[must_use]
    pub fn area(&self) -> f64 {
        let share = match self.shape {
            Shape::HalfSine => 2.0 / PI,
            Shape::VersedSine | Shape::Triangle => 0.5,
            Shape::Rectangle => 1.0,
        };
        share * self.peak * self.duration
    }
}
