//! Bolted joints: a whole joint through a hollow rail, and each clause by numbers of other routes.
//!
//! Label, where a test does not name another: computed independently, in N, mm, MPa.

use std::f64::consts::PI;

use bedplate::model::fastener::{Band, Grade, Thread};
use bedplate::strength::bolt::clamped::{Clamped, Fit, tube_resilience, with_hollow};
use bedplate::strength::bolt::embedding::{Loading, Roughness, flattening, loss};
use bedplate::strength::bolt::fatigue::amplitude;
use bedplate::strength::bolt::head::pressure;
use bedplate::strength::bolt::load_share::{Preloaded, load_factor, required_preload};
use bedplate::strength::bolt::resilience::{Head, Hold, Shank};
use bedplate::strength::bolt::slip;
use bedplate::strength::bolt::stiffness_models::{
    Fitted, cone_layer_resilience, fitted_resilience, short_resilience,
};
use bedplate::strength::bolt::stripping::{SHEAR_RATIO, WorstFit};
use bedplate::strength::bolt::thermal::{Layer, change};
use bedplate::strength::bolt::tightening::{
    Friction, USUAL_SHARE, friction_diameter, permissible_preload, tighten, torque,
};
use bedplate::strength::bolt::yielding::working_stress;

use crate::kit::assert_close;

const STEEL: f64 = 205e9;

fn thread(name: &str) -> Thread {
    Thread::find(name).unwrap_or_else(|| panic!("{name} is not known"))
}

fn golden_bolt(thread: &Thread) -> f64 {
    Shank {
        thread,
        plain: 42e-3,
        threaded: 20e-3,
        youngs_modulus: STEEL,
        head: Head::Hexagon,
        hold: Hold::Nut(STEEL),
    }
    .resilience()
}

fn golden_plates() -> f64 {
    Clamped {
        head_bearing: 14.63e-3,
        hole: 11e-3,
        outer: 40e-3,
        length: 12e-3,
        youngs_modulus: STEEL,
    }
    .resilience(Fit::Through)
}

/// M10 10.9 through two plates of 6 mm, a rail of 50 mm and a sleeve 20/11: friction 0.12,
/// scatter 1.6, load 0 to 3000 N along the bolt, amplitude on the listed 58 mm².
#[test]
fn bolt_through_a_rail_with_a_sleeve() {
    let size = thread("M10");
    let limits = Grade::find("10.9").unwrap().limits(size.nominal).unwrap();
    let most = permissible_preload(&size, limits.yield_strength, 0.12, USUAL_SHARE);
    let diameter = friction_diameter(14.63e-3, 11e-3);
    let least = most / 1.6;
    let bolt = golden_bolt(&size);
    let sleeve = tube_resilience(20e-3, 11e-3, 50e-3, STEEL);
    let clamped = with_hollow(golden_plates(), sleeve, 0.0);
    let settlement = flattening(Roughness::Medium, Loading::Axial, 2, 4);
    let lost = loss(settlement, bolt, clamped);
    let share = load_factor(1.0, bolt, clamped);
    let joint = Preloaded {
        preload: least - lost,
        load_factor: share,
    };
    let left = joint.clamp_force(3000.0);
    for (what, found, expected) in [
        ("preload", most, 43_480.0),
        (
            "torque",
            torque(&size, diameter, most, Friction::same(0.12)),
            71.18,
        ),
        ("least preload", least, 27_175.0),
        ("bolt", bolt, 5.499_68e-9),
        ("plates", golden_plates(), 4.369_08e-10),
        ("sleeve", sleeve, 1.113_07e-9),
        ("clamped", clamped, 1.549_98e-9),
        ("flattening", settlement, 17e-6),
        ("embedding", lost, 2411.5),
        ("10 µm", loss(10e-6, bolt, clamped), 1418.5),
        ("load factor", share, 0.219_866),
        ("pressure", pressure(most, 14.63e-3, 11e-3), 595.0e6),
        ("clamp left", left, 22_422.9),
        ("slip", slip::resistance(1.0, 0.12, left), 2690.8),
        ("separation", joint.separation_load(), 31_742.4),
        ("amplitude", amplitude(share, 3000.0, 0.0, 58e-6), 5.686e6),
        (
            "amplitude both ways",
            amplitude(share, 3000.0, -3000.0, 58e-6),
            11.372e6,
        ),
    ] {
        assert_close(what, &[found], &[expected], 2e-4, 0.0);
    }
    // Derived: the main equation turned round gives the least preload back.
    let needed = required_preload(left, 3000.0, share, lost, 0.0);
    assert_close("needed", &[needed], &[least], 1e-12, 0.0);
    // Derived: 28 % between the bolt with and without head and nut.
    let short = short_resilience(10e-3, size.stress_area(), 42e-3, 20e-3, STEEL);
    assert_close("without head", &[bolt / short], &[5.50 / 4.29], 2e-3, 0.0);
}

