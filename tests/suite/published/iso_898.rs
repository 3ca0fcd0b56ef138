//! ISO 898-1, Mechanical properties of fasteners, tables of proof and ultimate loads; ISO 3506-1; SAE J429.
//!
//! Label: from memory of these works, save where a test names a printed source.

use bedplate::model::fastener::{Grade, Thread};

use crate::kit::assert_close;

fn thread(name: &str) -> Thread {
    Thread::find(name).unwrap_or_else(|| panic!("{name} is not known"))
}

/// From memory of ISO 898-1: thread, stress area in mm², proof and breaking loads of 8.8, 10.9 and 12.9 in N.
#[test]
fn loads_of_coarse_threads() {
    for (name, area, proof, breaking) in [
        ("M6", 20.1, [11600, 16700, 19500], [16100, 20900, 24500]),
        ("M8", 36.6, [21200, 30400, 35500], [29200, 38100, 44600]),
        ("M10", 58.0, [33700, 48100, 56300], [46400, 60300, 70800]),
        ("M12", 84.3, [48900, 70000, 81800], [67400, 87700, 103_000]),
        (
            "M14",
            115.0,
            [66700, 95500, 112_000],
            [92000, 120_000, 140_000],
        ),
        (
            "M16",
            157.0,
            [91000, 130_000, 152_000],
            [125_000, 163_000, 192_000],
        ),
    ] {
        let size = thread(name);
        assert_close(name, &[size.stress_area()], &[area * 1e-6], 5e-3, 0.0);
        for (place, class) in ["8.8", "10.9", "12.9"].into_iter().enumerate() {
            let limits = Grade::find(class).unwrap().limits(size.nominal).unwrap();
            assert_close(
                (name, class),
                &[limits.proof, limits.tensile].map(|stress| stress * size.stress_area()),
                &[f64::from(proof[place]), f64::from(breaking[place])],
                7e-3,
                0.0,
            );
        }
    }
}

/// From memory of ISO 898-1, mm²; M16 and M16x1.5 to a tenth published by U. C. Jindal, Machine Design, table 9-1.
#[test]
fn stress_areas_of_fine_threads() {
    for (name, area, relative) in [
        ("M8x1", 39.2, 2e-3),
        ("M10x1.25", 61.2, 2e-3),
        ("M12x1.25", 92.1, 2e-3),
        ("M12x1.5", 88.1, 2e-3),
        ("M14x1.5", 125.0, 5e-3),
        ("M16x1.5", 167.0, 5e-3),
        ("M16", 156.7, 5e-4),
        ("M16x1.5", 167.2, 5e-4),
        ("M20", 245.0, 2e-3),
    ] {
        assert_close(
            name,
            &[thread(name).stress_area()],
            &[area * 1e-6],
            relative,
            0.0,
        );
    }
}

/// From memory of ISO 724: d2, d3 and D1 of M10 and M12x1.25 in mm.
#[test]
fn diameters_of_threads() {
    for (name, expected) in [
        ("M10", [9.026, 8.160, 8.376]),
        ("M12x1.25", [11.188, 10.466, 10.647]),
    ] {
        let size = thread(name);
        let found = [
            size.pitch_diameter(),
            size.root_diameter(),
            size.nut_minor_diameter(),
        ];
        assert_close(name, &found, &expected.map(|mm| mm * 1e-3), 0.0, 0.6e-6);
    }
}

/// From memory of ISO 898-1: 8.8 steps up above M16.
#[test]
fn thick_bolts_of_class_8_8_bear_more() {
    let grade = Grade::find("8.8").unwrap();
    for (name, expected) in [
        ("M16", [580.0, 640.0, 800.0]),
        ("M18", [600.0, 660.0, 830.0]),
    ] {
        let limits = grade.limits(thread(name).nominal).unwrap();
        let found = [limits.proof, limits.yield_strength, limits.tensile];
        assert_close(name, &found, &expected.map(|mpa| mpa * 1e6), 1e-12, 0.0);
    }
    assert_eq!(grade.limits(0.064), None);
}

/// From memory of SAE J429, ksi, and of ISO 3506-1, MPa; 1 ksi is 6.894757 MPa.
#[test]
fn inch_and_stainless_grades() {
    const KSI: f64 = 6.894_757e6;
    for (name, size, unit, expected) in [
        ("grade 2", "3/4-10 UNC", KSI, [55.0, 57.0, 74.0]),
        ("grade 2", "M20", KSI, [33.0, 36.0, 60.0]),
        ("grade 5", "3/4-16 UNF", KSI, [85.0, 92.0, 120.0]),
        ("grade 8", "1/4-20 UNC", KSI, [120.0, 130.0, 150.0]),
        ("A2-50", "M10", 1e6, [210.0, 210.0, 500.0]),
        ("A4-70", "M10", 1e6, [450.0, 450.0, 700.0]),
        ("A2-80", "M20", 1e6, [600.0, 600.0, 800.0]),
    ] {
        let limits = Grade::find(name)
            .unwrap()
            .limits(thread(size).nominal)
            .unwrap();
        let found = [limits.proof, limits.yield_strength, limits.tensile];
        assert_close(name, &found, &expected.map(|value| value * unit), 1e-6, 0.0);
    }
}
