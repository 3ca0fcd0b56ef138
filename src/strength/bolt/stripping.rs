//! Length of thread that holds a bolt in a tapped part.

use std::f64::consts::PI;

use crate::model::fastener::Thread;

/// Tangent of half the flank angle.
const FLANK: f64 = 0.577_35;

/// Diameters at the worst ends of their tolerances \[m\].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WorstFit {
    /// Pitch P \[m\].
    pub pitch: f64,
    /// Least outer diameter of the bolt.
    pub bolt_outer: f64,
    /// Least pitch diameter of the bolt.
    pub bolt_pitch: f64,
    /// Largest pitch diameter of the tapped hole.
    pub hole_pitch: f64,
    /// Largest inner diameter of the tapped hole.
    pub hole_inner: f64,
}

impl WorstFit {
    /// Of the usual tolerances 6g in 6H.
    ///
    /// # Equation
    ///   in µm, P and dm in mm:  es = 15 + 11 P,   Td = 180 P^(2/3) − 3.15/√P,
    ///   Td2 = 90 P^0.4 dm^0.1,  TD2 = 1.32 Td2,   TD1 = 230 P^0.7
    ///   bolt: d − es − Td, d2 − es − Td2;   hole: d2 + TD2, D1 + TD1
    ///
    ///   dm  geometric mean of the step of diameters 5.6 to 11.2 to 22.4
    ///
    /// # Range
    /// M6 to M22, pitch from 1 mm. The tables round these; a shear area moves by less than 1 %.
    /// For inch threads, 2A in 2B, which are alike, it is an approximation.
    ///
    /// # Source
    /// ISO 965-1, from memory.
    #[must_use]
    pub fn of(thread: &Thread) -> Self {
        let (p, d) = (thread.pitch * 1e3, thread.nominal * 1e3);
        let step = if d <= 11.2 { 5.6 } else { 11.2 };
        let mean = step * std::f64::consts::SQRT_2;
        let gap = 15.0 + 11.0 * p;
        let outer = 180.0 * p.powf(2.0 / 3.0) - 3.15 / p.sqrt();
        let pitch = 90.0 * p.powf(0.4) * mean.powf(0.1);
        let inner = 230.0 * p.powf(0.7);
        Self {
            pitch: thread.pitch,
            bolt_outer: thread.nominal - (gap + outer) * 1e-6,
            bolt_pitch: thread.pitch_diameter() - (gap + pitch) * 1e-6,
            hole_pitch: thread.pitch_diameter() + 1.32 * pitch * 1e-6,
            hole_inner: thread.nut_minor_diameter() + inner * 1e-6,
        }
    }

    /// Area of the bolt's thread that shears off, per length of engagement \[m\].
    ///
    /// # Equation
    ///   a = π D1 (1/2 + 0.57735 (d2 − D1)/P)
    ///
    ///   D1  largest inner diameter of the hole  \[m\]
    ///   d2  least pitch diameter of the bolt    \[m\]
    ///
    /// # Source
    /// FED-STD-H28, from memory.
    #[must_use]
    pub fn bolt_area(&self) -> f64 {
        let overlap = FLANK * (self.bolt_pitch - self.hole_inner) / self.pitch;
        PI * self.hole_inner * (0.5 + overlap)
    }

    /// Area of the part's thread that shears off, per length of engagement \[m\].
    ///
    /// # Equation
    ///   a = π d (1/2 + 0.57735 (d − D2)/P)
    ///
    ///   d   least outer diameter of the bolt     \[m\]
    ///   D2  largest pitch diameter of the hole   \[m\]
    ///
    /// # Source
    /// FED-STD-H28, from memory.
    #[must_use]
    pub fn hole_area(&self) -> f64 {
        let overlap = FLANK * (self.bolt_outer - self.hole_pitch) / self.pitch;
        PI * self.bolt_outer * (0.5 + overlap)
    }

    /// Length of engagement at which neither thread strips under a force \[m\].
    ///
    /// # Equation
    ///   l = F/min(aB τB, aM τM)
    ///
    ///   F       force to be held; the breaking load, that the bolt breaks and no thread strips   \[N\]
    ///   aB, aM  [`Self::bolt_area`], [`Self::hole_area`]                                         \[m\]
    ///   τB, τM  shear strength of bolt and part, about 0.6 of the tensile strength               \[Pa\]
    ///
    /// # Range
    /// No allowance for a wide mouth of the hole, which lengthens it. The ends of thread that are
    /// not full, about two pitches, come on top.
    ///
    /// # Source
    /// FED-STD-H28, from memory; ratio of shear to tensile strength: common practice.
    #[must_use]
    pub fn engagement(&self, force: f64, bolt_shear: f64, part_shear: f64) -> f64 {
        force / (self.bolt_area() * bolt_shear).min(self.hole_area() * part_shear)
    }
}

/// Shear strength over tensile strength of threads.
///
/// # Source
/// Common practice; VDI 2230-1:2003 has 0.60 to 0.65 for steel bolts (from memory).
pub const SHEAR_RATIO: f64 = 0.6;
