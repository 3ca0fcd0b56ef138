//! Text fits the terminal, whatever the names and numbers.

use super::*;
use crate::model::Model;
use crate::model::isolator::Tension;
use crate::model::isolator::stop::AxisStops;
use crate::model::isolator::strain::StrainMeasure;
use crate::report::content::table::{Cell, Column, Group, Row, Table};
use crate::report::fixture;
use crate::study::evaluate::Evaluation;
use crate::units::{Digits, Shown};

fn all_text(model: &Model, evaluation: &Evaluation) -> String {
    let full = full(model, evaluation, &Topic::ALL, Style::Plain);
    let parts = model.isolators.iter();
    let parts: String = parts
        .map(|part| isolator(model, part, Style::Plain))
        .collect();
    summary(model, evaluation, Style::Plain) + &full + &parts
}

fn widest(text: &str) -> (usize, &str) {
    text.lines()
        .map(|line| (line.chars().count(), line))
        .max_by_key(|(width, _)| *width)
        .unwrap()
}

#[test]
fn no_line_is_wider_than_a_terminal_whatever_the_names() {
    for (length, word) in [(1, "n"), (3, "name "), (40, "name "), (300, "n")] {
        let (mut model, mut evaluation) = fixture::build();
        let name = word.repeat(length);
        model.title.clone_from(&name);
        for load in &mut model.loads {
            load.name.clone_from(&name);
        }
        for mount in &mut model.mounts {
            mount.name.clone_from(&name);
        }
        for point in &mut model.points {
            point.name.clone_from(&name);
        }
        for part in &mut model.parts {
            part.name.clone_from(&name);
        }
        for isolator in &mut model.isolators {
            isolator.name.clone_from(&name);
            isolator.remarks.push(name.clone());
        }
        for clearance in &mut model.clearances {
            clearance.name.clone_from(&name);
        }
        for check in &mut evaluation.checks {
            check.title.clone_from(&name);
            check.basis.clone_from(&name);
        }
        let text = all_text(&model, &evaluation);
        let (width, line) = widest(&text);
        assert!(width <= WIDTH, "{width}: {line}");
    }
}

#[test]
fn the_summary_names_all_that_fails_and_counts_what_is_close() {
    let (model, mut evaluation) = fixture::build();
    let one = evaluation.checks[0].clone();
    evaluation.checks.extend(std::iter::repeat_n(one, 20));
    let text = summary(&model, &evaluation, Style::Plain);
    let lines: Vec<&str> = text.lines().collect();
    let fails = lines.iter().filter(|line| line.starts_with("FAILS"));
    assert_eq!(fails.count(), 22, "{text}");
    assert!(
        text.contains("26 checks: 22 fail, 1 close, 1 not checked, 2 ok."),
        "{text}"
    );
    let first = lines.iter().find(|line| line.starts_with("FAILS")).unwrap();
    assert!(
        first.contains("13.0 mm, give or take 0.4 mm; at most 10.0 mm"),
        "{first}"
    );
    assert!(text.contains("Cure: a rate 30 % higher along w"));
    assert!(text.contains("\nand 1 more close: see the report\n"));
    assert!(text.contains("compressed 3.1 mm"));
    assert!(text.contains("fires at 26.0 Hz"));
}

/// What is missed by more than the scatter is not called close.
#[test]
fn what_is_over_advice_is_counted_apart_from_what_is_close() {
    let (model, mut evaluation) = fixture::build();
    let fails = evaluation.checks[0].clone();
    let mut over = fails.clone();
    over.verdict = Verdict::Over;
    over.advisory = true;
    evaluation.checks.extend([over.clone(), over]);
    let text = full(&model, &evaluation, &[Topic::Checks], Style::Plain);
    assert!(
        text.contains("8 checks: 2 fail, 2 over advice, 1 close, 1 not checked, 2 ok."),
        "{text}"
    );
    assert!(
        text.contains("\nover   check sag.rear (at rest): 13.0 mm, give or take 0.4 mm; advised"),
        "{text}"
    );
    evaluation.checks.extend(std::iter::repeat_n(fails, 20));
    let text = summary(&model, &evaluation, Style::Plain);
    assert!(
        text.contains("and 2 more over advice, 1 more close: see the report"),
        "{text}"
    );
}

