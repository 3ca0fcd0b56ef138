//! Closed forms and independent calculations.

mod axes;
mod block;
mod clamped_polymer;
mod composite_mass;
mod hard_builds;
mod hardness;
mod in_service;
mod joint_file;
mod large_compression;
mod mount_law;
mod polyurethane;
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