/// The same joint with a sleeve of aluminium, 70 GPa and 23e-6 against 12e-6, 80 K warmer.
#[test]
fn aluminium_sleeve_adds_preload_when_warm() {
    let sleeve = tube_resilience(20e-3, 11e-3, 50e-3, 70e9);
    let clamped = with_hollow(golden_plates(), sleeve, 0.0);
    let layers =
        [(12e-3, 12e-6), (50e-3, 23e-6)].map(|(length, expansion)| Layer { length, expansion });
    let bolt = golden_bolt(&thread("M10"));
    let found = change(80.0, &layers, 12e-6, bolt, clamped);
    assert_close("added", &[found], &[4784.5], 2e-4, 0.0);
    // Derived: a stainless bolt in steel loses; (12 − 16)e-6 · 62 mm · 80 K over the resilience.
    let steel = [Layer {
        length: 62e-3,
        expansion: 12e-6,
    }];
    let lost = change(80.0, &steel, 16e-6, bolt, clamped) * (bolt + clamped);
    assert_close("misfit", &[lost], &[-19.84e-6], 1e-9, 0.0);
}

/// Derived: a rail as stiff as its sleeve takes half of the force, so the sleeve gives half as much.
#[test]
fn walls_share_what_the_sleeve_carries() {
    let found = with_hollow(4e-10, 1e-9, 1e9);
    assert_close("stack", &[found], &[9e-10], 1e-12, 0.0);
}

/// M12 8.8 at friction 0.14, and the least preload behind a scatter of 1.8.
#[test]
fn preload_behind_a_torque_wrench() {
    let size = thread("M12");
    let most = permissible_preload(&size, 640e6, 0.14, USUAL_SHARE);
    assert_close("M12", &[most, most / 1.8], &[41.98e3, 23.3e3], 2e-3, 0.0);
}

/// M10 10.9, friction 0.08 to 0.16, scatter 1.8: the low end sets the torque, the high end
/// leaves less than the scatter does not cover by itself.
#[test]
fn torque_over_a_band_of_friction() {
    let size = thread("M10");
    let friction = Band {
        low: 0.08,
        high: 0.16,
    };
    let diameter = friction_diameter(14.63e-3, 11e-3);
    let found = tighten(&size, diameter, 940e6, USUAL_SHARE, friction, 1.8);
    assert_close(
        "tightened",
        &[
            found.torque,
            found.most,
            found.least_by_friction,
            found.least_by_scatter,
            found.nut_factor.low,
            found.nut_factor.high,
        ],
        &[
            53.421_12, 45_604.76, 25_404.91, 25_335.98, 0.117_139, 0.210_279,
        ],
        1e-5,
        0.0,
    );
    assert_close("least", &[found.least()], &[25_335.98], 1e-6, 0.0);
    let wider = tighten(&size, diameter, 940e6, USUAL_SHARE, friction, 1.7);
    assert_close("friction", &[wider.least()], &[25_404.91], 1e-6, 0.0);
}

/// M12 at 40 kN and 2 kN more, friction 0.10 while tightened.
#[test]
fn stress_at_work_holds_half_of_the_twist() {
    let found = working_stress(&thread("M12"), 40e3, 2e3, 0.10);
    assert_close("stress", &[found], &[518.750_157e6], 1e-6, 0.0);
}

/// Derived: socket head 0.1 d shorter on the full area; a tapped part of 70 GPa instead of a nut.
#[test]
fn head_and_hold_change_the_resilience() {
    let size = thread("M10");
    let plain = Shank {
        thread: &size,
        plain: 42e-3,
        threaded: 20e-3,
        youngs_modulus: STEEL,
        head: Head::Hexagon,
        hold: Hold::Nut(STEEL),
    };
    let full = PI / 4.0 * 1e-4;
    let socket = Shank {
        head: Head::Socket,
        ..plain
    };
    let less = plain.resilience() - socket.resilience();
    assert_close("socket", &[less], &[1e-3 / (full * STEEL)], 1e-9, 0.0);
    let tapped = Shank {
        hold: Hold::Tapped(70e9),
        ..plain
    };
    let more = tapped.resilience() - plain.resilience();
    let expected = 3.3e-3 / (full * 70e9) - 4e-3 / (full * STEEL);
    assert_close("tapped", &[more], &[expected], 1e-9, 0.0);
}

