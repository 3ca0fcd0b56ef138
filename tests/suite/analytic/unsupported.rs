//! Motions that nothing holds are found exactly and told in words.

use bedplate::model::mass::MassProperties;
use bedplate::rigid::equilibrium::solve_equilibrium;
use bedplate::rigid::failure::StaticsFailure;
use bedplate::rigid::loading::Loading;
use bedplate::rigid::mount_response::HeldMount;
use bedplate::rigid::supported::Supported;
use bedplate::rigid::unsupported::{FreeMotion, FreePath};
use bedplate::spatial::{Mat3, Vec3, axes_from_w_u};

use crate::kit::{assert_close, linear, plain_mount};

fn unsupported(centre: Vec3, mounts: Vec<HeldMount<'_>>, loading: &Loading) -> Vec<FreeMotion> {
    let inertia = Mat3::from_diagonal(&Vec3::new(4.0, 7.0, 8.0));
    let mass = MassProperties::new(100.0, centre, inertia).unwrap();
    let body = Supported::new(mass, mounts).unwrap();
    match solve_equilibrium(&body, loading, None) {
        Err(StaticsFailure::Unsupported(motions)) => motions,
        other => panic!("expected free motions, found {other:?}"),
    }
}

fn words(motions: &[FreeMotion]) -> Vec<&str> {
    motions.iter().map(|motion| motion.words.as_str()).collect()
}

/// Derived: two point mounts leave the turn about the line through both, whatever their rates:
/// direction (0.8, 0.3, −0.3)/√0.82, nearest point of the line to the centre of gravity by hand.
#[test]
fn two_point_mounts_leave_the_turn_about_their_line() {
    let soft = linear("soft", [7e4, 1.3e5, 2.1e5]);
    let hard = linear("hard", [5e5, 3e5, 9e5]);
    let centre = Vec3::new(0.7, -0.4, 0.3);
    let mut mounts = vec![
        plain_mount("front left", centre + Vec3::new(0.3, 0.2, -0.1), &soft),
        plain_mount("rear", centre + Vec3::new(-0.5, -0.1, 0.2), &hard),
    ];
    mounts[0].axes = axes_from_w_u(&Vec3::new(0.2, -0.5, 1.0), &Vec3::x()).unwrap();
    for loading in [Loading::none(), Loading::weight(100.0)] {
        let motions = unsupported(centre, mounts.clone(), &loading);
        assert_eq!(
            words(&motions),
            ["turning about the line through `front left` and `rear`"]
        );
        let FreePath::Turn {
            axis,
            through,
            pitch,
        } = motions[0].path
        else {
            panic!("{motions:?}");
        };
        let axis = axis * axis.x.signum();
        let expected = [0.883452, 0.331295, -0.331295];
        assert_close("axis", axis.as_slice(), &expected, 0.0, 1e-6);
        let expected = [-0.0219512, 0.0792683, 0.0207317];
        assert_close(
            "through",
            (through - centre).as_slice(),
            &expected,
            0.0,
            1e-7,
        );
        assert_close("pitch", &[pitch], &[0.0], 0.0, 1e-9);
    }
}

/// Derived: a point mount leaves the three turns through it, and none of them is a slide.
#[test]
fn one_point_mount_leaves_three_turns_about_it() {
    let isolator = linear("only", [2e5, 3e5, 4e5]);
    let at = Vec3::new(0.1, 0.2, -0.3);
    let mounts = vec![plain_mount("only", at, &isolator)];
    let motions = unsupported(Vec3::zeros(), mounts, &Loading::none());
    assert_eq!(
        words(&motions),
        [
            "rolling about `only`",
            "pitching about `only`",
            "yawing about `only`"
        ]
    );
    for motion in &motions {
        let FreePath::Turn {
            axis,
            through,
            pitch,
        } = motion.path
        else {
            panic!("{motion:?}");
        };
        let off = (at - through).cross(&axis);
        assert_close("through the mount", off.as_slice(), &[0.0; 3], 0.0, 1e-9);
        assert_close("pitch", &[pitch], &[0.0], 0.0, 1e-9);
        assert_close("nearest", &[through.dot(&axis)], &[0.0], 0.0, 1e-9);
    }
}

