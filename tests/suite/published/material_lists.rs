//! Strengths of listed materials against lists that give the same in another way.

use bedplate::model::material::{HeatAffected, Material, NotListed};

fn found(name: &str, thickness_mm: f64) -> Material {
    Material::find(name, thickness_mm * 1e-3).unwrap()
}

/// Published: EN 1999-1-1:2007 table 3.2b prints, beside the strengths, the share of them that is
/// left in the heat-affected zone, to two digits (6082: from memory). Name, thickness, shares of
/// proof and tensile strength. Half a unit of the last digit, and the rounding of the strengths
/// to 5 MPa there, is at most 0.008.
#[test]
fn what_is_left_beside_a_weld_is_the_share_of_eurocode_9() {
    for (name, thickness, of_proof, of_tensile) in [
        ("6060-T5", 5.0, 0.42, 0.50),
        ("6060-T6", 15.0, 0.43, 0.59),
        ("6060-T66", 3.0, 0.41, 0.51),
        ("6060-T66", 3.1, 0.43, 0.56),
        ("6061-T4", 5.0, 0.86, 0.83),
        ("6061-T6", 20.0, 0.48, 0.67),
        ("6063-T6", 25.0, 0.41, 0.56),
        ("6063-T66", 10.0, 0.38, 0.53),
        ("6005A-T6 open", 5.0, 0.51, 0.61),
        ("6005A-T6 hollow", 5.0, 0.53, 0.65),
        ("5083-H12", 10.0, 0.68, 0.96),
        ("6082-T6", 5.0, 0.50, 0.64),
        ("6082-T6", 5.1, 0.48, 0.60),
    ] {
        let material = found(name, thickness);
        let HeatAffected::Weaker {
            yield_strength,
            tensile_strength,
        } = material.heat_affected
        else {
            panic!("{name} is weaker beside a weld");
        };
        let shares = [
            yield_strength / material.yield_strength,
            tensile_strength / material.tensile_strength,
        ];
        for (share, printed) in shares.into_iter().zip([of_proof, of_tensile]) {
            assert!((share - printed).abs() < 0.008, "{name}: {share}");
        }
    }
    assert_eq!(found("5083-O", 5.0).heat_affected, HeatAffected::AsParent);
}

/// Published: Shigley's Mechanical Engineering Design, 8th ed., table A-20 (1018 hot rolled and
/// cold drawn); from memory of MMPDS (4130 tube). Yield and tensile strength in ksi, which are
/// rounded, as the MPa beside them are: 2 MPa.
#[test]
fn american_steels_have_the_strengths_of_their_lists_in_ksi() {
    const KSI: f64 = 6_894_757.0;
    for (name, thickness, yields, breaks) in [
        ("1018 hot rolled", 10.0, 32.0, 58.0),
        ("1018 cold drawn", 10.0, 54.0, 64.0),
        ("4130 normalised", 0.188 * 25.4, 75.0, 95.0),
        ("4130 normalised", 0.189 * 25.4, 70.0, 90.0),
    ] {
        let material = found(name, thickness);
        assert!(
            (material.yield_strength - yields * KSI).abs() < 2.4e6,
            "{name}"
        );
        assert!(
            (material.tensile_strength - breaks * KSI).abs() < 2.4e6,
            "{name}"
        );
    }
}

/// From memory of EN 10025-2: the number in the name is the yield strength up to 16 mm in MPa,
/// and 10 MPa less above. Of EN 10346 and EN 1561, EN 1563: the number in the name is the tensile
/// strength.
#[test]
fn names_with_a_strength_in_them_tell_the_truth() {
    for (name, strength) in [("S235", 235.0), ("S355", 355.0)] {
        let yields = |thickness| found(name, thickness).yield_strength / 1e6;
        assert!((yields(16.0) - strength).abs() < 1e-9, "{name}");
        assert!((yields(16.1) - (strength - 10.0)).abs() < 1e-9, "{name}");
    }
    for (name, strength, slack) in [
        ("DP600", 600.0, 10.5),
        ("DP780", 780.0, 0.5),
        ("DP980", 980.0, 0.5),
        ("EN-GJL-250", 250.0, 0.5),
        ("EN-GJS-400-15", 400.0, 0.5),
    ] {
        let tensile = found(name, 3.0).tensile_strength / 1e6;
        assert!((tensile - strength).abs() < slack, "{name}: {tensile}");
    }
}

/// From memory of VDI 2230-1: pressures under the head, list of 1986 for walls, of 2003 for thick
/// parts; where no list has one, the yield strength stands for it.
#[test]
fn pressures_under_the_head_are_those_of_the_lists() {
    for (name, thickness, bare, supported) in [
        ("S235", 3.0, 260.0, 490.0),
        ("S355", 3.0, 355.0, 760.0),
        ("304", 3.0, 210.0, 630.0),
        ("316", 3.0, 210.0, 460.0),
        ("EN-GJL-250", 10.0, 800.0, 900.0),
        ("6082-T6", 4.0, 250.0, 260.0),
        ("5083-O", 4.0, 110.0, 230.0),
        ("6060-T66", 3.0, 160.0, 160.0),
    ] {
        let pressure = found(name, thickness).head_pressure;
        assert!((pressure.bare / 1e6 - bare).abs() < 1e-9, "{name}");
        assert!(
            (pressure.supported / 1e6 - supported).abs() < 1e-9,
            "{name}"
        );
    }
}

/// Invariant: what every entry must be to be calculated with.
#[test]
fn every_listed_material_is_possible() {
    let mut seen = std::collections::BTreeSet::new();
    for name in Material::names() {
        assert!(seen.insert(name), "{name} is listed twice");
        let material = found(name, 2.0);
        assert_eq!(material.name, name);
        let Material {
            yield_strength,
            tensile_strength,
            youngs_modulus,
            ..
        } = material;
        assert!(
            0.0 < yield_strength && yield_strength <= tensile_strength,
            "{name}"
        );
        assert!(tensile_strength < youngs_modulus / 10.0, "{name}");
        assert!(
            material.head_pressure.bare <= material.head_pressure.supported,
            "{name}"
        );
        if let HeatAffected::Weaker {
            yield_strength: weak,
            tensile_strength: breaks,
        } = material.heat_affected
        {
            assert!(weak <= breaks && weak <= yield_strength && breaks <= tensile_strength);
        }
        // The same at a thickness of which it is not listed is refused, not guessed.
        match material.at(1.0) {
            Ok(thick) => assert_eq!(thick.name, name),
            Err(NotListed::TooThick { up_to }) => {
                assert!(material.at(up_to).is_ok(), "{name}");
                assert!(material.at(up_to + 1e-5).is_err(), "{name}");
            }
            Err(NotListed::Unknown) => panic!("{name} is listed"),
        }
    }
    assert!(seen.len() > 30, "{}", seen.len());
    assert_eq!(Material::find("oak", 0.01), Err(NotListed::Unknown));
}
