//! Isolators from a measured curve.

use bedplate::model::isolator::Law;
use bedplate::model::isolator::curve::monotone::{CurveFault, MonotoneCurve};
use bedplate::spatial::Vec3;

use crate::kit::assert_close;
use crate::kit::law::{assert_elastic, assumed, described, refused};

const UNEVEN: [[f64; 2]; 8] = [
    [-6e-3, -2100.0],
    [-4.5e-3, -1200.0],
    [-3e-3, -700.0],
    [-1e-3, -220.0],
    [0.0, 0.0],
    [2e-3, 310.0],
    [5e-3, 880.0],
    [7.5e-3, 2600.0],
];

const WITH_A_FLAT: [[f64; 2]; 7] = [
    [-3e-3, -900.0],
    [-2e-3, -300.0],
    [0.0, 0.0],
    [1e-3, 0.0],
    [4e-3, 100.0],
    [5e-3, 100.0],
    [5.5e-3, 2000.0],
];

/// Cross-checked: `scipy.interpolate.PchipInterpolator` of SciPy 1.17.1, its derivative and its antiderivative.
/// Columns: deflection, force, slope, energy from 0.
#[test]
fn curve_slope_and_energy_agree_with_a_reference_library() {
    let uneven = [
        [
            -5.8e-3,
            -1956.0084656084653,
            705904.761904762,
            4.418543513831404,
        ],
        [
            -5e-3,
            -1447.0899470899471,
            555555.5555555555,
            3.0653227730906636,
        ],
        [-4.5e-3, -1200.0, 428571.4285714286, 2.40619578896368],
        [
            -3.7e-3,
            -906.3703703703704,
            317777.77777777764,
            1.5695566355245267,
        ],
        [
            -2e-3,
            -446.80288461538464,
            232572.11538461538,
            0.4394736048977457,
        ],
        [
            -0.4e-3,
            -82.2107738786893,
            221439.73971647688,
            0.01596213246572109,
        ],
        [0.0, 0.0, 185438.0664652568, 0.0],
        [
            0.7e-3,
            115.18055383848166,
            149163.66591089644,
            0.04179439853277156,
        ],
        [2e-3, 310.0, 169577.7351247601, 0.3152867771134993],
        [
            3.3e-3,
            512.410664709445,
            159202.6601517013,
            0.8513148655666769,
        ],
        [
            6.1e-3,
            1442.6282232448375,
            689268.4554572271,
            3.2387330055749226,
        ],
        [
            7.4e-3,
            2508.8598317986443,
            908185.8697008009,
            5.77636937218055,
        ],
    ];
    let with_a_flat = [
        [
            -2.5e-3,
            -538.3928571428572,
            648214.2857142857,
            0.41573660714285715,
        ],
        [
            -1e-3,
            -85.71428571428571,
            160714.2857142857,
            0.02946428571428572,
        ],
        [0.5e-3, 0.0, 0.0, 0.0],
        [1e-3, 0.0, 0.0, 0.0],
        [
            2e-3,
            25.925925925925927,
            44444.44444444445,
            0.00925925925925919,
        ],
        [
            3.9e-3,
            99.6740740740741,
            6444.444444444467,
            0.1400109259259259,
        ],
        [4.5e-3, 100.0, 0.0, 0.2],
        [
            5.2e-3,
            525.6000000000028,
            3850666.666666679,
            0.29972444444444474,
        ],
    ];
    let compare = |points: &[[f64; 2]], expected: &[[f64; 4]]| {
        let curve = MonotoneCurve::through(points).unwrap();
        for [x, force, slope, energy] in expected {
            let point = curve.at(*x);
            let found = [point.force, point.tangent, point.energy];
            assert_close(x, &found, &[*force, *slope, *energy], 1e-11, 1e-13);
        }
    };
    compare(&UNEVEN, &uneven);
    compare(&WITH_A_FLAT, &with_a_flat);
    let curve = MonotoneCurve::through(&UNEVEN).unwrap();
    let free = curve.at(0.0);
    assert_close("free", &[free.force, free.energy], &[0.0; 2], 0.0, 0.0);
}