/// Derived: vertical springs at four corners leave both slides and the yaw. The sag is 981 N over 4 · 2e5 N/m, 1.2 mm.
#[test]
fn springs_along_one_direction_leave_two_slides_and_a_turn() {
    let isolator = linear("upright", [0.0, 0.0, 2e5]);
    let corners = |isolator| {
        [(0.4, 0.3), (0.4, -0.3), (-0.4, 0.3), (-0.4, -0.3)]
            .map(|(x, y)| plain_mount("corner", Vec3::new(x, y, 0.0), isolator))
            .to_vec()
    };
    let motions = unsupported(Vec3::zeros(), corners(&isolator), &Loading::weight(100.0));
    assert_eq!(
        words(&motions),
        [
            "sliding fore-aft",
            "sliding sideways",
            "yawing about a line through (0, 0, -1) mm"
        ]
    );
    // Leaning all of them over turns one free slide into the square direction.
    let mut leaning = corners(&isolator);
    let w = Vec3::new(0.0, 1.0, 1.0);
    for mount in &mut leaning {
        mount.axes = axes_from_w_u(&w, &Vec3::x()).unwrap();
    }
    let motions = unsupported(Vec3::zeros(), leaning, &Loading::none());
    let FreePath::Slide { direction } = motions[1].path else {
        panic!("{motions:?}");
    };
    assert_close("square to w", &[direction.dot(&w)], &[0.0], 0.0, 1e-12);
    assert_eq!(motions.len(), 3);
}

/// Derived: with no mount all six motions are free.
#[test]
fn without_mounts_everything_is_free() {
    let motions = unsupported(Vec3::zeros(), Vec::new(), &Loading::none());
    assert_eq!(motions.len(), 6);
    assert_eq!(words(&motions)[2], "moving up and down");
    let motions = unsupported(Vec3::zeros(), Vec::new(), &Loading::weight(100.0));
    assert_eq!(motions.len(), 6);
}

/// Derived: a spring along n at r does not feel the screw about x with pitch h when
/// h n_x + (r × n)_x = 0; five such springs leave that screw alone.
#[test]
fn a_screw_motion_tells_its_pitch() {
    let h = 0.05;
    let places = [
        Vec3::new(0.3, 0.2, 0.1),
        Vec3::new(-0.2, 0.25, -0.15),
        Vec3::new(0.1, -0.3, 0.2),
        Vec3::new(-0.35, -0.1, -0.25),
        Vec3::new(0.05, 0.15, 0.3),
    ];
    let tilts = [0.3, -0.8, 1.1, 0.5, -1.7];
    let isolator = linear("axial", [0.0, 0.0, 3e5]);
    let mounts: Vec<HeldMount<'_>> = places
        .iter()
        .zip(tilts)
        .map(|(r, tilt): (&Vec3, f64)| {
            let (ny, nz) = (tilt.cos(), tilt.sin());
            let nx = -(r.y * nz - r.z * ny) / h;
            let mut mount = plain_mount("spring", *r, &isolator);
            mount.axes = axes_from_w_u(&Vec3::new(nx, ny, nz), &Vec3::new(0.1, 0.7, -0.4)).unwrap();
            mount
        })
        .collect();
    let motions = unsupported(Vec3::zeros(), mounts, &Loading::none());
    assert_eq!(motions.len(), 1);
    let FreePath::Turn {
        axis,
        through,
        pitch,
    } = motions[0].path
    else {
        panic!("{motions:?}");
    };
    assert_close("axis", &[axis.x.abs()], &[1.0], 1e-9, 0.0);
    assert_close("through", through.as_slice(), &[0.0; 3], 0.0, 1e-7);
    assert_close("pitch", &[pitch], &[h], 1e-6, 0.0);
    assert!(
        motions[0]
            .words
            .contains("while sliding along it 314 mm per turn")
    );
}

/// A direction with a ten-thousandth of the stiffness is held, and said to be barely held.
#[test]
fn a_barely_held_direction_is_named_and_answered() {
    let weak = linear("weak", [3e5, 5.0, 2e5]);
    let mounts = [(0.4, 0.3), (0.4, -0.3), (-0.4, 0.3), (-0.4, -0.3)]
        .map(|(x, y)| plain_mount("corner", Vec3::new(x, y, 0.0), &weak))
        .to_vec();
    let inertia = Mat3::from_diagonal(&Vec3::new(4.0, 7.0, 8.0));
    let mass = MassProperties::new(100.0, Vec3::zeros(), inertia).unwrap();
    let body = Supported::new(mass, mounts).unwrap();
    let rest = solve_equilibrium(&body, &Loading::weight(100.0), None).unwrap();
    assert_eq!(words(&rest.barely_held), ["sliding sideways"]);
    assert!(rest.held_by_weight_only.is_empty());

    // Such a direction moves far on little force: 90 nN are inside the force tolerance
    // of 1e-10 of the weight but move it by 90e-9/20 = 4.5e-9 m, which is not left out.
    let mut aside = Loading::weight(100.0);
    aside.at_centre.y = 0.01;
    let before = solve_equilibrium(&body, &aside, None).unwrap();
    aside.at_centre.y += 90e-9;
    let after = solve_equilibrium(&body, &aside, Some(&before)).unwrap();
    let moved = after.displacement.y - before.displacement.y;
    assert_close("moved", &[moved], &[4.5e-9], 0.0, 1e-10);
}
