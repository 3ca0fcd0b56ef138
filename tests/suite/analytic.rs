//! Closed forms and independent calculations.

mod axes;
mod composite_mass;
mod mount_law;
mod powertrain_on_mounts;
mod rest_and_torque;
mod torque;
mod units;
mod unsupported;
mod verdicts;
