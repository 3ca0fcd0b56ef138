//! Sections `[engine]` and `[driveline]`: what makes the torque and where it leaves the powertrain.
//!
//! `[engine]`:
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `cycle` | `"four-stroke"`, `"two-stroke"`, `"rotary-piston"` or `"electric"` | word | needed |
//! | `cylinders` | of a four-stroke or two-stroke, 1 to 64 | whole number | needed there |
//! | `rotors` | of a rotary-piston engine, 1 to 64 | whole number | needed there |
//! | `pole_pairs` | of an electric machine, 1 to 64 | whole number | none |
//! | `crank_direction` | direction about which the crank or rotor turns, right-hand rule | direction | needed |
//! | `crank_at` | a point on the crank line, vehicle axes | 3 lengths | none |
//! | `torque` | highest net torque | torque | none: no torque through gears |
//! | `idle` | idle speed, not of an electric machine | frequency | none: no check at idle |
//! | `redline` | highest speed, above `idle` | frequency | none |
//!
//! How it shakes is told by the keys of [`shaking`].
//!
//! `[driveline]`:
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `output` | `"propshaft"` or `"axle-shafts"` | word | needed |
//! | `output_direction` | direction about which the propshaft turns in a forward gear | direction | as the crank |
//! | `gears` | table of ratios by name, 0.01 to 1000; `reverse` is the reverse gear | numbers | needed |
//! | `final_drive` | ratio of the final drive, 0.1 to 100; 1 when the gears include it | number | needed |
//! | `efficiency` | share of the torque that reaches the wheels, 0.3 to 1 | ratio | 0.95 |

use super::reader::{Bound, Other, Section};
use super::shaking::{self, Known, Shaking};
use crate::diagnostic::{Code, Diagnostic};
use crate::spatial::Vec3;
use crate::units::Quantity;

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
    /// A point on the crank line \[m\], when known.
    pub crank_at: Option<Vec3>,
    /// Highest net torque [N m].
    pub torque: Option<f64>,
    /// Idle speed [rad/s]; `None` for a machine that does not idle.
    pub idle: Option<f64>,
    /// Highest speed [rad/s].
    pub redline: Option<f64>,
    /// How it shakes, as far as the file tells.
    pub shaking: Option<Shaking>,
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

/// Share of the engine torque that reaches the wheels.
///
/// # Source
/// Common practice for a driven axle with two gear meshes.
const EFFICIENCY: f64 = 0.95;

/// Torques of an engine that a file may state [N m].
const ENGINE_TORQUE: Bound = Bound::Stated(1e-3, 1e6, "above zero and at most 1e6 N m");

/// Reads `[engine]`.
pub(super) fn read_engine(section: Section<'_>) -> Option<Engine> {
    section.must_have(&[
        ("cycle", "\"four-stroke\", \"two-stroke\", \"rotary-piston\" or \"electric\""),
        (
            "crank_direction",
            "the direction about which the crank or rotor turns, right-hand rule, such as \"-1, 0, 0\"",
        ),
    ]);
    let cycle = read_cycle(&section);
    let crank_direction = section.direction("crank_direction");
    let crank_at = section.vector("crank_at", Quantity::Length, Bound::PLACE);
    let torque = section.quantity("torque", Quantity::Torque, ENGINE_TORQUE);
    let idle = section.quantity("idle", Quantity::Frequency, Bound::FREQUENCY);
    let redline = section.quantity("redline", Quantity::Frequency, Bound::FREQUENCY);
    if let (Some(idle), Some(redline)) = (idle, redline)
        && idle >= redline
    {
        section.refuse(
            "idle",
            Code::InsideOut,
            "`engine.idle` is not below `engine.redline`",
            "check which is which, and their units",
        );
    }
    if matches!(cycle, Some(Cycle::Electric { .. })) && section.has("idle") {
        section.refuse(
            "idle",
            Code::Conflict,
            "`engine.idle` does not belong to an electric machine",
            "take it out; an electric machine stands still when it has nothing to do",
        );
    }
    let known = cycle
        .zip(crank_direction)
        .map(|(cycle, crank_direction)| Known {
            cycle,
            crank_direction,
            crank_at,
            torque,
            redline,
        });
    let shaking = shaking::read(&section, known);
    section.finish();
    Some(Engine {
        cycle: cycle?,
        crank_direction: crank_direction?,
        crank_at,
        torque,
        idle,
        redline,
        shaking,
    })
}

