//! A made track against the density it is made from.

use bedplate::road::roughness::{Band, Class, Roughness};
use bedplate::road::track::{Track, TrackError};

use crate::kit::assert_close;

fn made(seed: u64) -> Track {
    let band = Band::new(0.02, 1.0).unwrap();
    Track::synthesise(Roughness::of_class(Class::C), band, 200.0, seed).unwrap()
}

/// Derived: whole waves do not add to each other's mean square, so 1024 samples of one track have
/// the root mean square that the density has in the band, 0.1 √(256e-6 (1/0.02 − 1/1)) = 11.2 mm.
#[test]
fn heights_have_the_mean_square_of_the_density() {
    let track = made(7);
    let squares: f64 = (0..1024)
        .map(|place| track.height(f64::from(place) * 200.0 / 1024.0).powi(2))
        .sum();
    let expected = 0.1 * (256e-6 * 49.0_f64).sqrt();
    assert_close(
        "sampled",
        &[(squares / 1024.0).sqrt()],
        &[expected],
        1e-9,
        0.0,
    );
    assert_close("stated", &[track.rms()], &[expected], 1e-12, 0.0);
    // In a narrower band as well, from the waves alone: 0.1 to 0.5 cycle/m, ends between two waves.
    let part: f64 = track
        .waves()
        .iter()
        .filter(|wave| (0.0975..0.5025).contains(&wave.frequency))
        .map(|wave| wave.amplitude.powi(2) / 2.0)
        .sum();
    let share = Roughness::of_class(Class::C).rms(Band::new(0.0975, 0.5025).unwrap());
    assert_close("part", &[part.sqrt()], &[share], 1e-12, 0.0);
}

/// Derived: slopes have (2π n0)² Gd(n0) per cycle/m, 0.98 cycle/m of them. The middle of a step is
/// not its mean, hence the tolerance.
#[test]
fn slopes_have_the_density_of_the_slope() {
    let track = made(7);
    let squares: f64 = (0..1024)
        .map(|place| track.slope(f64::from(place) * 200.0 / 1024.0).powi(2))
        .sum();
    let expected = Roughness::of_class(Class::C).slope_density() * 0.98;
    assert_close("slope", &[squares / 1024.0], &[expected], 0.02, 0.0);
    let step = 1e-5;
    for at in [0.3, 17.0, 151.2] {
        let difference = (track.height(at + step) - track.height(at - step)) / (2.0 * step);
        assert_close(at, &[track.slope(at)], &[difference], 1e-6, 1e-8);
    }
}

/// Regression: the first phase guards the stream of the generator, which a seed promises to keep.
#[test]
fn a_seed_means_one_track() {
    assert_eq!(made(7), made(7));
    assert_ne!(made(7), made(8));
    let track = made(7);
    assert_close(
        "repeats",
        &[track.height(3.0 + track.length())],
        &[track.height(3.0)],
        1e-9,
        1e-14,
    );
    let phases: Vec<f64> = track.waves().iter().map(|wave| wave.phase).collect();
    assert_eq!(phases.len(), 197);
    // Derived: even phases between 0 and 2π have the mean π, within 4 of its deviations.
    let mean = phases.iter().sum::<f64>() / phases.len() as f64;
    let deviation = std::f64::consts::TAU / (12.0 * phases.len() as f64).sqrt();
    assert!(
        (mean - std::f64::consts::PI).abs() < 4.0 * deviation,
        "{mean}"
    );
    assert_close("regression", &phases[..1], &[0.991_462_118_330], 0.0, 1e-11);
}

#[test]
fn tracks_that_cannot_be_made_are_refused() {
    let make = |from, to, length| {
        let band = Band::new(from, to).unwrap();
        Track::synthesise(Roughness::of_class(Class::A), band, length, 1)
            .map(|track| track.waves().len())
    };
    assert_eq!(make(0.01, 1.0, 99.0), Err(TrackError::TooShort));
    assert_eq!(make(0.01, 1.0, 100.0), Ok(100));
    assert_eq!(make(0.01, 1e5, 100.0), Err(TrackError::TooManyWaves));
    for length in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        assert_eq!(make(0.01, 1.0, length), Err(TrackError::Length), "{length}");
    }
}
