//! What the years, heat, a pull and a twisting frame do to the level build of `verdicts`.
//!
//! 150 kg on four pads of 400 N/mm along w at (±300, ±250, 0) mm: sag 0.91937 mm.

use bedplate::study::check::Verdict;
use bedplate::study::evaluate::{Evaluation, evaluate};

use super::verdicts::{SAG, checks, find, level};
use crate::kit::{assert_close, model};

const RATE: f64 = 400e3;

fn evaluated(isolator: &str, more: &str) -> Evaluation {
    evaluate(&model(&level(isolator, more))).unwrap()
}

/// Derived: with one corner of the chassis raised by δ the body follows by
/// δ/4 at its centre and half of what is left by turning, so that each of the
/// four pads keeps a quarter of it: ±k δ/4, up at the raised pad and at the one
/// across from it.
#[test]
fn a_raised_corner_loads_all_four_pads_alike() {
    let found = evaluated(
        "",
        "[[load]]\nname = \"twist\"\nchassis_twist = { mount = \"a\", by = \"0, 0, 2 mm\" }\n",
    );
    let forces = |name: usize| -> Vec<f64> {
        let loaded = found.loads[name].outcome.as_ref().unwrap();
        let forces = loaded.mounts.iter();
        forces.map(|mount| mount.force_on_powertrain.z).collect()
    };
    let twisted = found.loads.len() - 1;
    let change = RATE * 2e-3 / 4.0;
    let rest = 150.0 * 9.80665 / 4.0;
    let expected = [1.0, -1.0, -1.0, 1.0].map(|sign: f64| rest + sign * change);
    assert_close("forces", &forces(twisted), &expected, 1e-4, 0.0);
    assert_close("rest", &forces(0), &[rest; 4], 1e-9, 0.0);
}

/// Derived as above for 1 mm: 100 N against the weight of 1471 N; on pads a
/// hundred times as stiff it is 10 kN, which cracks casings.
#[test]
fn stiff_mounts_make_the_powertrain_a_part_of_the_frame() {
    let soft = checks("", "");
    let check = find(&soft, "frame-twist");
    assert_close("soft", &[check.value.unwrap()], &[100.0], 1e-4, 0.0);
    assert_close("limit", &[check.limit.unwrap()], &[1470.9975], 1e-9, 0.0);
    assert_eq!(check.verdict, Verdict::Ok);
    let text = level("", "").replace("200, 200, 400 N/mm", "20, 20, 40 kN/mm");
    let stiff = evaluate(&model(&text)).unwrap().checks;
    let check = find(&stiff, "frame-twist");
    assert_close("stiff", &[check.value.unwrap()], &[10_000.0], 1e-4, 0.0);
    assert_eq!(check.verdict, Verdict::Over);
    assert!(check.advisory && check.cure.is_some());
    let other = checks("", "[targets]\nframe_twist = \"3 mm\"\n");
    let check = find(&other, "frame-twist");
    assert_close("stated", &[check.value.unwrap()], &[300.0], 1e-4, 0.0);
}

const SUMP: &str = "[[point]]\nname = \"sump\"\nat = \"100, 0, -200 mm\"\n\
     [[clearance]]\nname = \"sump to crossmember\"\npoint = \"sump\"\ntoward = \"0, 0, -1\"\ngap = \"20 mm\"\nkeep = \"10 mm\"\n";

/// Derived: rubber that creeps by half of its deflection at rest sinks by half
/// of the sag; the gap below the sump loses as much, beside the pothole's 5 SAG.
#[test]
fn creep_takes_from_a_gap_below() {
    let found = evaluated("creep = \"50 %\"", SUMP);
    let creep = found.creep.as_ref().unwrap();
    assert_close("sinks", &[creep.displacement.z], &[-SAG / 2.0], 1e-9, 0.0);
    assert_close("lost", &creep.gaps_lost, &[SAG / 2.0], 1e-9, 0.0);
    let check = find(&found.checks, "clearance.sump-to-crossmember");
    let expected = 20e-3 - 5.0 * SAG - SAG / 2.0;
    assert_close("gap", &[check.value.unwrap()], &[expected], 1e-6, 0.0);
    assert!(check.title.contains("creeps"), "{}", check.title);
    let none = evaluated("creep = 0", SUMP);
    assert!(none.creep.is_none());
    let check = find(&none.checks, "clearance.sump-to-crossmember");
    let expected = 20e-3 - 5.0 * SAG;
    assert_close("as new", &[check.value.unwrap()], &[expected], 1e-6, 0.0);
}

/// Creep away from an obstacle is no reason to come nearer to it as new.
#[test]
fn creep_gives_nothing_to_a_gap_above() {
    let above = SUMP.replace("toward = \"0, 0, -1\"", "toward = \"0, 0, 1\"");
    let new = find(
        &evaluated("creep = 0", &above).checks,
        "clearance.sump-to-crossmember",
    )
    .value;
    let old = evaluated("creep = 1.0", &above);
    let old = find(&old.checks, "clearance.sump-to-crossmember").value;
    assert_close("gap", &[new.unwrap()], &[old.unwrap()], 0.0, 1e-12);
}

