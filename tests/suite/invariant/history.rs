//! What holds for every counted history.

use bedplate::history::damage::{FatigueLine, damage, equivalent_range};
use bedplate::history::rainflow::{Cycle, count, count_repeating, turning_points};
use proptest::prelude::*;

use crate::kit::assert_close;

fn halves(cycles: &[Cycle]) -> f64 {
    2.0 * cycles.iter().map(|cycle| cycle.count).sum::<f64>()
}

fn sorted_ranges(cycles: &[Cycle]) -> Vec<f64> {
    let mut ranges: Vec<f64> = cycles.iter().map(Cycle::range).collect();
    ranges.sort_by(f64::total_cmp);
    ranges
}

/// Whole numbers, so that equal ranges and flat stretches come up often.
fn history() -> impl Strategy<Value = Vec<f64>> {
    prop::collection::vec((-9..9_i32).prop_map(f64::from), 2..60)
}

proptest! {
    /// Each way between two turns is counted once, in length as well as in number.
    #[test]
    fn half_cycles_are_the_ways_between_turns(history in history()) {
        let turns = turning_points(&history);
        let ways: Vec<f64> = turns.windows(2).map(|pair| (pair[1] - pair[0]).abs()).collect();
        let cycles = count(&history).unwrap();
        assert_close("number", &[halves(&cycles)], &[ways.len() as f64], 0.0, 1e-9);
        let path: f64 = cycles.iter().map(|cycle| 2.0 * cycle.count * cycle.range()).sum();
        assert_close("path", &[path], &[ways.iter().sum()], 1e-12, 1e-9);
        let span = |values: &[f64]| {
            values.iter().copied().fold(f64::MIN, f64::max) - values.iter().copied().fold(f64::MAX, f64::min)
        };
        let largest = sorted_ranges(&cycles).last().copied().unwrap_or(0.0);
        assert_close("largest", &[largest], &[span(&history)], 0.0, 1e-9);
    }

    /// Points on the way between two others change nothing.
    #[test]
    fn points_on_the_way_change_nothing(history in history(), share in 0.0..1.0_f64) {
        let mut finer = Vec::new();
        for pair in history.windows(2) {
            finer.extend([pair[0], pair[0] + share * (pair[1] - pair[0])]);
        }
        finer.push(history[history.len() - 1]);
        prop_assert_eq!(count(&finer), count(&history));
        prop_assert_eq!(count_repeating(&finer), count_repeating(&history));
    }

    /// A history upside down, or shifted, has the same ranges.
    #[test]
    fn upside_down_or_shifted_the_ranges_stay(history in history()) {
        let ranges = sorted_ranges(&count(&history).unwrap());
        let changed: Vec<f64> = history.iter().map(|value| 100.0 - value).collect();
        prop_assert_eq!(sorted_ranges(&count(&changed).unwrap()), ranges);
    }

    /// It does not matter where a repeating history is begun, and all its cycles are whole.
    #[test]
    fn a_repeating_history_has_no_beginning(history in history(), turn in 0..60_usize) {
        let mut turned = history.clone();
        turned.rotate_left(turn % history.len());
        let cycles = count_repeating(&history).unwrap();
        prop_assert_eq!(sorted_ranges(&count_repeating(&turned).unwrap()), sorted_ranges(&cycles));
        prop_assert!(cycles.iter().all(|cycle| (cycle.count - 1.0).abs() < 1e-12));
        // The closed path is as long as all cycles there and back.
        let closed: f64 = history
            .iter()
            .zip(history.iter().cycle().skip(1))
            .map(|(from, to)| (to - from).abs())
            .sum();
        let path: f64 = cycles.iter().map(|cycle| 2.0 * cycle.range()).sum();
        assert_close("path", &[path], &[closed], 1e-12, 1e-9);
    }

    /// Twice the load does 2^m the damage; the equivalent range does the damage it stands for.
    #[test]
    fn damage_goes_with_the_power_of_the_load(
        history in history(), slope in 1.0..12.0_f64, factor in 0.1..10.0_f64,
    ) {
        let line = FatigueLine::through(7.0, 1e5, slope).unwrap();
        let cycles = count(&history).unwrap();
        let scaled: Vec<f64> = history.iter().map(|value| factor * value).collect();
        let once = damage(&cycles, &line);
        let found = damage(&count(&scaled).unwrap(), &line);
        assert_close("power", &[found], &[once * factor.powf(slope)], 1e-9, 1e-300);
        let equivalent = equivalent_range(&cycles, slope, 1e6).unwrap();
        let stands = [Cycle { from: 0.0, to: equivalent, count: 1e6 }];
        assert_close("equivalent", &[damage(&stands, &line)], &[once], 1e-9, 1e-300);
    }
}
