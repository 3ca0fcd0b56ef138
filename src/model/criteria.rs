//! Section `[targets]`: what the checks compare with where the build itself states no limit.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `sag` | largest static sag at a mount | length | 10 mm |
//! | `idle_ratio` | least ratio of the idle firing frequency to the modes that the torque excites, 1 to 10 | ratio | √2 |
//! | `separation` | least distance between neighbouring natural frequencies | frequency | 0.5 Hz |
//! | `wheel_hop` | band `[from, to]` in which the wheels hop | 2 frequencies | 10 Hz to 15 Hz |
//! | `mount_share` | largest share of the weight on one mount, 0.05 to 1 | ratio | 0.6 |
//! | `imbalance` | largest difference between left and right, as a share of both, 0.01 to 1 | ratio | 0.2 |
//! | `frame_twist` | by how much the chassis gives way at one mount, for the check that a twisting frame loads no mount too much, 0 to 50 mm | length | 1 mm |
//!
//! All defaults are common practice.

use super::reader::{Bound, Ends, Section};
use crate::units::Quantity;

/// What the checks compare with. Every default is common practice and can be replaced in the file.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Criteria {
    /// Largest static sag at a mount \[m\].
    pub sag: f64,
    /// Least ratio of the idle firing frequency to the modes that the torque excites.
    pub idle_ratio: f64,
    /// Least distance between neighbouring natural frequencies \[Hz\].
    pub separation: f64,
    /// Band in which the wheels hop \[Hz\].
    pub wheel_hop: [f64; 2],
    /// Largest share of the weight on one mount.
    pub mount_share: f64,
    /// Largest difference between left and right, as a share of both together.
    pub imbalance: f64,
    /// By how much the chassis gives way at one mount \[m\].
    pub frame_twist: f64,
}

impl Default for Criteria {
    fn default() -> Self {
        Self {
            sag: 10e-3,
            idle_ratio: std::f64::consts::SQRT_2,
            separation: 0.5,
            wheel_hop: [10.0, 15.0],
            mount_share: 0.6,
            imbalance: 0.2,
            frame_twist: 1e-3,
        }
    }
}

/// How a band of frequencies is written.
const BAND: Ends<'_> = Ends {
    example: "[\"10 Hz\", \"15 Hz\"]",
    order: "write the lower end first",
};

/// How far a frame may give way at one corner \[m\].
const FRAME_TWIST: Bound = Bound::Stated(0.0, 0.05, "between 0 and 50 mm");

/// Reads the section; what is absent keeps its default.
pub(super) fn read(section: Section<'_>) -> Criteria {
    let mut criteria = Criteria::default();
    let hertz = |omega: f64| omega / std::f64::consts::TAU;
    if let Some(sag) = section.quantity("sag", Quantity::Length, Bound::SIZE) {
        criteria.sag = sag;
    }
    if let Some(ratio) = section.ratio("idle_ratio", Bound::Within(1.0, 10.0)) {
        criteria.idle_ratio = ratio;
    }
    if let Some(omega) = section.quantity("separation", Quantity::Frequency, Bound::NotNegative) {
        criteria.separation = hertz(omega);
    }
    if let Some(band) = section.span("wheel_hop", Quantity::Frequency, Bound::FREQUENCY, &BAND) {
        criteria.wheel_hop = band.map(hertz);
    }
    if let Some(share) = section.ratio("mount_share", Bound::Within(0.05, 1.0)) {
        criteria.mount_share = share;
    }
    if let Some(share) = section.ratio("imbalance", Bound::Within(0.01, 1.0)) {
        criteria.imbalance = share;
    }
    if let Some(by) = section.quantity("frame_twist", Quantity::Length, FRAME_TWIST) {
        criteria.frame_twist = by;
    }
    section.finish();
    criteria
}
