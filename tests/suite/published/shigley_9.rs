//! R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th ed., McGraw-Hill,
//! 2011: table 8-2, sections 8-2 to 8-12.
//!
//! Forces in kip, stresses in ksi, lengths in inches, as printed.

use bedplate::model::fastener::{Grade, Thread};
use bedplate::spatial::{Vec3, Wrench};
use bedplate::strength::bolt::endurance::Endurance;
use bedplate::strength::bolt::fatigue::amplitude;
use bedplate::strength::bolt::load_share::{Preloaded, load_factor};
use bedplate::strength::bolt::stiffness_models::{
    Fitted, cone_layer_resilience, fitted_resilience, short_resilience,
};
use bedplate::strength::bolt::tightening::{Friction, nut_factor, torque};
use bedplate::strength::pattern::Pattern;

use crate::kit::assert_close;

const IN: f64 = 25.4e-3;
const KIP: f64 = 4_448.221_615_260_5;
const KSI: f64 = KIP / (IN * IN);
/// 30 degrees, the half angle of the cone in this book.
const CONE: f64 = std::f64::consts::FRAC_PI_6;

fn thread(name: &str) -> Thread {
    Thread::find(name).unwrap_or_else(|| panic!("{name} is not known"))
}

/// Rate in Mlbf/in of layers: diameter of entry, thickness, modulus in Mpsi; hole in inches.
fn rate(hole: f64, layers: &[[f64; 3]]) -> f64 {
    let resilience: f64 = layers
        .iter()
        .map(|[entry, thickness, modulus]| {
            cone_layer_resilience(
                entry * IN,
                hole * IN,
                thickness * IN,
                CONE,
                modulus * 1e3 * KSI,
            )
        })
        .sum();
    IN / (resilience * 1e3 * KIP)
}

/// Published, table 8-2, in²; the last three from memory of the same table.
#[test]
fn tensile_stress_areas_of_inch_threads() {
    for (name, area) in [
        ("1/4 UNC", 0.0318),
        ("1/4 UNF", 0.0364),
        ("5/16 UNC", 0.0524),
        ("5/16 UNF", 0.0580),
        ("3/8 UNC", 0.0775),
        ("3/8 UNF", 0.0878),
        ("7/16 UNC", 0.1063),
        ("7/16 UNF", 0.1187),
        ("1/2 UNC", 0.1419),
        ("1/2 UNF", 0.1599),
        ("9/16 UNC", 0.182),
        ("5/8 UNC", 0.226),
        ("3/4 UNF", 0.373),
    ] {
        let found = thread(name).stress_area() / (IN * IN);
        assert_close(name, &[found], &[area], 2e-3, 1e-5);
    }
}

/// Published, p. 426: length of thread of a bolt 40 mm, 150 mm, 250 mm long, and in inches.
#[test]
fn length_of_thread() {
    for (name, length, expected) in [
        ("M10", 0.04, 26e-3),
        ("M10", 0.15, 32e-3),
        ("M10", 0.25, 45e-3),
        ("1/2 UNF", 1.5 * IN, 1.25 * IN),
        ("1/2 UNF", 7.0 * IN, 1.5 * IN),
    ] {
        assert_close(
            (name, length),
            &[thread(name).length_on(length)],
            &[expected],
            1e-12,
            0.0,
        );
    }
}

/// Example 8-2, p. 431: geometry published, results from memory. 1/2-20 UNF × 1.5, washer 0.095,
/// steel 1/2 and cast iron 3/4; all of steel 14.64, by the fit 14.92, bolt 3.69 Mlbf/in.
#[test]
fn rates_of_plates_of_two_metals() {
    let steel = [0.75, 0.595, 30.0];
    let upper = [1.437, 0.0775, 14.5];
    let lower = [0.75, 0.6725, 14.5];
    let whole = [0.75, 0.6725, 30.0];
    let fitted =
        IN / (fitted_resilience(Fitted::Steel, 0.5 * IN, 1.345 * IN, 30e3 * KSI) * 1e3 * KIP);
    let bolt = thread("1/2-20");
    let threaded = bolt.length_on(1.5 * IN);
    let plain = 1.5 * IN - threaded;
    let short = short_resilience(
        bolt.nominal,
        bolt.stress_area(),
        plain,
        1.345 * IN - plain,
        30e3 * KSI,
    );
    for (what, found, expected) in [
        ("steel", rate(0.5, &[steel]), 30.80),
        ("upper iron", rate(0.5, &[upper]), 285.5),
        ("lower iron", rate(0.5, &[lower]), 14.15),
        ("members", rate(0.5, &[steel, upper, lower]), 9.378),
        ("all of steel", rate(0.5, &[whole, whole]), 14.64),
        ("fit", fitted, 14.92),
        ("bolt", IN / (short * 1e3 * KIP), 3.69),
    ] {
        assert_close(what, &[found], &[expected], 4e-3, 0.0);
    }
}

