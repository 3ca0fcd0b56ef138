//! EN 1993-1-1:2005 and EN 1993-1-8:2005: members, hollow-section joints, bolts in plates.
//!
//! Label: formulas from memory of those standards, the numbers worked by hand or computed
//! independently from them.

use bedplate::strength::column::{Curve, reduction};
use bedplate::strength::plate::bearing::{self, Hole};
use bedplate::strength::plate::edge_distance;
use bedplate::strength::rail::side_wall::Loading;
use bedplate::strength::rail::{BoxRail, Patch, face, plate_on_face, punching, side_wall};

use crate::kit::assert_close;

/// 50x50x3.
const RAIL: BoxRail = BoxRail {
    face: 50e-3,
    height: 50e-3,
    wall: 3e-3,
};

const S235: f64 = 235e6;

fn patch(length: f64, width: f64) -> Patch {
    Patch {
        length: length * 1e-3,
        width: width * 1e-3,
    }
}

/// From memory: tables of the reduction factor, four digits as printed.
#[test]
fn reduction_factors_of_columns() {
    for (curve, expected) in [
        (Curve::A, [0.9243, 0.6656, 0.2229]),
        (Curve::B, [0.8842, 0.5970, 0.2095]),
        (Curve::C, [0.8430, 0.5399, 0.1962]),
        (Curve::D, [0.7793, 0.4671, 0.1766]),
    ] {
        let found = [0.5, 1.0, 2.0].map(|slenderness| reduction(slenderness, curve));
        assert_close(curve, &found, &expected, 0.0, 6e-5);
        let stocky = [0.0, 0.1, 0.2].map(|slenderness| reduction(slenderness, curve));
        assert_close(curve, &stocky, &[1.0; 3], 1e-12, 0.0);
    }
}

/// Computed independently: 200x200x8 of S355, patch 100 wide and 200 long, 219 404 N; 50x50x3 of
/// S235, 20 mm square, 13 742 N.
#[test]
fn face_of_a_rail_collapses() {
    let large = BoxRail {
        face: 0.2,
        height: 0.2,
        wall: 8e-3,
    };
    let found = face::strength(&large, &patch(200.0, 100.0), 355e6, 1.0);
    assert_close("200", &[found.force], &[219_404.0], 1e-5, 0.0);
    assert!(found.outside.is_empty());
    let found = face::strength(&RAIL, &patch(20.0, 20.0), S235, 1.0);
    assert_close("50", &[found.force], &[13_742.0], 1e-4, 0.0);
    let loose = face::strength(&RAIL, &patch(20.0, 20.0), S235, face::LOOSE_WASHER);
    assert_close("loose", &[loose.force], &[0.85 * 13_742.0], 1e-4, 0.0);
}

/// By hand: Q = 1.3 − 0.4 · 0.5/0.4 = 0.8; k_m = 1.3 · 0.5 = 0.65; neither above 1, nor below 0,
/// nor less than 1 for tension.
#[test]
fn compression_along_the_rail_weakens_its_face() {
    let found = [0.5, 0.2, -0.9].map(|n| face::stress_factor(n, 0.4));
    assert_close("Q", &found, &[0.8, 1.0, 1.0], 1e-12, 0.0);
    let found = [0.5, 0.1, -0.9].map(plate_on_face::stress_factor_along);
    assert_close("k_m", &found, &[0.65, 1.0, 1.0], 1e-12, 0.0);
    let found = [
        face::stress_factor(1.0, 0.25),
        plate_on_face::stress_factor_along(1.2),
    ];
    assert_close("none left", &found, &[0.0; 2], 0.0, 1e-15);
}

/// What lies outside is told; a wide patch counts as 0.85: 2 η/0.15 + 4/√0.15 with η 0.4.
#[test]
fn the_face_tells_its_range() {
    use face::Outside::{Flat, NarrowPatch, Tall, ThinWall, WidePatch};
    let outside = |face, height, wall, width| {
        let rail = BoxRail { face, height, wall };
        let patch = Patch {
            length: 20e-3,
            width,
        };
        face::strength(&rail, &patch, S235, 1.0).outside
    };
    assert_eq!(outside(0.1, 0.1, 4e-3, 20e-3), [NarrowPatch]);
    assert_eq!(outside(0.1, 0.1, 2e-3, 50e-3), [ThinWall]);
    assert_eq!(outside(0.1, 0.04, 2e-3, 90e-3), [WidePatch, ThinWall, Flat]);
    assert_eq!(outside(0.05, 0.12, 3e-3, 20e-3), [Tall]);
    let wide = face::strength(&RAIL, &patch(20.0, 46.0), S235, 1.0);
    let expected = 2115.0 * (0.8 / 0.15 + 4.0 / 0.15_f64.sqrt());
    assert_close("wide", &[wide.force], &[expected], 1e-12, 0.0);
    assert_eq!(wide.outside, [WidePatch]);
    let found = [0.8, 0.925, 1.0].map(|beta| face::wide_patch(30e3, 60e3, beta));
    assert_close("between", &found, &[30e3, 45e3, 60e3], 1e-9, 0.0);
}

