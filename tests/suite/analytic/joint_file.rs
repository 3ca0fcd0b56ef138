//! What the model file says of a joint, resolved into sizes, directions and values.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use approx::assert_relative_eq;
use bedplate::model::Model;
use bedplate::model::joint::{
    Environment, Filler, Joint, PolymerRole, Seat, WeldRun, bolt::Threads,
};
use bedplate::model::material::{Family, HeatAffected, Surface};
use bedplate::model::rail::{Profile, Through};
use bedplate::spatial::Vec3;

use crate::diagnostics::GOOD;
use crate::kit::{assert_close, four_mounts_and, model};

const RAIL: &str = "[rail.main]\nsection = \"box\"\nwidth = \"60 mm\"\nheight = \"120 mm\"\nwall = \"4 mm\"\nmaterial = \"S355\"\n";
const BOLT: &str = "bolt = { size = \"M12\", class = \"10.9\" }\n";
const FOOT: &str = "bracket = { thickness = \"8 mm\", material = \"S355\" }\n";

/// The first joint of a build; mounts a to d stand at x ±300, y ±250 mm, a on the left and b on the right.
fn joint(lines: &str) -> Joint {
    build(lines).joints.remove(0)
}

fn build(lines: &str) -> Model {
    model(&four_mounts_and(&format!(
        "{RAIL}[[joint]]\nname = \"j\"\n{lines}\n"
    )))
}

/// Text of the assumption about a key of the first joint or of what it names.
fn assumed(model: &Model, key: &str) -> String {
    let found = model.assumptions.iter().find(|one| one.key == key);
    found.map(|one| one.text.clone()).unwrap_or_default()
}

