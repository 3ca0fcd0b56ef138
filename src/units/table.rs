//! The table of units: spellings, definitions and where these are from.

use super::factor::{
    BAR, CENTI, DECA, DEGREE, FAHRENHEIT_DEGREE, FOOT, FREE_FALL, Factor, GIGA, HOUR, INCH, KILO,
    KILOGRAM_FORCE, KILOMETRE_PER_HOUR, MEGA, MICRO, MILE, MILLI, MINUTE, ONE, POUND, POUND_FOOT,
    POUND_FORCE, POUND_INCH, PSI, THOU, TURN, TURN_PER_MINUTE,
};
use super::quantity::Quantity;

const SI: &str = "BIPM, SI brochure, 9th edition (2019)";
const YARD: &str = "international yard and pound agreement (1959)";
const WEIGHT: &str = "standard free fall 9.80665 m/s2, 3rd CGPM (1901)";
const YARD_AND_WEIGHT: &str =
    "international yard and pound agreement (1959) and standard free fall, 3rd CGPM (1901)";
const GUIDE: &str = "NIST SP 811 (2008), appendix B";

/// One unit in which a quantity may be written.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct UnitRow {
    /// The accepted spellings, the symbol first. A space stands for a product: in the text it may
    /// be a space, a hyphen, `·`, `*` or nothing.
    pub spellings: &'static [&'static str],
    /// The definition in words.
    pub definition: &'static str,
    /// The publication the definition is from.
    pub source: &'static str,
    /// Whether upper and lower case may be mixed.
    pub any_case: bool,
    factor: Factor,
    /// The reading of this unit where the kept value is zero; only temperatures have one.
    zero: f64,
}

impl UnitRow {
    const fn si(
        spellings: &'static [&'static str],
        factor: Factor,
        definition: &'static str,
    ) -> Self {
        Self {
            spellings,
            definition,
            source: SI,
            any_case: false,
            factor,
            zero: 0.0,
        }
    }

    const fn trade(
        spellings: &'static [&'static str],
        factor: Factor,
        definition: &'static str,
        source: &'static str,
    ) -> Self {
        Self {
            spellings,
            definition,
            source,
            any_case: true,
            factor,
            zero: 0.0,
        }
    }

    /// For a trade unit with an SI symbol inside it, where case has a meaning.
    const fn keeping_case(self) -> Self {
        Self {
            any_case: false,
            ..self
        }
    }

    const fn with_zero_at(self, zero: f64) -> Self {
        Self { zero, ..self }
    }

    /// The preferred spelling.
    #[must_use]
    pub fn symbol(&self) -> &'static str {
        self.spellings.first().copied().unwrap_or_default()
    }

    /// How much of the kept unit one of this unit is; of temperatures, the size of one degree.
    #[must_use]
    pub fn factor(&self) -> f64 {
        self.factor.to_si(1.0)
    }

    /// The reading of this unit at which the kept value is zero: 32 for °F, 0 for all units but
    /// those of temperature.
    #[must_use]
    pub fn zero(&self) -> f64 {
        self.zero
    }

    /// A value in this unit, in the unit the library keeps.
    pub(super) fn to_si(self, value: f64) -> f64 {
        self.factor.to_si(value - self.zero)
    }
}

/// The units of a quantity, the preferred first.
pub(super) fn rows(quantity: Quantity) -> &'static [UnitRow] {
    match quantity {
        Quantity::Length => LENGTH,
        Quantity::Area => AREA,
        Quantity::Mass => MASS,
        Quantity::Force => FORCE,
        Quantity::Torque => TORQUE,
        Quantity::LinearRate => LINEAR_RATE,
        Quantity::AngularRate => ANGULAR_RATE,
        Quantity::Damping => DAMPING,
        Quantity::Angle => ANGLE,
        Quantity::Frequency => FREQUENCY,
        Quantity::Inertia => INERTIA,
        Quantity::Pressure => PRESSURE,
        Quantity::Acceleration => ACCELERATION,
        Quantity::Ratio => RATIO,
        Quantity::Temperature => TEMPERATURE,
        Quantity::Speed => SPEED,
        Quantity::Time => TIME,
        Quantity::Density => DENSITY,
        Quantity::Expansion => EXPANSION,
    }
}

const LENGTH: &[UnitRow] = &[
    UnitRow::si(&["mm"], MILLI, "0.001 m"),
    UnitRow::si(&["cm"], CENTI, "0.01 m"),
    UnitRow::si(&["m"], ONE, "metre"),
    UnitRow::si(&["um"], MICRO, "0.000001 m"),
    UnitRow::trade(&["in", "inch", "inches", "\""], INCH, "0.0254 m", YARD),
    UnitRow::trade(&["ft", "foot", "feet"], FOOT, "12 in", YARD),
    UnitRow::trade(&["thou"], THOU, "0.001 in", YARD),
];

