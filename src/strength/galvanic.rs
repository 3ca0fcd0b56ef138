//! Whether two metals may touch where it is wet.
//!
//! A screening rule, not a rate of corrosion. It passes bare steel on aluminium, which
//! corrodes all the same in salt splash, and it objects to zinc on aluminium, which
//! serves well; potentials in sea water differ from the list (passive films come and go).
//! Zinc on steel lies far apart by design: the zinc is eaten, and the steel is not, as long
//! as zinc is left. Coat the nobler part or both, never only the less noble one: a scratch
//! in its coat gathers the whole attack.

/// How wet and salty it gets.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Exposure {
    /// Kept dry and warm.
    Controlled,
    /// Indoors, now and then damp.
    Normal,
    /// Outdoors, salt, the underside of a vehicle.
    Harsh,
}

impl Exposure {
    /// Largest difference of anodic indices that is allowed \[V\].
    ///
    /// # Source
    /// Limits that go with the lists made after MIL-F-14072 (from memory).
    #[must_use]
    pub fn allowed(self) -> f64 {
        match self {
            Self::Controlled => 0.50,
            Self::Normal => 0.25,
            Self::Harsh => 0.15,
        }
    }
}

/// One of two metals in contact: what is outermost of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Side {
    /// Potential below gold \[V\]; larger for less noble.
    pub index: f64,
    /// Whether it is a zinc coat, which is meant to be eaten.
    pub is_sacrificial: bool,
}

/// What is to be done about a pair.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Advice {
    /// Nothing.
    Fine,
    /// Nothing now; it is a zinc coat that is eaten, and when it is gone the metal below counts.
    ZincSpent,
    /// Coat the nobler one, or both, or keep them apart.
    Coat,
    /// Choose other metals, or keep them apart with something that does not conduct.
    Avoid,
}

/// How much the nobler area drives the attack.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AreaEffect {
    /// The less noble area is the larger: attack is spread thin.
    Mild,
    /// The nobler area is the larger.
    Worse,
    /// The nobler area is ten times the other, or more: it eats deep.
    Severe,
}

/// What comes of two metals in contact.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pair {
    /// Difference of the anodic indices, none below zero \[V\].
    pub difference: f64,
    /// Difference that is allowed \[V\].
    pub allowed: f64,
    /// Which side is eaten: `Some(0)` the first, `Some(1)` the second, `None` when they are alike.
    pub eaten: Option<usize>,
    /// Wetted area of the nobler one over that of the other.
    pub area_ratio: f64,
    /// How much the areas make it worse.
    pub area_effect: AreaEffect,
    /// What is to be done.
    pub advice: Advice,
}

/// Indices closer than this count as alike \[V\]: they are listed in steps of 0.05.
const ALIKE: f64 = 1e-6;

/// Judges two metals in contact; `areas` are their wetted areas \[m²\], above zero.
///
/// # Equation
///   ΔV = |V₁ − V₂| ≤ allowed;  r = A(nobler)/A(less noble), worse above 1, severe from 10
///
/// Beyond the limit a pair is to be coated, which brings it to the dry limit; beyond that
/// one too, or with a severe ratio of areas, it is to be avoided.
///
/// # Range
/// Finite indices and areas above zero; with any other area the ratio is that of equal areas.
///
/// # Source
/// Indices and limits: MIL-STD-889 and the lists made after MIL-F-14072 (from memory). Areas:
/// common practice. That a coat is worth the dry limit: our own reasoning, no source.
#[must_use]
pub fn judge(sides: [Side; 2], areas: [f64; 2], exposure: Exposure) -> Pair {
    let [first, second] = sides;
    let difference = (first.index - second.index).abs();
    let allowed = exposure.allowed();
    let eaten = (difference > ALIKE).then(|| usize::from(second.index > first.index));
    let ratio = match (eaten, areas) {
        (_, [a, b]) if !(a > 0.0 && b > 0.0 && a.is_finite() && b.is_finite()) => 1.0,
        (Some(0), [a, b]) => b / a,
        (Some(_), [a, b]) => a / b,
        (None, _) => 1.0,
    };
    let area_effect = if ratio >= 10.0 {
        AreaEffect::Severe
    } else if ratio > 1.0 {
        AreaEffect::Worse
    } else {
        AreaEffect::Mild
    };
    let is_zinc = match eaten {
        Some(0) => first.is_sacrificial,
        Some(_) => second.is_sacrificial,
        None => false,
    };
    let advice = if difference <= allowed + ALIKE {
        Advice::Fine
    } else if is_zinc {
        Advice::ZincSpent
    } else if difference <= Exposure::Controlled.allowed() + ALIKE
        && area_effect != AreaEffect::Severe
    {
        Advice::Coat
    } else {
        Advice::Avoid
    };
    Pair {
        difference,
        allowed,
        eaten,
        area_ratio: ratio,
        area_effect,
        advice,
    }
}
