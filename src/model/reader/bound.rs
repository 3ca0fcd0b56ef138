//! Which numbers a key takes, and the bounds that several sections share.
//!
//! The outer bounds are far beyond any build. They stop a slipped exponent or a
//! wrong unit at the key that holds it, before it spoils a result.

use std::f64::consts::TAU;

/// One turn \[rad\], with room for the rounding of 360 deg.
const ONE_TURN: f64 = TAU * (1.0 + 1e-9);

/// Which numbers a key takes.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Bound {
    /// Any finite number.
    Any,
    /// Above zero.
    Positive,
    /// Zero or above.
    NotNegative,
    /// Between two numbers without a unit, both included.
    Within(f64, f64),
    /// Between two SI values, both included, with the words that complete "must be".
    Stated(f64, f64, &'static str),
}

impl Bound {
    /// A place on or near the vehicle \[m\].
    pub(crate) const PLACE: Self = Self::Stated(-100.0, 100.0, "within 100 m of the datum");
    /// A size of a thing \[m\].
    pub(crate) const SIZE: Self = Self::Stated(1e-4, 100.0, "between 0.1 mm and 100 m");
    /// A travel, a gap or a hole, which may be nothing \[m\].
    pub(crate) const TRAVEL: Self = Self::Stated(0.0, 100.0, "between 0 and 100 m");
    /// A mass \[kg\].
    pub(crate) const MASS: Self = Self::Stated(1e-3, 1e6, "between 1 g and 1000 t");
    /// A moment of inertia [kg m²].
    pub(crate) const MOMENT: Self = Self::Stated(1e-12, 1e9, "above zero and at most 1e9 kg m2");
    /// A product of inertia [kg m²].
    pub(crate) const PRODUCT: Self = Self::Stated(-1e9, 1e9, "between -1e9 and 1e9 kg m2");
    /// A rate that something has for certain [N/m].
    pub(crate) const RATE: Self = Self::Stated(1.0, 1e12, "between 1 N/m and 1e12 N/m");
    /// A rate that may be nothing along an axis [N/m].
    pub(crate) const RATE_OR_NONE: Self = Self::Stated(0.0, 1e12, "between 0 and 1e12 N/m");
    /// A torque or moment [N m].
    pub(crate) const TORQUE: Self = Self::Stated(-1e7, 1e7, "between -1e7 and 1e7 N m");
    /// A force \[N\].
    pub(crate) const FORCE: Self = Self::Stated(-1e8, 1e8, "between -1e8 and 1e8 N");
    /// A speed or frequency of a machine [rad/s].
    pub(crate) const FREQUENCY: Self = Self::Stated(
        TAU / 600.0,
        TAU * 1e6 / 60.0,
        "between 0.1 rpm and 1 000 000 rpm",
    );
    /// An angle \[rad\].
    pub(crate) const ANGLE: Self = Self::Stated(-ONE_TURN, ONE_TURN, "within one turn either way");

    /// Whether a number is one of those taken.
    pub(super) fn holds(self, value: f64) -> bool {
        match self {
            Self::Any => value.is_finite(),
            Self::Positive => value > 0.0,
            Self::NotNegative => value >= 0.0,
            Self::Within(low, high) | Self::Stated(low, high, _) => (low..=high).contains(&value),
        }
    }

    /// Completes "must be".
    pub(super) fn words(self, value: f64) -> String {
        match self {
            Self::Stated(low, ..) if low > 0.0 && value <= 0.0 => "above zero".to_owned(),
            Self::Stated(low, ..) if low >= 0.0 && value < 0.0 => "zero or above".to_owned(),
            Self::Any => "finite".to_owned(),
            Self::Positive => "above zero".to_owned(),
            Self::NotNegative => "zero or above".to_owned(),
            Self::Within(low, high) => format!("between {low} and {high}"),
            Self::Stated(_, _, words) => words.to_owned(),
        }
    }
}
