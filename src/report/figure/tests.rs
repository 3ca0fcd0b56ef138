//! What holds for every figure.

use super::fixture::{FAILED, USUAL, Wish, build, still, with_bad_names};
use super::*;
use crate::model::Model;
use crate::study::evaluate::Evaluation;

/// Every figure of a build that can be drawn.
fn all(model: &Model, evaluation: &Evaluation) -> Vec<Figure> {
    let mut figures: Vec<Figure> = [layout, reactions, deflections, clearances, frequencies]
        .into_iter()
        .filter_map(|draw| draw(model, evaluation).ok())
        .collect();
    for place in 0..model.isolators.len() {
        figures.push(isolator(model, evaluation, place).unwrap());
    }
    for (position, at) in evaluation.modes.iter().enumerate() {
        for mode in 0..at.solution.modes.len() {
            figures.push(mode_shape(model, evaluation, position, mode).unwrap());
        }
    }
    figures
}

/// Well formed, of one viewBox, no outer size, every number finite, of a size fit for a page.
pub(super) fn check(figure: &Figure) {
    let svg = &figure.svg;
    let parsed = roxmltree::Document::parse(svg).unwrap();
    let root = parsed.root_element();
    assert_eq!(root.attribute("class"), Some("fig"));
    assert_eq!(root.attribute("role"), Some("img"));
    assert_eq!(root.attribute("width"), None);
    assert!(root.attribute("viewBox").unwrap().starts_with("0 0 720 "));
    for node in parsed.descendants() {
        for attribute in node.attributes() {
            let value = attribute.value();
            if attribute.name() == "aria-label" {
                continue;
            }
            assert!(!value.contains("NaN") && !value.contains("inf"), "{value}");
            if ["x", "y", "x1", "x2", "y1", "y2", "cx", "cy", "r"].contains(&attribute.name()) {
                let number: f64 = value.parse().unwrap();
                assert!(number.abs() <= 1e6, "{number}");
            }
            if ["fill", "stroke"].contains(&attribute.name()) && value != "none" {
                assert!(DARK_CSS.contains(value), "{value} is not of the palette");
            }
        }
    }
    for text in [&figure.title, &figure.alt, &figure.caption] {
        assert!(!text.is_empty() && !text.contains("not finite"), "{text}");
    }
}

#[test]
fn every_figure_of_a_usual_build_is_fit_for_a_page() {
    let (model, evaluation) = build(USUAL);
    let figures = all(&model, &evaluation);
    assert_eq!(figures.len(), 6 + 12);
    for figure in &figures {
        check(figure);
        let bytes = figure.svg.len();
        assert!(bytes < 60_000, "{}: {bytes} bytes", figure.title);
    }
}

#[test]
fn the_same_build_gives_the_same_bytes() {
    let (model, evaluation) = build(USUAL);
    assert_eq!(all(&model, &evaluation), all(&model, &evaluation));
}

#[test]
fn bad_names_are_escaped_and_cut() {
    let (model, evaluation) = with_bad_names(USUAL);
    for figure in all(&model, &evaluation) {
        check(&figure);
        assert!(!figure.svg.contains("<script"));
        assert!(!figure.svg.contains('\u{202E}') && !figure.svg.contains('\u{7}'));
    }
}

#[test]
fn small_large_and_empty_builds_are_drawn() {
    for (mounts, loads, points, engine) in [
        (1, 0, 0, false),
        (20, 39, 3, true),
        (4, 11, 0, false),
        (3, 1, 1, true),
    ] {
        let wish = Wish {
            mounts,
            loads,
            points,
            engine,
        };
        let (model, evaluation) = build(wish);
        let figures = all(&model, &evaluation);
        let without_clearances = usize::from(points == 0);
        assert_eq!(
            figures.len(),
            6 - without_clearances + 6 * (loads + 1).min(2)
        );
        for figure in figures {
            check(&figure);
            let bytes = figure.svg.len();
            assert!(bytes < 80_000, "{}: {bytes} bytes", figure.title);
        }
    }
}

#[test]
fn a_build_in_which_nothing_moves_is_drawn() {
    let (model, mut evaluation) = build(USUAL);
    still(&mut evaluation);
    let figures = all(&model, &evaluation);
    assert_eq!(figures.len(), 6 + 12);
    for figure in figures {
        check(&figure);
    }
}

