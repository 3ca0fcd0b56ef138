//! How much strain bonded rubber bears, by how often it must bear it.

use super::load::LoadClass;

/// Largest nominal strains of bonded rubber: deflection over thickness, none below zero.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StrainLimit {
    /// Thickness lost over thickness.
    pub compression: f64,
    /// Thickness gained over thickness across a bond; zero where a pull is to be avoided.
    pub tension: f64,
    /// Sideways shift over thickness.
    pub shear: f64,
    /// Where the numbers come from, in words.
    pub basis: &'static str,
}

impl StrainLimit {
    /// Under what it carries day and night.
    ///
    /// # Source
    /// Compression and shear: P. B. Lindley, Engineering Design with Natural
    /// Rubber, NR Technical Bulletin, Malaysian Rubber Producers' Research
    /// Association, average design limits (from memory). Tension: common practice.
    pub const AT_REST: Self = Self {
        compression: 0.15,
        tension: 0.0,
        shear: 0.50,
        basis: "average design limits of P. B. Lindley, Engineering Design with Natural Rubber",
    };

    /// In the peaks of everyday and hard use, many times in a life.
    ///
    /// # Source
    /// Common practice. Tension stays low because bonded rubber tears open inside
    /// where the pull from all sides nears 5/6 of Young's modulus: A. N. Gent, P.
    /// B. Lindley, Internal rupture of bonded rubber cylinders in tension, Proc.
    /// R. Soc. A 249 (1959) 195-205 (from memory).
    pub const IN_USE: Self = Self {
        compression: 0.30,
        tension: 0.05,
        shear: 0.75,
        basis: "common practice for the peaks of everyday and hard use",
    };

    /// In loads that come a few times in a life.
    ///
    /// # Source
    /// Common practice; tension as in use, since a rupture inside does not heal.
    pub const RARE: Self = Self {
        compression: 0.40,
        tension: 0.05,
        shear: 1.00,
        basis: "common practice for rare loads",
    };

    /// The limit that counts in load cases of a class; what lies at rest is held to [`Self::AT_REST`].
    #[must_use]
    pub fn of_class(class: LoadClass) -> Self {
        match class {
            LoadClass::Service | LoadClass::Durability => Self::IN_USE,
            LoadClass::Extreme | LoadClass::Restraint => Self::RARE,
        }
    }
}
