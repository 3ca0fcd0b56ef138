//! Where another number of bolts goes.

/// Places of `count` bolts on the rectangle that the given ones span; `None` where one bolt spans none.
///
/// As many as there are stay where they are; one goes to the middle; bolts in one line are spread
/// evenly over it; others stand in two even rows along the longer side, an odd one in the first row.
/// New places are rounded to what is marked out.
pub(super) fn spread(pattern: &[[f64; 2]], count: usize) -> Option<Vec<[f64; 2]>> {
    if count == pattern.len() {
        return Some(pattern.to_vec());
    }
    let ends = |axis: usize| {
        let places = || pattern.iter().filter_map(move |place| place.get(axis));
        let low = places().copied().fold(f64::INFINITY, f64::min);
        let high = places().copied().fold(f64::NEG_INFINITY, f64::max);
        [low, high]
    };
    let (x, y) = (ends(0), ends(1));
    let middle = |[low, high]: [f64; 2]| f64::midpoint(low, high);
    if count == 1 {
        return Some(vec![[middle(x), middle(y)].map(marked)]);
    }
    let size = |[low, high]: [f64; 2]| high - low;
    let is_long_in_x = size(x) >= size(y);
    let (long, short) = if is_long_in_x { (x, y) } else { (y, x) };
    if size(long) <= 0.0 {
        return None;
    }
    let place = |along: f64, across: f64| {
        let [along, across] = [along, across].map(marked);
        if is_long_in_x {
            [along, across]
        } else {
            [across, along]
        }
    };
    if size(short) <= 0.0 || count == 2 {
        let line = evenly(long, count);
        return Some(line.map(|at| place(at, middle(short))).collect());
    }
    let [low, high] = short;
    let first = count.div_ceil(2);
    let rows = [(low, first), (high, count - first)];
    Some(
        rows.into_iter()
            .flat_map(|(across, in_row)| evenly(long, in_row).map(move |at| place(at, across)))
            .collect(),
    )
}

/// The nearest tenth of a millimetre \[m\].
fn marked(length: f64) -> f64 {
    (length * 1e4).round() / 1e4
}

/// Even places from end to end; one of them in the middle.
fn evenly([low, high]: [f64; 2], count: usize) -> impl Iterator<Item = f64> {
    let steps = count.saturating_sub(1).max(1) as f64;
    (0..count).map(move |step| {
        if count == 1 {
            f64::midpoint(low, high)
        } else {
            low + (high - low) * step as f64 / steps
        }
    })
}

#[cfg(test)]
mod tests {
    use super::spread;

    /// Derived: corners of 80 x 40 mm; the line through the middle; two rows along the longer side.
    #[test]
    fn bolts_stay_on_the_rectangle() {
        let four = [[-0.04, -0.02], [0.04, -0.02], [0.04, 0.02], [-0.04, 0.02]];
        assert_eq!(spread(&four, 4), Some(four.to_vec()));
        assert_eq!(spread(&four, 1), Some(vec![[0.0, 0.0]]));
        assert_eq!(spread(&four, 2), Some(vec![[-0.04, 0.0], [0.04, 0.0]]));
        let three = [[-0.04, -0.02], [0.04, -0.02], [0.0, 0.02]];
        assert_eq!(spread(&four, 3), Some(three.to_vec()));
        let upright = [[0.0, -0.03], [0.0, 0.03]];
        let line = vec![[0.0, -0.03], [0.0, 0.0], [0.0, 0.03]];
        assert_eq!(spread(&upright, 3), Some(line));
        let thirds = vec![[-0.05, 0.0], [-0.0167, 0.0], [0.0167, 0.0], [0.05, 0.0]];
        assert_eq!(spread(&[[-0.05, 0.0], [0.05, 0.0]], 4), Some(thirds));
        assert_eq!(spread(&[[0.0, 0.0]], 2), None);
    }
}
