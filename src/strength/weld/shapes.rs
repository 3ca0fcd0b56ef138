//! Usual groups of fillet welds, each about the middle of its sizes.

use super::group::{Piece, WeldGroup};

/// One line along y of length `d` \[m\].
#[must_use]
pub fn vertical(d: f64) -> Option<WeldGroup> {
    WeldGroup::polyline(&[[0.0, -d / 2.0], [0.0, d / 2.0]])
}

/// Two lines along y of length `d`, `b` apart \[m\].
#[must_use]
pub fn two_verticals(b: f64, d: f64) -> Option<WeldGroup> {
    let line = |x: f64| Piece::Line([x, -d / 2.0], [x, d / 2.0]);
    WeldGroup::new(vec![line(-b / 2.0), line(b / 2.0)])
}

/// Two lines along x of length `b`, `d` apart \[m\].
#[must_use]
pub fn two_horizontals(b: f64, d: f64) -> Option<WeldGroup> {
    let line = |y: f64| Piece::Line([-b / 2.0, y], [b / 2.0, y]);
    WeldGroup::new(vec![line(-d / 2.0), line(d / 2.0)])
}

/// Web of length `d` along y at x = 0 with legs of length `b` along x at both ends \[m\].
#[must_use]
pub fn channel(b: f64, d: f64) -> Option<WeldGroup> {
    WeldGroup::polyline(&[[b, -d / 2.0], [0.0, -d / 2.0], [0.0, d / 2.0], [b, d / 2.0]])
}

/// All round a rectangle, `b` along x, `d` along y \[m\].
#[must_use]
pub fn rectangle(b: f64, d: f64) -> Option<WeldGroup> {
    let (x, y) = (b / 2.0, d / 2.0);
    WeldGroup::polyline(&[[-x, -y], [x, -y], [x, y], [-x, y], [-x, -y]])
}

/// All round a circle of this radius \[m\].
#[must_use]
pub fn circle(radius: f64) -> Option<WeldGroup> {
    WeldGroup::new(vec![Piece::Circle([0.0, 0.0], radius)])
}
