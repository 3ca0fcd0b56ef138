//! Sections `[engine]` and `[driveline]`: what makes the torque and where it leaves the powertrain.

use crate::spatial::Vec3;

/// How the machine makes its torque.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Cycle {
    /// Piston engine firing each cylinder every second turn.
    FourStroke {
        /// Number of cylinders.
        cylinders: u32,
    },
    /// Piston engine firing each cylinder every turn.
    TwoStroke {
        /// Number of cylinders.
        cylinders: u32,
    },
    /// Rotary-piston engine: one working pulse per rotor and turn of the shaft.
    RotaryPiston {
        /// Number of rotors.
        rotors: u32,
    },
    /// Electric machine.
    Electric {
        /// Number of pole pairs, when known.
        pole_pairs: Option<u32>,
    },
}

/// What drives the powertrain.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Engine {
    /// How it makes its torque.
    pub cycle: Cycle,
    /// Unit vector about which the crank or rotor turns, right-hand rule, vehicle axes.
    pub crank_direction: Vec3,
    /// A point on the crank line [m], when known.
    pub crank_at: Option<Vec3>,
    /// Highest net torque [N m].
    pub torque: Option<f64>,
    /// Idle speed [rad/s]; `None` for a machine that does not idle.
    pub idle: Option<f64>,
    /// Highest speed [rad/s].
    pub redline: Option<f64>,
}

/// Where the torque leaves the powertrain.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Output {
    /// A propshaft to a separate axle.
    Propshaft,
    /// Axle shafts: the final drive is inside the powertrain.
    AxleShafts,
}

/// One gear.
#[derive(Debug, Clone, PartialEq)]
pub struct Gear {
    /// Name in the file, `reverse` for the reverse gear.
    pub name: String,
    /// Crank turns per turn of the gearbox output, above zero.
    pub ratio: f64,
}

impl Gear {
    /// Name of the gear that turns the output backwards.
    pub const REVERSE: &'static str = "reverse";

    /// Whether it turns the output backwards.
    #[must_use]
    pub fn is_reverse(&self) -> bool {
        self.name == Self::REVERSE
    }
}

/// How the torque leaves the powertrain.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Driveline {
    /// Which shafts carry it out.
    pub output: Output,
    /// Unit vector about which the propshaft flange turns in a forward gear, vehicle axes.
    pub output_direction: Vec3,
    /// Gears in the order of the file.
    pub gears: Vec<Gear>,
    /// Gearbox output turns per turn of the wheels.
    pub final_drive: f64,
    /// Share of the torque that reaches the wheels.
    pub efficiency: f64,
}

impl Driveline {
    /// The forward gear with the largest ratio.
    #[must_use]
    pub fn lowest_forward(&self) -> Option<&Gear> {
        self.gears
            .iter()
            .filter(|gear| !gear.is_reverse())
            .max_by(|a, b| a.ratio.total_cmp(&b.ratio))
    }

    /// The reverse gear.
    #[must_use]
    pub fn reverse(&self) -> Option<&Gear> {
        self.gears.iter().find(|gear| gear.is_reverse())
    }
}
