//! Isolators of kinds `bush` and `rod` as a file describes them.

use bedplate::model::isolator::bush::Bush;
use bedplate::model::isolator::rubber::Moduli;
use bedplate::model::isolator::{Isolator, strain::StrainMeasure};
use bedplate::spatial::{Mat3, Vec3};

use crate::kit::{assert_close, four_mounts_and, model};

const SIZES: &str = "{ inner = \"16 mm\", outer = \"32 mm\", length = \"40 mm\" }";
const OTHER: &str = "{ inner = \"10 mm\", outer = \"40 mm\", length = \"30 mm\" }";

/// What 55 IRHD of natural rubber stands for: Lindley, Engineering Design with Natural Rubber, Table 3.
const MODULI: Moduli = Moduli {
    youngs: 3.25e6,
    shear: 0.81e6,
    shape: 0.64,
    bulk: 1.09e9,
};

fn sizes(inner: f64, outer: f64, length: f64) -> Bush {
    Bush {
        inner: inner * 1e-3,
        outer: outer * 1e-3,
        length: length * 1e-3,
    }
}

/// The isolator that a file with these keys describes.
fn isolator(keys: &str) -> Isolator {
    let model = model(&four_mounts_and(&format!("[isolator.tried]\n{keys}")));
    let found = model.isolators.into_iter().find(|one| one.name == "tried");
    found.unwrap()
}

fn bush(more: &str) -> Isolator {
    isolator(&format!(
        "kind = \"bush\"\nbush = {SIZES}\nhardness = \"55 IRHD\"\n{more}"
    ))
}

fn rod(more: &str) -> Isolator {
    isolator(&format!(
        "kind = \"rod\"\nbush = {SIZES}\nhardness = \"55 IRHD\"\n{more}"
    ))
}

fn rates(isolator: &Isolator) -> Mat3 {
    isolator.at(&Vec3::zeros()).point.tangent
}

/// Cross-checked: finite elements with the same moduli give 2215 N/mm across and 180.1 N m/rad tilted.
/// Along w derived by hand, 2 π · 0.81 · (40 − 0.23 · 8)/ln 2 = 280.2 N/mm; about w 4 π · 0.81 · 40 ·
/// 64 · 256/192 = 34 744 N mm/rad.
#[test]
fn bush_has_the_rates_of_its_sizes_and_hardness() {
    let bush = bush("");
    let rates = rates(&bush);
    assert_close(
        "across",
        &[rates[(0, 0)], rates[(1, 1)]],
        &[2215e3; 2],
        0.06,
        0.0,
    );
    assert_close("along", &[rates[(2, 2)]], &[280.2e3], 5e-3, 0.0);
    let off = rates - Mat3::from_diagonal(&rates.diagonal());
    assert_close("uncoupled", &[off.amax()], &[0.0], 0.0, 0.0);
    let tilted = [bush.rotational.x, bush.rotational.y];
    assert_close("tilted", &tilted, &[180.08; 2], 1e-2, 0.0);
    assert_close("about w", &[bush.rotational.z], &[34.744], 1e-4, 0.0);
    assert!(!bush.is_rod);
    assert_eq!(bush.strain, Some(StrainMeasure::Bush { wall: 8e-3 }));
}

/// Derived: voids along u leave their share of the rate along u, and of that about v.
#[test]
fn voids_take_their_share() {
    let (whole, cut) = (bush(""), bush("voids = \"0.4, 0.9, 0.8\""));
    let (before, after) = (rates(&whole), rates(&cut));
    for (axis, share) in [0.4, 0.9, 0.8].into_iter().enumerate() {
        let expected = before[(axis, axis)] * share;
        assert_close(axis, &[after[(axis, axis)]], &[expected], 1e-14, 0.0);
    }
    let expected = whole.rotational.component_mul(&Vec3::new(0.9, 0.4, 0.8));
    assert_close(
        "turned",
        cut.rotational.as_slice(),
        expected.as_slice(),
        1e-14,
        0.0,
    );
    assert!(
        cut.remarks
            .iter()
            .any(|remark| remark.contains("void closes"))
    );
    assert!(!whole.remarks.iter().any(|remark| remark.contains("void")));
}

