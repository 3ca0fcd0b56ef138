//! Pressure under head and nut.

use std::f64::consts::PI;

/// Pressure under a head or washer \[Pa\].
///
/// # Equation
///   p = F/(π/4 (dW² − dh²))
///
///   F   largest force in the bolt                     \[N\]
///   dW  outer diameter of the bearing face            \[m\]
///   dh  hole, with its chamfer, smaller than dW       \[m\]
///
/// # Source
/// VDI 2230-1:2003, from memory.
#[must_use]
pub fn pressure(force: f64, head_bearing: f64, hole: f64) -> f64 {
    force / (PI / 4.0 * (head_bearing * head_bearing - hole * hole))
}

/// Pressure a material bears under a head before it gives and preload is lost.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PressureLimit {
    /// Material by its usual designation.
    pub material: &'static str,
    /// Of the older, lower list \[Pa\]: for a bare wall; none where that list has no such material.
    pub wall: Option<f64>,
    /// Of the newer list \[Pa\]: for a thick part that is held sideways, or over a sleeve.
    pub thick: f64,
}

const fn material(material: &'static str, wall: Option<f64>, thick: f64) -> PressureLimit {
    PressureLimit {
        material,
        wall,
        thick,
    }
}

/// # Source
/// `wall`: VDI 2230:1986, `thick`: VDI 2230-1:2003, table A9, both from memory; many of the newer
/// are uncertain, and of two tempers or years the lower value stands. That a bare rail wall is held to the older list is common practice.
pub const PRESSURE_LIMITS: [PressureLimit; 9] = [
    material("S235", Some(260e6), 490e6),
    material("E295", Some(420e6), 710e6),
    material("S355", None, 760e6),
    material("1.4303", Some(210e6), 630e6),
    material("1.4401", Some(210e6), 460e6),
    material("EN-GJL-250", Some(800e6), 900e6),
    material("6082", None, 230e6),
    material("5083", None, 230e6),
    material("7075", None, 410e6),
];
