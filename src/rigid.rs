//! Stand-in types until the real solver is merged.
#![allow(missing_docs, reason = "stand-in")]
pub mod equilibrium {
    use crate::model::isolator::IsolatorState;
    use crate::spatial::*;
    use nalgebra::UnitQuaternion;
    #[derive(Debug, Clone, PartialEq)]
    pub struct FreeMotion {
        pub words: String,
    }
    #[derive(Debug, Clone, PartialEq)]
    pub enum StaticsFailure {
        Unsupported(Vec<FreeMotion>),
        NotConverged {
            reached_share: f64,
            residual: f64,
            worst_mount: String,
            iterations: usize,
        },
    }
    impl std::fmt::Display for StaticsFailure {
        fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
            f.write_str("no position found")
        }
    }
    #[derive(Debug, Clone)]
    pub struct StaticEquilibrium {
        pub pose: Pose,
        pub displacement: Vec3,
        pub rotation: UnitQuaternion<f64>,
        pub mounts: Vec<MountState>,
        pub applied: Wrench,
        pub residual: f64,
        pub iterations: usize,
        pub tangent: Mat6,
        pub geometric: Mat6,
        pub barely_held: Vec<FreeMotion>,
        pub held_by_weight_only: Vec<FreeMotion>,
    }
    impl StaticEquilibrium {
        /// Motion of a point of the powertrain given in the fitted pose, V axes.
        pub fn displacement_of(&self, point_fitted: &Vec3) -> Vec3 {
            let c0 = self.pose.position - self.displacement;
            self.pose.position + self.rotation * (point_fitted - c0) - point_fitted
        }
    }
    #[derive(Debug, Clone)]
    pub struct MountState {
        pub deflection: Vec3,
        pub isolator_deflection: Vec3,
        pub force_on_powertrain: Vec3,
        pub arm: Vec3,
        pub rate: Mat3,
        pub on_stop: [bool; 3],
        pub energy: f64,
        pub isolator: IsolatorState,
    }
}
pub mod modes {
    use crate::spatial::*;
    #[derive(Debug, Clone)]
    pub struct ModalSolution {
        pub modes: Vec<Mode>,
        pub mass: Mat6,
        pub stiffness: Mat6,
        pub loss: Mat6,
        pub skew_ratio: f64,
    }
    #[derive(Debug, Clone)]
    pub struct Mode {
        pub frequency_hz: f64,
        pub growth_rate: Option<f64>,
        pub damping_ratio: f64,
        pub shape: Vec6,
        pub energy_share: Vec6,
        pub mount_strain_share: Vec<f64>,
        pub geometric_strain_share: f64,
        pub name: String,
    }
}
pub mod axes {
    use crate::spatial::*;
    #[derive(Debug, Clone, PartialEq)]
    pub struct ElasticAxis {
        pub direction: Vec3,
        pub through: Vec3,
        pub pitch: f64,
    }
    #[derive(Debug, Clone, PartialEq)]
    pub struct ElasticAxes {
        pub axes: [ElasticAxis; 3],
        pub stiffness_centre: Vec3,
        pub compliance_centre: Vec3,
        pub is_centre: bool,
    }
}
