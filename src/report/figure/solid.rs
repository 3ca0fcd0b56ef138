//! Parts as convex bodies for a line drawing: outline and the faces that look at the reader.

use super::canvas::{Canvas, Pen, Run, Spot};
use super::palette::{INK, MUTED};
use super::view::Panel;
use crate::model::mass::Shape;
use crate::model::part::Part;
use crate::spatial::{Mat3, Vec3};
use plotters::style::RGBColor;
use std::f64::consts::TAU;

/// Corners of a round end.
const ROUND: u32 = 36;

/// A convex body, in vehicle axes.
#[derive(Debug, Clone)]
pub(super) struct Solid {
    faces: Vec<Face>,
    /// Whether the part had no shape, so that this is the box of the same mass and inertia.
    pub(super) is_stand_in: bool,
}

#[derive(Debug, Clone)]
struct Face {
    /// Outline, counter-clockwise seen from outside.
    rim: Vec<Vec3>,
    /// Edge of a bore.
    bore: Option<Vec<Vec3>>,
}

/// How a body is drawn.
#[derive(Debug, Clone, Copy)]
pub(super) struct SolidStyle {
    pub(super) tint: Option<RGBColor>,
    pub(super) outline: Pen,
    pub(super) inner: Pen,
}

impl SolidStyle {
    /// Light fill with a solid outline, dashed for a body that stands in for an unknown shape.
    pub(super) fn of(solid: &Solid) -> Self {
        let run = if solid.is_stand_in {
            Run::Dashed
        } else {
            Run::Solid
        };
        Self {
            tint: Some(MUTED),
            outline: Pen::new(INK, 1.25).run(run),
            inner: Pen::new(MUTED, 0.75).run(run),
        }
    }
}

impl Solid {
    /// The body of a part.
    pub(super) fn of(part: &Part) -> Self {
        let centre = part.mass.centre();
        let R_VE = *part.turned.matrix();
        let (faces, is_stand_in) = match part.shape {
            Some(Shape::Box { size }) => (box_faces(&size), false),
            Some(Shape::Cylinder { diameter, length }) => {
                (round_faces(diameter / 2.0, None, length), false)
            }
            Some(Shape::Tube {
                outer,
                inner,
                length,
            }) => (round_faces(outer / 2.0, Some(inner / 2.0), length), false),
            None => {
                let (size, axes) = equivalent_box(part);
                return Self::placed(box_faces(&size), &axes, &centre, true);
            }
        };
        Self::placed(faces, &R_VE, &centre, is_stand_in)
    }

    fn placed(faces: Vec<Face>, R_VE: &Mat3, centre: &Vec3, is_stand_in: bool) -> Self {
        let solid = Self { faces, is_stand_in };
        solid.moved(|p_E| R_VE * p_E + centre)
    }

    /// The body with every corner moved.
    pub(super) fn moved(&self, motion: impl Fn(&Vec3) -> Vec3) -> Self {
        let faces = self
            .faces
            .iter()
            .map(|face| Face {
                rim: face.rim.iter().map(&motion).collect(),
                bore: face
                    .bore
                    .as_ref()
                    .map(|bore| bore.iter().map(&motion).collect()),
            })
            .collect();
        Self {
            faces,
            is_stand_in: self.is_stand_in,
        }
    }

    /// All corners.
    pub(super) fn corners(&self) -> impl Iterator<Item = Vec3> + '_ {
        self.faces.iter().flat_map(|face| face.rim.iter().copied())
    }

    /// How near it is to the eye, for the order of drawing.
    pub(super) fn nearness(&self, to_eye: &Vec3) -> f64 {
        let (sum, count) = self.corners().fold((0.0, 0.0), |(sum, count), p| {
            (sum + p.dot(to_eye), count + 1.0)
        });
        if count > 0.0 { sum / count } else { 0.0 }
    }

    /// Draws the body in a panel.
    pub(super) fn draw(&self, canvas: &mut Canvas<'_>, panel: &Panel, style: SolidStyle) {
        let silhouette = hull(self.corners().map(|p| panel.place(&p)).collect());
        if let Some(tint) = style.tint {
            canvas.fill(&silhouette, tint, 0.1);
        }
        let to_eye = panel.view.to_eye();
        for face in self.faces.iter().filter(|face| face.looks_at(&to_eye)) {
            for ring in [Some(&face.rim), face.bore.as_ref()].into_iter().flatten() {
                let spots: Vec<Spot> = ring.iter().map(|p| panel.place(p)).collect();
                canvas.outline(&spots, style.inner);
            }
        }
        canvas.outline(&silhouette, style.outline);
    }
}

impl Face {
    fn normal(&self) -> Vec3 {
        // Newell's sum: right for any flat outline, and near enough for one that a motion has bent.
        let next = self.rim.iter().cycle().skip(1);
        self.rim.iter().zip(next).map(|(a, b)| a.cross(b)).sum()
    }

