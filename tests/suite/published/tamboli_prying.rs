//! A. R. Tamboli (ed.), Handbook of Structural Steel Connection Design and Details, p. 107:
//! prying of a hanger.
//!
//! Label: published. Edition to be confirmed.

use bedplate::strength::plate::prying::{Flange, Governs};
use bedplate::strength::plate::t_stub::TStub;

use crate::kit::assert_close;

const INCH: f64 = 25.4e-3;
const KIP: f64 = 4_448.222;
const KSI: f64 = 6.894_757e6;

/// 0.9 F_u with F_u 65 ksi.
const STRENGTH: f64 = 0.9 * 65.0 * KSI;

/// 0.75 · 90 ksi on a bolt of 7/8 in.
const BOLT: f64 = 40.6 * KIP;

/// Bolt 7/8 in, gage 4.5, stem 0.430, flange 7.125 wide, pitch 3, hole 15/16 in.
fn flange(thickness: f64) -> Flange {
    Flange {
        bolt: 0.875 * INCH,
        hole: 0.9375 * INCH,
        to_stem: (4.5 - 0.430) / 2.0 * INCH,
        to_tip: (7.125 - 4.5) / 2.0 * INCH,
        length: 3.0 * INCH,
        thickness: thickness * INCH,
    }
}

/// t_c 1.215 in; a flange of 0.715 in carries 23.7 kip a bolt and rules.
#[test]
fn hanger() {
    let hanger = flange(0.715);
    let without = hanger.thickness_without_prying(BOLT, STRENGTH) / INCH;
    assert_close("t_c", &[without], &[1.215], 6e-3, 0.0);
    let found = hanger.carries(BOLT, STRENGTH);
    assert_close("T", &[found.pull / KIP], &[23.7], 6e-3, 0.0);
    assert_eq!(found.governs, Governs::Flange);
}

/// Derived by hand from the same: t_c 1.215836; 1.0 in: α 0.36367, T 34.3316; 1.3 in: bolt alone.
/// Where bolt and flange rule together, the pull they carry loads the bolt to its strength.
#[test]
fn the_force_of_the_bolt_meets_its_strength() {
    let thick = flange(1.3).carries(BOLT, STRENGTH);
    assert_close("thick", &[thick.pull], &[BOLT], 1e-12, 0.0);
    assert_eq!(thick.governs, Governs::Bolt);
    assert_close(
        "thick",
        &[flange(1.3).under(BOLT, STRENGTH).prying],
        &[0.0],
        0.0,
        1e-9,
    );

    let middle = flange(1.0);
    let found = middle.carries(BOLT, STRENGTH);
    assert_close("middle", &[found.pull / KIP], &[34.3316], 1e-5, 0.0);
    assert_eq!(found.governs, Governs::BoltAndFlange);
    let pried = middle.under(found.pull, STRENGTH);
    assert_close(
        "bolt",
        &[pried.bolt, pried.prying],
        &[BOLT, BOLT - found.pull],
        1e-9,
        0.0,
    );
    assert!(pried.flange_holds);

    // A flange at its limit: Q a' = δ M, T b' = (1 + δ) M, so Q/T = δ ρ/(1 + δ).
    let thin = flange(0.715);
    let pull = thin.carries(BOLT, STRENGTH).pull;
    let pried = thin.under(pull * (1.0 - 1e-9), STRENGTH);
    assert!(pried.flange_holds);
    let expected = 0.6875 * 0.912_857 / 1.6875;
    assert_close("Q/T", &[pried.prying / pull], &[expected], 1e-6, 0.0);
    assert!(!thin.under(pull * 1.001, STRENGTH).flange_holds);
}

/// Derived: with no hole and d → 0 both theories have the same hinges, 2 · T_1 = 4 M/m.
/// By hand: m 30, e 25 (below 1.25 m), l 100, t 10 mm, f 235 MPa, bolts 66 816 N: M = 587.5 N m,
/// 78 333, 51 735, 66 816 N.
#[test]
fn t_stub_by_hand() {
    let stub = TStub {
        to_web: 30e-3,
        to_tip: 25e-3,
        effective_length: 100e-3,
        thickness: 10e-3,
    };
    let modes = stub.modes(66_816.0, 235e6);
    let found = [modes.flange, modes.both, modes.bolts];
    assert_close("stub", &found, &[78_333.3, 51_734.5, 66_816.0], 1e-5, 0.0);
    assert_close("rules", &[modes.smallest()], &[51_734.5], 1e-5, 0.0);
    let far = TStub {
        to_tip: 90e-3,
        ..stub
    };
    // n = 37.5: (1175 + 0.0375 · 66 816)/0.0675.
    let expected = (1175.0 + 0.0375 * 66_816.0) / 0.0675;
    assert_close(
        "tip",
        &[far.modes(66_816.0, 235e6).both],
        &[expected],
        1e-9,
        0.0,
    );

    let point = Flange {
        bolt: 1e-9,
        hole: 0.0,
        to_stem: 30e-3,
        to_tip: 25e-3,
        length: 100e-3,
        thickness: 10e-3,
    };
    let carried = point.carries(1e9, 235e6);
    assert_eq!(carried.governs, Governs::Flange);
    assert_close("same", &[2.0 * carried.pull], &[modes.flange], 1e-6, 0.0);
}
