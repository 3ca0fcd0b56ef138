//! A group of fillet welds treated as lines of one throat.

use std::f64::consts::PI;

use crate::spatial::{Vec3, Wrench};

/// Piece of weld in the x-y plane of its group.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Piece {
    /// Straight line between two points \[m\].
    Line([f64; 2], [f64; 2]),
    /// Whole circle: middle and radius \[m\].
    Circle([f64; 2], f64),
}

/// Places on a circle at which the stress is looked at; the largest is met within 1e-5.
const PLACES_ON_CIRCLE: u32 = 1440;

impl Piece {
    fn length(&self) -> f64 {
        match self {
            Self::Line(a, b) => (b[0] - a[0]).hypot(b[1] - a[1]),
            Self::Circle(_, radius) => 2.0 * PI * radius.abs(),
        }
    }

    fn middle(&self) -> [f64; 2] {
        match self {
            Self::Line(a, b) => [(a[0] + b[0]) / 2.0, (a[1] + b[1]) / 2.0],
            Self::Circle(middle, _) => *middle,
        }
    }

    /// Second moments ∫x², ∫y², ∫xy about its own middle \[m³\].
    fn own_second_moments(&self) -> [f64; 3] {
        match self {
            Self::Line(a, b) => {
                let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
                let twelfth = self.length() / 12.0;
                [dx * dx, dy * dy, dx * dy].map(|square| twelfth * square)
            }
            Self::Circle(_, radius) => {
                let round = PI * radius.abs().powi(3);
                [round, round, 0.0]
            }
        }
    }

    /// Points among which that of the largest stress is.
    fn extremes(&self) -> Vec<[f64; 2]> {
        match self {
            Self::Line(a, b) => vec![*a, *b],
            Self::Circle(middle, radius) => (0..PLACES_ON_CIRCLE)
                .map(|place| {
                    let angle = 2.0 * PI * f64::from(place) / f64::from(PLACES_ON_CIRCLE);
                    let (sine, cosine) = angle.sin_cos();
                    [middle[0] + radius * cosine, middle[1] + radius * sine]
                })
                .collect(),
        }
    }
}

/// Fillet welds of one throat in one plane, as lines.
///
/// # Equation
///   A = Σ l,   centroid (x_c, y_c) = Σ l (x, y)/A
///   I_x = ∫ y²,   I_y = ∫ x²,   I_xy = ∫ x y,   J = I_x + I_y   about the centroid
///
///   all for each metre of throat: times a gives areas and second moments
///
/// # Range
/// Throat small beside the group.
///
/// # Source
/// Derived: integrals along lines. The method: O. W. Blodgett, Design of Welded
/// Structures, 1966 (from memory).
#[derive(Debug, Clone, PartialEq)]
pub struct WeldGroup {
    pieces: Vec<Piece>,
    length: f64,
    centroid: [f64; 2],
    /// I_y, I_x, I_xy.
    second_moments: [f64; 3],
}

/// Largest stress in a group of welds, on the throat turned into the plane of the group.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WeldStress {
    /// Size \[Pa\].
    pub stress: f64,
    /// Its parts along x, y and z \[Pa\].
    pub parts: Vec3,
    /// Where \[m\].
    pub at: [f64; 2],
}

impl WeldGroup {
    /// Group of these pieces; none without length or with a number that is not finite.
    #[must_use]
    pub fn new(pieces: Vec<Piece>) -> Option<Self> {
        let length: f64 = pieces.iter().map(Piece::length).sum();
        if !(length.is_finite() && length > 0.0) {
            return None;
        }
        let along = |axis: fn(&[f64; 2]) -> f64| -> f64 {
            pieces
                .iter()
                .map(|piece| piece.length() * axis(&piece.middle()))
                .sum::<f64>()
                / length
        };
        let centroid = [along(|p| p[0]), along(|p| p[1])];
        let mut second_moments = [0.0; 3];
        for piece in &pieces {
            let middle = piece.middle();
            let (x, y) = (middle[0] - centroid[0], middle[1] - centroid[1]);
            let carried = [x * x, y * y, x * y];
            for ((sum, own), square) in second_moments
                .iter_mut()
                .zip(piece.own_second_moments())
                .zip(carried)
            {
                *sum += own + piece.length() * square;
            }
        }
        second_moments
            .iter()
            .all(|value| value.is_finite())
            .then_some(Self {
                pieces,
                length,
                centroid,
                second_moments,
            })
    }

    /// Group of one line through these points; closed if the last is the first.
    #[must_use]
    pub fn polyline(points: &[[f64; 2]]) -> Option<Self> {
        let lines = points.iter().zip(points.iter().skip(1));
        Self::new(lines.map(|(a, b)| Piece::Line(*a, *b)).collect())
    }

