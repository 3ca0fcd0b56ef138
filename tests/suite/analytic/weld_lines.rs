//! Groups of fillet welds as lines, and the strength of their throat.

use bedplate::spatial::{Vec3, Wrench};
use bedplate::strength::weld::group::{Piece, WeldGroup};
use bedplate::strength::weld::{shapes, strength, throat};
use std::f64::consts::PI;

use crate::kit::assert_close;

fn wrench(force: [f64; 3], moment: [f64; 3]) -> Wrench {
    Wrench {
        force: Vec3::from(force),
        moment: Vec3::from(moment),
    }
}

/// Published: R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th ed.,
/// tables 9-1 and 9-2: length, second moment about x, polar second moment, throat 1.
#[test]
fn usual_shapes_have_the_published_properties() {
    let (b, d, r): (f64, f64, f64) = (0.05, 0.08, 0.03);
    let channel_polar =
        (8.0 * b.powi(3) + 6.0 * b * d * d + d.powi(3)) / 12.0 - b.powi(4) / (2.0 * b + d);
    for (what, group, expected) in [
        (
            "vertical",
            shapes::vertical(d),
            [d, d.powi(3) / 12.0, d.powi(3) / 12.0],
        ),
        (
            "two verticals",
            shapes::two_verticals(b, d),
            [2.0 * d, d.powi(3) / 6.0, d * (3.0 * b * b + d * d) / 6.0],
        ),
        (
            "two horizontals",
            shapes::two_horizontals(b, d),
            [2.0 * b, b * d * d / 2.0, b * (3.0 * d * d + b * b) / 6.0],
        ),
        (
            "channel",
            shapes::channel(b, d),
            [2.0 * b + d, d * d * (6.0 * b + d) / 12.0, channel_polar],
        ),
        (
            "rectangle",
            shapes::rectangle(b, d),
            [
                2.0 * (b + d),
                d * d * (3.0 * b + d) / 6.0,
                (b + d).powi(3) / 6.0,
            ],
        ),
        (
            "circle",
            shapes::circle(r),
            [2.0 * PI * r, PI * r.powi(3), 2.0 * PI * r.powi(3)],
        ),
    ] {
        let group = group.unwrap();
        let found = [group.length(), group.about_x(), group.polar()];
        assert_close(what, &found, &expected, 1e-12, 0.0);
    }
    let channel = shapes::channel(b, d).unwrap();
    assert_close(
        "centroid",
        &channel.centroid(),
        &[b * b / (2.0 * b + d), 0.0],
        1e-12,
        1e-15,
    );
}

/// Derived: stress times throat, summed over a crooked group in short pieces, is the wrench
/// again, and nowhere more than the worst.
#[test]
fn stress_over_a_crooked_group_balances_any_wrench() {
    let corners = [[0.01, 0.0], [0.07, 0.01], [0.08, 0.05], [0.03, 0.06]];
    let group = WeldGroup::polyline(&corners).unwrap();
    let load = wrench([900.0, -400.0, 1500.0], [30.0, -45.0, 25.0]);
    let a = 4e-3;
    let worst = group.stress(a, &load).unwrap().stress;
    let (mut force, mut moment, mut largest) = (Vec3::zeros(), Vec3::zeros(), 0.0_f64);
    for ends in corners.windows(2) {
        let (dx, dy) = (ends[1][0] - ends[0][0], ends[1][1] - ends[0][1]);
        let piece = dx.hypot(dy) / 2000.0;
        for i in 0..2000 {
            let share = (f64::from(i) + 0.5) / 2000.0;
            let at = [ends[0][0] + share * dx, ends[0][1] + share * dy];
            let stress = group.stress_at(a, &load, at).unwrap();
            largest = largest.max(stress.norm());
            force += stress * a * piece;
            moment += Vec3::new(at[0], at[1], 0.0).cross(&(stress * a * piece));
        }
    }
    assert_close("force", force.as_slice(), load.force.as_slice(), 1e-9, 1e-6);
    assert_close(
        "moment",
        moment.as_slice(),
        load.moment.as_slice(),
        1e-5,
        0.0,
    );
    assert!(largest <= worst);
    assert_close("worst", &[largest], &[worst], 1e-3, 0.0);
}

