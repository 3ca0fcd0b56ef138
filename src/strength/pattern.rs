//! How a pattern of equal bolts shares the forces of what it holds.
//!
//! Axes of the joint face: x and y along it, z out of the part that is bolted to. A pull along z
//! takes the joint apart.

use crate::spatial::Wrench;

/// Spread across the line of the bolts, as a share of that along it, below which they stand in one line.
const FLAT: f64 = 1e-9;

/// Force of one bolt.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BoltForce {
    /// Along the bolt, positive pulls \[N\].
    pub axial: f64,
    /// Along the joint face, x and y \[N\].
    pub shear: [f64; 2],
}

impl BoltForce {
    /// Size of the force along the face \[N\].
    #[must_use]
    pub fn shear_size(&self) -> f64 {
        let [x, y] = self.shear;
        x.hypot(y)
    }
}

/// What a pattern does with a wrench.
#[derive(Debug, Clone, PartialEq)]
pub struct Shared {
    /// Forces of the bolts, in the order of the pattern.
    pub bolts: Vec<BoltForce>,
    /// Moment about x, y and z that no force of the bolts takes [N m]; zeros when all is taken.
    ///
    /// A single bolt takes none; bolts in one line none about that line.
    pub untaken: [f64; 3],
}

/// Places of equal bolts on the joint face.
#[derive(Debug, Clone, PartialEq)]
pub struct Pattern {
    centre: [f64; 2],
    /// From the centre.
    points: Vec<[f64; 2]>,
    moments: SecondMoments,
}

/// Principal second moments of the points about their centre.
#[derive(Debug, Clone, Copy, PartialEq)]
struct SecondMoments {
    /// Unit vector of the wider axis.
    axis: [f64; 2],
    /// Σ of squares along that axis, and across \[m²\]; zero where they do not count.
    along: f64,
    across: f64,
}

impl SecondMoments {
    /// Of points about their centre; spreads far below `reach`, the largest coordinate before the
    /// centre was subtracted, are rounding.
    fn of(points: &[[f64; 2]], reach: f64) -> Self {
        let (mut xx, mut yy, mut xy) = (0.0, 0.0, 0.0);
        for [x, y] in points {
            xx += x * x;
            yy += y * y;
            xy += x * y;
        }
        let angle = 0.5 * (2.0 * xy).atan2(xx - yy);
        let (mean, half) = (f64::midpoint(xx, yy), (0.5 * (xx - yy)).hypot(xy));
        let (along, across) = (mean + half, mean - half);
        let counts = |moment: f64, least: f64| if moment > least { moment } else { 0.0 };
        Self {
            axis: [angle.cos(), angle.sin()],
            along: counts(along, (FLAT * reach).powi(2)),
            across: counts(across, FLAT * along),
        }
    }

    /// Components along the axis and across it.
    fn turned(&self, [x, y]: [f64; 2]) -> [f64; 2] {
        let [c, s] = self.axis;
        [c * x + s * y, c * y - s * x]
    }

    fn turned_back(&self, [u, v]: [f64; 2]) -> [f64; 2] {
        let [c, s] = self.axis;
        [c * u - s * v, s * u + c * v]
    }
}

/// A share of a moment, and what is left of it when there is nothing to take it.
fn slope_and_rest(moment: f64, second_moment: f64) -> (f64, f64) {
    if second_moment > 0.0 {
        (moment / second_moment, 0.0)
    } else {
        (0.0, moment)
    }
}

impl Pattern {
    /// A pattern of bolts at these places, x and y from any point of the face \[m\]; none without a bolt.
    #[must_use]
    pub fn new(places: &[[f64; 2]]) -> Option<Self> {
        if places.is_empty() {
            return None;
        }
        let count = places.len() as f64;
        let centre = [0, 1].map(|k| places.iter().filter_map(|p| p.get(k)).sum::<f64>() / count);
        let points: Vec<[f64; 2]> = places
            .iter()
            .map(|[x, y]| [x - centre[0], y - centre[1]])
            .collect();
        let reach = places
            .iter()
            .flatten()
            .fold(0.0, |most: f64, x| most.max(x.abs()));
        Some(Self {
            centre,
            moments: SecondMoments::of(&points, reach),
            points,
        })
    }

    /// Centre of the bolts, in the axes of the places \[m\].
    #[must_use]
    pub fn centre(&self) -> [f64; 2] {
        self.centre
    }

