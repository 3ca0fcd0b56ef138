//! Keys of `[engine]` that tell how the machine shakes; without any of them nothing is said of it.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `upright` | direction of an upright cylinder, made square to the crank | direction | straight up |
//! | `cylinders_at` | the point of the crank line amid the cylinders, or amid the rotor | 3 lengths | `crank_at` |
//! | `harmonics` | torque on the crank by order, in place of what follows from the sizes | list of tables | none |
//! | `harmonics.order` | order of the crank: 0.5 to 200, in halves | number | needed |
//! | `harmonics.torque` | amplitude at full load | torque | needed |
//! | `harmonics.idle_torque` | amplitude at idle | torque | as at full load |
//! | `harmonics.phase` | ahead of cos(order θ), θ from firing of cylinder 1 at its top | angle | 0 |
//!
//! Piston engines, beside these:
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `bore`, `stroke` | of each cylinder | length | none: no gas torque |
//! | `rod` | length between its centres | length | 1.75 strokes |
//! | `reciprocating_mass` | of one cylinder: piston, rings, pin, small end of the rod | mass | none: no inertia forces |
//! | `bank_angle` | between two banks; cylinders stand on them in turn, odd ones before the upright | angle | in line |
//! | `banks` | of each cylinder, from the upright in the sense of the crank | angles | as `bank_angle` |
//! | `spacing` | from one crank throw to the next | length | 1.2 bores |
//! | `places` | of each cylinder along the crank direction, from any point | lengths | as `spacing` |
//! | `pins` | of each cylinder: angle of its crank pin, in the sense of the crank | angles | from the firing |
//! | `firing_order` | such as `"1-3-4-2"` | text | usual in line |
//! | `firing_angles` | of each cylinder: crank angle at which it fires, in place of an order | angles | evenly |
//! | `dead_cylinder` | number of one that does not fire | whole number | none |
//! | `compression_ratio` | 4 to 30 | number | 10 |
//! | `full_pressure`, `idle_pressure` | indicated mean effective pressure | pressure | from `torque`; 150 kPa |
//! | `full_inlet`, `idle_inlet` | absolute pressure in the manifold | pressure | 100 kPa; 40 kPa |
//! | `counterweight` | share of what turns with the crank at first order that its weights balance, 0 to 1 | ratio | 1 |
//! | `balance_shafts` | orders balanced by shafts: 1 against the crank, 2 in a pair | list of 1, 2 | none |
//!
//! Electric machines and rotary-piston engines, beside those for all:
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `ripple` | amplitude of the torque pulses as a share of `torque` | ratio | none |
//! | `slots`, `cogging` | slots of the stator; amplitude of the torque without current | whole number; torque | none |
//! | `rotor_mass`, `balance_grade` | of the rotor; speed of its centre of mass at `redline`, such as "6.3 mm/s" | mass; speed | none |

mod electric;
mod firing;
mod gas;
mod given;
mod layout;
mod reciprocating;

use super::drivetrain::Cycle;
use super::reader::{Bound, Section};
use crate::diagnostic::Code;
use crate::spatial::Vec3;
use crate::units::Quantity;

pub use electric::{Cogging, Ripple};
pub use gas::{Gas, IdleToFull};
pub use given::TorqueHarmonic;
pub use reciprocating::Reciprocating;

/// Keys that belong to every machine.
const OF_ALL: [&str; 3] = ["upright", "cylinders_at", "harmonics"];

/// Keys of piston engines.
const OF_PISTONS: [&str; 19] = [
    "bore",
    "stroke",
    "rod",
    "reciprocating_mass",
    "bank_angle",
    "banks",
    "spacing",
    "places",
    "pins",
    "firing_order",
    "firing_angles",
    "dead_cylinder",
    "compression_ratio",
    "full_pressure",
    "idle_pressure",
    "full_inlet",
    "idle_inlet",
    "counterweight",
    "balance_shafts",
];

/// Keys of machines that turn.
const OF_ROTORS: [&str; 3] = ["ripple", "rotor_mass", "balance_grade"];

/// Keys of electric machines.
const OF_ELECTRIC: [&str; 2] = ["slots", "cogging"];

/// How the machine shakes what carries it. What is not known is left out.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Shaking {
    /// Unit vector of an upright cylinder, square to the crank, vehicle axes.
    pub upright: Vec3,
    /// The point of the crank line amid the cylinders or the rotor \[m\], about which moments are counted; when known.
    pub at: Option<Vec3>,
    /// Pistons and rods.
    pub reciprocating: Option<Reciprocating>,
    /// What makes the gas torque.
    pub gas: Option<Gas>,
    /// Torque on the crank that the file gives; there is no `gas` and no `ripple` beside it.
    pub given: Vec<TorqueHarmonic>,
    /// Torque pulses of a machine that turns.
    pub ripple: Option<Ripple>,
    /// Torque of a machine without current.
    pub cogging: Option<Cogging>,
    /// Mass of the rotor times the offset of its centre of mass [kg m].
    pub unbalance: Option<f64>,
}