/// Derived from the text: everything that it says is found again, in SI.
#[test]
fn everything_the_file_says_of_a_joint_is_kept() {
    let model = model(GOOD);
    let [first, second, third] = &model.joints[..] else {
        panic!("three joints")
    };
    assert_eq!((first.mount, second.mount, third.mount), (0, 1, 2));
    let base = first.base.rail().unwrap();
    assert_eq!((base.rail, base.through), (0, Through::Width));
    assert_eq!(base.surface, Surface::Painted);
    assert_relative_eq!(base.depth, 0.060);
    assert_relative_eq!(base.face_width, 0.120);
    assert_relative_eq!(base.edge.unwrap(), 0.400);
    assert_relative_eq!(first.face, Vec3::new(0.0, -1.0, 0.0));
    // Out of the rail to the right, so across it is up or down: z × x of a right-handed face.
    assert_relative_eq!(first.across(), Vec3::new(0.0, 0.0, 1.0));
    assert_relative_eq!(first.offset, Vec3::new(0.0, -0.060, 0.090));
    let bolt = &first.bolt;
    assert_eq!((bolt.thread.name, bolt.grade.name), ("M12", "10.9"));
    assert_eq!(bolt.lubrication.class, 'B');
    assert_relative_eq!(bolt.lubrication.friction.low, 0.10);
    assert_relative_eq!(bolt.lubrication.friction.high, 0.16);
    assert_relative_eq!(bolt.limits.yield_strength, 940e6);
    assert_relative_eq!(bolt.torque.unwrap(), 105.0);
    assert_relative_eq!(bolt.length.unwrap(), 0.105);
    assert_relative_eq!(bolt.hole, 0.013);
    assert_relative_eq!(bolt.roughness, 16e-6, max_relative = 1e-12);
    assert_eq!(bolt.threads, Threads::RolledAfterHeatTreatment);
    assert_eq!(bolt.surface, Surface::ZincPlated);
    assert_eq!(first.pattern, [[-0.045, 0.0], [0.045, 0.0]]);
    let foot = first.foot.as_ref().unwrap();
    assert_eq!(
        (foot.surface, foot.material.name.as_str()),
        (Surface::PowderCoated, "S355")
    );
    assert_relative_eq!(foot.length, 0.140);
    assert_relative_eq!(foot.width, 0.090);
    let upright = first.upright.unwrap();
    assert_relative_eq!(upright.arm, 0.024);
    let stands = upright.weld.unwrap();
    assert_eq!(stands.weld.run, WeldRun::Around);
    assert_relative_eq!(stands.weld.fillet.throat, 0.005 / 2.0_f64.sqrt());
    assert_relative_eq!(stands.length, 0.070);
    assert_relative_eq!(stands.width, 0.050);
    // Washers, foot, polymer, plates, rail and flange: 2 x 2.5 + 8 + 2 + 2 x 6 + 60 + 4 mm.
    assert_relative_eq!(first.grip(), 0.091, max_relative = 1e-12);
    let plate = first.plate.as_ref().unwrap();
    assert!(plate.both_sides && !plate.saddle);
    assert_relative_eq!(plate.length, 0.150);
    assert_relative_eq!(plate.width, 0.100);
    let washer = first.washer.unwrap();
    assert_relative_eq!(washer.diameter, 0.024);
    let sleeve = first.sleeve.as_ref().unwrap();
    assert_relative_eq!(sleeve.length, 0.060 - 5e-5);
    assert_eq!(sleeve.seat, Seat::Through);
    assert_relative_eq!(sleeve.hole, 0.0225);
    assert_relative_eq!(sleeve.weld.unwrap().throat, 0.003);
    assert_relative_eq!(sleeve.shoulder.unwrap().diameter, 0.030);
    let weld = first.weld.unwrap();
    assert_eq!(weld.fillet.filler, Filler::Matching);
    assert_eq!(weld.run, WeldRun::Length(0.320));
    assert_relative_eq!(weld.fillet.throat, 0.003);
    let polymer = first.polymer.as_ref().unwrap();
    assert_eq!(polymer.role, PolymerRole::Clamped { diameter: 0.026 });
    assert_eq!(polymer.material.long_term_modulus, Some(0.9e9));
    assert_relative_eq!(first.slip_friction, 0.14);
    assert_eq!(first.environment, Environment::Damp);
    assert_close(
        "temperature",
        &first.temperature,
        &[-30.0, 80.0],
        1e-12,
        0.0,
    );
    assert_relative_eq!(first.assembled, 15.0);
    let factors = first.factors;
    let kept = [
        factors.yields,
        factors.slip,
        factors.separation,
        factors.fatigue,
    ];
    assert_close("factors", &kept, &[1.2, 1.3, 1.25, 1.5], 1e-12, 0.0);
    let choices = first.choices.as_ref().unwrap();
    let names: Vec<_> = choices.threads.iter().map(|one| one.name).collect();
    assert_eq!(names, ["M10", "M12"]);
    assert_eq!(choices.counts, [2, 4]);
    assert_eq!(choices.sleeves, [0.020, 0.022]);
    assert_eq!(choices.plates, [0.005, 0.006]);

    assert_relative_eq!(second.bolt.thread.nominal, 0.375 * 0.0254);
    // A fillet of equal legs: its throat is the height of half a square.
    assert_relative_eq!(second.weld.unwrap().fillet.throat, 0.005 / 2.0_f64.sqrt());
    assert_eq!(second.weld.unwrap().run, WeldRun::Around);
    assert_eq!(second.base.rail().unwrap().through, Through::Diameter);
    assert!(second.foot.is_none() && second.choices.is_none());
    assert!(third.base.rail().is_none());
    let own = &model.rails[0].material;
    assert_eq!(own.family, Family::Steel);
    assert_relative_eq!(own.expansion, 11.8e-6, max_relative = 1e-12);
    assert_relative_eq!(own.anodic_index.unwrap(), 0.86);
    assert_relative_eq!(own.head_pressure.bare, 420e6);
    assert_eq!(
        own.heat_affected,
        HeatAffected::Weaker {
            yield_strength: 372e6,
            tensile_strength: 498e6
        }
    );
}