fn read_cycle(section: &Section<'_>) -> Option<Cycle> {
    let kind = section.choice(
        "cycle",
        &[
            ("four-stroke", "cylinders"),
            ("two-stroke", "cylinders"),
            ("rotary-piston", "rotors"),
            ("electric", "pole_pairs"),
        ],
    );
    let counts = ["cylinders", "rotors", "pole_pairs"].map(|key| (key, section.count(key, 1, 64)));
    let own = kind?;
    for (key, _) in counts {
        if key != own && section.has(key) {
            section.refuse(
                key,
                Code::Conflict,
                format!("{} does not belong to this `cycle`", section.key_name(key)),
                format!("this one takes `{own}`"),
            );
        }
    }
    if own != "pole_pairs" {
        section.must_have(&[(own, "how many, a whole number")]);
    }
    let number = counts
        .iter()
        .find(|(key, _)| *key == own)
        .and_then(|(_, number)| *number);
    match section.text("cycle")? {
        "four-stroke" => Some(Cycle::FourStroke { cylinders: number? }),
        "two-stroke" => Some(Cycle::TwoStroke { cylinders: number? }),
        "rotary-piston" => Some(Cycle::RotaryPiston { rotors: number? }),
        _ => Some(Cycle::Electric { pole_pairs: number }),
    }
}

/// Reads `[driveline]`.
pub(super) fn read_driveline(section: Section<'_>, engine: Other<'_, Engine>) -> Option<Driveline> {
    section.must_have(&[
        (
            "output",
            "\"propshaft\" (separate axle) or \"axle-shafts\" (final drive inside the powertrain)",
        ),
        (
            "gears",
            "ratios by name, such as { \"1\" = 3.6, \"2\" = 2.1, reverse = 3.4 }",
        ),
        (
            "final_drive",
            "ratio of the final drive, such as 3.9; 1 when the gears include it",
        ),
    ]);
    let output = section.choice(
        "output",
        &[
            ("propshaft", Output::Propshaft),
            ("axle-shafts", Output::AxleShafts),
        ],
    );
    let gears = section.named_ratios("gears", Bound::Within(0.01, 1000.0));
    if let Some(gears) = &gears {
        section.refuse_empty("gears", "a ratio by name, such as \"1\" = 3.6");
        refuse_other_reverse(&section, gears);
    }
    let final_drive = section.ratio("final_drive", Bound::Within(0.1, 100.0));
    let efficiency = section.ratio("efficiency", Bound::Within(0.3, 1.0));
    if !section.has("efficiency") {
        section.assume("efficiency", format!("{EFFICIENCY} (common practice)"));
    }
    let output_direction = read_output_direction(&section, output, engine);
    section.finish();
    Some(Driveline {
        output: output?,
        output_direction: output_direction?,
        gears: gears?
            .into_iter()
            .map(|(name, ratio)| Gear { name, ratio })
            .collect(),
        final_drive: final_drive?,
        efficiency: efficiency.unwrap_or(EFFICIENCY),
    })
}

/// A reverse gear under another name would count as a forward gear of a large ratio.
fn refuse_other_reverse(section: &Section<'_>, gears: &[(String, f64)]) {
    for (name, _) in gears {
        let meant = ["r", "rev", "back", Gear::REVERSE]
            .iter()
            .any(|word| name.eq_ignore_ascii_case(word));
        if meant && name != Gear::REVERSE {
            section.refuse(
                "gears",
                Code::BadName,
                format!("a gear of this name would count as a forward gear: `{name}`"),
                "the reverse gear is named `reverse`",
            );
        }
    }
}

/// Direction about which the output turns in a forward gear.
fn read_output_direction(
    section: &Section<'_>,
    output: Option<Output>,
    engine: Other<'_, Engine>,
) -> Option<Vec3> {
    let given = section.direction("output_direction");
    match output? {
        Output::AxleShafts if section.has("output_direction") => {
            section.refuse(
                "output_direction",
                Code::Conflict,
                "`driveline.output_direction` is for a propshaft",
                "take it out: axle shafts turn the wheels forward about +y, to the left",
            );
            None
        }
        Output::AxleShafts => Some(Vec3::y()),
        Output::Propshaft if section.has("output_direction") => given,
        Output::Propshaft => match engine {
            Other::Read(engine) => {
                section.assume(
                    "output_direction",
                    "the propshaft turns with the crank in the forward gears",
                );
                warn_when_across(section, &engine.crank_direction);
                Some(engine.crank_direction)
            }
            Other::Broken => None,
            Other::Absent => {
                section.must_have(&[(
                    "output_direction",
                    "the direction about which the propshaft turns in a forward gear, since there is no `[engine]` to take it from",
                )]);
                None
            }
        },
    }
}

/// A propshaft that follows a crank lying across the vehicle is likely a transverse powertrain with axle shafts.
fn warn_when_across(section: &Section<'_>, crank: &Vec3) {
    if crank.x.abs() >= crank.y.abs() {
        return;
    }
    section.note(
        Diagnostic::warning(
            Code::PropshaftAcross,
            format!("{} is a propshaft, but the crank lies across the vehicle", section.key_name("output")),
            section.span_of("output"),
        )
        .label("turns about a crosswise line")
        .help("with the final drive inside the powertrain write `output = \"axle-shafts\"`; else give `output_direction`"),
    );
}
