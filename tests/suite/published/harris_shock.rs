//! C. M. Harris (ed.), Shock and Vibration Handbook, chapter on pulses by R. S. Ayre.
//!
//! Label: from memory. Edition open.

use bedplate::road::shock::{half_sine_answer, rectangle_answer};

use crate::kit::assert_close;

/// Computed independently: 1.76846 at 0.810 periods in the pulse.
#[test]
fn half_sine_gives_1_77_at_most() {
    let (at, most) = (1..4000)
        .map(|step| f64::from(step) * 1e-3)
        .map(|periods| (periods, half_sine_answer(periods)))
        .fold(
            (0.0, 0.0),
            |best: (f64, f64), new| if new.1 > best.1 { new } else { best },
        );
    assert_close("printed", &[most], &[1.77], 1e-3, 0.0);
    assert_close("computed", &[most, at], &[1.768_46, 0.810], 3e-6, 1e-3);
}

#[test]
fn rectangle_gives_two_from_half_a_period_on() {
    let found = [0.5, 0.8, 1.0, 7.0].map(rectangle_answer);
    assert_close("from half a period", &found, &[2.0; 4], 1e-12, 0.0);
    assert!(rectangle_answer(0.49) < 2.0);
}
