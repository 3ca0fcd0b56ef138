//! Section `[targets]`: what the checks compare with where the build itself states no limit.

/// What the checks compare with. Every default is common practice and can be replaced in the file.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Criteria {
    /// Largest static sag at a mount [m].
    pub sag: f64,
    /// Least ratio of the idle firing frequency to the modes that the torque excites.
    pub idle_ratio: f64,
    /// Least distance between neighbouring natural frequencies [Hz].
    pub separation: f64,
    /// Band in which the wheels hop [Hz].
    pub wheel_hop: [f64; 2],
    /// Largest share of the weight on one mount.
    pub mount_share: f64,
    /// Largest difference between left and right, as a share of both together.
    pub imbalance: f64,
}

impl Default for Criteria {
    fn default() -> Self {
        Self {
            sag: 10e-3,
            idle_ratio: std::f64::consts::SQRT_2,
            separation: 0.5,
            wheel_hop: [10.0, 15.0],
            mount_share: 0.6,
            imbalance: 0.2,
        }
    }
}
