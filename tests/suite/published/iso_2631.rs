//! ISO 2631-1:1997, weighting Wk and words for comfort.
//!
//! Label: factors published in the table of principal weightings; corner frequencies (annex A)
//! and words (annex C) from memory.

use bedplate::road::ride::{Comfort, THIRD_OCTAVES, comfort, weighted_acceleration, weighting};

use crate::kit::assert_close;

/// To the digits of the print: three, but four where the factor is 1 and more.
fn printed(factor: f64) -> f64 {
    let digits = if factor >= 1.0 {
        3
    } else {
        2 - factor.log10().floor() as i32
    };
    let scale = 10.0_f64.powi(digits);
    (factor * scale).round() / scale
}

/// The table and the transfer function are two routes: the standard prints both. All agree within
/// 0.3 %, all but two to the last digit.
#[test]
fn transfer_function_meets_the_printed_factors() {
    let mut exact = 0;
    for (frequency, factor) in THIRD_OCTAVES {
        let found = weighting(frequency).norm();
        assert_close(frequency, &[found], &[factor], 3e-3, 0.0);
        if (printed(found) - factor).abs() < 1e-9 {
            exact += 1;
        }
    }
    assert_eq!(exact, 35);
}

/// Computed independently: at the exact third octaves 10^(k/10) the printed factors, which are for
/// the nominal ones, are up to 2.5 % off.
#[test]
fn factors_belong_to_the_nominal_frequencies() {
    let worst = THIRD_OCTAVES
        .iter()
        .zip(-10..)
        .map(|((_, factor), k)| {
            let exact = weighting(10.0_f64.powf(f64::from(k) / 10.0)).norm();
            (exact / factor - 1.0).abs()
        })
        .fold(0.0, f64::max);
    assert!((0.020..0.026).contains(&worst), "{worst}");
}

/// Worked by hand from the table: 0.5 m/s² at 5 Hz and 1.2 m/s² at 20 Hz give
/// √((1.039 · 0.5)² + (0.636 · 1.2)²) = 0.9229 m/s².
#[test]
fn lines_add_as_squares_after_their_weight() {
    let found = weighted_acceleration(&[(5.0, 0.5), (20.0, 1.2)]);
    assert_close("weighted", &[found], &[0.9229], 1e-3, 0.0);
    assert_close("nothing", &[weighted_acceleration(&[])], &[0.0], 0.0, 0.0);
}

#[test]
fn words_overlap_as_the_annex_has_them() {
    use Comfort::{ALittle, Comfortable, Extremely, Fairly, Uncomfortable, Very};
    let cases: [(f64, &[Comfort]); 11] = [
        (0.0, &[Comfortable]),
        (0.3, &[Comfortable]),
        (0.4, &[ALittle]),
        (0.55, &[ALittle, Fairly]),
        (0.7, &[Fairly]),
        (0.9, &[Fairly, Uncomfortable]),
        (1.1, &[Uncomfortable]),
        (1.4, &[Uncomfortable, Very]),
        (1.8, &[Very]),
        (2.2, &[Very, Extremely]),
        (3.0, &[Extremely]),
    ];
    for (weighted, expected) in cases {
        assert_eq!(comfort(weighted), expected, "{weighted}");
    }
    assert_eq!(ALittle.words(), "a little uncomfortable");
    assert!(comfort(f64::NAN).is_empty());
}
