//! Pistons and rods: sizes, masses and what balances them.

use super::layout::Layout;
use crate::diagnostic::Code;
use crate::model::cylinder::Cylinder;
use crate::model::reader::{Bound, Section};
use crate::units::Quantity;

/// Length of a rod over the stroke.
///
/// # Source
/// Common practice: 1.5 to 2 (crank radius over rod 0.33 to 0.25).
const ROD: f64 = 1.75;

/// Pistons and rods of all cylinders, and what balances them.
#[derive(Debug, Clone, PartialEq)]
pub struct Reciprocating {
    /// Cylinders by their number.
    pub cylinders: Vec<Cylinder>,
    /// Crank radius \[m\].
    pub radius: f64,
    /// Length of a rod \[m\]; at least 1.2 crank radii.
    pub rod: f64,
    /// Reciprocating mass of one cylinder \[kg\].
    pub mass: f64,
    /// Share of the first order turning with the crank that its counterweights balance, 0 to 1.
    pub counterweight: f64,
    /// Whether a shaft balances the first order turning against the crank.
    pub first_order_shaft: bool,
    /// Whether a pair of shafts balances the second order.
    pub second_order_shafts: bool,
}

/// Stroke and rod, as far as known.
pub(super) struct Sizes {
    pub(super) stroke: Option<f64>,
    pub(super) rod: Option<f64>,
}

/// Reads `stroke` and `rod`.
pub(super) fn read_sizes(section: &Section<'_>) -> Sizes {
    /// Rod over crank radius: below, the rod would hit the cylinder; above, it is a slip of a digit.
    const ROD_OVER_RADIUS: std::ops::RangeInclusive<f64> = 1.2..=20.0;
    let stroke = section.quantity("stroke", Quantity::Length, Bound::SIZE);
    let given = section.quantity("rod", Quantity::Length, Bound::SIZE);
    if section.has("rod") {
        section.must_have(&[("stroke", "to which `rod` belongs")]);
    } else if stroke.is_some() {
        section.assume("rod", format!("{ROD} strokes long (common practice)"));
    }
    if let (Some(stroke), Some(rod)) = (stroke, given) {
        let ratio = rod / (stroke / 2.0);
        if !ROD_OVER_RADIUS.contains(&ratio) {
            section.refuse(
                "rod",
                Code::OutOfRange,
                format!(
                    "{} must be 1.2 to 20 crank radii long: {ratio:.2}",
                    section.key_name("rod")
                ),
                "its length between centres, usually 1.5 to 2 strokes; the crank radius is half the stroke",
            );
            return Sizes {
                stroke: Some(stroke),
                rod: None,
            };
        }
    }
    let rod = if section.has("rod") {
        given
    } else {
        stroke.map(|stroke| ROD * stroke)
    };
    Sizes { stroke, rod }
}

/// Reads the rest.
pub(super) fn read(
    section: &Section<'_>,
    sizes: &Sizes,
    layout: Option<&Layout>,
) -> Option<Reciprocating> {
    let mass = section.quantity("reciprocating_mass", Quantity::Mass, Bound::MASS);
    let counterweight = section.ratio("counterweight", Bound::Within(0.0, 1.0));
    let shafts = section.counts("balance_shafts", 1, 2);
    if !section.has("reciprocating_mass") {
        for key in ["counterweight", "balance_shafts"] {
            if section.has(key) {
                section.refuse(
                    key,
                    Code::NeedsOther,
                    format!("{} needs `reciprocating_mass`", section.key_name(key)),
                    "give the mass that is balanced, or take the key out",
                );
            }
        }
        return None;
    }
    section.must_have(&[("stroke", "to which `reciprocating_mass` belongs")]);
    let layout = layout?;
    if layout.pins.is_none() {
        section.must_have(&[(
            "pins",
            "crank pin of each cylinder, such as \"0, 0, 90, 90, 270, 270, 180, 180 deg\"",
        )]);
    }
    let pins = layout.pins.as_ref()?;
    let places = layout.places.as_ref()?;
    if !section.has("counterweight") {
        section.assume(
            "counterweight",
            "all that turns with the crank at first order is balanced (common practice)",
        );
    }
    let cylinders = pins.iter().zip(&layout.banks).zip(places);
    let cylinders = cylinders.map(|((pin, bank), place)| Cylinder {
        pin: *pin,
        bank: *bank,
        place: *place,
    });
    let shafts = shafts.unwrap_or_default();
    Some(Reciprocating {
        cylinders: cylinders.collect(),
        radius: sizes.stroke? / 2.0,
        rod: sizes.rod?,
        mass: mass?,
        counterweight: counterweight.unwrap_or(1.0),
        first_order_shaft: shafts.contains(&1),
        second_order_shafts: shafts.contains(&2),
    })
}
