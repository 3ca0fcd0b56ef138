//! Wall of a round tube under what stands on it: a plate along it, a plate across it, a saddle.

use super::RoundRail;

/// What the wall of a round tube bears under one thing that stands on it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OnTube {
    /// Push or pull square to the tube \[N\].
    pub push: f64,
    /// Moment that presses one end of it along the tube \[N m\].
    pub along: f64,
    /// Moment about the tube \[N m\]; 0 for what touches it along a line.
    pub across: f64,
    /// Whether tube and footprint are like those the formulas were made for.
    pub is_within_range: bool,
}

/// Length over diameter up to which length counts.
const LONGEST: f64 = 4.0;

/// Width over diameter from which on the formulas hold.
const NARROWEST: f64 = 0.4;

/// Diameter over wall of the tubes that the formulas were made for.
const THINNESS: std::ops::RangeInclusive<f64> = 10.0..=50.0;

/// Strength of the wall under a plate that stands on it by its edge, along the tube.
///
/// # Equation
///   N = 5 k f t² (1 + 0.25 η),   M = h N along, 0 across,   η = h/d ≤ 4
///
///   f, t, d  yield strength \[Pa\], wall, outer diameter of the tube \[m\]
///   h        length of the plate \[m\]
///   k        [`stress_factor`]
///
/// # Range
/// d/t 10 to 50, η up to 4; longer counts as 4 and is told. Made for a welded plate; a flat
/// foot on a tube touches it along the same line. Characteristic: γ_M5, usually 1.0.
///
/// # Source
/// EN 1993-1-8:2005, table 7.3, longitudinal gusset plate (from memory).
#[must_use]
pub fn plate_along(
    rail: &RoundRail,
    yield_strength: f64,
    length: f64,
    stress_factor: f64,
) -> OnTube {
    let counted = length.min(LONGEST * rail.outer);
    let push = 5.0 * stress_factor * unit(rail, yield_strength) * longer(rail, counted);
    OnTube {
        push,
        along: counted * push,
        across: 0.0,
        is_within_range: is_usual(rail) && length <= counted,
    }
}

/// Strength of the wall under a plate that stands on it by its edge, across the tube.
///
/// # Equation
///   N = k f t² (4 + 20 β²),   M = 0 along, 0.5 b N across,   β = b/d
///
///   b  width of the plate, at most d \[m\]
///
/// # Range
/// d/t 10 to 50, β from 0.4; what lies outside is told. Characteristic: γ_M5, usually 1.0.
///
/// # Source
/// EN 1993-1-8:2005, table 7.3, transverse gusset plate (from memory).
#[must_use]
pub fn plate_across(
    rail: &RoundRail,
    yield_strength: f64,
    width: f64,
    stress_factor: f64,
) -> OnTube {
    let counted = width.min(rail.outer);
    let beta = counted / rail.outer;
    let push = stress_factor * unit(rail, yield_strength) * (4.0 + 20.0 * beta.powi(2));
    OnTube {
        push,
        along: 0.0,
        across: 0.5 * counted * push,
        is_within_range: is_usual(rail) && beta >= NARROWEST,
    }
}

/// Strength of the wall under a saddle that is shaped to the tube.
///
/// # Equation
///   N₀ = k f t² (4 + 20 β²),   N = N₀ (1 + 0.25 η),   M = h N₀ along, 0.5 b N across
///
///   h, b  length of the saddle, width across the tube, at most d \[m\]
///
/// # Range
/// As [`plate_along`] and [`plate_across`]. Made for a welded section; a stiff saddle stands
/// for it by its outline. Of the two moments along the tube in the source, that of a box, h N,
/// and that of an I section, the smaller is taken: a bolted saddle holds by its ends.
/// [`punched_outline`] is another limit.
///
/// # Source
/// EN 1993-1-8:2005, table 7.4 (from memory).
#[must_use]
pub fn saddle(
    rail: &RoundRail,
    yield_strength: f64,
    [length, width]: [f64; 2],
    stress_factor: f64,
) -> OnTube {
    let ends = plate_across(rail, yield_strength, width, stress_factor);
    let counted = length.min(LONGEST * rail.outer);
    let longer = longer(rail, counted);
    OnTube {
        push: ends.push * longer,
        along: counted * ends.push,
        across: ends.across * longer,
        is_within_range: ends.is_within_range && length <= counted,
    }
}

/// What compression along the tube leaves of the strength of its wall.
///
/// # Equation
///   k = 1 − 0.3 n (1 + n) ≥ 0,   n compressive stress over yield strength; 1 for tension
///
/// # Source
/// EN 1993-1-8:2005, table 7.2, k_p (from memory).
#[must_use]
pub fn stress_factor(compression: f64) -> f64 {
    if compression <= 0.0 {
        return 1.0;
    }
    (1.0 - 0.3 * compression * (1.0 + compression)).max(0.0)
}

