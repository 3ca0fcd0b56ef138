//! ISO 8608, classes of road roughness.
//!
//! Label: means published by G. Agostinacchio, D. Ciampa, S. Olita, European Transport Research
//! Review (2014), DOI 10.1007/s12544-013-0127-8; limits and velocity form from memory of ISO
//! 8608:2016. What is derived says so.

use bedplate::road::roughness::{BAND, Band, Class, Roughness, density_of_short_form};

use crate::kit::assert_close;

/// Mean, upper limit and velocity density of the eight classes, in 1e-6.
const CLASSES: [(Class, f64, Option<f64>, f64); 8] = [
    (Class::A, 16.0, Some(32.0), 6.317),
    (Class::B, 64.0, Some(128.0), 25.27),
    (Class::C, 256.0, Some(512.0), 101.1),
    (Class::D, 1024.0, Some(2048.0), 404.3),
    (Class::E, 4096.0, Some(8192.0), 1617.0),
    (Class::F, 16384.0, Some(32768.0), 6468.0),
    (Class::G, 65536.0, Some(131_072.0), 25873.0),
    (Class::H, 262_144.0, None, 103_490.0),
];

#[test]
fn means_limits_and_velocity_densities_of_the_classes() {
    let mut below = None;
    for (class, mean, limit, velocity) in CLASSES {
        let road = Roughness::of_class(class);
        assert_close(class, &[road.at_reference()], &[mean * 1e-6], 1e-12, 0.0);
        assert_close(
            class,
            &[road.slope_density()],
            &[velocity * 1e-6],
            5e-4,
            0.0,
        );
        assert_eq!(class.upper_limit().is_some(), limit.is_some(), "{class:?}");
        if let (Some(found), Some(limit)) = (class.upper_limit(), limit) {
            assert_close(class, &[found], &[limit * 1e-6], 1e-12, 0.0);
        }
        assert_eq!(class.lower_limit(), below, "{class:?}");
        below = class.upper_limit();
        assert_eq!(road.class(), class);
    }
}

#[test]
fn a_density_at_a_limit_is_of_the_upper_class() {
    let class_of = |density: f64| Roughness::new(density).unwrap().class();
    assert_eq!(class_of(31.9e-6), Class::A);
    assert_eq!(class_of(32.1e-6), Class::B);
    assert_eq!(class_of(1e-9), Class::A);
    assert_eq!(class_of(0.1310), Class::G);
    assert_eq!(class_of(0.1311), Class::H);
    assert_eq!(class_of(9.0), Class::H);
}

/// Computed independently: 4π² · 256e-6 · 0.01 · 20 = 2.0213e-3 m²/s²/Hz. Derived: at 2 Hz and
/// 20 m/s a wave is 10 m long, which is 0.1 cycle/m, so the density is 256e-6/20 m²/Hz.
#[test]
fn densities_in_time_at_a_speed() {
    let road = Roughness::of_class(Class::C);
    assert_close(
        "velocity",
        &[road.velocity_density(20.0)],
        &[2.0213e-3],
        3e-5,
        0.0,
    );
    let found = [
        road.density_in_time(2.0, 20.0),
        road.density_in_time(4.0, 20.0),
    ];
    assert_close("displacement", &found, &[12.8e-6, 3.2e-6], 1e-12, 0.0);
}

/// Derived: 2π · 16e-6 · 0.01 = 1.00531e-6 m³ for class A at 1 rad/m, and back.
#[test]
fn angular_form_is_two_classes_away_from_the_form_per_cycle() {
    let road = Roughness::of_class(Class::A);
    assert_close(
        "at 1 rad/m",
        &[road.angular_density(1.0)],
        &[1.005_309_65e-6],
        1e-8,
        0.0,
    );
    let back = Roughness::from_angular(road.angular_density(1.0)).unwrap();
    assert_close("back", &[back.at_reference()], &[16e-6], 1e-12, 0.0);
    // Density per rad/m times 2π rad/m is density per cycle/m times 1 cycle/m.
    let n = 0.7;
    let angular = road.angular_density(std::f64::consts::TAU * n) * std::f64::consts::TAU;
    assert_close("same share", &[angular], &[road.density(n)], 1e-12, 0.0);
}

/// Derived: 0.1 √(16e-6 (1/0.011 − 1/2.83)) = 3.806 mm.
#[test]
fn height_of_the_smoothest_class_in_the_whole_band() {
    let rms = Roughness::of_class(Class::A).rms(BAND);
    assert_close("rms", &[rms], &[3.806e-3], 2e-4, 0.0);
    // Two halves add up as squares.
    let road = Roughness::of_class(Class::D);
    let part = |from, to| road.rms(Band::new(from, to).unwrap()).powi(2);
    let whole = part(0.02, 2.0);
    assert_close(
        "parts",
        &[part(0.02, 0.3) + part(0.3, 2.0)],
        &[whole],
        1e-12,
        0.0,
    );
}

/// Published short form; derived that its k = 3 is the limit between A and B.
#[test]
fn short_form_with_three_is_a_limit_and_no_mean() {
    let limit = Class::A.upper_limit().unwrap();
    assert_close("k 3", &[density_of_short_form(3)], &[limit], 1e-12, 0.0);
    // Amplitude √Δn 2^k 1e-3 n0/n of one wave, here k 5, n 0.4, Δn 0.01.
    let amplitude = 0.01_f64.sqrt() * 32.0 * 1e-3 * 0.1 / 0.4;
    let density = Roughness::new(density_of_short_form(5))
        .unwrap()
        .density(0.4);
    assert_close(
        "wave",
        &[amplitude * amplitude / 2.0],
        &[density * 0.01],
        1e-12,
        0.0,
    );
}

#[test]
fn what_is_no_density_and_no_band_is_refused() {
    for density in [0.0, -1e-6, f64::NAN, f64::INFINITY] {
        assert!(Roughness::new(density).is_none(), "{density}");
        assert!(Roughness::from_angular(density).is_none(), "{density}");
    }
    for (from, to) in [
        (0.0, 1.0),
        (1.0, 1.0),
        (2.0, 1.0),
        (0.1, f64::INFINITY),
        (f64::NAN, 1.0),
    ] {
        assert!(Band::new(from, to).is_none(), "{from} to {to}");
    }
}
