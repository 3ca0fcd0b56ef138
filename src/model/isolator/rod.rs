//! Kind `rod`: a torque rod with a rubber bush in each eye; w is its line, positive pulled apart.
//!
//! It pushes and pulls along its line only. The eyes turn freely: what their
//! bushes hold when turned is left out, and the isolator says how little it is.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `rates` | static rate of the whole rod along its line | linear rate | this or `bush` |
//! | `bush` | sizes of the rubber in its eyes, as of the kind [`bush`] | table | this or `rates` |
//! | `far_bush` | the same of the eye at the chassis, when it is another | table | as `bush` |
//! | `rubber`, `hardness` | what the rubber is, with the other keys of [`rubber`]; with `rates` only `rubber` | word, hardness | as there |

use std::sync::Arc;

use super::bush::{self, Bush};
use super::rates::{self, Rates};
use super::rubber::{self, Rubber};
use super::strain::StrainMeasure;
use super::{Description, Kind};
use crate::diagnostic::Code;
use crate::model::reader::{Bound, Section};
use crate::spatial::Vec3;
use crate::units::{Digits, Quantity, Shown, show};

pub(super) const KIND: Kind = Kind {
    word: "rod",
    gloss: "torque rod between two eyes",
    others: &["torque rod", "torque-rod", "link", "strut", "arm"],
    read,
};

fn read(section: &Section<'_>) -> Option<Description> {
    let (has_rates, has_bush, has_far) = (
        section.has("rates"),
        section.has("bush"),
        section.has("far_bush"),
    );
    if has_rates && has_bush {
        section.refuse(
            "bush",
            Code::Conflict,
            format!("{} is given beside `rates`", section.key_name("bush")),
            "keep `rates` when the rod was measured, else `bush`",
        );
    } else if has_far && !has_bush {
        section.refuse(
            "far_bush",
            Code::NeedsOther,
            format!("{} needs `bush`", section.key_name("far_bush")),
            "give the eye at the powertrain as `bush`; of a measured rod `rates` is the whole",
        );
    } else {
        section.must_have_one_of(
            &["rates", "bush"],
            "rate along the rod, such as \"800 N/mm\", or `bush = { inner = \"12 mm\", outer = \"40 mm\", length = \"30 mm\" }`",
        );
        return if has_bush {
            of_bushes(section)
        } else {
            of_rate(section)
        };
    }
    // What belongs to a contradicted key is not blamed for it.
    for key in rubber::KEYS {
        let _ = section.has(key);
    }
    None
}

fn of_rate(section: &Section<'_>) -> Option<Description> {
    let rate = section.quantity("rates", Quantity::LinearRate, Bound::RATE);
    let compound = rubber::read_compound(section);
    Some(Description {
        compound: Some(compound?),
        is_rod: true,
        ..Description::new(along(rate?), rates::usual())
    })
}

fn of_bushes(section: &Section<'_>) -> Option<Description> {
    let near = bush::read_sizes_of(section, "bush");
    let far = if section.has("far_bush") {
        bush::read_sizes_of(section, "far_bush")
    } else {
        section.assume("far_bush", "the same as `bush`");
        near
    };
    let rubber = rubber::read(section);
    let (rod, rubber) = (
        Eyes {
            near: near?,
            far: far?,
        },
        rubber?,
    );
    let mut remarks = rod.remarks(&rubber);
    remarks.extend(rubber.remarks.iter().cloned());
    Some(Description {
        compound: Some(rubber.compound),
        strain: Some(StrainMeasure::Eyes {
            wall: rod.wall(&rubber),
        }),
        is_rod: true,
        is_computed: true,
        remarks,
        ..Description::new(along(rod.rate(&rubber)), rubber.usual)
    })
}

/// A law that knows only the line of the rod.
fn along(rate: f64) -> Arc<Rates> {
    Arc::new(Rates {
        rates: Vec3::new(0.0, 0.0, rate),
    })
}

/// The bushes at both ends of a rod, as eyes whose holes lie across the rod.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Eyes {
    /// In the eye at the powertrain.
    near: Bush,
    /// In the eye at the chassis.
    far: Bush,
}

impl Eyes {
    /// Rates across of both bushes [N/m].
    fn each(&self, rubber: &Rubber) -> [f64; 2] {
        [self.near, self.far].map(|bush| bush.rates(&rubber.moduli).x)
    }

    /// Rate along the rod [N/m].
    ///
    /// # Equation
    ///   1/k = 1/k_near + 1/k_far
    ///
    /// # Range
    /// The rod between the eyes is taken as rigid.
    ///
    /// # Source
    /// Derived: the same force passes both eyes.
    fn rate(&self, rubber: &Rubber) -> f64 {
        let [near, far] = self.each(rubber);
        bush::in_series(near, far)
    }

    /// Wall that one bush would need to be strained by the whole deflection as the worse of the two is \[m\].
    ///
    /// # Equation
    ///   t = min(k_i t_i)/k
    ///
    /// # Source
    /// Derived: an eye takes k x/k_i of the deflection x.
    fn wall(&self, rubber: &Rubber) -> f64 {
        let [near, far] = self.each(rubber);
        (near * self.near.wall()).min(far * self.far.wall()) / self.rate(rubber)
    }

    fn remarks(&self, rubber: &Rubber) -> Vec<String> {
        let [near, far] = self
            .each(rubber)
            .map(|rate| show(rate, Shown::NewtonPerMillimetre, Digits::Significant(3)));
        let turned = [self.near, self.far].map(|bush| bush.torsional_rate(rubber.moduli.shear));
        let mut remarks = vec![
            format!(
                "Two bushes one behind the other: {near} at the powertrain, {far} at the chassis"
            ),
            format!(
                "The eyes are taken to turn freely: that they hold {} and {} when turned is left out",
                in_degrees(turned[0]),
                in_degrees(turned[1])
            ),
        ];
        let mut bushes = vec![("bush", self.near)];
        if self.far != self.near {
            bushes.push(("far_bush", self.far));
        }
        for (key, bush) in bushes {
            remarks.push(format!("`{key}`: {}", bush.in_words()));
            remarks.extend(
                bush.doubt_in_words()
                    .map(|doubt| format!("`{key}`: {doubt}")),
            );
        }
        remarks
    }
}

fn in_degrees(rate: f64) -> String {
    show(rate, Shown::NewtonMetrePerDegree, Digits::Significant(2))
}