const AREA: &[UnitRow] = &[
    UnitRow::si(&["mm2"], MILLI.squared(), "square millimetre"),
    UnitRow::si(&["cm2"], CENTI.squared(), "square centimetre"),
    UnitRow::si(&["m2"], ONE, "square metre"),
    UnitRow::trade(&["in2"], INCH.squared(), "square inch", YARD),
    UnitRow::trade(&["ft2"], FOOT.squared(), "square foot", YARD),
];

const MASS: &[UnitRow] = &[
    UnitRow::si(&["kg"], ONE, "kilogram"),
    UnitRow::si(&["g"], MILLI, "0.001 kg"),
    UnitRow::si(&["t"], KILO, "1000 kg"),
    UnitRow::trade(&["lb", "lbs", "lbm"], POUND, "0.45359237 kg", YARD),
];

const FORCE: &[UnitRow] = &[
    UnitRow::si(&["N"], ONE, "newton"),
    UnitRow::si(&["kN"], KILO, "1000 N"),
    UnitRow::si(&["daN"], DECA, "10 N"),
    UnitRow::trade(&["lbf"], POUND_FORCE, "weight of 1 lb", YARD_AND_WEIGHT),
    UnitRow::trade(&["kgf"], KILOGRAM_FORCE, "weight of 1 kg", WEIGHT),
];

const TORQUE: &[UnitRow] = &[
    UnitRow::si(&["N m"], ONE, "newton times metre"),
    UnitRow::si(&["N mm"], MILLI, "0.001 N m"),
    UnitRow::si(&["kN m"], KILO, "1000 N m"),
    UnitRow::trade(
        &["lbf ft", "lb ft", "ft lb", "ft lbf", "lbs ft", "ft lbs"],
        POUND_FOOT,
        "1 lbf at 1 ft",
        YARD_AND_WEIGHT,
    ),
    UnitRow::trade(
        &["lbf in", "lb in", "in lb", "in lbf", "lbs in", "in lbs"],
        POUND_INCH,
        "1 lbf at 1 in",
        YARD_AND_WEIGHT,
    ),
    UnitRow::trade(&["kgf m"], KILOGRAM_FORCE, "1 kgf at 1 m", WEIGHT).keeping_case(),
];

const LINEAR_RATE: &[UnitRow] = &[
    UnitRow::si(&["N/mm"], KILO, "1 N for each mm"),
    UnitRow::si(&["kN/mm"], MEGA, "1000 N for each mm"),
    UnitRow::si(&["N/m"], ONE, "1 N for each m"),
    UnitRow::si(&["kN/m"], KILO, "1000 N for each m"),
    UnitRow::trade(
        &["lbf/in", "lb/in", "lbs/in"],
        POUND_FORCE.per(INCH),
        "1 lbf for each in",
        YARD_AND_WEIGHT,
    ),
    UnitRow::trade(
        &["kgf/mm", "kg/mm"],
        KILOGRAM_FORCE.per(MILLI),
        "1 kgf for each mm",
        WEIGHT,
    )
    .keeping_case(),
];

const ANGULAR_RATE: &[UnitRow] = &[
    UnitRow::si(
        &["N m/deg", "N m/°"],
        ONE.per(DEGREE),
        "1 N m for each degree",
    ),
    UnitRow::si(&["N m/rad"], ONE, "1 N m for each radian"),
    UnitRow::si(
        &["kN m/deg", "kN m/°"],
        KILO.per(DEGREE),
        "1000 N m for each degree",
    ),
    UnitRow::si(&["kN m/rad"], KILO, "1000 N m for each radian"),
    UnitRow::trade(
        &["lbf ft/deg", "lb ft/deg", "ft lb/deg", "ft lbf/deg"],
        POUND_FOOT.per(DEGREE),
        "1 lbf ft for each degree",
        YARD_AND_WEIGHT,
    ),
    UnitRow::trade(
        &["lbf in/deg", "lb in/deg", "in lb/deg", "in lbf/deg"],
        POUND_INCH.per(DEGREE),
        "1 lbf in for each degree",
        YARD_AND_WEIGHT,
    ),
];

const DAMPING: &[UnitRow] = &[
    UnitRow::si(&["N s/m"], ONE, "1 N for each m/s"),
    UnitRow::si(&["N s/mm"], KILO, "1 N for each mm/s"),
    UnitRow::si(&["kN s/m"], KILO, "1000 N for each m/s"),
    UnitRow::trade(
        &["lbf s/in", "lb s/in"],
        POUND_FORCE.per(INCH),
        "1 lbf for each in/s",
        YARD_AND_WEIGHT,
    ),
];

const ANGLE: &[UnitRow] = &[
    UnitRow::trade(
        &["deg", "°", "degree", "degrees"],
        DEGREE,
        "1/360 of a turn",
        SI,
    ),
    UnitRow::si(&["rad"], ONE, "radian"),
];

