//! Every stiffness is the derivative of a force, every force of an energy.

use bedplate::rigid::loading::Loading;
use bedplate::rigid::supported::{Assembly, Supported};
use bedplate::spatial::{Mat6, Pose, Vec3, Vec6, skew};

use super::build::{any_build, for_all, vector};
use crate::kit::assert_close;

/// Displacements that reach into the stops, and turns up to 0.1 rad.
fn away(body: &Supported<'_>, shift: Vec3, turn: Vec3) -> Pose {
    let q = bedplate::spatial::stack(&shift, &turn);
    body.fitted_pose().moved_by(&q)
}

fn step(i: usize, size: f64) -> Vec6 {
    let mut q = Vec6::zeros();
    q[i] = size;
    q
}

fn at(body: &Supported<'_>, pose: &Pose, loading: &Loading) -> Assembly {
    body.at(pose, loading).unwrap()
}

#[test]
fn tangent_is_the_finite_difference_of_the_wrench() {
    let inputs = (any_build(), vector(7e-3), vector(0.02));
    for_all(48, 11, &inputs, |(build, shift, turn)| {
        let body = build.supported();
        let pose = away(&body, shift, turn);
        let K = at(&body, &pose, &build.loading).tangent();
        let h = 1e-7;
        let mut slope = Mat6::zeros();
        for i in 0..6 {
            let there = at(&body, &pose.moved_by(&step(i, h)), &build.loading);
            let before = at(&body, &pose.moved_by(&step(i, -h)), &build.loading);
            let column = (there.resultant.vector() - before.resultant.vector()) / (-2.0 * h);
            slope.set_column(i, &column);
        }
        let scale = K.amax();
        assert_close("tangent", slope.as_slice(), K.as_slice(), 0.0, 2e-6 * scale);
    });
}

/// Brute force: nothing but energies is compared with the force.
#[test]
fn force_is_the_gradient_of_the_energy() {
    let inputs = (any_build(), vector(7e-3), vector(0.02));
    for_all(48, 12, &inputs, |(build, shift, turn)| {
        let body = build.supported();
        let pose = away(&body, shift, turn);
        let mut loading = build.loading.clone();
        let here = at(&body, &pose, &loading);
        // Dead moments have no potential: leave them out of the wrench as well.
        let mut wrench = here.resultant.vector();
        for (i, part) in loading.free_moment().iter().enumerate() {
            wrench[3 + i] -= part;
        }
        loading.moment = Vec3::zeros();
        let energy = |q: &Vec6| {
            let there = at(&body, &pose.moved_by(q), &loading);
            there.energy + there.load_potential
        };
        let h = 2e-6;
        let mut gradient = Vec6::zeros();
        for i in 0..6 {
            gradient[i] = (energy(&step(i, h)) - energy(&step(i, -h))) / (2.0 * h);
        }
        let scale = wrench.norm() + 1e3;
        let found = -gradient;
        assert_close(
            "force",
            found.as_slice(),
            wrench.as_slice(),
            0.0,
            2e-6 * scale,
        );
    });
}

/// The symmetric part of the tangent is the second derivative of the energy along exp(\[dth\]) R.
#[test]
fn symmetric_part_is_the_curvature_of_the_energy() {
    let inputs = (
        any_build(),
        vector(7e-3),
        vector(0.02),
        vector(1.0),
        vector(2.0),
    );
    for_all(32, 13, &inputs, |(build, shift, turn, dc, dth)| {
        let body = build.supported();
        let pose = away(&body, shift, turn);
        let loading = build.loading.clone();
        let K = at(&body, &pose, &loading).tangent();
        let q = bedplate::spatial::stack(&dc, &dth);
        let h = 1e-5;
        let energy = |s: f64| {
            let there = at(&body, &pose.moved_by(&(q * s)), &loading);
            there.energy + there.load_potential
        };
        let curvature = (energy(h) - 2.0 * energy(0.0) + energy(-h)) / (h * h);
        let expected = q.dot(&(K * q));
        let scale = K.amax() * q.norm_squared();
        assert_close("curvature", &[curvature], &[expected], 0.0, 2e-4 * scale);
    });
}

/// skew(K_m + K_g) = +1/2 \[M_mounts\] at any pose.
#[test]
fn skew_part_of_the_tangent_is_half_the_mount_moment() {
    let inputs = (any_build(), vector(7e-3), vector(0.05));
    for_all(32, 14, &inputs, |(build, shift, turn)| {
        let body = build.supported();
        let here = at(&body, &away(&body, shift, turn), &Loading::none());
        let K = here.tangent();
        let found = (K - K.transpose()) * 0.5;
        let mut expected = Mat6::zeros();
        expected
            .fixed_view_mut::<3, 3>(3, 3)
            .copy_from(&(skew(&here.resultant.moment) * 0.5));
        let scale = K.amax();
        assert_close(
            "skew",
            found.as_slice(),
            expected.as_slice(),
            0.0,
            1e-12 * scale,
        );
    });
}

/// A pose far away and a load at a far point still give finite differences that fit.
#[test]
fn tangent_holds_at_large_rotations() {
    let inputs = (any_build(), vector(0.05), vector(1.2));
    for_all(16, 15, &inputs, |(build, shift, turn)| {
        let build = build.linear();
        let body = build.supported();
        let pose = away(&body, shift, turn);
        let K = at(&body, &pose, &build.loading).tangent();
        let h = 1e-6;
        for i in 0..6 {
            let there = at(&body, &pose.moved_by(&step(i, h)), &build.loading);
            let before = at(&body, &pose.moved_by(&step(i, -h)), &build.loading);
            let slope = (before.resultant.vector() - there.resultant.vector()) / (2.0 * h);
            let column = K.column(i).into_owned();
            let scale = 1e-7 * K.amax();
            assert_close("tangent", slope.as_slice(), column.as_slice(), 0.0, scale);
        }
    });
}