    fn looks_at(&self, to_eye: &Vec3) -> bool {
        let normal = self.normal();
        normal.dot(to_eye) > 1e-6 * normal.norm() * to_eye.norm()
    }
}

fn box_faces(size: &Vec3) -> Vec<Face> {
    let h = size / 2.0;
    let corner = |x: f64, y: f64, z: f64| Vec3::new(x * h.x, y * h.y, z * h.z);
    let turn = [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)];
    let mut faces = Vec::with_capacity(6);
    for axis in 0..3 {
        for side in [1.0, -1.0] {
            let rim = turn.map(|(a, b)| {
                // Mirrored on the far side, so that the outline stays counter-clockwise from outside.
                let (a, b) = (a * side, b);
                match axis {
                    0 => corner(side, a, b),
                    1 => corner(b, side, a),
                    _ => corner(a, b, side),
                }
            });
            faces.push(Face {
                rim: rim.to_vec(),
                bore: None,
            });
        }
    }
    faces
}

/// The two ends of a round body along x; its side shows only in the silhouette.
fn round_faces(radius: f64, bore: Option<f64>, length: f64) -> Vec<Face> {
    [1.0, -1.0]
        .into_iter()
        .map(|side| {
            let ring = |r: f64| -> Vec<Vec3> {
                (0..ROUND)
                    .map(|i| {
                        let angle = side * TAU * f64::from(i) / f64::from(ROUND);
                        Vec3::new(side * length / 2.0, r * angle.cos(), r * angle.sin())
                    })
                    .collect()
            };
            Face {
                rim: ring(radius),
                bore: bore.map(ring),
            }
        })
        .collect()
}

/// Sizes and axes of the uniform box with the mass and the principal moments of inertia of a part.
///
/// # Equation
///   a² = 6 (J2 + J3 − J1)/m, and in turn for b and c
///
/// # Source
/// Derived: a box has J1 = m (b² + c²)/12, and in turn.
fn equivalent_box(part: &Part) -> (Vec3, Mat3) {
    let (J, axes) = part.mass.principal();
    let sum = J.sum();
    let size = J.map(|j| (6.0 * (sum - 2.0 * j) / part.mass.mass()).max(0.0).sqrt());
    // Right-handed, so that faces keep looking outward.
    let axes = if axes.determinant() < 0.0 {
        -axes
    } else {
        axes
    };
    (size, axes)
}

/// Convex outline of spots, by the chain method of A. M. Andrew, Information Processing Letters 9 (1979), 216 (from memory).
pub(super) fn hull(mut spots: Vec<Spot>) -> Vec<Spot> {
    spots.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    let half = |order: &mut dyn Iterator<Item = Spot>| {
        let mut chain: Vec<Spot> = Vec::new();
        for spot in order {
            while let [.., a, b] = chain.as_slice() {
                let turn = (b.0 - a.0) * (spot.1 - a.1) - (b.1 - a.1) * (spot.0 - a.0);
                // A hundredth of a square unit is no corner.
                if turn > 0.01 {
                    break;
                }
                chain.pop();
            }
            chain.push(spot);
        }
        chain.pop();
        chain
    };
    let mut outline = half(&mut spots.iter().copied());
    outline.extend(half(&mut spots.iter().rev().copied()));
    outline
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::mass::MassProperties;
    use approx::assert_relative_eq;
    use nalgebra::Rotation3;

    #[test]
    fn faces_look_outward() {
        let mut faces = box_faces(&Vec3::new(3.0, 2.0, 1.0));
        faces.extend(round_faces(0.5, None, 2.0));
        for face in faces {
            let middle = face.rim.iter().sum::<Vec3>();
            assert!(face.normal().dot(&middle) > 0.0, "{face:?}");
        }
    }

    /// Derived: the inertia of a box gives the box back.
    #[test]
    fn a_part_without_shape_is_the_box_of_its_inertia() {
        let size = Vec3::new(0.9, 0.5, 0.7);
        let inertia = Shape::Box { size }.inertia(120.0);
        let part = Part {
            name: String::new(),
            mass: MassProperties::new(120.0, Vec3::new(1.0, 2.0, 3.0), inertia).unwrap(),
            shape: None,
            fill: None,
            turned: Rotation3::identity(),
        };
        let solid = Solid::of(&part);
        assert!(solid.is_stand_in);
        let least = solid.corners().reduce(|a, b| a.inf(&b)).unwrap();
        let most = solid.corners().reduce(|a, b| a.sup(&b)).unwrap();
        assert_relative_eq!(most - least, size, epsilon = 1e-9);
    }

    #[test]
    fn the_outline_of_a_square_with_a_spot_inside_has_four_corners() {
        let spots = vec![
            (0.0, 0.0),
            (10.0, 0.0),
            (5.0, 5.0),
            (10.0, 10.0),
            (0.0, 10.0),
        ];
        assert_eq!(hull(spots).len(), 4);
        assert_eq!(hull(vec![(1.0, 1.0); 5]).len(), 2);
    }
}
