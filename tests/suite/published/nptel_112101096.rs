//! NPTEL course 112101096, module 4, lecture 1: acceleration of the slider-crank.

use bedplate::drive::crank::SliderCrank;

/// Published: with a rod of four crank radii, stopping the root after its first term costs about 0.05 %.
#[test]
fn the_root_cut_after_its_first_term_misses_a_twentieth_of_a_per_cent() {
    let (ratio, crank) = (0.25, SliderCrank::new(0.25).unwrap());
    let worst = (0..3600)
        .map(|step| f64::from(step).to_radians() / 10.0)
        .map(|angle| {
            let root = ratio * (crank.height(angle) - angle.cos());
            let cut = 1.0 - (ratio * angle.sin()).powi(2) / 2.0;
            (cut / root - 1.0).abs()
        })
        .fold(0.0, f64::max);
    assert!((worst - 5.21e-4).abs() < 2e-6, "{worst}");
}
