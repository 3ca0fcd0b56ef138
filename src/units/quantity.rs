//! What a value is: its dimension and the units it may be written in.

use super::table::{self, UnitRow};

/// What a value is. It fixes the dimension, the SI unit inside the library and the spellings
/// accepted from people.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Quantity {
    /// A length or a coordinate, in m.
    Length,
    /// An area, in m².
    Area,
    /// A mass, in kg.
    Mass,
    /// A force, in N.
    Force,
    /// A torque, in N m.
    Torque,
    /// Force per deflection of a mount, in N/m.
    LinearRate,
    /// Torque per rotation, in N m/rad.
    AngularRate,
    /// Force per speed of a damper, in N s/m.
    Damping,
    /// A plane angle, in rad.
    Angle,
    /// A rotational speed or a frequency, in rad/s: one turn or one cycle is 2π rad.
    Frequency,
    /// A moment or product of inertia of mass, in kg m².
    Inertia,
    /// A pressure, a stress or a modulus, in Pa.
    Pressure,
    /// An acceleration, in m/s².
    Acceleration,
    /// A plain number or a share of one, as a plain number: `5 %` is 0.05.
    Ratio,
    /// A temperature, in °C: the one quantity not kept in its SI unit.
    Temperature,
    /// A speed of travel, in m/s.
    Speed,
    /// A duration, in s.
    Time,
    /// Mass of a volume, in kg/m³.
    Density,
    /// Share by which a length grows for each kelvin, in 1/K.
    Expansion,
}

impl Quantity {
    /// Every quantity, in the order in which they are listed for people.
    pub const ALL: [Self; 19] = [
        Self::Length,
        Self::Area,
        Self::Mass,
        Self::Force,
        Self::Torque,
        Self::LinearRate,
        Self::AngularRate,
        Self::Damping,
        Self::Angle,
        Self::Frequency,
        Self::Inertia,
        Self::Pressure,
        Self::Acceleration,
        Self::Ratio,
        Self::Temperature,
        Self::Speed,
        Self::Time,
        Self::Density,
        Self::Expansion,
    ];

    /// The name in messages and lists, in lower case.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Length => "length",
            Self::Area => "area",
            Self::Mass => "mass",
            Self::Force => "force",
            Self::Torque => "torque",
            Self::LinearRate => "linear rate",
            Self::AngularRate => "angular rate",
            Self::Damping => "damping",
            Self::Angle => "angle",
            Self::Frequency => "frequency",
            Self::Inertia => "inertia",
            Self::Pressure => "pressure",
            Self::Acceleration => "acceleration",
            Self::Ratio => "ratio",
            Self::Temperature => "temperature",
            Self::Speed => "speed",
            Self::Time => "time",
            Self::Density => "density",
            Self::Expansion => "thermal expansion",
        }
    }

    /// A text that [`parse`](super::parse) accepts for this quantity.
    #[must_use]
    pub fn example(self) -> &'static str {
        match self {
            Self::Length => "12 mm",
            Self::Area => "450 mm2",
            Self::Mass => "85 kg",
            Self::Force => "1.2 kN",
            Self::Torque => "180 N m",
            Self::LinearRate => "250 N/mm",
            Self::AngularRate => "40 N m/deg",
            Self::Damping => "650 N s/m",
            Self::Angle => "4 deg",
            Self::Frequency => "750 rpm",
            Self::Inertia => "2.5 kg m2",
            Self::Pressure => "210 GPa",
            Self::Acceleration => "3 g",
            Self::Ratio => "5 %",
            Self::Temperature => "90 °C",
            Self::Speed => "50 km/h",
            Self::Time => "20 ms",
            Self::Density => "7850 kg/m3",
            Self::Expansion => "12 um/m/K",
        }
    }

    /// A text of so many numbers that [`parse_vector`](super::parse_vector) accepts for this quantity.
    #[must_use]
    pub fn example_of(self, count: usize) -> String {
        let one = self.example();
        match (self, count, one.split_once(' ')) {
            (Self::Length, 3, _) => "-150, 5, 180 mm".to_owned(),
            (Self::Ratio, 3, _) => "0, 0, 1".to_owned(),
            (_, 2.., Some((number, unit))) => {
                format!("{} {unit}", vec![number; count].join(", "))
            }
            _ => one.to_owned(),
        }
    }

    /// The unit in which the library keeps the value; `1` for a ratio.
    #[must_use]
    pub fn kept_in(self) -> &'static str {
        match self {
            Self::Length => "m",
            Self::Area => "m2",
            Self::Mass => "kg",
            Self::Force => "N",
            Self::Torque => "N m",
            Self::LinearRate => "N/m",
            Self::AngularRate => "N m/rad",
            Self::Damping => "N s/m",
            Self::Angle => "rad",
            Self::Frequency => "rad/s",
            Self::Inertia => "kg m2",
            Self::Pressure => "Pa",
            Self::Acceleration => "m/s2",
            Self::Ratio => "1",
            Self::Temperature => "°C",
            Self::Speed => "m/s",
            Self::Time => "s",
            Self::Density => "kg/m3",
            Self::Expansion => "1/K",
        }
    }

    /// The units it may be written in, the preferred first.
    pub fn units(self) -> impl Iterator<Item = &'static UnitRow> {
        table::rows(self).iter()
    }

    /// The symbols of those units in one line: `mm, cm, m, in`.
    #[must_use]
    pub fn allowed(self) -> String {
        let symbols: Vec<_> = self.units().map(UnitRow::symbol).collect();
        symbols.join(", ")
    }

    /// Whether the text may end after the number.
    pub(super) fn needs_unit(self) -> bool {
        self != Self::Ratio
    }
}
