//! ASTM E1049-85, standard practices for cycle counting in fatigue analysis.

use bedplate::history::rainflow::{Cycle, count, count_repeating, turning_points};

use crate::kit::assert_close;

const HISTORY: [f64; 9] = [-2.0, 1.0, -3.0, 5.0, -1.0, 3.0, -4.0, 4.0, -2.0];

/// Counts of the ranges 1 to 9.
fn counts(cycles: &[Cycle]) -> [f64; 9] {
    std::array::from_fn(|place| {
        cycles
            .iter()
            .filter(|cycle| (cycle.range() - (place + 1) as f64).abs() < 1e-9)
            .map(|cycle| cycle.count)
            .sum()
    })
}

/// Published: 5.4.4, the example of rainflow counting.
#[test]
fn example_of_rainflow_counting() {
    let cycles = count(&HISTORY).unwrap();
    let expected = [0.0, 0.0, 0.5, 1.5, 0.0, 0.5, 0.0, 1.0, 0.5];
    assert_close("counts", &counts(&cycles), &expected, 0.0, 0.0);
    // The one whole cycle is that from −1 to 3 and back, about 1.
    let whole: Vec<&Cycle> = cycles.iter().filter(|cycle| cycle.count > 0.9).collect();
    assert_eq!(whole.len(), 1);
    assert_close(
        "whole",
        &[whole[0].range(), whole[0].mean()],
        &[4.0, 1.0],
        0.0,
        0.0,
    );
    assert_close("way", &[whole[0].from, whole[0].to], &[-1.0, 3.0], 0.0, 0.0);
}

/// From memory: 5.4.5, the same history repeating. Also worked by hand: begun at 5, it closes
/// −1 to 3, then 1 to −2, then 4 to −3, then 5 to −4.
#[test]
fn the_same_history_repeating_has_whole_cycles_only() {
    let expected = [0.0, 0.0, 1.0, 1.0, 0.0, 0.0, 1.0, 0.0, 1.0];
    let cycles = count_repeating(&HISTORY).unwrap();
    assert_close("counts", &counts(&cycles), &expected, 0.0, 0.0);
    assert!(cycles.iter().all(|cycle| (cycle.count - 1.0).abs() < 1e-12));
}

#[test]
fn turning_points_leave_out_what_lies_on_the_way() {
    let turns = turning_points(&[0.0, 0.0, 1.0, 2.0, 2.0, 1.5, -1.0, -1.0, -1.0, 3.0, 3.0]);
    assert_eq!(turns, [0.0, 2.0, -1.0, 3.0]);
    assert_eq!(turning_points(&[4.0, 4.0]), [4.0]);
    assert!(turning_points(&[]).is_empty());
}

#[test]
fn a_history_without_change_has_no_cycle_and_one_with_gaps_is_refused() {
    for count in [count, count_repeating] {
        assert_eq!(count(&[]), Some(Vec::new()));
        assert_eq!(count(&[3.0]), Some(Vec::new()));
        assert_eq!(count(&[3.0, 3.0, 3.0]), Some(Vec::new()));
        assert_eq!(count(&[1.0, f64::NAN, 2.0]), None);
        assert_eq!(count(&[1.0, f64::INFINITY]), None);
    }
}
