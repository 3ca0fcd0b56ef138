//! Mass properties: closed forms and a composite worked independently.

use bedplate::model::mass::{ImpossibleMass, MassProperties, Shape, turned};
use bedplate::spatial::{Mat3, Vec3, rotation_from_roll_pitch_yaw};
use nalgebra::Rotation3;

use crate::kit::assert_close;

/// Whether a point belongs to a shape.
type Inside<'a> = &'a dyn Fn(&Vec3) -> bool;

fn body(shape: Shape, mass: f64, at: [f64; 3], R_VE: &Rotation3<f64>) -> MassProperties {
    let inertia = turned(&shape.inertia(mass), R_VE);
    MassProperties::new(mass, Vec3::from(at), inertia).unwrap()
}

/// Derived: three uniform bodies, one of them turned 10, 20, 30 degrees; every number
/// worked from the sums outside this program.
#[test]
fn box_cylinder_and_tube_together() {
    let R = rotation_from_roll_pitch_yaw(
        10_f64.to_radians(),
        20_f64.to_radians(),
        30_f64.to_radians(),
    );
    let rows = [
        0.81379768,
        -0.44096961,
        0.37852231,
        0.46984631,
        0.88256412,
        0.01802831,
        -0.34202014,
        0.16317591,
        0.92541658,
    ];
    assert_close("R", R.matrix().transpose().as_slice(), &rows, 0.0, 1e-8);
    let upright = Rotation3::identity();
    let bodies = [
        body(
            Shape::Box {
                size: Vec3::new(0.5, 0.3, 0.4),
            },
            40.0,
            [0.0; 3],
            &R,
        ),
        body(
            Shape::Cylinder {
                diameter: 0.2,
                length: 0.25,
            },
            12.0,
            [0.4, -0.1, 0.15],
            &upright,
        ),
        body(
            Shape::Tube {
                outer: 0.12,
                inner: 0.1,
                length: 0.8,
            },
            5.0,
            [-0.5, 0.05, -0.1],
            &upright,
        ),
    ];
    // In any order, and in any grouping.
    let [a, b, c] = &bodies;
    let grouped = MassProperties::combine([a, c]).unwrap();
    for whole in [
        MassProperties::combine([a, b, c]),
        MassProperties::combine([c, a, b]),
        MassProperties::combine([b, &grouped]),
    ] {
        let whole = whole.unwrap();
        assert_close("mass", &[whole.mass()], &[57.0], 1e-15, 0.0);
        let centre = [0.04035088, -0.01666667, 0.02280702];
        assert_close("centre", whole.centre().as_slice(), &centre, 0.0, 1e-8);
        let (xx, yy, zz) = (1.46229352, 4.98319006, 4.66510414);
        let (xy, xz, yz) = (0.36114913, -0.85083294, 0.26514549);
        let J = [xx, xy, xz, xy, yy, yz, xz, yz, zz];
        assert_close("J", whole.inertia().as_slice(), &J, 0.0, 1e-8);
        let principal = [1.20472553, 4.76778154, 5.13808064];
        assert_close(
            "principal",
            whole.principal().0.as_slice(),
            &principal,
            0.0,
            1e-8,
        );
    }
}

