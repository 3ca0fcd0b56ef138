//! V. B. Bhandari, Design of Machine Elements, chapter 7 (edition to be confirmed).

use bedplate::spatial::{Vec3, Wrench};
use bedplate::strength::pattern::Pattern;

use crate::kit::assert_close;

/// Published, example 7.8: 20 kN at an arm of 550 mm pulls a bracket off that tilts about its
/// edge; bolts 450 and 50 mm from there, 75 MPa: 455.28 mm² of core.
#[test]
fn bracket_that_tilts_about_its_edge() {
    let pattern = Pattern::new(&[[0.450, 0.0], [0.050, 0.0]]).unwrap();
    let load = Wrench {
        force: Vec3::new(0.0, 0.0, 20e3),
        moment: Vec3::new(0.0, -20e3 * 0.550, 0.0),
    };
    let shared = pattern.about_heel(&load, &[[0.0, 0.0], [0.5, 0.0]]);
    assert_close(
        "core",
        &[shared.bolts[0].axial / 75e6],
        &[455.28e-6],
        1e-4,
        0.0,
    );
    // Derived: the other bolt has its ninth of the moment, and half of the load.
    let other = 10e3 + 11e6 * 50.0 / 205_000.0;
    assert_close("other", &[shared.bolts[1].axial], &[other], 1e-9, 0.0);
}

/// Derived for the data of example 7.4, of which the book prints only the bolt size: three bolts
/// 75 mm apart in one line, 5 kN across it 305 mm from the middle one:
/// 5000/3 + 5000 · 305 · 75/(2 · 75²) = 11 833 N.
#[test]
fn three_bolts_in_one_line() {
    let pattern = Pattern::new(&[[0.0, 0.0], [0.075, 0.0], [0.150, 0.0]]).unwrap();
    let load = Wrench::of_force_at(Vec3::new(0.0, 5e3, 0.0), Vec3::new(0.305, 0.0, 0.0));
    let shared = pattern.about_centre(&load);
    let sizes: Vec<f64> = shared.bolts.iter().map(|bolt| bolt.shear[1]).collect();
    assert_close("bolts", &sizes, &[-8500.0, 1666.67, 11_833.3], 1e-5, 0.0);
}
