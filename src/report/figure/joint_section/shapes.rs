//! Outlines of a section: y across the rail, z out of it.

use std::f64::consts::TAU;

/// Corners of a drawn circle.
const ROUND: u32 = 72;
/// Steps of a drawn corner.
const CORNER: u32 = 6;

/// Stretches from one side to the other without the holes.
pub(super) fn between_holes(bolts: &[f64], hole: f64, half: f64) -> Vec<[f64; 2]> {
    let mut from = -half;
    let mut stretches = Vec::new();
    for y in bolts {
        stretches.push([from, y - hole]);
        from = y + hole;
    }
    stretches.push([from, half]);
    stretches.retain(|[from, to]| to > from);
    stretches
}

pub(super) fn block(a: [f64; 2], b: [f64; 2]) -> Vec<[f64; 2]> {
    vec![a, [b[0], a[1]], b, [a[0], b[1]]]
}

pub(super) fn circle([y, z]: [f64; 2], radius: f64) -> Vec<[f64; 2]> {
    let spot = |step: u32| {
        let (sin, cos) = (TAU * f64::from(step) / f64::from(ROUND)).sin_cos();
        [y + radius * cos, z + radius * sin]
    };
    (0..ROUND).map(spot).collect()
}

/// Rectangle between its lower left and its upper right corner, with round corners.
pub(super) fn rounded(a: [f64; 2], b: [f64; 2], radius: f64) -> Vec<[f64; 2]> {
    let radius = radius
        .min((b[0] - a[0]) / 2.0)
        .min((b[1] - a[1]) / 2.0)
        .max(0.0);
    let corners = [
        [b[0] - radius, b[1] - radius],
        [a[0] + radius, b[1] - radius],
        [a[0] + radius, a[1] + radius],
        [b[0] - radius, a[1] + radius],
    ];
    let mut ring = Vec::new();
    for (place, [y, z]) in corners.into_iter().enumerate() {
        for step in 0..=CORNER {
            let turn = (place as f64 + f64::from(step) / f64::from(CORNER)) * TAU / 4.0;
            let (sin, cos) = turn.sin_cos();
            ring.push([y + radius * cos, z + radius * sin]);
        }
    }
    ring
}

/// Outline of an open channel that bolts cross from flange to flange: its web lies at a side.
pub(super) fn channel(half: f64, depth: f64, wall: f64) -> Vec<[f64; 2]> {
    vec![
        [-half, 0.0],
        [half, 0.0],
        [half, -wall],
        [wall - half, -wall],
        [wall - half, wall - depth],
        [half, wall - depth],
        [half, -depth],
        [-half, -depth],
    ]
}
