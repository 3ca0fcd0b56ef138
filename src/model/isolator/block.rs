//! Kind `block`: rubber between plates that are square to w, from its sizes and its hardness.
//!
//! All heights are those of the rubber alone, plates left out; the overall
//! height of a part with its plates is the most usual slip.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `block` | sizes of the rubber along u, v, w | 3 lengths | one of these four |
//! | `cylinder` | `{ diameter, height }`, along w | table | one of these four |
//! | `hollow` | `{ outer, inner, height }`, a cylinder with a bore along w | table | one of these four |
//! | `strip` | `{ length, width, height }`, length along u, at least five times the width along v | table | one of these four |
//! | `cylinder.diameter`, `hollow.outer`, `hollow.inner`, `strip.length`, `strip.width` | sizes of the rubber across w | length | needed |
//! | `cylinder.height`, `hollow.height`, `strip.height` | height of the rubber along w, all layers together | length | needed |
//! | `layers` | layers of equal height with bonded plates between them, 1 to 100 | whole number | 1 |
//! | `count` | equal pieces side by side, 1 to 100 | whole number | 1 |
//! | `inclined` | half of the pieces lean this far one way about u, half the other, 0 to 80 deg; needs an even `count` | angle | 0 |
//! | `rubber`, `hardness`, `relation`, `modulus` | what it is made of: see [`rubber`] | | |
//!
//! Rates about u, v and w are left out: of one block they are some thousandths
//! of what the distance between the mounts gives. A pad that holds alone has
//! `rotational_rates`.

mod advice;
pub mod compression;
mod form;
pub mod law;
pub mod pad;

use std::sync::Arc;

use super::strain::StrainMeasure;
use super::{Description, Kind, rubber};
use crate::diagnostic::Code;
use crate::model::reader::Section;

pub(super) use form::{Form, read_form};
pub use law::Block;
pub use pad::{Footprint, Pad};
use rubber::Rubber;

pub(super) const KIND: Kind = Kind {
    word: "block",
    gloss: "rubber between plates, by size and hardness",
    others: &[
        "rubber", "cylinder", "puck", "pad", "bobbin", "buffer", "strip", "hollow", "sandwich",
    ],
    read,
};

fn read(section: &Section<'_>) -> Option<Description> {
    let form = read_form(section);
    let rubber = rubber::read(section);
    let (form, rubber) = (form?, rubber?);
    if section.has("measured_rates") && form.lean > 0.0 {
        section.refuse(
            "measured_rates",
            Code::Conflict,
            format!(
                "{} stands beside `inclined`, whose pieces push along and across at once",
                section.key_name("measured_rates")
            ),
            "measure one piece and give each its own leaning mount, or write the pair as kind \"rates\"",
        );
        return None;
    }
    Some(Description {
        when_held: advice::of_bonded(&rubber),
        ..describe(&form, rubber)
    })
}

/// A block of any elastic material.
pub(super) fn describe(form: &Form, rubber: Rubber) -> Description {
    let pad = form.pad(rubber.moduli);
    let law = Block {
        rates: pad.rates() * f64::from(form.count),
        height: pad.height,
        bulge: pad.footprint.bulge(),
        lean: form.lean,
    };
    let mut remarks = rubber.remarks;
    remarks.extend(advice::of_shape(&pad));
    Description {
        strain: Some(StrainMeasure::Block {
            height: pad.height,
            lean: form.lean,
        }),
        compound: Some(rubber.compound),
        is_computed: true,
        remarks,
        ..Description::new(Arc::new(law), rubber.usual)
    }
}