#[test]
fn the_summary_of_few_findings_fits_a_screen() {
    let (model, mut evaluation) = fixture::build();
    let close = evaluation.checks[2].clone();
    evaluation.checks.extend(std::iter::repeat_n(close, 20));
    let text = summary(&model, &evaluation, Style::Plain);
    assert!(text.lines().count() <= 42, "{text}");
    assert!(text.contains("more close: see the report"), "{text}");
}

#[test]
fn a_file_with_the_position_at_rest_is_not_said_to_sink() {
    let (mut model, evaluation) = fixture::build();
    assert!(summary(&model, &evaluation, Style::Plain).contains("centre of gravity sinks"));
    model.fitted = crate::model::Fitted::Settled;
    let text = summary(&model, &evaluation, Style::Plain);
    assert!(text.contains("The file gives the position at rest\n"));
    assert!(
        text.contains("compressed 3.1 mm") && !text.contains("sinks"),
        "{text}"
    );
}

#[test]
fn a_case_without_a_position_is_named_with_its_reason() {
    let (model, evaluation) = fixture::build();
    let reason = evaluation.loads[1]
        .outcome
        .as_ref()
        .unwrap_err()
        .to_string();
    let start: String = reason.chars().take(30).collect();
    let text = summary(&model, &evaluation, Style::Plain);
    let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        flat.contains(&format!(
            "No loaded position for {}: {start}",
            fixture::FAILED_LOAD
        )),
        "{text}"
    );
    assert!(
        full(&model, &evaluation, &[Topic::Statics], Style::Plain).contains("No loaded position")
    );
}

#[test]
fn colour_only_repeats_the_verdict_and_is_off_by_default() {
    let (model, evaluation) = fixture::build();
    let plain = all_text(&model, &evaluation);
    assert!(!plain.contains('\u{1b}'));
    let coloured = full(&model, &evaluation, &Topic::ALL, Style::Coloured);
    assert!(coloured.contains("\u{1b}[31mFAILS\u{1b}[0m"));
    let stripped = ["[31m", "[32m", "[33m", "[0m"]
        .iter()
        .fold(coloured, |text, code| {
            text.replace(&format!("\u{1b}{code}"), "")
        });
    assert_eq!(
        stripped,
        full(&model, &evaluation, &Topic::ALL, Style::Plain)
    );
    assert_eq!(Style::default(), Style::Plain);
}

#[test]
fn decimal_points_stand_below_each_other() {
    let rows = [12.345, -0.456, 3.21, 7.0]
        .map(|value| Row::new(format!("row {value}"), vec![Cell::Number(value)]))
        .to_vec();
    let column = Column::number("v", "value", Shown::Number).digits(Digits::Significant(3));
    let table = Table {
        id: "t",
        about: String::new(),
        item: "item",
        columns: vec![column],
        groups: vec![Group::plain(rows)],
        note: None,
    };
    let lines = table::lines(&table, Style::Plain);
    let shown: Vec<&str> = lines
        .iter()
        .filter_map(|line| line.strip_prefix("row "))
        .collect();
    let places: Vec<Option<usize>> = shown.iter().map(|line| line.rfind('.')).collect();
    assert_eq!(shown.len(), 4, "{lines:#?}");
    assert!(
        places.iter().all(|p| p.is_some() && *p == places[0]),
        "{shown:#?}"
    );
    assert!(
        shown[1].ends_with("-0.456") && shown[3].ends_with("7.00"),
        "{shown:#?}"
    );
}

#[test]
fn only_the_topics_asked_for_are_written() {
    let (model, evaluation) = fixture::build();
    let text = full(&model, &evaluation, &[Topic::Mass], Style::Plain);
    assert!(text.contains("The build\n"));
    assert!(!text.contains("Mount reactions") && !text.contains("Natural frequencies"));
}

