//! What holds for every bolt and every pattern.

use bedplate::model::fastener::{Band, Thread};
use bedplate::spatial::{Vec3, Wrench};
use bedplate::strength::bolt::clamped::{Clamped, Fit, tube_resilience};
use bedplate::strength::bolt::load_share::Preloaded;
use bedplate::strength::bolt::tightening::tighten;
use bedplate::strength::pattern::Pattern;
use proptest::prelude::*;

use crate::kit::assert_close;

proptest! {
    /// The bolts together, and what they leave, are the wrench.
    #[test]
    fn shared_forces_are_in_equilibrium(
        places in prop::collection::vec([-0.2..0.2_f64, -0.2..0.2_f64], 1..7),
        force in [-1e4..1e4_f64, -1e4..1e4_f64, -1e4..1e4_f64],
        moment in [-1e3..1e3_f64, -1e3..1e3_f64, -1e3..1e3_f64],
    ) {
        let pattern = Pattern::new(&places).unwrap();
        let load = Wrench { force: Vec3::from(force), moment: Vec3::from(moment) };
        let shared = pattern.about_centre(&load);
        let centre = pattern.centre();
        let mut sum = Wrench { force: Vec3::zeros(), moment: Vec3::from(shared.untaken) };
        for (bolt, [x, y]) in shared.bolts.iter().zip(&places) {
            let arm = Vec3::new(x - centre[0], y - centre[1], 0.0);
            let [fx, fy] = bolt.shear;
            sum = sum + Wrench::of_force_at(Vec3::new(fx, fy, bolt.axial), arm);
        }
        let largest = shared.bolts.iter().fold(1e4, |most: f64, bolt| most.max(bolt.axial.abs()));
        assert_close("force", sum.force.as_slice(), &force, 0.0, 1e-10 * largest);
        assert_close("moment", sum.moment.as_slice(), &moment, 0.0, 1e-10 * largest);
    }

    /// Bolt less clamp is the load, closed or open, and neither falls below zero.
    #[test]
    fn bolt_and_clamp_differ_by_the_load(
        preload in 0.0..1e5_f64, load_factor in 0.0..0.9_f64, load in 0.0..3e5_f64,
    ) {
        let joint = Preloaded { preload, load_factor };
        let difference = joint.bolt_force(load) - joint.clamp_force(load);
        assert_close("difference", &[difference], &[load], 1e-12, 1e-9);
        prop_assert!(joint.clamp_force(load) >= 0.0);
        prop_assert_eq!(joint.clamp_force(load) > 0.0, load < joint.separation_load());
    }

    /// Clamped parts are softer than pressed over their whole width, stiffer than under the head
    /// alone, stiffer the wider they are, and have no step where they are as wide as the head.
    #[test]
    fn wider_parts_are_stiffer(width in 1.0..4.0_f64, length in 0.3..6.0_f64, tapped: bool) {
        let fit = if tapped { Fit::Tapped } else { Fit::Through };
        let (head, hole, long) = (14.63e-3, 11e-3, length * 14.63e-3);
        let at = |width: f64| Clamped {
            head_bearing: head,
            hole,
            outer: width * head,
            length: long,
            youngs_modulus: 205e9,
        }.resilience(fit);
        let (here, wider) = (at(width), at(width * 1.0001));
        prop_assert!(wider <= here * (1.0 + 1e-9), "{here:e} {wider:e}");
        let [whole, head_only] = [width * head, head].map(|d| tube_resilience(d, hole, long, 205e9));
        let slack = 1.0 + 1e-9;
        prop_assert!(whole <= here * slack && here <= head_only * slack, "{whole:e} {here:e} {head_only:e}");
        assert_close("as wide as the head", &[at(1.0 + 1e-9)], &[at(1.0)], 1e-6, 0.0);
    }

    /// More friction never gives more preload, and the least is never above the most.
    #[test]
    fn friction_eats_preload(low in 0.04..0.3_f64, more in 0.0..0.2_f64, scatter in 1.0..4.0_f64) {
        let thread = Thread::find("M12").unwrap();
        let found = tighten(&thread, 15e-3, 640e6, 0.9, Band { low, high: low + more }, scatter);
        prop_assert!(found.least() <= found.most * (1.0 + 1e-12));
        prop_assert!(found.nut_factor.low <= found.nut_factor.high * (1.0 + 1e-12));
    }
}
