//! A quarter of a long rail as thin-walled strips, in harmonics along the rail.
//!
//! Each strip bends as a thin plate (cubic across, a sine along) and stretches in
//! its plane (straight across). Both ends of the rail, far away, are diaphragms. Loads are
//! those of patches on opposite sides in the middle of its length.

use std::f64::consts::PI;

use bedplate::strength::rail::{BoxRail, Patch, RoundRail};

use super::elimination::solve_held;

const POISSON: f64 = 0.3;

/// Places and weights of the rule that is exact to the fifth power, from 0 to 1.
const GAUSS: [(f64, f64); 3] = [
    (0.112_701_665_379_258_31, 5.0 / 18.0),
    (0.5, 4.0 / 9.0),
    (0.887_298_334_620_741_7, 5.0 / 18.0),
];

/// What one newton on each side does.
pub(super) struct Shell {
    /// Load over approach of the middles of both patches [N/m].
    pub(super) stiffness: f64,
    /// Moment across the rail under the middle of the patch, each metre of rail, as a size [N m/m].
    pub(super) moment: f64,
    /// Von Mises stress on the surface there as a moment: times 6/t² \[N m/m\].
    pub(super) von_mises_moment: f64,
}

pub(super) fn on_box(rail: &BoxRail, patch: &Patch, youngs: f64) -> Shell {
    let (b, h) = (rail.middle_width(), rail.middle_height());
    let across = 16;
    let down = ((16.0 * h / b).round() as i32).max(8);
    let face = (0..=across).map(|i| [b / 2.0 * f64::from(i) / f64::from(across), h / 2.0]);
    let side = (1..=down).map(|i| [b / 2.0, h / 2.0 * (1.0 - f64::from(i) / f64::from(down))]);
    let rail_length = 16.0 * b.max(h);
    squeezed(
        &face.chain(side).collect::<Vec<_>>(),
        rail.wall,
        patch,
        rail_length,
        youngs,
    )
}

pub(super) fn on_tube(rail: &RoundRail, patch: &Patch, youngs: f64) -> Shell {
    let radius = rail.middle_radius();
    let points: Vec<_> = (0..=36)
        .map(|i| PI / 72.0 * f64::from(i))
        .map(|angle| [radius * angle.sin(), radius * angle.cos()])
        .collect();
    squeezed(&points, rail.wall, patch, 40.0 * radius, youngs)
}

/// Stiffness of one strip for a wave number: deflection and slope, then in-plane movement across and along.
fn strip(wave: f64, width: f64, wall: f64, youngs: f64) -> ([[f64; 4]; 4], [[f64; 4]; 4]) {
    let plate = youngs * wall.powi(3) / 12.0 / (1.0 - POISSON * POISSON);
    let sheet = youngs * wall / (1.0 - POISSON * POISSON);
    let shear = youngs * wall / 2.0 / (1.0 + POISSON);
    let (mut bent, mut stretched) = ([[0.0; 4]; 4], [[0.0; 4]; 4]);
    // Seven powers appear: two halves of the strip with the rule above are exact enough.
    for half in [0.0, 0.5] {
        for (place, weight) in GAUSS {
            let s = half + place / 2.0;
            let area = weight * width / 2.0;
            let shape = hermite(s, width);
            let slope = [
                (-6.0 * s + 6.0 * s * s) / width,
                1.0 - 4.0 * s + 3.0 * s * s,
                (6.0 * s - 6.0 * s * s) / width,
                3.0 * s * s - 2.0 * s,
            ];
            let bend = [
                (-6.0 + 12.0 * s) / width.powi(2),
                (-4.0 + 6.0 * s) / width,
                (6.0 - 12.0 * s) / width.powi(2),
                (6.0 * s - 2.0) / width,
            ];
            let across = [-1.0 / width, 0.0, 1.0 / width, 0.0];
            let along = [0.0, -wave * (1.0 - s), 0.0, -wave * s];
            let sheared = [wave * (1.0 - s), -1.0 / width, wave * s, 1.0 / width];
            for i in 0..4 {
                for j in 0..4 {
                    let mixed = shape[i] * bend[j] + bend[i] * shape[j];
                    let plain = bend[i] * bend[j] + wave.powi(4) * shape[i] * shape[j];
                    let twist = 2.0 * (1.0 - POISSON) * wave * wave * slope[i] * slope[j];
                    bent[i][j] += area * plate * (plain - POISSON * wave * wave * mixed + twist);
                    let mixed = across[i] * along[j] + along[i] * across[j];
                    let plain = across[i] * across[j] + along[i] * along[j];
                    stretched[i][j] += area
                        * (sheet * (plain + POISSON * mixed) + shear * sheared[i] * sheared[j]);
                }
            }
        }
    }
    (bent, stretched)
}

