//! F. F. Timpner, SAE 650093 (1965);
//! R. Racca, SAE 821095 (1982): elastic axis of a V pair.
//!
//! Label: formula from memory, derived again.

use bedplate::model::mass::MassProperties;
use bedplate::rigid::axes::{elastic_axis, elastic_centre, stiffness_centre};
use bedplate::rigid::loading::Loading;
use bedplate::rigid::supported::Supported;
use bedplate::spatial::{Mat3, Vec3, axes_from_w_u};

use crate::kit::{assert_close, linear, plain_mount};

/// h = b (L − 1) tan φ/(L tan² φ + 1), largest b (L − 1)/(2 √L) at tan φ = 1/√L, L = kp/ks.
///
/// The stiffness centre lies between the high lateral axis and the low fore-aft
/// axis and decouples neither; its heights come from an independent calculation.
#[test]
fn lateral_axis_of_a_v_pair_lies_above_its_stiffness_centre() {
    let (b, kp, ks): (f64, f64, f64) = (0.30, 400.0e3, 80.0e3);
    let isolator = linear("block", [ks, ks, kp]);
    let L: f64 = kp / ks;
    let mass =
        MassProperties::new(100.0, Vec3::new(0.1, 0.0, 0.2), Mat3::identity() * 5.0).unwrap();
    for (degrees, height, centre_height) in [
        (15.0_f64, 0.236603, 0.132278),
        (24.0948425521107, 0.268328, 0.167705),
        (30.0, 0.259808, 0.173205),
        (45.0, 0.200000, 0.150000),
    ] {
        let lean = degrees.to_radians();
        let mounts = [("left", 1.0), ("right", -1.0)]
            .map(|(name, side)| {
                let mut mount = plain_mount(name, Vec3::new(0.0, side * b, 0.0), &isolator);
                let w = Vec3::new(0.0, -side * lean.sin(), lean.cos());
                mount.axes = axes_from_w_u(&w, &Vec3::x()).unwrap();
                mount
            })
            .to_vec();
        let body = Supported::new(mass, mounts).unwrap();
        let K = body
            .at(&body.fitted_pose(), &Loading::none())
            .unwrap()
            .material;
        let reference = mass.centre();
        let axis = elastic_axis(&K, &reference, &Vec3::y()).unwrap();
        assert_close(
            "direction",
            axis.direction.as_slice(),
            &[0.0, 1.0, 0.0],
            0.0,
            1e-12,
        );
        let t = lean.tan();
        let formula = b * (L - 1.0) * t / (L * t * t + 1.0);
        assert_close(degrees, &[formula], &[height], 1e-5, 0.0);
        assert_close(degrees, &[axis.through.z], &[formula], 1e-12, 0.0);
        let centre = stiffness_centre(&K, &reference).unwrap();
        assert_close(degrees, &[centre.z], &[centre_height], 1e-5, 0.0);
        assert_eq!(elastic_centre(&K, &reference, 1e-6).unwrap(), None);
        let fore_aft = elastic_axis(&K, &reference, &Vec3::x()).unwrap();
        assert_close(
            "fore-aft at mount level",
            &[fore_aft.through.z],
            &[0.0],
            0.0,
            1e-12,
        );
    }
}
