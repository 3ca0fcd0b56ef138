//! Rainflow counting of a history into cycles.

/// One counted cycle, or half of one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cycle {
    /// Value of the history where it begins.
    pub from: f64,
    /// Value of the history where it turns back.
    pub to: f64,
    /// 1 for a whole cycle, 0.5 for half of one.
    pub count: f64,
}

impl Cycle {
    /// From trough to crest, twice the amplitude.
    #[must_use]
    pub fn range(&self) -> f64 {
        (self.to - self.from).abs()
    }

    /// Middle between trough and crest.
    #[must_use]
    pub fn mean(&self) -> f64 {
        f64::midpoint(self.from, self.to)
    }
}

/// Values at which a history turns back, its first and last value included.
///
/// Repeated values and values on the way between two turns are left out. A history that never
/// changes has one value left.
#[must_use]
pub fn turning_points(history: &[f64]) -> Vec<f64> {
    let mut turns: Vec<f64> = Vec::new();
    for &value in history {
        if let [.., before, last] = turns.as_slice()
            && (value - last) * (last - before) >= 0.0
        {
            turns.pop();
        }
        if turns.last() != Some(&value) {
            turns.push(value);
        }
    }
    turns
}

/// Cycles of a history that happens once, in the order in which they close; what stays open
/// counts half, in its own order, at the end.
///
/// `None` when a value is not finite.
///
/// # Equation
///   X range under consideration, Y the range before it:
///   X < Y: read on;  else Y is a whole cycle, or half of one where it holds the starting point
///
/// # Range
/// Any finite history; one that never changes has no cycle.
///
/// # Source
/// ASTM E1049-85, 5.4.4.
#[must_use]
pub fn count(history: &[f64]) -> Option<Vec<Cycle>> {
    if !history.iter().all(|value| value.is_finite()) {
        return None;
    }
    let (mut cycles, open) = close(&turning_points(history), true);
    cycles.extend(
        open.iter()
            .zip(open.iter().skip(1))
            .map(|(&from, &to)| Cycle {
                from,
                to,
                count: 0.5,
            }),
    );
    Some(cycles)
}

/// Cycles of a history that repeats for ever, for one repetition: all of them whole.
///
/// `None` when a value is not finite.
///
/// # Equation
///   the history begins at its largest value, is closed there, and is counted as by [`count`]
///   without regard to the starting point
///
/// # Range
/// Any finite history; one that never changes has no cycle.
///
/// # Source
/// ASTM E1049-85, 5.4.5, from memory.
#[must_use]
pub fn count_repeating(history: &[f64]) -> Option<Vec<Cycle>> {
    if !history.iter().all(|value| value.is_finite()) {
        return None;
    }
    let top = history.iter().copied().max_by(f64::total_cmp);
    let start = history.iter().position(|value| Some(*value) == top);
    let (before, after) = history.split_at(start.unwrap_or(0));
    let closed: Vec<f64> = [after, before, after.get(..1).unwrap_or_default()].concat();
    Some(close(&turning_points(&closed), false).0)
}

/// Whole cycles, and with `half_at_start` the halves at the starting point; and what stays open.
fn close(turns: &[f64], half_at_start: bool) -> (Vec<Cycle>, Vec<f64>) {
    let mut cycles = Vec::new();
    let mut open: Vec<f64> = Vec::new();
    for &turn in turns {
        open.push(turn);
        while let [rest @ .., from, to, last] = open.as_slice() {
            let (from, to, kept) = (*from, *to, rest.len());
            let last = *last;
            if (last - to).abs() < (to - from).abs() {
                break;
            }
            let half = half_at_start && kept == 0;
            let count = if half { 0.5 } else { 1.0 };
            cycles.push(Cycle { from, to, count });
            open.truncate(kept);
            if half {
                open.push(to);
            }
            open.push(last);
        }
    }
    (cycles, open)
}
