//! When each cylinder fires: from an order, from pins, or evenly.

use crate::diagnostic::Code;
use crate::model::reader::Section;

/// Least angle between two cylinders that fire one after the other \[rad\]: half a degree.
const APART: f64 = 0.008_726_646;

/// Firing orders that in-line engines of so many cylinders usually have.
///
/// # Source
/// Common practice.
const USUAL: [&[usize]; 5] = [
    &[1],
    &[1, 2, 3],
    &[1, 3, 4, 2],
    &[1, 2, 4, 5, 3],
    &[1, 5, 3, 6, 2, 4],
];

/// The usual order of an in-line engine, as places from 0.
pub(super) fn usual(count: usize) -> Option<Vec<usize>> {
    let order = USUAL.iter().find(|order| order.len() == count)?;
    Some(order.iter().map(|number| number - 1).collect())
}

/// Reads `firing_order`, as places from 0, cylinder 1 first.
pub(super) fn read_order(section: &Section<'_>, count: usize) -> Option<Vec<usize>> {
    let example = usual(count).map_or_else(|| "1-3-4-2".to_owned(), |order| written(&order));
    let help = format!("each of the {count} cylinders once, such as \"{example}\"");
    let text = section.text("firing_order")?;
    let numbers: Option<Vec<usize>> = text
        .split(|c: char| c == '-' || c == ',' || c.is_whitespace())
        .filter(|part| !part.is_empty())
        .map(|part| part.parse().ok())
        .collect();
    let name = section.key_name("firing_order");
    let Some(numbers) = numbers else {
        let message = format!("{name} is not numbers with `-` between them");
        section.refuse("firing_order", Code::WrongKind, message, help);
        return None;
    };
    let times = |cylinder: usize| numbers.iter().filter(|other| **other == cylinder).count();
    let wrong = numbers
        .iter()
        .find(|number| !(1..=count).contains(number))
        .map(|number| format!("there is no cylinder {number} in {name}"))
        .or_else(|| {
            let twice = (1..=count).find(|cylinder| times(*cylinder) > 1)?;
            Some(format!("cylinder {twice} fires more than once in {name}"))
        })
        .or_else(|| {
            let never = (1..=count).find(|cylinder| times(*cylinder) == 0)?;
            Some(format!("cylinder {never} is missing in {name}"))
        });
    if let Some(message) = wrong {
        section.refuse("firing_order", Code::WrongNumberOfItems, message, help);
        return None;
    }
    let first = numbers.iter().position(|number| *number == 1)?;
    let turned = numbers.iter().cycle().skip(first).take(count);
    Some(turned.map(|number| number - 1).collect())
}

/// An order as it is written in the file.
pub(super) fn written(order: &[usize]) -> String {
    let numbers: Vec<String> = order.iter().map(|place| (place + 1).to_string()).collect();
    numbers.join("-")
}

/// Angles at which the cylinders fire, evenly over a cycle \[rad\].
pub(super) fn evenly(order: &[usize], cycle: f64) -> Vec<f64> {
    let mut angles = vec![0.0; order.len()];
    for (turn, cylinder) in order.iter().enumerate() {
        if let Some(angle) = angles.get_mut(*cylinder) {
            *angle = cycle * turn as f64 / order.len() as f64;
        }
    }
    angles
}

/// Angles of firing of a four-stroke \[rad\] where each cylinder is at its top at `tops` (within one turn) in every
/// turn: those that follow the order and are the most even. `None` when the order cannot be followed.
pub(super) fn at_tops(order: &[usize], tops: &[f64], turn: f64) -> Option<Vec<f64>> {
    let cycle = 2.0 * turn;
    let tops: Option<Vec<f64>> = order.iter().map(|at| tops.get(*at).copied()).collect();
    let tops = tops?;
    let even = cycle / order.len() as f64;
    // The angles rise with the order, so that a first part of it fires in the first turn and the rest in the second.
    let (_, best) = (1..=order.len())
        .filter_map(|first_turn| {
            let later = |at: usize| if at < first_turn { 0.0 } else { turn };
            let angles: Vec<f64> = (0..).zip(&tops).map(|(at, top)| top + later(at)).collect();
            let end = angles.iter().skip(1).copied().chain([cycle]);
            let gaps: Vec<f64> = angles.iter().zip(end).map(|(a, b)| b - a).collect();
            let rises = gaps.iter().all(|gap| *gap > APART);
            let uneven: f64 = gaps.iter().map(|gap| (gap - even).powi(2)).sum();
            rises.then_some((uneven, angles))
        })
        .min_by(|a, b| a.0.total_cmp(&b.0))?;
    let mut by_cylinder = vec![0.0; order.len()];
    for (cylinder, angle) in order.iter().zip(best) {
        if let Some(own) = by_cylinder.get_mut(*cylinder) {
            *own = angle;
        }
    }
    Some(by_cylinder)
}
