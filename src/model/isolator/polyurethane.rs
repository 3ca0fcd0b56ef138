//! Kind `polyurethane`: cast polyurethane between plates or tubes, usually not bonded to them.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `hardness` | 20 to 90 Shore A, such as `"80 Shore A"` | number and scale | this or `modulus` |
//! | `modulus` | measured moduli in place of `hardness`: keys as for [`rubber`](super::rubber), `bulk` 2000 MPa | table | from `hardness` |
//! | `bush`, `voids` | sizes between two tubes, in place of the shape of a block: as of a [`bush`] | tables | a block |
//!
//! Its shape is written with the keys of [`block`](super::block), or with `bush`
//! and `voids` as of a [`bush`]. Between plates it lifts off when
//! pulled; bonded to them it has `tension = "allowed"`. Between tubes it is
//! captive, but slides: it does not resist being turned about w.

use super::block::{Pad, describe, read_form};
use super::bush;
use super::rubber::{
    Compound, Likely, Moduli, Relation, Rubber, Stiffness, dynamic_ratio_of_loss, read_stiffness,
};
use super::{Description, Kind, Tension, Usual};
use crate::model::reader::Section;

pub(super) const KIND: Kind = Kind {
    word: "polyurethane",
    gloss: "cast polyurethane, by size and hardness",
    others: &["pu", "pur", "urethane", "poly"],
    read,
};

/// Cast polyurethane.
///
/// # Source
/// Common practice of low authority: loss factor 0.05 to 0.20 from 60 to 95 Shore A, 80 °C for long.
const POLYURETHANE: Compound = Compound {
    word: "polyurethane",
    name: "polyurethane",
    heat_limit: 80.0,
    loss_at: [(60.0, 0.05), (95.0, 0.20)],
    rate_at: &[],
};

/// What is expected of its moduli.
///
/// # Source
/// Common practice: Young's modulus of 50 to 95 Shore A, a third of it for shear, set a little wider.
const LIKELY: Likely = Likely {
    of: "polyurethane",
    shear: (0.5e6, 20e6),
    bulk: BULK,
};

/// Modulus of bulk compression \[Pa\].
///
/// # Source
/// Common practice for elastomers without filler.
const BULK: f64 = 2e9;

/// Half-width of the band of the real rate.
///
/// # Source
/// Derived: ±3 Shore A at 80 Shore A, by the indentation relation.
const SCATTER: f64 = 0.2;

/// Creep over ten years as a share of the deflection at rest.
///
/// # Source
/// Common practice of low authority: that of filled rubber of 60 Shore A.
const CREEP: f64 = 0.33;

/// Coefficient of friction of dry polyurethane on painted metal that is told to the reader.
///
/// # Source
/// Common practice: 0.3 to 0.7; grease makes it far less.
const FRICTION: f64 = 0.5;

fn read(section: &Section<'_>) -> Option<Description> {
    if section.has("bush") {
        return read_bush(section);
    }
    let form = read_form(section);
    let material = read_material(section);
    let (form, material) = (form?, material?);
    let pad = form.pad(material.moduli);
    Some(Description {
        when_held: vec!["Even bonded it carries little tension (common practice)".to_owned()],
        when_loose: of_loose_faces(&pad),
        ..describe(&form, material)
    })
}

/// An insert between two tubes.
fn read_bush(section: &Section<'_>) -> Option<Description> {
    let bush = bush::read_sizes(section);
    let voids = bush::read_voids(section);
    let material = read_material(section);
    let (bush, material) = (bush?, material?);
    let usual = Usual {
        // The tubes hold it whichever way it is pushed.
        tension: Tension::Allowed,
        ..material.usual
    };
    let mut description = bush::describe(&bush, &material.moduli, &voids?, usual);
    description.rotational.z = 0.0;
    description.compound = Some(material.compound);
    description.remarks.extend(material.remarks);
    description.remarks.push(
        "Pressed in and not bonded, only the pushed side works: its radial rates lie between half of those computed and the whole; measure them (common practice)"
            .to_owned(),
    );
    Some(description)
}

/// What helps with a hardness that the relation does not reach.
const OTHER_WAY: &str =
    "give `modulus`, measured on the part: no relation holds for grades this hard or this soft";

/// Reads `hardness` or `modulus`.
fn read_material(section: &Section<'_>) -> Option<Rubber> {
    let (moduli, degrees, source) = match read_stiffness(section, &LIKELY)? {
        Stiffness::Hardness(hardness) => (
            of_young(
                hardness
                    .by(section, Relation::Indentation, OTHER_WAY)?
                    .youngs,
            ),
            hardness.degrees,
            format!(
                "Polyurethane of {hardness}: Young's modulus by {}, a third of it in shear",
                Relation::Indentation.in_words()
            ),
        ),
        Stiffness::Moduli(moduli) => (
            moduli,
            MIDDLE,
            "Polyurethane with the moduli of the file".to_owned(),
        ),
    };
    let loss_factor = POLYURETHANE.loss_factor(degrees);
    let ratio = dynamic_ratio_of_loss(loss_factor);
    Some(Rubber {
        compound: &POLYURETHANE,
        moduli,
        usual: Usual {
            dynamic_ratio: ratio,
            // There is no filler whose structure large motion would break up.
            dynamic_ratio_large: ratio,
            loss_factor,
            scatter: SCATTER,
            creep: CREEP,
            tension: Tension::None,
            of: POLYURETHANE.name.to_owned(),
        },
        remarks: vec![
            format!("{source}: {}", moduli.in_words()),
            "Polyurethane is linear only to a strain of 2 % to 5 %, the harder the less: beyond, the rates are a first guess (common practice)".to_owned(),
        ],
    })
}

/// Hardness for which what is usual is taken when only the moduli are known \[Shore A\].
const MIDDLE: f64 = 80.0;

/// Moduli of an elastomer without filler.
///
/// # Equation
///   G = E/3,   k = 1
///
/// # Source
/// Derived: an incompressible elastic solid; A. N. Gent and P. B. Lindley, Proc. IMechE 173 (1959) 111-122.
fn of_young(youngs: f64) -> Moduli {
    Moduli {
        youngs,
        shear: youngs / 3.0,
        shape: 1.0,
        bulk: BULK,
    }
}

/// What to keep in mind while the faces are not bonded.
fn of_loose_faces(pad: &Pad) -> Vec<String> {
    let shape_factor = pad.shape_factor();
    let grip = if shape_factor > FRICTION / 2.0 {
        format!(
            "Pressed, its loose faces slip where the friction is below twice the shape factor, here {:.2}: dry it has about {FRICTION}, so it slips and is softer than computed (Lindley)",
            2.0 * shape_factor
        )
    } else {
        format!(
            "Pressed, its loose faces hold while the friction is above twice the shape factor, here {:.2} (Lindley)",
            2.0 * shape_factor
        )
    };
    vec![
        grip,
        "Loose faces squeak as they slip (common practice)".to_owned(),
    ]
}
