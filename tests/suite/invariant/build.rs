//! Ugly random builds: nothing zero, nothing symmetric, nothing aligned.

use nalgebra::UnitQuaternion;
use std::sync::Arc;

use bedplate::model::isolator::{Dynamics, Isolator, Law, LawPoint, stop::AxisStops};
use bedplate::model::mass::MassProperties;
use bedplate::rigid::loading::Loading;
use bedplate::rigid::mount_response::HeldMount;
use bedplate::rigid::supported::Supported;
use bedplate::spatial::{Mat3, STANDARD_GRAVITY, Vec3, Wrench};
use nalgebra::Rotation3;
use proptest::prelude::*;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};

/// Potential k (x·x)/2 with a symmetric positive k, hardened by c (x·x)²/4: couples all axes.
#[derive(Debug, Clone)]
pub(crate) struct Hardening {
    pub(crate) k: Mat3,
    pub(crate) c: f64,
}

impl Law for Hardening {
    fn at(&self, x: &Vec3) -> LawPoint {
        let square = x.norm_squared();
        LawPoint {
            force: self.k * x + x * (self.c * square),
            tangent: self.k + (Mat3::identity() * square + x * x.transpose() * 2.0) * self.c,
            energy: x.dot(&(self.k * x)) / 2.0 + self.c * square * square / 4.0,
        }
    }
}

/// One mount of a random build, without borrowed parts.
#[derive(Debug, Clone)]
pub(crate) struct RandomMount {
    pub(crate) name: String,
    pub(crate) at: Vec3,
    pub(crate) axes: Rotation3<f64>,
    pub(crate) compliance: Mat3,
    pub(crate) isolator: Isolator,
    /// Chassis eye, when it is a rod.
    pub(crate) far_eye: Option<Vec3>,
}

/// A whole random build with one load case.
#[derive(Debug, Clone)]
pub(crate) struct RandomBuild {
    pub(crate) mass: MassProperties,
    pub(crate) mounts: Vec<RandomMount>,
    pub(crate) loading: Loading,
}

impl RandomBuild {
    pub(crate) fn held(&self) -> Vec<HeldMount<'_>> {
        self.mounts
            .iter()
            .map(|mount| HeldMount {
                name: &mount.name,
                at: mount.at,
                preset: Vec3::zeros(),
                untwisted: UnitQuaternion::identity(),
                far_eye: mount.far_eye,
                axes: *mount.axes.matrix(),
                compliance: mount.compliance,
                isolator: &mount.isolator,
            })
            .collect()
    }

    pub(crate) fn supported(&self) -> Supported<'_> {
        Supported::new(self.mass, self.held()).unwrap()
    }

    pub(crate) fn weight(&self) -> f64 {
        self.mass.mass() * STANDARD_GRAVITY
    }

    /// The same build with linear isolators and no stops.
    pub(crate) fn linear(mut self) -> Self {
        for mount in &mut self.mounts {
            mount.isolator.stops = [AxisStops::NONE; 3];
            let k = mount.isolator.at(&Vec3::zeros()).point.tangent;
            mount.isolator.law = Arc::new(Hardening { k, c: 0.0 });
        }
        self
    }
}

pub(crate) fn vector(size: f64) -> impl Strategy<Value = Vec3> {
    [-1.0..1.0, -1.0..1.0, -1.0..1.0_f64].prop_map(move |v| Vec3::from(v) * size)
}

pub(crate) fn rotation(size: f64) -> impl Strategy<Value = Rotation3<f64>> {
    vector(size).prop_map(Rotation3::new)
}

/// Symmetric with principal values from `low` to `high`.
fn symmetric(low: f64, high: f64) -> impl Strategy<Value = Mat3> {
    ([low..high, low..high, low..high], rotation(2.0)).prop_map(|(values, turn)| {
        let diagonal = Mat3::from_diagonal(&Vec3::from(values));
        let turned = turn.matrix() * diagonal * turn.matrix().transpose();
        (turned + turned.transpose()) * 0.5
    })
}

