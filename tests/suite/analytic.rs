//! Closed forms and independent calculations.

mod axes;
mod composite_mass;
mod hard_builds;
mod in_service;
mod mount_law;
mod powertrain_on_mounts;
mod rest_and_torque;
mod rods;
mod settled;
mod torque;
mod twist;
mod units;
mod unsupported;
mod verdicts;
mod vibration;
mod whole_builds;
