//! What an engine of the model file does to its block.

use bedplate::drive::excitation::{Harmonic, Load, acts_at, cogging_order, harmonics};
use bedplate::model::drivetrain::Engine;
use std::f64::consts::{PI, TAU};

use crate::kit::{assert_close, four_mounts_and, model};

fn engine(keys: &str) -> Engine {
    model(&four_mounts_and(&format!("[engine]\n{keys}")))
        .engine
        .unwrap()
}

/// Lengthwise, clockwise seen from the front.
fn piston(cylinders: u32, keys: &str) -> Engine {
    engine(&format!(
        "cycle = \"four-stroke\"\ncylinders = {cylinders}\ncrank_direction = \"-1, 0, 0\"\n{keys}"
    ))
}

fn at(found: &[Harmonic], order: f64) -> Harmonic {
    let same = |harmonic: &&Harmonic| (harmonic.order - order).abs() < 1e-9;
    *found.iter().find(same).unwrap()
}

fn orders(found: &[Harmonic]) -> Vec<f64> {
    found.iter().map(|harmonic| harmonic.order).collect()
}

fn rpm(speed: f64) -> f64 {
    speed * PI / 30.0
}

const ROAD: &str =
    "bore = \"86 mm\"\nstroke = \"86 mm\"\nrod = \"143.5 mm\"\nreciprocating_mass = \"0.55 kg\"\n";

/// Computed independently with the leading terms λ and 1/2; the exact ones are 1 + λ²/4 and 1 + λ⁴/16 times that.
#[test]
fn second_order_of_a_road_engine_with_four_in_line() {
    let ratio: f64 = 43.0 / 143.5;
    for (speed, force, torque) in [(6000.0, 11_191.0, 802.95), (750.0, 174.9, 12.55)] {
        let found = harmonics(&piston(4, ROAD), rpm(speed), Load::IDLE);
        let second = at(&found, 2.0);
        let series = 1.0 + ratio.powi(2) / 4.0 + 15.0 * ratio.powi(4) / 128.0;
        assert_close("force", &[second.force.z.re / series], &[force], 5e-4, 0.0);
        assert_close(
            "aside",
            &[second.force.x.norm(), second.force.y.norm()],
            &[0.0; 2],
            0.0,
            1e-9,
        );
        let roll = second.moment.x;
        // Inertia torque −T₂ sin 2θ on the crank, whose direction is −x; the block feels the opposite.
        assert_close(
            "roll",
            &[roll.re, roll.im / (1.0 + ratio.powi(4) / 16.0)],
            &[0.0, torque],
            5e-4,
            1e-9,
        );
        let couples = [second.moment.y.norm(), second.moment.z.norm()];
        assert_close("couples", &couples, &[0.0; 2], 0.0, 1e-9);
    }
}

/// Derived: equal pulses N/2 a turn leave the multiples of that order alone, each N times one cylinder.
#[test]
fn even_firing_leaves_multiples_of_the_firing_order_alone() {
    for (cylinders, first) in [(3, 1.5), (4, 2.0), (5, 2.5), (6, 3.0)] {
        let keys = "bore = \"86 mm\"\nstroke = \"86 mm\"\nfull_pressure = \"900 kPa\"\n";
        let one = harmonics(&piston(1, keys), 100.0, Load::FULL);
        let all = harmonics(&piston(cylinders, keys), 100.0, Load::FULL);
        let expected: Vec<f64> = (1..)
            .map(|times| first * f64::from(times))
            .take_while(|order| *order <= 12.0)
            .collect();
        assert_close(cylinders, &orders(&all), &expected, 0.0, 1e-12);
        for order in expected {
            let (one, all) = (at(&one, order).moment.x, at(&all, order).moment.x);
            let off = (all - one * f64::from(cylinders)).norm();
            assert!(off < 1e-9 * all.norm(), "{cylinders}, {order}: {off}");
        }
    }
}