/// Derived: points of f = 250e3 x lie on a line, so the curve is that line.
/// Outside it goes on with the slope of its end (SciPy's end slopes of the uneven curve:
/// 733 333.3 and 914 363.6 N/m), worked by hand 1 mm beyond.
#[test]
fn a_line_stays_a_line_and_the_last_slope_goes_on() {
    let line = [[-4e-3, -1000.0], [0.0, 0.0], [1e-3, 250.0], [6e-3, 1500.0]];
    let curve = MonotoneCurve::through(&line).unwrap();
    for x in [-9e-3, -4e-3, -3.3e-3, 1e-4, 2e-3, 6e-3, 11e-3] {
        let point = curve.at(x);
        let found = [point.force, point.tangent, point.energy];
        let expected = [250e3 * x, 250e3, 125e3 * x * x];
        assert_close(x, &found, &expected, 1e-12, 1e-13);
    }
    let curve = MonotoneCurve::through(&UNEVEN).unwrap();
    assert_close("range", &curve.range(), &[-6e-3, 7.5e-3], 0.0, 0.0);
    let (low, high) = (curve.at(-7e-3), curve.at(8.5e-3));
    let forces = [low.force, high.force];
    let expected = [-2100.0 - 733.333_333_333, 2600.0 + 914.363_636_364];
    assert_close("beyond", &forces, &expected, 1e-12, 0.0);
    let ends = [curve.at(-6e-3).energy, curve.at(7.5e-3).energy];
    let energies = [
        ends[0] + 2100e-3 + 733.333_333_333e-3 / 2.0,
        ends[1] + 2600e-3 + 914.363_636_364e-3 / 2.0,
    ];
    assert_close("beyond", &[low.energy, high.energy], &energies, 1e-12, 0.0);
}

/// Derived: the invariant the interpolation is chosen for, along every piece of rough curves.
#[test]
fn the_force_never_overshoots_a_point_and_never_falls() {
    let steps = [
        [-3e-3, -5000.0],
        [-2.9e-3, -10.0],
        [0.0, 0.0],
        [0.1e-3, 900.0],
        [4e-3, 901.0],
        [4.2e-3, 9000.0],
    ];
    for points in [&UNEVEN[..], &WITH_A_FLAT, &steps] {
        let curve = MonotoneCurve::through(points).unwrap();
        for pair in points.windows(2) {
            let [[x1, f1], [x2, f2]] = [pair[0], pair[1]];
            let mut last = f1;
            for i in 0..=200 {
                let x = x1 + (x2 - x1) * f64::from(i) / 200.0;
                let point = curve.at(x);
                let rounding = 1e-12 * (f1.abs() + f2.abs());
                assert!(
                    point.force >= last - rounding && point.force <= f2 + rounding,
                    "{x}"
                );
                assert!(point.tangent >= -rounding / (x2 - x1), "{x}");
                last = point.force;
            }
        }
    }
}

#[test]
fn points_that_make_no_curve_are_refused_at_the_point() {
    for (points, fault) in [
        (&[][..], CurveFault::TooFew),
        (&[[0.0, 0.0]], CurveFault::TooFew),
        (
            &[[0.0, 0.0], [1e-3, 1.0], [1e-3, 2.0]],
            CurveFault::NotRising(2),
        ),
        (
            &[[0.0, 0.0], [1e-3, 5.0], [2e-3, 4.0]],
            CurveFault::Falling(2),
        ),
        (&[[0.0, 0.0], [f64::NAN, 5.0]], CurveFault::NotRising(1)),
        (&[[0.0, 0.0], [1e-3, f64::NAN]], CurveFault::Falling(1)),
        (&[[1e-3, 0.0], [2e-3, 4.0]], CurveFault::NotThroughZero),
        (&[[-1e-3, -1.0], [1e-3, 1.0]], CurveFault::NotThroughZero),
    ] {
        assert_eq!(MonotoneCurve::through(points), Err(fault), "{points:?}");
    }
}

const ONE_WAY: &str = "kind = \"curve\"\nrates = \"80, 90, 0 N/mm\"\n\
    curve = { w = [[\"0 mm\", \"0 N\"], [\"2 mm\", \"0.7 kN\"], [\"5 mm\", \"2.1 kN\"]] }";

/// Cross-checked as above, with the points written on both sides for the reference library.
#[test]
fn a_curve_of_one_way_is_the_same_the_other_way() {
    let isolator = described(ONE_WAY);
    for x in [3.5e-3, 1e-3, -1e-3, -3.5e-3] {
        let point = isolator.law.at(&Vec3::new(1e-3, -2e-3, x));
        let (force, slope, energy) = if x.abs() > 2e-3 {
            (1347.3349056603772, 466776.7295597484, 2.206864190251572)
        } else {
            (338.44339622641513, 338443.3962264151, 0.17018474842767262)
        };
        // Along u and v the rates: 80 N, −180 N and 0.04 + 0.18 J.
        let found = [point.force.x, point.force.y, point.force.z, point.energy];
        let expected = [80.0, -180.0, force * x.signum(), energy + 0.22];
        assert_close(x, &found, &expected, 1e-12, 0.0);
        assert_close(x, &[point.tangent[(2, 2)]], &[slope], 1e-12, 0.0);
    }
    assert_eq!(isolator.measured, [None, None, Some([-5e-3, 5e-3])]);
    assert!(
        isolator.remarks[0]
            .starts_with("Along w the force follows a curve through 3 measured points"),
        "{:?}",
        isolator.remarks
    );
    let told = assumed(ONE_WAY);
    let told: Vec<_> = told.iter().filter(|(key, _)| key == "curve.w").collect();
    assert_eq!(told.len(), 1, "{told:?}");
    assert_eq!(told[0].1, "measured one way, taken the same the other way");
}

