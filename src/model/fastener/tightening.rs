//! How far apart the preloads of equal bolts come out, by how they are tightened.

use super::{Band, Lubrication, find_named};

/// A way of tightening.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tightening {
    /// In the words of a fitter.
    pub name: &'static str,
    /// Scatter in class B and in any other class of friction.
    scatter: [Band; 2],
}

const fn alike(name: &'static str, low: f64, high: f64) -> Tightening {
    let band = Band { low, high };
    Tightening {
        name,
        scatter: [band, band],
    }
}

/// # Source
/// VDI 2230-1:2003, table A8, from memory. It lists an ordinary torque wrench for the friction
/// classes A and B only; that C, D and E scatter like A is common practice.
const METHODS: [Tightening; 4] = [
    alike("angle", 1.2, 1.4),
    alike("torque wrench with measured friction", 1.4, 1.6),
    Tightening {
        name: "torque wrench",
        scatter: [
            Band {
                low: 1.6,
                high: 2.0,
            },
            Band {
                low: 1.7,
                high: 2.5,
            },
        ],
    },
    alike("impact wrench", 2.5, 4.0),
];

impl Tightening {
    /// The way of a name; "angle" is also what tightens up to yield.
    #[must_use]
    pub fn find(text: &str) -> Option<Self> {
        find_named(&METHODS, |method| method.name, text)
    }

    /// Every name known.
    #[must_use]
    pub fn names() -> Vec<&'static str> {
        METHODS.iter().map(|method| method.name).collect()
    }

    /// Largest over least preload, αA, in a state of lubrication; at least 1.
    ///
    /// It holds the scatter of friction already.
    #[must_use]
    pub fn scatter(&self, lubrication: &Lubrication) -> Band {
        let [ordinary, other] = self.scatter;
        if lubrication.class == 'B' {
            ordinary
        } else {
            other
        }
    }
}
