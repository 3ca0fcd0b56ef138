//! What makes the gas torque of a piston engine.

use std::f64::consts::PI;

use super::Known;
use super::layout::Layout;
use super::reciprocating::Sizes;
use crate::diagnostic::Code;
use crate::model::reader::{Bound, Section};
use crate::units::Quantity;

/// Compression ratio of a spark-ignition engine.
///
/// # Source
/// Common practice; compression ignition has 14 to 20.
const COMPRESSION: f64 = 10.0;

/// Indicated mean effective pressure that friction and auxiliaries take \[Pa\], which is all at idle.
///
/// # Source
/// Common practice: 100 to 200 kPa.
const FRICTION: f64 = 150e3;

/// Absolute pressure in the manifold \[Pa\] of a throttled engine at idle.
///
/// # Source
/// Common practice: 30 to 45 kPa.
const IDLE_INLET: f64 = 40e3;

/// Absolute pressure in the manifold \[Pa\] without throttle and charger.
///
/// # Source
/// Common practice: about one atmosphere.
const OPEN_INLET: f64 = 100e3;

/// A value at idle and at full load, linear between.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct IdleToFull {
    /// At idle.
    pub idle: f64,
    /// At full load.
    pub full: f64,
}

/// What makes the gas torque.
#[derive(Debug, Clone, PartialEq)]
pub struct Gas {
    /// Swept volume of one cylinder \[m³\].
    pub swept: f64,
    /// Crank radius over rod length.
    pub ratio: f64,
    /// Largest over smallest volume.
    pub compression: f64,
    /// Indicated mean effective pressure of a cylinder that fires \[Pa\], gas exchange included.
    pub effective: IdleToFull,
    /// Absolute pressure in the manifold \[Pa\].
    pub inlet: IdleToFull,
    /// Crank angle at which each cylinder fires, the first at 0 \[rad\].
    pub firing: Vec<f64>,
    /// Place of the cylinder that does not fire.
    pub dead: Option<usize>,
}

/// Reads it; `None` when the sizes are not known or `harmonics` stand in its place.
pub(super) fn read(
    section: &Section<'_>,
    known: &Known,
    sizes: &Sizes,
    layout: Option<&Layout>,
) -> Option<Gas> {
    const PRESSURE: Bound = Bound::Stated(1e3, 1e7, "between 1 kPa and 10 MPa");
    let pressure = |key| section.quantity(key, Quantity::Pressure, PRESSURE);
    let bore = section.quantity("bore", Quantity::Length, Bound::SIZE);
    let compression = section.ratio("compression_ratio", Bound::Within(4.0, 30.0));
    let full = pressure("full_pressure");
    let idle = pressure("idle_pressure");
    let full_inlet = pressure("full_inlet");
    let idle_inlet = pressure("idle_inlet");
    let dead = read_dead(section, layout);
    if let (Some(idle), Some(full)) = (idle, full)
        && idle > full
    {
        section.refuse(
            "idle_pressure",
            Code::InsideOut,
            "`engine.idle_pressure` is above `engine.full_pressure`",
            "check which is which, and their units",
        );
    }
    if section.has("harmonics") {
        for key in ["full_pressure", "idle_pressure", "dead_cylinder"] {
            if section.has(key) {
                section.refuse(
                    key,
                    Code::Conflict,
                    format!("`harmonics` stand in place of {}", section.key_name(key)),
                    "keep one of them",
                );
            }
        }
        return None;
    }
    for key in ["full_pressure", "idle_pressure", "dead_cylinder"] {
        if section.has(key) {
            section.must_have(&[
                ("bore", "without it there is no gas torque"),
                ("stroke", "without it there is no gas torque"),
            ]);
        }
    }
    let (bore, stroke, layout) = (bore?, sizes.stroke?, layout?);
    let swept = PI / 4.0 * bore * bore * stroke;
    let full = match full {
        Some(full) => full,
        None if section.has("full_pressure") => return None,
        None => {
            let work = known.torque.map(|torque| torque * layout.cycle);
            let Some(work) = work else {
                section.assume(
                    "full_pressure",
                    "neither it nor `torque` is known, so that gas torque is left out",
                );
                return None;
            };
            let text = "what `torque` needs and 150 kPa of friction (common practice)";
            section.assume("full_pressure", text);
            work / (swept * layout.firing.len() as f64) + FRICTION
        }
    };
    let assumed = [
        (
            "compression_ratio",
            format!("{COMPRESSION} (common practice)"),
        ),
        (
            "idle_pressure",
            "150 kPa, all of it friction (common practice)".to_owned(),
        ),
        (
            "full_inlet",
            "100 kPa absolute, no charger (common practice)".to_owned(),
        ),
        (
            "idle_inlet",
            "40 kPa absolute, throttled; a diesel has 100 kPa (common practice)".to_owned(),
        ),
    ];
    for (key, text) in assumed {
        if !section.has(key) {
            section.assume(key, text);
        }
    }
    let or = |key: &'static str, read: Option<f64>, usual: f64| {
        if section.has(key) { read } else { Some(usual) }
    };
    Some(Gas {
        swept,
        ratio: stroke / 2.0 / sizes.rod?,
        compression: or("compression_ratio", compression, COMPRESSION)?,
        effective: IdleToFull {
            idle: or("idle_pressure", idle, FRICTION.min(full))?,
            full,
        },
        inlet: IdleToFull {
            idle: or("idle_inlet", idle_inlet, IDLE_INLET)?,
            full: or("full_inlet", full_inlet, OPEN_INLET)?,
        },
        firing: layout.firing.clone(),
        dead,
    })
}

fn read_dead(section: &Section<'_>, layout: Option<&Layout>) -> Option<usize> {
    let count = u32::try_from(layout?.firing.len()).ok()?;
    let number = section.count("dead_cylinder", 1, count)?;
    Some(number as usize - 1)
}