/// Common practice: natural rubber lasts to 80 °C, so that 95 °C is over; a limit of the file can fail.
#[test]
fn a_hot_place_is_told() {
    let hot = |isolator: &str, degrees: f64| {
        let text = level(isolator, "").replace(
            "isolator = \"pad\"\n[[mount]]\nname = \"b\"",
            &format!("isolator = \"pad\"\ntemperature = \"{degrees} °C\"\n[[mount]]\nname = \"b\""),
        );
        evaluate(&model(&text)).unwrap().checks
    };
    let found = hot("", 95.0);
    assert_eq!(find(&found, "heat.a").verdict, Verdict::Over);
    assert_eq!(find(&hot("", 70.0), "heat.a").verdict, Verdict::Ok);
    let own = hot("heat_limit = \"90 °C\"", 95.0);
    assert_eq!(find(&own, "heat.a").verdict, Verdict::Fails);
    assert!(found.iter().all(|check| check.id != "heat.b"));
}

/// Derived: hoisted by 8 kN more than its weight, each upper stop of 4 kN/mm holds 2 kN, for which it gives way by
/// 2 kN/(4 kN/mm) and half of its blend of 0.5 mm: 0.75 mm beyond 5 mm.
#[test]
fn a_loose_pad_lifts_off() {
    let hoist = |kilonewtons: f64, class: &str| {
        format!(
            "[[point]]\nname = \"eye\"\nat = \"0, 0, 300 mm\"\n[[load]]\nname = \"hoist\"\nclass = \"{class}\"\napply = [{{ point = \"eye\", force = \"0, 0, {kilonewtons} kN\" }}]\n"
        )
    };
    let held = checks("tension = \"none\"", &hoist(1.0, "service"));
    let check = find(&held, "lift.a");
    assert_eq!(check.verdict, Verdict::Ok, "1 kN is less than its weight");

    let caught = "tension = \"none\"\nstops = { w = [\"-20 mm\", \"5 mm\"], rate = \"4 kN/mm\", blend = \"0.5 mm\" }";
    let lifted = |class: &str| checks(caught, &hoist(8.0 + 0.15 * 9.80665, class));
    let found = lifted("service");
    let risen = 5.75e-3;
    for name in ["lift.a", "stop.a"] {
        let check = find(&found, name);
        assert_eq!(check.verdict, Verdict::Over, "{name}: advice in service");
        assert_close(name, &[check.value.unwrap()], &[risen], 1e-6, 0.0);
    }
    let cure = find(&found, "lift.a").cure.as_deref().unwrap();
    assert!(!cure.contains("upper stop"), "it has one: {cure}");

    for class in ["durability", "extreme"] {
        let found = lifted(class);
        let check = find(&found, "hard-lift.a");
        assert_eq!(check.verdict, Verdict::Ok, "{class}");
        assert_eq!(check.note.as_deref(), Some("rises to its stop"));
        assert_close(class, &[check.value.unwrap()], &[risen], 1e-6, 0.0);
        assert!(check.limit.is_none() && check.cure.is_none());
        assert!(found.iter().all(|check| check.id != "hard-stop.a"));
        assert_eq!(find(&found, "lift.a").verdict, Verdict::Ok, "{class}");
    }
}

/// Derived: rebound at -1.5 g leaves -0.5 of the weight: nothing but a stop holds a loose pad then. The stop at 5 mm
/// may be touched; without one there is no position.
#[test]
fn a_loose_pad_without_a_stop_over_it_has_no_position_when_it_lifts() {
    let found = checks("tension = \"none\"", "");
    assert_eq!(find(&found, "held.rebound").verdict, Verdict::Fails);
    let found = checks(
        "tension = \"none\"\nstops = { w = [\"-20 mm\", \"5 mm\"] }",
        "",
    );
    assert_eq!(find(&found, "hard-lift.a").verdict, Verdict::Ok);
    assert!(found.iter().all(|check| check.id != "hard-stop.a"));
}

/// Derived: hoisted by 4 kN a bonded pad of 30 mm is pulled by 2529 N/(4 · 400 N/mm) = 1.58 mm, more than the 5 % that
/// rubber bears; a loose one has risen to its stop at 5 mm and is not pulled at all.
#[test]
fn what_has_lifted_off_is_not_pulled() {
    let hoist = "[[point]]\nname = \"eye\"\nat = \"0, 0, 300 mm\"\n[[load]]\nname = \"hoist\"\nclass = \"extreme\"\napply = [{ point = \"eye\", force = \"0, 0, 4 kN\" }]\n";
    let pad = |tension: &str| {
        let text = level("", hoist).replace(
            "kind = \"rates\"",
            &format!("kind = \"block\"\nblock = \"60, 60, 30 mm\"\nhardness = \"60 Shore A\"\ntension = \"{tension}\"\nstops = {{ w = [\"none\", \"5 mm\"], rate = \"4 kN/mm\" }}"),
        );
        let text = text.replace(
            "rates = \"200, 200, 400 N/mm\"",
            "measured_rates = \"200, 200, 400 N/mm\"",
        );
        let found = evaluate(&model(&text)).unwrap().checks;
        find(&found, "strain.a").title.clone()
    };
    assert!(!pad("none").contains("pulled"), "{}", pad("none"));
    assert!(pad("allowed").contains("pulled"), "{}", pad("allowed"));
}

/// Derived: rubber at 70 °C has 0.9 of its rate (common practice), aged by 1.2: 1.08 of it, and sags less by that.
#[test]
fn heat_softens_and_age_hardens() {
    let found = evaluated("temperature = \"70 °C\"\nage_factor = 1.2", "");
    let rest = found.loads[0].outcome.as_ref().unwrap();
    assert_close("sag", &[-rest.displacement.z], &[SAG / 1.08], 1e-9, 0.0);
}
