//! One joint through a hollow rail from end to end, and the limits of its rail and sleeve.
//!
//! M10 10.9 through a 50x50x3 mm rail of S235, sleeve 20x11 mm, two plates of 6 mm, 60 mm of
//! rail engaged, E 205 GPa.

use bedplate::strength::column::{Curve, reduction};
use bedplate::strength::plate::strip::{Held, Strip};
use bedplate::strength::rail::BoxRail;
use bedplate::strength::rail::box_squeeze::BoxSqueeze;
use bedplate::strength::rail::couple::{over_lever, under_plate};
use bedplate::strength::sleeve::Sleeve;
use bedplate::strength::sleeve::gap::{allowed_gap, closing_stiffness, settlement_loss, tightened};
use bedplate::strength::sleeve::proud::{ShearPath, proud};
use bedplate::strength::sleeve::shoulder::{Shoulder, pull_over};
use bedplate::strength::sleeve::stability::{class_limit, column_load, shell_stress, slenderness};
use bedplate::strength::sleeve::stress::{permissible_force, stress};

use crate::kit::assert_close;

const STEEL: f64 = 205e9;
const PRELOAD: f64 = 43_480.0;

const SLEEVE: Sleeve = Sleeve {
    outer: 20e-3,
    inner: 11e-3,
    length: 50e-3,
};

const SQUEEZE: BoxSqueeze = BoxSqueeze {
    rail: BoxRail {
        face: 50e-3,
        height: 50e-3,
        wall: 3e-3,
    },
    patch_width: 0.0,
    effective_length: 60e-3,
};

/// One of the two plates, from side wall to side wall.
const PLATE: Strip = Strip {
    span: 47e-3,
    width: 60e-3,
    thickness: 6e-3,
    held: Held::Resting,
};

/// Computed independently.
#[test]
fn sleeve_and_rail_by_themselves() {
    let found = [
        SLEEVE.area() * 1e6,
        stress(&SLEEVE, PRELOAD) * 1e-6,
        SQUEEZE.stiffness(STEEL) * 1e-3,
        SQUEEZE.first_yield(235e6),
        SQUEEZE.plastic_load(235e6),
        PLATE.stiffness(STEEL) * 1e-3,
    ];
    let expected = [219.126, 198.42, 10235.9, 2400.0, 5400.0, 102_358.8];
    assert_close("joint", &found, &expected, 3e-5, 0.0);
}

/// Computed independently: gaps of 0.05 to 0.5 mm, walls alone, then with both plates
/// standing on the side walls.
#[test]
fn a_short_sleeve_moves_force_to_the_walls() {
    let sleeve = SLEEVE.stiffness(STEEL);
    let walls = closing_stiffness(SQUEEZE.stiffness(STEEL), 0.0);
    let plates = closing_stiffness(SQUEEZE.stiffness(STEEL), PLATE.stiffness(STEEL));
    assert_close(
        "closing",
        &[walls, plates],
        &[10_235.9e3, 61_415.3e3],
        1e-5,
        0.0,
    );
    for (gap, in_walls, left, in_plates, left_with_plates, plate_stress) in [
        (0.05, 511.8, 42483.9, 3070.8, 37823.3, 83.5),
        (0.1, 1023.6, 41977.8, 6141.5, 34949.1, 167.0),
        (0.2, 2047.2, 40965.8, 12283.1, 29200.5, 334.1),
        (0.5, 5117.9, 37929.6, 30707.6, 11954.8, 835.2),
    ] {
        let (alone, with) = (
            tightened(PRELOAD, gap * 1e-3, walls, sleeve),
            tightened(PRELOAD, gap * 1e-3, plates, sleeve),
        );
        let found = [alone.gap_force, alone.sleeve, with.gap_force, with.sleeve];
        let expected = [in_walls, left, in_plates, left_with_plates];
        assert_close(gap, &found, &expected, 5e-5, 0.0);
        assert_close("sum", &[with.sleeve + with.walls], &[PRELOAD], 1e-12, 0.0);
        assert!(alone.is_closed && with.is_closed);
        // Each plate bends through half of the gap.
        let in_plate = PLATE.stress(PLATE.stiffness(STEEL) * gap * 0.5e-3);
        assert_close(gap, &[in_plate * 1e-6], &[plate_stress], 5e-4, 0.0);
    }
    // 1 mm needs 61.4 kN with plates: the gap stays open and the walls carry all.
    let open = tightened(PRELOAD, 1e-3, plates, sleeve);
    assert!(!open.is_closed);
    assert_close(
        "open",
        &[open.sleeve, open.walls],
        &[0.0, PRELOAD],
        1e-12,
        1e-12,
    );
}

/// Computed independently: 5 % of 27 175 N, first yield 0.234 mm, 1418.5 N for each 10 µm of settlement.
#[test]
fn how_short_a_sleeve_may_be() {
    let squeeze = SQUEEZE.stiffness(STEEL);
    let gap = allowed_gap(27_175.0, SQUEEZE.first_yield(235e6), squeeze);
    assert_close("gap", &[gap.by_share], &[0.1327e-3], 5e-4, 0.0);
    assert_close("gap", &[gap.by_yield], &[0.234e-3], 3e-3, 0.0);
    assert_close("gap", &[gap.smaller()], &[gap.by_share], 1e-15, 0.0);
    let lost = settlement_loss(10e-6, 5.49968e-9, 1.54998e-9);
    assert_close("settlement", &[lost], &[1418.5], 1e-4, 0.0);
}

