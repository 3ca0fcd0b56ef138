//! SI to text (stand-in until the real module is merged).
/// Unit in which a value is shown to people.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[allow(missing_docs, reason = "stand-in")]
pub enum Shown {
    Millimetre,
    Metre,
    Kilogram,
    Newton,
    Kilonewton,
    NewtonMetre,
    NewtonPerMillimetre,
    KilonewtonPerMillimetre,
    Degree,
    Hertz,
    RevPerMinute,
    KilogramSquareMetre,
    Gee,
    Percent,
    Number,
}
/// How many digits.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[allow(missing_docs, reason = "stand-in")]
pub enum Digits {
    Decimals(usize),
    Significant(usize),
}
impl Shown {
    /// Symbol.
    #[must_use]
    pub fn symbol(self) -> &'static str {
        match self {
            Self::Millimetre => "mm",
            Self::Metre => "m",
            Self::Kilogram => "kg",
            Self::Newton => "N",
            Self::Kilonewton => "kN",
            Self::NewtonMetre => "N m",
            Self::NewtonPerMillimetre => "N/mm",
            Self::KilonewtonPerMillimetre => "kN/mm",
            Self::Degree => "deg",
            Self::Hertz => "Hz",
            Self::RevPerMinute => "rpm",
            Self::KilogramSquareMetre => "kg m2",
            Self::Gee => "g",
            Self::Percent => "%",
            Self::Number => "",
        }
    }
    /// Value in this unit.
    #[must_use]
    pub fn from_si(self, v: f64) -> f64 {
        match self {
            Self::Millimetre => v * 1e3,
            Self::Kilonewton => v / 1e3,
            Self::NewtonPerMillimetre => v / 1e3,
            Self::KilonewtonPerMillimetre => v / 1e6,
            Self::Degree => v.to_degrees(),
            Self::RevPerMinute => v * 30.0 / std::f64::consts::PI,
            Self::Gee => v / 9.80665,
            Self::Percent => v * 100.0,
            _ => v,
        }
    }
}
/// Number in a unit, without the symbol.
#[must_use]
pub fn number(value_si: f64, unit: Shown, digits: Digits) -> String {
    let v = unit.from_si(value_si);
    if !v.is_finite() {
        return "not finite".into();
    }
    match digits {
        Digits::Decimals(n) => format!("{v:.n$}"),
        Digits::Significant(n) => {
            let m = if v == 0.0 {
                0
            } else {
                v.abs().log10().floor() as i32
            };
            let d = (n as i32 - 1 - m).max(0) as usize;
            format!("{v:.d$}")
        }
    }
}
/// Number with its symbol.
#[must_use]
pub fn show(value_si: f64, unit: Shown, digits: Digits) -> String {
    format!("{} {}", number(value_si, unit, digits), unit.symbol())
        .trim_end()
        .to_owned()
}
