//! Single bolts by structural rules.
//!
//! Label, where a test does not name another: computed independently.

use bedplate::strength::bolt::resistance::{Plane, SAFETY, shear, tension, together};
use bedplate::strength::bolt::slip;
use bedplate::strength::plate::bearing::{self, Hole};
use bedplate::strength::rail::punching;

use crate::kit::assert_close;

/// M10 8.8, 58 mm²: shear 22.27, tension 33.41, preload of a slip-resistant joint 32.48 kN.
#[test]
fn m10_of_class_8_8() {
    let found = [
        shear(true, Plane::Thread, 800e6, 58e-6),
        tension(800e6, 58e-6),
        slip::structural_preload(800e6, 58e-6),
    ];
    assert_close("N", &found, &[22.27e3, 33.41e3, 32.48e3], 5e-4, 0.0);
    // Derived: 10.9 cut in the thread has 5/6 of the factor; in the shank the same.
    let brittle = [Plane::Thread, Plane::Shank].map(|plane| shear(false, plane, 1000e6, 58e-6));
    assert_close("10.9", &brittle, &[23.2e3, 27.84e3], 1e-9, 0.0);
}

/// Bolt 10 in a hole of 11, 3 mm of S235, 22 mm to the end and 20 to the edge: 14.40 kN; a head
/// of 16.9 mm punches through 3 mm at 27.52 kN.
#[test]
fn thin_wall() {
    let hole = Hole {
        bolt: 10e-3,
        hole: 11e-3,
        thickness: 3e-3,
        end: 22e-3,
        edge: 20e-3,
        pitch: None,
        gauge: None,
    };
    let bears = |hole: Hole, bolt: f64| bearing::strength(&hole, 360e6, bolt) / SAFETY;
    assert_close("bearing", &[bears(hole, 800e6)], &[14.40e3], 1e-3, 0.0);
    let punched = punching::round(16.9e-3, 3e-3, 360e6) / SAFETY;
    assert_close("punching", &[punched], &[27.52e3], 1e-3, 0.0);
    // Derived: each bound by itself. 33 mm apart along: 33/33 − 1/4 = 0.75; 22 across: 1.4 · 2 − 1.7
    // = 1.1; edge 12.1: 2.8 · 1.1 − 1.7 = 1.38; a soft bolt of 270 MPa: 0.75; far away: 1 and 2.5.
    let whole = 360e6 * 10e-3 * 3e-3 / 1.25;
    let far = Hole {
        end: 1.0,
        edge: 1.0,
        ..hole
    };
    let pitch = Some(33e-3);
    let gauge = Some(22e-3);
    for (what, hole, bolt, factor) in [
        ("far", far, 800e6, 2.5),
        ("along", Hole { pitch, ..far }, 800e6, 2.5 * 0.75),
        ("across", Hole { gauge, ..far }, 800e6, 1.1),
        (
            "edge",
            Hole {
                edge: 12.1e-3,
                ..far
            },
            800e6,
            1.38,
        ),
        ("bolt", far, 270e6, 2.5 * 0.75),
        ("no edge", Hole { edge: 5e-3, ..far }, 800e6, 0.0),
    ] {
        assert_close(what, &[bears(hole, bolt)], &[factor * whole], 1e-9, 1e-9);
    }
}

/// Derived: half of the shear and 0.7 of the pull use the bolt up; the pull alone counts in full;
/// a push does not count.
#[test]
fn shear_and_pull_together() {
    let found = [
        together(11.0, 22.0, 23.1, 33.0),
        together(0.0, 22.0, 33.0, 33.0),
        together(-11.0, 22.0, -33.0, 33.0),
    ];
    assert_close("use", &found, &[1.0, 1.0, 0.5], 1e-12, 0.0);
}

/// 3/4 in A325 with friction 0.35, 28 kip preload: 11.1 kip a bolt, 122 of eleven. By the European
/// rule, derived: M10 8.8, one face, friction 0.2, safety 1.25: 32.48 · 0.2/1.25 = 5.197 kN.
#[test]
fn slip_of_structural_joints() {
    let bolt = slip::american_resistance(0.35, 1.13, 1.0, 28.0, 1.0);
    assert_close("kip", &[bolt, 11.0 * bolt], &[11.1, 122.0], 5e-3, 0.0);
    let found = slip::structural_resistance(1.0, 1.0, 0.2, 800e6, 58e-6, 1.25);
    assert_close("N", &[found], &[5196.8], 1e-9, 0.0);
}

/// From memory of EN 1090-2; faces of a workshop are common practice: none grips better than the
/// blasted one, paint is reckoned lower than bare steel.
#[test]
fn friction_of_faces() {
    let classes = slip::SLIP_CLASSES.map(|(_, friction)| friction);
    assert_close("classes", &classes, &[0.50, 0.40, 0.30, 0.20], 1e-12, 0.0);
    let of = |name| {
        let (_, band) = slip::FACES.iter().find(|(face, _)| *face == name).unwrap();
        [band.low, band.high]
    };
    let bare = of("steel, machined and degreased");
    assert_close("bare", &bare, &[0.12, 0.18], 1e-12, 0.0);
    for (name, band) in slip::FACES {
        assert!(
            band.low <= band.high && band.high <= of("steel, blasted")[1],
            "{name}"
        );
    }
    assert!(of("painted")[1] < bare[0]);
}
