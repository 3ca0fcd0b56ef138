//! Names of the trade are found however they are written, and only theirs.

use super::{Grade, Lubrication, Thread, Tightening};

#[test]
fn every_spelling_finds_its_thread() {
    for (text, name) in [
        ("M10", "M10"),
        ("m10 x 1.5", "M10"),
        ("M10×1,25", "M10x1.25"),
        ("M8X1", "M8x1"),
        ("1/4-20", "1/4-20 UNC"),
        ("1/4 UNF", "1/4-28 UNF"),
        ("3/8\"-24 unf", "3/8-24 UNF"),
        ("1/2-13 UNC", "1/2-13 UNC"),
    ] {
        assert_eq!(Thread::find(text).map(|thread| thread.name), Some(name));
    }
}

#[test]
fn what_is_not_made_is_not_found() {
    for text in ["", "M11", "M10x2", "1/4", "1/4-20 UNF", "x", "M", "unc"] {
        assert_eq!(Thread::find(text), None, "{text}");
    }
    assert_eq!(Grade::find("9.8"), None);
    assert_eq!(Grade::find(""), None);
}

#[test]
fn every_name_finds_itself() {
    for name in Thread::names() {
        assert_eq!(Thread::find(name).map(|found| found.name), Some(name));
    }
    for name in Grade::names() {
        assert_eq!(Grade::find(name).map(|found| found.name), Some(name));
    }
    for name in Lubrication::names() {
        assert_eq!(Lubrication::find(name).map(|found| found.name), Some(name));
    }
    for name in Tightening::names() {
        assert_eq!(Tightening::find(name).map(|found| found.name), Some(name));
    }
}

/// From memory of VDI 2230-1:2003, table A8: 1.6 to 2.0 in class B, 1.7 to 2.5 in class A.
#[test]
fn an_ordinary_wrench_scatters_by_the_friction() {
    let wrench = Tightening::find("Torque Wrench").unwrap();
    for (lubrication, low, high) in [("greased", 1.6, 2.0), ("solid film", 1.7, 2.5)] {
        let band = wrench.scatter(&Lubrication::find(lubrication).unwrap());
        assert!((band.low - low).abs() < 1e-12 && (band.high - high).abs() < 1e-12);
    }
}

/// Holes are wider than bolts, heads wider than holes, and roots thinner than all.
#[test]
fn sizes_are_in_order() {
    for name in Thread::names() {
        let thread = Thread::find(name).unwrap();
        let sizes = [
            thread.root_diameter(),
            thread.stress_diameter(),
            thread.pitch_diameter(),
            thread.nominal,
            thread.hole,
            thread.head_bearing,
            thread.flats,
        ];
        assert!(sizes.is_sorted_by(|a, b| a < b), "{name}: {sizes:?}");
    }
}
