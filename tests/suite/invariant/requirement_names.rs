//! Names of what is required of a joint mean one thing each.

use std::collections::BTreeSet;

use bedplate::report::content::joints::requirements;
use bedplate::study::evaluate::evaluate;

use crate::kit::{four_mounts_and, model};

const RAILS: &str = r#"
[rail.box]
section = "box"
width = "60 mm"
height = "60 mm"
wall = "3 mm"
material = "6082-T6"
coating = "painted"
[rail.tube]
section = "round"
diameter = "60 mm"
wall = "3 mm"
material = "S235"
[rail.open]
section = "channel"
width = "50 mm"
height = "100 mm"
wall = "5 mm"
material = "S355"
"#;

/// All that a joint can be asked for, as far as one file can have it.
const JOINTS: [&str; 6] = [
    r#"
mount = "a"
rail = "box"
through = "height"
pattern = ["-45, 0 mm", "45, 0 mm"]
bolt = { size = "M10", class = "10.9", torque = "50 N m" }
bracket = { thickness = "8 mm", material = "S355" }
upright = { arm = "25 mm", length = "60 mm", width = "40 mm", weld = { throat = "3 mm", around = true } }
plate = { thickness = "6 mm", material = "6082-T6", length = "150 mm", both_sides = true }
sleeve = { outer = "20 mm", inner = "11 mm", material = "S235" }
weld = { throat = "3 mm", around = true, filler = "5356" }
polymer = { material = "PA66", thickness = "2 mm", in_path = true, diameter = "20 mm" }
"#,
    r#"
mount = "b"
rail = "box"
through = "height"
offset = "40, 60, 40 mm"
bolt = { size = "M10", class = "8.8" }
plate = { thickness = "6 mm", material = "S355", both_sides = true }
"#,
    r#"
mount = "c"
to = { thickness = "25 mm", material = "S355", tapped = true, engagement = "20 mm" }
bolt = { size = "M10", class = "A2-70" }
bracket = { thickness = "8 mm", material = "S355" }
"#,
    r#"
mount = "d"
rail = "tube"
through = "diameter"
bolt = { size = "M10", class = "8.8" }
bracket = { thickness = "8 mm", material = "S355" }
sleeve = { outer = "20 mm", inner = "11 mm", material = "S235", gap = "-0.1 mm", shoulder = { diameter = "30 mm", thickness = "4 mm" }, weld = { throat = "2 mm" } }
"#,
    r#"
mount = "d"
rail = "tube"
bolt = { size = "M10", class = "8.8" }
bracket = { thickness = "8 mm", material = "S355", saddle = true }
"#,
    r#"
mount = "d"
rail = "open"
through = "height"
bolt = { size = "M10", class = "8.8", threads = "cut" }
bracket = { thickness = "8 mm", material = "S355" }
"#,
];

/// What the joints above must bring up, or they prove nothing.
const IDS: [&str; 39] = [
    "bearing",
    "bolt-strength",
    "coats",
    "dowel",
    "edge-distance",
    "engagement",
    "fatigue",
    "foot-bending",
    "head-pressure",
    "head-punching",
    "local",
    "local-across",
    "local-along",
    "metals",
    "net-section",
    "plate-bending",
    "polymer-creep",
    "polymer-pressure",
    "prying",
    "pull-through",
    "punching",
    "separation",
    "shoulder",
    "side-walls",
    "sleeve-gap",
    "sleeve-seat",
    "sleeve-stress",
    "sleeve-weld",
    "slip",
    "spacer",
    "spacing",
    "tightening",
    "turn",
    "twist",
    "upright-weld",
    "wall-collapse",
    "wall-yield",
    "weld",
    "working-stress",
];

/// Longest short name, which leaves room for the other columns on 80.
const LONGEST: usize = 22;

/// Derived: a verdict is looked up by joint and name, and a row is found by its short words.
#[test]
fn a_joint_has_no_two_requirements_of_one_name() {
    let mut all = BTreeSet::new();
    for lines in JOINTS {
        let model = model(&four_mounts_and(&format!(
            "{RAILS}[[joint]]\nname = \"j\"{lines}"
        )));
        let evaluation = evaluate(&model).unwrap();
        let [joint] = &evaluation.joints[..] else {
            panic!("one joint");
        };
        let mut own = BTreeSet::new();
        for required in &joint.requirements {
            assert!(own.insert(required.id), "{} in {lines}", required.id);
        }
        let mut open = BTreeSet::new();
        for unjudged in &joint.unjudged {
            assert!(open.insert(unjudged.id), "{} in {lines}", unjudged.id);
        }
        let rows = requirements::table(&model, &evaluation, joint).groups;
        let briefs: BTreeSet<&str> = rows
            .iter()
            .flat_map(|group| &group.rows)
            .map(|row| {
                row.brief
                    .unwrap_or_else(|| panic!("{} at length only", row.item))
            })
            .collect();
        assert_eq!(briefs.len(), own.union(&open).count(), "{lines}");
        assert!(briefs.iter().all(|brief| brief.len() <= LONGEST), "{lines}");
        all.extend(own);
    }
    assert_eq!(all, BTreeSet::from(IDS));
}