    /// Forces of the bolts when the plate turns about the centre of the pattern.
    ///
    /// # Equation
    ///   axial:  Fi = N/z + M1 vi/Σv² − M2 ui/Σu²
    ///   shear:  Fi = V/z + T (−yi, xi)/Σr²
    ///
    ///   N, V    pull, force along the face, at the centre              \[N\]
    ///   M1, M2  moments about the principal axes u and v of the bolts  [N m]
    ///   T       moment about z                                         [N m]
    ///   z       number of bolts
    ///
    /// # Range
    /// A stiff plate on a stiff face, all equal bolts. A preloaded joint does not turn about the
    /// centre of its bolts before it slips; these arms are common practice there.
    ///
    /// # Source
    /// Derived: forces that grow in proportion to the motion of a stiff plate.
    #[must_use]
    pub fn about_centre(&self, at_centre: &Wrench) -> Shared {
        let moments = self.moments;
        let [m1, m2] = moments.turned([at_centre.moment.x, at_centre.moment.y]);
        let (per_v, rest_1) = slope_and_rest(m1, moments.across);
        let (per_u, rest_2) = slope_and_rest(m2, moments.along);
        let [rest_x, rest_y] = moments.turned_back([rest_1, rest_2]);
        let pull = at_centre.force.z / self.count();
        let (shears, rest_z) = self.shears(at_centre);
        let bolts = self.points.iter().zip(shears).map(|(point, shear)| {
            let [u, v] = moments.turned(*point);
            BoltForce {
                axial: pull + per_v * v - per_u * u,
                shear,
            }
        });
        Shared {
            bolts: bolts.collect(),
            untaken: [rest_x, rest_y, rest_z],
        }
    }

    /// Forces of the bolts when the plate tilts about the edge it is pressed on.
    ///
    /// # Equation
    ///   axial:  Fi = N/z + M li/Σl²
    ///
    ///   M   size of the moment about axes in the face                      [N m]
    ///   li  distance of bolt i from the edge, across the axis of tilting   \[m\]
    ///
    /// The shear is as in [`Self::about_centre`].
    ///
    /// # Range
    /// `outline` are corners of the plate, from the same point as the places of the bolts \[m\];
    /// the edge is its farthest corner on the side that is pressed. On a hollow rail that edge stands on a
    /// wall that gives way, and the truth lies between this and [`Self::about_centre`].
    ///
    /// # Source
    /// V. B. Bhandari, Design of Machine Elements, section on brackets with bolts in tension
    /// (from memory); it adds the direct share N/z to the whole moment, as here.
    #[must_use]
    pub fn about_heel(&self, at_centre: &Wrench, outline: &[[f64; 2]]) -> Shared {
        let (m1, m2) = (at_centre.moment.x, at_centre.moment.y);
        let size = m1.hypot(m2);
        if size <= 0.0 {
            return self.about_centre(at_centre);
        }
        // The way the pull grows: a bolt at (x, y) resists M with y M1 − x M2.
        let up = [-m2 / size, m1 / size];
        let along = |[x, y]: [f64; 2]| up[0] * x + up[1] * y;
        let heel = outline
            .iter()
            .map(|[x, y]| along([x - self.centre[0], y - self.centre[1]]))
            .fold(0.0, f64::min);
        let arms: Vec<f64> = self
            .points
            .iter()
            .map(|point| (along(*point) - heel).max(0.0))
            .collect();
        let squares: f64 = arms.iter().map(|arm| arm * arm).sum();
        let (per_arm, rest) = slope_and_rest(size, squares);
        let (shears, rest_z) = self.shears(at_centre);
        let pull = at_centre.force.z / self.count();
        let bolts = arms.iter().zip(shears).map(|(arm, shear)| BoltForce {
            axial: pull + per_arm * arm,
            shear,
        });
        Shared {
            bolts: bolts.collect(),
            untaken: [m1 * rest / size, m2 * rest / size, rest_z],
        }
    }

    /// For each bolt the larger pull of [`Self::about_centre`] and [`Self::about_heel`].
    ///
    /// What one of the two takes counts as taken.
    #[must_use]
    pub fn worst(&self, at_centre: &Wrench, outline: &[[f64; 2]]) -> Shared {
        let centre = self.about_centre(at_centre);
        let heel = self.about_heel(at_centre, outline);
        let bolts = centre.bolts.iter().zip(&heel.bolts);
        let untaken = std::array::from_fn(|k| {
            let of = |shared: &Shared| shared.untaken.get(k).copied().unwrap_or_default();
            let (one, other) = (of(&centre), of(&heel));
            if one.abs() < other.abs() { one } else { other }
        });
        Shared {
            bolts: bolts
                .map(|(one, other)| BoltForce {
                    axial: one.axial.max(other.axial),
                    shear: one.shear,
                })
                .collect(),
            untaken,
        }
    }

    fn count(&self) -> f64 {
        self.points.len() as f64
    }

    /// Forces along the face, and the twist that is left.
    fn shears(&self, at_centre: &Wrench) -> (Vec<[f64; 2]>, f64) {
        let polar = self.moments.along + self.moments.across;
        let (twist, rest) = slope_and_rest(at_centre.moment.z, polar);
        let direct = [at_centre.force.x, at_centre.force.y].map(|force| force / self.count());
        let shears = self
            .points
            .iter()
            .map(|[x, y]| [direct[0] - twist * y, direct[1] + twist * x])
            .collect();
        (shears, rest)
    }
}