/// Derived: a missing pulse is minus that pulse beside all of them, so orders that had
/// cancelled have the size of what one cylinder lacks.
#[test]
fn a_dead_cylinder_brings_half_orders() {
    let keys = "bore = \"86 mm\"\nstroke = \"86 mm\"\nfull_pressure = \"900 kPa\"\n";
    let dead = format!("{keys}dead_cylinder = 3\n");
    let found = harmonics(&piston(4, &dead), 100.0, Load::FULL);
    let one = harmonics(&piston(1, keys), 100.0, Load::FULL);
    let idle = harmonics(
        &piston(1, &format!("{keys}dead_cylinder = 1\n")),
        100.0,
        Load::FULL,
    );
    for order in [0.5, 1.0, 1.5, 2.5] {
        // Cylinder 3 fires second of 1-3-4-2, half a turn on.
        let lag = nalgebra::Complex::from_polar(1.0, -order * PI);
        let lacks = (at(&idle, order).moment.x - at(&one, order).moment.x) * lag;
        let off = (at(&found, order).moment.x - lacks).norm();
        assert!(off < 1e-9 * lacks.norm(), "{order}: {off}");
    }
}

/// Derived: an idle estimate, 30 N m of indicated torque from 2 l are 188.5 kPa. Computed
/// independently: 2.5 times that at second order, less the inertia part.
#[test]
fn gas_and_inertia_of_four_in_line_work_against_each_other() {
    let gas = "bore = \"86 mm\"\nstroke = \"86 mm\"\nrod = \"153.57 mm\"\nidle_pressure = \"188.7 kPa\"\nfull_pressure = \"900 kPa\"\nidle_inlet = \"37.7 kPa\"\n";
    let only = harmonics(&piston(4, gas), rpm(750.0), Load::IDLE);
    let both = format!("{gas}reciprocating_mass = \"0.55 kg\"\n");
    let both = harmonics(&piston(4, &both), rpm(750.0), Load::IDLE);
    let (gas, both) = (at(&only, 2.0).moment.x, at(&both, 2.0).moment.x);
    assert!((60.0..110.0).contains(&gas.norm()), "{gas}");
    // Not the difference of the amplitudes, but near it.
    let less = gas.norm() - both.norm();
    assert!((8.0..12.6).contains(&less), "{less}");
}

/// Derived: the choice of the turn in which each cylinder fires is the most even one.
#[test]
fn a_narrow_vee_on_one_pin_fires_unevenly() {
    let twin = piston(
        2,
        "bank_angle = \"45 deg\"\npins = \"0, 0 deg\"\nfiring_order = \"1-2\"\nbore = \"86 mm\"\nstroke = \"86 mm\"\nfull_pressure = \"900 kPa\"\n",
    );
    let firing = twin.shaking.unwrap().gas.unwrap().firing;
    assert_close(
        "firing",
        &firing,
        &[0.0, 405.0_f64.to_radians()],
        1e-12,
        0.0,
    );
}

/// Derived: pins follow from even firing, the throws of a six mirror each other.
#[test]
fn pins_follow_from_the_usual_firing_order() {
    let six = piston(6, ROAD).shaking.unwrap().reciprocating.unwrap();
    let pins: Vec<f64> = six
        .cylinders
        .iter()
        .map(|c| c.pin.to_degrees().rem_euclid(360.0).round())
        .collect();
    assert_close(
        "pins",
        &pins,
        &[0.0, 240.0, 120.0, 120.0, 240.0, 0.0],
        0.0,
        1e-9,
    );
    let places: Vec<f64> = six
        .cylinders
        .iter()
        .map(|cylinder| cylinder.place)
        .collect();
    let pitch = 1.2 * 0.086;
    assert_close(
        "places",
        &places[..2],
        &[-2.5 * pitch, -1.5 * pitch],
        1e-12,
        0.0,
    );
}

/// Derived: the weights take the part of a three-cylinder moment that turns with the crank,
/// a shaft the other.
#[test]
fn weights_and_shafts_take_away_what_turns_with_and_against_the_crank() {
    let speed = 300.0;
    let couple = 0.55 * 0.043 * speed * speed * 1.2 * 0.086;
    for (keys, expected) in [
        ("counterweight = 0\n", 2.0 * 0.866_025_4),
        ("counterweight = 0.5\n", 1.5 * 0.866_025_4),
        ("", 0.866_025_4),
        ("balance_shafts = [1]\n", 0.0),
    ] {
        let found = harmonics(&piston(3, &format!("{ROAD}{keys}")), speed, Load::IDLE);
        let first = found
            .iter()
            .find(|harmonic| (harmonic.order - 1.0).abs() < 1e-9);
        // Amplitudes along pitch and yaw are sum and difference of the two parts.
        let found = first.map_or(0.0, |h| (h.moment.y.norm()).max(h.moment.z.norm()));
        assert_close(keys, &[found], &[expected * couple], 1e-6, 1e-9);
    }
    let keys = format!("{ROAD}balance_shafts = [2]\n");
    let found = harmonics(&piston(4, &keys), speed, Load::IDLE);
    assert!(at(&found, 2.0).force.norm() < 1e-9);
}

