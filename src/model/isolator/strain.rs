//! How a deflection strains the rubber of an isolator, against what rubber bears.

use crate::spatial::Vec3;

/// Which sizes turn a deflection into strains.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum StrainMeasure {
    /// Rubber between two plates square to w: pushed along w, sheared across.
    Block {
        /// Height of all rubber along w, plates left out \[m\].
        height: f64,
        /// Angle by which half of the pieces lean one way about u and half the other \[rad\].
        lean: f64,
    },
    /// The same resting loose on a seat: pulled along w it lifts off, and is strained no more.
    Loose {
        /// Height of all rubber along w, plates left out \[m\].
        height: f64,
        /// Angle by which half of the pieces lean one way about u and half the other \[rad\].
        lean: f64,
    },
    /// Rubber between two tubes along w: pushed across, sheared along w.
    Bush {
        /// Thickness of the rubber wall \[m\].
        wall: f64,
    },
    /// Bushes in the two eyes of a rod along w, one behind the other: pushed across.
    Eyes {
        /// Thickness of the wall that the whole deflection strains as much as the worse of the two is strained \[m\].
        wall: f64,
    },
}

/// Nominal strains, none below zero: deflection over thickness.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Strains {
    /// Thickness lost over thickness.
    pub compression: f64,
    /// Thickness gained over thickness, across a bond.
    pub tension: f64,
    /// Sideways shift over thickness.
    pub shear: f64,
}

impl StrainMeasure {
    /// The same of a part that lifts off when it is pulled along w.
    pub(super) fn lifting_off(self) -> Self {
        match self {
            Self::Block { height, lean } => Self::Loose { height, lean },
            Self::Loose { .. } | Self::Bush { .. } | Self::Eyes { .. } => self,
        }
    }

    /// Thickness that a deflection `end` along one axis presses flat \[m\]; `None` where it presses nothing.
    pub(super) fn pressed_thickness(&self, axis: usize, end: f64) -> Option<f64> {
        match *self {
            // What leans is pressed along its own axis.
            Self::Block { height, lean } | Self::Loose { height, lean } => {
                (axis == 2 && end < 0.0).then(|| height / lean.cos())
            }
            Self::Bush { wall } => (axis < 2).then_some(wall),
            Self::Eyes { wall } => (axis == 2).then_some(wall),
        }
    }

    /// Strains at a deflection along u, v, w \[m\]; of leaning pieces the largest of each.
    ///
    /// # Source
    /// Derived: geometry. The wall of a bush is pushed on one side as much as it
    /// is pulled on the other; a bonded bush is moulded or swaged so that the
    /// pulled side is pressed to begin with (common practice), so no tension is counted.
    #[must_use]
    pub fn at(&self, x: &Vec3) -> Strains {
        match *self {
            Self::Block { height, lean } => between_plates(height, lean, x),
            // What is left to strain while it is lifted is its shear across: a bolt or spigot locates it.
            Self::Loose { height, lean } => Strains {
                tension: 0.0,
                ..between_plates(height, lean, &Vec3::new(x.x, x.y, x.z.min(0.0)))
            },
            Self::Bush { wall } => Strains {
                compression: f64::hypot(x.x, x.y) / wall,
                tension: 0.0,
                shear: x.z.abs() / wall,
            },
            Self::Eyes { wall } => Strains {
                compression: x.z.abs() / wall,
                ..Strains::default()
            },
        }
    }
}

/// Strains of rubber between plates, of leaning pieces the largest of each.
fn between_plates(height: f64, lean: f64, x: &Vec3) -> Strains {
    let (sin, cos) = lean.sin_cos();
    let of = |sin: f64| {
        let along = -sin * x.y + cos * x.z;
        let across = f64::hypot(x.x, cos * x.y + sin * x.z);
        Strains {
            compression: (-along).max(0.0) / height,
            tension: along.max(0.0) / height,
            shear: across / height,
        }
    };
    of(sin).larger(of(-sin))
}

impl Strains {
    /// The larger of each.
    #[must_use]
    pub fn larger(self, other: Self) -> Self {
        Self {
            compression: self.compression.max(other.compression),
            tension: self.tension.max(other.tension),
            shear: self.shear.max(other.shear),
        }
    }
}
