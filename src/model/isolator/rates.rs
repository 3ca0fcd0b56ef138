//! Kind `rates`: three constant static rates along u, v, w.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `rates` | static rates along u, v, w, or one for all three | linear rate | needed |
//! | `rubber` | what the rubber is: see [`rubber`](super::rubber) | word | `"natural"` |

use std::sync::Arc;

use super::rubber::read_compound;
use super::{AxisPoint, Description, Kind, Law, LawPoint, Tension, Usual};
use crate::diagnostic::Code;
use crate::model::reader::{Bound, Section};
use crate::spatial::Vec3;
use crate::units::Quantity;

pub(super) const KIND: Kind = Kind {
    word: "rates",
    gloss: "three known rates",
    others: &["spring", "rate", "stiffness", "linear"],
    read,
};

/// What is usual where only forces and deflections are known of the rubber.
pub(super) fn usual() -> Usual {
    Usual {
        dynamic_ratio: 1.3,
        dynamic_ratio_large: 1.1,
        loss_factor: 0.1,
        scatter: 0.15,
        creep: 0.3,
        tension: Tension::Allowed,
        of: "filled natural rubber of middle hardness".to_owned(),
    }
}

/// Three independent constant rates.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rates {
    /// Rates along u, v, w [N/m], none negative.
    pub rates: Vec3,
}

impl Law for Rates {
    /// # Equation
    ///   f = k x along each axis,   energy = Σ k x²/2
    ///
    /// # Source
    /// Derived: Hooke's law and its integral.
    fn at(&self, x: &Vec3) -> LawPoint {
        LawPoint::of_axes([0, 1, 2].map(|axis| AxisPoint::of_rate(self.rates[axis], x[axis])))
    }
}

fn read(section: &Section<'_>) -> Option<Description> {
    section.must_have(&[(
        "rates",
        "static rates along u, v, w, such as \"95, 95, 330 N/mm\"",
    )]);
    let rates = section.per_axis("rates", Quantity::LinearRate, Bound::RATE_OR_NONE)?;
    if rates.amax() <= 0.0 {
        section.refuse(
            "rates",
            Code::OutOfRange,
            format!("{} is zero along every axis", section.key_name("rates")),
            "an isolator needs a rate above zero along one axis at least",
        );
        return None;
    }
    let compound = read_compound(section)?;
    Some(Description {
        compound: Some(compound),
        ..Description::new(Arc::new(Rates { rates }), usual())
    })
}
