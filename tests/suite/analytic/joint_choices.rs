//! From what the sizes of a joint are chosen, and what is told of it.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use bedplate::model::Model;
use bedplate::model::joint::Choices;
use bedplate::report::content::Block;
use bedplate::report::content::joints::sizes;
use bedplate::study::evaluate::evaluate;

use crate::kit::{four_mounts_and, model};

const RAIL: &str = "rail = \"r\"\nthrough = \"height\"";
const SOLID: &str = "to = { thickness = \"20 mm\", material = \"S355\" }";

/// A joint that asks for sizes.
fn asked(base: &str, bolt: &str, more: &str) -> Model {
    model(&four_mounts_and(&format!(
        "[rail.r]\nsection = \"box\"\nwidth = \"50 mm\"\nheight = \"50 mm\"\nwall = \"3 mm\"\nmaterial = \"S355\"\n\
         [[joint]]\nname = \"j\"\nmount = \"a\"\n{base}\nbolt = {{ {bolt} }}\n\
         bracket = {{ thickness = \"8 mm\", material = \"S355\" }}\nsize = true\n{more}\n"
    )))
}

fn choices(model: &Model) -> &Choices {
    model.joints[0].choices.as_ref().unwrap()
}

fn classes(model: &Model) -> Vec<&'static str> {
    choices(model)
        .grades
        .iter()
        .map(|grade| grade.name)
        .collect()
}

/// Common practice: bolts are replaced by others of their metal and of their system of threads.
#[test]
fn usual_classes_and_threads_are_those_of_the_bolt_in_the_file() {
    for (bolt, thread, expected) in [
        ("size = \"M10\", class = \"8.8\"", "M8", ["8.8", "10.9"]),
        (
            "size = \"M10\", class = \"A2-50\"",
            "M8",
            ["A2-70", "A2-80"],
        ),
        (
            "size = \"M10\", class = \"A4-80\"",
            "M8",
            ["A4-70", "A4-80"],
        ),
        (
            "size = \"3/8-16 UNC\", class = \"grade 8\"",
            "5/16-18 UNC",
            ["grade 5", "grade 8"],
        ),
        (
            "size = \"3/8-24 UNF\", class = \"grade 5\"",
            "5/16-24 UNF",
            ["grade 5", "grade 8"],
        ),
    ] {
        let model = asked(RAIL, bolt, "");
        assert_eq!(classes(&model), expected, "{bolt}");
        assert_eq!(choices(&model).threads[0].name, thread);
        let told = model
            .assumptions
            .iter()
            .find(|one| one.key == "joint[0].choose")
            .unwrap();
        for word in [thread, expected[0], expected[1]] {
            assert!(told.text.contains(word), "{}", told.text);
        }
    }
}

/// Derived: 20 mm is 2 cm; what is written twice is tried once, however it is ordered.
#[test]
fn a_choice_that_is_written_twice_is_tried_once() {
    let model = asked(
        RAIL,
        "size = \"M10\", class = \"8.8\"",
        "choose = { sizes = [\"M12\", \"M8\", \"m12\"], classes = [\"10.9\", \"8.8\", \"10.9\"], counts = [1, 1], sleeves = [\"22 mm\", \"20 mm\", \"2 cm\"] }",
    );
    let choices = choices(&model);
    let threads: Vec<&str> = choices.threads.iter().map(|thread| thread.name).collect();
    assert_eq!(threads, ["M8", "M12"]);
    assert_eq!(classes(&model), ["8.8", "10.9"]);
    assert_eq!(choices.counts, [1]);
    assert_eq!(choices.sleeves.len(), 2);
    // Two threads, two classes, two sleeves or none.
    let sizing = evaluate(&model).unwrap().joints.remove(0).sizing.unwrap();
    assert_eq!(sizing.choices, 12);
}

/// Derived: a joint without a plate has none to size, a solid part no room for a sleeve.
#[test]
fn only_what_is_tried_is_listed() {
    let bolt = "size = \"M10\", class = \"8.8\"";
    let words = |model: &Model| choices(model).words();
    let bare = words(&asked(RAIL, bolt, ""));
    assert!(
        bare.contains("sleeves") && !bare.contains("plates"),
        "{bare}"
    );
    let solid = words(&asked(
        SOLID,
        bolt,
        "plate = { thickness = \"6 mm\", material = \"S355\" }",
    ));
    assert!(
        !solid.contains("sleeves") && solid.contains("plates"),
        "{solid}"
    );
    let stated = asked(
        SOLID,
        bolt,
        "choose = { plates = [\"5 mm\"], sleeves = [\"20 mm\"] }",
    );
    assert_eq!(words(&stated), "M8, M10, M12, M14, M16; classes 8.8, 10.9");
    for key in ["joint[0].choose.plates", "joint[0].choose.sleeves"] {
        let told = stated
            .assumptions
            .iter()
            .find(|one| one.key == key)
            .unwrap();
        assert!(told.text.starts_with("not tried: "), "{}", told.text);
    }
}

/// All that is told of the sizes of the only joint.
fn told(model: &Model) -> (Vec<String>, Vec<String>) {
    let evaluation = evaluate(model).unwrap();
    let sizing = evaluation.joints[0].sizing.as_ref();
    let (mut hints, mut verbatim) = (Vec::new(), Vec::new());
    for block in sizes::blocks(model, &model.joints[0], sizing) {
        match block {
            Block::List(items) => hints.extend(items),
            Block::Verbatim(lines) => verbatim.extend(lines),
            Block::Paragraph(text) if sizing.is_none() => hints.push(text),
            _ => {}
        }
    }
    (hints, verbatim)
}

/// Derived: M8 in a rail under 30 g holds nowhere; what would give more to choose from is named.
#[test]
fn where_nothing_holds_it_is_said_what_to_widen() {
    let haul = "[[load]]\nname = \"haul\"\nclass = \"durability\"\nvehicle = \"0, 6, 30 g\"";
    let bolt = "size = \"M8\", class = \"8.8\", torque = \"20 N m\"";
    let few = "pattern = [\"-30, 0 mm\", \"30, 0 mm\"]\nchoose = { sizes = [\"M8\"], classes = [\"8.8\"] }";
    let (hints, verbatim) = told(&asked(RAIL, bolt, &format!("{few}\n{haul}")));
    assert!(
        hints
            .iter()
            .any(|hint| hint.contains("sleeve with a `shoulder`")),
        "{hints:?}"
    );
    assert!(
        hints.iter().any(|hint| hint.contains("counts = [2, 4]")),
        "{hints:?}"
    );
    assert!(
        verbatim[0].starts_with("bolt = {") && !verbatim[0].contains("torque"),
        "{verbatim:?}"
    );
    assert_eq!(verbatim[1], "pattern = [\"-30, 0 mm\", \"30, 0 mm\"]");
    let (hints, _) = told(&asked(RAIL, bolt, "choose = { counts = [4] }"));
    assert!(hints[0].starts_with("No combination"), "{hints:?}");
}
