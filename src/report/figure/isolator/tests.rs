//! The chart of an isolator shows what its law and its mounts say.

use super::*;
use crate::model::isolator::strain::StrainMeasure;
use crate::report::figure::fixture::{USUAL, Wish, build};

fn drawn(change: impl FnOnce(&mut Isolator)) -> Figure {
    let (mut model, evaluation) = build(USUAL);
    change(&mut model.isolators[0]);
    isolator(&model, &evaluation, 0).unwrap()
}

fn has(figure: &Figure, words: &str) -> bool {
    figure.svg.contains(&format!(">{words}<"))
}

#[test]
fn bounds_of_the_file_are_named_and_what_rubber_bears_where_its_size_is_known() {
    let plain = drawn(|_| {});
    for words in [
        "Along w",
        "Along u",
        "Along v",
        "limit",
        "stop",
        "scatter ±15 %",
        "left engine",
    ] {
        assert!(has(&plain, words), "{words}");
    }
    for words in [
        "most in use",
        "most in rare loads",
        "beyond what was measured",
    ] {
        assert!(!has(&plain, words), "{words}");
    }
    assert!(!plain.caption.contains("Broken lines"), "{}", plain.caption);
    let known = drawn(|part| {
        part.strain = Some(StrainMeasure::Block {
            height: 25e-3,
            lean: 0.0,
        });
        part.measured[2] = Some([-4e-3, 2e-3]);
    });
    for words in ["most at rest", "most in use", "beyond what was measured"] {
        assert!(has(&known, words), "{words}");
    }
    assert!(known.caption.contains("Broken lines"), "{}", known.caption);
    assert!(known.svg.contains("stroke-dasharray"));
}

#[test]
fn of_a_rod_only_its_own_line_is_drawn() {
    let rod = drawn(|part| part.is_rod = true);
    assert!(has(&rod, "Along the rod") && !has(&rod, "Along u") && !has(&rod, "Along w"));
    let axes = rod
        .svg
        .matches("deflection, positive is pulled, mm")
        .count();
    assert_eq!(axes, 1);
    assert!(
        rod.alt.contains("Along w") && !rod.alt.contains("Along u"),
        "{}",
        rod.alt
    );
}

/// Distance from a place to a line of places, in the drawing's own units.
fn distance((x, y): (f64, f64), line: &[(f64, f64)]) -> f64 {
    line.windows(2)
        .map(|pair| {
            let ((ax, ay), (bx, by)) = (pair[0], pair[1]);
            let (dx, dy) = (bx - ax, by - ay);
            let along = ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy).max(1e-12);
            let along = along.clamp(0.0, 1.0);
            (x - ax - along * dx).hypot(y - ay - along * dy)
        })
        .fold(f64::INFINITY, f64::min)
}

/// Farthest mark of the first mount from the nearest curve.
fn farthest_from_a_curve(figure: &Figure) -> f64 {
    let parsed = roxmltree::Document::parse(&figure.svg).unwrap();
    let curves: Vec<Vec<(f64, f64)>> = parsed
        .descendants()
        .filter(|n| n.has_tag_name("polyline") && n.attribute("stroke") == Some("#1B1F24"))
        .map(|n| {
            let spots = n.attribute("points").unwrap().split_whitespace();
            spots
                .map(|spot| {
                    let (x, y) = spot.split_once(',').unwrap();
                    (x.parse().unwrap(), y.parse().unwrap())
                })
                .collect()
        })
        .collect();
    assert_eq!(curves.len(), 3);
    let number = |n: &roxmltree::Node<'_, '_>, key: &str| -> f64 {
        n.attribute(key).unwrap().parse().unwrap()
    };
    let marks: Vec<(f64, f64)> = parsed
        .descendants()
        .filter(|n| n.has_tag_name("circle") && n.attribute("fill") == Some("#0067A0"))
        .map(|n| (number(&n, "cx"), number(&n, "cy")))
        // The first one stands in the key.
        .skip(1)
        .collect();
    // Eleven load cases with a position, three charts.
    assert_eq!(marks.len(), 33);
    marks
        .into_iter()
        .map(|mark| {
            curves
                .iter()
                .map(|c| distance(mark, c))
                .fold(f64::INFINITY, f64::min)
        })
        .fold(0.0, f64::max)
}

/// Derived: along axes that know nothing of each other the force is that of the curve, stops included.
#[test]
fn marks_of_independent_axes_stand_on_the_curve() {
    let (model, mut evaluation) = build(USUAL);
    let figure = isolator(&model, &evaluation, 0).unwrap();
    // Rounding to a quarter of a unit, four to the unit.
    assert!(farthest_from_a_curve(&figure) < 3.0);
    assert!(!figure.caption.contains("beside the curve"));
    let state = &mut evaluation.loads[1].outcome.as_mut().unwrap().mounts[0];
    state.isolator.point.force.z += 900.0;
    let figure = isolator(&model, &evaluation, 0).unwrap();
    assert!(farthest_from_a_curve(&figure) > 30.0);
    assert!(
        figure.caption.contains("beside the curve"),
        "{}",
        figure.caption
    );
}

#[test]
fn the_farthest_point_is_told_with_its_mount_and_load_case() {
    let (model, mut evaluation) = build(USUAL);
    let state = &mut evaluation.loads[3].outcome.as_mut().unwrap().mounts[2];
    state.isolator_deflection.z = -23.4e-3;
    state.isolator.point.force.z = -31_200.0;
    let figure = isolator(&model, &evaluation, 0).unwrap();
    assert!(
        figure
            .alt
            .contains("-23.4 mm at -31200 N: gearbox, braking"),
        "{}",
        figure.alt
    );
    assert!(has(&figure, "braking") && has(&figure, "force, kN"));
}

