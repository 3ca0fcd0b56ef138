//! A small build with every kind of trouble in its results, for the tests of the writers.
//!
//! Numbers are invented and need not obey mechanics: a writer must not care.

use std::sync::Arc;

use nalgebra::{Rotation3, UnitQuaternion};

use crate::model::criteria::Criteria;
use crate::model::drivetrain::{Cycle, Driveline, Engine, Gear, Output};
use crate::model::isolator::rates::Rates;
use crate::model::isolator::{Isolator, IsolatorState, LawPoint};
use crate::model::load::{Drive, LoadCase, LoadClass, LoadOrigin};
use crate::model::mass::{MassProperties, Shape};
use crate::model::mount::Mount;
use crate::model::part::Part;
use crate::model::surroundings::{Clearance, Driven, Point, Vehicle};
use crate::model::{Assumption, Fitted, Model};
use crate::rigid::axes::{ElasticAxes, ElasticAxis};
use crate::rigid::equilibrium::{MountState, StaticEquilibrium, StaticsFailure};
use crate::rigid::modes::{ModalSolution, Mode};
use crate::spatial::{Mat3, Mat6, Pose, Vec3, Vec6, Wrench};
use crate::study::check::{Check, Sense, Verdict};
use crate::study::{Axes, Envelope, Evaluation, Idle, LoadResult, ModesAt};
use crate::units::show::Shown;

/// A name that must stay text on a page.
pub(crate) const HOSTILE_PART: &str = "<script>alert('x')</script>";
/// A name that a careless table splits.
pub(crate) const COMMA_MOUNT: &str = "front left, \"upper\"";
/// Deflection of that mount along w at rest [m].
pub(crate) const DEFLECTION_W: f64 = -3.14e-3;
/// The case without a position.
pub(crate) const FAILED_LOAD: &str = "launch in first";

/// The build and its results.
pub(crate) fn build() -> (Model, Evaluation) {
    let model = model();
    let evaluation = Evaluation {
        loads: vec![
            solved(0, vec![0, 1, 2], 2130.0),
            failed(1),
            solved(2, vec![0, 1], 1720.0),
        ],
        modes: vec![modes(0)],
        axes: Some(axes()),
        envelopes: vec![envelope()],
        idle: Some(Idle {
            order: 2.0,
            frequency_hz: 26.0,
        }),
        checks: checks(),
    };
    (model, evaluation)
}

/// Puts numbers that are not finite wherever an analysis could leave one.
pub(crate) fn spoil_numbers(evaluation: &mut Evaluation) {
    for result in &mut evaluation.loads {
        result.applied.force.x = f64::NAN;
        result.gaps.fill(Some(f64::INFINITY));
        if let Ok(found) = &mut result.outcome {
            found.residual = f64::INFINITY;
            found.displacement.z = f64::NAN;
            for mount in &mut found.mounts {
                mount.force_on_powertrain.y = f64::NEG_INFINITY;
                mount.isolator_deflection.z = f64::NAN;
            }
        }
    }
    for at in &mut evaluation.modes {
        for mode in &mut at.solution.modes {
            mode.frequency_hz = f64::NAN;
            mode.mount_strain_share.fill(f64::NAN);
        }
    }
    for check in &mut evaluation.checks {
        check.value = Some(f64::NAN);
        check.utilisation = Some(f64::INFINITY);
        check.uncertainty = f64::NAN;
    }
}

