//! Rates of bonded bushes: finite elements, closed forms and limits.

use bedplate::model::isolator::bush::Bush;
use bedplate::model::isolator::rubber::Moduli;

use crate::kit::assert_close;

const MM: f64 = 1e-3;

/// A bush with inner radius 10 mm, of an outer over inner radius and a length over wall.
fn shaped(ratio: f64, slenderness: f64) -> Bush {
    Bush {
        inner: 20.0 * MM,
        outer: 20.0 * MM * ratio,
        length: slenderness * (ratio - 1.0) * 10.0 * MM,
    }
}

/// Rate across over shear modulus and length.
fn across(bush: &Bush) -> f64 {
    bush.radial_rate(1.0) / bush.length
}

/// Shapes over the whole range that a file may hold.
fn shapes() -> impl Iterator<Item = Bush> {
    let ratios = [1.05, 1.08, 1.2, 1.5, 2.0, 3.1, 4.4, 6.0];
    ratios.into_iter().flat_map(|ratio| {
        (0..=60).map(move |step| shaped(ratio, 0.05 * 1200_f64.powf(f64::from(step) / 60.0)))
    })
}

/// Outer over inner radius, length over wall, finite elements, closed model; rate across over G L.
///
/// Computed independently: finite elements, incompressible, biquadratic motion,
/// first harmonic round the axis; the closed model in another language.
const ACROSS: [(f64, f64, f64, f64); 14] = [
    (1.25, 0.25, 73.1, 73.55),
    (1.25, 0.5, 76.9, 77.90),
    (1.25, 1.0, 86.9, 88.80),
    (1.25, 2.0, 124.0, 122.96),
    (1.25, 4.0, 268.0, 246.90),
    (1.25, 8.0, 731.0, 660.66),
    (1.25, 16.0, 1641.0, 1612.2),
    (2.0, 0.25, 22.0, 22.11),
    (2.0, 0.5, 23.0, 23.28),
    (2.0, 1.0, 25.6, 26.11),
    (2.0, 2.0, 34.4, 34.22),
    (2.0, 4.0, 58.3, 56.44),
    (2.0, 8.0, 90.9, 93.14),
    (2.0, 16.0, 113.0, 120.35),
];

#[test]
fn rate_across_is_that_of_the_closed_model() {
    for (ratio, slenderness, _, closed) in ACROSS {
        let found = across(&shaped(ratio, slenderness));
        assert_close((ratio, slenderness), &[found], &[closed], 3e-4, 0.0);
    }
}

#[test]
fn rate_across_is_within_a_tenth_of_finite_elements() {
    for (ratio, slenderness, elements, _) in ACROSS {
        let off = across(&shaped(ratio, slenderness)) / elements - 1.0;
        assert!((-0.10..0.08).contains(&off), "{ratio} {slenderness}: {off}");
    }
    // Computed independently: the same elements, towards the ends of the range.
    for (ratio, slenderness, elements) in [
        (1.05, 0.0625, 325.58),
        (1.05, 16.0, 15606.0),
        (1.1, 8.0, 2100.7),
        (1.1, 64.0, 29413.0),
        (1.25, 64.0, 2978.5),
        (3.0, 8.0, 34.093),
        (6.0, 0.5, 7.4361),
        (6.0, 8.0, 13.320),
        (6.0, 64.0, 14.665),
    ] {
        let off = across(&shaped(ratio, slenderness)) / elements - 1.0;
        assert!((-0.17..0.09).contains(&off), "{ratio} {slenderness}: {off}");
    }
}

/// Cross-checked: the same six equations solved with 50 digits.
#[test]
fn six_equations_are_solved_to_many_digits_over_the_whole_range() {
    for (ratio, slenderness, expected) in [
        (1.05, 0.05, 325.17086781473),
        (1.05, 1.0, 411.22893491834),
        (1.05, 60.0, 118275.2435319),
        (1.25, 0.05, 70.47612122643),
        (1.25, 1.0, 88.79889532456),
        (1.25, 60.0, 3193.3790957913),
        (2.0, 0.05, 21.268480949998),
        (2.0, 1.0, 26.114494838462),
        (2.0, 60.0, 133.72993438765),
        (6.0, 0.05, 6.9843790216774),
        (6.0, 1.0, 8.1454230404223),
        (6.0, 60.0, 14.835157522042),
    ] {
        let found = across(&shaped(ratio, slenderness));
        assert_close((ratio, slenderness), &[found], &[expected], 1e-8, 0.0);
    }
}