impl OnTube {
    /// The same on several walls that share alike.
    #[must_use]
    pub fn times(self, walls: f64) -> Self {
        Self {
            push: self.push * walls,
            along: self.along * walls,
            across: self.across * walls,
            ..self
        }
    }

    /// Share of the wall that a push and two moments use together; a moment that nothing bears is left to the caller.
    ///
    /// # Equation
    ///   N/N_R + (M/M_R)² along + M/M_R across ≤ 1
    ///
    /// # Source
    /// EN 1993-1-8:2005, 7.4.2(2), equation 7.3 (from memory).
    #[must_use]
    pub fn used(&self, push: f64, along: f64, across: f64) -> f64 {
        let share = |moment: f64, borne: f64| {
            if borne > 0.0 {
                moment.abs() / borne
            } else {
                0.0
            }
        };
        push.abs() / self.push + share(along, self.along).powi(2) + share(across, self.across)
    }
}

/// Share of its shear strength that the wall uses along the two sides of a line of contact.
///
/// # Equation
///   (N/h + 6 M/h²) √3/(2 t f)
///
///   h  length of the line, M moment along the tube  \[m\], \[N m\]
///
/// # Source
/// EN 1993-1-8:2005, table 7.3, punching (from memory): N/A + M/W of a plate, times its thickness.
#[must_use]
pub fn punched_line(
    rail: &RoundRail,
    yield_strength: f64,
    length: f64,
    [push, along]: [f64; 2],
) -> f64 {
    let on_line = push.abs() / length + 6.0 * along.abs() / length.powi(2);
    on_line * 3_f64.sqrt() / (2.0 * rail.wall * yield_strength)
}

/// Share of its shear strength that the wall uses along the outline of a saddle.
///
/// # Equation
///   (N/(2 (h + b)) + M_h/(h²/3 + b h) + M_b/(b²/3 + h b)) √3/(t f)
///
///   M_h, M_b  moments along the tube and about it  \[N m\]
///
/// # Range
/// b up to d − 2 t: none beyond, where the outline stands on the sides of the tube.
///
/// # Source
/// EN 1993-1-8:2005, table 7.4, punching of rectangular hollow sections (from memory): N/A + M/W
/// of a thin-walled rectangle as wide and long as the saddle, times its wall.
#[must_use]
pub fn punched_outline(
    rail: &RoundRail,
    yield_strength: f64,
    [length, width]: [f64; 2],
    [push, along, across]: [f64; 3],
) -> Option<f64> {
    (width <= rail.outer - 2.0 * rail.wall).then(|| {
        let modulus = |one: f64, other: f64| one.powi(2) / 3.0 + one * other;
        let on_line = push.abs() / (2.0 * (length + width))
            + along.abs() / modulus(length, width)
            + across.abs() / modulus(width, length);
        on_line * 3_f64.sqrt() / (rail.wall * yield_strength)
    })
}

/// Strength of the wall under a plate along the tube, by the American specification.
///
/// # Equation
///   N = 5.5 f t² (1 + 0.25 h/d),   M = 0.8 h N along
///
/// # Range
/// Nominal: times φ 0.90, and Q_f of the stress along the tube.
///
/// # Source
/// ANSI/AISC 360-10, table K1.1 (from memory).
#[must_use]
pub fn american_plate_along(rail: &RoundRail, yield_strength: f64, length: f64) -> OnTube {
    let push = 5.5 * unit(rail, yield_strength) * longer(rail, length);
    OnTube {
        push,
        along: 0.8 * length * push,
        across: 0.0,
        is_within_range: rail.outer <= THINNESS.end() * rail.wall,
    }
}

/// Strength of the wall under a plate across the tube, by the American specification.
///
/// # Equation
///   N = 5.5 f t²/(1 − 0.81 b/d),   M = 0.5 b N across
///
/// # Range
/// b/d 0.2 to 1. Nominal: times φ 0.90, and Q_f of the stress along the tube.
///
/// # Source
/// ANSI/AISC 360-10, table K1.1 (from memory).
#[must_use]
pub fn american_plate_across(rail: &RoundRail, yield_strength: f64, width: f64) -> OnTube {
    let beta = width / rail.outer;
    let push = 5.5 * unit(rail, yield_strength) / (1.0 - 0.81 * beta);
    OnTube {
        push,
        along: 0.0,
        across: 0.5 * width * push,
        is_within_range: rail.outer <= THINNESS.end() * rail.wall && (0.2..=1.0).contains(&beta),
    }
}

/// f t², in which all of these are told \[N\].
fn unit(rail: &RoundRail, yield_strength: f64) -> f64 {
    yield_strength * rail.wall.powi(2)
}

/// 1 + 0.25 h/d.
fn longer(rail: &RoundRail, length: f64) -> f64 {
    1.0 + 0.25 * length / rail.outer
}

fn is_usual(rail: &RoundRail) -> bool {
    THINNESS.contains(&(rail.outer / rail.wall))
}