/// Derived by hand: k_s = 205 000 · 219.126/50 = 898 417 N/mm. 0.02 mm too long: flush at
/// 17 968.3 N, walls 25 511.7 · 10 235.9/908 653 = 287.4 N. 0.05 mm: flush at 44 921 N, above
/// the preload, so the walls get nothing.
#[test]
fn a_proud_sleeve_takes_the_bracket_off_the_rail() {
    let (sleeve, squeeze) = (SLEEVE.stiffness(STEEL), SQUEEZE.stiffness(STEEL));
    let joint = proud(&SLEEVE, 0.02e-3, PRELOAD, sleeve, squeeze);
    let found = [joint.flush_force, joint.walls, joint.sleeve];
    assert_close("flush", &found, &[17_968.3, 287.39, 43_192.6], 3e-5, 0.0);
    let pressure = joint.end_pressure * 1e-6;
    assert_close("ends", &[pressure], &[43_192.6 / 219.126], 3e-5, 0.0);
    assert_eq!(joint.shear_path, ShearPath::SleeveEndsAndFace);

    let joint = proud(&SLEEVE, 0.05e-3, PRELOAD, sleeve, squeeze);
    assert_close(
        "proud",
        &[joint.walls, joint.sleeve],
        &[0.0, PRELOAD],
        1e-15,
        1e-15,
    );
    assert_eq!(joint.shear_path, ShearPath::SleeveEnds);
    // Neither short nor proud is the same by both ways.
    let flush = tightened(PRELOAD, 0.0, squeeze, sleeve);
    let same = proud(&SLEEVE, 0.0, PRELOAD, sleeve, squeeze);
    assert_close(
        "flush",
        &[flush.sleeve, flush.walls],
        &[same.sleeve, same.walls],
        1e-12,
        1e-9,
    );
}

/// Computed independently: l/i 8.8, squash 219.126 · 235 = 51 494.6 N. Derived by hand:
/// 46 813.3 N at 1.1. From memory of NASA SP-8007: R/t 100, γ = 1 − 0.901 (1 − e^(−0.625)) =
/// 0.58127, σ = 0.605 · 0.58127 · 205 000/100 = 720.9 MPa.
#[test]
fn a_sleeve_is_squashed_before_it_buckles() {
    assert_close("l/i", &[slenderness(&SLEEVE)], &[8.762], 1e-4, 0.0);
    let column = column_load(&SLEEVE, STEEL, 235e6, Curve::C);
    assert_close("squash", &[column], &[51_494.6], 1e-5, 0.0);
    assert_close(
        "for good",
        &[permissible_force(&SLEEVE, 235e6)],
        &[46_813.3],
        1e-5,
        0.0,
    );
    assert_eq!(shell_stress(&SLEEVE, STEEL), None);
    let thin = Sleeve {
        outer: 201e-3,
        inner: 199e-3,
        length: 50e-3,
    };
    let folds = shell_stress(&thin, STEEL).unwrap();
    assert_close("shell", &[folds], &[720.9e6], 2e-4, 0.0);
    assert_close("class", &[class_limit(355e6)], &[59.577], 1e-4, 0.0);
    // l/i 100 of S235 at E 205 GPa: λ̄ = 100/92.788 = 1.0777.
    let long = Sleeve {
        length: 100.0 * 20e-3_f64.hypot(11e-3) / 4.0,
        ..SLEEVE
    };
    let expected = reduction(1.077_73, Curve::C) * 51_494.6;
    let column = column_load(&long, STEEL, 235e6, Curve::C);
    assert_close("long", &[column], &[expected], 2e-5, 0.0);
}

/// Derived by hand: flange 30x4 on a sleeve of 20, wall hole 20.5 mm, 10 kN: 26.540 MPa on the
/// wall, shear 39.789, bending 6 · 10 000 · 10/(4 π 20)/16 = 149.208 MPa. Sheet of 3 mm, f_u 360: 48 600 N.
#[test]
fn shoulder_by_hand() {
    let shoulder = Shoulder {
        diameter: 30e-3,
        thickness: 4e-3,
        sleeve: 20e-3,
        wall_hole: 20.5e-3,
    };
    let found = [
        shoulder.bearing(10e3),
        shoulder.flange_shear(10e3),
        shoulder.flange_bending(10e3),
    ];
    assert_close(
        "shoulder",
        &found,
        &[26.540e6, 39.789e6, 149.208e6],
        3e-5,
        0.0,
    );
    assert_close(
        "sheet",
        &[pull_over(30e-3, 3e-3, 360e6)],
        &[48_600.0],
        1e-12,
        0.0,
    );
}

/// Derived: ±M/z beside half the push; the pressure under a stiff plate, summed in thin
/// slices, has the same resultants.
#[test]
fn a_moment_on_a_face_is_two_forces() {
    let ends = under_plate(1000.0, -200.0, 0.12);
    let found = [ends.pressed, ends.lifted, ends.lever, ends.patch_length];
    assert_close("plate", &found, &[3000.0, -2000.0, 0.08, 0.04], 1e-12, 0.0);

    let slices = 20_000;
    let (mut force, mut moment) = (0.0, 0.0);
    for slice in 0..slices {
        let x = 0.06 * (f64::from(slice) + 0.5) / f64::from(slices);
        let push = 12.0 * 200.0 * x / 0.12_f64.powi(3) * 0.06 / f64::from(slices);
        force += push;
        moment += push * x;
    }
    let lever = 2.0 * moment / force;
    assert_close(
        "slices",
        &[200.0 / lever, lever],
        &[2500.0, ends.lever],
        1e-8,
        0.0,
    );

    let ends = over_lever(-400.0, 30.0, 0.06, 0.02);
    assert_close(
        "bolts",
        &[ends.pressed, ends.lifted],
        &[300.0, -700.0],
        1e-12,
        0.0,
    );
}