/// Derived: a circle of radius r under T, M and N: τ = T/(2 π r² a), σ = M/(π r² a) + N/(2 π r a).
#[test]
fn circle_by_hand() {
    let (r, a) = (0.02, 3e-3);
    let circle = WeldGroup::new(vec![Piece::Circle([0.1, 0.0], r)]).unwrap();
    // About the origin: N at x = 0.1 needs M_y = −0.1 N to pass through the middle.
    let load = wrench([0.0, 0.0, 2000.0], [60.0, 80.0 - 200.0, 40.0]);
    let tau = 40.0 / (2.0 * PI * r * r * a);
    let sigma = 100.0 / (PI * r * r * a) + 2000.0 / (2.0 * PI * r * a);
    let found = circle.stress(a, &load).unwrap();
    assert_close("circle", &[found.stress], &[tau.hypot(sigma)], 1e-5, 0.0);
    // The moment (60, 80) pulls most a quarter turn ahead of it about z: along (−(−80), …) = (−80, 60)/100.
    let off = [found.at[0] - 0.1, found.at[1]];
    assert_close("at", &off, &[-0.8 * r, 0.6 * r], 0.0, 5e-3 * r);
}

/// Derived: one straight line along (3, 4)/5 bends about the square to it, σ = 6 M/(l² a), and
/// offers nothing against a moment about itself.
#[test]
fn a_single_line_bends_one_way_only() {
    let line = WeldGroup::polyline(&[[-0.03, -0.04], [0.03, 0.04]]).unwrap();
    let square = wrench([0.0; 3], [8.0, -6.0, 0.0]);
    let found = line.stress(2e-3, &square).unwrap();
    assert_close(
        "line",
        &[found.stress],
        &[6.0 * 10.0 / (0.01 * 2e-3)],
        1e-9,
        0.0,
    );
    // x × σ_z must give the moment back: at (0.03, 0.04) a pull makes M = (0.04, −0.03) σ.
    let end = line.stress_at(2e-3, &square, [0.03, 0.04]).unwrap();
    assert!(end.z > 0.0);
    let about_itself = wrench([0.0; 3], [6.0, 8.0, 0.0]);
    assert_eq!(line.stress(2e-3, &about_itself), None);
    let sheared = wrench([800.0, 600.0, 0.0], [0.0; 3]);
    let found = line.stress(2e-3, &sheared).unwrap();
    assert_close(
        "shear",
        &[found.stress],
        &[1000.0 / (0.1 * 2e-3)],
        1e-9,
        0.0,
    );
}

/// Derived: no length, or a number that is none, is no group; throat of a 6 mm leg 4.243 mm.
#[test]
fn nothing_is_no_group() {
    assert_eq!(WeldGroup::new(vec![]), None);
    assert_eq!(WeldGroup::polyline(&[[0.0, 0.0]]), None);
    assert_eq!(shapes::vertical(f64::NAN), None);
    assert_close("throat", &[throat(6e-3)], &[4.242_64e-3], 1e-6, 0.0);
}

/// From memory of EN 1993-1-8: 207.8 MPa for S235 (f_u 360), 241.2 for S355 (f_u 470). From memory
/// of EN 1999-1-1, by hand: 5356 on 6082 210/(√3 · 1.25) = 96.99 MPa, softened 6082-T6 185/1.25 = 148 and 85.45 MPa.
#[test]
fn strength_of_the_throat() {
    let found = [(235e6, 360e6), (355e6, 470e6)]
        .map(|(f_y, f_u)| strength::steel(f_u, strength::correlation(f_y), 1.25) * 1e-6);
    assert_close("steel", &found, &[207.8, 241.2], 3e-4, 0.0);
    assert_close("S275", &[strength::correlation(275e6)], &[0.85], 1e-15, 0.0);
    assert_close("S460", &[strength::correlation(460e6)], &[1.0], 1e-15, 0.0);
    let weld = strength::aluminium(210e6, 185e6, 1.25);
    let found = [weld.throat, weld.leg_pulled, weld.leg_sheared];
    assert_close("aluminium", &found, &[96.995e6, 148e6, 85.448e6], 1e-5, 0.0);
}
