//! Properties that hold for every build.

mod block;
mod bolts;
mod build;
mod equilibrium;
mod every_kind;
mod history;
mod joints;
mod model_file;
mod modes;
mod requirement_names;
mod road;
mod shown_shares;
mod sizes_written;
mod tangent;
