//! Every key that the reader takes stands in a table of the module that reads it.

use std::path::Path;

use super::{GOOD, problems};

/// The kind of one isolator of the good build, to be replaced by another.
const PUCK: &str = "kind = \"solid\"\npuck = { diameter = \"60 mm\", bore = \"13 mm\", height = \"40 mm\", youngs_modulus = \"3 GPa\" }";

/// Keys of the section in which an unknown key is put, as its message lists them.
fn keys_where(old: &str, new: &str) -> Vec<String> {
    let text = GOOD.replacen(old, new, 1);
    assert_ne!(text, GOOD, "{old}");
    let listed: Vec<String> = problems(&text)
        .iter()
        .flat_map(|problem| &problem.help)
        .filter_map(|help| help.strip_prefix("known keys here: "))
        .map(str::to_owned)
        .collect();
    assert_eq!(listed.len(), 1, "{new}");
    listed[0].split(", ").map(str::to_owned).collect()
}

/// The solid isolator of the good build, in whose place others are put.
const SOLID: &str = "kind = \"solid\"\npuck = { diameter = \"60 mm\", bore = \"13 mm\", height = \"40 mm\", youngs_modulus = \"3 GPa\" }";

/// First cells of the tables in the module documentation of a file.
fn first_cells(file: &str) -> Vec<String> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("src/model")
        .join(file);
    std::fs::read_to_string(path)
        .unwrap()
        .lines()
        .filter_map(|line| line.strip_prefix("//! | "))
        .filter_map(|row| row.split(" | ").next())
        .flat_map(|cell| cell.split(", "))
        .filter_map(|cell| cell.strip_prefix('`')?.strip_suffix('`'))
        .map(str::to_owned)
        .collect()
}

