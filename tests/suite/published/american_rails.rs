//! ANSI/AISC 360-10, AISI S100 and, for aluminium, EN 1999-1-1:2007: walls of rails, bolts in plates.
//!
//! Label: formulas from memory of those standards, the numbers worked by hand or computed
//! independently from them.

use bedplate::strength::plate::{bearing, edge_distance, net_section, tear_out};
use bedplate::strength::rail::web_crippling::{Place, Web, aluminium, cold_formed};
use bedplate::strength::rail::{BoxRail, side_wall};

use crate::kit::assert_close;

const RAIL: BoxRail = BoxRail {
    face: 50e-3,
    height: 50e-3,
    wall: 3e-3,
};

/// Computed independently: 50x50x3 of S235, 30 mm long, corner 4.5 mm, E 200 GPa: yielding 74.0,
/// crippling 315 kN. By hand: buckling 48 · 27/41 · √(200 000 · 235) = 216 706 N. A sharper
/// corner counts as 1.5 t.
#[test]
fn side_walls() {
    let found = [
        side_wall::yielding(&RAIL, 4.5e-3, 30e-3, 235e6),
        side_wall::yielding(&RAIL, 1e-3, 30e-3, 235e6),
        side_wall::crippling(&RAIL, 30e-3, 200e9, 235e6, 1.0),
        side_wall::buckling(&RAIL, 200e9, 235e6, 1.0),
    ];
    let expected = [74_025.0, 74_025.0, 315_427.0, 216_706.0];
    assert_close("walls", &found, &expected, 1e-5, 0.0);
    let pressed = side_wall::crippling(&RAIL, 30e-3, 200e9, 235e6, 0.8);
    assert_close("along", &[pressed], &[0.8 * 315_427.0], 1e-5, 0.0);
}

/// Computed independently: one web of the same rail, R 4.5 mm, interior two-flange, 41.6 kN;
/// the other three by the same hand calculation.
#[test]
fn webs_of_cold_formed_steel() {
    let web = Web {
        thickness: 3e-3,
        inner_radius: 4.5e-3,
        flat_height: 35e-3,
    };
    let found = [
        Place::EndOneFlange,
        Place::InteriorOneFlange,
        Place::EndTwoFlange,
        Place::InteriorTwoFlange,
    ]
    .map(|place| cold_formed(&web, place, 30e-3, 235e6).unwrap());
    assert_close(
        "web",
        &found,
        &[13_758.6, 27_520.3, 16_501.9, 41_585.2],
        1e-5,
        0.0,
    );
    assert_eq!(cold_formed(&web, Place::EndOneFlange, 71e-3, 235e6), None);
    let slender = Web {
        thickness: 0.17e-3,
        ..web
    };
    assert_eq!(
        cold_formed(&slender, Place::EndOneFlange, 5e-3, 235e6),
        None
    );
}

/// By hand: t 1, b_w 44, l 60 mm, f_o 250, E 70 000 MPa: 0.57 √(6 · 60 · 250 · 70 000/44) = 6820.5 N,
/// with stiffeners at 100 mm 7037.2; t 3 mm would be 61 385 N but yields at 45 000.
#[test]
fn webs_of_aluminium() {
    let web = |thickness, stiffeners| aluminium(thickness, 44e-3, stiffeners, 60e-3, 250e6, 70e9);
    let found = [
        web(1e-3, f64::INFINITY),
        web(1e-3, 0.1),
        web(3e-3, f64::INFINITY),
    ];
    assert_close("web", &found, &[6820.54, 7037.18, 45_000.0], 1e-5, 0.0);
}

/// By hand: bolt 10, plate 3 mm, F_u 360: 2.4 · 30 · 360 = 25 920 N; clear 16.5 mm: 1.2 · 49.5 · 360
/// = 21 384 N; spacing 26.67, edge 72 and 150 mm; two holes of 11 + 2 mm in 60 mm leave 102 mm².
#[test]
fn bolts_in_plates() {
    let found = [
        bearing::american(10e-3, 3e-3, 360e6),
        tear_out::american(16.5e-3, 3e-3, 360e6),
    ];
    assert_close("bearing", &found, &[25_920.0, 21_384.0], 1e-9, 0.0);
    let found = [
        edge_distance::american_spacing(10e-3),
        edge_distance::american_largest_edge(6e-3),
        edge_distance::american_largest_edge(20e-3),
    ];
    assert_close("distances", &found, &[26.6667e-3, 72e-3, 150e-3], 1e-5, 0.0);
    let hole = 11e-3 + net_section::DAMAGED_EDGE;
    let left = net_section::area(60e-3, 3e-3, &[hole, hole]);
    assert_close("net", &[left], &[102e-6], 1e-9, 0.0);
    assert_close(
        "none",
        &[net_section::area(0.02, 3e-3, &[hole, hole])],
        &[0.0],
        0.0,
        1e-15,
    );
}
