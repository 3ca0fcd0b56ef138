//! What holds for every bolted joint of a build.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use bedplate::model::Model;
use bedplate::report::content::joints::cases;
use bedplate::report::content::table::{Cell, Row};
use bedplate::study::check::Verdict;
use bedplate::study::evaluate::{Evaluation, evaluate};
use bedplate::study::joint::requirement::Requirement;
use bedplate::units::Shown;
use proptest::prelude::*;
use proptest::test_runner::Config;

use super::sizes_written::pasted;
use crate::kit::{four_mounts_and, model};

/// A build whose weight, rates and torque are so many times those of another; then so are all reactions and preloads.
fn scaled(times: f64, torque: f64, haul: f64, offset: f64) -> Evaluation {
    let joint = format!(
        "[rail.r]\nsection = \"box\"\nwidth = \"60 mm\"\nheight = \"60 mm\"\nwall = \"3 mm\"\nmaterial = \"S355\"\n\
         [[load]]\nname = \"haul\"\nclass = \"durability\"\nvehicle = \"{haul}, 1, -3 g\"\n\
         [[joint]]\nname = \"j\"\nmount = \"a\"\nrail = \"r\"\nthrough = \"height\"\n\
         offset = \"{offset}, 10, 60 mm\"\npattern = [\"-35, 0 mm\", \"35, 0 mm\"]\n\
         bolt = {{ size = \"M10\", class = \"10.9\", torque = \"{} N m\" }}\n\
         bracket = {{ thickness = \"8 mm\", material = \"S355\" }}\nupright = {{ arm = \"22 mm\" }}\n\
         plate = {{ thickness = \"5 mm\", material = \"S355\", both_sides = true }}\n\
         sleeve = {{ outer = \"20 mm\", inner = \"11 mm\", gap = \"0 mm\", material = \"S355\" }}\n",
        torque * times
    );
    let text = four_mounts_and(&joint)
        .replace("\"150 kg\"", &format!("\"{} kg\"", 150.0 * times))
        .replace(
            "\"200, 200, 400 N/mm\"",
            &format!("\"{0}, {0}, {1} N/mm\"", 200.0 * times, 400.0 * times),
        );
    evaluate(&model(&text)).unwrap()
}

/// Requirements of the only joint that are forces, stresses, or shares of a strength.
fn loaded(evaluation: &Evaluation) -> Vec<&Requirement> {
    let joint = &evaluation.joints[0];
    joint
        .requirements
        .iter()
        .filter(|one| matches!(one.unit, Shown::Newton | Shown::Megapascal | Shown::Percent))
        .collect()
}

fn used(evaluation: &Evaluation, id: &str) -> f64 {
    let joint = &evaluation.joints[0];
    joint
        .requirements
        .iter()
        .find(|one| one.id == id)
        .unwrap()
        .utilisation()
}

proptest! {
    #![proptest_config(Config { cases: 40, ..Config::default() })]

    /// A joint is linear in loads and preload together, as long as no gap has to close.
    #[test]
    fn double_loads_and_preload_double_every_force_and_stress(
        torque in 15.0..35.0_f64, haul in -4.0..4.0_f64, offset in -50.0..50.0_f64,
    ) {
        let (once, twice) = (scaled(1.0, torque, haul, offset), scaled(2.0, torque, haul, offset));
        let (once, twice) = (loaded(&once), loaded(&twice));
        prop_assert!(once.len() > 12, "{}", once.len());
        for (one, two) in once.iter().zip(&twice) {
            prop_assert_eq!(one.id, two.id);
            let scale = one.value.abs().max(1e-3);
            prop_assert!((two.value - 2.0 * one.value).abs() < 2e-6 * scale, "{}: {} and {}", one.id, one.value, two.value);
        }
    }

    /// More preload never brings slip or separation nearer.
    #[test]
    fn preload_holds_against_slip_and_separation(
        torque in 15.0..30.0_f64, more in 1.01..2.0_f64, haul in -4.0..4.0_f64,
    ) {
        let (less, more) = (scaled(1.0, torque, haul, 0.0), scaled(1.0, torque * more, haul, 0.0));
        for id in ["slip", "separation"] {
            prop_assert!(used(&more, id) < used(&less, id), "{id}");
        }
    }
}

const ASKED: &str = "bolt = { size = \"M16\", class = \"10.9\", friction = \"greased\" }";
const WIDE: &str = "sleeve = { outer = \"40 mm\", inner = \"17.5 mm\", material = \"S235\" }";
const THICK: &str = "plate = { thickness = \"12 mm\", material = \"S355\", both_sides = true }";

