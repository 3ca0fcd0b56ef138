//! EN 1993-1-8:2005, tables 7.2 to 7.4, and ANSI/AISC 360-10, table K1.1: plates and saddles on round tubes.
//!
//! Label: formulas from memory of those standards, the numbers worked by hand from them.

use bedplate::strength::rail::RoundRail;
use bedplate::strength::rail::round_local::{
    american_plate_across, american_plate_along, plate_across, plate_along, punched_line,
    punched_outline, saddle, stress_factor,
};

use crate::kit::assert_close;

const S235: f64 = 235e6;

/// f t² is 3760 N, d/t 15.
const TUBE: RoundRail = RoundRail {
    outer: 60e-3,
    wall: 4e-3,
};

/// By hand: η = 2, 5 · 3760 · 1.5 = 28 200 N, · 120 mm; β = 0.5, 3760 · 9 = 33 840 N, · 15 mm;
/// the saddle 33 840 · 1.5 = 50 760 N, 120 mm · 33 840 N, 15 mm · 50 760 N.
#[test]
fn strength_of_the_wall() {
    let along = plate_along(&TUBE, S235, 120e-3, 1.0);
    let across = plate_across(&TUBE, S235, 30e-3, 1.0);
    let both = saddle(&TUBE, S235, [120e-3, 30e-3], 1.0);
    for (what, found, expected) in [
        ("along", along, [28_200.0, 3384.0, 0.0]),
        ("across", across, [33_840.0, 0.0, 507.6]),
        ("saddle", both, [50_760.0, 4060.8, 761.4]),
    ] {
        assert_close(
            what,
            &[found.push, found.along, found.across],
            &expected,
            1e-12,
            1e-12,
        );
        assert!(found.is_within_range, "{what}");
    }
    // n = 0.5: 1 − 0.3 · 0.5 · 1.5.
    let found = [0.5, -0.5, 1.6].map(stress_factor);
    assert_close("k", &found, &[0.775, 1.0, 0.0], 1e-12, 1e-15);
    let pressed = plate_along(&TUBE, S235, 120e-3, stress_factor(0.5));
    assert_close("pressed", &[pressed.push], &[0.775 * 28_200.0], 1e-12, 0.0);
}

/// By hand: η counts to 4, so 5 · 3760 · 2 N and 240 mm; β to 1, 24 · 3760 N; what is outside is told.
#[test]
fn the_formulas_tell_their_range() {
    let long = plate_along(&TUBE, S235, 300e-3, 1.0);
    assert_close(
        "long",
        &[long.push, long.along],
        &[37_600.0, 9024.0],
        1e-12,
        0.0,
    );
    let wide = plate_across(&TUBE, S235, 90e-3, 1.0);
    assert_close("wide", &[wide.push], &[24.0 * 3760.0], 1e-12, 0.0);
    assert!(!long.is_within_range && wide.is_within_range);
    assert!(!plate_across(&TUBE, S235, 20e-3, 1.0).is_within_range);
    assert!(!saddle(&TUBE, S235, [300e-3, 30e-3], 1.0).is_within_range);
    for wall in [1e-3, 7e-3] {
        let tube = RoundRail { wall, ..TUBE };
        assert!(!plate_along(&tube, S235, 120e-3, 1.0).is_within_range);
    }
}

/// By hand: 10 000/50 760 + (1000/4060.8)² + 100/761.4; on two walls half, a quarter and half.
#[test]
fn push_and_moments_together() {
    let wall = saddle(&TUBE, S235, [120e-3, 30e-3], 1.0);
    let parts = [0.197_006, 0.060_643, 0.131_337];
    let found = [
        wall.used(10e3, 1e3, 100.0),
        wall.used(-10e3, -1e3, -100.0),
        wall.times(2.0).used(10e3, 1e3, 100.0),
    ];
    let sum: f64 = parts.iter().sum();
    let halved = parts[0] / 2.0 + parts[1] / 4.0 + parts[2] / 2.0;
    assert_close("used", &found, &[sum, sum, halved], 1e-5, 0.0);
    // A line bears no moment about the tube, so none is counted here.
    let line = plate_along(&TUBE, S235, 120e-3, 1.0);
    assert_close("line", &[line.used(2820.0, 0.0, 1e3)], &[0.1], 1e-12, 0.0);
}

/// By hand: (10 000/0.12 + 6 · 500/0.0144) √3/(2 · 0.004 · 235e6); and on the outline
/// (10 000/0.3 + 1000/0.0084 + 100/0.0039) √3/(0.004 · 235e6).
#[test]
fn punching() {
    let line = punched_line(&TUBE, S235, 120e-3, [10e3, 500.0]);
    let outline = |width| punched_outline(&TUBE, S235, [120e-3, width], [10e3, 1e3, 100.0]);
    let found = [line, outline(30e-3).unwrap()];
    assert_close("punched", &found, &[0.268_714, 0.328_025], 1e-5, 0.0);
    assert_eq!(outline(53e-3), None);
}

/// By hand: 5.5 · 3760 · 1.5 = 31 020 N, · 0.8 · 120 mm; 20 680/(1 − 0.405) N, · 15 mm. With its
/// φ of 0.90 it lies within a fifth of the European form, over all widths and lengths.
#[test]
fn the_american_forms_agree() {
    let along = american_plate_along(&TUBE, S235, 120e-3);
    let across = american_plate_across(&TUBE, S235, 30e-3);
    assert_close(
        "by hand",
        &[along.push, along.along, across.push, across.across],
        &[31_020.0, 2977.92, 34_756.3, 521.345],
        1e-6,
        0.0,
    );
    assert!(along.is_within_range && across.is_within_range);
    for length in [10e-3, 60e-3, 120e-3, 240e-3] {
        let [europe, america] = [
            plate_along(&TUBE, S235, length, 1.0).push,
            0.9 * american_plate_along(&TUBE, S235, length).push,
        ];
        assert_close(length, &[europe], &[america], 0.02, 0.0);
    }
    for width in [24e-3, 30e-3, 40e-3, 48e-3, 60e-3] {
        let europe = plate_across(&TUBE, S235, width, 1.0).push;
        let america = 0.9 * american_plate_across(&TUBE, S235, width).push;
        assert!((europe / america - 1.0).abs() < 0.2, "{width}");
    }
}
