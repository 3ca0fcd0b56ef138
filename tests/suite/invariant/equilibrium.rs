//! What holds for every balance, whatever the build.

use bedplate::rigid::equilibrium::{StaticEquilibrium, solve_equilibrium};
use bedplate::rigid::loading::Loading;
use bedplate::rigid::settled::settled_mounts;
use bedplate::rigid::supported::Supported;
use bedplate::spatial::{Mat3, Mat6, Vec3, Wrench, skew};
use nalgebra::Rotation3;

use super::build::{RandomBuild, any_build, for_all, rotation, vector};
use crate::kit::assert_close;

fn solve(build: &RandomBuild) -> StaticEquilibrium {
    solve_equilibrium(&build.supported(), &build.loading, None).unwrap()
}

/// Largest force of the load, for tolerances.
fn scale(build: &RandomBuild) -> f64 {
    build.weight() + 3e3
}

#[test]
fn mounts_carry_the_load_about_any_point() {
    let inputs = (any_build(), vector(2.0));
    for_all(48, 21, &inputs, |(build, about)| {
        let found = solve(&build);
        let mut sum = Wrench::zero();
        for mount in &found.mounts {
            let place = found.pose.position + mount.arm - about;
            sum = sum + Wrench::of_force_at(mount.force_on_powertrain, place);
            sum.moment += mount.moment_on_powertrain;
        }
        let centre = found.pose.position - about;
        sum = sum + Wrench::of_force_at(build.loading.at_centre, centre);
        sum.moment += build.loading.free_moment();
        for (point, wrench) in &build.loading.at_points {
            let place = point + found.displacement_of(*point) - about;
            sum = sum + Wrench::of_force_at(wrench.force, place);
        }
        let allowed = 1e-9 * scale(&build);
        assert_close(
            "balance",
            sum.vector().as_slice(),
            &[0.0; 6],
            0.0,
            3.0 * allowed,
        );
    });
}

#[test]
fn skew_part_at_balance_is_minus_half_the_applied_moment() {
    for_all(32, 22, &any_build(), |mut build| {
        // A force at a point changes its moment with the turn; keep to forces at the centre.
        build.loading.at_points.clear();
        let found = solve(&build);
        let K = found.tangent;
        let skewed = (K - K.transpose()) * 0.5;
        let mut expected = Mat6::zeros();
        expected
            .fixed_view_mut::<3, 3>(3, 3)
            .copy_from(&(skew(&build.loading.moment) * -0.5));
        let allowed = 1e-9 * K.amax();
        assert_close("skew", skewed.as_slice(), expected.as_slice(), 0.0, allowed);
    });
}

/// Independent route: the energy alone, which knows neither force nor tangent, is
/// lowest at the balance and has no slope there.
#[test]
fn no_small_motion_lowers_the_energy() {
    let inputs = (any_build(), vector(1.0), vector(1.0));
    for_all(32, 23, &inputs, |(mut build, dc, dth)| {
        build.loading.moment = Vec3::zeros();
        for (_, wrench) in &mut build.loading.at_points {
            wrench.moment = Vec3::zeros();
        }
        let body = build.supported();
        let found = solve(&build);
        let energy = |size: f64| {
            let q = bedplate::spatial::stack(&(dc * size), &(dth * size * 2.0));
            let there = body.at(&found.pose.moved_by(&q), &build.loading).unwrap();
            there.energy + there.load_potential
        };
        let here = energy(0.0);
        for size in [1e-5, 1e-4, 1e-3] {
            assert!(energy(size) > here && energy(-size) > here, "at {size}");
        }
        let slope = (energy(1e-7) - energy(-1e-7)) / 2e-7;
        assert_close("slope", &[slope], &[0.0], 0.0, 1e-6 * scale(&build));
    });
}

#[test]
fn the_order_of_the_mounts_does_not_matter() {
    for_all(24, 24, &any_build(), |build| {
        let mut turned = build.clone();
        turned.mounts.rotate_left(1);
        let (a, b) = (solve(&build), solve(&turned));
        let (x, y) = (a.displacement, b.displacement);
        assert_close("position", x.as_slice(), y.as_slice(), 1e-9, 1e-13);
        let (x, y) = (
            a.mounts[0].force_on_powertrain,
            b.mounts[b.mounts.len() - 1],
        );
        let allowed = 1e-8 * scale(&build);
        let y = y.force_on_powertrain;
        assert_close("force", x.as_slice(), y.as_slice(), 0.0, allowed);
    });
}

