//! How the cylinders stand, and when they fire.

use std::f64::consts::{PI, TAU};

use super::firing;
use crate::diagnostic::Code;
use crate::model::drivetrain::Cycle;
use crate::model::reader::{Bound, Section};
use crate::units::Quantity;

/// Share of the bore by which cylinders stand apart.
///
/// # Source
/// Common practice of in-line engines: 1.1 to 1.25.
const SPACING: f64 = 1.2;

/// Angles that may differ and still be the same \[rad\]: one degree.
const SAME: f64 = PI / 180.0;

/// Pins, banks, places and firing of all cylinders.
pub(super) struct Layout {
    /// Crank pins \[rad\], when known.
    pub(super) pins: Option<Vec<f64>>,
    /// Cylinders from the upright \[rad\].
    pub(super) banks: Vec<f64>,
    /// Along the crank, from the middle \[m\], when known.
    pub(super) places: Option<Vec<f64>>,
    /// Firing angle of each cylinder after that of the first \[rad\].
    pub(super) firing: Vec<f64>,
    /// Angle after which all repeats \[rad\].
    pub(super) cycle: f64,
}

/// Reads all keys of the layout of an engine with so many cylinders.
pub(super) fn read(section: &Section<'_>, cycle: Cycle, count: usize) -> Option<Layout> {
    let turns = match cycle {
        Cycle::FourStroke { .. } => 2.0,
        _ => 1.0,
    };
    let cylinders = (count, "cylinders");
    let row = |key| section.row(key, Quantity::Angle, Bound::ANGLE, cylinders);
    let banks = read_banks(section, count);
    let pins = row("pins");
    let places = read_places(section, count, banks.as_deref());
    let angles = section.row(
        "firing_angles",
        Quantity::Angle,
        Bound::Stated(0.0, 2.0 * TAU + SAME, "between 0 and 720 deg"),
        cylinders,
    );
    let order = firing::read_order(section, count);
    for (key, read) in [
        ("pins", pins.is_some()),
        ("firing_angles", angles.is_some()),
        ("firing_order", order.is_some()),
    ] {
        if section.has(key) && !read {
            return None;
        }
    }
    if section.has("firing_order") && section.has("firing_angles") {
        section.refuse(
            "firing_order",
            Code::Conflict,
            "`firing_angles` stand in place of `firing_order`",
            "keep one of them",
        );
        return None;
    }
    let banks = banks?;
    let cycle = turns * TAU;
    // Crank angle at which each cylinder is at its top, the first at 0.
    let tops = pins.as_deref().map(|pins| tops(pins, &banks));
    let firing = match (angles, &tops) {
        (Some(angles), _) => {
            let first = angles.first().copied().unwrap_or_default();
            let angles = angles.iter().map(|angle| (angle - first).rem_euclid(cycle));
            angles.collect()
        }
        (None, Some(tops)) if turns < 2.0 => tops.clone(),
        (None, tops) => read_firing(section, order, tops.as_deref(), &banks, cycle)?,
    };
    if let Some(tops) = &tops {
        refuse_firing_off_top(section, &firing, tops)?;
    }
    let derived = |_| -> Vec<f64> { banks.iter().zip(&firing).map(|(b, f)| b - f).collect() };
    let told = section.has("firing_angles") || section.has("firing_order");
    let upright = banks
        .iter()
        .all(|bank| (bank - first_of(&banks)).abs() < SAME);
    let pins = pins.or_else(|| (told || upright).then_some(()).map(derived));
    Some(Layout {
        pins,
        banks,
        places,
        firing,
        cycle,
    })
}

fn tops(pins: &[f64], banks: &[f64]) -> Vec<f64> {
    let first = pins.first().zip(banks.first());
    let (pin, bank) = first.map_or((0.0, 0.0), |(pin, bank)| (*pin, *bank));
    let turned = |(p, b): (&f64, &f64)| {
        let top = ((b - bank) - (p - pin)).rem_euclid(TAU);
        // What rounding made of 0.
        if TAU - top < SAME { 0.0 } else { top }
    };
    pins.iter().zip(banks).map(turned).collect()
}