/// A puck that goes micrometres within limits of a millimetre would be one heap of marks.
#[test]
fn limits_far_outside_the_marks_are_beyond_the_scale() {
    let near = drawn(|part| part.limits[2] = Some(15e-3));
    assert!(
        !near.caption.contains("Beyond the scale"),
        "{}",
        near.caption
    );
    let far = drawn(|part| {
        part.limits = [Some(1.0); 3];
        part.stops[2].lower = Some(-2.0);
        part.stops[2].upper = Some(2.0);
    });
    assert!(
        far.caption.contains(
            "Beyond the scale: along w limit at ±1000.0 mm and stop at ±2000.0 mm; along u limit"
        ),
        "{}",
        far.caption
    );
    assert!(!has(&far, "limit") && !has(&far, "stop"));
}

/// A stop of 4 MN/mm a tenth beyond which the curve runs: its force would press all marks onto the zero line.
#[test]
fn the_force_of_a_stiff_stop_does_not_flatten_the_marks() {
    let heights = |figure: &Figure| -> f64 {
        let parsed = roxmltree::Document::parse(&figure.svg).unwrap();
        let circles = parsed
            .descendants()
            .filter(|n| n.has_tag_name("circle") && n.attribute("fill") == Some("#0067A0"));
        let mut y: Vec<f64> = circles
            .skip(1)
            .take(11)
            .map(|n| n.attribute("cy").unwrap().parse().unwrap())
            .collect();
        y.sort_by(f64::total_cmp);
        y[10] - y[0]
    };
    let plain = heights(&drawn(|_| {}));
    let stiff = heights(&drawn(|part| {
        part.stops[2].rate = 4e9;
        part.limits[2] = None;
    }));
    assert!(stiff > plain / 3.0, "{stiff} of {plain}");
}

/// No name of a load case crosses the line of no deflection or that of no force, wherever the marks lie.
#[test]
fn labels_keep_off_the_zero_lines() {
    let (model, mut evaluation) = build(USUAL);
    for shift in [0.0, 0.2e-3, 0.5e-3, 1e-3] {
        for result in &mut evaluation.loads {
            let Ok(found) = &mut result.outcome else {
                continue;
            };
            for state in &mut found.mounts {
                state.isolator_deflection.z += shift;
            }
        }
        let figure = isolator(&model, &evaluation, 0).unwrap();
        let parsed = roxmltree::Document::parse(&figure.svg).unwrap();
        let number = |n: &roxmltree::Node<'_, '_>, key: &str| -> f64 {
            n.attribute(key).unwrap().parse().unwrap()
        };
        let zeros: Vec<[f64; 4]> = parsed
            .descendants()
            .filter(|n| n.has_tag_name("line") && n.attribute("stroke-width") == Some("5"))
            .map(|n| ["x1", "y1", "x2", "y2"].map(|key| number(&n, key)))
            .collect();
        assert_eq!(zeros.len(), 6);
        let mut labels = 0;
        for text in parsed.descendants().filter(|n| n.has_tag_name("text")) {
            let words = text.text().unwrap();
            if !model.loads.iter().any(|load| load.name == words) {
                continue;
            }
            labels += 1;
            let size = number(&text, "font-size");
            let (left, y) = (number(&text, "x"), number(&text, "y"));
            let right = left + width(words, size);
            for [x1, y1, x2, y2] in &zeros {
                let beside = right <= x1.min(*x2) || left >= x1.max(*x2);
                let over = y + size * 0.5 <= y1.min(*y2) || y - size * 0.5 >= y1.max(*y2);
                assert!(beside || over, "{words} at {left}, {y}");
            }
        }
        assert!(labels > 2, "{labels}");
    }
}

#[test]
fn of_many_load_cases_the_farthest_are_drawn_and_the_caption_says_so() {
    let (model, evaluation) = build(Wish {
        mounts: 20,
        loads: 39,
        ..USUAL
    });
    let figure = isolator(&model, &evaluation, 0).unwrap();
    assert!(
        figure.caption.contains("Of many load cases"),
        "{}",
        figure.caption
    );
    assert!(figure.svg.len() < 80_000, "{}", figure.svg.len());
    assert!(!drawn(|_| {}).caption.contains("Of many load cases"));
}

#[test]
fn what_cannot_be_drawn_is_an_error() {
    let (mut model, mut evaluation) = build(USUAL);
    assert!(matches!(
        isolator(&model, &evaluation, 9),
        Err(FigureError::Nothing(_))
    ));
    for result in &mut evaluation.loads {
        if let Ok(found) = &mut result.outcome {
            found.mounts[1].isolator_deflection.y = f64::NAN;
        }
    }
    let error = isolator(&model, &evaluation, 0);
    assert_eq!(error, Err(FigureError::NotFinite("isolator")));
    evaluation.loads.clear();
    assert!(
        isolator(&model, &evaluation, 0)
            .unwrap()
            .alt
            .contains("nothing works on it")
    );
    model.isolators[0] = model.isolators[0].scaled(0.0);
    model.isolators[0].stops = [crate::model::isolator::stop::AxisStops::NONE; 3];
    assert!(matches!(
        isolator(&model, &evaluation, 0),
        Err(FigureError::Nothing(_))
    ));
}
