//! Closed forms and independent calculations.

mod axes;
mod bush;
mod bush_and_rod;
mod composite_mass;
mod hard_builds;
mod mount_law;
mod powertrain_on_mounts;
mod rest_and_torque;
mod settled;
mod torque;
mod units;
mod unsupported;
mod verdicts;
mod vibration;
mod whole_builds;