    /// Length of weld \[m\]: area for each metre of throat.
    #[must_use]
    pub fn length(&self) -> f64 {
        self.length
    }

    /// Centroid \[m\].
    #[must_use]
    pub fn centroid(&self) -> [f64; 2] {
        self.centroid
    }

    /// Second moment about the x axis through the centroid for each metre of throat \[m³\].
    #[must_use]
    pub fn about_x(&self) -> f64 {
        self.second_moments[1]
    }

    /// Second moment about the y axis through the centroid for each metre of throat \[m³\].
    #[must_use]
    pub fn about_y(&self) -> f64 {
        self.second_moments[0]
    }

    /// Polar second moment about the centroid for each metre of throat \[m³\].
    #[must_use]
    pub fn polar(&self) -> f64 {
        self.about_x() + self.about_y()
    }

    /// Largest stress under a wrench; none where a single straight line is twisted about itself.
    ///
    /// # Equation
    ///   σ_x = (V_x/A − T y/J)/a
    ///   σ_y = (V_y/A + T x/J)/a
    ///   σ_z = (N/A + κ_x y − κ_y x)/a,   I_x κ_x − I_xy κ_y = M_x,   I_y κ_y − I_xy κ_x = M_y
    ///   σ = √(σ_x² + σ_y² + σ_z²) at the worst point
    ///
    ///   a                throat \[m\]
    ///   V_x, V_y, N      force along x, y, z \[N\], z out of the plane
    ///   M_x, M_y, T      moment about the centroid [N m]
    ///   x, y             from the centroid \[m\]
    ///
    /// # Range
    /// `load` is taken about the origin of the points, on the welded part. What
    /// is welded is stiff. On a thin wall the weld carries little away from the
    /// side walls: shorten it by
    /// [`effective_width`](crate::strength::rail::plate_on_face::effective_width).
    ///
    /// # Source
    /// Derived: straight distribution over lines with any principal axes. The
    /// sum of all parts as shear on the throat: O. W. Blodgett, Design of Welded
    /// Structures, 1966 (from memory). The stress is convex, so an end of a line is worst.
    #[must_use]
    pub fn stress(&self, throat: f64, load: &Wrench) -> Option<WeldStress> {
        let mut worst: Option<WeldStress> = None;
        for at in self.pieces.iter().flat_map(Piece::extremes) {
            let parts = self.stress_at(throat, load, at)?;
            let stress = parts.norm();
            if worst.is_none_or(|worst| stress > worst.stress) {
                worst = Some(WeldStress { stress, parts, at });
            }
        }
        worst
    }

    /// Parts along x, y, z of the stress at one place of the group \[Pa\]: see [`WeldGroup::stress`].
    #[must_use]
    pub fn stress_at(&self, throat: f64, load: &Wrench, at: [f64; 2]) -> Option<Vec3> {
        let [x_c, y_c] = self.centroid;
        let moment = load.moment - Vec3::new(x_c, y_c, 0.0).cross(&load.force);
        let negligible = 1e-9 * (load.moment.norm() + load.force.norm() * self.length);
        let (kappa_x, kappa_y) = self.bending(moment.x, moment.y, negligible)?;
        let (x, y) = (at[0] - x_c, at[1] - y_c);
        let turning = Vec3::new(-y, x, 0.0) * moment.z / self.polar();
        let bent = Vec3::new(0.0, 0.0, kappa_x * y - kappa_y * x);
        let parts = (load.force / self.length + turning + bent) / throat;
        parts.iter().all(|part| part.is_finite()).then_some(parts)
    }

    /// κ_x and κ_y of the equation of [`WeldGroup::stress`].
    fn bending(&self, m_x: f64, m_y: f64, negligible: f64) -> Option<(f64, f64)> {
        let [i_y, i_x, i_xy] = self.second_moments;
        let scale = self.polar();
        let determinant = i_x * i_y - i_xy * i_xy;
        // Relative to J², since metres cubed of a weld are small numbers.
        if determinant > 1e-12 * scale * scale {
            return Some((
                (m_x * i_y + m_y * i_xy) / determinant,
                (m_y * i_x + m_x * i_xy) / determinant,
            ));
        }
        // One straight line resists bending only in the plane that holds it.
        let size = scale.sqrt();
        let (e_x, e_y) = (i_y.sqrt() / size, i_xy.signum() * i_x.sqrt() / size);
        if (m_x * e_x + m_y * e_y).abs() > negligible {
            return None;
        }
        let kappa = (m_x * e_y - m_y * e_x) / scale;
        Some((kappa * e_y, -kappa * e_x))
    }
}