fn turned(build: &RandomBuild, turn: &Rotation3<f64>, about: &Vec3) -> RandomBuild {
    let place = |p: &Vec3| about + turn * (p - about);
    let mut new = build.clone();
    let R = turn.matrix();
    let inertia = R * build.mass.inertia() * R.transpose();
    new.mass = bedplate::model::mass::MassProperties::new(
        build.mass.mass(),
        place(&build.mass.centre()),
        (inertia + inertia.transpose()) * 0.5,
    )
    .unwrap();
    for mount in &mut new.mounts {
        mount.at = place(&mount.at);
        mount.far_eye = mount.far_eye.map(|eye| place(&eye));
        mount.axes = turn * mount.axes;
    }
    new.loading.at_centre = turn * build.loading.at_centre;
    new.loading.moment = turn * build.loading.moment;
    for (point, wrench) in &mut new.loading.at_points {
        *point = place(point);
        wrench.force = turn * wrench.force;
        wrench.moment = turn * wrench.moment;
    }
    new
}

#[test]
fn turning_everything_turns_the_answer() {
    let inputs = (any_build(), rotation(2.0), vector(1.0));
    for_all(24, 25, &inputs, |(build, turn, about)| {
        let (a, b) = (solve(&build), solve(&turned(&build, &turn, &about)));
        let expected = turn * a.displacement;
        assert_close(
            "shift",
            b.displacement.as_slice(),
            expected.as_slice(),
            0.0,
            1e-11,
        );
        let expected = turn * a.rotation.scaled_axis();
        let found = b.rotation.scaled_axis();
        assert_close("turn", found.as_slice(), expected.as_slice(), 0.0, 1e-11);
    });
}

/// Mirrored left to right: isolator axes u and w are mirrored, v follows from the
/// right hand, so an isolator whose law is even in v keeps its law.
#[test]
fn mirroring_everything_mirrors_the_answer() {
    for_all(24, 26, &any_build(), |build| {
        let build = build.linear();
        let mirror = Mat3::from_diagonal(&Vec3::new(1.0, -1.0, 1.0));
        let mut other = build.clone();
        other.mass = bedplate::model::mass::MassProperties::new(
            build.mass.mass(),
            mirror * build.mass.centre(),
            mirror * build.mass.inertia() * mirror,
        )
        .unwrap();
        for (mount, original) in other.mounts.iter_mut().zip(&build.mounts) {
            mount.at = mirror * original.at;
            mount.far_eye = original.far_eye.map(|eye| mirror * eye);
            // mirror · A · mirror is a rotation; the law sees v with its sign turned.
            let axes = mirror * original.axes.matrix() * mirror;
            mount.axes = Rotation3::from_matrix_unchecked(axes);
            mount.compliance = mirror * original.compliance * mirror;
            let k = original.isolator.at(&Vec3::zeros()).point.tangent;
            let law = super::build::Hardening {
                k: mirror * k * mirror,
                c: 0.0,
            };
            mount.isolator.law = std::sync::Arc::new(law);
        }
        other.loading.at_centre = mirror * build.loading.at_centre;
        other.loading.moment = -(mirror * build.loading.moment);
        for (point, wrench) in &mut other.loading.at_points {
            *point = mirror * *point;
            wrench.force = mirror * wrench.force;
            wrench.moment = -(mirror * wrench.moment);
        }
        let (a, b) = (solve(&build), solve(&other));
        let expected = mirror * a.displacement;
        assert_close(
            "shift",
            b.displacement.as_slice(),
            expected.as_slice(),
            0.0,
            1e-12,
        );
        let expected = -(mirror * a.rotation.scaled_axis());
        let found = b.rotation.scaled_axis();
        assert_close("turn", found.as_slice(), expected.as_slice(), 0.0, 1e-12);
    });
}

#[test]
fn twice_a_small_load_on_linear_mounts_moves_twice_as_far() {
    for_all(24, 27, &any_build(), |build| {
        let mut build = build.linear();
        build.loading = build.loading.scaled(1e-4);
        let a = solve(&build);
        build.loading = build.loading.scaled(2.0);
        let b = solve(&build);
        let expected = a.displacement * 2.0;
        let allowed = 1e-4 * expected.norm();
        assert_close(
            "shift",
            b.displacement.as_slice(),
            expected.as_slice(),
            0.0,
            allowed,
        );
        let expected = a.rotation.scaled_axis() * 2.0;
        let allowed = 1e-4 * expected.norm();
        let found = b.rotation.scaled_axis();
        assert_close("turn", found.as_slice(), expected.as_slice(), 0.0, allowed);
    });
}

