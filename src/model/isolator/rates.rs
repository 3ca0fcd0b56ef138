//! Kind `rates`: three constant static rates along u, v, w.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `rates` | static rates along u, v, w, or one for all three | linear rate | needed |

use std::sync::Arc;

use super::{Kind, Law, LawPoint, Usual};
use crate::diagnostic::Code;
use crate::model::reader::{Bound, Section};
use crate::spatial::{Mat3, Vec3};
use crate::units::Quantity;

pub(super) const KIND: Kind = Kind {
    word: "rates",
    read_law,
    usual: Usual {
        dynamic_ratio: 1.3,
        loss_factor: 0.1,
        scatter: 0.15,
        of: "filled natural rubber of middle hardness",
    },
};

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
        let force = self.rates.component_mul(x);
        LawPoint {
            force,
            tangent: Mat3::from_diagonal(&self.rates),
            energy: force.dot(x) / 2.0,
        }
    }
}

fn read_law(section: &Section<'_>) -> Option<Arc<dyn Law>> {
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
    Some(Arc::new(Rates { rates }))
}
