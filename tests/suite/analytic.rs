//! Closed forms and independent calculations.

mod axes;
mod block;
mod composite_mass;
mod crushed_rail;
mod hard_builds;
mod hardness;
mod in_service;
mod large_compression;
mod mount_law;
mod plate_strip;
mod polyurethane;
mod powertrain_on_mounts;
mod rest_and_torque;
mod rods;
mod settled;
mod squeeze;
mod torque;
mod twist;
mod units;
mod unsupported;
mod verdicts;
mod vibration;
mod weld_lines;
mod whole_builds;