/// The drawing may put its origin anywhere.
#[test]
fn shifting_the_datum_changes_nothing() {
    let inputs = (any_build(), vector(3.0));
    for_all(24, 28, &inputs, |(build, off)| {
        let mut other = turned(&build, &Rotation3::identity(), &Vec3::zeros());
        other.mass = bedplate::model::mass::MassProperties::new(
            build.mass.mass(),
            build.mass.centre() + off,
            build.mass.inertia(),
        )
        .unwrap();
        for mount in &mut other.mounts {
            mount.at += off;
            mount.far_eye = mount.far_eye.map(|eye| eye + off);
        }
        for (point, _) in &mut other.loading.at_points {
            *point += off;
        }
        let (a, b) = (solve(&build), solve(&other));
        let (x, y) = (a.displacement, b.displacement);
        assert_close("shift", x.as_slice(), y.as_slice(), 0.0, 1e-12);
        let point = Vec3::new(0.3, -0.4, 0.2);
        let (x, y) = (a.displacement_of(point), b.displacement_of(point + off));
        assert_close("point", x.as_slice(), y.as_slice(), 0.0, 1e-12);
    });
}

#[test]
fn the_way_to_a_load_does_not_matter() {
    for_all(24, 29, &any_build(), |mut build| {
        // Conservative loads: with a dead moment the end could depend on the way.
        build.loading.moment = Vec3::zeros();
        build.loading.at_points.clear();
        let body = build.supported();
        let direct = solve(&build);
        let mut aside = build.loading.clone();
        aside.at_centre += Vec3::new(4e3, -5e3, 2e3);
        let aside = solve_equilibrium(&body, &aside, None).unwrap();
        let back = solve_equilibrium(&body, &build.loading, Some(&aside)).unwrap();
        let (x, y) = (direct.displacement, back.displacement);
        assert_close("shift", x.as_slice(), y.as_slice(), 0.0, 1e-11);
        let again = solve_equilibrium(&body, &build.loading, Some(&direct)).unwrap();
        assert_eq!(again.iterations, 0);
    });
}

/// A free build, drawn again in the position in which it came to rest, is a settled
/// build with the same forces; and a settled build rests as drawn.
#[test]
fn free_drawn_at_rest_is_settled() {
    for_all(32, 30, &any_build(), |build| {
        let weight = Loading::weight(build.mass.mass());
        let free = solve_equilibrium(&build.supported(), &weight, None).unwrap();
        let mut drawn = build.held();
        for (mount, state) in drawn.iter_mut().zip(&free.mounts) {
            mount.at = free.pose.position + state.arm;
        }
        let R = free.rotation.to_rotation_matrix().into_inner();
        let inertia = R * build.mass.inertia() * R.transpose();
        let mass = bedplate::model::mass::MassProperties::new(
            build.mass.mass(),
            free.pose.position,
            (inertia + inertia.transpose()) * 0.5,
        )
        .unwrap();
        let settled = settled_mounts(&mass, &drawn).unwrap();
        for (mount, original) in settled.iter().zip(&build.mounts) {
            let (anchor, expected) = (mount.anchor(), original.at);
            // Of a rod only its free length is known, as it turns about its chassis eye.
            if let Some(eye) = mount.far_eye {
                let [found, length] = [anchor, expected].map(|end| (end - eye).norm());
                assert_close("free length", &[found], &[length], 0.0, 1e-10);
            } else {
                assert_close("anchor", anchor.as_slice(), expected.as_slice(), 0.0, 1e-10);
            }
            let turn = mount.untwisted.angle_to(&free.rotation.inverse());
            assert_close("untwisted", &[turn], &[0.0], 0.0, 1e-9);
        }
        let body = Supported::new(mass, settled).unwrap();
        let rest = solve_equilibrium(&body, &weight, None).unwrap();
        assert_close("rests", rest.displacement.as_slice(), &[0.0; 3], 0.0, 1e-11);
        for (state, original) in rest.mounts.iter().zip(&free.mounts) {
            let (x, y) = (state.force_on_powertrain, original.force_on_powertrain);
            assert_close(
                "force",
                x.as_slice(),
                y.as_slice(),
                0.0,
                1e-7 * build.weight(),
            );
        }
    });
}
