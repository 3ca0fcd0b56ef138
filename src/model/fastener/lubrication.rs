//! Friction of threads and heads by how they are lubricated.

use super::{Band, find_named};

/// A state in which bolts are fitted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lubrication {
    /// In the words of a fitter: "greased", "zinc, dry".
    pub name: &'static str,
    /// Friction class, A for the slipperiest to E.
    pub class: char,
    /// Coefficient of friction in the thread and under the head.
    pub friction: Band,
}

const fn state(name: &'static str, class: char, low: f64, high: f64) -> Lubrication {
    Lubrication {
        name,
        class,
        friction: Band { low, high },
    }
}

/// # Source
/// VDI 2230-1:2003, table A5, friction classes A to E, from memory. Class E is open upwards
/// there; its upper end, 0.45, is common practice for dry stainless bolts short of galling.
const STATES: [Lubrication; 10] = [
    state("solid film", 'A', 0.04, 0.10),
    state("greased", 'B', 0.08, 0.16),
    state("oiled", 'B', 0.08, 0.16),
    state("waxed", 'B', 0.08, 0.16),
    state("as delivered", 'C', 0.14, 0.24),
    state("zinc, lightly oiled", 'C', 0.14, 0.24),
    state("zinc, dry", 'D', 0.20, 0.35),
    state("hot-dip galvanised", 'D', 0.20, 0.35),
    state("stainless, oiled", 'D', 0.20, 0.35),
    state("stainless, dry", 'E', 0.30, 0.45),
];

impl Lubrication {
    /// The state of a name.
    #[must_use]
    pub fn find(text: &str) -> Option<Self> {
        find_named(&STATES, |state| state.name, text)
    }

    /// Every name known.
    #[must_use]
    pub fn names() -> Vec<&'static str> {
        STATES.iter().map(|state| state.name).collect()
    }
}
