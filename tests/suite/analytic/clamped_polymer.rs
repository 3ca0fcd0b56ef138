//! What a layer of polymer leaves of the force of a bolt.

use bedplate::strength::polymer::Layer;
use proptest::prelude::*;

/// A washer of moist polyamide under an M10 in a sleeve of 20 by 11 mm.
fn washer() -> Layer {
    Layer {
        thickness: 2e-3,
        area: std::f64::consts::PI / 4.0 * (0.020 * 0.020 - 0.011 * 0.011),
        youngs_modulus: 1.5e9,
        yield_strength: 60e6,
    }
}

/// Computed independently: bolt 5.49968e-9 m/N, parts 1.54998e-9 m/N; the layer goes from
/// 2/(1500 · 219.126) to 2/(600 · 219.126) mm/N, so that 13.1345/22.2617 of the preload is left.
/// The 43.48 kN press it with 198.4 MPa, 3.307 times its strength.
#[test]
fn a_nylon_washer_keeps_three_fifths_of_the_preload_and_is_pressed_out() {
    let kept = washer().retained(5.49968e-9 + 1.54998e-9, 0.6e9);
    assert!((kept - 0.590).abs() < 5e-4, "{kept}");
    let pressed = washer().utilisation(43_480.0);
    assert!((pressed - 3.307).abs() < 1e-3, "{pressed}");
}

/// Derived: without resilience of the bolt the force follows the modulus; with a very soft bolt,
/// or without a layer, all of it stays; a modulus that rises keeps it too.
#[test]
fn a_rigid_bolt_follows_the_modulus_and_a_soft_one_keeps_its_force() {
    let layer = washer();
    assert!((layer.retained(0.0, 0.6e9) - 0.4).abs() < 1e-12);
    assert!((layer.retained(1.0, 0.6e9) - 1.0).abs() < 1e-7);
    assert!((layer.retained(7e-9, 1.5e9) - 1.0).abs() < 1e-12);
    assert!((layer.retained(7e-9, 2.5e9) - 1.0).abs() < 1e-12);
    let none = Layer {
        thickness: 0.0,
        ..layer
    };
    assert!((none.retained(7e-9, 0.6e9) - 1.0).abs() < 1e-12);
    assert!((none.retained(0.0, 0.6e9) - 1.0).abs() < 1e-12);
    assert!(layer.retained(7e-9, 0.0).is_nan());
    assert!(layer.retained(7e-9, f64::NAN).is_nan());
}

proptest! {
    /// Invariant: a share, and less of it for a softer or a thicker layer or a stiffer bolt.
    #[test]
    fn softer_thicker_and_stiffer_bolts_keep_less(
        resilience in 1e-10..1e-7_f64,
        thickness in 1e-4..1e-2_f64,
        share in 0.05..0.95_f64,
    ) {
        let layer = Layer { thickness, ..washer() };
        let kept = layer.retained(resilience, share * 1.5e9);
        prop_assert!(share < kept && kept < 1.0);
        let thicker = Layer { thickness: 1.1 * thickness, ..layer };
        prop_assert!(thicker.retained(resilience, share * 1.5e9) < kept);
        prop_assert!(layer.retained(resilience, 0.9 * share * 1.5e9) < kept);
        prop_assert!(layer.retained(0.9 * resilience, share * 1.5e9) < kept);
    }
}
