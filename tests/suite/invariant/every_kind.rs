//! One build on an isolator of every kind: balance from any start, mirror, energy.

use bedplate::model::Model;
use bedplate::model::isolator::Isolator;
use bedplate::rigid::equilibrium::solve_equilibrium;
use bedplate::rigid::loading::Loading;
use bedplate::rigid::mount_response::HeldMount;
use bedplate::rigid::supported::Supported;
use bedplate::spatial::{Mat3, Vec3};
use bedplate::study::evaluate::evaluate;

use super::build::{for_all, vector};
use crate::kit::{assert_close, model};

const BUILD: &str = include_str!("../../../benches/every_kind.toml");

/// The build, or its image in the plane between left and right.
fn build(mirrored: bool) -> Model {
    let lines = BUILD.lines().map(|line| {
        let placed = ["at = ", "w = ", "rod = "];
        if mirrored && placed.iter().any(|key| line.starts_with(key)) {
            with_second_number_turned(line)
        } else {
            line.to_owned()
        }
    });
    model(&lines.collect::<Vec<_>>().join("\n"))
}

/// A line with three numbers, the one across the vehicle with its sign turned.
fn with_second_number_turned(line: &str) -> String {
    let mut parts: Vec<String> = line.split(", ").map(str::to_owned).collect();
    let second = parts[1].parse::<f64>().unwrap();
    parts[1] = (-second).to_string();
    parts.join(", ")
}

fn supported(model: &Model) -> Supported<'_> {
    let held = model.mounts.iter();
    let held = held.map(|mount| HeldMount::fitted_free(mount, &model.isolators[mount.isolator]));
    Supported::new(model.mass, held.collect()).unwrap()
}

/// Any of 200 random loads finds its balance: forces up to three times the weight and
/// moments up to 1.5 kN m, from the unloaded rubber, with residuals at the level of rounding.
#[test]
fn any_load_finds_its_balance() {
    let model = build(false);
    let body = supported(&model);
    let weight = model.mass.mass() * 9.80665;
    let inputs = (vector(3.0 * weight), vector(1500.0));
    for_all(200, 61, &inputs, |(force, moment)| {
        let loading = Loading {
            at_centre: force,
            moment,
            ..Loading::none()
        };
        let found = solve_equilibrium(&body, &loading, None).unwrap();
        assert!(
            found.residual <= 1e-9 * (weight + force.norm()),
            "{found:?}"
        );
        assert!(found.displacement.norm() < 0.06, "{:?}", found.displacement);
    });
}

/// Derived: a mirrored build gives the mirrored answer, whatever its isolators are.
#[test]
fn a_mirrored_build_gives_the_mirrored_answer() {
    let (left, right) = (build(false), build(true));
    let mirror = Mat3::from_diagonal(&Vec3::new(1.0, -1.0, 1.0));
    for_all(24, 62, &(vector(4e3), vector(900.0)), |(force, moment)| {
        let [a, b] = [
            (&left, force, moment),
            (&right, mirror * force, -(mirror * moment)),
        ]
        .map(|(model, at_centre, moment)| {
            let loading = Loading {
                at_centre,
                moment,
                ..Loading::none()
            };
            solve_equilibrium(&supported(model), &loading, None).unwrap()
        });
        let expected = mirror * a.displacement;
        assert_close(
            "shift",
            b.displacement.as_slice(),
            expected.as_slice(),
            0.0,
            1e-10,
        );
        let expected = -(mirror * a.rotation.scaled_axis());
        let found = b.rotation.scaled_axis();
        assert_close("turn", found.as_slice(), expected.as_slice(), 0.0, 1e-10);
    });
}

/// Each isolator with everything its file says: force against the differences of
/// the energy, tangent against those of the force, and the tangent symmetric with no
/// negative direction, within and beyond stops, stiffening and measured range.
#[test]
fn every_kind_has_a_convex_potential() {
    let model = build(false);
    for_all(200, 63, &vector(16e-3), |x| {
        for isolator in &model.isolators {
            follows_its_energy(isolator, &x);
        }
    });
}

fn follows_its_energy(isolator: &Isolator, x: &Vec3) {
    let here = isolator.at(x).point;
    let h = 1e-8;
    let scale = here.tangent.amax();
    for axis in 0..3 {
        let mut step = Vec3::zeros();
        step[axis] = h;
        let [there, before] = [x + step, x - step].map(|x| isolator.at(&x).point);
        let slope = (there.energy - before.energy) / (2.0 * h);
        assert_close(&isolator.name, &[slope], &[here.force[axis]], 1e-6, 0.02);
        let slope = (there.force - before.force) / (2.0 * h);
        let column = here.tangent.column(axis).into_owned();
        assert_close(
            &isolator.name,
            slope.as_slice(),
            column.as_slice(),
            1e-5,
            1e-4 * scale,
        );
    }
    let asymmetry = (here.tangent - here.tangent.transpose()).amax();
    assert!(asymmetry <= 1e-9 * scale, "{}: {asymmetry}", isolator.name);
    let symmetric = (here.tangent + here.tangent.transpose()) * 0.5;
    let least = bedplate::numeric::symmetric_eigen3(&symmetric)
        .unwrap()
        .values[0];
    assert!(least >= -1e-9 * scale, "{}: {least}", isolator.name);
}

/// Round a closed path no work is left, for every kind.
#[test]
fn a_closed_path_does_no_work() {
    let model = build(false);
    let corners = [
        [0.0, 0.0, 0.0],
        [6e-3, 2e-3, -8e-3],
        [-4e-3, 7e-3, 5e-3],
        [3e-3, -6e-3, 9e-3],
    ];
    for isolator in &model.isolators {
        let (mut work, mut spent) = (0.0, 0.0);
        for (place, from) in corners.iter().enumerate() {
            let from = Vec3::from(*from);
            let to = Vec3::from(corners[(place + 1) % corners.len()]);
            const PARTS: u32 = 4000;
            for part in 0..PARTS {
                let share = (f64::from(part) + 0.5) / f64::from(PARTS);
                let force = isolator.at(&(from + (to - from) * share)).point.force;
                let step = force.dot(&(to - from)) / f64::from(PARTS);
                work += step;
                spent += step.abs();
            }
        }
        assert!(
            work.abs() <= 1e-5 * spent,
            "{}: {work} of {spent}",
            isolator.name
        );
    }
}

/// The whole evaluation of such a build runs, and every load case of the usual set has a position.
#[test]
fn a_build_of_every_kind_is_evaluated() {
    let evaluation = evaluate(&build(false)).unwrap();
    for load in &evaluation.loads {
        assert!(load.outcome.is_ok(), "{load:?}");
    }
}
