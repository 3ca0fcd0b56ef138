//! What drives the outputs in a load case: a gear with the engine behind it, or a torque.

use super::Context;
use crate::diagnostic::Code;
use crate::model::reader::{Bound, Names, Other, Section};
use crate::units::Quantity;

/// What drives the outputs.
#[derive(Debug, Clone, PartialEq)]
pub enum Drive {
    /// Engine torque through a gear.
    Gear {
        /// Which gear, as a place in `Driveline::gears`.
        gear: usize,
        /// Share of the highest engine torque, −1 to 1; below zero the wheels drive the engine.
        throttle: f64,
    },
    /// Torque that the gearbox (or the axle shafts together) delivers [N m], forward drive positive.
    OutputTorque(f64),
}

/// Reads `gear` with `throttle`, or `output_torque`.
pub(super) fn read(section: &Section<'_>, context: &Context<'_>) -> Option<Drive> {
    let throttle = section.ratio("throttle", Bound::Within(-1.0, 1.0));
    let torque = section.quantity("output_torque", Quantity::Torque, Bound::TORQUE);
    if section.has("throttle") && !section.has("gear") {
        section.refuse(
            "throttle",
            Code::NeedsOther,
            format!("{} needs a `gear`", section.key_name("throttle")),
            "add `gear`, or take `throttle` out",
        );
    }
    if section.has("output_torque") {
        if section.has("gear") {
            section.refuse(
                "output_torque",
                Code::Conflict,
                format!(
                    "{} is given beside `gear`",
                    section.key_name("output_torque")
                ),
                "keep `output_torque` when it was measured, else `gear`",
            );
        }
        if matches!(context.driveline, Other::Absent) {
            section.refuse_once(
                "no driveline",
                "output_torque",
                Code::NeedsOther,
                format!(
                    "{} needs a `[driveline]`",
                    section.key_name("output_torque")
                ),
                "add `[driveline]`, which says where the torque leaves",
            );
        }
        return Some(Drive::OutputTorque(torque?));
    }
    section.text("gear")?;
    let has_torque = match context.engine {
        Other::Read(engine) => engine.torque.is_some(),
        Other::Broken => true,
        Other::Absent => false,
    };
    if !has_torque {
        section.refuse_once(
            "no engine torque",
            "gear",
            Code::NeedsOther,
            format!(
                "{} needs an `[engine]` with its `torque`",
                section.key_name("gear")
            ),
            "add it, or give `output_torque` in place of `gear`",
        );
    }
    let driveline = match context.driveline {
        Other::Read(driveline) => driveline,
        Other::Broken => return None,
        Other::Absent => {
            section.refuse_once(
                "no driveline",
                "gear",
                Code::NeedsOther,
                format!(
                    "{} needs a `[driveline]` with gears",
                    section.key_name("gear")
                ),
                "add `[driveline]` with `output`, `gears` and `final_drive`",
            );
            return None;
        }
    };
    let names = driveline
        .gears
        .iter()
        .map(|gear| gear.name.as_str())
        .collect();
    let gear = section.reference("gear", &Names::new("gear", names, true))?;
    Some(Drive::Gear {
        gear,
        throttle: throttle.unwrap_or(1.0),
    })
}
