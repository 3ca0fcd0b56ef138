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

/// Isolators of every kind, as the file describes them.
const ISOLATORS: &str = r#"
[isolator.rates]
kind = "rates"
rates = "120, 90, 260 N/mm"
rotational_rates = "30, 30, 12 N m/deg"
stiffening = { w = ["-4 mm", "5 mm"], rate = "500 N/mm" }
stops = { w = ["-10 mm", "9 mm"], u = ["-12 mm", "12 mm"], rate = "3, 3, 5 kN/mm" }

[isolator.block]
kind = "block"
hardness = "50 IRHD"
block = "60, 50, 40 mm"
count = 2
inclined = "20 deg"
stops = { w = ["-14 mm", "none"] }

[isolator.bush]
kind = "bush"
hardness = "50 IRHD"
bush = { inner = "20 mm", outer = "56 mm", length = "40 mm" }
voids = "0.5, 1, 1"

[isolator.curve]
kind = "curve"
curve = { w = [["0 mm", "0 N"], ["2 mm", "420 N"], ["5 mm", "1300 N"], ["8 mm", "3100 N"]] }
rates = "80, 80, 0 N/mm"

[isolator.rod]
kind = "rod"
rates = "450 N/mm"
stops = { w = ["-9 mm", "9 mm"] }

[isolator.hydraulic]
kind = "hydraulic"
rates = "110, 90, 190 N/mm"
track = { upper = "210 N/mm", lower = "3 N/mm", mass = "18 kg", damping = "500 N s/m" }

[isolator.polyurethane]
kind = "polyurethane"
hardness = "70 Shore A"
cylinder = { diameter = "50 mm", height = "30 mm" }
stops = { w = ["none", "8 mm"] }

[isolator.solid]
kind = "solid"
puck = { diameter = "30 mm", height = "60 mm", youngs_modulus = "40 MPa" }
"#;

/// Name of the isolator, its place \[mm\], its main axis.
const MOUNTS: [(&str, [f64; 3], &str); 8] = [
    ("rates", [310.0, 280.0, -60.0], "0, -1, 2"),
    ("block", [320.0, -300.0, -70.0], "0, 1, 2"),
    ("bush", [-350.0, 260.0, 20.0], "0, 1, 0.2"),
    ("curve", [-330.0, -270.0, -90.0], "0.1, 0, 1"),
    ("rod", [-120.0, 60.0, -180.0], ""),
    ("hydraulic", [60.0, 330.0, 90.0], "0, 0, 1"),
    ("polyurethane", [-40.0, -310.0, -110.0], "0, 0, 1"),
    ("solid", [10.0, 0.0, -260.0], "0, 0, 1"),
];

/// The build, or its image in the plane between left and right.
fn build(mirrored: bool) -> Model {
    let side = if mirrored { -1.0 } else { 1.0 };
    let mut text = format!(
        "title = \"every kind\"\n[datum]\norigin = \"somewhere\"\nfitted = \"free\"\n\
         [[part]]\nname = \"block\"\nmass = \"240 kg\"\nat = \"10, {}, 30 mm\"\nbox = \"700, 560, 600 mm\"\n{ISOLATORS}",
        side * 12.0
    );
    for (isolator, [x, y, z], w) in MOUNTS {
        let y = side * y;
        text += &format!(
            "[[mount]]\nname = \"{isolator}\"\nat = \"{x}, {y}, {z} mm\"\nisolator = \"{isolator}\"\n"
        );
        if isolator == "rod" {
            text += &format!("rod = {{ to = \"-380, {}, -150 mm\" }}\n", side * 90.0);
            continue;
        }
        let [wx, wy, wz]: [f64; 3] = w
            .split(", ")
            .map(|n| n.parse().unwrap())
            .collect::<Vec<_>>()
            .try_into()
            .unwrap();
        text += &format!(
            "w = \"{wx}, {}, {wz}\"\nbracket = \"20 kN/mm\"\n",
            side * wy
        );
    }
    model(&text)
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
    let least = here.tangent.symmetric_eigenvalues().min();
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
