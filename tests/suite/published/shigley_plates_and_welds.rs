//! R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th ed., McGraw-Hill,
//! 2011, and the solutions manual of the 8th ed., 2008: plates about bolts, fillet welds.
//!
//! Label: published; from memory where said. Inches, kip and ksi as printed.

use bedplate::spatial::{Vec3, Wrench};
use bedplate::strength::plate::net_section::{HoleOffAxis, area, bending_stress};
use bedplate::strength::plate::{bearing, tear_out};
use bedplate::strength::weld::{WeldGroup, shapes, throat};

use crate::kit::assert_close;

const INCH: f64 = 25.4e-3;
const KIP: f64 = 4_448.222;
const KSI: f64 = 6.894_757e6;

/// Largest stress of a group in a vertical force through a point.
fn under(group: &WeldGroup, throat: f64, force: f64, at: [f64; 2]) -> f64 {
    let load = Wrench::of_force_at(Vec3::new(0.0, force, 0.0), Vec3::new(at[0], at[1], 0.0));
    group.stress(throat, &load).unwrap().stress
}

/// 9th ed., example 8-6, p. 454: two 3/4 in bolts in bars of 1 x 4 in, bolt S_p 85 ksi, bar
/// S_y 54 ksi, factor 1.5, end distance 1.125 in.
#[test]
fn example_8_6_bars_in_shear() {
    let (bolt, bar) = (0.75 * INCH, INCH);
    // Printed loads put each part at its strength over 1.5.
    for (load, strength) in [(85.0, 85.0), (54.0, 54.0)] {
        let found = bearing::pressure(load / 2.0 * KIP, bolt, bar) / KSI;
        assert_close("bearing", &[found], &[strength / 1.5], 1e-4, 0.0);
    }
    let found = [
        2.0 * tear_out::edge_shear(1.125 * INCH, bar, 54.0 * KSI) / 1.5 / KIP,
        area(4.0 * INCH, bar, &[bolt, bolt]) * 54.0 * KSI / 1.5 / KIP,
        area(4.0 * INCH, bar, &[]) * 54.0 * KSI / 1.5 / KIP,
    ];
    assert_close("bar", &found, &[93.5, 90.0, 144.0], 1e-3, 0.0);
}

/// 9th ed., example 8-7, p. 458: bolt of 21.0 kN bears on 10 mm; bar 200 x 15 mm under 16 kN
/// at 350 mm from its holes of 16 mm at ±60 mm (the last two answers from memory).
#[test]
fn example_8_7_channel_and_bar() {
    let found = bearing::pressure(21.0e3, 16e-3, 10e-3) * 1e-6;
    assert_close("bearing", &[found], &[131.0], 5e-3, 0.0);
    let holes = [60e-3, -60e-3].map(|offset| HoleOffAxis {
        offset,
        diameter: 16e-3,
    });
    let found = bending_stress(16e3 * 0.350, 200e-3, 15e-3, &holes).unwrap() * 1e-6;
    assert_close("bending", &[found], &[67.8], 1e-3, 0.0);
    let wide = [HoleOffAxis {
        offset: 0.0,
        diameter: 0.2,
    }];
    assert_eq!(bending_stress(1.0, 0.2, 15e-3, &wide), None);
}

/// 8th ed., solution 9-1: 5/16 in fillet, 4 in long, 20 ksi. Solution 9-4: 32 kip on twice 4 in.
#[test]
fn solutions_9_1_and_9_4_parallel_fillets() {
    let a = throat(0.3125 * INCH);
    let one = shapes::vertical(4.0 * INCH).unwrap();
    let found = 20.0 * KSI / under(&one, a, 1.0, [0.0, 0.0]) / KIP;
    assert_close("9-1", &[found], &[17.7], 3e-3, 0.0);
    let two = shapes::two_verticals(2.0 * INCH, 4.0 * INCH).unwrap();
    let found = under(&two, a, 32.0 * KIP, [0.0, 0.0]) / KSI;
    assert_close("9-4", &[found], &[18.1], 3e-3, 0.0);
}

/// 8th ed., solution 9-5: two fillets of 5/16 in, 2 in long, 2 in apart, load at 7 in.
#[test]
fn solution_9_5_eccentric_fillets() {
    let group = shapes::two_verticals(2.0 * INCH, 2.0 * INCH).unwrap();
    let found = under(&group, throat(0.3125 * INCH), -KIP, [7.0 * INCH, 0.0]) / KSI;
    assert_close("9-5", &[found, 20.0 / found], &[9.22, 2.17], 5e-3, 0.0);
}

/// 9th ed., example 9-1, answers from memory: channel of 6 mm fillets, web 190, legs 56 mm,
/// 25 kN a side, 100 mm outside the web: web corners 43.9, free ends 37.0 MPa.
#[test]
fn example_9_1_channel_of_fillets() {
    let group = shapes::channel(56e-3, 190e-3).unwrap();
    let a = throat(6e-3);
    assert_close("area", &[group.length() * a], &[1280e-6], 2e-3, 0.0);
    assert_close("centroid", &[group.centroid()[0]], &[10.4e-3], 2e-3, 0.0);
    let direct = 25e3 / (group.length() * a) * 1e-6;
    assert_close("direct", &[direct], &[19.5], 2e-3, 0.0);
    let load = Wrench::of_force_at(Vec3::new(0.0, -25e3, 0.0), Vec3::new(-0.1, 0.0, 0.0));
    let worst = group.stress(a, &load).unwrap();
    assert_close("web", &[worst.stress * 1e-6], &[43.9], 2e-3, 0.0);
    assert_close("corner", &[worst.at[0]], &[0.0], 0.0, 1e-12);
    let end = group.stress_at(a, &load, [56e-3, 95e-3]).unwrap();
    assert_close("end", &[end.norm() * 1e-6], &[37.0], 1e-2, 0.0);
}
