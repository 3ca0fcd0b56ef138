//! Neither the units of a file nor the order of its sections change what it says.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test that cannot go on has failed"
)]

use bedplate::model::Model;
use bedplate::model::file::read;
use bedplate::model::joint::Joint;
use bedplate::study::evaluate::{Evaluation, evaluate};
use proptest::prelude::*;
use proptest::test_runner::Config;

use crate::diagnostics::GOOD;

/// A unit of the good build, other units for it, and how many of those make one of it.
///
/// Exact by definition: inch 25.4 mm, pound 0.453 592 37 kg, standard free fall
/// 9.806 65 m/s²; the rest follows from these three.
fn others(unit: &str) -> &'static [(&'static str, f64)] {
    const INCH: f64 = 0.0254;
    const POUND: f64 = 0.453_592_37;
    const POUND_FORCE: f64 = POUND * 9.806_65;
    match unit {
        "mm" => &[
            ("in", 1e-3 / INCH),
            ("cm", 0.1),
            ("ft", 1e-3 / (12.0 * INCH)),
            ("m", 1e-3),
        ],
        "kg" => &[("lb", 1.0 / POUND), ("t", 1e-3), ("g", 1e3)],
        "kg m2" => &[("lb in2", 1.0 / (POUND * INCH * INCH)), ("kg mm2", 1e6)],
        "N/mm" => &[
            ("lbf/in", 1e3 * INCH / POUND_FORCE),
            ("N/m", 1e3),
            ("kN/m", 1.0),
        ],
        "kN/mm" => &[("lbf/in", 1e6 * INCH / POUND_FORCE), ("N/m", 1e6)],
        "N m" => &[
            ("lbf ft", 1.0 / (POUND_FORCE * 12.0 * INCH)),
            ("kgf m", 1.0 / 9.806_65),
        ],
        "kN" => &[("lbf", 1e3 / POUND_FORCE), ("N", 1e3)],
        "rpm" => &[("Hz", 1.0 / 60.0)],
        "Hz" => &[("rpm", 60.0)],
        "deg" => &[("rad", std::f64::consts::PI / 180.0)],
        "g" => &[("m/s2", 9.806_65), ("ft/s2", 9.806_65 / (12.0 * INCH))],
        "MPa" => &[("N/mm2", 1.0), ("ksi", 1e3 * INCH * INCH / POUND_FORCE)],
        "um" => &[("mm", 1e-3), ("thou", 1.0 / 25.4)],
        "kg/m3" => &[("g/cm3", 1e-3), ("lb/in3", INCH * INCH * INCH / POUND)],
        "um/m/K" => &[("1/K", 1e-6), ("uin/in/°F", 5.0 / 9.0)],
        "GPa" => &[("MPa", 1e3), ("psi", 1e9 * INCH * INCH / POUND_FORCE)],
        "%" => &[("", 0.01)],
        _ => &[],
    }
}

/// The good build with every value in a unit that `pick` chooses; also how many were changed.
fn in_other_units(pick: &mut impl FnMut(usize) -> usize) -> (String, usize) {
    let mut out = String::new();
    let mut changed = 0;
    for (place, piece) in GOOD.split('"').enumerate() {
        if place > 0 {
            out.push('"');
        }
        // Every second piece stands between quotes; the notes in three quotes hold no unit.
        match (place % 2 == 1)
            .then(|| in_another_unit(piece, pick))
            .flatten()
        {
            Some(other) => {
                out += &other;
                changed += 1;
            }
            None => out += piece,
        }
    }
    (out, changed)
}

fn in_another_unit(text: &str, pick: &mut impl FnMut(usize) -> usize) -> Option<String> {
    let unit_at = text.find(|c: char| c.is_alphabetic() || c == '%')?;
    let (numbers, unit) = text.split_at(unit_at);
    let others = others(unit);
    let numbers: Vec<f64> = numbers
        .split(',')
        .map(|number| number.trim().parse().ok())
        .collect::<Option<_>>()?;
    let (unit, factor) = *others.get(pick(others.len() + 1))?;
    let numbers: Vec<String> = numbers
        .iter()
        .map(|number| format!("{:e}", number * factor))
        .collect();
    Some(format!("{} {unit}", numbers.join(", ")))
}

fn model(text: &str) -> Model {
    read(text.as_bytes())
        .unwrap_or_else(|problems| panic!("{problems:#?}\n{text}"))
        .model
}

