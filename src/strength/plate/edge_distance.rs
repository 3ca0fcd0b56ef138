//! How near bolts may stand to edges and to each other.

/// Distances of bolt holes \[m\].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Distances {
    /// Along the load to the end.
    pub end: f64,
    /// Across the load to the edge.
    pub edge: f64,
    /// Between holes along the load.
    pub pitch: f64,
    /// Between holes across the load.
    pub gauge: f64,
}

/// Smallest distances for a hole of this diameter \[m\].
///
/// # Equation
///   e₁, e₂ ≥ 1.2 d₀,   p₁ ≥ 2.2 d₀,   p₂ ≥ 2.4 d₀
///
/// # Source
/// EN 1993-1-8:2005, table 3.3; the same in EN 1999-1-1:2007, table 8.2 (from memory).
#[must_use]
pub fn smallest(hole: f64) -> Distances {
    Distances {
        end: 1.2 * hole,
        edge: 1.2 * hole,
        pitch: 2.2 * hole,
        gauge: 2.4 * hole,
    }
}

/// Largest distances outdoors for the thinner outer plate of this thickness \[m\].
///
/// # Equation
///   e ≤ 4 t + 40 mm,   p ≤ min(14 t, 200 mm)
///
/// # Range
/// Steel exposed to weather: against rust between the plates and local buckling.
///
/// # Source
/// EN 1993-1-8:2005, table 3.3 (from memory).
#[must_use]
pub fn largest(thickness: f64) -> Distances {
    let edge = 4.0 * thickness + 40e-3;
    let pitch = (14.0 * thickness).min(200e-3);
    Distances {
        end: edge,
        edge,
        pitch,
        gauge: pitch,
    }
}

/// Smallest distance between bolts of this diameter by the American rule \[m\].
///
/// # Equation
///   s ≥ 2⅔ d, better 3 d
///
/// # Source
/// ANSI/AISC 360-10, J3.3 (from memory).
#[must_use]
pub fn american_spacing(bolt: f64) -> f64 {
    8.0 / 3.0 * bolt
}

/// Largest edge distance by the American rule \[m\].
///
/// # Equation
///   e ≤ min(12 t, 150 mm)
///
/// # Source
/// ANSI/AISC 360-10, J3.5 (from memory).
#[must_use]
pub fn american_largest_edge(thickness: f64) -> f64 {
    (12.0 * thickness).min(150e-3)
}