const FREQUENCY: &[UnitRow] = &[
    UnitRow::trade(
        &["rpm", "1/min", "min-1", "r/min", "rev/min"],
        TURN_PER_MINUTE,
        "1 turn a minute",
        SI,
    ),
    UnitRow::si(&["Hz"], TURN, "1 cycle a second"),
    UnitRow::si(&["rad/s"], ONE, "1 radian a second"),
];

const INERTIA: &[UnitRow] = &[
    UnitRow::si(&["kg m2"], ONE, "1 kg at 1 m"),
    UnitRow::si(&["kg mm2"], MICRO, "1 kg at 1 mm"),
    UnitRow::si(&["kg cm2"], CENTI.squared(), "1 kg at 1 cm"),
    UnitRow::si(&["g m2"], MILLI, "1 g at 1 m"),
    UnitRow::trade(
        &["lb in2", "lbm in2"],
        POUND.times(INCH.squared()),
        "1 lb at 1 in",
        YARD,
    ),
    UnitRow::trade(
        &["lb ft2", "lbm ft2"],
        POUND.times(FOOT.squared()),
        "1 lb at 1 ft",
        YARD,
    ),
    UnitRow::trade(
        &["lbf in s2"],
        POUND_INCH,
        "1 lbf in for each rad/s2",
        YARD_AND_WEIGHT,
    ),
    UnitRow::trade(
        &["slug ft2", "lbf ft s2"],
        POUND_FOOT,
        "1 lbf ft for each rad/s2",
        YARD_AND_WEIGHT,
    ),
];

const PRESSURE: &[UnitRow] = &[
    UnitRow::si(&["MPa", "N/mm2"], MEGA, "1 N on each mm2"),
    UnitRow::si(&["GPa"], GIGA, "1000 MPa"),
    UnitRow::si(&["kPa"], KILO, "1000 Pa"),
    UnitRow::si(&["Pa", "N/m2"], ONE, "1 N on each m2"),
    UnitRow::trade(&["bar"], BAR, "100000 Pa", GUIDE),
    UnitRow::trade(
        &["psi", "lbf/in2", "lb/in2"],
        PSI,
        "1 lbf on each in2",
        YARD_AND_WEIGHT,
    ),
    UnitRow::trade(&["ksi"], KILO.times(PSI), "1000 psi", YARD_AND_WEIGHT),
];

const ACCELERATION: &[UnitRow] = &[
    UnitRow::trade(
        &["g"],
        FREE_FALL,
        "standard free fall, 9.80665 m/s2",
        WEIGHT,
    )
    .keeping_case(),
    UnitRow::si(&["m/s2"], ONE, "metre per second squared"),
    UnitRow::trade(&["ft/s2"], FOOT, "foot per second squared", YARD),
];

const RATIO: &[UnitRow] = &[UnitRow::si(
    &["%"],
    CENTI,
    "1/100; a plain number has no unit",
)];

const TEMPERATURE: &[UnitRow] = &[
    UnitRow::si(&["°C", "C", "degC"], ONE, "degree Celsius"),
    UnitRow::trade(
        &["°F", "F", "degF"],
        FAHRENHEIT_DEGREE,
        "5/9 of the reading less 32",
        GUIDE,
    )
    .keeping_case()
    .with_zero_at(32.0),
];

const SPEED: &[UnitRow] = &[
    UnitRow::si(&["km/h", "kph"], KILOMETRE_PER_HOUR, "1000 m an hour"),
    UnitRow::si(&["m/s"], ONE, "metre per second"),
    UnitRow::si(&["mm/s"], MILLI, "0.001 m in each second"),
    UnitRow::trade(&["mph", "mi/h"], MILE.per(HOUR), "5280 ft an hour", YARD),
];

const TIME: &[UnitRow] = &[
    UnitRow::si(&["s"], ONE, "second"),
    UnitRow::si(&["ms"], MILLI, "0.001 s"),
    UnitRow::si(&["min"], MINUTE, "60 s"),
];

const DENSITY: &[UnitRow] = &[
    UnitRow::si(&["kg/m3"], ONE, "1 kg in each m3"),
    UnitRow::si(&["g/cm3", "kg/dm3"], KILO, "1 g in each cm3"),
    UnitRow::trade(
        &["lb/in3", "lbm/in3"],
        POUND.per(INCH.times(INCH.squared())),
        "1 lb in each in3",
        YARD,
    ),
];

const EXPANSION: &[UnitRow] = &[
    UnitRow::si(
        &["um/m/K", "um/m K", "um/m/°C"],
        MICRO,
        "0.000001 of the length for each kelvin",
    ),
    UnitRow::si(&["1/K", "1/°C"], ONE, "the whole length for each kelvin"),
    UnitRow::trade(
        &["uin/in/°F", "uin/in °F"],
        MICRO.per(FAHRENHEIT_DEGREE),
        "0.000001 of the length for each °F",
        GUIDE,
    )
    .keeping_case(),
];
