//! From hardness to moduli, and what is usual for a rubber of a hardness.

use bedplate::diagnostic::Code;
use bedplate::model::isolator::rubber::{Moduli, Relation};

use crate::diagnostics::problems;
use crate::kit::{assert_close, four_mounts_on, isolator_of};

fn megapascal(relation: Relation, hardness: f64) -> f64 {
    relation.youngs(hardness).unwrap() * 1e-6
}

/// Computed independently: the relation as A. N. Gent published it in 1958 (from memory).
#[test]
fn indentation_relation() {
    for (hardness, youngs) in [
        (20.0, 0.732),
        (40.0, 1.690),
        (50.0, 2.456),
        (60.0, 3.605),
        (65.0, 4.426),
        (70.0, 5.521),
        (80.0, 9.351),
        (90.0, 20.844),
    ] {
        let found = megapascal(Relation::Indentation, hardness);
        assert_close(hardness, &[found], &[youngs], 5e-4, 0.0);
    }
}

/// Computed independently: lg E = 0.0235 S - 0.6403. With a natural exponent 60 Shore A
/// would have 2.16 MPa, which is the trap.
#[test]
fn base_ten_relation_has_the_decimal_exponent() {
    for (hardness, youngs) in [(40.0, 1.994), (50.0, 3.425), (60.0, 5.884), (70.0, 10.109)] {
        let found = megapascal(Relation::Base10, hardness);
        assert_close(hardness, &[found], &[youngs], 5e-4, 0.0);
    }
    assert!(megapascal(Relation::Base10, 60.0) > 2.0 * 2.16);
}

/// Computed independently with another quantile of the normal distribution; formula from
/// memory of ISO 48.
#[test]
fn probit_curve() {
    for (hardness, youngs) in [
        (30.0, 0.9931),
        (40.0, 1.5370),
        (50.0, 2.3121),
        (60.0, 3.4779),
        (70.0, 5.3830),
        (95.0, 32.7515),
    ] {
        let found = megapascal(Relation::Probit, hardness);
        assert_close(hardness, &[found], &[youngs], 6e-5, 0.0);
    }
}

/// Common practice: rate over that of a part of 50 Shore, from 51 to 60; the indentation
/// relation is within 0.9 % of it.
#[test]
fn a_few_degrees_of_hardness() {
    let usual = [
        1.038, 1.087, 1.118, 1.161, 1.205, 1.251, 1.298, 1.348, 1.399, 1.458,
    ];
    for (more, ratio) in (1..).zip(usual) {
        let found = megapascal(Relation::Indentation, 50.0 + f64::from(more))
            / megapascal(Relation::Indentation, 50.0);
        assert_close(more, &[found], &[ratio], 9e-3, 0.0);
    }
}

/// Computed independently: at 55 Shore a tolerance of ±5 makes +21 and -17 %, of +3 makes +12 %.
#[test]
fn tolerance_of_hardness() {
    let at = |hardness| {
        megapascal(Relation::Indentation, hardness) / megapascal(Relation::Indentation, 55.0) - 1.0
    };
    assert_close(
        "5 and 3 degrees",
        &[at(60.0), at(50.0), at(58.0)],
        &[0.215, -0.172, 0.123],
        0.0,
        6e-4,
    );
}

/// Derived: k belongs to the E₀ of the table, so a foreign E has k = 1; its shear modulus is
/// that share of it which the table has at that hardness, never a third.
#[test]
fn a_foreign_modulus_takes_neither_k_nor_a_third() {
    let table = Relation::Table.moduli(60.0).unwrap();
    for relation in [Relation::Indentation, Relation::Base10, Relation::Probit] {
        let Moduli {
            youngs,
            shear,
            shape,
            bulk,
        } = relation.moduli(60.0).unwrap();
        assert_close(
            relation,
            &[shape, youngs / shear, bulk],
            &[1.0, 4.45 / 1.06, table.bulk],
            1e-12,
            0.0,
        );
    }
    // Beyond the table the ratio is that of its end.
    let hard = Relation::Probit.moduli(90.0).unwrap();
    assert_close(
        "90",
        &[hard.youngs / hard.shear],
        &[9.40 / 2.22],
        1e-12,
        0.0,
    );
}

#[test]
fn outside_of_its_range_a_relation_gives_nothing() {
    for (relation, inside, outside) in [
        (Relation::Table, [30.0, 75.0], [29.9, 75.1]),
        (Relation::Indentation, [20.0, 90.0], [19.9, 100.0]),
        (Relation::Base10, [20.0, 80.0], [0.0, 80.1]),
        (Relation::Probit, [30.0, 95.0], [29.0, f64::NAN]),
    ] {
        assert!(inside.iter().all(|&h| relation.moduli(h).is_some()));
        assert!(outside.iter().all(|&h| relation.moduli(h).is_none()));
        assert!(outside.iter().all(|&h| relation.youngs(h).is_none()));
    }
}

fn block_of(rest: &str) -> String {
    format!("kind = \"block\"\nblock = \"60, 60, 30 mm\"\n{rest}")
}