/// Derived: through the height up; through the width to where the mount is, by the offset or, when
/// that does not tell, to the middle of the vehicle; made square to the rail where it leans a little.
#[test]
fn a_face_that_is_not_given_looks_to_the_mount() {
    let face = |lines: &str| {
        joint(&format!("{BOLT}{FOOT}rail = \"main\"\n{lines}"))
            .face
            .into()
    };
    let through = |mount: &str, size: &str| format!("mount = \"{mount}\"\nthrough = \"{size}\"\n");
    let [up, left, right] = [[0.0, 0.0, 1.0], [0.0, 1.0, 0.0], [0.0, -1.0, 0.0]];
    let assert_face = |lines: &str, expected: [f64; 3]| {
        let found: [f64; 3] = face(lines);
        for (found, expected) in found.into_iter().zip(expected) {
            assert!((found - expected).abs() < 1e-12, "{lines}: {found}");
        }
    };
    assert_face(&through("a", "height"), up);
    assert_face(&through("a", "width"), right);
    assert_face(&through("b", "width"), left);
    // The rail runs back: left of it is the right of the vehicle, and the face stays inboard.
    assert_face(
        &format!("{}along = \"-1, 0, 0\"", through("a", "width")),
        right,
    );
    // An offset outboard wins over the middle of the vehicle.
    assert_face(
        &format!("{}offset = \"0, 40, 90 mm\"", through("a", "width")),
        left,
    );
    // A rail that rises by 45°: up is square to it.
    let half = 0.5_f64.sqrt();
    assert_face(
        &format!("{}along = \"1, 0, 1\"", through("a", "height")),
        [-half, 0.0, half],
    );
    // Given 5° off square, it is made square: the sine of 5° is 0.08716.
    let joint = joint(&format!(
        "{BOLT}{FOOT}rail = \"main\"\n{}face = \"0.08716, 0, 0.99619\"",
        through("a", "height")
    ));
    assert!(joint.face.dot(&joint.along).abs() < 1e-12);
    assert_relative_eq!(joint.across(), Vec3::y(), epsilon = 1e-12);
}

/// Common practice, as documented beside each key, and told as an assumption.
#[test]
fn what_the_file_leaves_out_is_assumed_and_told() {
    let lines = format!(
        "{BOLT}{FOOT}mount = \"a\"\nrail = \"main\"\nthrough = \"width\"\nplate = {{ thickness = \"6 mm\", material = \"S235\" }}\nsleeve = {{ outer = \"22 mm\", inner = \"13.5 mm\", material = \"S235\" }}\nsize = true"
    );
    let model = build(&lines);
    let joint = &model.joints[0];
    assert_eq!(joint.pattern, [[0.0, 0.0]]);
    assert_relative_eq!(joint.bolt.hole, 0.0135);
    assert_eq!(joint.bolt.lubrication.name, "as delivered");
    assert_eq!(joint.bolt.tightening.name, "torque wrench");
    assert_eq!(joint.bolt.threads, Threads::RolledBeforeHeatTreatment);
    assert_relative_eq!(joint.bolt.roughness, 25e-6);
    // Two diameters of 12 mm beyond the bolt, each way; across, the face of the rail.
    let plate = joint.plate.as_ref().unwrap();
    assert_relative_eq!(plate.length, 0.048);
    assert_relative_eq!(plate.width, 0.120);
    assert!(!plate.both_sides);
    let sleeve = joint.sleeve.as_ref().unwrap();
    assert_relative_eq!(sleeve.length, 0.0599);
    assert_eq!(sleeve.seat, Seat::Through);
    assert!(sleeve.weld.is_none());
    assert_eq!(joint.environment, Environment::RoadSalt);
    assert_close(
        "temperature",
        &joint.temperature,
        &[-20.0, 90.0],
        1e-12,
        0.0,
    );
    assert_relative_eq!(joint.assembled, 20.0);
    assert_relative_eq!(joint.slip_friction, 0.15);
    let choices = joint.choices.as_ref().unwrap();
    assert_eq!(choices.threads.len(), 5);
    assert_eq!(choices.grades.len(), 2);
    assert!(choices.counts.is_empty());
    assert_relative_eq!(choices.sleeves[0], 0.016);
    let Profile::Box { corner, .. } = model.rails[0].profile else {
        panic!("a box")
    };
    assert_relative_eq!(corner, 0.008);
    for key in [
        "joint[0].face",
        "joint[0].along",
        "joint[0].offset",
        "joint[0].edge",
        "joint[0].pattern",
        "joint[0].slip_friction",
        "joint[0].environment",
        "joint[0].temperature",
        "joint[0].assembled",
        "joint[0].factors",
        "joint[0].choose",
        "joint[0].bolt.friction",
        "joint[0].bolt.tightened",
        "joint[0].bolt.roughness",
        "joint[0].bolt.coating",
        "joint[0].bracket.coating",
        "joint[0].plate.length",
        "joint[0].plate.width",
        "joint[0].plate.both_sides",
        "joint[0].sleeve.gap",
        "joint[0].sleeve.seat",
        "rail.main.corner",
        "rail.main.coating",
        "rail.main.weldable",
    ] {
        assert!(!assumed(&model, key).is_empty(), "{key}");
    }
}