/// Example 8-3, p. 439, published: 3/4-16, preload 25 kip, load 6 kip, kb 6.50, km 13.8. The torque
/// of the long form, 3551 lbf in at friction 0.15 on a collar of 1.25 d, is from memory.
#[test]
fn bolt_with_known_rates() {
    let bolt = thread("3/4-16");
    let share = load_factor(1.0, 1.0 / 6.50, 1.0 / 13.8);
    let joint = Preloaded {
        preload: 25.0,
        load_factor: share,
    };
    let area = bolt.stress_area() / (IN * IN);
    let tightening = torque(&bolt, 1.25 * bolt.nominal, 25.0 * KIP, Friction::same(0.15));
    for (what, found, expected) in [
        ("preload stress", 25.0 / area, 67.02),
        ("share", share, 0.320),
        ("stress", joint.bolt_force(6.0) / area, 72.17),
        ("torque", tightening / (KIP * IN) * 1e3, 3551.0),
    ] {
        assert_close(what, &[found], &[expected], 2e-3, 0.0);
    }
    // K d F with K 0.2 is 3750 lbf in.
    let factor = nut_factor(3.750 * KIP * IN, 25.0 * KIP, bolt.nominal);
    assert_close("K", &[factor], &[0.2], 1e-12, 0.0);
}

/// Example 8-4, from memory: 5/8-11, grip 1.5, half of it thread, E 30 and 14 Mpsi, 36 kip on six
/// bolts of grade 5 preloaded to 75 % of proof.
#[test]
fn cylinder_head_with_six_bolts() {
    let bolt = thread("5/8-11");
    let short = short_resilience(
        bolt.nominal,
        bolt.stress_area(),
        0.75 * IN,
        0.75 * IN,
        30e3 * KSI,
    );
    let bolt_rate = IN / (short * 1e3 * KIP);
    let cone = [1.5 * 0.625, 0.75, 14.0];
    let members = rate(0.625, &[cone, cone]);
    let share = load_factor(1.0, 1.0 / bolt_rate, 1.0 / members);
    let limits = Grade::find("grade 5")
        .unwrap()
        .limits(bolt.nominal)
        .unwrap();
    let proof = limits.proof * bolt.stress_area() / KIP;
    let joint = Preloaded {
        preload: 0.75 * proof,
        load_factor: share,
    };
    for (what, found, expected) in [
        ("bolt", bolt_rate, 5.21),
        ("members", members, 8.95),
        ("share", share, 0.368),
        ("overload", 0.25 * proof / (share * 6.0), 2.18),
        ("yielding", proof / joint.bolt_force(6.0), 1.16),
        ("separation", joint.separation_load() / 6.0, 3.80),
    ] {
        assert_close(what, &[found], &[expected], 1e-2, 0.0);
    }
}

/// Example 8-5, p. 448-449, published: 5/8-11 screw of grade 5, steel on cast iron of 16 Mpsi,
/// load 0 to 5 kip, preload 75 % of proof.
#[test]
fn screw_under_a_load_that_comes_and_goes() {
    let (upper, middle, lower) = (
        [0.9375, 0.5, 30.0],
        [1.298, 0.1875, 30.0],
        [0.9375, 0.3125, 16.0],
    );
    let members = rate(0.625, &[upper, middle, lower]);
    let bolt = thread("5/8-11");
    // Threaded to the head: the whole grip of one inch has the stress area.
    let short = short_resilience(bolt.nominal, bolt.stress_area(), 0.0, IN, 30e3 * KSI);
    let share = load_factor(1.0, short, IN / (members * 1e3 * KIP));
    let limits = Grade::find("grade 5")
        .unwrap()
        .limits(bolt.nominal)
        .unwrap();
    let (proof, tensile) = (limits.proof / KSI, limits.tensile / KSI);
    let area = bolt.stress_area() / (IN * IN);
    let joint = Preloaded {
        preload: 0.75 * proof * area,
        load_factor: share,
    };
    let lines = Endurance {
        limit: 18.6,
        tensile,
        proof,
        preload: 0.75 * proof,
    };
    for (what, found, expected) in [
        ("upper", rate(0.625, &[upper]), 46.46),
        ("middle", rate(0.625, &[middle]), 197.43),
        ("members", members, 17.40),
        ("share", share, 0.280),
        ("yielding", proof * area / joint.bolt_force(5.0), 1.22),
        ("overload", 0.25 * proof * area / (share * 5.0), 3.44),
        ("separation", joint.separation_load() / 5.0, 4.00),
        ("amplitude", amplitude(share, 5.0, 0.0, area), 3.10),
        ("Goodman", lines.goodman(), 7.55),
        ("Gerber", lines.gerber(), 11.32),
    ] {
        assert_close(what, &[found], &[expected], 1e-2, 0.0);
    }
}

/// Example 8-7, p. 458, published: four bolts at (±75, ±60) mm, 16 kN down 425 mm beside them.
#[test]
fn bracket_with_four_bolts() {
    let places = [[75.0, 60.0], [75.0, -60.0], [-75.0, 60.0], [-75.0, -60.0]];
    let pattern = Pattern::new(&places.map(|place| place.map(|mm| mm * 1e-3))).unwrap();
    let load = Wrench::of_force_at(Vec3::new(0.0, -16e3, 0.0), Vec3::new(0.425, 0.0, 0.0));
    let shared = pattern.about_centre(&load);
    let sizes: Vec<f64> = shared.bolts.iter().map(|bolt| bolt.shear_size()).collect();
    assert_close(
        "bolts",
        &sizes,
        &[21.0e3, 21.0e3, 14.8e3, 14.8e3],
        5e-3,
        0.0,
    );
    assert_close("untaken", &shared.untaken, &[0.0; 3], 0.0, 1e-9);
}
