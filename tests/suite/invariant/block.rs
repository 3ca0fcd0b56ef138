//! Blocks of rubber: one potential, in any unit.

use bedplate::model::isolator::block::Block;
use bedplate::model::isolator::block::compression::Bulge;
use bedplate::model::isolator::{Isolator, Law};
use bedplate::spatial::{Mat3, Vec3};
use proptest::prelude::*;

use super::build::{for_all, vector};
use crate::kit::{assert_close, isolator_of};

const HEIGHT: f64 = 0.03;

fn block() -> impl Strategy<Value = Block> {
    (
        [50e3..200e3_f64, 50e3..200e3, 100e3..900e3],
        any::<bool>(),
        0.0..1.3_f64,
    )
        .prop_map(|(rates, strip, lean)| Block {
            rates: Vec3::from(rates),
            height: HEIGHT,
            // A part of them stands upright, which is another way through the law.
            lean: if lean < 0.3 { 0.0 } else { lean },
            bulge: if strip {
                Bulge::TwoSides
            } else {
                Bulge::AllRound
            },
        })
}

/// Deflections up to the whole height either way: past the bridge between the two forms and past
/// where the curve goes straight on.
fn deflection() -> impl Strategy<Value = Vec3> {
    vector(1.1 * HEIGHT)
}

#[test]
fn force_is_the_gradient_of_the_energy_and_the_tangent_that_of_the_force() {
    for_all(800, 31, &(block(), deflection()), |(block, x)| {
        let here = block.at(&x);
        let h = 1e-7;
        let mut slope = Mat3::zeros();
        let mut gradient = Vec3::zeros();
        let mut steepest = 0.0_f64;
        for axis in 0..3 {
            let mut step = Vec3::zeros();
            step[axis] = h;
            let (there, before) = (block.at(&(x + step)), block.at(&(x - step)));
            slope.set_column(axis, &((there.force - before.force) / (2.0 * h)));
            gradient[axis] = (there.energy - before.energy) / (2.0 * h);
            steepest = steepest.max((there.tangent - before.tangent).amax());
        }
        let scale = here.tangent.amax();
        // Across a corner of the slope a difference is off by half of what the slope changes.
        let allowed = 1e-6 * scale + steepest;
        assert_close(
            "tangent",
            slope.as_slice(),
            here.tangent.as_slice(),
            0.0,
            allowed,
        );
        let allowed = 1e-6 * (here.force.norm() + scale * 1e-3);
        assert_close(
            "force",
            gradient.as_slice(),
            here.force.as_slice(),
            0.0,
            allowed,
        );
        let symmetric = here.tangent.transpose();
        assert_close(
            "symmetric",
            here.tangent.as_slice(),
            symmetric.as_slice(),
            0.0,
            1e-9 * scale,
        );
        // The energy is convex: no direction gives way, and it lies above its tangent at rest.
        let least = bedplate::numeric::symmetric_eigen3(&here.tangent)
            .unwrap()
            .values[0];
        assert!(least > 0.0 && here.energy > 0.0, "{least}");
    });
}

/// Work along a closed path of straight lines, by Gauss's rule with three points a piece.
#[test]
fn a_closed_path_does_no_work() {
    let corners = [deflection(), deflection(), deflection()];
    for_all(40, 32, &(block(), corners), |(block, corners)| {
        let mut work = 0.0;
        let mut moved = 0.0;
        for (from, to) in [(0, 1), (1, 2), (2, 0)] {
            let way = corners[to] - corners[from];
            let pieces = 2000;
            for piece in 0..pieces {
                for (at, weight) in [(-0.6_f64.sqrt(), 5.0), (0.0, 8.0), (0.6_f64.sqrt(), 5.0)] {
                    let share = (f64::from(piece) + 0.5 + at / 2.0) / f64::from(pieces);
                    let force = block.at(&(corners[from] + way * share)).force;
                    let part = force.dot(&way) * weight / 18.0 / f64::from(pieces);
                    work += part;
                    moved += part.abs();
                }
            }
        }
        assert_close("work", &[work], &[0.0], 0.0, 1e-8 * moved);
    });
}

fn assert_same_law(one: &Isolator, two: &Isolator) {
    for x in [
        Vec3::new(1e-3, -2e-3, -3e-3),
        Vec3::new(-4e-3, 3e-3, -9e-3),
        Vec3::new(2e-3, 6e-3, 5e-3),
        Vec3::new(0.0, 1e-3, -24e-3),
    ] {
        let (a, b) = (one.at(&x).point, two.at(&x).point);
        assert_close("force", b.force.as_slice(), a.force.as_slice(), 1e-9, 1e-6);
        assert_close(
            "tangent",
            b.tangent.as_slice(),
            a.tangent.as_slice(),
            1e-9,
            1e-3,
        );
        assert_close("energy", &[b.energy], &[a.energy], 1e-9, 0.0);
    }
}

/// One inch is 25.4 mm, one pound-force per square inch 6894.757293 Pa, one degree π/180 rad.
#[test]
fn a_file_in_inches_is_the_same_file() {
    for (metric, imperial) in [
        (
            "kind = \"block\"\nblock = \"76.2, 50.8, 25.4 mm\"\nhardness = \"57 IRHD\"\nlayers = 2",
            "kind = \"block\"\nblock = \"3, 2, 1 in\"\nhardness = \"57 IRHD\"\nlayers = 2",
        ),
        (
            "kind = \"block\"\ncylinder = { diameter = \"50.8 mm\", height = \"25.4 mm\" }\ncount = 2\n\
             inclined = \"30 deg\"\nmodulus = { youngs = \"3.4473786466 MPa\", shear = \"0.8618446616 MPa\" }",
            "kind = \"block\"\ncylinder = { diameter = \"2 in\", height = \"1 in\" }\ncount = 2\n\
             inclined = \"0.5235987755983 rad\"\nmodulus = { youngs = \"500 psi\", shear = \"125 psi\" }",
        ),
        (
            "kind = \"polyurethane\"\nhollow = { outer = \"63.5 mm\", inner = \"12.7 mm\", height = \"25.4 mm\" }\nhardness = \"70 Shore A\"",
            "kind = \"polyurethane\"\nhollow = { outer = \"2.5 in\", inner = \"0.5 in\", height = \"1 in\" }\nhardness = \"70 Shore A\"",
        ),
        (
            "kind = \"block\"\nhardness = \"45 IRHD\"\nstrip = { length = \"304.8 mm\", width = \"25.4 mm\", height = \"25.4 mm\" }",
            "kind = \"block\"\nhardness = \"45 IRHD\"\nstrip = { length = \"1 ft\", width = \"1 in\", height = \"1 in\" }",
        ),
    ] {
        assert_same_law(&isolator_of(metric), &isolator_of(imperial));
    }
}
