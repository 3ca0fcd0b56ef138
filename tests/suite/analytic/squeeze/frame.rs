//! Plane frame of straight beams, stiff along themselves.

use super::elimination::solve_held;

/// Axial stiffness over bending stiffness times length squared: nearly without stretch.
const STIFF_ALONG: f64 = 1e8;

/// What one newton does.
pub(super) struct Frame {
    /// Approach of the loaded places.
    pub(super) closing: f64,
    /// Movement apart of the sides.
    pub(super) spreading: f64,
    /// Moment under the load, as a size.
    pub(super) load_moment: f64,
    /// Moment in the corner or at the side, as a size.
    pub(super) side_moment: f64,
}

struct Beams {
    nodes: Vec<[f64; 2]>,
    /// Ends, and load across for each metre, on the left of the way from first to second.
    beams: Vec<(usize, usize, f64)>,
    bending: f64,
    size: f64,
}

impl Beams {
    fn length_and_direction(&self, beam: usize) -> (f64, f64, f64) {
        let (i, j, _) = self.beams[beam];
        let (dx, dy) = (
            self.nodes[j][0] - self.nodes[i][0],
            self.nodes[j][1] - self.nodes[i][1],
        );
        let length = dx.hypot(dy);
        (length, dx / length, dy / length)
    }

    /// Stiffness against x, y and turn of both ends.
    fn stiffness(&self, beam: usize) -> [[f64; 6]; 6] {
        let (l, c, s) = self.length_and_direction(beam);
        let a = STIFF_ALONG * self.bending / self.size.powi(2) / l;
        let e = self.bending / l.powi(3);
        let own = [
            [a, 0.0, 0.0, -a, 0.0, 0.0],
            [0.0, 12.0 * e, 6.0 * e * l, 0.0, -12.0 * e, 6.0 * e * l],
            [
                0.0,
                6.0 * e * l,
                4.0 * e * l * l,
                0.0,
                -6.0 * e * l,
                2.0 * e * l * l,
            ],
            [-a, 0.0, 0.0, a, 0.0, 0.0],
            [0.0, -12.0 * e, -6.0 * e * l, 0.0, 12.0 * e, -6.0 * e * l],
            [
                0.0,
                6.0 * e * l,
                2.0 * e * l * l,
                0.0,
                -6.0 * e * l,
                4.0 * e * l * l,
            ],
        ];
        let turn = turned(c, s);
        let mut whole = [[0.0; 6]; 6];
        for i in 0..6 {
            for j in 0..6 {
                for p in 0..6 {
                    for q in 0..6 {
                        whole[i][j] += turn[p][i] * own[p][q] * turn[q][j];
                    }
                }
            }
        }
        whole
    }

    /// Even load on a beam as forces on its ends.
    fn nodal(&self, beam: usize) -> [f64; 6] {
        let (l, c, s) = self.length_and_direction(beam);
        let q = self.beams[beam].2;
        let own = [
            0.0,
            q * l / 2.0,
            q * l * l / 12.0,
            0.0,
            q * l / 2.0,
            -q * l * l / 12.0,
        ];
        let turn = turned(c, s);
        let mut whole = [0.0; 6];
        for i in 0..6 {
            for p in 0..6 {
                whole[i] += turn[p][i] * own[p];
            }
        }
        whole
    }

    fn unknowns(&self, beam: usize) -> [usize; 6] {
        let (i, j, _) = self.beams[beam];
        [3 * i, 3 * i + 1, 3 * i + 2, 3 * j, 3 * j + 1, 3 * j + 2]
    }

    fn solve(&self, mut forces: Vec<f64>, held: &[usize]) -> Vec<f64> {
        let size = 3 * self.nodes.len();
        let mut matrix = vec![vec![0.0; size]; size];
        for beam in 0..self.beams.len() {
            let (places, k, f) = (self.unknowns(beam), self.stiffness(beam), self.nodal(beam));
            for i in 0..6 {
                forces[places[i]] += f[i];
                for j in 0..6 {
                    matrix[places[i]][places[j]] += k[i][j];
                }
            }
        }
        solve_held(&matrix, &forces, held, size)
    }

    /// Moments that a beam feels at its two ends.
    fn end_moments(&self, beam: usize, moved: &[f64]) -> [f64; 2] {
        let (places, k, f) = (self.unknowns(beam), self.stiffness(beam), self.nodal(beam));
        [2, 5].map(|row| (0..6).map(|j| k[row][j] * moved[places[j]]).sum::<f64>() - f[row])
    }
}

fn turned(c: f64, s: f64) -> [[f64; 6]; 6] {
    let mut turn = [[0.0; 6]; 6];
    for end in [0, 3] {
        turn[end][end] = c;
        turn[end][end + 1] = s;
        turn[end + 1][end] = -s;
        turn[end + 1][end + 1] = c;
        turn[end + 2][end + 2] = 1.0;
    }
    turn
}

impl Frame {
    /// Whole closed box; nothing is assumed of its symmetry but the load.
    pub(super) fn boxed(b: f64, h: f64, c: f64, bending: f64) -> Self {
        let (x, y, w) = (b / 2.0, h / 2.0, c / 2.0);
        let mut nodes = vec![
            [-x, y],
            [-w, y],
            [0.0, y],
            [w, y],
            [x, y],
            [x, -y],
            [w, -y],
            [0.0, -y],
            [-w, -y],
            [-x, -y],
        ];
        let is_line = c == 0.0;
        if is_line {
            // Any place off the middle will do where nothing is loaded.
            for (node, side) in [(1, -1.0), (3, 1.0), (6, 1.0), (8, -1.0)] {
                nodes[node][0] = side * x / 2.0;
            }
        }
        let pressed = if is_line { 0.0 } else { -1.0 / c };
        let loaded = [1, 2, 6, 7];
        let beams = (0..10)
            .map(|i| {
                (
                    i,
                    (i + 1) % 10,
                    if loaded.contains(&i) { pressed } else { 0.0 },
                )
            })
            .collect();
        let beams = Beams {
            nodes,
            beams,
            bending,
            size: b,
        };
        let mut forces = vec![0.0; 30];
        if is_line {
            forces[7] = -1.0;
            forces[22] = 1.0;
        }
        let moved = beams.solve(forces, &[21, 22, 23]);
        Self {
            closing: moved[22] - moved[7],
            spreading: moved[12] - moved[0],
            load_moment: beams.end_moments(2, &moved)[0].abs(),
            side_moment: beams.end_moments(4, &moved)[0].abs(),
        }
    }

    /// Quarter of a ring, its ends free to slide on the two axes.
    pub(super) fn quarter_ring(radius: f64, bending: f64) -> Self {
        let count = 60;
        let nodes = (0..=count)
            .map(|i| {
                let angle = std::f64::consts::FRAC_PI_2 * f64::from(i) / f64::from(count);
                [radius * angle.sin(), radius * angle.cos()]
            })
            .collect();
        let last = 60;
        let beams = Beams {
            nodes,
            beams: (0..last).map(|i| (i, i + 1, 0.0)).collect(),
            bending,
            size: radius,
        };
        let mut forces = vec![0.0; 3 * (last + 1)];
        forces[1] = -0.5;
        let moved = beams.solve(forces, &[0, 2, 3 * last + 1, 3 * last + 2]);
        Self {
            closing: -2.0 * moved[1],
            spreading: 2.0 * moved[3 * last],
            load_moment: beams.end_moments(0, &moved)[0].abs(),
            side_moment: beams.end_moments(last - 1, &moved)[1].abs(),
        }
    }
}
