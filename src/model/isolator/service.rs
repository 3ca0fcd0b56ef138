//! What heat, age and time do to an isolator.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `temperature` | of the rubber at work, −60 to 400 °C: its rate is taken from what is usual for the rubber | temperature | 20 °C |
//! | `temperature_factor` | rate at work over the rate at 20 °C, in place of `temperature` | ratio | 1 |
//! | `age_factor` | rate when aged over the rate as new; rubber hardens | ratio | 1 |
//! | `creep` | how much further it gives way in service, as a share of the deflection at rest, 0 to 2 | ratio | by kind |
//! | `heat_limit` | hottest it lasts at | temperature | by rubber |

use super::description::Description;
use super::rubber::Compound;
use crate::diagnostic::Code;
use crate::model::reader::{Bound, Section};
use crate::units::Quantity;

/// Temperatures that a part of a vehicle has \[°C\].
pub(crate) const TEMPERATURE: Bound = Bound::Stated(-60.0, 400.0, "between -60 °C and 400 °C");

/// Rates of rubber at work over those as new at 20 °C.
const FACTOR: Bound = Bound::Within(0.2, 10.0);

/// What service makes of an isolator.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Service {
    /// Rate at work over the rate as new at 20 °C.
    pub(super) rate_factor: f64,
    /// Creep as a share of the deflection at rest.
    pub(super) creep: f64,
    /// Hottest it lasts at \[°C\].
    pub(super) heat_limit: Option<f64>,
}

/// Reads the keys; `None` when something is wrong or the kind is not known.
pub(super) fn read(section: &Section<'_>, description: Option<&Description>) -> Option<Service> {
    let compound = description.and_then(|description| description.compound);
    let of_temperature = read_temperature(section, description, compound);
    let of_age = section.ratio("age_factor", FACTOR);
    let creep = section.ratio("creep", Bound::Within(0.0, 2.0));
    let heat_limit = section.quantity("heat_limit", Quantity::Temperature, TEMPERATURE);
    let description = description?;
    if !section.has("creep") && description.usual.creep > 0.0 {
        section.assume(
            "creep",
            format!(
                "{:.0} % of the deflection at rest over ten years, usual for {} (common practice)",
                description.usual.creep * 100.0,
                description.usual.of
            ),
        );
    }
    if let (false, Some(compound)) = (section.has("heat_limit"), compound) {
        section.assume(
            "heat_limit",
            format!(
                "{:.0} °C: {} (common practice)",
                compound.heat_limit, compound.name
            ),
        );
    }
    Some(Service {
        rate_factor: of_temperature? * of_age.unwrap_or(1.0),
        creep: creep.unwrap_or(description.usual.creep),
        heat_limit: heat_limit.or(compound.map(|compound| compound.heat_limit)),
    })
}

fn read_temperature(
    section: &Section<'_>,
    description: Option<&Description>,
    compound: Option<&Compound>,
) -> Option<f64> {
    let factor = section.ratio("temperature_factor", FACTOR);
    let temperature = section.quantity("temperature", Quantity::Temperature, TEMPERATURE);
    if !section.has("temperature") {
        return Some(factor.unwrap_or(1.0));
    }
    if section.has("temperature_factor") {
        section.refuse(
            "temperature",
            Code::Conflict,
            format!(
                "{} is given beside `temperature_factor`",
                section.key_name("temperature")
            ),
            "keep `temperature_factor` when it was measured, else `temperature`",
        );
        return None;
    }
    description?;
    let rate = compound.and_then(|compound| compound.rate_at(temperature?));
    if rate.is_none() && temperature.is_some() {
        section.refuse(
            "temperature",
            Code::NeedsOther,
            format!(
                "nothing is known of the rate at {}",
                section.key_name("temperature")
            ),
            "give `temperature_factor`, the rate at that temperature over the rate at 20 °C; \
             from -40 °C to 70 °C it is known for natural rubber",
        );
    }
    let (rate, compound) = (rate?, compound?);
    section.assume(
        "temperature_factor",
        format!("{rate:.2}: usual for {} (common practice)", compound.name),
    );
    Some(rate)
}

impl Compound {
    /// Rate at a temperature \[°C\] over the rate at 20 °C, interpolated; `None` outside of what is known.
    #[must_use]
    pub fn rate_at(&self, temperature: f64) -> Option<f64> {
        self.rate_at.windows(2).find_map(|pair| {
            let [(cold, stiffer), (warm, softer)] = *pair else {
                return None;
            };
            (cold..=warm).contains(&temperature).then(|| {
                let share = (temperature - cold) / (warm - cold);
                stiffer + (softer - stiffer) * share
            })
        })
    }
}