/// Derived: the same points in any of the four ways to write one side give the same law.
#[test]
fn one_side_may_be_written_with_either_sign_and_in_either_order() {
    let isolator = described(ONE_WAY);
    for points in [
        "[[\"5 mm\", \"2.1 kN\"], [\"2 mm\", \"0.7 kN\"], [\"0 mm\", \"0 N\"]]",
        "[[\"-5 mm\", \"-2.1 kN\"], [\"-2 mm\", \"-0.7 kN\"], [\"0 mm\", \"0 N\"]]",
        "[[\"0 mm\", \"0 N\"], [\"-2 mm\", \"-0.7 kN\"], [\"-5 mm\", \"-2.1 kN\"]]",
    ] {
        let other = described(&format!(
            "kind = \"curve\"\nrates = \"80, 90, 0 N/mm\"\ncurve = {{ w = {points} }}"
        ));
        for x in [-7e-3, -3e-3, 0.4e-3, 2e-3, 6e-3] {
            let x = Vec3::new(0.0, 1e-3, x);
            assert_eq!(isolator.law.at(&x), other.law.at(&x), "{points}");
        }
        assert_eq!(other.measured, isolator.measured);
    }
}

/// Both ways in one list: nothing is assumed, and the numbers are those of the list.
#[test]
fn a_curve_of_both_ways_is_taken_as_it_stands() {
    let keys = "kind = \"curve\"\nrates = \"0 N/mm\"\ncurve = { \
        u = [[\"0 mm\", \"0 N\"], [\"3 mm\", \"300 N\"]], \
        v = [[\"0 mm\", \"0 N\"], [\"3 mm\", \"240 N\"]], \
        w = [[\"-6 mm\", \"-2.1 kN\"], [\"-3 mm\", \"-700 N\"], [\"0 mm\", \"0 N\"], [\"5 mm\", \"880 N\"]] }";
    let isolator = described(keys);
    let at = |x: [f64; 3]| isolator.law.at(&Vec3::from(x)).force;
    let found = [at([3e-3, -3e-3, -6e-3]), at([1e-3, 0.0, 5e-3])];
    let expected = [
        Vec3::new(300.0, -240.0, -2100.0),
        Vec3::new(100.0, 0.0, 880.0),
    ];
    for (found, expected) in found.iter().zip(&expected) {
        assert_close("points", found.as_slice(), expected.as_slice(), 1e-12, 0.0);
    }
    assert_eq!(isolator.measured[2], Some([-6e-3, 5e-3]));
    let keys_told: Vec<String> = assumed(keys).into_iter().map(|(key, _)| key).collect();
    assert!(!keys_told.contains(&"curve.w".to_owned()));
    assert!(keys_told.contains(&"curve.u".to_owned()));
}

#[test]
fn a_measured_law_is_elastic() {
    let isolator = described(ONE_WAY);
    assert_elastic(
        isolator.law.as_ref(),
        &[
            [0.0, 1e-3, -7e-3],
            [1e-3, -2e-3, -3e-3],
            [-2e-3, 0.5e-3, 0.3e-3],
            [3e-3, 0.0, 4.2e-3],
            [0.0, -1e-3, 9e-3],
        ],
    );
    let curves = bedplate::model::isolator::curve::Curves {
        axes: [&UNEVEN[..], &WITH_A_FLAT, &UNEVEN].map(|points| {
            let curve = MonotoneCurve::through(points).unwrap();
            bedplate::model::isolator::curve::Axis::Measured(curve)
        }),
    };
    assert_elastic(
        &curves as &dyn Law,
        &[
            [1e-3, -2.5e-3, -7e-3],
            [-5e-3, 0.5e-3, 1e-3],
            [8e-3, 4.6e-3, -2e-3],
            [-0.5e-3, 5.3e-3, 6e-3],
        ],
    );
}

/// 200 points are taken, 201 are not.
#[test]
fn very_long_curves_are_refused() {
    let keys = |count: u32| {
        let points: Vec<String> = (0..count)
            .map(|i| format!("[\"{} um\", \"{i} N\"]", 10 * i))
            .collect();
        format!(
            "kind = \"curve\"\nrates = \"80, 80, 0 N/mm\"\ncurve = {{ w = [{}] }}",
            points.join(", ")
        )
    };
    assert_eq!(refused(&keys(200)), Vec::<&str>::new());
    assert_eq!(refused(&keys(201)), ["M022"]);
    assert_eq!(refused(&keys(501)), ["M022"]);
}