/// Computed independently: plate along the rail 6x60 13.01 kN; punching of a plate 6 thick and
/// 30 wide 19.54 kN. By hand: across, 6x30 of S235, b_e = 10/16.67 · 3/6 · 30 = 9 mm, 12 690 N;
/// the face under it 2115 · 3.68/√0.46 = 11 475.7 N.
#[test]
fn plates_welded_on_a_face() {
    let along = |thickness| plate_on_face::along(&RAIL, S235, 60e-3, thickness, 1.0);
    assert_close("along", &[along(6e-3).unwrap()], &[13.01e3], 3e-4, 0.0);
    assert_eq!(along(11e-3), None);
    let found = [
        plate_on_face::effective_width(&RAIL, S235, 30e-3, 6e-3, S235),
        plate_on_face::across(&RAIL, S235, 30e-3, 6e-3, S235),
        plate_on_face::face_under_plate_across(&RAIL, S235, 30e-3, 1.0),
    ];
    assert_close("across", &found, &[9e-3, 12_690.0, 11_475.7], 1e-5, 0.0);
    // A plate thin and soft beside the wall carries over its whole width.
    let thin = plate_on_face::effective_width(&RAIL, S235, 30e-3, 1e-3, S235);
    assert_close("thin", &[thin], &[30e-3], 1e-12, 0.0);
    let punched = punching::patch(&RAIL, &patch(6.0, 30.0), S235).unwrap();
    assert_close("punching", &[punched], &[19.54e3], 3e-4, 0.0);
    assert_eq!(punching::patch(&RAIL, &patch(6.0, 45.0), S235), None);
}

/// Computed independently: patch 30 long on the whole face 63.45 kN. By hand: λ̄ =
/// 3.46 · 14.667/(π √(210 000/235)) = 0.54036, curve c χ 0.82015.
#[test]
fn side_walls_of_a_rail() {
    let found = [Loading::Pull, Loading::PushOneFace, Loading::Squeeze]
        .map(|loading| side_wall::strength(&RAIL, 30e-3, 210e9, S235, loading, Curve::C));
    assert_close("walls", &found, &[63_450.0, 52_038.5, 41_630.8], 1e-5, 0.0);
}

/// Computed independently: bolt 10 in a hole of 11 mm in 3 mm of S235, e₁ 22, e₂ 20 mm: 14.40 kN
/// at γ_M2 1.25; head of 16.9 mm through 3 mm, f_u 360: 27.52 kN.
#[test]
fn bolt_in_a_thin_plate() {
    let hole = Hole {
        bolt: 10e-3,
        hole: 11e-3,
        thickness: 3e-3,
        end: 22e-3,
        edge: 20e-3,
        pitch: None,
        gauge: None,
    };
    let design = |hole: &Hole| bearing::strength(hole, 360e6, 800e6) / 1.25;
    assert_close("alone", &[design(&hole)], &[14.40e3], 1e-9, 0.0);
    // By hand: p₁ 25: 25/33 − 0.25 = 0.507576; p₂ 27: 1.4 · 27/11 − 1.7 = 1.736364;
    // e₂ 14: 2.8 · 14/11 − 1.7 = 1.863636; 10 800 N · each.
    let close = Hole {
        pitch: Some(25e-3),
        ..hole
    };
    let side = Hole {
        gauge: Some(27e-3),
        ..hole
    };
    let edge = Hole {
        edge: 14e-3,
        ..hole
    };
    let found = [design(&close), design(&side), design(&edge)];
    let alpha = 22.0 / 33.0;
    let expected = [0.507_576 * 2.5, alpha * 1.736_364, alpha * 1.863_636].map(|k| k * 8640.0);
    assert_close("near others", &found, &expected, 1e-5, 0.0);
    let soft_bolt = bearing::strength(&hole, 360e6, 180e6);
    assert_close(
        "soft bolt",
        &[soft_bolt],
        &[0.5 * 2.5 * 10_800.0],
        1e-9,
        0.0,
    );

    let head = punching::round(16.9e-3, 3e-3, 360e6) / 1.25;
    assert_close("head", &[head], &[27.52e3], 2e-4, 0.0);
}

/// By hand: hole 11 mm, plate 6 mm; thick plates are capped at 200 mm.
#[test]
fn distances_of_bolts() {
    let least = edge_distance::smallest(11e-3);
    let found = [least.end, least.edge, least.pitch, least.gauge];
    assert_close(
        "least",
        &found,
        &[13.2e-3, 13.2e-3, 24.2e-3, 26.4e-3],
        1e-12,
        0.0,
    );
    let most = edge_distance::largest(6e-3);
    let found = [most.end, most.edge, most.pitch, most.gauge];
    assert_close("most", &found, &[64e-3, 64e-3, 84e-3, 84e-3], 1e-12, 0.0);
    let thick = edge_distance::largest(20e-3);
    assert_close("thick", &[thick.pitch], &[0.2], 1e-12, 0.0);
}