/// From the lists: thickness decides the strength, and a sleeve inside the walls is shorter by both.
#[test]
fn strength_follows_the_thickness_and_the_sleeve_its_seat() {
    let yields = |thickness: &str| {
        let joint = joint(&format!(
            "{BOLT}{FOOT}mount = \"a\"\nto = {{ thickness = \"{thickness} mm\", material = \"S355\" }}"
        ));
        let bedplate::model::joint::Base::Solid(solid) = joint.base else {
            panic!("a solid part")
        };
        solid.material.yield_strength
    };
    assert_relative_eq!(yields("16"), 355e6);
    assert_relative_eq!(yields("20"), 345e6);
    let inside = joint(&format!(
        "{BOLT}{FOOT}mount = \"a\"\nrail = \"main\"\nthrough = \"height\"\nsleeve = {{ outer = \"22 mm\", inner = \"13.5 mm\", material = \"S235\", seat = \"inside\", gap = \"-0.2 mm\" }}"
    ));
    // 120 mm less two walls of 4 mm, and 0.2 mm proud.
    assert_relative_eq!(inside.sleeve.unwrap().length, 0.1122, max_relative = 1e-12);
}

/// Common practice: the slipperiest of the faces counts.
#[test]
fn the_slipperiest_face_decides() {
    for (coating, family, friction) in [
        ("bare", "S355", 0.15),
        ("painted", "S355", 0.10),
        ("bare", "6082-T6", 0.12),
        ("anodised", "6082-T6", 0.10),
    ] {
        let joint = joint(&format!(
            "{BOLT}mount = \"a\"\nrail = \"main\"\nthrough = \"width\"\nbracket = {{ thickness = \"8 mm\", material = \"{family}\", coating = \"{coating}\" }}"
        ));
        assert_relative_eq!(joint.slip_friction, friction);
    }
}

/// From memory of VDI 2230-1 table A5: class B is friction from 0.08 to 0.16.
#[test]
fn friction_by_numbers_is_put_into_its_class() {
    for (band, class) in [
        ("0.10, 0.16", 'B'),
        ("0.08, 0.10", 'B'),
        ("0.05, 0.10", 'A'),
        ("0.05, 0.16", 'C'),
        ("0.14, 0.24", 'C'),
        ("0.20, 0.30", 'D'),
        ("0.30, 0.45", 'E'),
    ] {
        let joint = joint(&format!(
            "{FOOT}mount = \"a\"\nrail = \"main\"\nthrough = \"width\"\nbolt = {{ size = \"M12\", class = \"10.9\", friction = [{band}] }}"
        ));
        assert_eq!(joint.bolt.lubrication.class, class, "{band}");
    }
}