/// From memory: Adkins and Gent 1954, worked out for two ratios; between them lies every bush.
#[test]
fn rate_across_lies_between_the_disc_and_the_endless_bush() {
    for (ratio, bounds) in [(1.25, [69.76, 3460.5]), (2.0, [21.07, 134.91])] {
        let bush = shaped(ratio, 1.0);
        let found = bush.radial_bounds(1.0).map(|rate| rate / bush.length);
        assert_close(ratio, &found, &bounds, 1e-4, 0.0);
    }
    for bush in shapes() {
        let [short, long] = bush.radial_bounds(1.0);
        let rate = bush.radial_rate(1.0);
        assert!(
            short < rate && rate < long,
            "{bush:?}: {short} {rate} {long}"
        );
    }
}

/// Derived: the finite length tends to both limits. 21.47 by hand is 1.9 % above the disc at a tenth of the wall.
#[test]
fn very_short_and_very_long_bushes_reach_the_limits() {
    let disc = shaped(2.0, 0.1);
    assert_close("tenth", &[across(&disc)], &[21.47], 2e-4, 0.0);
    let [short, _] = shaped(2.0, 0.005).radial_bounds(1.0);
    assert_close(
        "short",
        &[shaped(2.0, 0.005).radial_rate(1.0)],
        &[short],
        1e-3,
        0.0,
    );
    let [_, long] = shaped(2.0, 1000.0).radial_bounds(1.0);
    assert_close(
        "long",
        &[shaped(2.0, 1000.0).radial_rate(1.0)],
        &[long],
        1e-3,
        0.0,
    );
}

/// The trap: the formula of the endless bush is taken for an ordinary one.
#[test]
fn endless_formula_is_far_too_stiff_for_ordinary_bushes() {
    // mm: shapes of suspension and engine bushes, wall 5 to 9 mm.
    for (inner, outer, length) in [
        (16.0, 32.0, 40.0),
        (30.0, 45.0, 35.0),
        (12.0, 30.0, 30.0),
        (40.0, 56.0, 50.0),
    ] {
        let bush = Bush {
            inner: inner * MM,
            outer: outer * MM,
            length: length * MM,
        };
        let over = bush.radial_bounds(1.0)[1] / bush.radial_rate(1.0);
        assert!((1.8..6.0).contains(&over), "{bush:?}: {over}");
    }
}

/// Computed independently: finite elements; rate along w over that of shear without free ends.
#[test]
fn free_ends_take_their_share_of_the_rate_along() {
    let share = |ratio: f64, slenderness| {
        let bush = shaped(ratio, slenderness);
        bush.axial_rate(1.0) / (std::f64::consts::TAU * bush.length / ratio.ln())
    };
    for (slenderness, expected) in [(1.0, 0.769), (2.0, 0.888), (4.0, 0.944)] {
        assert_close(
            slenderness,
            &[share(2.0, slenderness)],
            &[expected],
            1e-2,
            0.0,
        );
    }
    for (ratio, slenderness, expected) in [
        (1.05, 0.125, 0.06042),
        (1.25, 0.25, 0.20677),
        (2.0, 0.0625, 0.01650),
        (2.0, 0.5, 0.51113),
        (2.74, 0.707, 0.6687),
        (6.0, 0.0625, 0.02126),
        (6.0, 0.25, 0.25867),
        (6.0, 2.0, 0.9027),
    ] {
        let found = share(ratio, slenderness);
        assert_close((ratio, slenderness), &[found], &[expected], 3.5e-2, 0.0);
    }
}

