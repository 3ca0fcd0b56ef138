//! Properties that hold for every build.

mod build;
mod equilibrium;
mod modes;
mod tangent;
