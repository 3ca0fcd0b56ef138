//! Fatigue damage of counted cycles.

use super::rainflow::Cycle;

/// Sum of damage at which a part is taken to break: 1, nominal.
///
/// Common practice uses 0.3 to 1, since parts have broken at either.
pub const NOMINAL_CRITICAL_SUM: f64 = 1.0;

/// Cycles to failure against range, a straight line on logarithmic scales.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FatigueLine {
    range: f64,
    cycles: f64,
    slope: f64,
}

impl FatigueLine {
    /// The line through a range, from trough to crest, that is borne for so many cycles, with a slope.
    ///
    /// `None` unless all three are above zero and finite.
    #[must_use]
    pub fn through(range: f64, cycles: f64, slope: f64) -> Option<Self> {
        let sound = [range, cycles, slope]
            .iter()
            .all(|number| number.is_finite() && *number > 0.0);
        sound.then_some(Self {
            range,
            cycles,
            slope,
        })
    }

    /// Its slope, the power of the range in the damage.
    #[must_use]
    pub fn slope(&self) -> f64 {
        self.slope
    }

    /// Damage of one cycle of a range.
    ///
    /// # Equation
    ///   1/N = (R/R0)^m/N0
    ///
    ///   R0, N0  the point of the line, m its slope
    ///
    /// # Range
    /// No range is so small that it does no damage; mean values are not regarded.
    ///
    /// # Source
    /// O. H. Basquin, Proc. ASTM 10 (1910) 625, from memory.
    #[must_use]
    pub fn damage_of_one(&self, range: f64) -> f64 {
        (range / self.range).powf(self.slope) / self.cycles
    }
}

/// Damage of counted cycles; a part breaks where it reaches the critical sum.
///
/// # Equation
///   D = Σ n/N(R)
///
/// # Range
/// The order of the cycles is not regarded.
///
/// # Source
/// M. A. Miner, Journal of Applied Mechanics 12 (1945) A159, from memory.
#[must_use]
pub fn damage(cycles: &[Cycle], line: &FatigueLine) -> f64 {
    cycles
        .iter()
        .map(|cycle| cycle.count * line.damage_of_one(cycle.range()))
        .sum()
}

/// The one range that does in `number` cycles the damage of all of these, in their unit.
///
/// `None` unless number and slope are above zero and finite.
///
/// # Equation
///   Req = (Σ n R^m/Neq)^(1/m)
///
/// # Range
/// The same slope for every range.
///
/// # Source
/// Derived: Miner's sum of both alike.
#[must_use]
pub fn equivalent_range(cycles: &[Cycle], slope: f64, number: f64) -> Option<f64> {
    let sound = [slope, number]
        .iter()
        .all(|given| given.is_finite() && *given > 0.0);
    if !sound {
        return None;
    }
    let largest = cycles.iter().map(Cycle::range).fold(0.0, f64::max);
    if largest <= 0.0 {
        return Some(0.0);
    }
    // Over the largest range, since the power of a force in newton may leave what a number holds.
    let sum: f64 = cycles
        .iter()
        .map(|cycle| cycle.count * (cycle.range() / largest).powf(slope))
        .sum();
    Some(largest * (sum / number).powf(slope.recip()))
}