/// Derived: 2 π/ln 10 = 2.7288, the rate along w of a long bush over G L, times the common logarithm of b/a.
#[test]
fn long_bush_slides_by_shear_alone() {
    let bush = shaped(2.0, 1e5);
    let found = bush.axial_rate(1.0) * 2_f64.log10() / bush.length;
    assert_close("long", &[found], &[2.7288], 2e-5, 0.0);
}

/// Derived: clamped at both edges and thin, a strip of width t bends with 12 (4 G L³/12)/t³ per length;
/// of a thin wall that is 2 π a · 4 G (L/t)³.
#[test]
fn very_short_bush_bends_as_a_plate() {
    let bush = shaped(1.001, 1e-3);
    let expected = std::f64::consts::TAU * 0.010 * 4.0 * 1e-9;
    assert_close("strip", &[bush.axial_rate(1.0)], &[expected], 2e-3, 0.0);
}

/// Derived by hand: a 8, b 16, L 40 mm, G 0.81 MPa: 4 π · 0.81 · 40 · 64 · 256/192 = 34 744 N mm/rad.
#[test]
fn turning_about_the_tubes_by_hand() {
    let bush = Bush {
        inner: 16.0 * MM,
        outer: 32.0 * MM,
        length: 40.0 * MM,
    };
    assert_close(
        "torsion",
        &[bush.torsional_rate(0.81e6)],
        &[34.744],
        1e-4,
        0.0,
    );
}

/// Computed independently: finite elements; moment per angle over G L³. The first
/// eight are places of the table, the others lie between them.
const TILTED: [(f64, f64, f64); 24] = [
    (1.25, 1.0, 223.0),
    (1.25, 2.0, 70.0),
    (1.25, 4.0, 26.4),
    (1.25, 8.0, 23.7),
    (2.0, 1.0, 9.52),
    (2.0, 2.0, 4.30),
    (2.0, 4.0, 3.30),
    (2.0, 8.0, 4.51),
    (1.07591211, 15.56009594, 215.21),
    (1.08609013, 0.28684227, 17277.0),
    (1.12005674, 0.27794342, 6799.6),
    (1.14643408, 1.55689079, 444.54),
    (1.15387321, 2.93578820, 127.55),
    (1.17, 0.354, 2224.4),
    (1.34824465, 0.10440257, 478.43),
    (1.36, 2.83, 18.236),
    (1.73, 1.41, 10.884),
    (2.00193362, 0.08356308, 44.331),
    (2.24, 5.66, 2.929),
    (2.74, 0.707, 5.6716),
    (3.46, 11.3, 1.9099),
    (3.55695926, 4.73476383, 1.3815),
    (5.56372744, 0.11548244, 4.9117),
    (5.56759813, 0.83697354, 1.3845),
];

#[test]
fn tilting_is_that_of_finite_elements() {
    for (ratio, slenderness, expected) in TILTED {
        let bush = shaped(ratio, slenderness);
        let found = bush.conical_rate(1.0) / bush.length.powi(3);
        assert_close((ratio, slenderness), &[found], &[expected], 7e-3, 0.0);
    }
}

/// The trap: a rod with the rate across spread along it, k L²/12. By the table above and that of
/// the rate across, tilting is 31 times stiffer at 1.25 and 1, and 0.39 times as stiff at 1.25 and 8.
#[test]
fn tilting_is_not_that_of_a_rod_on_springs() {
    for (ratio, slenderness, expected) in [(1.25, 1.0, 30.8), (1.25, 8.0, 0.43), (2.0, 1.0, 4.37)] {
        let bush = shaped(ratio, slenderness);
        let rod = bush.radial_rate(1.0) * bush.length.powi(2) / 12.0;
        let found = bush.conical_rate(1.0) / rod;
        assert_close((ratio, slenderness), &[found], &[expected], 3e-2, 0.0);
    }
}