/// Firing from an order, written or usual.
fn read_firing(
    section: &Section<'_>,
    order: Option<Vec<usize>>,
    tops: Option<&[f64]>,
    banks: &[f64],
    cycle: f64,
) -> Option<Vec<f64>> {
    let in_line = banks.iter().all(|bank| bank.abs() < SAME);
    let usual = || {
        let usual = firing::usual(banks.len()).filter(|_| in_line);
        usual.filter(|order| tops.is_none_or(|tops| firing::at_tops(order, tops, TAU).is_some()))
    };
    let written = order.is_some();
    let order = match order.or_else(usual) {
        Some(order) => order,
        None if tops.is_some() => {
            section.must_have(&[("firing_order", "such as \"1-3-4-2\"")]);
            return None;
        }
        None => (0..banks.len()).collect(),
    };
    if !written && banks.len() > 1 {
        let text = format!("{}, evenly (common practice)", firing::written(&order));
        section.assume("firing_order", text);
    }
    let Some(tops) = tops else {
        return Some(firing::evenly(&order, cycle));
    };
    let angles = firing::at_tops(&order, tops, TAU);
    if angles.is_none() {
        section.refuse(
            "firing_order",
            Code::Conflict,
            format!(
                "{} cannot be followed by these `pins`",
                section.key_name("firing_order")
            ),
            "check both; where cylinders fire at once write `firing_angles`",
        );
    }
    angles
}

/// A cylinder fires at its top.
fn refuse_firing_off_top(section: &Section<'_>, firing: &[f64], tops: &[f64]) -> Option<()> {
    let off = |(f, t): (&f64, &f64)| ((f - t + PI).rem_euclid(TAU) - PI).abs() > SAME;
    let Some(cylinder) = firing.iter().zip(tops).position(off) else {
        return Some(());
    };
    section.refuse(
        "firing_angles",
        Code::Conflict,
        format!(
            "cylinder {} does not fire at its top by `pins` and `firing_angles`",
            cylinder + 1
        ),
        "check both, or leave out `pins`, which then follow from the firing",
    );
    None
}

fn read_banks(section: &Section<'_>, count: usize) -> Option<Vec<f64>> {
    let banks = section.row("banks", Quantity::Angle, Bound::ANGLE, (count, "cylinders"));
    let half_turn = Bound::Stated(0.0, PI + SAME, "between 0 and 180 deg");
    let angle = section.quantity("bank_angle", Quantity::Angle, half_turn);
    match (section.has("banks"), section.has("bank_angle")) {
        (true, true) => {
            section.refuse(
                "bank_angle",
                Code::Conflict,
                "`banks` stand in place of `bank_angle`",
                "keep one of them",
            );
            None
        }
        (true, false) => banks,
        (false, true) => {
            let half = angle? / 2.0;
            let in_turn = (0..count).map(|at| if at % 2 == 0 { -half } else { half });
            Some(in_turn.collect())
        }
        (false, false) => Some(vec![0.0; count]),
    }
}

/// Places along the crank, from their middle.
fn read_places(section: &Section<'_>, count: usize, banks: Option<&[f64]>) -> Option<Vec<f64>> {
    let places = section.row(
        "places",
        Quantity::Length,
        Bound::PLACE,
        (count, "cylinders"),
    );
    let pitch = section.quantity("spacing", Quantity::Length, Bound::SIZE);
    if section.has("places") && section.has("spacing") {
        section.refuse(
            "spacing",
            Code::Conflict,
            "`places` stand in place of `spacing`",
            "keep one of them",
        );
        return None;
    }
    let mut places = if section.has("places") {
        places?
    } else if count == 1 {
        vec![0.0]
    } else {
        let banks = banks?;
        let in_line = banks
            .iter()
            .all(|bank| (bank - first_of(banks)).abs() < SAME);
        if !in_line && section.has("banks") {
            if section.has("reciprocating_mass") {
                section.must_have(&[(
                    "places",
                    "of each cylinder along the crank, such as \"0, 0, 110, 110 mm\"",
                )]);
            }
            return None;
        }
        let pitch = match pitch {
            Some(pitch) => pitch,
            None if section.has("spacing") || !section.has("reciprocating_mass") => return None,
            None => {
                section.must_have_one_of(
                    &["spacing", "places", "bore"],
                    "from one crank throw to the next, such as \"95 mm\"",
                );
                let bore = section.quantity("bore", Quantity::Length, Bound::SIZE)?;
                section.assume("spacing", format!("{SPACING} bores (common practice)"));
                SPACING * bore
            }
        };
        let throws = if in_line { 1 } else { 2 };
        (0..count).map(|at| pitch * (at / throws) as f64).collect()
    };
    let low = places.iter().copied().fold(f64::INFINITY, f64::min);
    let high = places.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    for place in &mut places {
        *place -= (low + high) / 2.0;
    }
    Some(places)
}

/// The bank of the first cylinder.
fn first_of(banks: &[f64]) -> f64 {
    banks.first().copied().unwrap_or_default()
}