#[test]
fn enormous_places_are_drawn_and_places_that_are_not_finite_are_an_error() {
    let (mut model, evaluation) = build(USUAL);
    model.mounts[0].at.x = 1e12;
    for figure in all(&model, &evaluation) {
        check(&figure);
    }
    model.mounts[0].at.x = f64::NAN;
    assert_eq!(
        layout(&model, &evaluation),
        Err(FigureError::NotFinite("layout"))
    );
}

#[test]
fn without_any_position_the_reason_stands_in_place_of_the_figure() {
    let (model, mut evaluation) = build(USUAL);
    let failed = evaluation.loads[FAILED].outcome.clone();
    for result in &mut evaluation.loads {
        result.outcome = failed.clone();
        result.gaps.fill(None);
    }
    evaluation.modes.clear();
    for error in [
        reactions(&model, &evaluation).unwrap_err(),
        deflections(&model, &evaluation).unwrap_err(),
        frequencies(&model, &evaluation).unwrap_err(),
        mode_shape(&model, &evaluation, 0, 0).unwrap_err(),
    ] {
        assert!(!error.to_string().is_empty(), "{error}");
    }
    let gaps = clearances(&model, &evaluation).unwrap();
    assert!(gaps.svg.contains("no position found"));
    check(&gaps);
    check(&layout(&model, &evaluation).unwrap());
}

#[test]
fn a_mount_lands_where_its_place_and_the_ticks_say() {
    // Derived: the mark of the first mount (x 120, z 210 mm) in the side view lies between the
    // ticks of x 200 and x 0 at 80/200, and between z 200 and z 400 at 10/200.
    let (model, evaluation) = build(USUAL);
    let figure = layout(&model, &evaluation).unwrap();
    let parsed = roxmltree::Document::parse(&figure.svg).unwrap();
    let number = |node: &roxmltree::Node<'_, '_>, key: &str| -> f64 {
        node.attribute(key).unwrap().parse().unwrap()
    };
    let texts: Vec<_> = parsed
        .descendants()
        .filter(|n| n.has_tag_name("text"))
        .collect();
    let place_of_title = |title: &str| {
        let node = texts.iter().find(|n| n.text() == Some(title)).unwrap();
        (number(node, "x"), number(node, "y"))
    };
    let (left, top) = place_of_title("Side, seen from the left");
    let right = place_of_title("Rear, seen from behind").0;
    let below = place_of_title("Isometric").1;
    let tick = |text: &str, key: &str, across: bool| {
        let found = texts.iter().find(|n| {
            let (x, y) = (number(n, "x"), number(n, "y"));
            let beside = x < left;
            n.text() == Some(text) && y > top && y < below && x < right - 240.0 && beside != across
        });
        number(found.unwrap(), key)
    };
    let (x0, x200) = (tick("0", "x", true), tick("200", "x", true));
    let (z200, z400) = (tick("200", "y", false), tick("400", "y", false));
    let expected = (
        x0 + (x200 - x0) * 120.0 / 200.0,
        z200 + (z400 - z200) * 10.0 / 200.0,
    );
    assert!(x200 < x0 && z400 < z200, "front is left and up is up");
    let is_there = |node: roxmltree::Node<'_, '_>| {
        node.has_tag_name("circle")
            && node.attribute("fill") == Some("#0067A0")
            && (number(&node, "cx") - expected.0).abs() <= 2.0
            && (number(&node, "cy") - expected.1).abs() <= 2.0
    };
    assert!(
        parsed.descendants().any(is_there),
        "no mark at {expected:?}"
    );
}

#[test]
fn names_and_numbers_stand_on_the_drawings() {
    let (model, evaluation) = build(USUAL);
    let drawn = layout(&model, &evaluation).unwrap().svg;
    for words in [
        "left engine",
        "torque arm",
        "fan hub",
        "torque roll axis",
        "crank line",
        "part of unknown shape",
        "CG",
    ] {
        assert!(drawn.contains(&format!(">{words}<")), "{words}");
    }
    let drawn = reactions(&model, &evaluation).unwrap().svg;
    for words in ["at rest", "braking", "no position found", "Resultant"] {
        assert!(drawn.contains(&format!(">{words}<")), "{words}");
    }
    let drawn = clearances(&model, &evaluation).unwrap().svg;
    assert!(drawn.contains(">fan to radiator, keep 5.0 mm<"));
    let drawn = frequencies(&model, &evaluation).unwrap().svg;
    // Derived: 812/60 turns a second with two pulses each is 27.07 Hz; over √2, 19.14 Hz.
    assert!(drawn.contains(">idle firing 27.1 Hz<"));
    assert!(drawn.contains(">idle firing / √2 19.1 Hz<"));
    assert!(drawn.contains(">wheel hop 10.0 to 15.0 Hz<"));
}

