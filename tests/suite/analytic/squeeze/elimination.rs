//! Gaussian elimination of a symmetric positive matrix with a band.

/// Solution x of `matrix` x = `right`; entries further than `band` from the diagonal are zero.
pub(super) fn solve(mut matrix: Vec<Vec<f64>>, mut right: Vec<f64>, band: usize) -> Vec<f64> {
    let size = right.len();
    for pivot in 0..size {
        let row = matrix[pivot].clone();
        assert!(row[pivot] > 0.0, "not positive definite at {pivot}");
        for below in pivot + 1..size.min(pivot + band + 1) {
            let factor = matrix[below][pivot] / row[pivot];
            if factor == 0.0 {
                continue;
            }
            for column in pivot..size.min(pivot + band + 1) {
                matrix[below][column] -= factor * row[column];
            }
            right[below] -= factor * right[pivot];
        }
    }
    for pivot in (0..size).rev() {
        let known: f64 = (pivot + 1..size.min(pivot + band + 1))
            .map(|column| matrix[pivot][column] * right[column])
            .sum();
        right[pivot] = (right[pivot] - known) / matrix[pivot][pivot];
    }
    right
}

/// Same with some unknowns held at zero.
pub(super) fn solve_held(
    matrix: &[Vec<f64>],
    right: &[f64],
    held: &[usize],
    band: usize,
) -> Vec<f64> {
    let free: Vec<usize> = (0..right.len())
        .filter(|place| !held.contains(place))
        .collect();
    let inner = free
        .iter()
        .map(|i| free.iter().map(|j| matrix[*i][*j]).collect())
        .collect();
    let found = solve(inner, free.iter().map(|i| right[*i]).collect(), band);
    let mut all = vec![0.0; right.len()];
    for (place, value) in free.into_iter().zip(found) {
        all[place] = value;
    }
    all
}
