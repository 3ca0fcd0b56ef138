//! Rubber between plates, pressed and pulled far.

use bedplate::model::isolator::AxisPoint;
use bedplate::model::isolator::block::compression::Bulge;

use crate::kit::assert_close;

/// Computed independently: e (1 + e) beside the theory of large strain; up to 20 % the first is
/// taken, from 30 % the second.
#[test]
fn large_compression() {
    for (e, expected) in [
        (0.05, 0.0525),
        (0.10, 0.1100),
        (0.15, 0.1725),
        (0.20, 0.2400),
        (0.30, 0.4469),
        (0.50, 1.166_667),
        (0.80, 8.266_667),
        // Straight on from 80 %: slope (2/0.2³ + 1)/3.
        (1.00, 8.266_667 + 0.2 * 251.0 / 3.0),
        (-0.10, -0.091_184_6),
        (-0.50, -0.351_851_9),
    ] {
        let found = Bulge::AllRound.at(e).force;
        assert_close(e, &[found], &[expected], 1.2e-4, 0.0);
    }
    for (e, expected) in [
        (0.10, 0.1150),
        (0.20, 0.2600),
        (0.30, 0.553_863),
        (0.50, 1.875),
        (0.80, 31.2),
        (1.00, 31.2 + 0.2 * 1876.0 / 4.0),
        (-0.10, -0.087_171_3),
        (-0.50, -0.300_925_9),
    ] {
        let found = Bulge::TwoSides.at(e).force;
        assert_close(e, &[found], &[expected], 1e-6, 0.0);
    }
    // Between the two forms: by hand, the cubic at its middle is (f0 + f1)/2 + h (s0 - s1)/8.
    let slope = (2.0 / 0.343 + 1.0) / 3.0;
    let middle = (0.24 + 0.446_939) / 2.0 + 0.1 * (1.4 - slope) / 8.0;
    let found = Bulge::AllRound.at(0.25).force;
    assert_close("bridge", &[found], &[middle], 2e-6, 0.0);
}

/// Energy by Simpson's rule on the stress, and a stress that always rises without a step.
#[test]
fn stress_rises_smoothly_and_energy_is_its_integral() {
    for bulge in [Bulge::AllRound, Bulge::TwoSides] {
        let mut sum = 0.0;
        let n = 6000;
        let h = 1.2 / f64::from(n);
        let mut before = bulge.at(0.0);
        for step in 1..=n {
            let e = h * f64::from(step);
            let here = bulge.at(e);
            let middle = bulge.at(e - h / 2.0).force;
            sum += h * (before.force + 4.0 * middle + here.force) / 6.0;
            assert!(here.force > before.force && here.tangent > 0.99, "{e}");
            let jump = (here.tangent - before.tangent).abs() / here.tangent;
            assert!(jump < 6e-3, "{bulge:?} {e}: {jump}");
            assert_close(e, &[here.energy], &[sum], 1e-6, 1e-12);
            before = here;
        }
        // Computed independently by quadrature of theory.
        let pulled = [bulge.at(-0.1).energy, bulge.at(-0.5).energy];
        let expected = match bulge {
            Bulge::AllRound => [0.004_696_97, 0.097_222_2],
            Bulge::TwoSides => [0.004_555_79, 0.086_805_6],
        };
        assert_close(bulge, &pulled, &expected, 2e-6, 0.0);
        // At rest both sides have the same value, slope and bend.
        let AxisPoint {
            force,
            tangent,
            energy,
        } = bulge.at(0.0);
        assert_close(
            "rest",
            &[force, tangent, energy],
            &[0.0, 1.0, 0.0],
            0.0,
            1e-15,
        );
        let bend = |e: f64| (bulge.at(e).tangent - 1.0) / e;
        assert_close("bend", &[bend(-1e-6)], &[bend(1e-6)], 1e-4, 0.0);
    }
}
