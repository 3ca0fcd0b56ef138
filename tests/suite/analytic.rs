//! Closed forms and independent calculations.

mod axes;
mod block;
mod composite_mass;
mod curve;
mod hard_builds;
mod hardness;
mod hydraulic;
mod in_service;
mod large_compression;
mod loose_seat;
mod mount_law;
mod polyurethane;
mod powertrain_on_mounts;
mod rest_and_torque;
mod rods;
mod service;
mod settled;
mod stiffening;
mod torque;
mod twist;
mod units;
mod unsupported;
mod verdicts;
mod vibration;
mod whole_builds;
