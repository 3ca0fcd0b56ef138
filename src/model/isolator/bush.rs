//! Kind `bush`: rubber bonded between two tubes; w is their centre line.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `bush` | sizes of the rubber: the three keys below | table | needed |
//! | `bush.inner` | its inner diameter: the outside of the inner tube | length | needed |
//! | `bush.outer` | its outer diameter: the inside of the outer tube, 1.05 to 6 times `inner` | length | needed |
//! | `bush.length` | along w, 0.05 to 60 times the wall | length | needed |
//! | `voids` | share of the rate that is left along u, v, w where rubber is cut out, 0.05 to 1 | 3 ratios | `"1, 1, 1"` |
//! | `rubber`, `hardness` | what the rubber is, with the other keys of [`rubber`] | word, hardness | as there |
//!
//! Voids along u are rubber cut out at both ends of u. About v the tubes tilt in
//! that same rubber, so the rate about v takes the share of u, the rate about u
//! that of v; the rate about w takes the share of w.

mod conical;
mod radial;
mod stiffness;
mod words;

use std::sync::Arc;

use super::rates::Rates;
use super::rubber::{self, Moduli};
use super::strain::StrainMeasure;
use super::{Description, Kind, Usual};
use crate::diagnostic::Code;
use crate::model::reader::{Bound, Section};
use crate::spatial::Vec3;
use crate::units::{Digits, Quantity, number};
pub(super) use stiffness::in_series;

pub(super) const KIND: Kind = Kind {
    word: "bush",
    gloss: "rubber between two tubes, by size and hardness",
    others: &["bushing", "tube", "sleeve"],
    read,
};

/// Shares of a rate that voids may leave.
const VOIDS: Bound = Bound::Stated(0.05, 1.0, "between 0.05 and 1");

/// Outer over inner diameter for which the formulas are tried.
const RATIOS: [f64; 2] = [1.05, 6.0];

/// Length over wall for which the formulas are tried.
const SLENDERNESSES: [f64; 2] = [0.05, 60.0];

/// How the sizes are written.
const EXAMPLE: &str = "{ inner = \"16 mm\", outer = \"32 mm\", length = \"40 mm\" }";

/// Sizes, and other words for them.
const SIZES: [&str; 5] = ["inner", "outer", "length", "id", "od"];

/// Share by which a ratio of two sizes may miss a bound for the rounding of both.
const ROUNDING: f64 = 1e-9;

fn read(section: &Section<'_>) -> Option<Description> {
    let bush = read_sizes(section);
    let rubber = rubber::read(section);
    let voids = read_voids(section);
    let (bush, rubber) = (bush?, rubber?);
    let mut description = describe(&bush, &rubber.moduli, &voids?, rubber.usual);
    description.compound = Some(rubber.compound);
    description.remarks.extend(rubber.remarks);
    Some(description)
}

/// Reads `bush`.
pub(crate) fn read_sizes(section: &Section<'_>) -> Option<Bush> {
    if !section.has("bush") && section.refuse_outside(&SIZES, "bush", EXAMPLE) {
        return None;
    }
    section.must_have(&[("bush", &format!("sizes of the rubber, such as `{EXAMPLE}`"))]);
    read_sizes_of(section, "bush")
}

/// Reads the sizes of a bush under another key; `None` when it is absent or wrong.
pub(super) fn read_sizes_of(section: &Section<'_>, key: &'static str) -> Option<Bush> {
    let sizes = section.section_like(key, EXAMPLE)?;
    sizes.must_have(&[
        (
            "inner",
            "inner diameter of the rubber, the outside of the inner tube, such as \"16 mm\"",
        ),
        (
            "outer",
            "outer diameter of the rubber, the inside of the outer tube, such as \"32 mm\"",
        ),
        ("length", "of the rubber along the tubes, such as \"40 mm\""),
    ]);
    let inner = sizes.quantity("inner", Quantity::Length, Bound::SIZE);
    let outer = sizes.quantity("outer", Quantity::Length, Bound::SIZE);
    let length = sizes.quantity("length", Quantity::Length, Bound::SIZE);
    let bush = match (inner, outer, length) {
        (Some(inner), Some(outer), Some(length)) => judged(
            &sizes,
            Bush {
                inner,
                outer,
                length,
            },
        ),
        _ => None,
    };
    sizes.finish();
    bush
}

