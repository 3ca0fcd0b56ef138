//! The powertrain as a rigid body on its mounts: statics, modes, axes.
//!
//! Takes mass properties, mounts and loads; knows no engine, gear or file.
