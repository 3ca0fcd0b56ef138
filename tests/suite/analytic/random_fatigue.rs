//! Damage of counted cycles and of random histories.

use bedplate::history::damage::{FatigueLine, damage, equivalent_range};
use bedplate::history::rainflow::{Cycle, count_repeating};
use bedplate::history::spectrum::{Amplitudes, Form, Moments};
use bedplate::road::roughness::{Band, Class, Roughness};
use bedplate::road::track::Track;

use crate::kit::assert_close;

/// A flat density between two frequencies, with points close enough for its edges.
fn flat(from: f64, to: f64) -> Moments {
    Moments::of_density(&[(from, 1.0), (to, 1.0)]).unwrap()
}

/// Three flat stretches, 3 from 1 to 2 Hz, 1 to 6 Hz, 0.2 to 20 Hz; edges a millionth wide.
fn stepped() -> Moments {
    let edge = 1e-6;
    Moments::of_density(&[
        (1.0, 3.0),
        (2.0 - edge, 3.0),
        (2.0 + edge, 1.0),
        (6.0 - edge, 1.0),
        (6.0 + edge, 0.2),
        (20.0, 0.2),
    ])
    .unwrap()
}

/// Integral from 0 to 20 by Simpson's rule, fine enough for the exponential of a narrow band.
fn integral(value: impl Fn(f64) -> f64) -> f64 {
    let steps = 200_000;
    let step = 20.0 / f64::from(steps);
    (0..=steps)
        .map(|place| {
            let weight = match place {
                0 => 1.0,
                last if last == steps => 1.0,
                odd if odd % 2 == 1 => 4.0,
                _ => 2.0,
            };
            weight * value(f64::from(place) * step)
        })
        .sum::<f64>()
        * step
        / 3.0
}

/// Worked by hand: ranges 10, 20 and 20 with a line through 10 and 1000 cycles of slope 3 do
/// (0.5 + 8 + 8)/1000; the equivalent range for 2 cycles is 10 (16.5/2)^(1/3).
#[test]
fn damage_of_counted_cycles() {
    let cycle = |to, count| Cycle {
        from: 0.0,
        to,
        count,
    };
    let cycles = [cycle(10.0, 0.5), cycle(20.0, 1.0), cycle(-20.0, 1.0)];
    let line = FatigueLine::through(10.0, 1000.0, 3.0).unwrap();
    assert_close("damage", &[damage(&cycles, &line)], &[16.5e-3], 1e-12, 0.0);
    let equivalent = equivalent_range(&cycles, 3.0, 2.0).unwrap();
    assert_close(
        "equivalent",
        &[equivalent],
        &[10.0 * 8.25_f64.cbrt()],
        1e-12,
        0.0,
    );
    assert_eq!(equivalent_range(&[], 3.0, 2.0), Some(0.0));
    for (slope, number) in [
        (0.0, 1.0),
        (3.0, 0.0),
        (f64::NAN, 1.0),
        (3.0, f64::INFINITY),
    ] {
        assert_eq!(equivalent_range(&cycles, slope, number), None);
        assert!(FatigueLine::through(10.0, number, slope).is_none());
    }
    assert!(FatigueLine::through(0.0, 1.0, 3.0).is_none());
}

/// Derived: moments of a flat density from a to b are (b^(k+1) − a^(k+1))/(k+1); of lines, sums.
#[test]
fn moments_of_densities_and_lines() {
    let moments = stepped();
    // 9.8, 56.9 (not asked for), 595.2667, 129256.36 by hand.
    let expected = [
        9.8_f64.sqrt(),
        (595.266_667_f64 / 9.8).sqrt(),
        (129_256.36_f64 / 595.266_667).sqrt(),
        0.528_898_780,
    ];
    let found = [
        moments.rms(),
        moments.upward_crossings(),
        moments.peaks(),
        moments.irregularity(),
    ];
    assert_close("stepped", &found, &expected, 1e-8, 0.0);
    // Derived: a density that rises from 0 at 0 to 2 at 3 Hz has m0 = 3, m2 = 2·3³/4 = 13.5.
    let rising = Moments::of_density(&[(0.0, 0.0), (3.0, 2.0)]).unwrap();
    let found = [rising.rms(), rising.upward_crossings()];
    assert_close(
        "rising",
        &found,
        &[3.0_f64.sqrt(), 4.5_f64.sqrt()],
        1e-12,
        0.0,
    );
    let lines = Moments::of_lines(&[(1.0, 4.0), (3.0, 1.0)]).unwrap();
    let found = [lines.rms(), lines.upward_crossings(), lines.peaks()];
    let expected = [
        5.0_f64.sqrt(),
        (13.0_f64 / 5.0).sqrt(),
        (85.0_f64 / 13.0).sqrt(),
    ];
    assert_close("lines", &found, &expected, 1e-12, 0.0);
    for lines in [
        &[][..],
        &[(0.0, 1.0)],
        &[(1.0, -1.0), (2.0, 3.0)],
        &[(1.0, 0.0)],
        &[(1.0, f64::NAN)],
    ] {
        assert!(Moments::of_lines(lines).is_none(), "{lines:?}");
    }
    for density in [
        &[][..],
        &[(1.0, 1.0)],
        &[(2.0, 1.0), (1.0, 1.0)],
        &[(-1.0, 1.0), (1.0, 1.0)],
        &[(1.0, 0.0), (2.0, 0.0)],
    ] {
        assert!(Moments::of_density(density).is_none(), "{density:?}");
    }
}

