//! What a machine without pistons says of its shaking: pulses, cogging, unbalance.

use super::Known;
use crate::diagnostic::Code;
use crate::model::drivetrain::Cycle;
use crate::model::reader::{Bound, Section};
use crate::units::Quantity;

/// Torque pulses that grow with the load.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ripple {
    /// Amplitude at full load [N m].
    pub torque: f64,
}

/// Torque between magnets and teeth, with or without current.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cogging {
    /// Slots of the stator.
    pub slots: u32,
    /// Amplitude [N m].
    pub torque: f64,
}

/// Reads `ripple`.
pub(super) fn read_ripple(section: &Section<'_>, known: &Known) -> Option<Ripple> {
    if !section.has("ripple") {
        return None;
    }
    let share = section.ratio("ripple", Bound::Within(0.0, 2.0));
    if section.has("harmonics") {
        section.refuse(
            "ripple",
            Code::Conflict,
            "`harmonics` stand in place of `ripple`",
            "keep one of them",
        );
    }
    section.must_have(&[("torque", "the highest torque, of which `ripple` is a share")]);
    needs_pole_pairs(section, known, "ripple");
    Some(Ripple {
        torque: share? * known.torque?,
    })
}

/// Reads `slots` and `cogging`.
pub(super) fn read_cogging(section: &Section<'_>, known: &Known) -> Option<Cogging> {
    let slots = section.count("slots", 3, 1000);
    let torque = section.quantity(
        "cogging",
        Quantity::Torque,
        Bound::Stated(0.0, 1e5, "between 0 and 1e5 N m"),
    );
    if section.has("cogging") || section.has("slots") {
        section.must_have(&[
            (
                "slots",
                "the slots of the stator, which give the order of cogging",
            ),
            (
                "cogging",
                "amplitude of the cogging torque, such as \"1.5 N m\"",
            ),
        ]);
        needs_pole_pairs(section, known, "cogging");
    }
    Some(Cogging {
        slots: slots?,
        torque: torque?,
    })
}

/// Mass times offset of the rotor [kg m].
///
/// # Equation
///   U = m G / ω
///
///   G  balance grade: speed of the centre of mass [m/s] at the highest speed ω [rad/s]
///
/// # Source
/// ISO 21940-11:2016, definition of the balance quality grade (from memory).
pub(super) fn read_unbalance(section: &Section<'_>, known: &Known) -> Option<f64> {
    let mass = section.quantity("rotor_mass", Quantity::Mass, Bound::MASS);
    let grade = section.quantity(
        "balance_grade",
        Quantity::Speed,
        Bound::Stated(1e-4, 4.0, "between 0.1 mm/s and 4 m/s"),
    );
    if section.has("rotor_mass") || section.has("balance_grade") {
        section.must_have(&[
            (
                "rotor_mass",
                "the mass of the rotor, to which `balance_grade` belongs",
            ),
            (
                "balance_grade",
                "the grade of its balance, such as \"6.3 mm/s\"",
            ),
            (
                "redline",
                "the highest speed, for which `balance_grade` is stated",
            ),
        ]);
    }
    Some(mass? * grade? / known.redline?)
}

/// The order of what an electric machine does is counted in pole pairs.
fn needs_pole_pairs(section: &Section<'_>, known: &Known, key: &'static str) {
    if known.cycle == (Cycle::Electric { pole_pairs: None }) {
        section.refuse(
            key,
            Code::NeedsOther,
            format!("{} needs `pole_pairs`", section.key_name(key)),
            "give `pole_pairs`, from which its order follows",
        );
    }
}
