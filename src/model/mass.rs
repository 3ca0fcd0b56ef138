//! Mass, centre of gravity and inertia tensor, and how those of several parts add.
//!
//! Reads no file.

use nalgebra::Rotation3;

use crate::numeric::{NumericError, symmetric_eigen3};
use crate::spatial::{Mat3, Vec3};

/// Relative slack of the triangle rule, so that a thin plate is not refused for rounding.
const TRIANGLE_SLACK: f64 = 1e-9;

/// Below this ratio of the two smaller principal values to the largest one a body is as flat as a sheet.
///
/// # Source
/// Common practice: a real engine or gearbox is never within 2 % of a lamina.
const SHEET_RATIO: f64 = 1.02;

/// Mass properties of a rigid body.
///
/// The tensor is about the centre of gravity, in vehicle axes [kg m²]. Its
/// off-diagonal elements are **minus** the integrals: `J_xy = -∫ x y dm`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MassProperties {
    mass: f64,
    centre: Vec3,
    inertia: Mat3,
}

/// Why numbers cannot be the mass properties of a body.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ImpossibleMass {
    /// The mass \[kg\] is not above zero.
    NotPositive(f64),
    /// A number is infinite or not a number.
    NotFinite,
    /// The tensor is not symmetric.
    NotSymmetric,
    /// The smallest principal value [kg m²] is not above zero.
    NotPositiveDefinite {
        /// Principal values, rising [kg m²].
        principal: [f64; 3],
    },
    /// The largest principal value is above the sum of the other two.
    BreaksTriangleRule {
        /// Principal values, rising [kg m²].
        principal: [f64; 3],
    },
}

impl MassProperties {
    /// Checks and holds mass \[kg\], centre of gravity [m, vehicle axes] and inertia tensor about it [kg m², vehicle axes].
    ///
    /// # Errors
    /// [`ImpossibleMass`] when no body has these numbers: the mass and the
    /// principal values must be above zero, and no principal value may exceed
    /// the sum of the other two, since `J1 + J2 - J3 = 2 ∫ z² dm`.
    pub fn new(mass: f64, centre: Vec3, inertia: Mat3) -> Result<Self, ImpossibleMass> {
        if !(mass.is_finite() && centre.iter().all(|x| x.is_finite())) {
            return Err(ImpossibleMass::NotFinite);
        }
        if mass <= 0.0 {
            return Err(ImpossibleMass::NotPositive(mass));
        }
        let principal = principal_values(&inertia)?;
        let [small, middle, large] = principal;
        if small <= 0.0 {
            return Err(ImpossibleMass::NotPositiveDefinite { principal });
        }
        if small + middle < large * (1.0 - TRIANGLE_SLACK) {
            return Err(ImpossibleMass::BreaksTriangleRule { principal });
        }
        Ok(Self {
            mass,
            centre,
            inertia,
        })
    }

    /// Mass \[kg\].
    #[must_use]
    pub fn mass(&self) -> f64 {
        self.mass
    }

    /// Centre of gravity in vehicle axes \[m\].
    #[must_use]
    pub fn centre(&self) -> Vec3 {
        self.centre
    }

    /// Inertia tensor about the centre of gravity in vehicle axes [kg m²]; off-diagonals are minus the integrals.
    #[must_use]
    pub fn inertia(&self) -> Mat3 {
        self.inertia
    }

    /// Principal moments of inertia, rising [kg m²], with the principal axes in the columns.
    #[must_use]
    pub fn principal(&self) -> (Vec3, Mat3) {
        symmetric_eigen3(&self.inertia).map_or_else(
            |_| (self.inertia.diagonal(), Mat3::identity()),
            |eigen| (eigen.values, eigen.vectors),
        )
    }

    /// Whether the body is as flat as a sheet: likely a wrong sign or a wrong reference point of the tensor.
    #[must_use]
    pub fn is_sheet_like(&self) -> bool {
        let (principal, _) = self.principal();
        principal[0] + principal[1] < SHEET_RATIO * principal[2]
    }

