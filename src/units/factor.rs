//! How much of SI one unit is.
//!
//! Every factor is multiplied here from exact definitions, so that no rounded product is typed in:
//!
//! - inch and pound: international yard and pound agreement (1959), 1 yd = 0.9144 m, 1 lb =
//!   0.453 592 37 kg;
//! - standard acceleration of free fall: 9.806 65 m/s², 3rd CGPM (1901), quoted in the BIPM SI
//!   brochure;
//! - bar and degree Fahrenheit: NIST SP 811 (2008), appendix B.

use std::f64::consts::PI;

/// SI per unit as a quotient. Two numbers rather than one, because `35 / 1000` is the float nearest
/// to 0.035 and `35 * 0.001` is not.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Factor {
    num: f64,
    den: f64,
}

impl Factor {
    const fn of(num: f64, den: f64) -> Self {
        Self { num, den }
    }

    pub(super) const fn times(self, other: Self) -> Self {
        Self::of(self.num * other.num, self.den * other.den)
    }

    pub(super) const fn per(self, other: Self) -> Self {
        Self::of(self.num * other.den, self.den * other.num)
    }

    pub(super) const fn squared(self) -> Self {
        self.times(self)
    }

    /// A value in this unit, in SI.
    pub(super) const fn to_si(self, value: f64) -> f64 {
        value * self.num / self.den
    }

    /// A value in SI, in this unit.
    pub(super) const fn in_unit(self, value: f64) -> f64 {
        value * self.den / self.num
    }
}

pub(super) const ONE: Factor = Factor::of(1.0, 1.0);
pub(super) const KILO: Factor = Factor::of(1e3, 1.0);
pub(super) const MEGA: Factor = Factor::of(1e6, 1.0);
pub(super) const GIGA: Factor = Factor::of(1e9, 1.0);
pub(super) const CENTI: Factor = Factor::of(1.0, 1e2);
pub(super) const MILLI: Factor = Factor::of(1.0, 1e3);
pub(super) const MICRO: Factor = Factor::of(1.0, 1e6);
pub(super) const DECA: Factor = Factor::of(10.0, 1.0);
pub(super) const BAR: Factor = Factor::of(1e5, 1.0);

pub(super) const MINUTE: Factor = Factor::of(60.0, 1.0);
pub(super) const HOUR: Factor = MINUTE.times(MINUTE);
pub(super) const DEGREE: Factor = Factor::of(PI, 180.0);
pub(super) const TURN: Factor = Factor::of(2.0 * PI, 1.0);
pub(super) const TURN_PER_MINUTE: Factor = TURN.per(MINUTE);
pub(super) const KILOMETRE_PER_HOUR: Factor = KILO.per(HOUR);

pub(super) const INCH: Factor = Factor::of(254.0, 1e4);
pub(super) const FOOT: Factor = Factor::of(12.0, 1.0).times(INCH);
pub(super) const MILE: Factor = Factor::of(5280.0, 1.0).times(FOOT);
pub(super) const THOU: Factor = MILLI.times(INCH);
pub(super) const POUND: Factor = Factor::of(45_359_237.0, 1e8);
/// Standard acceleration of free fall.
pub(super) const FREE_FALL: Factor = Factor::of(980_665.0, 1e5);
pub(super) const POUND_FORCE: Factor = POUND.times(FREE_FALL);
/// One kilogram under standard free fall.
pub(super) const KILOGRAM_FORCE: Factor = FREE_FALL;
pub(super) const POUND_FOOT: Factor = POUND_FORCE.times(FOOT);
pub(super) const POUND_INCH: Factor = POUND_FORCE.times(INCH);
pub(super) const PSI: Factor = POUND_FORCE.per(INCH.squared());
pub(super) const FAHRENHEIT_DEGREE: Factor = Factor::of(5.0, 9.0);