/// The bush when its shape is one that the formulas know.
fn judged(sizes: &Section<'_>, bush: Bush) -> Option<Bush> {
    if bush.outer <= bush.inner {
        sizes.refuse(
            "outer",
            Code::InsideOut,
            format!("{} is not larger than `inner`", sizes.key_name("outer")),
            "give both diameters of the rubber, the outside of the inner tube as `inner`",
        );
        return None;
    }
    let within = |value: f64, [low, high]: [f64; 2]| {
        (low * (1.0 - ROUNDING)..=high * (1.0 + ROUNDING)).contains(&value)
    };
    if !within(bush.ratio(), RATIOS) {
        sizes.refuse(
            "outer",
            Code::OutOfRange,
            format!(
                "{} must be {} to {} times `inner`: {} times",
                sizes.key_name("outer"),
                RATIOS[0],
                RATIOS[1],
                number(bush.ratio(), Digits::Significant(6))
            ),
            "give diameters of the rubber, without the tubes; of another shape give `rates`",
        );
        return None;
    }
    if !within(bush.slenderness(), SLENDERNESSES) {
        sizes.refuse(
            "length",
            Code::OutOfRange,
            format!(
                "{} must be {} to {} times the wall: {} times",
                sizes.key_name("length"),
                SLENDERNESSES[0],
                SLENDERNESSES[1],
                number(bush.slenderness(), Digits::Significant(6))
            ),
            "give the length of the rubber along the tubes; of another shape give `rates`",
        );
        return None;
    }
    Some(bush)
}

/// Reads `voids`; all rubber when the file is silent.
pub(crate) fn read_voids(section: &Section<'_>) -> Option<Vec3> {
    if !section.has("voids") {
        section.assume("voids", "none: rubber all the way round");
        return Some(Vec3::repeat(1.0));
    }
    section.per_axis("voids", Quantity::Ratio, VOIDS)
}

/// A bush of any rubber: law, rates about its axes, strain and remarks; the compound is left to the caller.
///
/// Tilting about v pushes and shears the rubber at both ends of u, as shifting
/// along u does; turning about w shears the wall all round, as shifting along w
/// does. Hence whose share of `voids` each rate takes.
pub(crate) fn describe(bush: &Bush, moduli: &Moduli, voids: &Vec3, usual: Usual) -> Description {
    let tilting = Vec3::new(voids.y, voids.x, voids.z);
    let rates = bush.rates(moduli).component_mul(voids);
    Description {
        rotational: bush.rotational(moduli).component_mul(&tilting),
        strain: Some(StrainMeasure::Bush { wall: bush.wall() }),
        is_computed: true,
        remarks: words::remarks(bush, moduli, voids),
        ..Description::new(Arc::new(Rates { rates }), usual)
    }
}

/// Rubber bonded between two tubes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bush {
    /// Inner diameter of the rubber \[m\].
    pub inner: f64,
    /// Outer diameter of the rubber \[m\].
    pub outer: f64,
    /// Length of the rubber along the tubes \[m\].
    pub length: f64,
}

impl Bush {
    /// Thickness of the rubber between the tubes \[m\].
    #[must_use]
    pub fn wall(&self) -> f64 {
        (self.outer - self.inner) / 2.0
    }

    /// Outer over inner diameter.
    #[must_use]
    pub fn ratio(&self) -> f64 {
        self.outer / self.inner
    }

    /// Length over wall.
    #[must_use]
    pub fn slenderness(&self) -> f64 {
        self.length / self.wall()
    }
}