fn hermite(s: f64, width: f64) -> [f64; 4] {
    [
        1.0 - 3.0 * s * s + 2.0 * s.powi(3),
        width * (s - 2.0 * s * s + s.powi(3)),
        3.0 * s * s - 2.0 * s.powi(3),
        width * (s.powi(3) - s * s),
    ]
}

/// Movements of a node: across the rail, up, along, turn. Rows: u, v, w, slope of a strip.
fn to_strip(c: f64, s: f64) -> [[f64; 4]; 4] {
    [
        [c, s, 0.0, 0.0],
        [0.0, 0.0, 1.0, 0.0],
        [-s, c, 0.0, 0.0],
        [0.0, 0.0, 0.0, 1.0],
    ]
}

/// Quarter section from the middle of the loaded side to the middle of the free side.
fn squeezed(points: &[[f64; 2]], wall: f64, patch: &Patch, rail_length: f64, youngs: f64) -> Shell {
    let count = points.len();
    let size = 4 * count;
    let sides: Vec<(f64, f64, f64)> = points
        .windows(2)
        .map(|ends| {
            let (dx, dy) = (ends[1][0] - ends[0][0], ends[1][1] - ends[0][1]);
            let width = dx.hypot(dy);
            (width, dx / width, dy / width)
        })
        .collect();
    let mut load = vec![0.0; size];
    let (mut begin, pressure) = (0.0, 1.0 / (patch.length * patch.width));
    for (node, (width, ..)) in sides.iter().enumerate() {
        let covered = (patch.width / 2.0 - begin).clamp(0.0, *width);
        for (place, weight) in GAUSS {
            let shape = hermite(place * covered / width, *width);
            for (unknown, shape) in [1, 3, 5, 7].into_iter().zip(shape) {
                load[4 * node + unknown] -= pressure * covered * weight * shape;
            }
        }
        begin += width;
    }
    let held = [0, 3, size - 3, size - 1];
    let plate = youngs * wall.powi(3) / 12.0 / (1.0 - POISSON * POISSON);
    let (mut down, mut moment, mut along) = (0.0, 0.0, 0.0);
    let harmonics = (8.0 * rail_length / patch.length) as u32;
    for m in (1..=harmonics).step_by(2) {
        let wave = f64::from(m) * PI / rail_length;
        let mut matrix = vec![vec![0.0; size]; size];
        for (first, (width, c, s)) in sides.iter().enumerate() {
            add_strip(
                &mut matrix,
                4 * first,
                &strip(wave, *width, wall, youngs),
                &to_strip(*c, *s),
            );
        }
        let sine = (wave * rail_length / 2.0).sin();
        let wave_load = 4.0 / (f64::from(m) * PI) * sine * (wave * patch.length / 2.0).sin();
        let right: Vec<f64> = load.iter().map(|value| value * wave_load).collect();
        let moved = solve_held(&matrix, &right, &held, 8);
        let (width, c, s) = sides[0];
        let near = c * moved[1];
        let far = -s * moved[4] + c * moved[5];
        let bend = (-6.0 * near + 6.0 * far - 2.0 * width * moved[7]) / width.powi(2);
        down -= moved[1] * sine;
        moment += plate * (bend - POISSON * wave * wave * near) * sine;
        along += plate * (POISSON * bend - wave * wave * near) * sine;
    }
    Shell {
        stiffness: 1.0 / (2.0 * down),
        moment: moment.abs(),
        von_mises_moment: (moment * moment + along * along - moment * along).sqrt(),
    }
}

fn add_strip(
    matrix: &mut [Vec<f64>],
    at: usize,
    strip: &([[f64; 4]; 4], [[f64; 4]; 4]),
    turn: &[[f64; 4]; 4],
) {
    let mut own = [[0.0; 8]; 8];
    for (places, part) in [([2, 3, 6, 7], &strip.0), ([0, 1, 4, 5], &strip.1)] {
        for i in 0..4 {
            for j in 0..4 {
                own[places[i]][places[j]] += part[i][j];
            }
        }
    }
    for (i, j) in (0..8).flat_map(|i| (0..8).map(move |j| (i, j))) {
        for (p, q) in (0..4).flat_map(|p| (0..4).map(move |q| (p, q))) {
            let (row, column) = (i / 4 * 4 + p, j / 4 * 4 + q);
            matrix[at + i][at + j] += turn[p][i % 4] * own[row][column] * turn[q][j % 4];
        }
    }
}
