//! VDI 2230 part 1, 2003, systematic calculation of bolted joints; where said, the edition of 1986.
//!
//! Label: from memory of these works.

use bedplate::model::fastener::{Grade, Lubrication, Thread, Tightening};
use bedplate::strength::bolt::embedding::{Loading, Roughness, flattening};
use bedplate::strength::bolt::fatigue::{Rolled, limit};
use bedplate::strength::bolt::head::PRESSURE_LIMITS;
use bedplate::strength::bolt::tightening::{
    Friction, USUAL_SHARE, friction_diameter, permissible_preload, scatter_of_deviation, torque,
};

use crate::kit::assert_close;

/// Assembly preload in kN and torque in N m.
fn tightened(thread: &str, grade: &str, friction: f64) -> [f64; 2] {
    let size = Thread::find(thread).unwrap();
    let limits = Grade::find(grade).unwrap().limits(size.nominal).unwrap();
    let preload = permissible_preload(&size, limits.yield_strength, friction, USUAL_SHARE);
    let diameter = friction_diameter(size.head_bearing, size.hole);
    let torque = torque(&size, diameter, preload, Friction::same(friction));
    [preload * 1e-3, torque]
}

/// From memory of the tables of assembly preload and torque. They come out with the even spread
/// of twist only: with the elastic section the preloads fall short by 6 %.
#[test]
fn assembly_preloads_and_torques() {
    for (thread, grade, friction, preload, torque, relative) in [
        ("M6", "8.8", 0.12, 10.2, 10.1, [5e-3, 1.5e-2]),
        ("M8", "8.8", 0.12, 18.6, 24.6, [5e-3, 1.5e-2]),
        ("M10", "8.8", 0.12, 29.6, 48.0, [5e-3, 1.5e-2]),
        ("M12", "8.8", 0.12, 43.0, 84.0, [5e-3, 1.5e-2]),
        ("M16", "8.8", 0.12, 80.9, 206.0, [5e-3, 1.5e-2]),
        ("M10x1.25", "8.8", 0.12, 31.6, 51.0, [5e-3, 1.5e-2]),
        ("M10", "A2-70", 0.20, 18.5, 47.7, [3e-2, 3e-2]),
    ] {
        let [found_preload, found_torque] = tightened(thread, grade, friction);
        let what = (thread, grade);
        assert_close(what, &[found_preload], &[preload], relative[0], 0.0);
        assert_close(what, &[found_torque], &[torque], relative[1], 0.0);
    }
}

/// From memory of table A5: the friction classes.
#[test]
fn friction_classes() {
    for (name, class, low, high) in [
        ("solid film", 'A', 0.04, 0.10),
        ("greased", 'B', 0.08, 0.16),
        ("as delivered", 'C', 0.14, 0.24),
        ("stainless, oiled", 'D', 0.20, 0.35),
    ] {
        let state = Lubrication::find(name).unwrap();
        assert_eq!(state.class, class);
        assert_close(
            name,
            &[state.friction.low, state.friction.high],
            &[low, high],
            1e-12,
            0.0,
        );
    }
    assert_close(
        "E",
        &[Lubrication::find("stainless, dry").unwrap().friction.low],
        &[0.30],
        1e-12,
        0.0,
    );
}

/// From memory of table A8; the edition of 1986 gives ± 17 to 23 % for a torque wrench with
/// measured friction, which is the same band (derived: (1 + x)/(1 − x)).
#[test]
fn scatter_of_tightening() {
    let greased = Lubrication::find("greased").unwrap();
    for (name, low, high) in [
        ("angle", 1.2, 1.4),
        ("torque wrench with measured friction", 1.4, 1.6),
        ("torque wrench", 1.6, 2.0),
        ("impact wrench", 2.5, 4.0),
    ] {
        let band = Tightening::find(name).unwrap().scatter(&greased);
        assert_close(name, &[band.low, band.high], &[low, high], 1e-12, 0.0);
    }
    let older = [0.17, 0.23].map(scatter_of_deviation);
    assert_close("1986", &older, &[1.4, 1.6], 1e-2, 0.0);
}

/// From memory of table 5: threads, two head faces and one inner face, in µm.
#[test]
fn flattening_of_rough_faces() {
    for (roughness, axial, shear) in [
        (Roughness::Fine, 3.0 + 5.0 + 1.5, 3.0 + 6.0 + 2.0),
        (Roughness::Medium, 3.0 + 6.0 + 2.0, 3.0 + 9.0 + 2.5),
        (Roughness::Coarse, 3.0 + 8.0 + 3.0, 3.0 + 13.0 + 3.5),
    ] {
        let found = [Loading::Axial, Loading::Shear]
            .map(|loading| flattening(roughness, loading, 2, 1) * 1e6);
        assert_close(roughness, &found, &[axial, shear], 1e-12, 0.0);
    }
}

/// From memory of section 5.5.3, MPa, rolled before heat treatment; after, at 0.6 of yield, 1.4
/// times that (derived). A twentieth of the cycles: 20^(1/3) and 20^(1/6) times (derived).
#[test]
fn lasting_amplitudes() {
    for (diameter, expected) in [
        (6.0, 59.5),
        (8.0, 54.2),
        (10.0, 51.0),
        (12.0, 48.9),
        (14.0, 47.4),
        (16.0, 46.2),
    ] {
        let found = limit(diameter * 1e-3, Rolled::BeforeHeatTreatment, 5e6);
        assert_close(diameter, &[found], &[expected * 1e6], 1e-3, 0.0);
    }
    let after = Rolled::AfterHeatTreatment(0.6);
    assert_close("after", &[limit(0.01, after, 1e9)], &[71.4e6], 1e-9, 0.0);
    assert_close(
        "1e5 cycles",
        &[
            limit(0.01, Rolled::BeforeHeatTreatment, 1e5),
            limit(0.01, after, 1e5),
        ],
        &[138.435_298e6, 117.634_997e6],
        1e-6,
        0.0,
    );
}

/// From memory of the lists of 1986 and 2003, MPa: the older one, for bare walls, is the stricter.
#[test]
fn pressures_under_the_head() {
    let found = PRESSURE_LIMITS
        .iter()
        .find(|limit| limit.material == "S235")
        .unwrap();
    assert_close(
        "S235",
        &[found.wall.unwrap(), found.thick],
        &[260e6, 490e6],
        1e-12,
        0.0,
    );
    for limit in PRESSURE_LIMITS {
        assert!(
            limit.wall.is_none_or(|wall| wall < limit.thick),
            "{limit:?}"
        );
    }
}