/// Computed independently: finite elements with bulk over shear modulus as given, rate across over
/// G L and tilted over G L³, and how far the formulas may be off. Without compression of the rubber
/// they would give up to 2.2 times as much.
#[test]
fn confined_rubber_gives_way_in_bulk() {
    for (bulk, ratio, slenderness, across, tilted, off) in [
        (1350.0, 1.1, 16.0, 5852.9, 151.58, 0.099),
        (1350.0, 1.25, 16.0, 1496.6, 50.047, 0.02),
        (600.0, 1.25, 64.0, 2179.1, 142.33, 0.08),
        (600.0, 1.05, 32.0, 20462.0, 758.03, 0.09),
        (600.0, 2.0, 16.0, 108.49, 6.6337, 0.07),
    ] {
        let bush = shaped(ratio, slenderness);
        let moduli = Moduli {
            youngs: 4e6,
            shear: 1e6,
            shape: 0.6,
            bulk: bulk * 1e6,
        };
        let (rates, turned) = (bush.rates(&moduli), bush.rotational(&moduli));
        let place = (bulk, ratio, slenderness);
        let found = [rates.x / bush.length, turned.x / bush.length.powi(3)].map(|rate| rate / 1e6);
        assert_close(place, &found[..1], &[across], off, 0.0);
        assert_close(place, &found[1..], &[tilted], off, 0.0);
        let untouched = [rates.z, turned.z];
        let expected = [bush.axial_rate(1e6), bush.torsional_rate(1e6)];
        assert_close("untouched", &untouched, &expected, 0.0, 0.0);
        assert_close(
            "alike",
            &[rates.y, turned.y],
            &[rates.x, turned.x],
            0.0,
            0.0,
        );
    }
}

/// Derived: rubber that cannot be compressed has the rates of rubber that keeps its volume.
#[test]
fn stiff_bulk_changes_nothing() {
    let moduli = Moduli {
        youngs: 4e6,
        shear: 1e6,
        shape: 0.6,
        bulk: f64::INFINITY,
    };
    for bush in shapes() {
        let found = [bush.rates(&moduli).x, bush.rotational(&moduli).x];
        let expected = [bush.radial_rate(1e6), bush.conical_rate(1e6)];
        assert_close(bush, &found, &expected, 1e-14, 0.0);
    }
}

/// Derived: rates go with the size, moments with its cube, both with the modulus.
#[test]
fn no_rate_depends_on_the_unit_of_length() {
    for bush in shapes() {
        for factor in [1e-3, 25.4] {
            let other = Bush {
                inner: bush.inner * factor,
                outer: bush.outer * factor,
                length: bush.length * factor,
            };
            let rates = |bush: &Bush, shear| [bush.radial_rate(shear), bush.axial_rate(shear)];
            let expected = rates(&bush, 2.0).map(|rate| rate * factor / 2.0);
            assert_close(bush, &rates(&other, 1.0), &expected, 1e-7, 0.0);
            let turned =
                |bush: &Bush, shear| [bush.torsional_rate(shear), bush.conical_rate(shear)];
            let expected = turned(&bush, 2.0).map(|rate| rate * factor.powi(3) / 2.0);
            assert_close(bush, &turned(&other, 1.0), &expected, 1e-9, 0.0);
        }
    }
}

/// Derived: more rubber along the tubes is never softer, and a longer bush gains on a rod of fixed rate per length.
#[test]
fn every_rate_grows_with_the_length() {
    let all: Vec<Bush> = shapes().collect();
    for pair in all.windows(2) {
        let [shorter, longer] = pair else { continue };
        if shorter.inner.to_bits() != longer.inner.to_bits()
            || shorter.outer.to_bits() != longer.outer.to_bits()
        {
            continue;
        }
        let rates = |bush: &Bush| {
            [
                bush.radial_rate(1.0),
                bush.axial_rate(1.0),
                bush.torsional_rate(1.0),
                bush.conical_rate(1.0),
            ]
        };
        for (less, more) in rates(shorter).into_iter().zip(rates(longer)) {
            assert!(
                less > 0.0 && more > less,
                "{shorter:?} {longer:?}: {less} {more}"
            );
        }
    }
}