#[test]
fn the_sheet_of_an_isolator_tells_all_that_is_known_of_it() {
    use crate::model::isolator::fluid::Fluid;
    use crate::model::isolator::strain::StrainMeasure;
    let (mut model, _) = fixture::build();
    let part = &mut model.isolators[0];
    part.rotational.z = 300.0;
    part.remarks.push("Its rates are invented".to_owned());
    part.strain = Some(StrainMeasure::Block {
        height: 1e-3 / 0.03,
        lean: 0.2,
    });
    part.dynamics.fluid = Some(Fluid {
        upper: 2e5,
        lower: 1e3,
        mass: 50.0,
        damping: 100.0,
    });
    let text = isolator(&model, &model.isolators[0], Style::Plain);
    let (width, line) = widest(&text);
    assert!(width <= WIDTH, "{width}: {line}");
    for words in [
        "wedge: isolator of kind rates\n",
        "- Its rates are invented.\n",
        "rubber: natural rubber\n",
        // Derived: √((200 + 1 N/mm)/50 kg)/(2π).
        "the fluid swings in its track at 10.1 Hz",
        "scatter: 15 %: the rate of a piece lies between 85 % and 115 %",
        "limit               w      -7.0    7.0  `limits.w` of isolator wedge\n",
        "isolator.wedge.heat_limit",
        // Derived: 300 N m/rad by π/180.
        "static                   0.00       0.00       5.24\n",
        "compression",
        "lift only with rated gear",
    ] {
        assert!(text.contains(words), "no `{words}` in {text}");
    }
    let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(flat.contains("compression: average design limits of P. B. Lindley"));
    let plain = fixture::build().0;
    let text = isolator(&plain, &plain.isolators[0], Style::Plain);
    for words in ["Lindley", "fluid", "about u", "compression"] {
        assert!(!text.contains(words), "{words}");
    }
    assert!(text.contains("The size of the rubber is not known"));
}

/// What holds for a rubber pad is not said of a bush, a rod, metal, or a part that lies loose.
#[test]
fn the_sheet_speaks_of_the_part_at_hand() {
    let (mut model, _) = fixture::build();
    let mut sheet = |change: fn(&mut Isolator)| {
        let mut part = model.isolators[0].clone();
        change(&mut part);
        model.isolators[0] = part;
        let text = isolator(&model, &model.isolators[0], Style::Plain);
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    assert!(sheet(|_| {}).contains("Negative along w is compressed."));
    let loose = sheet(|part| part.tension = Tension::None);
    assert!(loose.contains("its rate once it is pushed"), "{loose}");
    let metal = sheet(|part| {
        part.compound = None;
        part.tension = Tension::Allowed;
        part.limits = [None; 3];
        part.stops = [AxisStops::NONE; 3];
    });
    assert!(metal.contains("It holds no rubber"), "{metal}");
    for words in ["Ask the maker", "size of the rubber", "once it is pushed"] {
        assert!(!metal.contains(words), "{words}");
    }
    let rod = sheet(|part| part.is_rod = true);
    assert!(rod.contains("Positive is pulled") && !rod.contains("is compressed"));
    let bush = sheet(|part| {
        part.is_rod = false;
        part.strain = Some(StrainMeasure::Bush { wall: 10e-3 });
    });
    assert!(bush.contains("w is the centre line of the bush") && !bush.contains("is compressed"));
}

/// Each isolator is named once over its remarks; what no mount uses is said to be so and not drawn.
#[test]
fn the_section_of_isolators_names_each_once() {
    let (mut model, _) = fixture::build();
    let mut spare = model.isolators[0].clone();
    spare.name = "spare".to_owned();
    spare.remarks = vec!["See `limits`".to_owned(), "Invented".to_owned()];
    model.isolators.push(spare);
    let section = isolators::section(&model);
    let lines = section_lines(&section, Style::Plain);
    let named = lines.iter().filter(|line| line.contains("spare")).count();
    assert_eq!(named, 2, "in the table and over its remarks");
    assert!(lines.iter().any(|line| line == "No mount uses it."));
    let drawn = section
        .blocks
        .iter()
        .filter(|block| matches!(block, Block::Plates(_)));
    assert_eq!(drawn.count(), 1);
}