/// Every number of an evaluation that a reader sees, in a fixed order, each with the size below which it is nothing.
fn numbers(model: &Model, evaluation: &Evaluation) -> Vec<(String, f64, f64)> {
    let mut all = Vec::new();
    let mut put = |name: String, value: f64, nothing: f64| all.push((name, value, nothing));
    for result in &evaluation.loads {
        let name = &model.loads[result.load].name;
        for (axis, value) in result.applied.vector().iter().enumerate() {
            put(format!("{name}: applied {axis}"), *value, 1.0);
        }
        let found = result
            .outcome
            .as_ref()
            .unwrap_or_else(|failure| panic!("{name}: {failure}"));
        for axis in 0..3 {
            put(
                format!("{name}: displacement {axis}"),
                found.displacement[axis],
                1e-3,
            );
            put(
                format!("{name}: rotation {axis}"),
                found.rotation.scaled_axis()[axis],
                1e-3,
            );
            for (mount, state) in found.mounts.iter().enumerate() {
                put(
                    format!("{name}: force {mount} {axis}"),
                    state.force_on_powertrain[axis],
                    1e3,
                );
                put(
                    format!("{name}: deflection {mount} {axis}"),
                    state.deflection[axis],
                    1e-3,
                );
            }
        }
        for (gap, value) in result.gaps.iter().enumerate() {
            put(format!("{name}: gap {gap}"), value.unwrap_or(-1.0), 1e-3);
        }
    }
    for joint in &model.joints {
        for (what, value) in sizes(joint) {
            put(format!("{}: {what}", joint.name), value, 1e-3);
        }
    }
    for rail in &model.rails {
        let name = format!("rail {}", rail.name);
        put(format!("{name} wall"), rail.wall, 1e-3);
        put(format!("{name} size"), rail.profile.smallest(), 1e-3);
        put(format!("{name} density"), rail.material.density, 1.0);
        put(format!("{name} expansion"), rail.material.expansion, 1e-9);
        put(format!("{name} yield"), rail.material.yield_strength, 1.0);
    }
    for at in &evaluation.modes {
        for (number, mode) in at.solution.modes.iter().enumerate() {
            let name = format!("{}: mode {number}", model.loads[at.load].name);
            put(format!("{name} frequency"), mode.frequency_hz, 1.0);
            put(format!("{name} damping"), mode.damping_ratio, 1e-2);
        }
    }
    for check in &evaluation.checks {
        put(
            format!("check {}", check.id),
            check.value.unwrap_or(-1.0),
            1e-3,
        );
        put(
            format!("check {} limit", check.id),
            check.limit.unwrap_or(-1.0),
            1e-3,
        );
    }
    all
}

/// What a file says of a joint with units; none where it says nothing.
fn sizes(joint: &Joint) -> Vec<(&'static str, f64)> {
    let mut all = vec![
        ("hole", joint.bolt.hole),
        ("roughness", joint.bolt.roughness * 1e3),
        ("torque", joint.bolt.torque.unwrap_or(-1.0)),
        ("offset", joint.offset.norm()),
        ("first bolt", joint.pattern[0][0]),
    ];
    if let Some(rail) = joint.base.rail() {
        all.push(("depth", rail.depth));
        all.push(("edge", rail.edge.unwrap_or(-1.0)));
    }
    if let Some(plate) = &joint.plate {
        all.push(("plate", plate.thickness));
        all.push(("length", plate.length));
        all.push(("width", plate.width));
    }
    if let Some(sleeve) = &joint.sleeve {
        all.push(("sleeve", sleeve.length));
        all.push(("gap", sleeve.gap));
        all.push(("shoulder", sleeve.shoulder.map_or(-1.0, |one| one.diameter)));
    }
    if let Some(weld) = &joint.weld {
        all.push(("throat", weld.fillet.throat));
    }
    all
}

fn assert_same(first: &str, second: &str, tolerance: f64) {
    let [(a, one), (b, two)] = [first, second].map(|text| {
        let model = model(text);
        let evaluation = evaluate(&model).unwrap();
        (model, evaluation)
    });
    let (one, two) = (numbers(&a, &one), numbers(&b, &two));
    assert!(one.len() > 300, "{}", one.len());
    assert_eq!(one.len(), two.len());
    for ((name, x, nothing), (other, y, _)) in one.iter().zip(&two) {
        assert_eq!(name, other);
        let allowed = tolerance * x.abs().max(*nothing);
        assert!((x - y).abs() <= allowed, "{name}: {x} and {y}");
    }
}

#[test]
fn every_value_of_the_good_build_can_be_written_in_other_units() {
    let mut largest = |count: usize| count.saturating_sub(2);
    let (_, changed) = in_other_units(&mut largest);
    assert!(changed > 60, "{changed}");
}

proptest! {
    #![proptest_config(Config { cases: 12, ..Config::default() })]

    #[test]
    fn other_units_give_the_same_evaluation(picks in prop::collection::vec(0_usize..12, 100)) {
        let mut next = picks.iter().cycle();
        let mut pick = |count: usize| next.next().unwrap() % count.max(1);
        let (text, _) = in_other_units(&mut pick);
        assert_same(GOOD, &text, 1e-9);
    }

    #[test]
    fn the_order_of_sections_does_not_matter(keys in prop::collection::vec(any::<u32>(), 60)) {
        assert_same(GOOD, &shuffled(&keys), 1e-12);
    }
}

/// The good build with its sections in another order; those of one list stay in order among themselves, since that order is the order of the results.
fn shuffled(keys: &[u32]) -> String {
    let (head, rest) = GOOD.split_once("\n[").unwrap();
    let sections: Vec<String> = rest
        .split("\n[")
        .map(|section| format!("\n[{section}\n"))
        .collect();
    let header = |section: &String| section.lines().nth(1).unwrap().to_owned();
    let mut order: Vec<usize> = (0..sections.len()).collect();
    order.sort_by_key(|&place| keys[place]);
    let mut lists: std::collections::BTreeMap<String, Vec<&String>> = Default::default();
    for section in &sections {
        let group = list_of(header(section));
        lists.entry(group).or_default().push(section);
    }
    for list in lists.values_mut() {
        list.reverse();
    }
    let mut text = head.to_owned() + "\n";
    for place in order {
        let group = list_of(header(&sections[place]));
        text += lists.get_mut(&group).unwrap().pop().unwrap();
    }
    text
}

/// The list that a section is one of, by its header: `[rail.main]` is one of the rails.
fn list_of(header: String) -> String {
    match header.split_once('.') {
        Some((list, _)) => list.to_owned(),
        None => header,
    }
}
