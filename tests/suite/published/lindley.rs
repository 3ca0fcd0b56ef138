//! P. B. Lindley, Engineering Design with Natural Rubber, NR Technical Bulletin, MRPRA:
//! Table 3 and pp. 26-28, 45-46; and what formulas of this kind are worth beside rated parts.

use bedplate::model::isolator::Law;
use bedplate::model::isolator::block::{Block, Footprint, Pad};
use bedplate::model::isolator::rubber::{Moduli, Relation};
use bedplate::spatial::{STANDARD_GRAVITY, Vec3};

use crate::kit::assert_close;

/// Published: Table 3, columns in SI: IRHD, E0, G, k, bulk modulus (MPa).
const TABLE_3: [[f64; 5]; 10] = [
    [30.0, 0.92, 0.30, 0.93, 1000.0],
    [35.0, 1.18, 0.37, 0.89, 1000.0],
    [40.0, 1.50, 0.45, 0.85, 1000.0],
    [45.0, 1.80, 0.54, 0.80, 1000.0],
    [50.0, 2.20, 0.64, 0.73, 1030.0],
    [55.0, 3.25, 0.81, 0.64, 1090.0],
    [60.0, 4.45, 1.06, 0.57, 1150.0],
    [65.0, 5.85, 1.37, 0.54, 1210.0],
    [70.0, 7.35, 1.73, 0.53, 1270.0],
    [75.0, 9.40, 2.22, 0.52, 1330.0],
];

#[test]
fn every_row_of_the_table_is_met() {
    for [hardness, youngs, shear, shape, bulk] in TABLE_3 {
        let found = Relation::Table.moduli(hardness).unwrap();
        assert_close(
            hardness,
            &[found.youngs, found.shear, found.shape, found.bulk],
            &[youngs * 1e6, shear * 1e6, shape, bulk * 1e6],
            1e-12,
            0.0,
        );
    }
}

/// Derived: straight lines between the rows, at 57 IRHD two fifths of the way from 55 to 60.
#[test]
fn between_two_rows_the_table_is_a_straight_line() {
    let found = Relation::Table.moduli(57.0).unwrap();
    assert_close(
        "57 IRHD",
        &[found.youngs, found.shear, found.shape, found.bulk],
        &[3.73e6, 0.91e6, 0.612, 1114e6],
        1e-12,
        0.0,
    );
}

/// Published with the table: E0 is three times G for soft gum only, about four times when filled.
#[test]
fn filled_rubber_has_no_third_of_its_youngs_modulus_in_shear() {
    for [hardness, ..] in TABLE_3 {
        let found = Relation::Table.moduli(hardness).unwrap();
        let ratio = found.youngs / found.shear;
        let expected = if hardness < 50.0 {
            3.05..3.35
        } else {
            3.4..4.3
        };
        assert!(expected.contains(&ratio), "{hardness}: {ratio}");
    }
}

/// Published, a laboratory review of a balance mount (author and year unknown): a pad of
/// 22.2 × 22.2 × 12.7 mm, E 0.7 MPa, k 1, under 80 N has S 0.437, Ec 0.97 MPa, strain
/// 16.8 %, 2.13 mm, about 11 Hz; worked with the linear rate.
#[test]
fn pad_of_a_balance_mount() {
    let pad = Pad {
        footprint: Footprint::Rectangle {
            u: 22.2e-3,
            v: 22.2e-3,
        },
        height: 12.7e-3,
        layers: 1,
        moduli: Moduli {
            youngs: 0.7e6,
            shear: 0.7e6 / 3.0,
            shape: 1.0,
            bulk: 1e9,
        },
    };
    let sag = 80.0 / pad.rates().z;
    let frequency = (STANDARD_GRAVITY / sag).sqrt() / std::f64::consts::TAU;
    for (what, found, expected, relative) in [
        ("shape factor", pad.shape_factor(), 0.437, 1e-3),
        ("modulus", pad.compression_modulus(), 0.97e6, 5e-3),
        ("strain", sag / pad.height, 0.168, 2e-3),
        ("sag", sag, 2.13e-3, 2e-3),
        ("frequency", frequency, 11.0, 0.02),
    ] {
        assert_close(what, &[found], &[expected], relative, 0.0);
    }
}

fn cylinder(diameter: f64, height: f64, hardness: f64) -> Pad {
    Pad {
        footprint: Footprint::Circle { diameter },
        height,
        layers: 1,
        moduli: Relation::Table.moduli(hardness).unwrap(),
    }
}

fn law(pad: &Pad) -> Block {
    Block {
        rates: pad.rates(),
        height: pad.height,
        bulge: pad.footprint.bulge(),
        lean: 0.0,
    }
}

/// Computed independently (a spreadsheet of the published formulas): shape factor, rates
/// in N/mm, and loads at the average design limits of 15 % compression and 50 % shear.
#[test]
fn cylinders_at_the_design_limits() {
    for (diameter, height, hardness, shape, along, across, loads) in [
        (50.0, 30.0, 45.0, 0.417, 150.2, 30.5, Some((777.0, 457.0))),
        (50.0, 30.0, 60.0, 0.417, 347.0, 59.8, Some((1797.0, 897.0))),
        (75.0, 40.0, 55.0, 0.469, 458.0, 79.4, Some((3161.0, 1588.0))),
        (100.0, 20.0, 60.0, 1.25, 4809.0, 409.0, None),
    ] {
        let pad = cylinder(diameter * 1e-3, height * 1e-3, hardness);
        let rates = pad.rates() * 1e-3;
        let what = (diameter, height, hardness);
        assert_close(what, &[pad.shape_factor()], &[shape], 1e-3, 0.0);
        assert_close(what, &[rates.z, rates.x], &[along, across], 2e-3, 0.0);
        assert_close(what, &[rates.y], &[rates.x], 1e-15, 0.0);
        if let Some((pressed, sheared)) = loads {
            let x = Vec3::new(0.5, 0.0, -0.15) * pad.height;
            let force = law(&pad).at(&x).force;
            assert_close(what, &[-force.z, force.x], &[pressed, sheared], 1.5e-3, 0.0);
        }
    }
}

/// Ratings of cylindrical buffers of middle grade are common practice without a source; the
/// heights include both plates. What the formula gives for 57 degrees was computed
/// independently. The lesson is that it misses them by 14 % to 43 %.
#[test]
fn rated_parts_are_missed_by_some_tenths() {
    for (diameter, height, plates, kc, fc, ks, by, by_across) in [
        (20.0, 15.0, 4.0, 190.0, 320.0, 40.0, -0.19, -0.43),
        (40.0, 30.0, 5.0, 300.0, 1110.0, 60.0, -0.14, -0.35),
        (75.0, 25.0, 6.0, 2900.0, 8000.0, 250.0, -0.25, -0.18),
        (75.0, 55.0, 6.0, 400.0, 3000.0, 80.0, 0.14, -0.14),
    ] {
        let pad = cylinder(diameter * 1e-3, (height - plates) * 1e-3, 57.0);
        let rated = fc / (kc * 1e3);
        let force = -law(&pad).at(&Vec3::new(0.0, 0.0, -rated)).force.z;
        let missed = [force / fc - 1.0, pad.rates().x / (ks * 1e3) - 1.0];
        assert_close((diameter, height), &missed, &[by, by_across], 0.0, 0.01);
    }
}