fn model() -> Model {
    let body = |mass: f64, at: Vec3| {
        MassProperties::new(mass, at, Mat3::from_diagonal(&Vec3::new(8.0, 15.0, 13.0))).unwrap()
    };
    let engine = body(180.0, Vec3::new(-0.15, 0.005, 0.18));
    let hostile = body(41.3, Vec3::new(-0.85, 0.0, 0.05));
    let mut soft = Isolator::new(
        "wedge",
        "rates",
        Arc::new(Rates {
            rates: Vec3::new(95e3, 95e3, 330e3),
        }),
    );
    soft.limits = [Some(6e-3), None, Some(7e-3)];
    let mount = |name: &str, x: f64, y: f64| Mount {
        name: name.to_owned(),
        at: Vec3::new(x, y, 0.06),
        axes: Mat3::identity(),
        isolator: 0,
        compliance: Mat3::identity() * 2.5e-8,
        bracket: Some(Vec3::repeat(4e7)),
        chassis: None,
    };
    let mut launch = LoadCase::new(FAILED_LOAD, LoadClass::Durability, LoadOrigin::File);
    launch.vehicle_acceleration = Some(Vec3::new(3.92, 0.0, 0.0));
    launch.drive = Some(Drive::Gear {
        gear: 0,
        throttle: 1.0,
    });
    launch.factor = 1.6;
    launch.grip_limited = true;
    let mut service = LoadCase::new("gearbox out", LoadClass::Service, LoadOrigin::Usual);
    service.without_parts = vec![1];
    service.without_mounts = vec![2];
    Model {
        title: "Forestry pickup & <winch>".to_owned(),
        notes: Some("Diesel on a ladder frame".to_owned()),
        origin: "the centre of the front axle".to_owned(),
        fitted: Fitted::Free,
        vehicle: Some(Vehicle {
            mass: 1720.0,
            wheelbase: 2.85,
            centre_of_gravity: Vec3::new(-1.32, 0.0, 0.25),
            front_axle: Vec3::zeros(),
            tyre_radius: 0.356,
            tyre_grip: 0.9,
            driven: Driven::Rear,
        }),
        mass: MassProperties::combine([&engine, &hostile]).unwrap(),
        parts: vec![
            part("engine", engine, None),
            part(HOSTILE_PART, hostile, Some(0.8)),
        ],
        engine: Some(Engine {
            cycle: Cycle::FourStroke { cylinders: 4 },
            crank_direction: -Vec3::x(),
            crank_at: Some(Vec3::zeros()),
            torque: Some(320.0),
            idle: Some(81.7),
            redline: None,
        }),
        driveline: Some(Driveline {
            output: Output::Propshaft,
            output_direction: -Vec3::x(),
            gears: vec![Gear {
                name: "1".to_owned(),
                ratio: 4.12,
            }],
            final_drive: 3.73,
            efficiency: 0.95,
        }),
        isolators: vec![soft],
        mounts: vec![
            mount(COMMA_MOUNT, -0.1, 0.3),
            mount("front right", -0.1, -0.3),
            mount("rear", -1.05, 0.0),
        ],
        loads: vec![
            LoadCase::new(LoadCase::AT_REST, LoadClass::Service, LoadOrigin::AtRest),
            launch,
            service,
        ],
        modes_at: vec![0],
        points: vec![Point {
            name: "fan tip".to_owned(),
            at: Vec3::new(0.26, 0.0, 0.33),
            part: None,
        }],
        clearances: vec![Clearance {
            name: "fan to radiator".to_owned(),
            point: 0,
            toward: Vec3::x(),
            gap: 0.03,
            keep: 0.012,
        }],
        criteria: Criteria::default(),
        assumptions: vec![Assumption {
            key: "mount[2].w".to_owned(),
            text: "main axis taken as up".to_owned(),
        }],
    }
}

fn part(name: &str, mass: MassProperties, fill: Option<f64>) -> Part {
    Part {
        name: name.to_owned(),
        mass,
        shape: fill.map(|_| Shape::Box {
            size: Vec3::new(0.7, 0.3, 0.3),
        }),
        fill,
        turned: Rotation3::identity(),
    }
}

fn solved(load: usize, mounts: Vec<usize>, weight: f64) -> LoadResult {
    let applied = Wrench {
        force: Vec3::new(0.0, 0.0, -weight),
        moment: Vec3::zeros(),
    };
    let centre = Vec3::new(-0.3, 0.0, 0.15);
    let displacement = Vec3::new(0.3e-3, 0.0, -3.1e-3);
    let rotation = UnitQuaternion::from_scaled_axis(Vec3::new(0.001, 0.004, 0.0));
    let states = [0.44, 0.37, 0.19]
        .into_iter()
        .take(mounts.len())
        .map(|share| mount_state(share * weight))
        .collect();
    LoadResult {
        load,
        output_torque: None,
        grip_cap: None,
        applied,
        mounts,
        outcome: Ok(equilibrium(centre, displacement, rotation, states, applied)),
        points: vec![Some(Vec3::new(0.9e-3, 0.0, -2.0e-3))],
        gaps: vec![Some(0.0287)],
    }
}

fn equilibrium(
    centre: Vec3,
    displacement: Vec3,
    rotation: UnitQuaternion<f64>,
    mounts: Vec<MountState>,
    applied: Wrench,
) -> StaticEquilibrium {
    StaticEquilibrium {
        pose: Pose {
            position: centre + displacement,
            rotation,
        },
        displacement,
        rotation,
        mounts,
        applied,
        residual: 1.2e-9,
        iterations: 5,
        tangent: Mat6::identity(),
        geometric: Mat6::zeros(),
        barely_held: Vec::new(),
        held_by_weight_only: Vec::new(),
    }
}

