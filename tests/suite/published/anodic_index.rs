//! Anodic indices of MIL-STD-889 and of the lists made after MIL-F-14072, with the limits that
//! go with them; all from memory.

use bedplate::model::material::{Family, Surface};
use bedplate::strength::galvanic::{Advice, AreaEffect, Exposure, Side, judge};

fn bare(family: Family) -> Side {
    coated(family, Surface::Bare)
}

fn coated(family: Family, surface: Surface) -> Side {
    Side {
        index: surface.anodic_index(family.anodic_index()).unwrap(),
        is_sacrificial: surface.is_sacrificial(),
    }
}

/// From memory of the lists: couples met below a vehicle, the difference, and whether it is
/// allowed in the harsh (0.15 V) and the normal (0.25 V) environment.
#[test]
fn couples_of_the_trade_come_out_as_listed() {
    use Family::{Aluminium, Stainless, Steel};
    let zinc_plate = coated(Steel, Surface::ZincPlated);
    let hot_dip = coated(Steel, Surface::HotDipZinc);
    for (pair, difference, harsh, normal) in [
        (
            [bare(Stainless), bare(Aluminium)],
            0.40,
            Advice::Coat,
            Advice::Coat,
        ),
        (
            [bare(Stainless), bare(Steel)],
            0.35,
            Advice::Coat,
            Advice::Coat,
        ),
        (
            [bare(Steel), bare(Aluminium)],
            0.05,
            Advice::Fine,
            Advice::Fine,
        ),
        (
            [zinc_plate, bare(Aluminium)],
            0.35,
            Advice::ZincSpent,
            Advice::ZincSpent,
        ),
        (
            [hot_dip, bare(Aluminium)],
            0.30,
            Advice::ZincSpent,
            Advice::ZincSpent,
        ),
        (
            [zinc_plate, bare(Steel)],
            0.40,
            Advice::ZincSpent,
            Advice::ZincSpent,
        ),
        (
            [bare(Family::Magnesium), bare(Steel)],
            0.90,
            Advice::Avoid,
            Advice::Avoid,
        ),
    ] {
        for (exposure, allowed, advice) in [
            (Exposure::Harsh, 0.15, harsh),
            (Exposure::Normal, 0.25, normal),
        ] {
            let found = judge(pair, [1.0, 1.0], exposure);
            assert!((found.difference - difference).abs() < 1e-12, "{pair:?}");
            assert!((found.allowed - allowed).abs() < 1e-12);
            assert_eq!(found.advice, advice, "{pair:?} {exposure:?}");
        }
    }
    // In a controlled environment 0.50 V is allowed.
    let dry = judge(
        [bare(Stainless), bare(Aluminium)],
        [1.0, 1.0],
        Exposure::Controlled,
    );
    assert_eq!(dry.advice, Advice::Fine);
}

/// Common practice: a stainless bolt in an aluminium plate is the mild case, an aluminium rivet
/// in a stainless sheet the severe one; the less noble metal is eaten in both.
#[test]
fn the_larger_noble_area_is_the_worse_case_whichever_side_is_named_first() {
    let (stainless, aluminium) = (bare(Family::Stainless), bare(Family::Aluminium));
    for (areas, ratio, effect, advice) in [
        ([1.0, 100.0], 0.01, AreaEffect::Mild, Advice::Coat),
        ([3.0, 1.0], 3.0, AreaEffect::Worse, Advice::Coat),
        ([100.0, 1.0], 100.0, AreaEffect::Severe, Advice::Avoid),
    ] {
        let found = judge([stainless, aluminium], areas, Exposure::Harsh);
        let [a, b] = areas;
        let turned = judge([aluminium, stainless], [b, a], Exposure::Harsh);
        assert!((found.area_ratio - ratio).abs() < 1e-12 * ratio);
        assert_eq!((found.area_effect, found.advice), (effect, advice));
        assert_eq!((found.eaten, turned.eaten), (Some(1), Some(0)));
        assert_eq!(
            (turned.area_effect, turned.advice),
            (found.area_effect, found.advice)
        );
    }
    let alike = judge([stainless, stainless], [1.0, 50.0], Exposure::Harsh);
    assert_eq!((alike.eaten, alike.advice), (None, Advice::Fine));
    assert_eq!(alike.area_effect, AreaEffect::Mild);
    for areas in [[0.0, 1.0], [f64::NAN, 1.0], [1.0, f64::INFINITY]] {
        let found = judge([stainless, aluminium], areas, Exposure::Harsh);
        assert!((found.area_ratio - 1.0).abs() < 1e-12, "{areas:?}");
    }
}
