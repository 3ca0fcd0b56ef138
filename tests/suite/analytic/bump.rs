//! Bumps and potholes under a wheel.

use bedplate::road::bump::{Bump, Profile, depth_reached};

use crate::kit::assert_close;

/// Derived: 0.1 m high, 0.5 m long at 10 m/s lasts 0.05 s. At a quarter of it the half sine is
/// 0.1/√2 high; its top has π²·0.1·400 = 394.8 m/s², its ends a kick of π·0.1·20 m/s. The versed
/// sine is half as high at a quarter, and twice as sharp at the top.
#[test]
fn path_of_the_wheel() {
    let pi = std::f64::consts::PI;
    let crossing = |profile| {
        Bump::new(profile, 0.1, 0.5)
            .unwrap()
            .crossed_at(10.0)
            .unwrap()
    };
    let (half, versed) = (crossing(Profile::HalfSine), crossing(Profile::VersedSine));
    assert_close(
        "duration",
        &[half.duration(), versed.duration()],
        &[0.05; 2],
        1e-12,
        0.0,
    );
    let quarter = [half.motion(0.0125).height, versed.motion(0.0125).height];
    assert_close(
        "quarter",
        &quarter,
        &[0.1 / 2.0_f64.sqrt(), 0.05],
        1e-12,
        0.0,
    );
    let speeds = [half.motion(0.0125).velocity, versed.motion(0.0125).velocity];
    assert_close(
        "speed",
        &speeds,
        &[2.0 * pi / 2.0_f64.sqrt(), 2.0 * pi],
        1e-12,
        0.0,
    );
    let tops = [
        half.motion(0.025).acceleration,
        versed.motion(0.025).acceleration,
    ];
    let sharp = pi * pi * 40.0;
    assert_close("top", &tops, &[-sharp, -2.0 * sharp], 1e-12, 0.0);
    let largest = [half.largest_acceleration(), versed.largest_acceleration()];
    assert_close("largest", &largest, &[sharp, 2.0 * sharp], 1e-12, 0.0);
    assert_close(
        "kick",
        &[half.kick(), versed.kick()],
        &[2.0 * pi, 0.0],
        1e-12,
        1e-12,
    );
    for outside in [-1e-6, 0.050_001, f64::NAN] {
        let motion = half.motion(outside);
        let all = [motion.height, motion.velocity, motion.acceleration];
        assert_close(outside, &all, &[0.0; 3], 0.0, 0.0);
    }
}

/// Derived: a wheel of 0.3 m radius on edges 0.36 m apart drops 0.3 − √(0.09 − 0.0324) = 0.06 m;
/// into a hole longer than the wheel to the bottom; into a shallow one too.
#[test]
fn a_wheel_bridges_a_short_hole() {
    let depth = |depth, length| depth_reached(depth, length, 0.3).unwrap();
    let found = [
        depth(0.1, 0.36),
        depth(0.04, 0.36),
        depth(0.1, 0.6),
        depth(0.5, 2.0),
    ];
    assert_close("depth", &found, &[0.06, 0.04, 0.1, 0.5], 1e-12, 0.0);
    let hole = Bump::pothole(0.1, 0.36, 0.3).unwrap();
    assert_close("height", &[hole.height()], &[-0.06], 1e-12, 0.0);
    let crossing = hole.crossed_at(5.0).unwrap();
    assert_close(
        "bottom",
        &[crossing.motion(0.036).height],
        &[-0.06],
        1e-12,
        0.0,
    );
}

#[test]
fn a_bump_without_length_is_refused() {
    for length in [0.0, -0.5, f64::NAN, f64::INFINITY] {
        assert!(
            Bump::new(Profile::HalfSine, 0.1, length).is_none(),
            "{length}"
        );
        assert!(Bump::pothole(0.1, length, 0.3).is_none(), "{length}");
    }
    assert!(Bump::new(Profile::HalfSine, f64::NAN, 0.5).is_none());
    assert!(Bump::pothole(0.0, 0.5, 0.3).is_none());
    assert!(Bump::pothole(0.1, 0.5, 0.0).is_none());
    let bump = Bump::new(Profile::VersedSine, 0.1, 0.5).unwrap();
    for speed in [0.0, -3.0, f64::NAN, f64::INFINITY] {
        assert!(bump.crossed_at(speed).is_none(), "{speed}");
    }
}
