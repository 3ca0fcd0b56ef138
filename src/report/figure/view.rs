//! From vehicle axes to paper: the views, each with right and up on the paper as directions of the build.

use super::canvas::Spot;
use crate::spatial::Vec3;

/// A view.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum View {
    /// From the left: front on the left of the paper.
    Side,
    /// From above: front on the left, so that it stands over the side view.
    Top,
    /// From behind: left on the left.
    Rear,
    /// From the front, left and above; lengths along x, y and z are true, as is usual for isometric drawings.
    Isometric,
}

impl View {
    /// Name over the panel.
    pub(super) fn title(self) -> &'static str {
        match self {
            Self::Side => "Side, seen from the left",
            Self::Top => "Top, seen from above",
            Self::Rear => "Rear, seen from behind",
            Self::Isometric => "Isometric",
        }
    }

    /// What x, y and z of the build are on the paper: right, and up, of a unit each.
    fn on_paper(self) -> [Spot; 3] {
        const COS_30: f64 = 0.866_025_403_784_438_6;
        match self {
            Self::Side => [(-1.0, 0.0), (0.0, 0.0), (0.0, 1.0)],
            Self::Top => [(-1.0, 0.0), (0.0, -1.0), (0.0, 0.0)],
            Self::Rear => [(0.0, 0.0), (-1.0, 0.0), (0.0, 1.0)],
            Self::Isometric => [(-COS_30, -0.5), (COS_30, -0.5), (0.0, 1.0)],
        }
    }

    /// Direction from the build to the eye, vehicle axes, not of unit length.
    pub(super) fn to_eye(self) -> Vec3 {
        match self {
            Self::Side => Vec3::y(),
            Self::Top => Vec3::z(),
            Self::Rear => -Vec3::x(),
            Self::Isometric => Vec3::new(1.0, 1.0, 1.0),
        }
    }

    /// Right and up on the paper, in metres of the build.
    pub(super) fn flat(self, p_V: &Vec3) -> Spot {
        let [x, y, z] = self.on_paper();
        (
            p_V.x * x.0 + p_V.y * y.0 + p_V.z * z.0,
            p_V.x * x.1 + p_V.y * y.1 + p_V.z * z.1,
        )
    }
}

/// A view at a scale and a place on the sheet.
#[derive(Debug, Clone, Copy)]
pub(super) struct Panel {
    pub(super) view: View,
    /// Units of the sheet per metre.
    pub(super) scale: f64,
    /// Right and up of what lies at `centre` \[m\].
    pub(super) middle: Spot,
    /// Where that is on the sheet.
    pub(super) centre: Spot,
}

impl Panel {
    pub(super) fn place(&self, p_V: &Vec3) -> Spot {
        let (right, up) = self.view.flat(p_V);
        (
            self.centre.0 + (right - self.middle.0) * self.scale,
            self.centre.1 - (up - self.middle.1) * self.scale,
        )
    }
}

/// Right and up of the middle of a picture, its width and its height \[m\].
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Picture {
    pub(super) middle: Spot,
    pub(super) wide: f64,
    pub(super) high: f64,
}

impl Picture {
    /// What points cover in a view, at least `least_size` each way.
    pub(super) fn of<'a>(
        points: impl IntoIterator<Item = &'a Vec3>,
        view: View,
        least_size: f64,
    ) -> Self {
        let (mut least, mut most) = (
            (f64::INFINITY, f64::INFINITY),
            (f64::NEG_INFINITY, f64::NEG_INFINITY),
        );
        for point in points {
            let (right, up) = view.flat(point);
            least = (least.0.min(right), least.1.min(up));
            most = (most.0.max(right), most.1.max(up));
        }
        Self {
            middle: ((least.0 + most.0) / 2.0, (least.1 + most.1) / 2.0),
            wide: (most.0 - least.0).max(least_size),
            high: (most.1 - least.1).max(least_size),
        }
    }
}

/// Smallest box around points, along vehicle axes.
#[derive(Debug, Clone, Copy)]
pub(super) struct Extent {
    pub(super) least: Vec3,
    pub(super) most: Vec3,
}

impl Extent {
    /// `None` without points.
    pub(super) fn of(points: impl IntoIterator<Item = Vec3>) -> Option<Self> {
        points.into_iter().fold(None, |so_far, p| {
            let (least, most) = so_far.map_or((p, p), |e: Self| (e.least, e.most));
            Some(Self {
                least: least.inf(&p),
                most: most.sup(&p),
            })
        })
    }

    /// Widened on every side, and by at least `least_size` in all in each direction.
    pub(super) fn widened(self, share: f64, least_size: f64) -> Self {
        let size = self.most - self.least;
        let grow = size.map(|s| (s * share).max((least_size - s) / 2.0));
        Self {
            least: self.least - grow,
            most: self.most + grow,
        }
    }

    /// The part of the line through `point` along `direction` that lies inside; `None` when it misses.
    pub(super) fn clip(&self, point: &Vec3, direction: &Vec3) -> Option<[Vec3; 2]> {
        let (mut enter, mut leave) = (f64::NEG_INFINITY, f64::INFINITY);
        for axis in 0..3 {
            let (p, d) = (point[axis], direction[axis]);
            if d.abs() < 1e-12 {
                if p < self.least[axis] || p > self.most[axis] {
                    return None;
                }
                continue;
            }
            let (a, b) = ((self.least[axis] - p) / d, (self.most[axis] - p) / d);
            enter = enter.max(a.min(b));
            leave = leave.min(a.max(b));
        }
        (enter.is_finite() && leave.is_finite() && enter < leave)
            .then(|| [point + direction * enter, point + direction * leave])
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    /// Derived: each view's eye direction is right × up of its paper.
    #[test]
    fn the_paper_of_every_view_is_right_handed_toward_the_eye() {
        for view in [View::Side, View::Top, View::Rear] {
            let [x, y, z] = view.on_paper();
            let right = Vec3::new(x.0, y.0, z.0);
            let up = Vec3::new(x.1, y.1, z.1);
            assert_relative_eq!(right.cross(&up), view.to_eye(), epsilon = 1e-15);
        }
        let [x, y, z] = View::Isometric.on_paper();
        let normal = Vec3::new(x.0, y.0, z.0).cross(&Vec3::new(x.1, y.1, z.1));
        assert_relative_eq!(
            normal.normalize(),
            View::Isometric.to_eye().normalize(),
            epsilon = 1e-12
        );
    }

    #[test]
    fn front_is_left_of_the_side_view_and_left_is_left_of_the_rear_view() {
        assert!(View::Side.flat(&Vec3::x()).0 < 0.0);
        assert!(View::Rear.flat(&Vec3::y()).0 < 0.0);
        assert!(View::Rear.flat(&Vec3::z()).1 > 0.0);
    }

    #[test]
    fn a_line_is_cut_at_the_walls() {
        let extent = Extent::of([Vec3::zeros(), Vec3::new(2.0, 1.0, 1.0)]).unwrap();
        let [a, b] = extent.clip(&Vec3::new(0.5, 0.5, 0.5), &Vec3::x()).unwrap();
        assert_relative_eq!(a, Vec3::new(0.0, 0.5, 0.5), epsilon = 1e-15);
        assert_relative_eq!(b, Vec3::new(2.0, 0.5, 0.5), epsilon = 1e-15);
        assert!(extent.clip(&Vec3::new(0.5, 5.0, 0.5), &Vec3::x()).is_none());
    }
}