/// M12 in 40 mm of wide steel by three models, kN/mm: they are 40 % apart.
#[test]
fn models_of_clamped_parts_disagree() {
    let half = cone_layer_resilience(18e-3, 12e-3, 20e-3, PI / 6.0, 207e9);
    let fitted = fitted_resilience(Fitted::Steel, 12e-3, 40e-3, 207e9);
    let sleeve = Clamped {
        head_bearing: 16.63e-3,
        hole: 13.5e-3,
        outer: 60e-3,
        length: 40e-3,
        youngs_modulus: 207e9,
    };
    let rates = [0.5 / half, 1.0 / fitted].map(|rate| rate * 1e-6);
    assert_close("cones and fit", &rates, &[2235.0, 2361.0], 1e-3, 0.0);
    let ratio = fitted.recip() * sleeve.resilience(Fit::Through);
    assert!((1.35..1.6).contains(&ratio), "{ratio}");
}

/// Head 14.63, hole 11, grip 50, steel: outer diameters on both sides of where the cone meets the edge.
#[test]
fn parts_of_any_width() {
    for (outer, expected) in [
        (20.0, 1.307_67e-9),
        (28.0, 0.869_941e-9),
        (40.0, 0.746_294e-9),
        (60.0, 0.687_112e-9),
    ] {
        let parts = Clamped {
            head_bearing: 14.63e-3,
            hole: 11e-3,
            outer: outer * 1e-3,
            length: 50e-3,
            youngs_modulus: STEEL,
        };
        assert_close(
            outer,
            &[parts.resilience(Fit::Through)],
            &[expected],
            1e-5,
            0.0,
        );
    }
}

/// Cross-checked: thin slices of a cone that opens at the slope of the formula, up to the edge.
#[test]
fn tapped_parts_are_a_sum_of_slices() {
    for outer in [20e-3, 60e-3] {
        let parts = Clamped {
            head_bearing: 14.63e-3,
            hole: 11e-3,
            outer,
            length: 20e-3,
            youngs_modulus: 70e9,
        };
        let slope = 0.348 + 0.013 * (20.0f64 / 14.63).ln() + 0.193 * (outer / 14.63e-3).ln();
        let count = 20_000;
        let step = parts.length / f64::from(count);
        let sum: f64 = (0..count)
            .map(|k| {
                let depth = (f64::from(k) + 0.5) * step;
                let wide = (parts.head_bearing + 2.0 * depth * slope).min(outer);
                step * 4.0 / (PI * 70e9 * (wide * wide - parts.hole * parts.hole))
            })
            .sum();
        assert_close(outer, &[parts.resilience(Fit::Tapped)], &[sum], 1e-6, 0.0);
    }
}

/// M10 8.8 in aluminium 6082-T6 (290 MPa) and in S235 (360 MPa): limits of 6g in 6H from memory of
/// ISO 965, shear areas 15.58 and 21.48 mm, 12.4 and 10.0 mm to hold the breaking load.
#[test]
fn thread_in_a_tapped_part() {
    let listed = WorstFit {
        pitch: 1.5e-3,
        bolt_outer: 9.732e-3,
        bolt_pitch: 8.862e-3,
        hole_pitch: 9.206e-3,
        hole_inner: 8.676e-3,
    };
    let computed = WorstFit::of(&thread("M10"));
    assert_close(
        "limits",
        &[
            computed.bolt_outer,
            computed.bolt_pitch,
            computed.hole_pitch,
            computed.hole_inner,
        ],
        &[9.732e-3, 8.862e-3, 9.206e-3, 8.676e-3],
        0.0,
        9e-6,
    );
    for (fit, relative) in [(listed, 1e-3), (computed, 1e-2)] {
        let areas = [fit.bolt_area(), fit.hole_area()];
        assert_close("areas", &areas, &[15.58e-3, 21.48e-3], relative, 0.0);
        let force = 58e-6 * 800e6;
        let lengths =
            [290e6, 360e6].map(|tensile| fit.engagement(force, 1e12, SHEAR_RATIO * tensile));
        assert_close(
            "lengths",
            &lengths,
            &[12.4e-3, 10.0e-3],
            relative + 5e-3,
            0.0,
        );
        // Derived: in a part as hard as steel can be, the bolt's own thread goes first.
        let own = fit.engagement(force, SHEAR_RATIO * 800e6, 1e12);
        assert_close("own", &[own], &[force / (15.58e-3 * 480e6)], relative, 0.0);
    }
}
