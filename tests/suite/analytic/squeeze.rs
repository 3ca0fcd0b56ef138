//! Squeezed rails against a plane frame and against thin shells, both solved here.

mod elimination;
mod frame;
mod strips;

use std::fmt::Debug;
use std::ops::Range;

use bedplate::strength::rail::box_squeeze::{BoxSqueeze, FIT_ABOVE, FIT_BELOW, effective_length};
use bedplate::strength::rail::round_squeeze::{self, RoundSqueeze};
use bedplate::strength::rail::{BoxRail, Patch, RoundRail, local};

use crate::kit::assert_close;
use frame::Frame;

const STEEL: f64 = 210e9;

fn box_rail(face: f64, height: f64, wall: f64) -> BoxRail {
    BoxRail {
        face: face * 1e-3,
        height: height * 1e-3,
        wall: wall * 1e-3,
    }
}

fn round_rail(radius: f64, wall: f64) -> RoundRail {
    RoundRail {
        outer: (2.0 * radius + wall) * 1e-3,
        wall: wall * 1e-3,
    }
}

fn patch(length: f64, width: f64) -> Patch {
    Patch {
        length: length * 1e-3,
        width: width * 1e-3,
    }
}

fn squeeze(rail: BoxRail, patch_width: f64, effective_length: f64) -> BoxSqueeze {
    BoxSqueeze {
        rail,
        patch_width,
        effective_length,
    }
}

/// Peaks by the table, over an average moment, against those of strips: off by a share inside `allowed`.
#[track_caller]
fn assert_peaks(
    peak: &local::Peak,
    average: f64,
    shell: &strips::Shell,
    allowed: Range<f64>,
    what: impl Debug,
) {
    for (table, strip) in [
        (peak.moment, shell.moment),
        (peak.stress, shell.von_mises_moment),
    ] {
        let off = table * average / strip - 1.0;
        assert!(allowed.contains(&off), "{what:?}: peak off by {off}");
    }
}

/// Derived by hand: b 57, h 37 mm, L 80 mm, 1 kN: m = 7125, M_c = 7125/(1 + 37/57) = 4320.5,
/// M_0 = 14 250 − 4320.5 = 9929.5 N mm; closing 0.111298 mm.
#[test]
fn line_load_on_a_box_by_hand() {
    let box_squeeze = squeeze(box_rail(60.0, 40.0, 3.0), 0.0, 80e-3);
    let found = [
        box_squeeze.corner_moment() * 1e6,
        box_squeeze.middle_moment() * 1e6,
        1e6 / box_squeeze.stiffness(STEEL),
    ];
    assert_close("box", &found, &[4320.5, 9929.5, 0.111298], 1e-5, 0.0);
}

/// Derived by hand: 50x50x3, c 20 mm, each millimetre of length: M_0/F 6.4898 mm, 192.728 N/mm.
#[test]
fn patch_on_a_box_by_hand() {
    let box_squeeze = squeeze(box_rail(50.0, 50.0, 3.0), 20e-3, 1e-3);
    let found = [
        box_squeeze.middle_moment() * 1e3,
        box_squeeze.stiffness(STEEL) * 1e-3,
    ];
    assert_close("box", &found, &[6.4898, 192.728], 2e-5, 0.0);
}

/// Cross-checked: a plane frame of beams, the whole box with its load, no symmetry assumed.
#[test]
fn box_agrees_with_a_plane_frame() {
    for (face, height, wall, width) in [
        (60.0, 40.0, 3.0, 0.0),
        (50.0, 50.0, 3.0, 20.0),
        (40.0, 80.0, 4.0, 30.0),
        (100.0, 50.0, 5.0, 30.0),
    ] {
        let rail = box_rail(face, height, wall);
        let box_squeeze = squeeze(rail, width * 1e-3, 70e-3);
        let bending = STEEL * 70e-3 * rail.wall.powi(3) / 12.0;
        let solved = Frame::boxed(
            rail.middle_width(),
            rail.middle_height(),
            width * 1e-3,
            bending,
        );
        let found = [
            1.0 / box_squeeze.stiffness(STEEL),
            box_squeeze.corner_moment(),
            box_squeeze.middle_moment(),
        ];
        let expected = [solved.closing, solved.side_moment, solved.load_moment];
        assert_close((face, height, width), &found, &expected, 2e-6, 0.0);
    }
}