fn isolator() -> impl Strategy<Value = Isolator> {
    (
        symmetric(60e3, 400e3),
        1e8..6e9_f64,
        [2e-3..8e-3, 2e-3..8e-3, 2e-3..8e-3_f64],
        1.0..1.6_f64,
        0.02..0.25_f64,
        [0.0..3e3, 0.0..3e3, 0.0..3e3_f64],
    )
        .prop_map(|(k, c, travel, dynamic_ratio, loss_factor, rotational)| {
            let law = Arc::new(Hardening { k, c });
            let mut isolator = Isolator::new("random", "test", law);
            isolator.rotational = Vec3::from(rotational);
            for (stops, travel) in isolator.stops.iter_mut().zip(travel) {
                *stops = AxisStops {
                    lower: Some(-travel),
                    upper: Some(0.7 * travel),
                    rate: 3e6,
                    blend: 0.4e-3,
                };
            }
            isolator.dynamics = Dynamics::uniform(dynamic_ratio, loss_factor);
            isolator
        })
}

fn mount(corner: Vec3) -> impl Strategy<Value = RandomMount> {
    (
        vector(0.12),
        rotation(2.0),
        symmetric(1e-9, 2e-7),
        isolator(),
    )
        .prop_map(move |(off, axes, compliance, isolator)| RandomMount {
            name: format!("{:.1} {:.1}", corner.x, corner.y),
            at: corner + off,
            axes,
            compliance,
            isolator,
            far_eye: None,
        })
}

/// A torque rod behind the powertrain, in any direction.
fn rod() -> impl Strategy<Value = RandomMount> {
    (mount(Vec3::new(-0.4, 0.1, 0.2)), rotation(2.0)).prop_map(|(mut mount, turn)| {
        let along = |k: f64| Mat3::from_diagonal(&Vec3::new(0.0, 0.0, k));
        let k = mount.isolator.law.at(&Vec3::zeros()).tangent[(2, 2)];
        let k = along(k);
        mount.isolator.law = Arc::new(Hardening { k, c: 0.0 });
        mount.isolator.rotational = Vec3::zeros();
        RandomMount {
            name: "rod".to_owned(),
            far_eye: Some(mount.at + turn * Vec3::new(0.25, 0.0, 0.0)),
            compliance: along(mount.compliance[(2, 2)]),
            ..mount
        }
    })
}

fn mass() -> impl Strategy<Value = MassProperties> {
    (80.0..350.0_f64, vector(0.15), symmetric(0.05, 0.09)).prop_map(|(m, centre, gyration)| {
        MassProperties::new(m, centre + Vec3::new(-0.3, 0.02, 0.1), gyration * m).unwrap()
    })
}

fn loading() -> impl Strategy<Value = Loading> {
    (
        vector(3e3),
        vector(900.0),
        vector(0.5),
        vector(600.0),
        vector(60.0),
    )
        .prop_map(|(at_centre, moment, point, force, couple)| Loading {
            at_centre,
            moment,
            at_points: vec![(
                point,
                Wrench {
                    force,
                    moment: couple,
                },
            )],
        })
}

/// Three or four mounts round the centre of gravity; the loading holds the weight too.
pub(crate) fn any_build() -> impl Strategy<Value = RandomBuild> {
    let corners = (
        mount(Vec3::new(0.1, 0.3, -0.1)),
        mount(Vec3::new(0.05, -0.35, -0.05)),
        mount(Vec3::new(-0.8, 0.2, 0.1)),
        mount(Vec3::new(-0.7, -0.25, 0.0)),
        any::<bool>(),
        (rod(), any::<bool>()),
    );
    (mass(), corners, loading()).prop_map(|(mass, (a, b, c, d, four, (rod, tied)), loading)| {
        let mut mounts = vec![a, b, c];
        if four {
            mounts.push(d);
        }
        if tied {
            mounts.push(rod);
        }
        RandomBuild {
            loading: loading.plus(&Loading::weight(mass.mass())),
            mass,
            mounts,
        }
    })
}

/// Runs a property on a fixed sequence of random inputs.
pub(crate) fn for_all<S: Strategy>(
    cases: u32,
    seed: u8,
    strategy: &S,
    property: impl Fn(S::Value),
) {
    let config = Config {
        cases,
        failure_persistence: None,
        ..Config::default()
    };
    let rng = TestRng::from_seed(RngAlgorithm::ChaCha, &[seed; 32]);
    TestRunner::new_with_rng(config, rng)
        .run(strategy, |value| {
            property(value);
            Ok(())
        })
        .unwrap();
}