#[test]
fn every_key_stands_in_the_table_of_its_module() {
    for (old, new, files, prefix) in [
        ("title =", "zzzzzzz = 1\ntitle =", &["file.rs"][..], ""),
        ("[datum]", "[datum]\nzzzzzzz = 1", &["file.rs"], ""),
        (
            "[vehicle]",
            "[vehicle]\nzzzzzzz = 1",
            &["surroundings.rs"],
            "",
        ),
        ("[[part]]", "[[part]]\nzzzzzzz = 1", &["part.rs"], ""),
        (
            "inertia = {",
            "inertia = { zzzzzzz = 1,",
            &["part.rs"],
            "inertia.",
        ),
        (
            "[engine]",
            "[engine]\nzzzzzzz = 1",
            &["drivetrain.rs", "shaking.rs"],
            "",
        ),
        (
            "[engine]",
            "[engine]\nharmonics = [{ zzzzzzz = 1, order = 2, torque = \"9 N m\" }]",
            &["shaking.rs"],
            "harmonics.",
        ),
        (
            "[driveline]",
            "[driveline]\nzzzzzzz = 1",
            &["drivetrain.rs"],
            "",
        ),
        (
            "[isolator.wedge]",
            "[isolator.wedge]\nzzzzzzz = 1",
            &["isolator.rs", "isolator/rates.rs"],
            "",
        ),
        (
            "stops = {",
            "stops = { zzzzzzz = 1,",
            &["isolator/stop.rs"],
            "",
        ),
        (
            "[isolator.saddle]",
            "[isolator.saddle]\nzzzzzzz = 1",
            &["isolator.rs", "isolator/solid.rs"],
            "",
        ),
        (
            PUCK,
            "zzzzzzz = 1\nkind = \"curve\"\ncurve = { w = [[\"0 mm\", \"0 N\"], [\"2 mm\", \"1 kN\"]] }\nrates = \"80, 80, 0 N/mm\"",
            &["isolator.rs", "isolator/curve.rs"],
            "",
        ),
        (
            PUCK,
            "kind = \"curve\"\ncurve = { zzzzzzz = 1, w = [[\"0 mm\", \"0 N\"], [\"2 mm\", \"1 kN\"]] }\nrates = \"80, 80, 0 N/mm\"",
            &["isolator/curve.rs"],
            "curve.",
        ),
        (
            PUCK,
            "zzzzzzz = 1\nkind = \"hydraulic\"\nrates = \"90, 90, 225 N/mm\"\ntrack = { upper = \"208 N/mm\", lower = \"2.4 N/mm\", mass = \"23.8 kg\", damping = \"656 N s/m\" }",
            &["isolator.rs", "isolator/hydraulic.rs"],
            "",
        ),
        (
            PUCK,
            "kind = \"hydraulic\"\nrates = \"90, 90, 225 N/mm\"\ntrack = { zzzzzzz = 1, upper = \"208 N/mm\", lower = \"2.4 N/mm\", mass = \"23.8 kg\", damping = \"656 N s/m\" }",
            &["isolator/hydraulic.rs"],
            "track.",
        ),
        (
            "stops = {",
            "stiffening = { zzzzzzz = 1, w = [\"-4 mm\", \"5 mm\"], rate = \"600 N/mm\" }\nstops = {",
            &["isolator/stiffening.rs"],
            "",
        ),
        (
            "puck = {",
            "puck = { zzzzzzz = 1,",
            &["isolator/solid.rs"],
            "puck.",
        ),
        (
            SOLID,
            "kind = \"block\"\nzzzzzzz = 1\nblock = \"80, 60, 35 mm\"\nhardness = \"55 IRHD\"",
            &["isolator.rs", "isolator/block.rs", "isolator/rubber.rs"],
            "",
        ),
        (
            SOLID,
            "kind = \"block\"\nblock = \"80, 60, 35 mm\"\nmodulus = { zzzzzzz = 1, youngs = \"3 MPa\", shear = \"1 MPa\" }",
            &["isolator/rubber.rs"],
            "modulus.",
        ),
        (
            SOLID,
            "kind = \"block\"\nhardness = \"55 IRHD\"\ncylinder = { zzzzzzz = 1, diameter = \"50 mm\", height = \"30 mm\" }",
            &["isolator/block.rs"],
            "cylinder.",
        ),
        (
            SOLID,
            "kind = \"block\"\nhardness = \"55 IRHD\"\nhollow = { zzzzzzz = 1, outer = \"50 mm\", inner = \"20 mm\", height = \"30 mm\" }",
            &["isolator/block.rs"],
            "hollow.",
        ),
        (
            SOLID,
            "kind = \"block\"\nhardness = \"55 IRHD\"\nstrip = { zzzzzzz = 1, length = \"500 mm\", width = \"20 mm\", height = \"30 mm\" }",
            &["isolator/block.rs"],
            "strip.",
        ),
        (
            SOLID,
            "kind = \"polyurethane\"\nzzzzzzz = 1\nblock = \"80, 60, 35 mm\"\nhardness = \"80 Shore A\"",
            &[
                "isolator.rs",
                "isolator/block.rs",
                "isolator/polyurethane.rs",
            ],
            "",
        ),
        (
            "[isolator.saddle]",
            "[isolator.tube]\nkind = \"bush\"\nbush = { inner = \"9 mm\", outer = \"18 mm\", length = \"9 mm\" }\nzzzzzzz = 1\n\n[isolator.saddle]",
            &["isolator.rs", "isolator/bush.rs", "isolator/rubber.rs"],
            "",
        ),
        (
            "[isolator.saddle]",
            "[isolator.tube]\nkind = \"bush\"\nbush = { zzzzzzz = 1, inner = \"9 mm\", outer = \"18 mm\", length = \"9 mm\" }\n\n[isolator.saddle]",
            &["isolator/bush.rs"],
            "bush.",
        ),
        (
            "[isolator.saddle]",
            "[isolator.link]\nkind = \"rod\"\nbush = { inner = \"9 mm\", outer = \"18 mm\", length = \"9 mm\" }\nzzzzzzz = 1\n\n[isolator.saddle]",
            &["isolator.rs", "isolator/rod.rs", "isolator/rubber.rs"],
            "",
        ),
        ("[[mount]]", "[[mount]]\nzzzzzzz = 1", &["mount.rs"], ""),
        ("[loads]", "[loads]\nzzzzzzz = 1", &["load.rs"], ""),
        ("[[load]]", "[[load]]\nzzzzzzz = 1", &["load.rs"], ""),
        (
            "[[point]]",
            "[[point]]\nzzzzzzz = 1",
            &["surroundings.rs"],
            "",
        ),
        (
            "[[clearance]]",
            "[[clearance]]\nzzzzzzz = 1",
            &["surroundings.rs"],
            "",
        ),
        (
            "[material.certified]",
            "[material.certified]\nzzzzzzz = 1",
            &["material.rs"],
            "",
        ),
        (
            "[material.bushing]",
            "[material.bushing]\nzzzzzzz = 1",
            &["material.rs"],
            "",
        ),
        (
            "heat_affected = {",
            "heat_affected = { zzzzzzz = 1,",
            &["material.rs"],
            "heat_affected.",
        ),
        ("[rail.main]", "[rail.main]\nzzzzzzz = 1", &["rail.rs"], ""),
        (
            "[rail.cross]",
            "[rail.cross]\nzzzzzzz = 1",
            &["rail.rs"],
            "",
        ),
        ("[[joint]]", "[[joint]]\nzzzzzzz = 1", &["joint.rs"], ""),
        (
            "\nto = {",
            "\nto = { zzzzzzz = 1,",
            &["joint/base.rs"],
            "to.",
        ),
        (
            "\nbolt = {",
            "\nbolt = { zzzzzzz = 1,",
            &["joint/bolt.rs"],
            "bolt.",
        ),
        (
            "\nbracket = {",
            "\nbracket = { zzzzzzz = 1,",
            &["joint/plate.rs"],
            "bracket.",
        ),
        (
            "\nupright = {",
            "\nupright = { zzzzzzz = 1,",
            &["joint/upright.rs"],
            "upright.",
        ),
        (
            "\nplate = {",
            "\nplate = { zzzzzzz = 1,",
            &["joint/plate.rs"],
            "plate.",
        ),
        (
            "\nwasher = {",
            "\nwasher = { zzzzzzz = 1,",
            &["joint/plate.rs"],
            "washer.",
        ),
        (
            "\nsleeve = {",
            "\nsleeve = { zzzzzzz = 1,",
            &["joint/sleeve.rs"],
            "sleeve.",
        ),
        (
            "\nweld = {",
            "\nweld = { zzzzzzz = 1,",
            &["joint/weld.rs"],
            "weld.",
        ),
        (
            "\npolymer = {",
            "\npolymer = { zzzzzzz = 1,",
            &["joint/polymer.rs"],
            "polymer.",
        ),
        (
            "\nfactors = {",
            "\nfactors = { zzzzzzz = 1,",
            &["joint/sizing.rs"],
            "factors.",
        ),
        (
            "\nchoose = {",
            "\nchoose = { zzzzzzz = 1,",
            &["joint/sizing.rs"],
            "choose.",
        ),
        (
            "shoulder = {",
            "shoulder = { zzzzzzz = 1,",
            &["joint/sleeve.rs"],
            "sleeve.shoulder.",
        ),
        ("[targets]", "[targets]\nzzzzzzz = 1", &["criteria.rs"], ""),
    ] {
        let documented: Vec<String> = files.iter().flat_map(|file| first_cells(file)).collect();
        for key in keys_where(old, new) {
            // The moments xx, yy, zz are named in the row of `inertia` itself.
            let moment = prefix == "inertia." && ["xx", "yy", "zz"].contains(&key.as_str());
            assert!(
                moment || documented.contains(&format!("{prefix}{key}")),
                "{prefix}{key} in {files:?}: {documented:?}"
            );
        }
    }
}