/// What else `[engine]` says.
#[derive(Debug, Clone, Copy)]
pub(super) struct Known {
    pub(super) cycle: Cycle,
    pub(super) crank_direction: Vec3,
    pub(super) crank_at: Option<Vec3>,
    pub(super) torque: Option<f64>,
    pub(super) redline: Option<f64>,
}

/// Reads the keys. `None` when there are none; wrong ones are on the list of problems.
///
/// `known` is `None` when something in the rest of the section is wrong.
pub(super) fn read(section: &Section<'_>, known: Option<Known>) -> Option<Shaking> {
    let groups: [&[&'static str]; 4] = [&OF_ALL, &OF_PISTONS, &OF_ROTORS, &OF_ELECTRIC];
    // Every key is asked for, also where nothing can be made of it, so that none counts as unknown.
    let written: Vec<&'static str> = groups
        .into_iter()
        .flatten()
        .copied()
        .filter(|key| section.has(key))
        .collect();
    let known = known.filter(|_| !written.is_empty())?;
    let own: &[&[&'static str]] = match known.cycle {
        Cycle::FourStroke { .. } | Cycle::TwoStroke { .. } => &[&OF_ALL, &OF_PISTONS],
        Cycle::RotaryPiston { .. } => &[&OF_ALL, &OF_ROTORS],
        Cycle::Electric { .. } => &[&OF_ALL, &OF_ROTORS, &OF_ELECTRIC],
    };
    for key in written {
        if !own.iter().any(|group| group.contains(&key)) {
            section.refuse(
                key,
                Code::Conflict,
                format!("{} does not belong to this `cycle`", section.key_name(key)),
                "take it out, or look at `cycle`",
            );
        }
    }
    let upright = read_upright(section, &known.crank_direction);
    let mut shaking = Shaking {
        upright: upright.unwrap_or_default(),
        at: read_place(section, &known),
        reciprocating: None,
        gas: None,
        given: given::read(section),
        ripple: None,
        cogging: None,
        unbalance: None,
    };
    match known.cycle {
        Cycle::FourStroke { cylinders } | Cycle::TwoStroke { cylinders } => {
            let layout = layout::read(section, known.cycle, cylinders as usize);
            let sizes = reciprocating::read_sizes(section);
            shaking.reciprocating = reciprocating::read(section, &sizes, layout.as_ref());
            shaking.gas = gas::read(section, &known, &sizes, layout.as_ref());
        }
        Cycle::RotaryPiston { .. } | Cycle::Electric { .. } => {
            shaking.ripple = electric::read_ripple(section, &known);
            shaking.cogging = electric::read_cogging(section, &known);
            shaking.unbalance = electric::read_unbalance(section, &known);
        }
    }
    upright.map(|_| shaking)
}

/// Upright of the engine, square to the crank.
fn read_upright(section: &Section<'_>, crank: &Vec3) -> Option<Vec3> {
    /// Least sine of the angle between upright and crank: about half a degree.
    const LEAST_ANGLE: f64 = 0.01;
    let square = |to: Vec3| (to - crank * crank.dot(&to)).try_normalize(LEAST_ANGLE);
    if section.has("upright") {
        let upright = square(section.direction("upright")?);
        if upright.is_none() {
            section.refuse(
                "upright",
                Code::NoDirection,
                format!("{} lies along the crank", section.key_name("upright")),
                "the direction from the crank to the top of an upright cylinder, such as \"0, 0, 1\"",
            );
        }
        return upright;
    }
    // A crank that stands on end has no cylinder straight up: forward is as good as any.
    square(Vec3::z()).or_else(|| {
        section.assume("upright", "forward, since the crank stands upright");
        square(Vec3::x())
    })
}

/// The point about which moments are counted.
fn read_place(section: &Section<'_>, known: &Known) -> Option<Vec3> {
    /// Farthest that two points of one line may seem to be apart across it \[m\].
    const OFF_THE_LINE: f64 = 0.01;
    if !section.has("cylinders_at") {
        if known.crank_at.is_some() {
            section.assume(
                "cylinders_at",
                "amid the cylinders or the rotor is `crank_at`",
            );
        }
        return known.crank_at;
    }
    let at = section.vector("cylinders_at", Quantity::Length, Bound::PLACE)?;
    if let Some(crank_at) = known.crank_at
        && (at - crank_at).cross(&known.crank_direction).norm() > OFF_THE_LINE
    {
        section.refuse(
            "cylinders_at",
            Code::Conflict,
            format!(
                "{} does not lie on the line through `crank_at` along `crank_direction`",
                section.key_name("cylinders_at")
            ),
            "a point of the crank line, or leave out `crank_at`",
        );
    }
    Some(at)
}