/// Derived: the integral ∫ (r² I − r r') dm over a grid of cells (midpoint rule), against the closed forms.
#[test]
fn closed_forms_are_the_integrals() {
    let (outer, inner, length) = (0.3, 0.2, 0.5);
    let size = Vec3::new(0.5, 0.3, 0.4);
    let inside_round = |p: &Vec3, outer: f64, inner: f64| {
        let r2 = p.y * p.y + p.z * p.z;
        r2 <= outer * outer / 4.0 && r2 >= inner * inner / 4.0
    };
    let cases: [(Shape, Inside<'_>, Vec3); 3] = [
        (Shape::Box { size }, &|_| true, size),
        (
            Shape::Cylinder {
                diameter: outer,
                length,
            },
            &|p| inside_round(p, outer, 0.0),
            Vec3::new(length, outer, outer),
        ),
        (
            Shape::Tube {
                outer,
                inner,
                length,
            },
            &|p| inside_round(p, outer, inner),
            Vec3::new(length, outer, outer),
        ),
    ];
    for (shape, inside, bounds) in cases {
        assert_close(
            "bounds",
            shape.bounding_size().as_slice(),
            bounds.as_slice(),
            0.0,
            0.0,
        );
        let cells = 120;
        let mut sum = Mat3::zeros();
        let mut count = 0.0;
        for i in 0..cells {
            for j in 0..cells {
                for k in 0..cells {
                    let unit = Vec3::new(f64::from(i), f64::from(j), f64::from(k));
                    let p = ((unit.add_scalar(0.5)) / f64::from(cells)).add_scalar(-0.5);
                    let p = p.component_mul(&bounds);
                    if inside(&p) {
                        sum += Mat3::identity() * p.norm_squared() - p * p.transpose();
                        count += 1.0;
                    }
                }
            }
        }
        let summed = sum * (7.0 / count);
        let closed = shape.inertia(7.0);
        assert_close(shape, closed.as_slice(), summed.as_slice(), 2e-3, 1e-10);
    }
}

/// Derived: two equal point-like bodies at ±e have the tensor 2 m (e² I − e e'), off-diagonals minus ∫ xy dm.
#[test]
fn products_carry_the_sign_of_the_tensor() {
    let small = Mat3::identity() * 1e-3;
    let e = Vec3::new(0.3, 0.2, 0.0);
    let pair = [e, -e].map(|at| MassProperties::new(5.0, at, small).unwrap());
    let whole = MassProperties::combine(&pair).unwrap();
    // ∫ x y dm = 10 · 0.06 = 0.6, so J_xy = −0.6; J_zz = 10 · 0.13 + 0.002.
    let J = whole.inertia();
    assert_close("J", &[J[(0, 1)], J[(2, 2)]], &[-0.6, 1.302], 1e-14, 0.0);
}

#[test]
fn bodies_that_cannot_exist_are_refused_with_their_numbers() {
    let at = Vec3::zeros();
    let diagonal = |x, y, z| Mat3::from_diagonal(&Vec3::new(x, y, z));
    let refuse = |mass, inertia| MassProperties::new(mass, at, inertia).unwrap_err();
    assert_eq!(
        refuse(-3.0, diagonal(1.0, 1.0, 1.0)),
        ImpossibleMass::NotPositive(-3.0)
    );
    assert_eq!(
        refuse(f64::NAN, diagonal(1.0, 1.0, 1.0)),
        ImpossibleMass::NotFinite
    );
    assert_eq!(
        refuse(1.0, diagonal(1.0, f64::NAN, 1.0)),
        ImpossibleMass::NotFinite
    );
    assert!(matches!(
        refuse(1.0, diagonal(1.0, 1.0, 2.1)),
        ImpossibleMass::BreaksTriangleRule { principal } if (principal[2] - 2.1).abs() < 1e-12
    ));
    assert!(matches!(
        refuse(1.0, diagonal(1.0, -0.5, 1.0)),
        ImpossibleMass::NotPositiveDefinite { principal } if (principal[0] + 0.5).abs() < 1e-12
    ));
    let mut skewed = diagonal(1.0, 1.0, 1.0);
    skewed[(0, 1)] = 0.1;
    assert_eq!(refuse(1.0, skewed), ImpossibleMass::NotSymmetric);
    let sheet = MassProperties::new(1.0, at, diagonal(1.0, 1.0, 1.99)).unwrap();
    assert!(sheet.is_sheet_like());
    let solid = MassProperties::new(1.0, at, diagonal(1.0, 1.0, 1.5)).unwrap();
    assert!(!solid.is_sheet_like());
    assert!(MassProperties::combine([]).is_none());
}