/// A joint that asks for sizes, at a mount whose isolator scatters by itself, so that it takes more or less of the load.
fn sized(scatter: f64, haul: f64) -> String {
    four_mounts_and(&format!(
        "[rail.r]\nsection = \"box\"\nwidth = \"80 mm\"\nheight = \"60 mm\"\nwall = \"3 mm\"\nmaterial = \"S355\"\n\
         [[load]]\nname = \"haul\"\nclass = \"durability\"\nvehicle = \"{haul}, 2, -4 g\"\n\
         [[joint]]\nname = \"j\"\nmount = \"a\"\nrail = \"r\"\nthrough = \"height\"\n\
         offset = \"20, 10, 90 mm\"\npattern = [\"-60, 0 mm\", \"60, 0 mm\"]\nsize = true\n\
         {ASKED}\nbracket = {{ thickness = \"10 mm\", material = \"S355\", length = \"180 mm\", width = \"70 mm\" }}\n{WIDE}\n{THICK}\n"
    ))
    .replace("rates = \"200", "scatter = 0\nrates = \"200")
    .replacen("isolator = \"pad\"", "isolator = \"own\"", 1)
    + &format!("[isolator.own]\nkind = \"rates\"\nscatter = {scatter}\nrates = \"200, 200, 400 N/mm\"\n")
}

/// Verdicts on the joint that are neither advice nor without an answer.
fn verdicts(model: &Model) -> Vec<(String, Verdict)> {
    let checks = evaluate(model).unwrap().checks;
    let of_joint = checks.into_iter().filter(|check| {
        check.id.starts_with("joint.j.") && !check.advisory && check.value.is_some()
    });
    of_joint.map(|check| (check.id, check.verdict)).collect()
}

proptest! {
    #![proptest_config(Config { cases: 12, ..Config::default() })]

    /// The sizes found are judged ok when they stand in the file; one step down of one of them is not.
    #[test]
    fn sizes_found_pass_and_one_step_lighter_does_not(scatter in 0.0..0.3_f64, haul in -9.0..9.0_f64) {
        let asked = sized(scatter, haul);
        let sizing = evaluate(&model(&asked)).unwrap().joints.remove(0).sizing.unwrap();
        prop_assert!(sizing.holds, "{:?}", sizing.best.governs.id);
        for (id, verdict) in verdicts(&model(&pasted(&asked, &sizing.best.joint))) {
            prop_assert_eq!(verdict, Verdict::Ok, "{}", id);
        }
        for lesser in &sizing.smaller {
            prop_assert!(!lesser.holds());
            let missed = verdicts(&model(&pasted(&asked, &lesser.joint))).into_iter().any(|(_, verdict)| verdict != Verdict::Ok);
            prop_assert!(missed, "{:?}", lesser.joint);
        }
    }
}

/// Somewhere the scatter of the isolators asks for more than the nominal reactions do.
#[test]
fn sizes_found_count_in_how_the_isolators_scatter() {
    let lightest = |scatter: f64, haul: f64| {
        let sizing = evaluate(&model(&sized(scatter, haul)))
            .unwrap()
            .joints
            .remove(0)
            .sizing
            .unwrap();
        assert!(sizing.holds);
        sizing.best.mass
    };
    let hauls = (0..37).map(|step| f64::from(step) * 0.5 - 9.0);
    let masses: Vec<[f64; 2]> = hauls
        .map(|haul| [lightest(0.0, haul), lightest(0.3, haul)])
        .collect();
    assert!(masses.iter().all(|[sharp, scattered]| scattered >= sharp));
    assert!(
        masses.iter().any(|[sharp, scattered]| scattered > sharp),
        "{masses:?}"
    );
}

/// Invariant: the table of load cases holds what is required, and its largest number governs.
#[test]
fn the_table_of_load_cases_tells_every_one_and_the_largest_governs() {
    let model = model(include_str!("../../../models/forestry-pickup.toml"));
    let evaluation = evaluate(&model).unwrap();
    for joint in &evaluation.joints {
        let table = cases::table(&model, joint);
        let rows: Vec<&Row> = table.groups.iter().flat_map(|group| &group.rows).collect();
        assert_eq!(rows.len(), joint.loads.len());
        assert!(table.columns.len() > 9);
        for (place, column) in table.columns.iter().enumerate() {
            let required = joint
                .requirements
                .iter()
                .find(|one| Some(one.id) == column.key);
            let required = required.unwrap();
            let mut largest = (0.0, String::new());
            for row in &rows {
                if let Cell::Number(used) = row.cells[place]
                    && used > largest.0
                {
                    largest = (used, row.item.clone());
                }
            }
            let used = required.utilisation();
            assert!((largest.0 - used).abs() <= 1e-12 * used, "{}", required.id);
            if used > 0.0 {
                assert_eq!(
                    largest.1,
                    model.loads[required.load.unwrap()].name,
                    "{}",
                    required.id
                );
            }
        }
    }
}