    /// Mass properties of several bodies held together; `None` when there is no body.
    ///
    /// # Equation
    ///   m = Σ mᵢ,   c = Σ mᵢ cᵢ / m,   J = Σ Jᵢ + mᵢ ((e·e) I − e e'),   e = cᵢ − c
    ///
    /// # Source
    /// Derived: parallel-axis theorem.
    #[must_use]
    pub fn combine<'a>(bodies: impl IntoIterator<Item = &'a Self> + Clone) -> Option<Self> {
        let mass: f64 = bodies.clone().into_iter().map(|b| b.mass).sum();
        let centre = bodies
            .clone()
            .into_iter()
            .map(|b| b.centre * b.mass)
            .sum::<Vec3>()
            / mass;
        let inertia = bodies
            .into_iter()
            .map(|b| b.inertia + point_inertia(b.mass, &(b.centre - centre)))
            .sum();
        Self::new(mass, centre, inertia).ok()
    }
}

fn principal_values(inertia: &Mat3) -> Result<[f64; 3], ImpossibleMass> {
    match symmetric_eigen3(inertia) {
        Ok(eigen) => Ok([eigen.values[0], eigen.values[1], eigen.values[2]]),
        Err(NumericError::NotSymmetric) => Err(ImpossibleMass::NotSymmetric),
        Err(_) => Err(ImpossibleMass::NotFinite),
    }
}

/// Inertia of a point mass [kg m²] at `arm` \[m\] from the reference point.
fn point_inertia(mass: f64, arm: &Vec3) -> Mat3 {
    (Mat3::identity() * arm.norm_squared() - arm * arm.transpose()) * mass
}

/// Shape of a part along its own axes, for its drawing and, when no tensor is known, for its inertia.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Shape {
    /// Box of sizes along the part's x, y, z \[m\].
    Box {
        /// Sizes along x, y, z \[m\].
        size: Vec3,
    },
    /// Solid cylinder along the part's x axis.
    Cylinder {
        /// Diameter \[m\].
        diameter: f64,
        /// Length \[m\].
        length: f64,
    },
    /// Hollow cylinder along the part's x axis.
    Tube {
        /// Outer diameter \[m\].
        outer: f64,
        /// Inner diameter \[m\].
        inner: f64,
        /// Length \[m\].
        length: f64,
    },
}

impl Shape {
    /// Inertia tensor of a uniform body of this shape about its centre, in its own axes [kg m²].
    ///
    /// # Equation
    ///   box a, b, c:          m/12 diag(b² + c², a² + c², a² + b²)
    ///   cylinder, axis x:     m diag(r²/2, (3 r² + l²)/12, (3 r² + l²)/12)
    ///   tube:                 r² → ro² + ri² in both places
    ///
    /// # Source
    /// Published: F. P. Beer, E. R. Johnston, Vector Mechanics for Engineers:
    /// Dynamics, table of mass moments of inertia on the inside back cover
    /// (from memory; edition open). Derived again in the tests.
    #[must_use]
    pub fn inertia(&self, mass: f64) -> Mat3 {
        let diagonal = match *self {
            Self::Box { size } => {
                let [a, b, c] = [size.x * size.x, size.y * size.y, size.z * size.z];
                Vec3::new(b + c, a + c, a + b) / 12.0
            }
            Self::Cylinder { diameter, length } => round_inertia(diameter * diameter / 4.0, length),
            Self::Tube {
                outer,
                inner,
                length,
            } => round_inertia((outer * outer + inner * inner) / 4.0, length),
        };
        Mat3::from_diagonal(&(diagonal * mass))
    }

    /// Sizes of the box that just holds the shape, along its own axes \[m\].
    #[must_use]
    pub fn bounding_size(&self) -> Vec3 {
        match *self {
            Self::Box { size } => size,
            Self::Cylinder { diameter, length } => Vec3::new(length, diameter, diameter),
            Self::Tube { outer, length, .. } => Vec3::new(length, outer, outer),
        }
    }
}

fn round_inertia(radius_squared: f64, length: f64) -> Vec3 {
    let across = (3.0 * radius_squared + length * length) / 12.0;
    Vec3::new(radius_squared / 2.0, across, across)
}

/// Turns a tensor from part axes `E` to vehicle axes `V`.
#[must_use]
pub fn turned(inertia_E: &Mat3, R_VE: &Rotation3<f64>) -> Mat3 {
    R_VE.matrix() * inertia_E * R_VE.matrix().transpose()
}