/// Computed independently, with sixty digits: the parameters, and third and fifth power by quadrature.
#[test]
fn distribution_after_dirlik() {
    let amplitudes = Amplitudes::dirlik(&stepped());
    let Form::Dirlik {
        exponential,
        scale,
        narrow,
        narrow_scale,
        wide,
    } = amplitudes.form()
    else {
        panic!("a wide band is no narrow one");
    };
    let found = [exponential, narrow_scale, narrow, wide, scale];
    let expected = [
        0.178_605_932,
        0.317_454_432,
        0.475_272_834,
        0.346_121_234,
        0.223_257_415,
    ];
    assert_close("parameters", &found, &expected, 1e-7, 0.0);
    let powers = [3.0, 5.0].map(|k| amplitudes.mean_power(k));
    assert_close(
        "powers",
        &powers,
        &[1.370_491_105, 6.547_674_678],
        1e-7,
        0.0,
    );
    // A line through range 1 and one cycle gives the sum of the ranges to the power of its slope.
    let line = FatigueLine::through(1.0, 1.0, 5.0).unwrap();
    assert_close(
        "ranges",
        &[amplitudes.damage_rate(&line)],
        &[928_265.991],
        1e-7,
        0.0,
    );
}

#[test]
fn densities_integrate_to_one_and_to_their_moments() {
    for moments in [
        stepped(),
        flat(5.0, 15.0),
        flat(9.5, 10.5),
        flat(0.1, 100.0),
    ] {
        for amplitudes in [
            Amplitudes::dirlik(&moments),
            Amplitudes::narrow_band(&moments),
        ] {
            let one = integral(|z| amplitudes.density(z));
            assert_close("one", &[one], &[1.0], 1e-6, 0.0);
            for k in [1.0, 3.0, 5.0] {
                let power = integral(|z| z.powf(k) * amplitudes.density(z));
                assert_close(k, &[power], &[amplitudes.mean_power(k)], 1e-6, 0.0);
            }
            assert_close("below", &[amplitudes.density(-0.1)], &[0.0], 0.0, 0.0);
        }
    }
}

/// Derived: Rayleigh's amplitudes have a mean square of 2 and a mean of √(π/2).
#[test]
fn narrow_band_is_rayleigh() {
    let narrow = Amplitudes::narrow_band(&stepped());
    let found = [1.0, 2.0, 4.0].map(|k| narrow.mean_power(k));
    let expected = [std::f64::consts::FRAC_PI_2.sqrt(), 2.0, 8.0];
    assert_close("powers", &found, &expected, 1e-12, 0.0);
    assert_close(
        "rate",
        &[narrow.rate()],
        &[stepped().upward_crossings()],
        1e-12,
        0.0,
    );
}

/// Computed independently: slope 5, flat from 9.5 to 10.5 Hz, Dirlik over narrow band 0.99836.
/// The narrower, the nearer to one; where Dirlik's numbers vanish the narrow band is taken and
/// named, without a step.
#[test]
fn dirlik_turns_into_the_narrow_band() {
    let line = FatigueLine::through(1.0, 1.0, 5.0).unwrap();
    let ratio = |half: f64| {
        let moments = flat(10.0 - half, 10.0 + half);
        Amplitudes::dirlik(&moments).damage_rate(&line)
            / Amplitudes::narrow_band(&moments).damage_rate(&line)
    };
    let found = [ratio(0.5), ratio(0.1)];
    assert_close("ratio", &found, &[0.998_361_43, 0.999_933_38], 1e-7, 0.0);
    for half in [3e-2, 1.5e-2, 1.4e-2, 1e-2, 1e-3, 1e-5] {
        assert_close(half, &[ratio(half)], &[1.0], 1e-5, 0.0);
    }
    let spike = Moments::of_lines(&[(10.0, 2.0)]).unwrap();
    assert_eq!(Amplitudes::dirlik(&spike).form(), Form::NarrowBand);
    assert_ne!(
        Amplitudes::dirlik(&flat(9.0, 11.0)).form(),
        Form::NarrowBand
    );
}

/// Cross-checked: sums of cosines with random phases counted by rainflow against Dirlik, which was
/// fitted to such counts. A different route from history to damage; 40 histories leave some per cent.
#[test]
fn rainflow_of_made_histories_is_what_dirlik_says() {
    let band = Band::new(0.5, 4.0).unwrap();
    let road = Roughness::of_class(Class::C);
    let (length, seeds) = (100.0, 40);
    let line = FatigueLine::through(1e-3, 1.0, 4.0).unwrap();
    let mut counted = 0.0;
    for seed in 0..seeds {
        let track = Track::synthesise(road, band, length, seed).unwrap();
        let heights: Vec<f64> = (0..4000)
            .map(|place| track.height(f64::from(place) * length / 4000.0))
            .collect();
        counted += damage(&count_repeating(&heights).unwrap(), &line) / length / seeds as f64;
    }
    let density: Vec<(f64, f64)> = (0..=3500)
        .map(|place| 0.5 + f64::from(place) * 1e-3)
        .map(|n| (n, road.density(n)))
        .collect();
    let moments = Moments::of_density(&density).unwrap();
    let dirlik = Amplitudes::dirlik(&moments).damage_rate(&line);
    let narrow = Amplitudes::narrow_band(&moments).damage_rate(&line);
    assert_close("dirlik", &[dirlik], &[counted], 0.08, 0.0);
    assert!(narrow > 1.1 * counted, "{narrow} {counted}");
}
