//! Closed forms and independent calculations.

mod axes;
mod composite_mass;
mod curve;
mod hard_builds;
mod hydraulic;
mod loose_seat;
mod mount_law;
mod powertrain_on_mounts;
mod rest_and_torque;
mod service;
mod settled;
mod stiffening;
mod torque;
mod units;
mod unsupported;
mod verdicts;
mod vibration;
mod whole_builds;