/// Natural rubber by the table, the others by indentation, and each as the file wants it; the rate
/// along w is E₀ (1 + 2 k S²) with S = 60/(4 · 30) = 0.5, so E₀ (1 + k/2).
#[test]
fn the_relation_is_the_one_that_is_named_or_usual() {
    let linear = |youngs: f64, k: f64, bulk: f64| {
        let modulus = youngs * (1.0 + k / 2.0);
        modulus / (1.0 + modulus / bulk) * 1e6 * 0.06 * 0.06 / 0.03
    };
    for (keys, youngs, k) in [
        ("hardness = \"60 IRHD\"", 4.45, 0.57),
        ("hardness = \" 60  shore a\"", 4.45, 0.57),
        ("hardness = \"60 Shore A\"\nrubber = \"epdm\"", 3.605, 1.0),
        (
            "hardness = \"60 Shore A\"\nrubber = \"butyl\"\nrelation = \"table\"",
            4.45,
            0.57,
        ),
        (
            "hardness = \"60 Shore A\"\nrelation = \"indentation\"",
            3.605,
            1.0,
        ),
        ("hardness = \"60 IRHD\"\nrelation = \"base-10\"", 5.884, 1.0),
        ("hardness = \"60 IRHD\"\nrelation = \"probit\"", 3.4779, 1.0),
    ] {
        let rate = isolator_of(&block_of(keys)).free_rate(2);
        assert_close(keys, &[rate], &[linear(youngs, k, 1150.0)], 5e-4, 0.0);
    }
}

/// Which relation was used is told, and that one scale was taken for the other.
#[test]
fn what_was_taken_for_granted_is_told() {
    let text = four_mounts_on(&block_of("hardness = \"60 Shore A\""));
    let model = crate::kit::model(&text);
    let told = |key: &str| {
        let found = model
            .assumptions
            .iter()
            .find(|one| one.key == format!("isolator.pad.{key}"));
        found.map(|one| one.text.clone()).unwrap_or_default()
    };
    assert!(told("relation").contains("table of natural-rubber springs"));
    assert!(told("hardness").contains("60 Shore A is taken as 60 IRHD"));
    let remarks = model.isolators[0].remarks.join("\n");
    for part in [
        "Young's modulus 4.45 MPa, shear modulus 1.06 MPa",
        "from 3.5 to 5.9 MPa",
        "Shape factor 0.50",
        "relax to zero",
    ] {
        assert!(remarks.contains(part), "{part}: {remarks}");
    }
}

/// Common practice: the ranges of dynamic ratio by hardness; creep from memory of the AASHTO rules,
/// 3.5, 4.9 and 6.3 % a decade over 6.721 decades from a minute to ten years.
#[test]
fn usual_values_lie_in_the_ranges_of_practice() {
    for (hardness, ratio, loss, creep) in [
        (40, 1.1..=1.2, 0.05, 0.235),
        (50, 1.2..=1.4, 0.075, 0.235),
        (60, 1.4..=1.8, 0.10, 0.329),
        (70, 1.8..=2.5, 0.125, 0.423),
    ] {
        let part = isolator_of(&block_of(&format!("hardness = \"{hardness} IRHD\"")));
        let (small, large) = (part.dynamics.ratio.x, part.dynamics.ratio_large.x);
        assert!(ratio.contains(&small), "{hardness}: {small}");
        assert!(
            large > 1.0 && large - 1.0 < 0.4 * (small - 1.0),
            "{hardness}: {large}"
        );
        assert_close(hardness, &[part.dynamics.loss_factor], &[loss], 0.0, 0.0051);
        assert_close(hardness, &[part.creep], &[creep], 0.0, 6e-4);
        assert_close(hardness, &[part.scatter], &[0.2], 1e-12, 0.0);
        assert_eq!(part.heat_limit, Some(80.0));
    }
}

/// What is taken where the file is silent is never what is warned of.
#[test]
fn usual_ratio_and_loss_go_together() {
    let rubbers = [
        "natural",
        "epdm",
        "chloroprene",
        "styrene-butadiene",
        "silicone",
        "nitrile",
        "butyl",
    ];
    for rubber in rubbers {
        for hardness in [30, 45, 55, 65, 75] {
            let keys = block_of(&format!(
                "rubber = \"{rubber}\"\nhardness = \"{hardness} IRHD\""
            ));
            let usual = isolator_of(&keys).dynamics;
            let stated = |ratio: f64, loss: f64| {
                let text = format!("{keys}\ndynamic_ratio = {ratio}\nloss_factor = {loss}");
                problems(&four_mounts_on(&text))
            };
            assert_eq!(
                stated(usual.ratio.x, usual.loss_factor),
                [],
                "{rubber} {hardness}"
            );
            let doubtful = stated(10.0, usual.loss_factor * 0.3);
            let codes: Vec<Code> = doubtful.iter().map(|one| one.code).collect();
            assert_eq!(codes, [Code::UnlikelyLoss], "{rubber} {hardness}");
        }
    }
}