/// Derived: first yield at the larger moment, collapse by F (b/4 − c/8) = 2 M_p; square box
/// under a line load F = f L t²/(6 · 3 b/16) and 8 M_p/b. A wide patch on a low box bends
/// its corners most.
#[test]
fn yield_and_collapse_of_a_box() {
    let box_squeeze = squeeze(box_rail(50.0, 50.0, 3.0), 0.0, 60e-3);
    let found = [
        box_squeeze.first_yield(235e6),
        box_squeeze.plastic_load(235e6),
    ];
    let hinge = 235.0 * 60.0 * 9.0 / 4.0;
    let expected = [
        235.0 * 60.0 * 9.0 / (6.0 * 3.0 * 47.0 / 16.0),
        8.0 * hinge / 47.0,
    ];
    assert_close("square", &found, &expected, 1e-12, 0.0);

    let low = squeeze(box_rail(103.0, 13.0, 3.0), 1.0, 60e-3);
    assert!(low.corner_moment() > low.middle_moment());
    // c counts as b = 100: m = F b/12 = 8.3333, M_c = m/1.1 = 7.57576 N mm/N.
    let expected = 235.0 * 60.0 * 9.0 / (6.0 * 7.575_757_576);
    assert_close("corner", &[low.first_yield(235e6)], &[expected], 1e-9, 0.0);
    let expected = 16.0 * hinge / 100.0;
    assert_close(
        "collapse",
        &[low.plastic_load(235e6)],
        &[expected],
        1e-12,
        0.0,
    );
}

/// Derived by hand: R 30, t 3, L 60 mm, 1 kN: closing 0.14169, spreading 0.13011 mm, moments
/// 9549.3 and 5450.7 N mm. Twice the closing is in circulation: a quarter ring of beams decides.
#[test]
fn ring_by_hand_and_by_a_plane_frame() {
    let ring = RoundSqueeze {
        rail: round_rail(30.0, 3.0),
        effective_length: 60e-3,
    };
    let found = [
        1e6 / ring.stiffness(STEEL),
        1e6 / ring.spreading_stiffness(STEEL),
        ring.load_moment() * 1e6,
        ring.side_moment() * 1e6,
    ];
    assert_close(
        "hand",
        &found,
        &[0.14169, 0.13011, 9549.3, 5450.7],
        4e-5,
        0.0,
    );

    let solved = Frame::quarter_ring(30e-3, STEEL * 60e-3 * 27e-9 / 12.0);
    let expected = [
        solved.closing * 1e6,
        solved.spreading * 1e6,
        solved.load_moment * 1e6,
        solved.side_moment * 1e6,
    ];
    assert_close("frame", &found, &expected, 5e-4, 0.0);

    // F = f L t²/(6 R/π) and 4 M_p/R.
    let found = [ring.first_yield(235e6), ring.plastic_load(235e6)];
    let expected = [126_900.0 / (6.0 * 9.549_296_6), 126_900.0 / 30.0];
    assert_close("strength", &found, &expected, 1e-7, 0.0);
    assert!(!ring.is_thick());
    let thick = RoundSqueeze {
        rail: round_rail(14.0, 3.0),
        ..ring
    };
    assert!(thick.is_thick());
}