/// What the file gives stands as it is, interpolated between idle and full load.
#[test]
fn given_harmonics_replace_the_gas_torque() {
    let four = piston(
        4,
        "cylinders_at = \"100, 0, 50 mm\"\nbore = \"86 mm\"\nstroke = \"86 mm\"\ntorque = \"200 N m\"\nharmonics = [{ order = 2, torque = \"300 N m\", idle_torque = \"75 N m\", phase = \"-30 deg\" }]\n",
    );
    let found = harmonics(&four, 100.0, Load::new(0.2).unwrap());
    assert_close("orders", &orders(&found), &[2.0], 0.0, 0.0);
    let roll = found[0].moment.x;
    assert_close(
        "roll",
        &[roll.norm(), roll.arg()],
        &[120.0, -PI / 6.0],
        1e-12,
        0.0,
    );
    assert_close(
        "at",
        acts_at(&four).unwrap().as_slice(),
        &[0.1, 0.0, 0.05],
        1e-12,
        0.0,
    );
}

/// Derived: G 6.3 at the highest speed, six times the pole pairs, least common multiples by hand.
#[test]
fn an_electric_machine_ripples_cogs_and_turns_out_of_balance() {
    let machine = engine(
        "cycle = \"electric\"\npole_pairs = 4\ncrank_direction = \"0, 1, 0\"\ntorque = \"250 N m\"\nredline = \"12000 rpm\"\nripple = \"4 %\"\nslots = 36\ncogging = \"1.5 N m\"\nrotor_mass = \"20 kg\"\nbalance_grade = \"6.3 mm/s\"\n",
    );
    let found = harmonics(&machine, 2.0 * TAU, Load::new(0.5).unwrap());
    assert_close("orders", &orders(&found), &[1.0, 24.0, 72.0], 0.0, 0.0);
    assert_close("ripple", &[found[1].moment.y.re], &[-5.0], 1e-12, 0.0);
    assert_close("cogging", &[found[2].moment.y.re], &[-1.5], 1e-12, 0.0);
    let force = 20.0 * 6.3e-3 / (200.0 * TAU) * (2.0 * TAU).powi(2);
    // Turning about +y a vector goes from z to x.
    let turns = found[0].force;
    assert_close(
        "upright",
        &[turns.z.re, turns.z.im],
        &[force, 0.0],
        1e-12,
        1e-15,
    );
    assert_close(
        "a quarter on",
        &[turns.x.re, turns.x.im],
        &[0.0, -force],
        1e-12,
        1e-15,
    );
    assert_close(
        "lcm",
        &[cogging_order(12, 4), cogging_order(48, 4)],
        &[24.0, 48.0],
        0.0,
        0.0,
    );
}

/// One pulse a rotor and turn.
#[test]
fn a_rotary_piston_engine_pulses_once_a_rotor_and_turn() {
    let twin = engine(
        "cycle = \"rotary-piston\"\nrotors = 2\ncrank_direction = \"-1, 0, 0\"\ntorque = \"200 N m\"\nripple = 0.9\n",
    );
    let found = harmonics(&twin, 300.0, Load::FULL);
    assert_close("orders", &orders(&found), &[2.0], 0.0, 0.0);
    assert_close("pulse", &[found[0].moment.x.re], &[180.0], 1e-12, 0.0);
}

#[test]
fn nothing_is_said_of_an_engine_of_which_nothing_is_told() {
    assert!(harmonics(&piston(4, ""), 100.0, Load::FULL).is_empty());
    assert!(Load::new(1.1).is_none() && Load::new(f64::NAN).is_none());
}
