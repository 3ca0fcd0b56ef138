//! The section, the face and the clamp diagram show what the file and its evaluation say.

use crate::report::figure::fixture::jointed;
use crate::report::figure::tests::check;
use crate::report::figure::{Figure, FigureError, clamp_diagram, joint_face, joint_section};

const RAILS: &str = r#"
[rail.box]
section = "box"
width = "60 mm"
height = "120 mm"
wall = "4 mm"
material = "S355"
[rail.tube]
section = "round"
diameter = "60 mm"
wall = "3 mm"
material = "S235"
[rail.open]
section = "channel"
width = "60 mm"
height = "110 mm"
wall = "5 mm"
material = "S235"
"#;

/// Figures of a joint on the gearbox mount of the fixture.
fn drawn(keys: &str) -> [Figure; 3] {
    let joint = format!(
        "{RAILS}\n[[joint]]\nname = \"tail <joint>\"\nmount = \"gearbox\"\n\
         bolt = {{ size = \"M10\", class = \"8.8\" }}\n{keys}"
    );
    let (model, evaluation) = jointed(&joint);
    let draw = [joint_section, joint_face, clamp_diagram];
    draw.map(|draw| draw(&model, &evaluation, 0).unwrap())
}

const SLEEVED: &str = r#"rail = "box"
through = "width"
pattern = ["-40, 0 mm", "40, 0 mm"]
bracket = { thickness = "8 mm", material = "S355" }
plate = { thickness = "6 mm", material = "S235", both_sides = true }
washer = { diameter = "20 mm", thickness = "2.5 mm" }
sleeve = { outer = "22 mm", inner = "11 mm", gap = "0.08 mm", material = "S235" }
"#;

fn has(figure: &Figure, words: &str) -> bool {
    figure.svg.contains(&format!(">{words}<"))
}

#[test]
fn every_sort_of_base_is_drawn_fit_for_a_page() {
    let bracket = "bracket = { thickness = \"8 mm\", material = \"S355\" }\n";
    for keys in [
        SLEEVED.to_owned(),
        format!("rail = \"tube\"\n{bracket}"),
        format!("rail = \"open\"\nthrough = \"height\"\nspacer = true\n{bracket}"),
        format!("rail = \"open\"\nthrough = \"height\"\n{bracket}"),
        format!("to = {{ thickness = \"20 mm\", material = \"S355\" }}\n{bracket}"),
        format!(
            "to = {{ thickness = \"30 mm\", material = \"S355\", tapped = true, engagement = \"20 mm\" }}\n{bracket}"
        ),
    ] {
        for figure in drawn(&keys) {
            check(&figure);
            assert!(!figure.svg.contains("<joint>"));
            assert!(figure.svg.len() < 80_000, "{}", figure.svg.len());
        }
    }
}

#[test]
fn sizes_and_materials_stand_beside_the_section() {
    let [section, face, diagram] = drawn(SLEEVED);
    for words in [
        "washer 2.5 mm",
        "bracket foot 8 mm",
        "plate 6 mm",
        "rail 60 mm",
        "120 mm",
        "wall 4 mm",
        "sleeve 22 × 11 mm",
        "59.92 mm long",
        "0.08 mm short",
        "M10 of 8.8",
        "nut",
        "S355",
        "S235",
    ] {
        assert!(has(&section, words), "{words}");
    }
    assert!(
        section
            .caption
            .contains("drawn larger than it is: it is 0.08 mm")
    );
    assert!(face.svg.contains(">1: ") && face.svg.contains(">2: "));
    assert!(diagram.svg.contains(">most preload ") && diagram.svg.contains("opens at a pull of "));
    let solid = drawn(
        "to = { thickness = \"30 mm\", material = \"S355\", tapped = true, engagement = \"20 mm\" }\n\
         bracket = { thickness = \"8 mm\", material = \"S355\" }\n",
    );
    assert!(!has(&solid[0], "nut") && solid[0].alt.contains("tapped"));
}

/// Derived: the drawn widths of sleeve and rail are in the ratio of 22 mm to 120 mm.
#[test]
fn the_section_is_to_scale() {
    let joint = format!(
        "{RAILS}\n[[joint]]\nname = \"tail\"\nmount = \"gearbox\"\nbolt = {{ size = \"M10\", class = \"8.8\" }}\n{SLEEVED}"
    );
    let (model, evaluation) = jointed(&joint);
    let pieces = super::Pieces::of(&model, &model.joints[0], &evaluation.joints[0]);
    let sheet = super::Sheet::new(&model.joints[0], &evaluation.joints[0], &pieces);
    let wide = |half: f64| sheet.at(half, 0.0).0 - sheet.at(-half, 0.0).0;
    let deep = sheet.at(0.0, -60e-3).1 - sheet.at(0.0, 0.0).1;
    approx::assert_relative_eq!(wide(60e-3) / deep, 2.0, max_relative = 1e-12);
    // Derived: 2.5 + 8 + 6 above the rail, head of 6.25 mm on it.
    approx::assert_relative_eq!(pieces.under_head, 16.5e-3, max_relative = 1e-12);
    approx::assert_relative_eq!(pieces.heights[1], 22.75e-3, max_relative = 1e-12);
    // 60 mm of rail, 6 mm of plate, 2.5 mm of washer, 8 mm of nut below them.
    let [low, high] = pieces.nut.unwrap();
    approx::assert_relative_eq!(high, -68.5e-3, max_relative = 1e-12);
    approx::assert_relative_eq!(low, -76.5e-3, max_relative = 1e-12);
    assert!(pieces.bolt_end < low);
}

#[test]
fn what_cannot_be_drawn_is_an_error() {
    let (model, mut evaluation) = jointed(&format!(
        "{RAILS}\n[[joint]]\nname = \"tail\"\nmount = \"gearbox\"\nbolt = {{ size = \"M10\", class = \"8.8\" }}\n{SLEEVED}"
    ));
    for draw in [joint_section, joint_face, clamp_diagram] {
        assert!(matches!(
            draw(&model, &evaluation, 7),
            Err(FigureError::Nothing(_))
        ));
    }
    evaluation.joints[0].preload.most = f64::NAN;
    assert_eq!(
        clamp_diagram(&model, &evaluation, 0),
        Err(FigureError::NotFinite("clamp diagram"))
    );
    evaluation.joints[0].stack.layers[0].thickness = f64::INFINITY;
    assert_eq!(
        joint_section(&model, &evaluation, 0),
        Err(FigureError::NotFinite("joint section"))
    );
}

/// Without a load case there is still a joint to build.
#[test]
fn a_joint_without_loads_is_drawn_and_nothing_is_pulled() {
    let (model, mut evaluation) = jointed(&format!(
        "{RAILS}\n[[joint]]\nname = \"tail\"\nmount = \"gearbox\"\nbolt = {{ size = \"M10\", class = \"8.8\" }}\n{SLEEVED}"
    ));
    evaluation.joints[0].loads.clear();
    evaluation.joints[0].requirements.clear();
    check(&joint_face(&model, &evaluation, 0).unwrap());
    let diagram = clamp_diagram(&model, &evaluation, 0).unwrap();
    assert!(
        diagram.caption.contains("No load case pulls"),
        "{}",
        diagram.caption
    );
}