/// Computed independently: shells with shear, ten boxes under patches (E 210 GPa, ν 0.3).
/// The fit claims −3 to +5 % against them.
#[test]
fn stiffness_of_boxes_is_near_shells() {
    for (face, height, wall, long, wide, expected) in [
        (50.0, 50.0, 3.0, 15.0, 15.0, 10583.0),
        (50.0, 50.0, 3.0, 20.0, 20.0, 11459.0),
        (50.0, 50.0, 3.0, 30.0, 30.0, 13942.0),
        (50.0, 50.0, 3.0, 60.0, 30.0, 17898.0),
        (50.0, 50.0, 3.0, 100.0, 30.0, 24974.0),
        (60.0, 40.0, 3.0, 20.0, 20.0, 7949.0),
        (40.0, 60.0, 3.0, 20.0, 20.0, 19005.0),
        (80.0, 80.0, 4.0, 30.0, 30.0, 10252.0),
        (60.0, 120.0, 4.0, 20.0, 20.0, 16799.0),
        (100.0, 100.0, 5.0, 30.0, 30.0, 12094.0),
    ] {
        let (rail, patch) = (box_rail(face, height, wall), patch(long, wide));
        assert!(effective_length(&rail, &patch).is_within_range);
        let off = BoxSqueeze::under(rail, patch).stiffness(STEEL) / (expected * 1e3) - 1.0;
        assert!(
            (-0.03..=FIT_ABOVE).contains(&off),
            "{face}x{height}x{wall}, {long}x{wide}: {off}"
        );
    }
}

/// Cross-checked: finite strips in harmonics along the rail, solved here. Stiffness by the
/// fit, peak of the moment and of the stress by the table.
#[test]
fn boxes_agree_with_finite_strips() {
    for (face, height, wall, long, wide) in [
        (50.0, 50.0, 3.0, 10.0, 10.0),
        (50.0, 50.0, 3.0, 20.0, 20.0),
        (50.0, 50.0, 3.0, 30.0, 30.0),
        (50.0, 50.0, 3.0, 40.0, 40.0),
        (50.0, 50.0, 3.0, 100.0, 30.0),
        (50.0, 50.0, 2.0, 20.0, 40.0),
        (60.0, 40.0, 3.0, 20.0, 20.0),
        (60.0, 120.0, 4.0, 20.0, 20.0),
        (100.0, 50.0, 4.0, 30.0, 30.0),
    ] {
        let what = (face, height, wall, long, wide);
        let (rail, patch) = (box_rail(face, height, wall), patch(long, wide));
        let shell = strips::on_box(&rail, &patch, STEEL);
        let fit = BoxSqueeze::under(rail, patch);
        let off = fit.stiffness(STEEL) / shell.stiffness - 1.0;
        assert!((-FIT_BELOW..=FIT_ABOVE).contains(&off), "{what:?}: {off}");

        // Averages over the length that the strips themselves show.
        let average = fit.middle_moment() / (fit.effective_length / (1.0 + off));
        let peak = local::box_peak(&rail, &patch).unwrap();
        assert_peaks(&peak, average, &shell, -0.04..0.09, what);
    }
}

/// Computed independently: shells with shear under patches of 15, 20 and 30 mm on 50x50x3.
#[test]
fn peaks_are_near_shells() {
    for (size, moment, stress) in [(15.0, 1.40, 1.27), (20.0, 1.31, 1.18), (30.0, 1.22, 1.07)] {
        let peak = local::box_peak(&box_rail(50.0, 50.0, 3.0), &patch(size, size)).unwrap();
        assert_close(
            size,
            &[peak.moment, peak.stress],
            &[moment, stress],
            0.045,
            0.0,
        );
    }
    assert_eq!(
        local::box_peak(&box_rail(50.0, 50.0, 3.0), &patch(8.0, 8.0)),
        None
    );
}