#[test]
fn the_part_without_shape_is_named_in_the_caption() {
    let (model, evaluation) = build(USUAL);
    let caption = layout(&model, &evaluation).unwrap().caption;
    assert!(caption.contains("no shape for generator"), "{caption}");
}

#[test]
fn a_growing_mode_is_called_unstable() {
    let (model, mut evaluation) = build(USUAL);
    let mode = &mut evaluation.modes[0].solution.modes[0];
    mode.frequency_hz = 0.0;
    mode.growth_rate = Some(3.2);
    let figure = mode_shape(&model, &evaluation, 0, 0).unwrap();
    assert!(
        figure.title.contains("unstable, grows at 3.2 1/s"),
        "{}",
        figure.title
    );
    let strip = frequencies(&model, &evaluation).unwrap();
    assert!(strip.svg.contains("unstable, grows at 3.2 1/s"));
}

#[test]
fn an_overlap_is_told_in_words() {
    let (model, mut evaluation) = build(USUAL);
    evaluation.loads[2].gaps[0] = Some(-0.0042);
    let figure = clearances(&model, &evaluation).unwrap();
    let word = format!("overlap 4.2 mm, {}", model.loads[2].name);
    assert!(figure.svg.contains(&word), "{word}");
    assert!(figure.alt.contains("overlap of 4.2 mm"), "{}", figure.alt);
}

#[test]
fn a_touched_stop_and_the_largest_deflection_are_told() {
    let (model, mut evaluation) = build(USUAL);
    let state = &mut evaluation.loads[1].outcome.as_mut().unwrap().mounts[2];
    state.isolator_deflection = crate::spatial::Vec3::new(0.0, 0.0, -0.0234);
    let figure = deflections(&model, &evaluation).unwrap();
    assert!(
        figure.alt.contains("-23.4 mm along w at gearbox"),
        "{}",
        figure.alt
    );
    assert!(figure.alt.contains("A stop is touched at") && figure.alt.contains("gearbox"));
    assert!(figure.svg.contains("-23.4 to "));
}

#[test]
fn only_the_heaviest_load_cases_of_a_huge_build_are_drawn_and_the_caption_says_so() {
    let (mut model, mut evaluation) = build(Wish {
        mounts: 20,
        loads: 39,
        ..USUAL
    });
    "the heavy one".clone_into(&mut model.loads[30].name);
    evaluation.loads[30].outcome.as_mut().unwrap().mounts[7]
        .force_on_powertrain
        .z = 5e4;
    let figure = reactions(&model, &evaluation).unwrap();
    assert!(figure.svg.contains(">the heavy one<"));
    assert!(figure.svg.contains(">force, kN<"));
    assert!(
        figure
            .alt
            .contains("50.0 kN at mount 8 under the heavy one"),
        "{}",
        figure.alt
    );
    assert!(figure.caption.contains("of 40"), "{}", figure.caption);
}

#[test]
fn a_displaced_build_stays_left_of_the_bars() {
    let text = include_str!("../../../models/hillclimb-single-seater-solid.toml");
    let stiff = crate::model::file::read(text.as_bytes()).unwrap().model;
    let evaluation = crate::study::evaluate::evaluate(&stiff).unwrap();
    for (model, evaluation) in [build(USUAL), (stiff, evaluation)] {
        for mode in 0..6 {
            let figure = mode_shape(&model, &evaluation, 0, mode).unwrap();
            assert!(figure.caption.contains("drawn as"), "{}", figure.caption);
            stays_left_of_the_bars(&figure);
        }
    }
}

fn stays_left_of_the_bars(figure: &Figure) {
    let parsed = roxmltree::Document::parse(&figure.svg).unwrap();
    let view_box = parsed.root_element().attribute("viewBox").unwrap();
    let height: f64 = view_box.rsplit(' ').next().unwrap().parse().unwrap();
    let drawn = |tag| parsed.descendants().filter(move |n| n.has_tag_name(tag));
    let spots = drawn("polyline")
        .chain(drawn("polygon"))
        .flat_map(|n| n.attribute("points").unwrap().split(' '));
    for spot in spots {
        let (x, y) = spot.split_once(',').unwrap();
        let (x, y): (f64, f64) = (x.parse().unwrap(), y.parse().unwrap());
        assert!((0.0..=452.0 * 4.0).contains(&x), "{}: {x}", figure.title);
        assert!((0.0..=height * 4.0).contains(&y), "{}: {y}", figure.title);
    }
}
