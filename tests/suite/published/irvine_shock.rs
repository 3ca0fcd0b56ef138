//! T. Irvine, An Introduction to the Shock Response Spectrum, revision S, 2012.
//!
//! Label: from memory. Integrated independently: 55.4405 and 70.1754 g; the source prints two digits.

use bedplate::road::oscillator::Oscillator;
use bedplate::road::pulse::{Pulse, Shape};
use bedplate::road::shock::largest_answer;

use crate::kit::assert_close;

#[test]
fn half_sine_of_50_g_and_11_ms_at_quality_10() {
    let pulse = Pulse::new(Shape::HalfSine, 50.0, 0.011).unwrap();
    let at = |frequency: f64| {
        let oscillator = Oscillator::new(frequency, 0.05).unwrap();
        largest_answer(&oscillator, &pulse).unwrap().acceleration
    };
    assert_close("printed", &[at(30.0), at(140.0)], &[55.0, 70.0], 0.01, 0.0);
    assert_close(
        "integrated",
        &[at(30.0), at(140.0)],
        &[55.440_505, 70.175_393],
        1e-7,
        0.0,
    );
}