/// Cross-checked: finite strips round the tube, solved here.
#[test]
fn tubes_agree_with_finite_strips() {
    for (radius, wall, long, wide) in [
        (20.0, 3.0, 19.0, 19.0),
        (20.0, 1.5, 19.0, 19.0),
        (25.0, 2.0, 20.0, 11.0),
        (25.0, 2.0, 11.0, 20.0),
        (25.0, 2.0, 99.0, 20.0),
        (25.0, 1.3, 20.0, 20.0),
        (30.0, 5.0, 29.0, 29.0),
        (50.0, 3.0, 30.0, 30.0),
    ] {
        let what = (radius, wall, long, wide);
        let (rail, patch) = (round_rail(radius, wall), patch(long, wide));
        assert!(round_squeeze::effective_length(&rail, &patch).is_within_range);
        let shell = strips::on_tube(&rail, &patch, STEEL);
        let fit = RoundSqueeze::under(rail, patch);
        assert_close(what, &[fit.stiffness(STEEL)], &[shell.stiffness], 0.02, 0.0);
        let peak = local::round_peak(&rail, &patch).unwrap();
        let average = fit.load_moment() / fit.effective_length;
        assert_peaks(&peak, average, &shell, -0.05..0.2, what);
    }
}

/// Computed independently: rectangular elements of plate and membrane, one end of the rail
/// free. Distances from patch to end, and what is left of the stiffness far from the end.
#[test]
fn a_cut_end_softens_the_rail() {
    for (face, height, wall, distance, left) in [
        (50.0, 50.0, 3.0, 10.0, 0.572),
        (50.0, 50.0, 3.0, 25.0, 0.888),
        (50.0, 50.0, 3.0, 50.0, 0.991),
        (50.0, 50.0, 3.0, 30.0, 0.908),
        (60.0, 40.0, 3.0, 30.0, 0.914),
        (80.0, 80.0, 4.0, 15.0, 0.554),
        (80.0, 80.0, 4.0, 40.0, 0.886),
        (40.0, 60.0, 3.0, 10.0, 0.615),
        (40.0, 60.0, 3.0, 20.0, 0.855),
    ] {
        let found = local::near_cut_end(&box_rail(face, height, wall), distance * 1e-3).unwrap();
        assert_close((face, distance), &[found], &[left], 0.042, 0.0);
    }
    let rail = box_rail(50.0, 50.0, 3.0);
    assert_eq!(local::near_cut_end(&rail, 8e-3), None);
    assert_eq!(local::near_cut_end(&rail, f64::NAN), None);
    assert_eq!(local::near_cut_end(&rail, 1.0), Some(1.0));
}

/// Computed independently: shells of a 50x50x3 rail, ring 11 to 20 mm on a hole of 11 mm, 20 to
/// 30 mm on a hole of 20 mm. Half way between the two is derived, straight lines.
#[test]
fn a_hole_softens_the_face() {
    let rail = box_rail(50.0, 50.0, 3.0);
    for (hole, stiffness, stress) in [(11.0, 0.79, 1.75), (20.0, 0.70, 1.70), (15.5, 0.745, 1.725)]
    {
        let found = local::with_hole(&rail, hole * 1e-3).unwrap();
        assert_close(
            hole,
            &[found.stiffness, found.stress],
            &[stiffness, stress],
            1e-3,
            0.0,
        );
    }
    assert_eq!(local::with_hole(&rail, 25e-3), None);
}

/// Derived: what lies outside the fits is told.
#[test]
fn fits_tell_where_they_end() {
    let told = |rail: BoxRail, patch: Patch| effective_length(&rail, &patch).is_within_range;
    assert!(told(box_rail(50.0, 50.0, 3.0), patch(20.0, 20.0)));
    assert!(!told(box_rail(50.0, 50.0, 3.0), patch(5.0, 20.0)));
    assert!(!told(box_rail(50.0, 50.0, 3.0), patch(20.0, 48.0)));
    assert!(!told(box_rail(50.0, 20.0, 3.0), patch(20.0, 20.0)));
    assert!(!told(box_rail(50.0, 50.0, 0.8), patch(20.0, 20.0)));
    let told = |rail: RoundRail, patch: Patch| {
        round_squeeze::effective_length(&rail, &patch).is_within_range
    };
    assert!(told(round_rail(25.0, 2.0), patch(20.0, 20.0)));
    assert!(!told(round_rail(25.0, 6.0), patch(20.0, 20.0)));
    assert!(!told(round_rail(25.0, 2.0), patch(20.0, 5.0)));
}