/// Derived: measured rates stand in place of those of the formula.
#[test]
fn measured_rates_are_taken_as_they_are() {
    let bush = bush("measured_rates = \"400, 300, 100 N/mm\"");
    let found = rates(&bush).diagonal();
    assert_close("bush", found.as_slice(), &[400e3, 300e3, 100e3], 1e-14, 0.0);
    let rod = rod("measured_rates = \"0, 0, 900 N/mm\"");
    let found = rates(&rod).diagonal();
    assert_close("rod", found.as_slice(), &[0.0, 0.0, 900e3], 1e-14, 0.0);
}

/// Derived: two equal springs one behind the other have half the rate; two others 1/k = 1/k₁ + 1/k₂.
#[test]
fn rod_is_two_bushes_one_behind_the_other() {
    let (near, far) = (sizes(16.0, 32.0, 40.0), sizes(10.0, 40.0, 30.0));
    let [near, far] = [near, far].map(|bush| bush.rates(&MODULI).x);
    let equal = rates(&rod(""))[(2, 2)];
    assert_close("equal", &[equal], &[near / 2.0], 1e-12, 0.0);
    let other = rod(&format!("far_bush = {OTHER}"));
    let along = rates(&other)[(2, 2)];
    assert_close(
        "other",
        &[1.0 / along],
        &[1.0 / near + 1.0 / far],
        1e-12,
        0.0,
    );
    let measured = isolator("kind = \"rod\"\nrates = \"800 N/mm\"");
    assert_close(
        "measured",
        &[rates(&measured)[(2, 2)]],
        &[800e3],
        1e-14,
        0.0,
    );
}

/// Derived: both ends are held by a pin, so nothing but pulling and pushing passes.
#[test]
fn rod_acts_along_its_line_only() {
    for rod in [rod(""), isolator("kind = \"rod\"\nrates = \"800 N/mm\"")] {
        assert!(rod.is_rod);
        let state = rod.at(&Vec3::new(7e-3, -9e-3, 0.0)).point;
        assert_close("across", state.force.as_slice(), &[0.0; 3], 0.0, 0.0);
        assert_close("energy", &[state.energy], &[0.0], 0.0, 0.0);
        let along = state.tangent[(2, 2)];
        assert!(along > 0.0);
        let rest = state.tangent - Mat3::from_diagonal(&Vec3::new(0.0, 0.0, along));
        assert_close("rows", &[rest.amax()], &[0.0], 0.0, 0.0);
        assert_close("turned", rod.rotational.as_slice(), &[0.0; 3], 0.0, 0.0);
        // Pulled apart it holds with a force along w, pushed together against it.
        assert!(rod.at(&Vec3::new(0.0, 0.0, 1e-3)).point.force.z > 0.0);
        assert!(rod.at(&Vec3::new(0.0, 0.0, -1e-3)).point.force.z < 0.0);
    }
}

/// Derived: the force passes both eyes, each is pushed by its force over its rate.
#[test]
fn worse_eye_of_a_rod_tells_its_strain() {
    let (near, far) = (sizes(16.0, 32.0, 40.0), sizes(10.0, 40.0, 30.0));
    let rod = rod(&format!("far_bush = {OTHER}"));
    let x = Vec3::new(2e-3, 0.0, -3e-3);
    let force = -rod.at(&x).point.force.z;
    let each = [near, far].map(|bush| force / bush.rates(&MODULI).x / bush.wall());
    let strains = rod.strain.unwrap().at(&x);
    let worse = each[0].max(each[1]);
    assert!((each[0] / each[1] - 1.0).abs() > 0.1, "{each:?}");
    assert_close("strain", &[strains.compression], &[worse], 1e-12, 0.0);
    assert_close(
        "others",
        &[strains.shear, strains.tension],
        &[0.0; 2],
        0.0,
        0.0,
    );
}

