//! Reads between the rows of a table.

/// Value at `x`, on the straight line between the two rows beside it; beyond the ends the end row's.
///
/// `rows` hold `(x, value)` with rising `x`. Without rows it is not a number.
pub(super) fn interpolated(rows: &[(f64, f64)], x: f64) -> f64 {
    let mut below: Option<(f64, f64)> = None;
    for &(at, value) in rows {
        match below {
            Some((from, start)) if x < at => {
                return start + (value - start) * ((x - from) / (at - from)).max(0.0);
            }
            _ => below = Some((at, value)),
        }
        if x < at {
            return value;
        }
    }
    below.map_or(f64::NAN, |(_, value)| value)
}

/// Rounded to hundredths: values that are only usual are not known any better.
pub(super) fn hundredths(value: f64) -> f64 {
    (value * 100.0).round() / 100.0
}

#[cfg(test)]
mod tests {
    use super::interpolated;
    use approx::assert_relative_eq;

    /// Derived: points on the lines, at the rows and beyond the ends.
    #[test]
    fn between_the_rows_it_is_a_straight_line_and_beyond_them_flat() {
        let rows = [(30.0, 1.0), (40.0, 3.0), (60.0, 2.0)];
        for (x, value) in [
            (20.0, 1.0),
            (30.0, 1.0),
            (35.0, 2.0),
            (40.0, 3.0),
            (55.0, 2.25),
            (60.0, 2.0),
            (99.0, 2.0),
        ] {
            assert_relative_eq!(interpolated(&rows, x), value, max_relative = 1e-15);
        }
        assert!(interpolated(&[], 1.0).is_nan());
    }
}