fn mount_state(up: f64) -> MountState {
    let deflection = Vec3::new(0.2e-3, -0.1e-3, DEFLECTION_W);
    MountState {
        deflection,
        isolator_deflection: deflection,
        force_on_powertrain: Vec3::new(1.0, -2.0, up),
        arm: Vec3::new(0.2, 0.3, -0.1),
        rate: Mat3::from_diagonal(&Vec3::new(95e3, 95e3, 330e3)),
        on_stop: [false, false, true],
        energy: 1.5,
        isolator: IsolatorState {
            point: LawPoint {
                force: Vec3::new(0.0, 0.0, -up),
                tangent: Mat3::identity() * 330e3,
                energy: 1.4,
            },
            stop_tangent: Vec3::zeros(),
            on_stop: [false, false, true],
        },
    }
}

fn failed(load: usize) -> LoadResult {
    LoadResult {
        load,
        output_torque: Some(2110.0),
        grip_cap: Some(2500.0),
        applied: Wrench::zero(),
        mounts: vec![0, 1, 2],
        outcome: Err(StaticsFailure::NotConverged {
            reached_share: 0.4,
            residual: 12.0,
            worst_mount: "rear".to_owned(),
            iterations: 60,
        }),
        points: vec![None],
        gaps: vec![None],
    }
}

fn modes(load: usize) -> ModesAt {
    let names = [
        "fore-aft",
        "lateral",
        "bounce",
        "pitch + bounce",
        "roll",
        "yaw",
    ];
    let modes = names
        .into_iter()
        .enumerate()
        .map(|(place, name)| {
            let mut energy_share = Vec6::repeat(0.02);
            energy_share[place] = 0.9;
            Mode {
                frequency_hz: 5.3 + 1.7 * place as f64,
                growth_rate: (place == 0).then_some(0.7),
                damping_ratio: 0.045,
                shape: energy_share,
                energy_share,
                mount_strain_share: vec![0.4, 0.35, 0.27],
                geometric_strain_share: -0.02,
                name: name.to_owned(),
            }
        })
        .collect();
    ModesAt {
        load,
        solution: ModalSolution {
            modes,
            mass: Mat6::identity(),
            stiffness: Mat6::identity(),
            loss: Mat6::zeros(),
            skew_ratio: 0.0,
        },
        torque_share: Some([0.0, 0.1, 0.0, 0.1, 0.7, 0.1]),
    }
}

fn axes() -> Axes {
    let axis = |direction: Vec3| ElasticAxis {
        direction,
        through: Vec3::new(-0.4, 0.0, 0.02),
        pitch: 0.003,
    };
    Axes {
        torque_roll: Some(Vec3::new(-0.99, 0.0, 0.12).normalize()),
        centre_of_gravity: Vec3::new(-0.3, 0.0, 0.147),
        elastic: ElasticAxes {
            axes: [axis(Vec3::x()), axis(Vec3::y()), axis(Vec3::z())],
            stiffness_centre: Vec3::new(-0.4, 0.0, 0.02),
            compliance_centre: Vec3::new(-0.41, 0.0, 0.02),
            is_centre: false,
        },
        torque_roll_from_crank: Some(0.083),
        elastic_centre_from_crank: None,
    }
}

fn envelope() -> Envelope {
    Envelope {
        least: Vec3::new(-1e-3, -2e-3, -8e-3),
        most: Vec3::new(9e-3, 2e-3, 1e-3),
        least_at: [0, 2, 0],
        most_at: [2, 2, 2],
    }
}

fn checks() -> Vec<Check> {
    let check = |id: &str, verdict: Verdict, used: Option<f64>| Check {
        id: id.to_owned(),
        title: format!("check {id}"),
        load: Some(0),
        value: used.map(|u| u * 0.01),
        limit: used.map(|_| 0.01),
        sense: Sense::AtMost,
        unit: Shown::Millimetre,
        utilisation: used,
        uncertainty: 0.4e-3,
        verdict,
        basis: "common practice".to_owned(),
        note: (verdict == Verdict::NotChecked).then(|| "the file has no idle speed".to_owned()),
        cure: (verdict == Verdict::Fails).then(|| "a rate 30 % higher along w".to_owned()),
    };
    vec![
        check("sag.rear", Verdict::Fails, Some(1.3)),
        check("sag.front-left", Verdict::Fails, Some(1.1)),
        check("clearance.fan-to-radiator", Verdict::Close, Some(0.97)),
        check("idle.ratio", Verdict::NotChecked, None),
        check("share.rear", Verdict::Ok, Some(0.5)),
        check("share.front-left", Verdict::Ok, Some(0.3)),
    ]
}