/// Derived: beyond its travel the stop adds to the rod, along its line.
#[test]
fn stops_of_a_rod_act_along_its_line() {
    let rod = rod("stops = { w = [\"-5 mm\", \"8 mm\"], rate = \"4 kN/mm\", blend = \"0.4 mm\" }");
    let rate = rates(&rod)[(2, 2)];
    let state = rod.at(&Vec3::new(20e-3, 0.0, -6e-3));
    assert_eq!(state.on_stop, [false, false, true]);
    let expected = -rate * 6e-3 - 4e6 * 0.8e-3;
    assert_close("pushed", &[state.point.force.z], &[expected], 1e-12, 0.0);
}

/// Derived: force is the gradient of the energy, the tangent that of the force, by central differences.
#[test]
fn laws_come_from_one_potential() {
    for isolator in [bush("voids = \"0.4, 0.9, 1\""), rod("")] {
        let x = Vec3::new(1.3e-3, -0.7e-3, 2.1e-3);
        let here = isolator.at(&x).point;
        let h = 1e-6;
        for axis in 0..3 {
            let mut step = Vec3::zeros();
            step[axis] = h;
            let (after, before) = (
                isolator.at(&(x + step)).point,
                isolator.at(&(x - step)).point,
            );
            let slope = (after.energy - before.energy) / (2.0 * h);
            assert_close("force", &[slope], &[here.force[axis]], 1e-8, 1e-7);
            let slope = (after.force - before.force) / (2.0 * h);
            let column = here.tangent.column(axis).into_owned();
            assert_close("tangent", slope.as_slice(), column.as_slice(), 1e-8, 1e-3);
        }
    }
}

/// What may mislead stands in the remarks: the trap formula, the confined rubber, an odd shape, the eyes.
#[test]
fn remarks_say_what_to_keep_in_mind() {
    let says =
        |isolator: &Isolator, text: &str| isolator.remarks.iter().any(|one| one.contains(text));
    let ordinary = bush("");
    assert!(
        says(&ordinary, "would give 2.0 times the rate"),
        "{:?}",
        ordinary.remarks
    );
    assert!(says(
        &ordinary,
        "outer over inner 2.00, length over wall 5.00"
    ));
    assert!(says(&ordinary, "1.2 mm steadily"));
    assert!(!says(&ordinary, "measure it") && !says(&ordinary, "own compression"));
    let thin = isolator(
        "kind = \"bush\"\nbush = { inner = \"60 mm\", outer = \"66 mm\", length = \"60 mm\" }\nhardness = \"55 IRHD\"",
    );
    assert!(
        says(&thin, "measure it") && says(&thin, "own compression"),
        "{:?}",
        thin.remarks
    );
    // 34.744 N m/rad is 0.61 N m/deg.
    assert!(says(&rod(""), "0.61 N m/deg"), "{:?}", rod("").remarks);
    for isolator in [ordinary, thin, rod(&format!("far_bush = {OTHER}"))] {
        for remark in &isolator.remarks {
            assert!(!remark.ends_with('.') && !remark.contains('\n'), "{remark}");
            assert!(
                remark.starts_with(|c: char| c.is_uppercase() || c == '`'),
                "{remark}"
            );
        }
    }
}

/// Derived: one number is the rate along the rod, which knows no other direction; the ratio in
/// vibration is 800/500.
#[test]
fn one_measured_rate_is_that_along_the_rod() {
    let keys = |measured: &str, dynamic: &str| {
        rod(&format!(
            "measured_rates = \"{measured}\"\ndynamic_rates = \"{dynamic}\""
        ))
    };
    for part in [
        keys("500 N/mm", "800 N/mm"),
        keys("0, 0, 500 N/mm", "0, 0, 800 N/mm"),
    ] {
        let rates = [0, 1, 2].map(|axis| part.free_rate(axis));
        assert_close("rates", &rates, &[0.0, 0.0, 500e3], 1e-12, 0.0);
        assert_close("ratio", &[part.dynamics.ratio.z], &[1.6], 1e-12, 0.0);
    }
}
